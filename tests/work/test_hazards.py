"""Cautions come from what is done, with what and to what; each stands in full once."""

from __future__ import annotations

from typing import Any

import pytest

from sheetgen.base.trouble import Troubles
from sheetgen.facts.cautions import TAUGHT
from sheetgen.read.library import read_library
from sheetgen.work.project import work

STOCK = """\
fibres:
  silk: {name: Silk, thickness: 0.6 mm, kiln: no}
wires:
  thin: {name: Copper wire, metal: copper, thickness: 0.8 mm, density: 8.96 g/cm³, sources: {density: invented}}
  alpaca: {name: Alpaca wire, metal: nickel silver, thickness: 1 mm, density: 8.7 g/cm³, sources: {density: invented}}
findings:
  plated-pin: {name: Plated pin, coated with: nickel, kiln: no}
  known-wire: {name: Ear wire of titanium, metal: titanium, kiln: no}
consumables:
  pads: {name: Pads, acts as: [abrasive]}
  blanket: {name: Blanket, acts as: [support]}
  mesh: {name: Steel mesh, acts as: [support], cautions: [pin]}
  coals: {name: Carbon, acts as: [carbon]}
  alcohol: {name: Alcohol, acts as: [solvent], at the bench: Cap the alcohol.}
  spray: {name: Spray, acts as: [aerosol]}
  snippets: {name: Solder, acts as: [solder], flows at: 720 °C}
  salt: {name: Pickling salt, acts as: [acid, pickle]}
  liver: {name: Sulphide, acts as: [sulphide]}
tools:
  torch: {name: Torch, acts as: [torch]}
  kiln: {name: Kiln, kind: kiln}
  plate: {name: Hot plate, acts as: [hot plate]}
  mop: {name: Mop, acts as: [wheel]}
  barrel: {name: Barrel, acts as: [tumbler]}
  rubber: {name: Burnisher, cautions: [burnisher]}
  balance: {name: Balance, acts as: [dry test]}
  nippers: {name: Plated nippers, coated with: nickel}
"""

HEAD = """\
title: Try
revision: 1
date: 2026-01-10
summary: A disc.
makes: 1 disc
level: {level}
worn at: {worn}
choices:
  clay: {clay}
parts:
  disc: {{kind: cut shape, clay: clay, shape: disc, across: {across}, thickness: 4 cards}}
  links: {{kind: figure-eight link, wire: copper-16awg, loop: 16 mm, gap: 12 mm}}
steps:
"""


@pytest.fixture
def bench(library: Any) -> Any:
    """Works a project of the steps that are written, and gives them back worked."""
    library.write("stock/bench.yaml", STOCK)

    def tried(
        *steps: str,
        level: str = "experienced",
        worn: str = "clothes",
        clay: str = "silver",
        more: str = "",
        across: str = "40 mm",
    ) -> Any:
        head = HEAD.format(level=level, worn=worn, clay=clay, across=across).replace("steps:\n", f"{more}steps:\n")
        written = [f"  - {{title: Step {i}, {step}}}\n" for i, step in enumerate(steps, 1)]
        library.write("try/project.yaml", head + "".join(written))
        troubles = Troubles()
        read = read_library(library.root, troubles, ["try"])
        assert read is not None, "\n".join(map(str, troubles))
        assert not troubles.errors, "\n".join(map(str, troubles))
        worked = work(read.projects[0], read, troubles)
        assert not troubles.errors, "\n".join(map(str, troubles))
        return worked.main.steps  # worked and not checked: a step alone is no project

    return tried


def ids(step: Any) -> list[str]:
    return [c.id for c in step.cautions]


FIRE = "firing: clay, parts: [disc]"
DRY = "does: [dry], wait: 12 h, parts: [disc]"


