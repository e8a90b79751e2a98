"""What lies in one kit, or at a place of a class, in the words of its paper."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.kits.coded import code_of_kit
from sheetgen.kits.kit_lines import every_line
from sheetgen.model.amounts import in_print
from sheetgen.model.packed import Lot, Packed, PackedBag

if TYPE_CHECKING:
    from sheetgen.base.rounding import Rounder
    from sheetgen.kits.contents import Bag, Content, Contents
    from sheetgen.kits.taken import Kits


def packed(kits: Kits, contents: Contents) -> Packed:
    """The contents of one kit as a sheet, a card and a label print them; nothing of it hangs on the run besides."""
    lines = list(every_line(kits))
    lacking, boxed = ({item.id for item in each} for each in (contents.lacking, contents.in_the_box))
    return Packed(
        chosen=kits.otherwise,
        colourway=kits.colourway.name if kits.colourway else "",
        bags=tuple(_bag(bag, kits.rounder) for bag in contents.bags),
        box=tuple(line for line in kits.version.tools if line.item.id in boxed),
        bench=tuple(line for line in lines if line.item.id in lacking),
        tools=tuple(line for line in kits.version.tools if line.item.id not in boxed),
        code=code_of_kit(kits),
    )


def at_a_place(kits: Kits) -> Packed:
    """One piece as it is made at a table of the studio: nothing of it comes in a bag or in a box."""
    return Packed(
        chosen=kits.otherwise,
        colourway=kits.colourway.name if kits.colourway else "",
        bags=(),
        box=(),
        bench=tuple(every_line(kits)),
        tools=kits.version.tools,
        code=code_of_kit(kits),
    )


def _bag(bag: Bag, rounder: Rounder) -> PackedBag:
    return PackedBag(bag.name, tuple(Lot(one.item, amount(one, rounder)) for one in bag.contents))


def amount(content: Content, rounder: Rounder) -> str:
    """How much of a thing is in its bag: 16 g, 12 + 1 where some are to spare, 27 × 94 mm; nothing where as needed."""
    if content.each is None:
        return ""
    if content.sides is not None:
        long, wide = (rounder.length(float(side), "bench up") for side in content.sides)
        piece = f"{long.words} × {wide.told}"
        return piece if content.each == 1 else f"{content.each} of {piece}"
    net = float(content.each - content.spare)
    return in_print(net, float(content.each), content.unit, rounder).listed
