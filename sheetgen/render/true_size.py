"""Whether each template drawing is printed as it was drawn, at true size: what is cut out is laid on metal or clay."""

from __future__ import annotations

import copy
import hashlib
import math
from typing import TYPE_CHECKING, Any
from xml.etree import ElementTree as ET

from sheetgen.facts.paper import PX_PER_INCH
from sheetgen.facts.units import MM_PER_INCH
from sheetgen.render.laid import Drawing
from sheetgen.render.musts import Fault
from sheetgen.render.on_paper import SAME
from sheetgen.render.seen import COVERED, CUT, OUTSIDE, meet

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from sheetgen.render.job import Drawn, Side
    from sheetgen.render.laid import LaidOut
    from sheetgen.render.painting import Painting
    from sheetgen.render.seen import Fill, Key, Rect

MM = MM_PER_INCH / PX_PER_INCH
MARK = "data-drawn"
FAINT = "it is paler than it was drawn"


def of_box(box: Any, rect: Rect, painting: Painting, page: int, sheet: Rect) -> Drawing:  # noqa: ANN401
    """A marked drawing as it is laid out; `rect` is its hull on the page, px."""
    a, b, c, d = (painting.matrix or (1, 0, 0, 1, 0, 0))[:4]
    wide, tall = box.width * math.hypot(a, b) * MM, box.height * math.hypot(c, d) * MM
    # what a turn or a slant moves its far corner by
    upright = min(a, d) > 0 and max(abs(b) * box.width, abs(c) * box.height) * MM <= SAME
    frame, slack = meet(painting.clip, sheet), SAME / MM
    moved = _moved_within(box.style["object_position"])
    cut = moved or any(
        beyond > slack for beyond in (frame[0] - rect[0], frame[1] - rect[1], rect[2] - frame[2], rect[3] - frame[3])
    )
    faint = any(share < 1 for _, share in painting.groups)
    unseen = CUT if cut else FAINT if faint else ""
    x, y = rect[0] * MM, rect[1] * MM
    return Drawing(box.element.attrib[MARK], page, x, y, wide, tall, upright, fingerprint(box.element), unseen)


def _moved_within(position: Any) -> bool:  # noqa: ANN401
    """Whether a drawing is pushed out of its own box; a share of nothing to spare is nothing."""
    return any(getattr(at, "unit", "") != "%" and getattr(at, "value", 1) for at in (position[0][1], position[0][3]))


def covered(one: Drawing, rect: Rect, key: Key, fills: Iterable[Fill]) -> Drawing:
    """The same, with whether something is painted over it."""
    slack = SAME / MM
    for fill in fills:
        left, top, right, bottom = meet(rect, fill.rect)
        if fill.key > key and right - left > slack and bottom - top > slack:
            return one._replace(unseen=one.unseen or COVERED)
    return one


def fingerprint(element: Any) -> str:  # noqa: ANN401
    """Of all that a drawing paints and says, and of nothing that stands after it."""
    alone = copy.copy(element)
    alone.tail = None
    return hashlib.sha256(ET.tostring(alone)).hexdigest()


def untrue(laid: LaidOut, drawn: Sequence[Drawn]) -> Iterator[Fault]:
    """Drawings that are left out, altered, or printed at another size; one telling each."""
    for one in drawn:
        here = [place for place in laid.drawings if place.id == one.id]
        told = next(filter(None, (_told(one, place) for place in here)), "")
        if told or not here:
            yield Fault(one.id, here[0].page if here else 0, f"{one.what} {told or 'is not printed'}")
    known = {one.id for one in drawn}
    for place in laid.drawings:
        if place.id not in known:
            yield Fault(place.id, place.page, f"a drawing is marked as '{place.id}', which this sheet was not given")


def _told(one: Drawn, place: Drawing) -> str:
    if place.fingerprint != one.fingerprint:
        return "is not printed as it was drawn"
    if not place.upright:
        return "is printed turned, slanted or mirrored"
    if abs(place.w - one.wide) > SAME or abs(place.h - one.tall) > SAME:
        return f"is printed {place.w:.2f} × {place.h:.2f} mm, in place of {one.wide:.2f} × {one.tall:.2f} mm"
    return f"is printed, but nobody sees all of it: {place.unseen}" if place.unseen else ""


def drawings_beside(laid: LaidOut, drawn: Sequence[Drawn], first: Side, side: Side) -> Iterator[str]:
    """Drawings that lie on the first paper, and outside of another, on which all is moved."""
    across, down = side.left - first.left, side.top - first.top
    named = {one.id: one.what for one in drawn}
    for one in laid.drawings:
        x, y = one.x + across, one.y + down
        if one.id in named and max(-x, -y, x + one.w - side.wide, y + one.h - side.tall) > SAME:
            yield f"page {one.page}: of {named[one.id]} nobody sees all: {OUTSIDE}"
