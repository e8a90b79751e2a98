"""How pieces lie on what they are cut from: rows on a sheet of metal, strips across a roll, and into which bag they go.

Each is told with a ruler: the sides that are said are laid down again, and none overlaps another or the edge.
"""

from __future__ import annotations

import re
from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest

from sheetgen.base.frozen import Frozen
from sheetgen.base.interval import interval
from sheetgen.base.material import Consumable, Item, Sheet
from sheetgen.base.place import Place, Source
from sheetgen.base.rounding import Rounder
from sheetgen.base.supply import Pack, Supply
from sheetgen.kits.bought import bought
from sheetgen.kits.buy_paper import places
from sheetgen.kits.cut_list import cut, cuttings
from sheetgen.kits.cut_paper import cut_items
from sheetgen.kits.lists import left
from sheetgen.kits.run import taken
from sheetgen.kits.taken import Kits
from sheetgen.model.kit import Kit, KitBag
from sheetgen.model.worked import MaterialLine, Publisher, Worked, WorkedVersion

DROPS = Worked(
    name="drops", folder="", title="Drops", revision="1", date="2026-05-01", level="Beginner",
    place=Place(Source("", ""), 1), worn_by="wearer", worn_at="ear", worn_places=Frozen(),
    studio=Publisher("Anybench"), rounder=Rounder(),
)  # fmt: skip


def metal(cut: str = "0", long: float = 50, wide: float = 50) -> Sheet:
    packs = (Pack(Fraction(long * wide), Decimal(26)),)
    supply = Supply(given_out="cut", packs=packs, saw_cut=Fraction(cut))
    return Sheet(id="m", name="Sheet", unit="mm²", thickness=0.6, density=10, long=long, wide=wide, supply=supply)


def lines(item: Item, *pieces: tuple[int, float, float], bags: int = 1, kit: Kit | None = None) -> list[Any]:
    """The cutting list of so many kits, on paper; and as a spreadsheet has it."""
    area = sum(many * long * wide for many, long, wide in pieces)
    of_roll = isinstance(item, Consumable)
    net = sum(many * long for many, long, _ in pieces) if of_roll else area
    off_roll, blanks = (pieces, ()) if of_roll else ((), pieces)
    held = MaterialLine(item, interval(net), 0.0, off_roll=off_roll, blanks=blanks)
    version = WorkedVersion("main", "Long", materials=(held,), kit=kit)
    got, troubles = bought(taken([Kits(DROPS, version, bags, posted=kit is not None)]))
    assert not troubles
    found = cuttings(got)
    [one] = cut_items(found, [[""] * len(one.ways) for one in found], Rounder())  # type: ignore[list-item]
    return [one, [dict(zip(cut(found).head, row, strict=True)) for row in cut(found).rows]]


def flat(text: str) -> str:
    return text.replace("\u00a0", " ")


def test_blanks_lie_in_rows_and_what_is_left_below_is_one_piece() -> None:
    """50 mm hold five of 9.8; with a cut of 0.5 mm four and a bit of a fifth: 4 × 9.8 + 3 × 0.5 = 40.7, 51 for five."""
    for saw, across, rest in (("0", 5, "50 × 40.2"), ("1/2", 4, "50 × 39.7")):
        paper, [row] = lines(metal(saw), (1, 9.8, 9.8), bags=across)
        [line] = paper.lines
        assert flat(f"{line.source}: {line.pieces}, {line.left}") == (
            f"Sheet 1 of 1, 50 × 50 mm: {across} across, 9.8 × 9.8 a, left {rest} below them"
        )
        assert (row["from"], row["number"], row["left"]) == ("sheet", 1, rest)


def test_of_a_narrow_strip_its_length_is_left_and_not_a_sliver_along_it() -> None:
    """Off 300 × 5 a strip of 25 × 1.8 and one of 21 × 1.5 side by side leave 254 × 5: 300 − 25 − 21."""
    paper, [row] = lines(metal(long=300, wide=5), (1, 25.0, 1.8), (1, 21.0, 1.5))
    [line] = paper.lines
    assert flat(line.left) == "left 254 × 5 at their right"
    assert row["left"] == "254 × 5"


def test_rows_that_are_alike_are_told_once() -> None:
    """94 × 20 on 300 × 310: three across, and five rows of them are 100 mm high, 210 are left."""
    paper, _ = lines(metal(long=300, wide=310), (1, 94.0, 20.0), bags=15)
    [line] = paper.lines
    assert flat(f"{line.pieces}, {line.left}") == "5 rows of 3 across, 94 × 20 a, left 300 × 210 below them"