@pytest.mark.parametrize(
    ("caution", "step"),
    [
        ("drilling", "uses: [drills], parts: [disc]"),
        ("drilling", "does: [drill], parts: [disc]"),
        ("torch", "uses: [torch, snippets], parts: [links]"),
        ("solder fumes", "uses: [torch, snippets], parts: [links]"),
        ("hot metal", "uses: [torch, snippets], parts: [links]"),
        ("hot metal", "does: [quench], parts: [links]"),
        ("hot metal", "does: [heat], uses: [torch], parts: [links]"),
        ("pickle", "uses: [salt], parts: [links]"),
        ("pickle", "does: [pickle], parts: [links]"),
        ("patina", "uses: [liver], parts: [links]"),
        ("patina", "does: [patinate], parts: [links]"),
        ("solvent vapour", "uses: [alcohol]"),
        ("solvent vapour", "uses: [spray]"),
        ("hot plate", "uses: [plate]"),
        ("rotary tool", "uses: [mop], parts: [links]"),
        ("rotary tool", "uses: [barrel], parts: [links]"),
        ("rotary tool", "does: [tumble], parts: [links]"),
        ("kiln", FIRE),
        ("kiln", "uses: [kiln], does: [open]"),
        ("kiln glow", FIRE),  # 650 °C
        ("kiln glow", "does: [open], opened at: 600 °C"),
        ("damp clay", FIRE),
        ("binder smoke", FIRE),
        ("carbon box", "uses: [coals, kiln]"),
        ("fibre dust", "uses: [blanket]"),
        ("burnisher", "uses: [rubber], parts: [links]"),
        ("clay dust", "does: [refine], parts: [disc]"),
        ("clay dust", "uses: [pads], parts: [disc]"),
        ("metal dust", "does: [refine], parts: [links]"),
        ("metal dust", "uses: [pads], parts: [links]"),
        ("epoxy", "uses: [epoxy]"),
    ],
)
def test_a_deed_or_a_thing_brings_its_caution_by_itself(caution: str, step: str, bench: Any) -> None:
    [worked] = bench(step)
    assert caution in ids(worked)


@pytest.mark.parametrize(
    ("caution", "step"),
    [
        ("kiln glow", "does: [open], opened at: 300 °C"),
        ("solder fumes", "does: [heat], uses: [torch], parts: [links]"),
        ("carbon box", FIRE),
        ("fibre dust", "uses: [mesh]"),  # whose own caution stock writes
        ("clay dust", "does: [refine], parts: [links]"),
        ("metal dust", "does: [refine], parts: [disc]"),
        ("metal dust", "does: [polish], parts: [links]"),
        ("small parts", "uses: [nippers], parts: [links]"),
        ("rotary tool", "does: [polish], parts: [links]"),
    ],
)
def test_no_caution_stands_where_its_hazard_is_not(caution: str, step: str, bench: Any) -> None:
    [worked] = bench(step)
    assert caution not in ids(worked)


def test_a_firing_in_carbon_is_cautioned_by_the_clays_own_program(bench: Any) -> None:
    assert {"carbon box", "kiln", "binder smoke"} <= set(ids(bench(FIRE, clay="copper")[0]))


def test_clay_fired_with_a_torch_is_hot_metal_and_no_kiln(bench: Any, library: Any) -> None:
    library.change("stock/clays.yaml", "        hold: 30 min\n", "        hold: 30 min\n    torch: yes\n")
    [fired] = bench("firing: clay, parts: [disc], uses: [torch]")
    assert {"torch", "hot metal", "binder smoke", "damp clay"} <= set(ids(fired))
    assert not {"kiln", "kiln glow"} & set(ids(fired))


def test_the_dust_is_that_of_clay_until_the_part_is_fired_and_of_metal_after(bench: Any) -> None:
    before, _, after = bench("does: [refine], parts: [disc]", FIRE, "does: [refine], parts: [disc]")
    assert "clay dust" in ids(before)
    assert "metal dust" not in ids(before)
    assert "metal dust" in ids(after)
    assert "clay dust" not in ids(after)


def test_raw_clay_beside_a_fired_part_of_the_same_clay_gives_the_dust_of_clay(bench: Any) -> None:
    knob = "  knob: {kind: clay by mass, clay: clay, mass: 2 g}\n"
    *_, raw, _, _ = bench(
        "uses: [clay], parts: [disc]", FIRE, "uses: [clay], parts: [knob]", "wait: drying, parts: [knob]",
        "does: [refine], parts: [knob]", "does: [join], parts: [disc, knob]", "firing: clay", more=knob,
    )  # fmt: skip
    assert "clay dust" in ids(raw)
    assert "metal dust" not in ids(raw)


