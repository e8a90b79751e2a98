"""The texture on the face of a finished piece: a sign of it in fine lines, not to scale."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base.flat import Oval
from sheetgen.draw.face import Face

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence

    from sheetgen.base.pen import Extent, Point
    from sheetgen.draw.pens import Strokes

    Run = list[Point]

APART = 1.6  # mm between lines: fine lines nearer to each other run together in a copy of a copy
WAVES = 4  # a wave is as long as so many lines are apart
CREST = 0.3  # of the distance between lines
CELL = 2.4  # mm: a side of a field between cracks
CROOKED = 0.35  # of such a side
DOT = 0.6  # mm across
STEP = 0.6  # mm: how finely a run is followed to where it leaves the face
STUB = 1.5  # mm: what an edge leaves shorter is no line
WHOLE = 1e-6  # mm between the ends of a dot that no edge has cut
FROM_MIDDLE, FROM_HALF = 0.12, 0.5  # of the way to the edge: where ribs begin by turns, so that they do not meet


def texture(word: str, outlines: Strokes, turned: str) -> list[Run]:
    """The lines of a texture on a piece so drawn, seen so: within its outline, and not in its openings; whole dots."""
    face = Face.of(outlines.closed("cut"))
    if face is None:
        return []
    ribbed = word == "ribs" and turned == "side"
    drawn = _upright_ribs(face.outline, face.box) if ribbed else TEXTURES[word](face.box)
    found = [part for run in drawn for part in face.within(run, STEP)]
    ends = ((run, math.dist(run[0], run[-1])) for run in found)
    return [run for run, far in ends if (far < WHOLE if word == "dots" else far > STUB)]


def _lines_down(box: Extent) -> Iterator[Run]:
    for x in _places(box.left, box.right):
        yield [(x, box.top), (x, box.bottom)]


def _lines_across(box: Extent) -> Iterator[Run]:
    for y in _places(box.top, box.bottom):
        yield [(box.left, y), (box.right, y)]


def _waves_down(box: Extent) -> Iterator[Run]:
    for x in _places(box.left, box.right):
        yield [(x + off, y) for y, off in _wave(box.top, box.bottom)]


def _waves_across(box: Extent) -> Iterator[Run]:
    for y in _places(box.top, box.bottom):
        yield [(x, y + off) for x, off in _wave(box.left, box.right)]


def _places(first: float, last: float) -> list[float]:
    """Where lines lie between two edges, as far from them as from each other."""
    gaps = max(2, round((last - first) / APART))
    return [first + (last - first) * i / gaps for i in range(1, gaps)]


def _wave(first: float, last: float) -> Iterator[Point]:
    """Along a wave, and how far off its line."""
    for i in range(math.ceil((last - first) / STEP) + 1):
        at = min(first + i * STEP, last)
        yield at, CREST * APART * math.sin(2 * math.pi * (at - first) / (WAVES * APART))


def _ribs(box: Extent) -> Iterator[Run]:
    """From the middle to the edge."""
    (x, y), wide, high = _middle(box), box.width / 2, box.height / 2
    count = _ribs_round(wide + high)
    for i in range(count):
        turn = 2 * math.pi * i / count
        begin = FROM_HALF if i % 2 else FROM_MIDDLE
        yield [(x + share * wide * math.cos(turn), y + share * high * math.sin(turn)) for share in (begin, 1.0)]


def _upright_ribs(face: Sequence[Point], box: Extent) -> Iterator[Run]:
    """The ribs of a dome seen from its side: each its outline, narrower; not those that crowd at its ends."""
    x, _ = _middle(box)
    right = sorted((p for p in face if p[0] >= x), key=lambda p: (p[1], p[0]))
    count, half = _ribs_round(box.width), box.width / 2
    narrow = [math.cos(2 * math.pi * i / count) for i in range(count // 2 + 1)]
    for i in range(1, len(narrow) - 1):
        begin = FROM_HALF if i % 2 else FROM_MIDDLE
        if min(narrow[i - 1] - narrow[i], narrow[i] - narrow[i + 1]) * half > APART / 2:
            yield [(x + narrow[i] * (px - x), py) for px, py in right if px - x >= begin * half]


def _ribs_round(wide: float) -> int:
    """How many ribs there are round a face so wide; at its edge they lie as far apart as other lines."""
    return 4 * max(2, round(math.pi * wide / APART / 4))


def _cracks(box: Extent) -> Iterator[Run]:
    """The sides of six-sided fields, their corners pushed about."""
    (x, y), wide = _middle(box), CELL * math.sqrt(3) / 2
    columns, rows = math.ceil(box.width / 2 / wide) + 1, math.ceil(box.height / 2 / (1.5 * CELL)) + 1

    def corner(i: int, j: int) -> Point:
        down = CELL / 4 if (i + j) % 2 else -CELL / 4
        right, low = (CROOKED * CELL * _pushed(i, j, one) for one in (19, 83))
        return x + i * wide + right, y + j * 1.5 * CELL + down + low

    for j in range(-rows, rows + 1):
        for i in range(-columns, columns + 1):
            yield [corner(i, j), corner(i + 1, j)]
            if (i + j) % 2:
                yield [corner(i, j), corner(i, j + 1)]


def _pushed(i: int, j: int, salt: int) -> float:
    """By how much, −1 to 1, the same at each drawing."""
    return ((i * 73856093 ^ j * 19349663 ^ salt * 83492791) % 2001) / 1000 - 1


def _dots(box: Extent) -> Iterator[Run]:
    for row, y in enumerate(_places(box.top, box.bottom)):
        places = _places(box.left, box.right)
        shift = (places[0] - box.left) / 2 if row % 2 else 0.0
        for x in places:
            dot = Oval((x - shift, y), DOT, DOT).points
            yield [*dot, dot[0]]


TEXTURES: dict[str, Callable[[Extent], Iterator[Run]]] = {
    "lines across": _lines_across,
    "lines down": _lines_down,
    "waves across": _waves_across,
    "waves down": _waves_down,
    "ribs": _ribs,
    "cracks": _cracks,
    "dots": _dots,
}


def _middle(box: Extent) -> Point:
    return (box.left + box.right) / 2, (box.top + box.bottom) / 2
