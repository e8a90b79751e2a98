# ruff: noqa: E501 - a table is read by its rows
"""What a design says of its kits: colourways whose stones fit their seats, bags, and what comes off a roll."""

from __future__ import annotations

from fractions import Fraction
from typing import Any, NamedTuple

import pytest

DROPS = "drops/project.yaml"
MORE = """\
stones:
  smoke-2: {name: "Glass stone, 2 mm, smoke", size: 1.95-2 mm, height: 1.5 mm, kiln: no, sources: {size: invented}}
  smoke-3: {name: "Glass stone, 3 mm, smoke", size: 2.95-3 mm, height: 2 mm, kiln: no, sources: {size: invented}}
  smoke-3-blue: {name: "Glass stone, 3 mm, blue", size: 2.95-3 mm, height: 2 mm, kiln: no, sources: {size: invented}}
  smoke-2-high: {name: "Glass stone, 2 mm, tall", size: 1.95-2 mm, height: 1.9 mm, kiln: no, sources: {size: invented}}
  smoke-mixed: {name: "Glass stone, 2 mm, unsorted", size: 1.95-2.3 mm, height: 1.5 mm, kiln: no, sources: {size: invented}}
consumables:
  sheet: {name: Release sheet, pack: 5 m, across: 300 mm}
  tape: {name: Tape, pack: 25 m}
"""


@pytest.fixture
def drops(library: Any) -> Any:
    """The small library, with stones of more colours and sizes."""
    library.write("stock/more.yaml", MORE)
    return library


def seats(drops: Any) -> tuple[int, int]:
    """How many stones the main version takes, and the long one."""
    worked = drops.worked("drops")
    return tuple(
        round(next(line.net.high for line in version.materials if line.item.id == "glass-2"))
        for version in worked.versions.values()
    )


class Bad(NamedTuple):
    rule: str
    new: str
    says: tuple[str, ...]
    helps: tuple[str, ...]


