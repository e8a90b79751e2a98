"""Why a kiln is fired so often: each programme by its clay, its loads, and the pieces that go in."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.spelling import counted

if TYPE_CHECKING:
    from collections.abc import Iterable

    from sheetgen.kits.taken import Kits


def fired_told(each: Iterable[tuple[Kits, int]]) -> str:
    """Of kinds with how many pieces of each are fired; empty where one load does for all.

    What goes in with others is counted there, whatever its design.
    """
    found: dict[str, tuple[int, int]] = {}
    for kits, pieces in each:
        if programme := _programme(kits):
            loads, many = found.get(programme, (0, 0))
            found[programme] = loads + kits.firings, many + pieces
    if sum(loads for loads, _ in found.values()) < 2:  # noqa: PLR2004 - one load wants no reason
        return ""
    return "; ".join(f"{loads} by {name}, {counted(many, 'piece')}" for name, (loads, many) in found.items())


def _programme(kits: Kits) -> str:
    """The clays of all its firings, each by its programme; empty where nothing is fired."""
    clays = [step.clay for step in kits.version.steps if step.firing and step.clay]
    names = [f"{clay.name} ({clay.program})" if clay.program else clay.name for clay in clays]
    many = ((name, names.count(name)) for name in dict.fromkeys(names))
    return " then ".join(f"{name}, {n} times" if n > 1 else name for name, n in many)
