"""How many loads a firing takes, what a box of carbon takes, and what does not go into the kiln."""

from __future__ import annotations

from typing import Any

import pytest

from sheetgen.work.class_loads import firings

KILN = """\
  kiln:
    name: Kiln
    kind: kiln
    chamber wide: 150 mm
    chamber deep: 150 mm
    chamber high: 130 mm
    shelf wide: 110 mm
    shelf deep: 80 mm
    shelf gap: 50 mm
  box:
    name: Box
    acts as: [firing box]
    inside wide: 100 mm
    inside deep: 90 mm
    inside high: 60 mm
"""
CARBON = "    acts as: [carbon]\n"


@pytest.fixture
def kiln(library: Any) -> Any:
    """A kiln with shelves of 110 × 80 mm, two over each other, and a box; plates that are cut 20 mm square."""
    library.change("stock/others.yaml", "  roller:\n", KILN + "  roller:\n")
    library.change("stock/others.yaml", CARBON, f"{CARBON}    bulk density: 0.5 g/cm³\n    pack: 1 kg\n")
    library.change("pendant/project.yaml", "    shape: disc\n    across: width\n", SQUARE)
    library.change("pendant/project.yaml", "{{ plate.wet_disc }}", "{{ plate.wet_across }}")
    library.change("pendant/project.yaml", "  width: 20 mm\n", "  width: 18.2 mm\n  many: 6\n")
    library.change("pendant/project.yaml", "    uses: [firing-box, carbon]\n", "    uses: [kiln, box, carbon]\n")
    return library


SQUARE = "    shape: rectangle\n    across: width\n    down: width + 0.0001 mm\n    count: many\n"


def loads(library: Any, **choices: str) -> Any:
    return next(step.loads for step in library.main("pendant", **choices).steps if step.clay)


def test_plates_of_20_mm_and_10_apart_lie_four_by_three_on_a_shelf_of_110_by_80(kiln: Any) -> None:
    # By pencil: 4 × 20 + 3 × 10 = 110, 3 × 20 + 2 × 10 = 80; 18.2 ÷ (1 − 0.09) = 20.
    [load] = loads(kiln, many="12")
    assert (load.pieces, load.fullest, load.places, load.loads) == (12, 12, 1, 1)
    [load] = loads(kiln, many="13")
    assert (load.fullest, load.places, load.loads) == (12, 2, 1)


def test_two_shelves_of_10_mm_stand_50_apart_in_130_and_the_rest_is_a_second_load(kiln: Any) -> None:
    # 2 × (10 + 50) = 120 of 130 mm.
    assert loads(kiln, many="24")[0].loads == 1
    assert loads(kiln, many="25")[0].loads == 2
    kiln.change("stock/others.yaml", "chamber high: 130 mm", "chamber high: 119 mm")
    assert loads(kiln, many="24")[0].loads == 2


def test_what_is_higher_than_the_gap_is_fired_on_one_shelf(kiln: Any) -> None:
    kiln.change("pendant/project.yaml", "thickness: 4 cards", "thickness: 18 mm")
    kiln.change("stock/others.yaml", "shelf gap: 50 mm", "shelf gap: 16 mm")
    assert loads(kiln, many="13")[0].loads == 2


@pytest.mark.parametrize(("old", "new"), [
    ("shelf wide: 110 mm", "shelf wide: 151 mm"), ("shelf deep: 80 mm", "shelf deep: 200 mm"),
    ("shelf gap: 50 mm", "shelf gap: 130 mm"),
])  # fmt: skip
def test_a_shelf_that_does_not_go_into_its_chamber_is_told_at_the_kiln(old: str, new: str, kiln: Any) -> None:
    kiln.change("stock/others.yaml", old, new)
    troubles = [t for t in kiln.check("pendant").troubles.errors if "the shelf" in t.message]
    [trouble] = troubles
    assert "chamber" in trouble.message
    assert trouble.place.source.name == "projects/stock/others.yaml"


def test_a_shelf_turned_by_a_quarter_goes_in(kiln: Any) -> None:
    kiln.change("stock/others.yaml", "chamber wide: 150 mm", "chamber wide: 80 mm")
    assert loads(kiln, many="12")[0].loads == 1


@pytest.mark.parametrize("many", ["1", "400", "401", "1000"])
@pytest.mark.parametrize(("clay", "where"), [("silver", "on a shelf of Kiln"), ("copper", "into Box")])
def test_however_many_there_are_one_too_large_is_told(many: str, clay: str, where: str, kiln: Any) -> None:
    # 120 mm wide before it is fired goes on no shelf of 110 mm, and into no box of 100 mm
    kiln.change("pendant/project.yaml", "  width: 18.2 mm\n  many: 6\n", f"  width: 110 mm\n  many: {many}\n")
    kiln.change("pendant/project.yaml", "  clay: silver\n", f"  clay: {clay}\n")
    told = [t.message for t in kiln.check("pendant").troubles.errors]
    assert any("before it is fired, does not go" in message and where in message for message in told), told


