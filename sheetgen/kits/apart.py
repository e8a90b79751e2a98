"""Bags for a design that names none: what would leak, stain or dust goes into one of its own, all else into one."""

from __future__ import annotations

from dataclasses import replace
from string import ascii_uppercase
from typing import TYPE_CHECKING

from sheetgen.base.material import Adhesive, Consumable
from sheetgen.base.spelling import in_a_sentence, told_apart
from sheetgen.facts.parcels import BY_ITSELF
from sheetgen.model.kit import Kit, KitBag

if TYPE_CHECKING:
    from sheetgen.base.material import Item
    from sheetgen.model.worked import WorkedVersion


def by_itself(item: Item) -> bool:
    """Whether a thing must share no bag: an adhesive, a liquid, what is weighed out of a tub, what the post asks of."""
    tub = item.unit == "mL" or (isinstance(item, Consumable) and item.unit == "g")
    return isinstance(item, Adhesive) or tub or bool(item.supply.post) or item.acts(*BY_ITSELF)


def bagged(version: WorkedVersion) -> WorkedVersion:
    """A version with bags where its design names none: A for what may lie together, then one for each other thing.

    All that is told by amount goes into a bag, as it does where there is one alone; the filling of a firing box does
    not.
    """
    if version.kit is not None and version.kit.bags:
        return version
    left_out = {one.id for one in version.kit.leave_out} if version.kit else set()
    lines = (line for line in version.materials if line.net is not None and not line.filling)
    items = {line.item.id: line.item for line in lines if line.item.id not in left_out}
    own = [item for item in items.values() if by_itself(item)]
    shared = tuple(item for item in items.values() if item not in own)
    names = [f" {in_a_sentence(name)}" for name in told_apart([item.name for item in own])]
    each = [("", shared)] * bool(shared) + [(name, (item,)) for name, item in zip(names, own, strict=True)]
    if len(each) < 2 or len(each) > len(ascii_uppercase):  # noqa: PLR2004 - one bag needs no letter
        return version
    bags = tuple(KitBag(f"{letter}{name}", kept) for letter, (name, kept) in zip(ascii_uppercase, each, strict=False))
    return replace(version, kit=replace(version.kit or Kit(), bags=bags))
