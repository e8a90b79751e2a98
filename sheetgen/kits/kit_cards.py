"""The cards of a run of orders, a kit each, and slips for single parts: what is in it and what not, and cautions."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.spelling import in_a_sentence, told_apart
from sheetgen.facts.cautions import ASK_FIRST, OF_A_KIT
from sheetgen.kits.lists import number
from sheetgen.kits.packed import amount
from sheetgen.kits.parcels import lots, parcels
from sheetgen.model.cards import Card
from sheetgen.model.in_print import amount_told
from sheetgen.model.kit_cards_view import KitCard, Ticked, Warned
from sheetgen.model.sheets import Sheet

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from sheetgen.base.material import Item
    from sheetgen.base.rounding import Rounder
    from sheetgen.kits.contents import Content, Contents
    from sheetgen.kits.ordered import Run
    from sheetgen.kits.parcels import Kind
    from sheetgen.kits.taken import Taken
    from sheetgen.model.sheets import Cell

HEAD = ("order", "bag", "item", "amount", "spare", "unit")


def kit_cards(run: Run, taken: Sequence[Taken]) -> list[Card]:
    """A card for each kit and a slip for each single part, in the order of the stack.

    None bears a name: that stands on the labels alone. A gift note stands on the first kit of its order; where no kit
    is sent, on the first slip.
    """
    kinds: dict[int, KitCard] = {}
    cards, noted = [], set[str]()
    for parcel in parcels(run, taken):
        order, kind = parcel.order, parcel.kind
        if id(kind) not in kinds:
            kinds[id(kind)] = _card(kind)
        kits_sent = any(not part.kits.only for part in order.parts)
        note = order.gift_note if order.number not in noted and kind.slip is not kits_sent else ""
        noted |= {order.number} if note else set()
        cards.append(
            Card(order.number, parcel.which, kinds[id(kind)], note, order.due.isoformat() if order.due else "")
        )
    return cards


def card_rows(run: Run, taken: Sequence[Taken]) -> Sheet:
    """A row for each thing in each kit, so that the amounts add up to what is picked; as needed: no amount."""
    each = [(list(_rows(order.number, kind.contents)), many) for order, kind, many in lots(run, taken)]
    return Sheet("kit cards", HEAD, tuple(row for rows, many in each for row in rows * many))


def _rows(order: str, held: Contents) -> Iterator[tuple[Cell, ...]]:
    for bag in held.bags:
        for one in bag.contents:
            amount = None if one.each is None else number(one.each)
            yield order, bag.name, one.item.id, amount, None if amount is None else number(one.spare), one.unit
    for item in held.in_the_box:
        yield order, "in the box", item.id, 1, 0, item.unit


def _card(kind: Kind) -> KitCard:
    kits, held = kind.kits, kind.contents
    rounder = kits.rounder
    rows = []
    for bag in held.bags:
        for nth, one in enumerate(bag.contents):
            name, _, detail = one.item.name.partition(", ")
            much, spare = _amount(one, rounder)
            rows.append(Ticked(bag.name if nth == 0 else "", much, spare, name, detail))
    worked = kits.worked
    return KitCard(
        slip=kind.slip,
        alone=kits.bags_alone,
        title=worked.title,
        version=kind.version,
        colourway=kind.colourway,
        rows=tuple(rows),
        box=tuple(item.name for item in held.in_the_box),
        sheets=kits.sheets,
        lacking=() if kind.slip else short_names(held.lacking, held.inside),
        tools=bool(held.tools) and not kind.slip,
        warned=tuple(_warned(kind)),
        foot=" · ".join((worked.revised(kits.version), worked.date, kind.code, worked.studio.name)),
    )


def _warned(kind: Kind) -> Iterator[Warned]:
    """What the studio's cautions say of the design that holds for a kit; then what to ask before it is posted."""
    told = {caution.id: caution for step in kind.kits.version.steps for caution in step.cautions}
    for name in OF_A_KIT:
        if caution := told.get(name):
            yield Warned(caution.word, f"{caution.hazard[:-1]} {in_a_sentence(caution.consequence)} {caution.avoid}")
    if ask := short_names(kind.contents.ask):
        yield Warned(ASK_FIRST.word, f"{ASK_FIRST.hazard.format(', '.join(ask))} {ASK_FIRST.avoid}")


def short_names(items: Iterable[Item], others: Iterable[Item] = ()) -> tuple[str, ...]:
    """Names as a line of them says them, each once: what stands before the first comma, and what tells it from others.

    `others` are named beside them.
    """
    own = tuple(items)
    each = {item.id: item for item in (*own, *others)}
    names = dict(zip(each, told_apart([item.name for item in each.values()]), strict=True))
    return tuple(dict.fromkeys(in_a_sentence(names[item.id]) for item in own))


def _amount(one: Content, rounder: Rounder) -> tuple[str, str]:
    """How much of a thing is in its bag, and to spare besides; of a piece that is cut its sides, as on the handout."""
    if one.each is None:
        return "as needed", ""
    if one.sides is not None:
        return amount(one, rounder), ""
    return amount_told(float(one.each), float(one.spare), one.unit, rounder)
