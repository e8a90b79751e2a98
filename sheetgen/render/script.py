"""The one script of the pages: its sources put together in their order, without remarks and most of their blanks."""

from __future__ import annotations

import re
from pathlib import Path

SOURCES = Path(__file__).parent / "script"
ORDER = ("bar.js", "units.js", "offline.js", "kept.js", "mine.js", "notes.js", "clocks.js", "bench.js", "drawings.js")
FINDS = ("kept.js", "notes.js", "search.js", "begun.js", "drawer.js", "find.js")
NAME, FIND, WORKER = "script.js", "find.js", "offline-worker.js"
MOST = 20_000
"""Bytes that all of it may have: a phone on a slow line reads that in a moment."""
_REMARK = re.compile(r"^[ \t]*//[^\n]*$|/\*.*?\*/ ?", re.MULTILINE | re.DOTALL)
_WORDS = re.compile(r"('(?:\\.|[^'\\])*')")
_APART = re.compile(r" ?([=<>&|?:,;{}()]+) ?")


def script() -> str:
    """All of it, as classic script: a module does not run from a folder that is opened by a double click."""
    return "'use strict'\n" + "".join(map(_bare, ORDER))


def find_script() -> str:
    """What finds designs, on the library's pages of cards alone."""
    return "'use strict'\n" + "".join(map(_bare, FINDS))


def worker() -> str:
    """What keeps designs for when there is no net: a file of its own, which a page begins when it is asked to."""
    return _bare(WORKER)


def _bare(name: str) -> str:
    bare = _REMARK.sub("", (SOURCES / name).read_text("utf-8"))
    lines = (_close(line.strip()) for line in bare.splitlines())
    return "".join(f"{line}\n" for line in lines if line)


def _close(line: str) -> str:
    """A line without the blanks round its signs; words keep theirs, and a line with a pattern or a template all."""
    if "`" in line or "/" in line:
        return line
    return "".join(one if n % 2 else _APART.sub(r"\1", one) for n, one in enumerate(_WORDS.split(line)))