def test_damp_clay_is_drilled_to_crumbs_and_dry_clay_to_dust(bench: Any) -> None:
    damp, _, dry = bench("does: [drill], parts: [disc]", DRY, "does: [drill], parts: [disc]")
    assert "clay dust" not in ids(damp)
    assert "clay dust" in ids(dry)


def test_the_clay_of_a_hole_is_that_of_the_part_it_is_drilled_in(bench: Any) -> None:
    more = "  hole: {kind: hole, drilled in: disc, clay: clay, opening: 2.2 mm, beside: top, edge: 5 mm}\n"
    _, dry, _, fired = bench(DRY, "does: [drill], parts: [hole]", FIRE, "does: [refine], parts: [hole]", more=more)
    assert "clay dust" in ids(dry)
    assert "metal dust" in ids(fired)


def test_a_sheet_of_wire_alone_does_not_speak_of_clay(demo: Any) -> None:
    for name in ("towline-bracelet", "eddy-earrings", "slackwater-strand", "sounding-bracelet"):
        told = {c.id for version in demo.worked(name).versions.values() for s in version.steps for c in s.cautions}
        assert not told & {"clay dust", "damp clay", "binder smoke", "kiln", "metals apart"}, name


def where(caution: str, steps: Any) -> list[int]:
    return [i for i, step in enumerate(steps) if caution in ids(step)]


def test_small_parts_are_named_wherever_stones_or_findings_are_in_hand(bench: Any) -> None:
    steps = bench("parts: [links]", "uses: [glass-2]", "parts: [disc]", "uses: [ear-wire]")
    assert where("small parts", steps) == [1, 3]


# The cylinder is 1.25 in across: 31.75 mm.
@pytest.mark.parametrize(("across", "told"), [("20 mm", [2]), ("31 mm", [2]), ("32 mm", [])])
def test_a_finished_piece_that_goes_through_the_cylinder_is_told_when_it_is_finished(
    across: str, told: list[int], bench: Any
) -> None:
    steps = bench("parts: [disc]", FIRE, "minutes: 5 min, parts: [disc]", "wait: 1 h", across=across)
    assert where("small parts", steps) == told


def test_a_ring_cut_from_wire_is_told_whenever_it_is_in_hand(bench: Any) -> None:
    more = "  rings: {kind: jump ring, wire: copper-16awg, inside: 4 mm}\n"
    steps = bench("parts: [disc]", "parts: [rings]", "minutes: 5 min, parts: [rings]", more=more)
    assert where("small parts", steps) == [1, 2]


def test_a_piece_of_chain_is_small_however_long_it_hangs_for_it_gathers_in_the_cylinder(bench: Any) -> None:
    for first in ("15 mm", "60 mm"):
        more = f"  tails: {{kind: chain ends, link: 3 mm, first: {first}, pieces: 2}}\n"
        steps = bench("parts: [disc]", "parts: [tails]", "minutes: 5 min, parts: [tails]", more=more, across="40 mm")
        assert where("small parts", steps) == [1, 2]


def test_the_dust_of_the_fire_is_called_by_what_gives_it(bench: Any, library: Any) -> None:
    library.write(
        "stock/beds.yaml",
        "consumables:\n  felt: {name: Felt, acts as: [fibre, support]}\n  grains: {name: Grains, acts as: [support]}\n"
        "  core: {name: Core, acts as: [plug], cautions: [fibre dust]}\n"
        "  powder: {name: 'Powder, fine', cautions: [fibre dust]}\n",
    )
    steps = bench("uses: [felt]", "uses: [core, felt]", "uses: [core]", "uses: [powder]")
    [every] = {c.hazard for step in steps for c in step.cautions if c.id == "fibre dust"}
    assert every == "Dust of kiln fibre, plug and powder."
    said = [c.short for step in steps for c in step.cautions if c.id == "fibre dust"]
    assert said == ["Kiln fibre: mask", "Kiln fibre, plug: mask", "Plug: mask", "Powder: mask"]
    [bed] = (c for c in bench("uses: [grains]")[0].cautions if c.id == "fibre dust")
    assert bed.joined == ("firing bed", "Tip the bed slowly.")


