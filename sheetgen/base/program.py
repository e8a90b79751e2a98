"""Which version of the program this is."""

from __future__ import annotations

from importlib.metadata import PackageNotFoundError, version


def program_version() -> str:
    """The version that is installed."""
    try:
        return version("sheetgen")
    except PackageNotFoundError:
        return "from a checkout, not installed"
