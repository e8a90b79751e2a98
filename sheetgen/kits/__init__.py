"""Between work and render: what is bought, cut, packed and paid for."""