def test_a_small_piece_joined_to_a_large_one_cannot_come_off(bench: Any) -> None:
    more = "  knob: {kind: cut shape, clay: clay, shape: disc, across: 8 mm, thickness: 4 cards}\n"
    cut, work = "parts: [knob]", "minutes: 5 min, parts: [knob]"
    assert where("small parts", bench(cut, "does: [join], parts: [disc, knob]", work, more=more)) == []
    assert where("small parts", bench(cut, "parts: [disc, knob]", work, more=more)) == [2]


def test_a_stone_too_large_for_the_cylinder_is_not_small(bench: Any, library: Any) -> None:
    library.write(
        "stock/slabs.yaml", "stones:\n  slab: {name: Slab of agate, size: 35 mm, sources: {size: invented}}\n"
    )
    assert where("small parts", bench("uses: [slab]")) == []


def test_small_parts_that_no_step_names_are_told_at_the_last(bench: Any) -> None:
    more = "materials:\n  - {item: ear-wire, amount: 2}\n"
    steps = bench("minutes: 5 min", "minutes: 5 min, parts: [links]", more=more)
    assert [i for i, step in enumerate(steps) if "small parts" in ids(step)] == [1]


def test_what_the_project_warns_of_early_is_not_told_again_for_the_whole_piece(bench: Any) -> None:
    more = "materials:\n  - {item: ear-wire, amount: 2}\n"
    steps = bench("caution: [small parts]", "parts: [disc]", "minutes: 5 min", more=more)
    assert where("small parts", steps) == [0]


@pytest.mark.parametrize(
    ("worn", "uses", "told"),
    [
        ("ear", "plated-pin", True),
        ("wrist", "alpaca", True),
        ("clothes", "plated-pin", True),  # a finding is handled whenever it is closed
        ("clothes", "alpaca", False),
        ("clothes", "ear-wire", False),
        ("nowhere", "plated-pin", False),
        ("nowhere", "alpaca", False),
        ("ear", "ear-wire", True),  # of which stock says no metal
        ("neck", "ear-wire", True),
        ("wrist", "ear-wire", True),
        ("ear", "known-wire", False),
        ("ear", "nippers", False),
    ],
)
def test_nickel_is_told_where_it_touches_skin(worn: str, uses: str, told: bool, bench: Any) -> None:  # noqa: FBT001
    [step] = bench(f"uses: [{uses}]", worn=worn)
    assert ("nickel" in ids(step)) is told


def test_nickel_is_told_where_it_is_filed_though_nobody_wears_it(bench: Any) -> None:
    steps = bench("uses: [plated-pin]", "uses: [plated-pin], does: [refine]", worn="nowhere")
    assert where("nickel", steps) == [1]


def test_a_finding_that_only_the_list_names_is_told_of_nickel_at_the_last(bench: Any) -> None:
    more = "materials:\n  - {item: ear-wire, amount: 2}\n"
    assert where("nickel", bench("minutes: 5 min", "minutes: 5 min", worn="ear", more=more)) == [1]


@pytest.mark.parametrize(("worn", "uses", "told"), [("neck", "silk", 1), ("wrist", "silk", 0), ("neck", "pads", 0)])
def test_a_strand_round_the_neck_is_told_at_the_last_step(worn: str, uses: str, told: int, bench: Any) -> None:
    steps = bench(f"uses: [{uses}], minutes: 5 min", "minutes: 5 min", "wait: 1 h", worn=worn)
    assert [("strand" in ids(step)) for step in steps] == [False, bool(told), False]


def test_silver_and_copper_are_kept_apart_where_a_version_has_both(bench: Any, library: Any) -> None:
    used = ("parts: [links]", "uses: [clay], parts: [disc]", "uses: [clay], parts: [disc]")
    assert not any("metals apart" in ids(step) for step in bench(*used))  # stock does not say what metal they are
    library.change("stock/clays.yaml", "    name: Test silver\n", "    name: Test silver\n    metal: fine silver\n")
    library.change("stock/clays.yaml", "    name: Test copper\n", "    name: Test copper\n    metal: copper\n")
    assert not any("metals apart" in ids(step) for step in bench(*used))  # the links' wire is of a metal not told
    name = "    name: Copper wire, 16 AWG\n"
    library.change("stock/others.yaml", name, f"{name}    metal: copper\n")
    steps = bench(*used)
    assert [i for i, step in enumerate(steps) if "metals apart" in ids(step)] == [1]
    assert [c.word for c in steps[1].cautions if c.id == "metals apart"] == ["NOTICE"]


