"""What a row of the finished view can show as made of a part."""

MADE: dict[str, tuple[str, str]] = {
    "plait": ("slit strips", "plait"),
    "tassel": ("cord bundle", "tassel"),
}
"""Of which kind it is made, and the project's figure that says how long it is."""