def test_of_more_pieces_than_any_class_fires_no_loads_are_told(kiln: Any) -> None:
    assert loads(kiln, many="401") == ()


def test_a_second_load_is_waited_for_as_long_as_the_first(kiln: Any) -> None:
    one, two = (kiln.main("pendant", many=n) for n in ("24", "25"))
    firing = next(step.wait for step in one.steps if step.clay)
    assert two.whole_times[-1].high == pytest.approx(2 * firing.high)
    assert one.whole_times[-1].high == pytest.approx(firing.high)
    carbon = kiln.main("pendant", clay="copper", width="17.2 mm")  # one load on the shelf and two in carbon
    assert carbon.whole_times[-1].high == pytest.approx(2 * next(s.wait.high for s in carbon.steps if s.clay))


def test_in_carbon_every_piece_has_15_mm_of_it_all_round(kiln: Any) -> None:
    # Copper shrinks to 0.86: 17.2 mm are cut 20. Inside 100 × 90 less 2 × 15 are 70 × 60, which take two by two.
    shelf, box = loads(kiln, clay="copper", width="17.2 mm")
    assert (shelf.boxed, shelf.loads) == (False, 1)
    assert (box.boxed, box.fullest, box.places, box.loads) == (True, 4, 2, 2)


def test_a_studio_or_a_maker_may_want_another_depth_of_carbon(kiln: Any) -> None:
    kiln.change("studio.yaml", "units: mm\n", "units: mm\nbed depth: 10 mm\n")
    assert loads(kiln, clay="copper", width="17.2 mm")[1].fullest == 6  # 80 × 70: three by two
    kiln.change("stock/clays.yaml", "        bed: carbon\n", "        bed: carbon\n        bed depth: 18 mm\n")
    assert loads(kiln, clay="copper", width="17.2 mm")[1].fullest == 2  # 64 × 54: two by one


def carbon(library: Any) -> Any:
    version = library.main("pendant", clay="copper", width="17.2 mm")
    return next(line for line in version.materials if line.item.id == "carbon")


def test_one_filling_of_carbon_is_on_the_list_in_grams_however_many_loads_there_are(kiln: Any) -> None:
    # 100 × 90 × (15 + 1 + 15) ÷ 1000 = 279 mL, at 0.5 g/mL 139.5 g.
    assert carbon(kiln).net.usual == pytest.approx(139.5)
    assert "÷ 1000" in carbon(kiln).working


def test_carbon_that_is_sold_by_volume_is_told_by_volume(kiln: Any) -> None:
    kiln.change("stock/others.yaml", "pack: 1 kg", "pack: 2 L")
    assert carbon(kiln).net.usual == pytest.approx(279)


@pytest.mark.parametrize(("words", "unit", "amount"), [("    bulk density: 0.5 g/cm³\n", "g", 139.5), ("", "mL", 279)])
def test_carbon_whose_pack_stock_does_not_say_is_on_the_list_all_the_same(
    kiln: Any, words: str, unit: str, amount: float
) -> None:
    kiln.change("stock/others.yaml", "    bulk density: 0.5 g/cm³\n    pack: 1 kg\n", words)
    assert (carbon(kiln).item.unit, carbon(kiln).net.usual) == (unit, pytest.approx(amount))


def test_a_project_that_says_how_much_carbon_it_takes_knows_better(kiln: Any) -> None:
    kiln.change("pendant/project.yaml", "steps:\n", "materials:\n  - {item: carbon, amount: 250 g}\nsteps:\n")
    assert carbon(kiln).net.usual == 250


def test_a_piece_that_does_not_fit_the_box_with_its_carbon_is_refused_at_the_firing(kiln: Any) -> None:
    outcome = kiln.check("pendant", clay="copper", width="80 mm", many="1")
    [trouble] = outcome.troubles.errors
    assert "does not go into Box with 15" in trouble.message
    assert "title: Fire" in trouble.place.source.line(trouble.place.line)


def test_a_piece_that_does_not_fit_the_shelf_is_refused(kiln: Any) -> None:
    [trouble] = kiln.check("pendant", width="120 mm", many="1").troubles.errors
    assert "does not go on a shelf of Kiln" in trouble.message


def test_a_box_larger_than_the_chamber_is_refused(kiln: Any) -> None:
    kiln.change("stock/others.yaml", "inside wide: 100 mm", "inside wide: 160 mm")
    [trouble] = kiln.check("pendant", clay="copper").troubles.errors
    assert "Box does not go into Kiln" in trouble.message


