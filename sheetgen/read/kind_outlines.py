"""The outline of a studio's own kind, made from its words."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.model.kinds import WrittenArc
from sheetgen.parts.template import Arc, Hole, Template

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.base.place import Place, Word
    from sheetgen.base.trouble import Troubles
    from sheetgen.model.kinds import WrittenHole, WrittenOutline

SHAPES = ("disc", "rectangle", "oval", "points")
MOST_POINTS = 200
MOST_TIMES = 100


def template(written: WrittenOutline, rolled: str, troubles: Troubles) -> Template | None:
    """The template, or None with its troubles noted. `rolled` is how thick it is unless it says otherwise."""
    before = len(troubles.errors)
    given = {shape: found for shape in SHAPES if (found := getattr(written, shape)) is not None}
    if len(given) != 1:
        place = _first(written)
        told = f"an outline is one shape, and not {' and '.join(given)}" if given else "the outline says no shape"
        troubles.add(told, place, f"one of {', '.join(SHAPES)}")
        return None
    [(shape, found)] = given.items()
    sizes: tuple[Word, ...] = ()
    points: tuple[tuple[Word, Word] | Arc, ...] = ()
    if shape == "disc":
        sizes = (found,)
    elif shape == "points":
        points = tuple(_corners(found, _first(written), troubles))
        if found and not isinstance(found[0], list):
            troubles.add("an outline begins with a point", found[0].arc.place, "write [0 mm, 0 mm] before the arc")
        if len(found) > MOST_POINTS:
            troubles.add(f"an outline of {len(found)} points", _first(written), f"at most {MOST_POINTS}")
    else:
        sizes = _pair(found, shape, _first(written), troubles) or ()
    holes = tuple(h for one in written.holes if (h := _hole(one, _first(written), troubles)))
    times = str(written.times or "1")
    if written.times is not None and (not times.isdecimal() or not 1 <= int(times[:9]) <= MOST_TIMES):
        troubles.add(f"'times' cannot be '{times}'", written.times.place, "how many of it one piece takes: 2, 3 …")
    if len(troubles.errors) > before:
        return None
    return Template(shape, sizes, points, holes, written.thickness or rolled, int(times), str(written.what or ""))


def _corners(
    found: Sequence[list[Word] | WrittenArc], near: Place | None, troubles: Troubles
) -> Iterator[tuple[Word, Word] | Arc]:
    """The points and arcs; what stands nowhere, an empty list, is told at what stood there before it."""
    for one in found:
        corner: tuple[Word, Word] | Arc | None
        if isinstance(one, WrittenArc):
            near = one.arc.place
            middle = _pair(one.around, "around", near, troubles)
            corner = Arc(one.arc, middle) if middle else None
        else:
            near = one[0].place if one else near
            corner = _pair(one, "a point", near, troubles)
        if corner is not None:
            yield corner


def _hole(one: WrittenHole, near: Place | None, troubles: Troubles) -> Hole | None:
    words = [w for w in (one.disc, *(one.oval or ()), *(one.at or ()), one.when) if w is not None]
    if (one.disc is None) == (one.oval is None):
        troubles.add("a hole is a disc or an oval", words[0].place if words else near, "write disc: 3 mm")
        return None
    near = words[0].place if words else near
    at = _pair(one.at, "at", near, troubles) if one.at is not None else None
    sizes = (one.disc,) if one.disc is not None else _pair(one.oval or [], "oval", near, troubles)
    return Hole(sizes, at, one.when or "") if sizes else None


def _pair(found: list[Word], name: str, near: Place | None, troubles: Troubles) -> tuple[Word, Word] | None:
    """Two numbers; `near` is where it is told that there are others, if none says where it stands."""
    if len(found) == 2:  # noqa: PLR2004 - two numbers
        return found[0], found[1]
    place: Place | None = getattr(found, "place", None) or (found[0].place if found else near)
    troubles.add(f"'{name}' wants two numbers", place, "[12 mm, 8 mm]; one with a comma in it wants quotes")
    return None


def _first(written: WrittenOutline) -> Place | None:
    """Where an outline begins."""
    for _, value in written:
        one = value
        while isinstance(one, list) and one:
            one = one[0]
        if (place := getattr(one, "place", None)) is not None:
            found: Place = place
            return found
    return None