CASES = [
    # Colourways
    Bad("nobody knows of what", "colourways: {‸grey sea: {glass-2: 1, smoke-2: 1}}", ("do not say of what",), ("of: stone",)),
    Bad("of a stone that is none", "colourways: {of: ‸stoan, grey sea: {glass-2: 60 %, smoke-2: 40 %}}", ("'stoan' is not in stock",), ("'stone'",)),
    Bad("of what the design does not take", "colourways: {of: ‸smoke-3, grey sea: {smoke-3: 100 %}}", ("takes Glass stone, 3 mm",), ("name what is set",)),
    Bad("of what is weighed", "colourways: {of: ‸clay, grey sea: {silver: 100 %}}", ("counted in g",), ("a stone or a bead",)),
    Bad("a colour that is none", "colourways: {of: stone, grey sea: {glass-2: 60 %, ‸smok-2: 40 %}}", ("'smok-2' is not in stock",), ("'smoke-2'",)),
    Bad("shares of 99 %", "colourways: {of: stone, ‸grey sea: {glass-2: 60 %, smoke-2: 39 %}}", ("'grey sea'", "99 %"), ("100 %", '"60 glass-2 : 39 smoke-2"')),
    Bad("thirds", "colourways: {of: stone, ‸grey sea: {glass-2: 66.6 %, smoke-2: 33.3 %}}", ("99.9 %",), ('"666 glass-2 : 333 smoke-2"',)),
    Bad("counts that leave seats empty", "colourways: {of: stone, ‸grey sea: {glass-2: 7, smoke-2: 4}}", ("counts 11", "SEATS seats"), ("SEATS in all", '"7 glass-2 : 4 smoke-2"')),
    Bad("counts and shares at once", "colourways: {of: stone, grey sea: {glass-2: 60 %, smoke-2: ‸5}}", ("by counts and by shares",), ("in one way",)),
    Bad("none of a colour", "colourways: {of: stone, grey sea: {glass-2: 100 %, ‸smoke-2: 0 %}}", ("none of smoke-2",), ("take it out",)),
    Bad("half a stone", "colourways: {of: stone, grey sea: {glass-2: ‸7.5, smoke-2: 4.5}}", ("'7.5'", "neither a count nor a share"), ("stone-a",)),
    Bad("parts without colours", 'colourways: {of: stone, grey sea: ‸"7 : 5"}', ("'7 : 5'", "which colour"), ('"7 stone-a : 5 stone-b"',)),
    Bad("a part of no stone", 'colourways: {of: stone, grey sea: "7 glass-2 : 5 ‸smok-2"}', ("'smok-2' is not in stock",), ("'smoke-2'",)),
    Bad("a colour twice", 'colourways: {of: stone, ‸grey sea: "7 glass-2 : 5 stone"}', ("twice", "Glass stone"), ("once",)),
    Bad("no colours", "colourways: {of: stone, ‸grey sea: {}}", ("'grey sea' names no colour",), ("stone-a",)),
    Bad("two of one name", "colourways: {of: stone, Grey sea: {glass-2: 100 %}, ‸grey sea: {smoke-2: 100 %}}", ("'Grey sea' too",), ("another name",)),
    Bad("stones of two sizes in a mix", "colourways: {of: stone, grey sea: {glass-2: 60 %, ‸smoke-3: 40 %}}", ("3 mm", "2.95-3 mm across", "1.95-2 mm"), ("the size of Glass stone, 2 mm",)),
    Bad("a stone too tall for the seat", "colourways: {of: stone, grey sea: {glass-2: 60 %, ‸smoke-2-high: 40 %}}", ("1.9 mm high", "1.5 mm"), ("the size of",)),
    Bad("stones of which some are too large", "colourways: {of: stone, grey sea: {glass-2: 60 %, ‸smoke-mixed: 40 %}}", ("1.95-2.3 mm across", "1.95-2 mm"), ("the size of",)),
    Bad("a wire among the stones", "colourways: {of: stone, grey sea: {glass-2: 60 %, ‸copper-16awg: 40 %}}", ("is a wire",), ("same sort",)),
    # Kits
    Bad("a bag of what is not in stock", "kit: {bags: {A: [clay, ‸ear-wir]}}", ("'ear-wir' is not in stock",), ("'ear-wire'",)),
    Bad("a bag of what the design does not take", "kit: {bags: {A: [clay, ‸tape]}}", ("Tape", "no version takes it"), ("take it out",)),
    Bad("a tool in a bag", "kit: {bags: {A: [clay, ‸roller]}}", ("Roller is a tool",), ("in the box: [roller]",)),
    Bad("a stone in the box", "kit: {in the box: [‸stone]}", ("is no tool",), ("bags:",)),
    Bad("a tool that no step uses", "kit: {in the box: [‸knife]}", ("Craft knife", "no version takes it"), ("take it out",)),
    Bad("a thing in two bags", "kit: {bags: {A: [clay, stone], B: [‸glass-2]}}", ("in the kit twice",), ("the other is at projects/drops/project.yaml",)),
    Bad("a thing in a bag and left out", "kit: {bags: {A: [clay, stone]}, leave out: [‸stone]}", ("in the kit twice",), ("keep one",)),
    Bad("a thing twice in one bag", "kit: {bags: {A: [clay, stone, ‸stone]}}", ("in the kit twice",), ("keep one",)),
    Bad("an empty bag", "kit: {bags: {A: [clay], ‸B: []}}", ("the bag 'B' holds nothing",), ("take it out",)),
    Bad("a misspelt field", "kit: {‸bag: {A: [clay]}}", ("no field 'bag'",), ("'bags'",)),
    # Off a roll
    Bad("a piece wider than the roll", "materials: [{item: sheet, amount: 301 mm, wide: ‸310 mm}]", ("301 mm × 310 mm", "wider than the roll, 300 mm"), ("wider roll",)),
    Bad("a piece of no known roll", "materials: [{item: tape, amount: 30 mm, wide: ‸94 mm}]", ("how wide Tape is",), ("across: 300 mm",)),
    Bad("a width in grams", "materials: [{item: sheet, amount: 30 mm, wide: ‸94 g}]", ("'94 g' is no width",), ("94 mm",)),
]  # fmt: skip


