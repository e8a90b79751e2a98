"""Which version of the program this is."""

from __future__ import annotations


def program_version() -> str:
    """The version that is installed."""
    from importlib.metadata import PackageNotFoundError, version  # noqa: PLC0415 - heavy, and seldom asked

    try:
        return version("sheetgen")
    except PackageNotFoundError:
        return "from a checkout, not installed"
