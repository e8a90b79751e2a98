"""What lies in one kit, or at a place of a class, in the words of its paper."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.kits.kit_lines import every_line
from sheetgen.model.fingerprint import LISTS, Number, fingerprint
from sheetgen.model.in_print import in_print
from sheetgen.model.numbers import Numbers
from sheetgen.model.packed import Lot, Packed, PackedBag
from sheetgen.model.printed import AS_NEEDED, Row, each_once, for_the_maker, taken_numbers, tool_numbers

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.base.rounding import Rounder
    from sheetgen.kits.contents import Bag, Content, Contents
    from sheetgen.kits.taken import Kits
    from sheetgen.model.worked import MaterialLine


def packed(kits: Kits, contents: Contents) -> Packed:
    """The contents of one kit as a sheet, a card and a label print them; nothing of it hangs on the run besides."""
    lines = list(every_line(kits))
    lacking, boxed = ({item.id for item in each} for each in (contents.lacking, contents.in_the_box))
    bags, bench = (
        tuple(_bag(bag, kits.rounder) for bag in contents.bags),
        [one for one in lines if one.item.id in lacking],
    )
    lists = _lists(kits, bags, bench)
    return Packed(
        called=kits.called if kits.choices else "",
        colourway=kits.colourway.name if kits.colourway else "",
        bags=bags,
        box=tuple(line for line in kits.version.tools if line.item.id in boxed),
        bench=tuple(bench),
        tools=tuple(line for line in kits.version.tools if line.item.id not in boxed),
        lists=lists,
        code=_code(kits, lists),
    )


def at_a_place(kits: Kits) -> Packed:
    """One piece as it is made at a table of the studio: nothing of it comes in a bag or in a box.

    In no colourway its sheets are those of the version, and bear its fingerprint.
    """
    bench = tuple(every_line(kits))
    lists = _lists(kits, (), bench) if kits.colourway else ()
    return Packed(
        called=kits.called if kits.choices else "",
        colourway=kits.colourway.name if kits.colourway else "",
        bags=(),
        box=(),
        bench=bench,
        tools=kits.version.tools,
        lists=lists,
        code=_code(kits, lists) if lists else "",
    )


def _lists(kits: Kits, bags: Sequence[PackedBag], bench: Sequence[MaterialLine]) -> tuple[Number, ...]:
    """The numbers of its lists: what is in the bags, what comes from the bench, the sizes of tools."""

    def rows() -> Iterator[Row]:
        for lot in (lot for bag in bags for lot in bag.lots):
            yield Row(Number(LISTS, lot.item.id, lot.item.name, lot.amount or AS_NEEDED))
        yield from taken_numbers(bench, kits.version.slabs, kits.rounder)
        yield from tool_numbers(kits.version.tools, Numbers(kits.rounder))

    return tuple(row.number for row in each_once(rows()) if row.maker)


def _code(kits: Kits, lists: Sequence[Number]) -> str:
    """The fingerprint of its sheets, card and label: of all that they print, with its own lists."""
    return fingerprint([*for_the_maker(kits.worked, kits.version), *lists])


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