@pytest.mark.parametrize("bad", CASES, ids=lambda bad: bad.rule)
def test_what_is_amiss_in_a_kit_is_told_once_at_its_place(bad: Bad, drops: Any) -> None:
    many = str(seats(drops)[0])
    text = drops.path(DROPS).read_text("utf-8")
    if bad.new.startswith("materials"):
        text = text.replace("materials:\n  - item: ear-wire\n    amount: 2\n    for: hanging\n", "")
    changed = text.replace("steps:\n", f"{bad.new}\nsteps:\n")
    drops.write(DROPS, changed.replace("‸", ""))
    errors = drops.check("drops").troubles.errors
    told = "\n".join(map(str, errors))
    assert errors, "nothing is told"
    trouble = errors[0]
    before = changed[: changed.index("‸")]
    assert (trouble.place.line, trouble.place.column) == (before.count("\n") + 1, len(before) - before.rfind("\n")), (
        told
    )
    assert all(w.replace("SEATS", many) in trouble.message for w in bad.says), told
    assert all(w.replace("SEATS", many) in trouble.help for w in bad.helps), told
    assert len([t for t in errors if not t.message.startswith("in version")]) == 1, told


def ways(drops: Any, words: str, version: str = "main") -> Any:
    drops.change(DROPS, "steps:\n", f"colourways: {words}\nsteps:\n")
    return drops.worked("drops").versions[version].colourways


def test_counts_shares_and_parts_come_out_as_they_are_written(drops: Any) -> None:
    text = drops.path(DROPS).read_text("utf-8")
    drops.write(DROPS, text.replace("versions:\n  - name: Long\n    height: 30 mm\n", ""))
    many = next(line.net.high for line in drops.main("drops").materials if line.item.id == "glass-2")
    words = f'{{of: stone, a: {{glass-2: {round(many) - 5}, smoke-2: 5}}, b: {{smoke-2: "62,5 %", stone: 37.5 %}}, c: "7 glass-2 : 5 smoke-2"}}'
    counts, shares, parts = ways(drops, words)
    assert (counts.by, counts.colours) == ("counts", (("glass-2", many - 5), ("smoke-2", 5)))
    assert (shares.by, shares.colours) == ("shares", (("smoke-2", Fraction(5, 8)), ("glass-2", Fraction(3, 8))))
    assert (parts.by, parts.colours) == ("parts", (("glass-2", 7), ("smoke-2", 5)))
    assert {way.seats for way in (counts, shares, parts)} == {many}
    assert [item.name for item in parts.items] == ["Glass stone, 2 mm", "Glass stone, 2 mm, smoke"]


def test_the_same_parts_fill_the_seats_of_every_version(drops: Any) -> None:
    main, long = seats(drops)
    assert long > main
    [way] = ways(drops, '{of: stone, grey sea: "7 glass-2 : 5 smoke-2"}', "Long")
    assert (way.name, way.seats) == ("grey sea", long)


def test_counts_that_fill_the_main_version_alone_are_told_of_the_other(drops: Any) -> None:
    main, long = seats(drops)
    drops.change(
        DROPS, "steps:\n", f"colourways: {{of: stone, grey sea: {{glass-2: {main - 5}, smoke-2: 5}}}}\nsteps:\n"
    )
    [trouble] = drops.check("drops").troubles.errors
    assert trouble.message == f"in version Long: 'grey sea' counts {main}, and there are {long} seats"


def test_a_version_with_larger_stones_has_the_mixes_of_that_size_and_no_others(drops: Any) -> None:
    drops.change(DROPS, "    height: 30 mm\n", "    height: 30 mm\n  - name: Large\n    stone: smoke-3\n")
    drops.change("stock/others.yaml", "2.4 mm, 2.5 mm]", "2.4 mm, 2.5 mm, 3 mm, 3.2 mm, 3.3 mm, 3.4 mm, 3.5 mm]")
    words = '{of: stone, small: "7 glass-2 : 5 smoke-2", large: "1 smoke-3 : 1 smoke-3-blue"}'
    drops.change(DROPS, "steps:\n", f"colourways: {words}\nsteps:\n")
    worked = drops.worked("drops")
    found = {name: [way.name for way in version.colourways] for name, version in worked.versions.items()}
    assert found == {"main": ["small"], "Long": ["small"], "Large": ["large"]}


