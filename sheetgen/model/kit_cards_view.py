"""What a theme gets of kit cards, slips and bag labels: plain words. No repr shows a name or a note.

They are put together of pieces, each laid out once however often it is printed: what is of one order (its number, its
name, a gift note), and what is of one kind of kit or bag. A page of pieces has a piece on each of its pages.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Annotated


@dataclass(frozen=True, slots=True)
class Ticked:
    """One thing in a kit, to be ticked."""

    bag: Annotated[str, "its bag, where it is the first in that bag"]
    amount: Annotated[str, "how much, with its unit; of a piece that is cut its sides"]
    spare: Annotated[str, "how much is to spare, besides what is counted or of what is measured, or nothing"]
    name: str
    detail: Annotated[str, "more of its name, or nothing"]


@dataclass(frozen=True, slots=True)
class Warned:
    """A caution of a kit, or of what lies in a bag."""

    word: Annotated[str, "its signal word; nothing on a label that has no room for it"]
    text: str
    short: Annotated[str, "the same in a few words, where there is no room for more; or nothing"] = ""


@dataclass(frozen=True, slots=True)
class KitCard:
    """What one kind of kit holds; of what is sent by itself, a slip; as `card`."""

    slip: Annotated[bool, "whether only a part of a kit is sent"]
    title: Annotated[str, "the design"]
    version: Annotated[str, "the version, what was chosen otherwise first; or nothing where the design has only one"]
    colourway: Annotated[str, "in which colours it comes, or nothing"]
    rows: tuple[Ticked, ...]
    box: Annotated[tuple[str, ...], "tools that lie in the box"]
    lacking: Annotated[tuple[str, ...], "materials that are not in it"]
    tools: Annotated[bool, "whether tools must be to hand besides"]
    warned: tuple[Warned, ...]
    foot: Annotated[str, "revision, date, fingerprint, studio"]
    sheets: Annotated[tuple[str, ...], "the sheets that go with it"] = ()
    alone: Annotated[str, "of a slip the bag that is sent, where it is a whole one"] = ""


@dataclass(frozen=True, slots=True)
class OrderHead:
    """What is of one order on its cards and on the labels of its bags, as `head`; a card has the number alone."""

    order: Annotated[str, "its number"]
    name: Annotated[str, "to whom, on labels alone, or nothing"] = field(repr=False)


@dataclass(frozen=True, slots=True)
class Label:
    """What is of one bag of a kind of kit, as `label`."""

    slip: Annotated[bool, "whether only a part of a kit is sent"]
    bag: Annotated[str, "A clay, 1 of 4; of what is sent by itself the bag that it is; or nothing"]
    which: Annotated[str, "kit 2 of 3, where there are several and it does not stand apart, or nothing"]
    title: Annotated[str, "the design"]
    version: Annotated[str, "the version, what was chosen otherwise first; or nothing where the design has only one"]
    colourway: Annotated[str, "in which colours it comes, or nothing"]
    inside: Annotated[tuple[str, ...], "what lies in the bag and how much of it, as far as there is room to tell"] = ()
    amount: Annotated[str, "how much lies in the bag of what `warned` is of, where there is room for no more"] = ""
    warned: Annotated[tuple[Warned, ...], "of what lies in it and would leak, stain, burn or dust"] = ()
    items: Annotated[tuple[str, ...], "on the last bag what is not in the kit, as far as there is room to name it"] = ()
    more: Annotated[int, "how many things besides are not in the kit"] = 0
    beyond: Annotated[int, "how many things besides lie in the bag"] = 0


@dataclass(frozen=True, slots=True)
class Piece:
    """One piece and how tightly it is set; only one of what it may be is there, a note with the number of its order."""

    step: Annotated[int, "0 is the roomiest way to set it; the next is tried where it does not fit"]
    card: KitCard | None = None
    head: OrderHead | None = None
    label: Label | None = None
    which: Annotated[str, "kit 2 of 3, by itself"] = ""
    due: Annotated[str, "with it, of a card: the day by which its order is due, year-month-day, or nothing"] = ""
    note: Annotated[str, "a gift note"] = field(default="", repr=False)
    rtl: Annotated[bool, "whether its name or note is read from right to left"] = False


@dataclass(frozen=True, slots=True)
class Pieces:
    """Pieces of one size, a page each.

    So are set `kit-card.html.j2`, `kit-card-head.html.j2`, `kit-card-which.html.j2`, `gift-note.html.j2`,
    `label.html.j2`, `label-head.html.j2` and `label-which.html.j2`, all of which extend `pieces.html.j2`.
    """

    wide: Annotated[str, "of a piece, mm"]
    tall: Annotated[str, "of a piece, mm"]
    first: Annotated[str, "how wide the number may be, mm"]
    column: Annotated[str, "how wide all else may be, mm"]
    language: Annotated[str, "by BCP 47, such as en"]
    each: tuple[Piece, ...]
