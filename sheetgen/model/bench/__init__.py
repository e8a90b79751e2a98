"""The bench: what every part of a version is made of, and what the steps do to it, one after another."""