@pytest.mark.parametrize("saw", ["0", "1/2", "2"])
@pytest.mark.parametrize("pieces", [((1, 40.0, 22.0),), ((2, 21.0, 13.0), (1, 30.0, 8.5)), ((3, 17.0, 11.0),)])
def test_what_is_said_of_a_sheet_can_be_laid_down_on_it(pieces: Any, saw: str) -> None:
    paper, rows = lines(metal(saw), *pieces, bags=4)
    loss, seen = float(Fraction(saw)), 0
    for line, row in zip(paper.lines, rows, strict=True):
        down, laid = 0.0, []
        for told in flat(line.pieces).split("; "):
            if at := re.fullmatch(r"([\d.]+) × ([\d.]+) \w at ([\d.]+), ([\d.]+) from the corner", told):
                wide, high, x, y = map(float, at.groups())
                laid.append((x, y, wide, high))
                continue
            many, row_of = re.fullmatch(r"(?:(\d+) rows of )?(.*)", told).groups()  # type: ignore[union-attr]
            each = [
                (int(n), float(w), float(h)) for n, w, h in re.findall(r"(\d+) across, ([\d.]+) × ([\d.]+)", row_of)
            ]
            for _ in range(int(many or 1)):
                x = 0.0
                for n, wide, high in each:
                    for _ in range(n):
                        laid.append((x, down, wide, high))
                        x += wide + loss
                down += max(high for _, _, high in each) + loss
        for nth, (x, y, wide, high) in enumerate(laid):
            assert x + wide <= 50
            assert y + high <= 50
            for x2, y2, wide2, high2 in laid[:nth]:
                apart = (
                    x2 >= x + wide + loss or x >= x2 + wide2 + loss or y2 >= y + high + loss or y >= y2 + high2 + loss
                )
                assert apart, (laid[nth], (x2, y2, wide2, high2))
        foot = max(y + high for _, y, _, high in laid)
        below, beside = 50 - foot - loss, 50 - max(x + wide for x, _, wide, _ in laid) - loss
        if max(below, beside) <= 0:
            assert line.left == "nothing left in one piece"
        elif below >= beside:
            assert flat(line.left) == f"left 50 × {below:g} below them"
        else:
            assert flat(line.left) == f"left {beside:g} × 50 at their right"
        seen += len(laid) * int(row["times"])
    assert seen == 4 * sum(many for many, _, _ in pieces)


def test_a_strip_across_a_roll_says_how_many_lie_side_by_side_and_what_is_left_of_the_roll() -> None:
    """94 mm lie three times across 300; seven of them want three strips of 27 mm, and 5000 − 81 are left."""
    roll = Consumable(
        id="r", name="Roll", unit="mm", across=300, supply=Supply(given_out="cut", packs=(Pack(Fraction(5000)),))
    )
    paper, _ = lines(roll, (1, 27.0, 94.0), bags=7)
    [bundle], [line] = paper.bundles, paper.lines
    assert bundle.whose.replace("\u00a0", " ") == "7 of 27 × 94 mm, 3 across, Drops, Long"
    assert flat(f"{line.source}: {line.pieces}, {line.left}") == (
        "Spool 1 of 1, 300 × 5000 mm: 27 a · 27 a · 27 a, left 300 × 4919, keep"
    )


def test_a_tag_names_the_bag_that_its_pieces_go_into() -> None:
    item = metal()
    paper, [row] = lines(item, (1, 9.8, 9.8), bags=2, kit=Kit((KitBag("C metal", (item,)),)))
    assert [(b.mark, flat(b.size), flat(b.whose)) for b in paper.bundles] == [
        ("a", "9.8 × 9.8 mm", "Drops, Long, bag C metal")
    ]
    assert row["pieces"] == "2 × 9.8 × 9.8 mm, tag a, Drops, Long, bag C metal"


def test_the_drawer_has_the_piece_of_a_sheet_that_the_cutting_table_leaves() -> None:
    """Of 50 × 50 the four below each other of 22 × 22 leave 50 × 6; two sheets of them are told once."""
    each = (
        (1, "and, not counted, 50 × 28 mm, of 1 sheet", 2500 - 484),
        (8, "and, not counted, 2 of 50 × 6 mm, of 2 sheets", 5000 - 8 * 484),
    )
    for bags, told, over in each:
        held = MaterialLine(metal(), interval(22.0 * 22.0), 0.0, blanks=((1, 22.0, 22.0),))
        got, _ = bought(taken([Kits(DROPS, WorkedVersion("main", "Long", materials=(held,)), bags)]))
        [row] = left(got).rows
        assert row[-1] == f"{told}; with offcuts {over} mm²"
        [place] = places(got, Rounder())
        assert flat(place.items[0].ends) == told
