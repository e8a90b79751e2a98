"""The studio's sheet of labels: how many across and down, how large, where they begin; that they lie on the paper."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from sheetgen.base.dimension import LENGTH
from sheetgen.base.place import Word
from sheetgen.base.trouble import Troubles
from sheetgen.facts.paper import LABEL_TALL, LABEL_WIDE, PAPERS
from sheetgen.model.labels import LabelGrid
from sheetgen.read.measures import Measures

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.model.studio import Studio, WrittenLabels

BY = re.compile("[×x*]")
EXAMPLE = "size: 64 × 34 mm"
MOST = 40  # labels along a side: they would be narrower than a label can be
SLACK = 0.01  # mm: dust of a sum in inches


def read_labels(studio: Studio, papers: Sequence[str], currency: str, troubles: Troubles) -> LabelGrid | None:
    """The grid, on the first of the studio's papers where it names none; None without one or with a trouble."""
    written = studio.labels
    if written is None:
        return None
    own = Troubles()
    measures = Measures(currency, own)
    across, down = (_whole(word, name, own) for name, word in (("across", written.across), ("down", written.down)))
    size = _size(written.size, measures)
    named = {"left": written.left, "top": written.top, "gap across": written.gap_across, "gap down": written.gap_down}
    lengths = [_one(word, name, measures) for name, word in named.items()]
    paper = str(written.paper or next((one for one in studio.paper if one in papers), papers[0]))
    if paper not in papers and written.paper is not None:
        own.add(f"paper cannot be '{paper}'", written.paper.place, f"one of {', '.join(papers)}")
    grid = None
    if across and down and size and not own.errors:
        left, top, gap_across, gap_down = (mm or 0.0 for mm in lengths)
        grid = LabelGrid(across, down, *size, left, top, gap_across, gap_down, paper)
        _lies_on(grid, written, own)
    troubles.extend(own)
    return None if own.errors else grid


def _whole(word: Word, name: str, troubles: Troubles) -> int | None:
    if word.isdecimal() and word.isascii() and 0 < int(word) <= MOST:
        return int(word)
    troubles.add(f"{name} cannot be {word}", word.place, f"a whole number from 1 to {MOST}, of labels: {name}: 3")
    return None


def _size(word: Word, measures: Measures) -> tuple[float, float] | None:
    """Width and height; a unit that stands only once, at the end, is that of both."""
    cuts = list(BY.finditer(word))
    if len(cuts) != 1:
        measures.troubles.add(
            f"a label has two sides, and '{word}' is not two", word.place, f"width × height: {EXAMPLE}"
        )
        return None
    first, second = word[: cuts[0].start()].strip(), word[cuts[0].end() :].strip()
    unit = second[len(second.rstrip("".join(filter(str.isalpha, second)))) :]
    if unit and not any(map(str.isalpha, first)):
        first = f"{first} {unit}"
    place = word.place
    wide = _one(Word(first, place), "a side of a label", measures, EXAMPLE)
    tall = _one(Word(second, place), "a side of a label", measures, EXAMPLE) if wide is not None else None
    if wide is None or tall is None:
        return None
    if wide < LABEL_WIDE or tall < LABEL_TALL:
        told = f"a label of {wide:g} × {tall:g} mm is too small for a number, a name and a bag"
        measures.troubles.add(told, place, f"{LABEL_WIDE:g} × {LABEL_TALL:g} mm at least")
        return None
    return wide, tall


def _one(word: Word, name: str, measures: Measures, example: str = "") -> float | None:
    """One length, of 0 or more."""
    told = Troubles()
    found = Measures(measures.currency, told).interval(word, LENGTH, least=0, name=name)
    for one in told.errors:
        measures.troubles.add(one.message, one.place, example or one.help)
    if found is not None and not found.exact:
        measures.troubles.add(f"{name} is one length, and '{word}' is from one to another", word.place, "such as 2 mm")
        return None
    return found.usual if found is not None else None


def _lies_on(grid: LabelGrid, written: WrittenLabels, troubles: Troubles) -> None:
    """Both ways the labels end on the paper; the sum is told as it is worked."""
    ways = (
        (written.across, "across", "wide", grid.left, grid.across, grid.wide, grid.gap_across, "gap across"),
        (written.down, "down", "tall", grid.top, grid.down, grid.tall, grid.gap_down, "gap down"),
    )
    for (word, way, side, begin, many, each, gap, gap_name), paper in zip(ways, PAPERS[grid.paper], strict=True):
        end = begin + many * each + (many - 1) * gap
        if end > paper + SLACK:
            terms = [f"{begin:g} mm", f"{many} × {each:g} mm"] + ([f"{many - 1} × {gap:g} mm"] if gap else [])
            told = f"the labels do not lie on the paper: {' + '.join(terms)} = {end:g} mm, and {grid.paper} is"
            fit = int((paper - begin + gap + SLACK) // (each + gap))
            fewer = f"at most {fit} {way}, or look again at size, {'left' if side == 'wide' else 'top'} and {gap_name}"
            troubles.add(f"{told} {paper:g} mm {side}", word.place, fewer)
