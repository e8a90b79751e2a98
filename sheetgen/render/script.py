"""The one script of the pages: its sources put together in their order, without remarks and leading blanks."""

from __future__ import annotations

import re
from pathlib import Path

SOURCES = Path(__file__).parent / "script"
ORDER = ("bar.js",)
NAME = "script.js"
MOST = 20_000
"""Bytes that all of it may have: a phone on a slow line reads that in a moment."""
_REMARK = re.compile(r"^[ \t]*(//[^\n]*|/\*.*?\*/)[ \t]*$", re.MULTILINE | re.DOTALL)


def script() -> str:
    """All of it, as classic script: a module does not run from a folder that is opened by a double click."""
    whole = "\n".join((SOURCES / name).read_text("utf-8") for name in ORDER)
    lines = (line.strip() for line in _REMARK.sub("", whole).splitlines())
    return "'use strict'\n" + "".join(f"{line}\n" for line in lines if line)