def test_a_kiln_of_which_stock_says_no_size_is_not_counted(library: Any) -> None:
    library.change("stock/others.yaml", "  roller:\n", "  kiln:\n    name: Kiln\n    kind: kiln\n  roller:\n")
    assert loads(library) == ()


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ("    chamber deep: 150 mm\n", "", "chamber wide and chamber high without chamber deep"),
        ("    kind: kiln\n", "", "'kiln' has the measures of a kiln and is none"),
        (
            "    name: Box\n    acts as: [firing box]\n",
            "    name: Box\n",
            "'box' has the measures of a firing box and is none",
        ),
        ("shelf gap: 50 mm", "shelf gap: 50 g", "shelf gap wants a length"),
    ],
)
def test_a_kiln_is_measured_whole(kiln: Any, old: str, new: str, told: str) -> None:
    kiln.change("stock/others.yaml", old, new)
    assert any(told in t.message for t in kiln.check("pendant").troubles.errors)


def test_the_sheet_says_in_one_line_how_the_kiln_is_loaded(kiln: Any, libraries: Any) -> None:
    kiln.change(
        "pendant/project.yaml", "steps:\n", "versions:\n  - {name: Copper, clay: copper, width: 17.2 mm}\nsteps:\n"
    )
    told = {
        version: libraries.said(" ".join(row.firing for row in kiln.handout("pendant", version).rows))
        for version in ("main", "Copper")
    }
    assert told["main"].endswith("One load.")
    assert (
        "On the shelf one load, on one shelf. In carbon 2 loads, one after the other: 6 parts, at most 4 to the box."
        in told["Copper"]
    )


# What a piece takes up, worked by hand from its finished size, at 9 % of shrinkage; none of them is told too small.
ROOMS = {
    "tube": ({"length": "22 mm", "inside": "8 mm", "thickness": "1 mm"}, (8 / 0.91 + 2, 8 / 0.91 + 2, 22 / 0.91)),
    "ring band": ({"size": "US 7", "width": "5 mm", "thickness": "1 mm"}, (17.3 / 0.91 + 2, 17.3 / 0.91 + 2, 5 / 0.91)),
    "dome": ({"across": "25 mm", "rise": "4 mm", "thickness": "1 mm"}, (25 / 0.91, 25 / 0.91, 4 / 0.91)),
    "hollow lentil": (
        {"across": "25 mm", "thick": "8 mm", "thickness": "1 mm", "vent": "2 mm"},
        (25 / 0.91, 25 / 0.91, 8 / 0.91),
    ),
    "box": (
        {"across": "30 mm", "down": "20 mm", "wall height": "8 mm", "thickness": "1 mm"},
        (30 / 0.91, 20 / 0.91, 8 / 0.91 + 1),
    ),
    "cut shape": ({"shape": "disc", "across": "20 mm", "thickness": "1 mm"}, (20 / 0.91, 20 / 0.91, 1)),
    "washer": ({"outside": "20 mm", "opening": "8 mm", "thickness": "1 mm"}, (20 / 0.91, 20 / 0.91, 1)),
    "clay by mass": ({"mass": "3.6652 g"}, (10, 10, 10)),  # a ball of 10 mm is 0.5236 cm³, of 7 g/cm³
}


@pytest.mark.parametrize("kind", ROOMS)
def test_a_piece_takes_up_what_it_measures_before_it_shrinks(library: Any, kind: str) -> None:
    fields, wanted = ROOMS[kind]
    written = "".join(f"    {name}: {value}\n" for name, value in fields.items())
    library.change(
        "pendant/project.yaml",
        "    kind: cut shape\n    clay: clay\n    shape: disc\n    across: width\n    thickness: 4 cards\n",
        f"    kind: {kind}\n    clay: clay\n{written}",
    )
    library.change("pendant/project.yaml", "summary: A disc {{ plate.across }} wide.", "summary: A piece.")
    library.change("pendant/project.yaml", "      Cut a disc of {{ plate.wet_disc }}.", "      Cut.")
    found = library.main("pendant").parts["plate"].rooms[0]
    assert (found.wide, found.deep, found.high) == pytest.approx(wanted, abs=1.2)


def test_a_class_fires_the_more_often_the_more_come_and_at_its_fullest_as_its_plan_says(demo: Any) -> None:
    """Eight sterling rings lie in one box of carbon, so nine are two loads; a class of wire fires nothing."""

    def fired(design: str, version: Any) -> tuple[int, ...]:
        library = demo.check(design).library
        return firings(version, next(one.project for one in library.projects if one.name == design), library)

    assert fired("tideline-band", demo.worked("tideline-band").version("Sterling clay, US 7")) == (1,) * 8 + (2,) * 4
    for design in ("saltpan-brooch", "limpet-buttons"):
        for version in demo.worked(design).versions.values():
            plan, each = version.plan.class_plan, fired(design, version)
            assert list(each) == sorted(each)
            assert len(each) == plan.held.people
            heated = [i for i, step in enumerate(version.steps) if step.firing]
            assert each[-1] == sum(max(load.loads for load in plan.loads[i]) for i in heated)
    assert set(fired("eddy-earrings", demo.worked("eddy-earrings").main)) == {0}
