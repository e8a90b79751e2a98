"""Which figures of a version its templates and the drawings beside its steps print."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.frozen import Frozen
from sheetgen.base.pen import Extent
from sheetgen.draw import kinds
from sheetgen.draw.diagrams import fitted_diagrams
from sheetgen.draw.gestured import try_gestures
from sheetgen.draw.piece import templates

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.model.worked import Worked, WorkedVersion


def with_drawn(worked: Worked) -> Worked:
    """A worked project of whose versions it is known which figures are drawn.

    Misplaced at a part of which a step wants a drawing that cannot be made.
    """
    versions = {name: replace(one, drawn=drawn_figures(one)) for name, one in worked.versions.items()}
    return replace(worked, versions=Frozen(versions))


def try_drawings(worked: Worked) -> None:
    """Draw each thing that a step shows once and at one scale, for what cannot be drawn. Misplaced as above."""
    for version in worked.versions.values():
        for name in {name for step in version.steps for name in step.diagrams if name in version.parts}:
            kinds.diagram(Extent(), version.parts[name], 1.0)
        try_gestures(version)


def drawn_figures(version: WorkedVersion) -> frozenset[str]:
    """The names of the figures whose words stand in a drawing of their part.

    A drawing tells a part and what is drilled in it; that of a gesture may tell whatever part is near, and the
    project's own figures.
    """
    found: set[str] = set()
    for parts, words in _drawings(version):
        of_these = ((key, one) for key, one in version.figures.items() if not parts or one.part in parts)
        found |= {key for key, one in of_these if key not in found and _stands(one.printed.words, words)}
    return frozenset(found)


def _drawings(version: WorkedVersion) -> Iterator[tuple[frozenset[str], str]]:
    """Each drawing's words, with the parts that it tells; none where it may tell any."""
    drawn = [(one.piece.name, one.words) for one in templates(version)]
    drawn += [(name, one.words) for name, one in fitted_diagrams(version).items()]
    for name, words in drawn:
        part = version.parts.get(name)
        near = (part.name, *(one.name for one in version.drilled_in(part))) if part is not None else ()
        yield frozenset(near), "\n".join(words)


def _stands(number: str, words: str) -> bool:
    """Whether a number stands in words by itself: 2 is in "Ø 2" and "2, at most", and not in 2.5, 12 or 20."""
    return number in words and re.search(rf"(?<![\d.,/]){re.escape(number)}(?![.,/]?\d)", words) is not None