def test_a_stone_that_is_fired_in_its_seat_is_mixed_with_none_that_bears_less(drops: Any) -> None:
    more = drops.path("stock/more.yaml").read_text("utf-8")
    hard = 'stones:\n  white-2: {name: "White stone, 2 mm", size: 1.95-2 mm, height: 1.5 mm, kiln: to 900 °C, sources: {all: invented}}\n'
    drops.write("stock/more.yaml", more.replace("stones:\n", hard))
    drops.change(DROPS, "  stone: glass-2", "  stone: white-2")
    drops.change(DROPS, "steps:\n", 'colourways: {of: stone, grey sea: "7 white-2 : 5 smoke-2"}\nsteps:\n')
    assert not drops.check("drops").troubles.errors  # set after the fire
    drops.change(DROPS, "    uses: [drills]", "    uses: [drills, stone]")
    text = drops.path(DROPS).read_text("utf-8")
    drops.write(DROPS, text.replace("uses: [stone, epoxy, ear-wire]", "uses: [epoxy, ear-wire]"))
    [told] = {
        t.message.removeprefix("in version Long: ")
        for t in drops.check("drops").troubles.errors
        if "smoke" in t.message
    }
    assert "goes through the fire in the seat of White stone" in told


def test_a_kit_has_its_bags_what_is_left_out_and_the_tools_in_the_box(drops: Any) -> None:
    kit = "kit: {bags: {A clay: clay, B stones: [stone, ear-wire]}, leave out: [epoxy, carbon], in the box: [drills]}"
    drops.change(DROPS, "steps:\n", f"{kit}\nsteps:\n")
    found = drops.worked("drops").main.kit
    bags = {bag.name: [item.id for item in bag.items] for bag in found.bags}
    assert bags == {"A clay": ["silver"], "B stones": ["glass-2", "ear-wire"]}
    assert [item.id for item in found.leave_out] == ["epoxy", "carbon"]
    assert [item.id for item in found.in_the_box] == ["drills"]


def test_a_set_of_sizes_in_the_box_is_a_warning_for_a_kit_gets_one(drops: Any) -> None:
    """Of one size that is known; of five nobody who packs can tell which."""
    kit = "kit: {bags: {A: [clay, stone, ear-wire]}, leave out: [epoxy, carbon], in the box: [drills]}"
    drops.change(DROPS, "steps:\n", f"{kit}\nsteps:\n")
    found = drops.check("drops").troubles
    assert not found.errors
    assert [t.message for t in found] == ["Drills is in the box in 5 sizes, and a kit gets one: which is not said"]
    drops.change("stock/others.yaml", "sizes: [2 mm, 2.2 mm, 2.3 mm, 2.4 mm, 2.5 mm]", "sizes: [2.3 mm]")
    assert not [t.message for t in drops.check("drops").troubles if "in the box" in t.message]


def test_what_lies_in_no_bag_and_is_not_left_out_is_a_warning(drops: Any) -> None:
    drops.change(DROPS, "steps:\n", "kit: {bags: {A: [clay, stone]}}\nsteps:\n")
    found = drops.check("drops").troubles
    assert not found.errors
    assert [t.message for t in found] == ["Ear wire is in no bag of the kit, and is not left out"]


def test_what_only_another_version_takes_may_lie_in_a_bag(drops: Any) -> None:
    drops.change(DROPS, "    height: 30 mm\n", "    height: 30 mm\n    clay: copper\n")
    drops.change(DROPS, "steps:\n", "kit: {bags: {A: [silver, copper, stone, ear-wire]}}\nsteps:\n")
    worked = drops.worked("drops").versions
    assert {name: [i.id for i in version.kit.bags[0].items] for name, version in worked.items()} == {
        "main": ["silver", "glass-2", "ear-wire"],
        "Long": ["copper", "glass-2", "ear-wire"],
    }


def test_two_choices_that_are_one_item_may_lie_in_one_bag(drops: Any) -> None:
    drops.change(DROPS, "  stone: glass-2", "  stone: glass-2\n  other stone: glass-2")
    drops.change(DROPS, "steps:\n", "kit: {bags: {A: [clay, ear-wire], B: [stone, other stone]}}\nsteps:\n")
    assert [[item.id for item in bag.items] for bag in drops.worked("drops").main.kit.bags] == [
        ["silver", "ear-wire"],
        ["glass-2"],
    ]


def test_a_piece_off_a_roll_has_both_its_sides(drops: Any) -> None:
    drops.change(DROPS, "materials:\n", "materials:\n  - {item: sheet, amount: 27 mm, wide: 2 * body.length + 50 mm}\n")
    line = next(line for line in drops.main("drops").materials if line.item.id == "sheet")
    assert line.off_roll == ((1, 27, 94),)  # 2 × 22 + 50
    assert line.net.usual == 27
