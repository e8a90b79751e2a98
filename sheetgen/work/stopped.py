"""How work on one thing stops."""

from __future__ import annotations


class Stopped(Exception):
    """Something asked for cannot be had; why is noted."""
