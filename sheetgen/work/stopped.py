"""What the modules of this stage share: how work on one thing stops, and how a name reads in arithmetic."""

from __future__ import annotations


class Stopped(Exception):
    """Something asked for cannot be had; why is noted."""


def in_arithmetic(name: str) -> str:
    """A name as arithmetic and prose write it."""
    return str(name).replace(" ", "_")