def test_a_step_that_a_version_leaves_out_tells_nothing_in_it(bench: Any) -> None:
    steps = bench("when: clay is copper, uses: [drills], parts: [disc]", "uses: [drills], parts: [disc]")
    assert len(steps) == 1
    assert [c.id for c in steps[0].cautions] == ["drilling"]


def test_of_a_step_the_gravest_hazard_stands_first(bench: Any) -> None:
    [step] = bench("uses: [knife, epoxy, drills], parts: [disc]")
    assert [c.word for c in step.cautions] == ["WARNING", "CAUTION", "CAUTION"]


@pytest.mark.parametrize(
    "step", ["uses: [torch], does: [heat]", "uses: [salt]", "uses: [coals]", "does: [solder]", FIRE, "uses: [kiln]"]
)
def test_a_first_piece_says_who_does_what_is_too_much_for_it(step: str, bench: Any) -> None:
    assert bench(step, level="first piece")[0].who == TAUGHT
    assert bench(step, level="some practice")[0].who == ""


def test_a_first_piece_without_heat_or_acid_is_made_by_whoever_reads(bench: Any) -> None:
    assert bench("uses: [drills, knife, plate]", level="first piece")[0].who == ""


def test_what_stock_says_at_the_bench_stands_at_the_first_step_that_uses_it(bench: Any) -> None:
    steps = bench("parts: [links]", "uses: [alcohol, pads]", "uses: [alcohol]")
    assert [step.notes for step in steps] == [(), ("Alcohol: cap the alcohol.",), ()]


def test_what_stock_wants_done_ahead_is_done_in_the_last_wait_early_enough_before_the_step_that_uses_it(
    bench: Any, library: Any
) -> None:
    library.change(
        "stock/others.yaml",
        "    name: Test epoxy\n",
        "    name: Test epoxy\n    ahead: {do: Warm the glue., before: 3 h, with: [plate]}\n",
    )
    steps = bench("wait: 9 h", "wait: 2 h", "wait: 1.5 h", "uses: [epoxy]", "wait: 4 h")
    assert [step.meanwhile for step in steps] == [(), ("Warm the glue.",), (), (), ()]
    assert [item.id for item in steps[1].uses] == ["epoxy", "plate"]
    assert "epoxy" in ids(steps[1])


def test_an_adhesive_without_cautions_of_its_own_has_the_usual_one(bench: Any, library: Any) -> None:
    library.change("stock/others.yaml", "    cautions: [epoxy]\n", "")
    assert "epoxy" in ids(bench("uses: [epoxy]")[0])
    library.change("stock/others.yaml", "    name: Test epoxy\n", "    name: Test epoxy\n    cautions: [pin]\n")
    assert ids(bench("uses: [epoxy]")[0]) == ["pin"]


def test_wire_is_cut_with_a_caution_though_no_cutters_are_named(library: Any) -> None:
    assert "wire ends" in ids(library.main("link").steps[0])


def test_a_caution_of_a_part_stands_at_the_first_step_that_makes_it_only(library: Any) -> None:
    library.change(
        "link/project.yaml",
        "  - title: Bend\n",
        "  - title: Cut\n    parts: [links]\n    text: Cut it.\n  - title: Bend\n",
    )
    first, second = library.main("link").steps
    assert "wire ends" in ids(first)
    assert "wire ends" not in ids(second)


def test_the_flame_of_a_soldered_part_stands_where_it_is_soldered(bench: Any) -> None:
    post = "  post: {kind: stud post, wire: thin, pad: disc}\n"
    cut, soldered = bench("parts: [post]", "parts: [post], uses: [torch, snippets]", more=post)
    assert "wire ends" in ids(cut)
    assert "torch" not in ids(cut)
    assert "torch" in ids(soldered)
    [alone] = bench("parts: [post]", more=post)
    assert {"torch", "pickle"} <= set(ids(alone))
