"""The labels of a run of orders, a bag each, in the order of the stack."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.printed import NBSP, whole
from sheetgen.base.spelling import begun, told_apart
from sheetgen.facts.cautions import AS_THE_SHEET_SAYS, LADDER
from sheetgen.kits.apart import by_itself
from sheetgen.kits.kit_cards import short_names
from sheetgen.kits.packed import amount
from sheetgen.kits.parcels import parcels
from sheetgen.model.cards import BagLabel
from sheetgen.model.in_print import THIN
from sheetgen.model.item_hazards import brought_by
from sheetgen.model.kit_cards_view import Label, OrderHead, Warned
from sheetgen.model.sheets import Sheet

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence

    from sheetgen.kits.contents import Content
    from sheetgen.kits.ordered import Run
    from sheetgen.kits.parcels import Kind, Parcel
    from sheetgen.kits.taken import Kits, Taken

HEAD = (
    "order",
    "name",
    "design",
    "version",
    "colourway",
    "kit",
    "bag",
    "contents",
    "caution",
    "not in the bag",
    "code",
)
SHORT = 8  # letters of an amount that goes over with the word before it
SIZED = re.compile(r"[ \u00a0][0-9][0-9.,½¼¾]*[ \u00a0](mm|cm|in|AWG|SWG)$")
"""The size that a name ends with: of two that are alike but for it the name is said once."""


def bag_labels(run: Run, taken: Sequence[Taken], address: Callable[[Kits, str], str]) -> list[BagLabel]:
    """A label for each bag of each kit, and one for each part that is sent by itself.

    `address` gives the page of a kind at the fingerprint it is told, or nothing. What is not in the kit is told on its
    last label.
    """
    found, urls = [], dict[int, str]()
    for parcel, labels in _each(run, taken):
        kind = parcel.kind
        if id(kind) not in urls:
            urls[id(kind)] = "" if kind.slip else address(kind.kits, kind.code)
        head = OrderHead(parcel.order.number, parcel.order.name)
        which = _which(parcel)
        found += [BagLabel(head, replace(label, which=which) if which else label, urls[id(kind)]) for label in labels]
    return found


def label_rows(run: Run, taken: Sequence[Taken]) -> Sheet:
    """A row for each label, in the same order, with all that one is made of: for who makes them in another way."""
    rows = []
    for parcel, labels in _each(run, taken):
        order, kind = parcel.order, parcel.kind
        called = (order.number, order.name, kind.kits.design, kind.kits.called, kind.colourway)
        for one in labels:
            warned = " ".join(f"{each.word}: {each.text}" for each in one.warned)
            said = (_which(parcel), one.bag, "; ".join(one.inside), warned, ", ".join(one.items))
            spaced = (words.replace(NBSP, " ").replace(THIN, " ") for words in said)
            code = "" if kind.slip else kind.code  # no sheet goes with a part that is sent alone
            rows.append(tuple(words or None for words in (*called, *spaced, code)))
    return Sheet("labels", HEAD, tuple(rows))


def _each(run: Run, taken: Sequence[Taken]) -> Iterator[tuple[Parcel, tuple[Label, ...]]]:
    """Every kit of a run with the labels of its kind."""
    of_kind: dict[int, tuple[Label, ...]] = {}
    for parcel in parcels(run, taken):
        if id(parcel.kind) not in of_kind:
            of_kind[id(parcel.kind)] = tuple(_labels(parcel.kind))
        yield parcel, of_kind[id(parcel.kind)]


def _which(parcel: Parcel) -> str:
    return whole(parcel.which) if parcel.many > 1 else ""


def _bags(kind: Kind) -> list[str]:
    """The bags by their names; a kit without a bag still has its one label, and what is sent by itself is one bag."""
    return [bag.name for bag in kind.contents.bags if not kind.slip] or [""]


def _labels(kind: Kind) -> Iterator[Label]:
    bags = _bags(kind)
    for nth, bag in enumerate(bags, 1):
        last = kind.contents.lacking if nth == len(bags) else ()
        held = [one for each in kind.contents.bags if kind.slip or each.name == bag for one in each.contents]
        of = whole(f"{nth} of {len(bags)}") if len(bags) > 1 else ""
        yield Label(
            slip=kind.slip,
            bag=kind.kits.bags_alone if kind.slip else ", ".join(filter(None, (bag, of))),
            which="",
            title=kind.kits.design,
            version=kind.version,
            colourway=kind.colourway,
            inside=_inside(kind, held),
            warned=tuple(_warned(kind, held)),
            items=() if kind.slip else short_names(last, kind.contents.inside),
        )


def _warned(kind: Kind, held: Sequence[Content]) -> Iterator[Warned]:
    """The cautions of what would leak, stain, burn or dust, gravest first.

    Taken out of its own pack it has no maker's label.
    """
    brought = {name for one in held if by_itself(one.item) for name in brought_by(one.item)}
    told = {one.id: one for step in kind.kits.version.steps for one in step.cautions if one.id in brought}
    for one in sorted(told.values(), key=lambda one: LADDER.index(one.word)):
        yield Warned(one.word, f"{one.hazard} {one.consequence} {AS_THE_SHEET_SAYS}", one.short)


def _inside(kind: Kind, lots: Sequence[Content]) -> tuple[str, ...]:
    """What lies in a bag, of a slip in all that is sent, in the words of card and handout: Ear wires: 2 + 1.

    What begins alike is said once, where each has a word of its own: Foiled stone PP 18: blue 7 + 1, smoke 5 + 1;
    Glass bead: 8 mm 2 + 1, 5 mm 4 + 1.
    """
    names = told_apart([one.item.name for one in lots])
    alone = Counter(SIZED.sub("", name) for name in names)
    alike: dict[str, list[str]] = {}
    for one, told in zip(lots, names, strict=True):
        first = one.item.name.partition(", ")[0]
        if alone[SIZED.sub("", told)] > 1:
            first = SIZED.sub("", told)
        apart = told != first and first in names  # another is called so, and this is no kind of it
        own = "" if apart else whole(told.removeprefix(first).strip())
        each = NBSP.join(filter(None, (own, amount(one, kind.kits.rounder))))  # a colour stays with its count
        alike.setdefault(begun(told if apart else first), []).append(each)
    return tuple(_together(first, each) for first, each in alike.items())


def _together(first: str, each: Sequence[str]) -> str:
    """A thing and how much of it there is, which stays with the last word of its name."""
    if len(each) == 1 and len(each[0]) <= SHORT:
        return f"{first}:{NBSP}{each[0]}"
    return ": ".join(filter(None, (first, ", ".join(each))))
