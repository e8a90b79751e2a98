"""What a theme gets of each list that a run of kits is packed from: words and numbers, and nothing that does anything.

As in view.py, `Html` is HTML already, and each field says what it is. Lists are for the studio alone.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from sheetgen.model.view import Html  # noqa: TC001 - the page for a theme reads the hints


@dataclass(frozen=True, slots=True)
class ListHead:
    """What every list begins with."""

    name: Annotated[str, "what the list is called: Pick, Cut …"]
    does: Annotated[str, "what is done with it, in a sentence"]
    kits: Annotated[tuple[str, ...], "the kits of the run: 8 × Buoy drops, Silver, long"]
    many: Annotated[str, "how many these are: 30 kits of 6 kinds"]
    language: Annotated[str, "by BCP 47, such as en"]
    studio: Annotated[str, "its name"]


@dataclass(frozen=True, slots=True)
class PickLine:
    """What goes into each bag of one kind of kit."""

    kit: Annotated[str, "design, version and what makes it unlike others"]
    where: Annotated[
        str, "where in the kit it lies, bag B stones or in the box; of a part by itself what it is; or nothing"
    ]
    bags: Annotated[str, "how many kits: 8 kits"]
    each: Annotated[str, "what goes into one"]
    working: Annotated[str, "what of it is taken and what is to spare, and by which rule, or nothing"]
    together: Annotated[str, "in all of them"]
    close: Annotated[str, "of a bag for which more is picked, whether it is closed now, or nothing"] = ""
    tag: Annotated[str, "the letter on the tag of what was cut for it, or nothing"] = ""


@dataclass(frozen=True, slots=True)
class PickItem:
    """One item that is picked at a station."""

    name: str
    short: Annotated[str, "so much of its name as tells it from the others at the station"]
    fetch: Annotated[str, "what comes out of the drawer and which packs are opened, and how it is given out"]
    together: Annotated[str, "for the whole run"]
    lines: tuple[PickLine, ...]


@dataclass(frozen=True, slots=True)
class Station:
    """What one person picks at one place, on pages of their own."""

    name: Annotated[str, "clay, wire, stones, findings, paper"]
    tray: Annotated[bool, "whether it is laid out by the bag on a tray square, and counted twice"]
    items: tuple[PickItem, ...]


@dataclass(frozen=True, slots=True)
class PickList:
    """What is picked, a page a station: `pick.html.j2`."""

    head: ListHead
    stations: tuple[Station, ...]


@dataclass(frozen=True, slots=True)
class Bundle:
    """Pieces that are bundled under one tag."""

    mark: Annotated[str, "the letter on its tag, by which every list names it"]
    size: Annotated[str, "the length of each, or its sides"]
    many: int
    whose: Annotated[str, "into which kits it goes, and into which bag; of a strip what is cut of it"]


@dataclass(frozen=True, slots=True)
class CutPieces:
    """So many pieces of one bundle out of one length."""

    size: Annotated[str, "without a unit"]
    mark: Annotated[str, "of its bundle"]
    many: int


@dataclass(frozen=True, slots=True)
class CutLine:
    """A way in which lengths are cut."""

    source: Annotated[str, "from what: spool 3 of 11, of 1000 mm; spools 4 to 6 of 11; kept end of 620 mm"]
    pieces: Annotated[str, "all pieces with the letters of their bundles, the longest first"]
    left: Annotated[str, "what is left of it, and whether it is kept, or nothing"]
    bar: Annotated[Html, "the length drawn to scale, or nothing"]
    tallies: Annotated[
        tuple[str, ...],
        "a name for each length that is cut so, nothing where it is one; of very many what a box is for",
    ]
    each: Annotated[
        tuple[CutPieces, ...], "what comes out of one, for a box a piece; of very many only how many they are"
    ]


@dataclass(frozen=True, slots=True)
class CutItem:
    """What is cut of one item."""

    name: str
    short: Annotated[str, "so much of its name as tells it from the others that are cut"]
    says: Annotated[str, "how many are opened, and what each cut takes"]
    strips: Annotated[bool, "whether what is cut off is a strip, which is cut into pieces"]
    bundles: tuple[Bundle, ...]
    lines: tuple[CutLine, ...]


@dataclass(frozen=True, slots=True)
class CutList:
    """What is cut from which spool and kept end: `cut.html.j2`."""

    head: ListHead
    unit: Annotated[str, "of every length without one"]
    items: tuple[CutItem, ...]


@dataclass(frozen=True, slots=True)
class CheckKit:
    """So many kits of one kind in an order."""

    count: int
    kit: str
    bags: Annotated[tuple[str, ...], "the bags of each, by their names"]


@dataclass(frozen=True, slots=True)
class CheckOrder:
    """An order; nobody is named."""

    number: str
    due: Annotated[str, "as year-month-day, or nothing"]
    kits: tuple[CheckKit, ...]
    cards: Annotated[str, "a card a kit, a slip a part: 2 cards and 1 slip"]
    sheets: Annotated[str, "how many sheets of paper: 5 sheets; nothing where none is sent"]
    note: Annotated[bool, "whether a gift note is with it"]
    ask: Annotated[str, "what is in it of which the carrier must be asked before it is posted, or nothing"] = ""


@dataclass(frozen=True, slots=True)
class CheckList:
    """A line an order, for a second pair of eyes: `check.html.j2`."""

    head: ListHead
    orders: tuple[CheckOrder, ...]


@dataclass(frozen=True, slots=True)
class BuyItem:
    """An item that is bought."""

    name: str
    needed: str
    have: str
    packs: Annotated[tuple[str, ...], "how many of which size; or why that is not known"]
    prices: Annotated[tuple[str, ...], "of one pack of each size"]
    cost: str
    left: str
    why: Annotated[str, "why it is more than is needed, or nothing"] = ""
    lost: Annotated[tuple[str, ...], "what of lengths is used up besides what is needed: and cuts 52.5 mm"] = ()


@dataclass(frozen=True, slots=True)
class BuyShop:
    """What is bought in one shop."""

    name: Annotated[str, "nothing where no shop is stated"]
    items: tuple[BuyItem, ...]
    said: Annotated[tuple[tuple[str, str], ...], "what it comes to, least order and delivery: words and an amount"]


@dataclass(frozen=True, slots=True)
class BuyList:
    """What is bought, by shop: `buy.html.j2`."""

    head: ListHead
    currency: str
    shops: tuple[BuyShop, ...]
    there: Annotated[tuple[BuyItem, ...], "of what the drawer has enough"]
    total: Annotated[str, "what the total is of"]
    amount: str


@dataclass(frozen=True, slots=True)
class LeftItem:
    """An item as it should lie in the drawer afterwards."""

    name: str
    before: str
    bought: str
    used: str
    after: Annotated[str, "nothing where it cannot be reckoned"]
    ends: Annotated[str, "the lengths that it lies there in, or nothing"]
    lost: Annotated[tuple[str, ...], "what of `used` is in no piece: with cuts 52.5 mm"] = ()


@dataclass(frozen=True, slots=True)
class LeftPlace:
    """What is counted at one place."""

    name: Annotated[str, "clay, wire, stones, findings"]
    items: tuple[LeftItem, ...]


@dataclass(frozen=True, slots=True)
class LeftList:
    """The drawer as it should look afterwards: `left.html.j2`."""

    head: ListHead
    places: tuple[LeftPlace, ...]
