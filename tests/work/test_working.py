"""Working a project: choices, versions, dependencies, lists and prose."""

from __future__ import annotations

import re
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sheetgen.base.material import Adhesive, Clay, Stone, Wire
from sheetgen.base.trouble import Troubles
from sheetgen.model.stock import SOURCED
from sheetgen.read.library import read_library

PARTS = {
    "body": [
        "kind: tube", "clay: clay", "length: height", "inside: bore", "thickness: 3 cards", "release sheet: 0.1 mm",
        "overlap: 2 * lid.thickness + 2 mm", "count: 2",
    ],
    "seats": [
        "kind: stone row", "clay: clay", "along: body.length", "stone: stone", "margin: 2 mm", "width: 5 mm",
        "count: body.count",
    ],
    "lid": ["kind: cut shape", "clay: clay", "shape: disc", "across: body.fired_outside + play", "thickness: 4 cards"],
}  # fmt: skip
FIGURES = [
    "play: 2 * slack",
    "slack: 0.5 mm",
    "both: body.fired_mass + lid.fired_mass + all_seats",
    "all seats: 2 * seats.fired_mass",
]
CHOICES = ["clay: silver", "height: 22 mm", "bore: height / 2 - 3 mm", "stone: glass-2"]


def project(choices: Any = CHOICES, parts: Any = None, figures: Any = FIGURES) -> str:
    """A project whose numbers lean on each other, its keys in the order given."""
    parts = parts if parts is not None else list(PARTS.items())
    lines = ["title: Order", "revision: 1", "date: 2026-01-10", "summary: Of {{ lid.wet_disc }}.", "makes: 1"]
    lines += ["level: experienced", "choices:", *(f"  {c}" for c in choices), "parts:"]
    for name, fields in parts:
        lines += [f"  {name}:", *(f"    {f}" for f in fields)]
    lines += ["figures:", *(f"  {f}" for f in figures)]
    lines += ["steps:", "  - title: Make", "    parts: [body, seats, lid]"]
    lines += ["  - title: Dry", "    wait: drying", "    does: [test]"]
    lines += ["  - title: Fire", "    firing: clay"]
    return "\n".join(lines) + "\n"


def values(worked: Any) -> dict[str, Any]:
    return {key: (f.value, f.working) for key, f in worked.main.figures.items()}


@pytest.fixture(scope="module")
def shelf(libraries: Any, tmp_path_factory: pytest.TempPathFactory) -> Any:
    made = libraries.make(tmp_path_factory.mktemp("order"))
    for folder in ("drops", "pendant", "link"):
        for path in made.path(folder).iterdir():
            path.unlink()
        made.path(folder).rmdir()
    made.write("order/project.yaml", project().replace("\n    width", ""))
    return made


@given(data=st.data())
@settings(max_examples=25)
def test_the_order_of_parts_and_keys_in_the_file_changes_no_figure(data: Any, shelf: Any) -> None:
    shelf.write("order/project.yaml", project())
    straight = values(shelf.worked("order"))
    parts = [(name, data.draw(st.permutations(PARTS[name]))) for name in data.draw(st.permutations(list(PARTS)))]
    shuffled = project(data.draw(st.permutations(CHOICES)), parts, data.draw(st.permutations(FIGURES)))
    shelf.write("order/project.yaml", shuffled)
    assert values(shelf.worked("order")) == straight


def test_a_figure_may_lean_on_one_that_stands_further_down(shelf: Any) -> None:
    shelf.write("order/project.yaml", project())
    main = shelf.main("order")
    # by hand: bore 22 ÷ 2 − 3 = 8; overlap 2 × 1 + 2 = 4; former 9 (see below); outside (9.2 + 1.5) × 0.91 = 9.737
    assert main.figures["body.fired_outside"].value.usual == pytest.approx(9.2 * 0.91 + 2 * 0.75 * 0.91)
    assert main.figures["lid.wet_disc"].value.usual == pytest.approx((9.737 + 1) / 0.91)


CIRCLES = [
    (["bore: body.wet_length"], ["length: bore"], "bore → body.wet_length → body.length → bore"),
    ([], ["length: body.wet_length"], "body.wet_length → body.length → body.wet_length"),
    (["a: b", "b: c", "c: a"], [], "a → b → c → a"),
    (["a: a + 1 mm"], [], "a → a"),
]


@pytest.mark.parametrize(("choices", "fields", "circle"), CIRCLES, ids=[c[2] for c in CIRCLES])
def test_a_circle_of_dependencies_is_a_trouble_that_prints_the_circle(
    choices: list[str], fields: list[str], circle: str, shelf: Any
) -> None:
    def replaced(lines: list[str], by: list[str]) -> list[str]:
        names = {line.split(":")[0] for line in by}
        return [line for line in lines if line.split(":")[0] not in names] + by

    parts = [(name, replaced(given, fields) if name == "body" else given) for name, given in PARTS.items()]
    shelf.write("order/project.yaml", project(replaced(CHOICES, choices), parts))
    outcome = shelf.check("order")
    told = [t for t in outcome.troubles.errors if "in a circle" in t.message]
    assert told, [str(t) for t in outcome.troubles]
    shown = told[0].message.split(": ")[1].split(" → ")
    wanted = circle.split(" → ")[:-1]
    assert shown[0] == shown[-1]
    turns = [[*wanted[i:], *wanted[:i]] for i in range(len(wanted))]
    assert shown[:-1] in turns, told[0].message
    assert told[0].help == "give one of them a number"


def test_a_deep_chain_of_dependencies_is_worked_or_told_but_never_breaks(shelf: Any) -> None:
    for length, sums in ((25, 1), (300, 1), (59, 90), (30, 95)):
        chain = [f"c{i}: c{i + 1}{' + 1' * sums}" for i in range(length)] + [f"c{length}: 1"]
        shelf.write("order/project.yaml", project(CHOICES, figures=[*FIGURES, *chain]))
        outcome = shelf.check("order")
        if outcome.worked:
            assert outcome.worked[0].main.figures["c0"].value.usual == 1 + length * sums
        else:
            assert any("leans on" in t.message for t in outcome.troubles.errors)
        assert bool(outcome.worked) == (length == 25)


def test_a_version_changes_its_choices_and_no_others(library: Any) -> None:
    worked = library.worked("drops")
    main, long = worked.versions["main"], worked.versions["Long"]
    assert list(worked.versions) == ["main", "Long"]
    # 22 mm and 30 mm at 9 %: 24.176 and 32.967
    assert main.figures["body.wet_length"].value.usual == pytest.approx(22 / 0.91)
    assert long.figures["body.wet_length"].value.usual == pytest.approx(30 / 0.91)
    assert main.figures["body.strip_cut"] == long.figures["body.strip_cut"]
    # (30 − 4 + 0.5) ÷ 2.5 = 10.6 stones; (22 − 4 + 0.5) ÷ 2.5 = 7.4
    assert (main.figures["seats.stones"].value.usual, long.figures["seats.stones"].value.usual) == (7, 10)


def test_a_version_may_swap_the_clay(library: Any) -> None:
    library.change("drops/project.yaml", "    height: 30 mm", "    clay: copper")
    long = library.worked("drops").versions["Long"]
    # test strips of 42.5, 43 and 44 mm of 50: the middle is 14 %
    assert long.figures["body.wet_length"].value.usual == pytest.approx(22 / 0.86)
    assert [line.item.id for line in long.materials if isinstance(line.item, Clay)] == ["copper"]
    assert [len(step.firing) for step in long.steps if step.firing] == [2]


def test_a_choice_tried_on_the_command_line_wins_over_file_and_version(library: Any) -> None:
    worked = library.worked("drops", height="25 mm")
    for version in worked.versions.values():
        assert version.figures["body.wet_length"].value.usual == pytest.approx(25 / 0.91)


def test_a_choice_with_a_blank_may_be_tried_either_way(library: Any) -> None:
    library.change("pendant/project.yaml", "  width: 20 mm", "  full width: 20 mm")
    library.change("pendant/project.yaml", "    across: width", "    across: full_width")
    for name in ("full width", "full_width"):
        outcome = library.check("pendant", **{name: "30 mm"})
        assert not outcome.troubles.errors
        assert outcome.worked[0].main.figures["plate.wet_disc"].value.usual == pytest.approx(30 / 0.91)


@pytest.mark.parametrize(
    ("name", "value", "says", "helps"),
    [
        ("heigth", "3 mm", "'heigth' is not a choice", "'height'"),
        ("height", "three", "'three' is not known", ""),
        ("height", "3", "a bare number", "22 mm"),
        ("clay", "silvr", "'silvr'", "'silver'"),
        ("height", "3 mm; rm", "cannot stand here", ""),
    ],
)
def test_a_wrong_choice_on_the_command_line_is_a_trouble(
    name: str, value: str, says: str, helps: str, library: Any
) -> None:
    told = [t for t in library.check("drops", **{name: value}).troubles.errors if says in t.message]
    assert told
    assert helps in told[0].help


def test_the_materials_are_the_sum_of_the_parts_and_their_allowance(library: Any) -> None:
    main = library.main("drops")
    lines = {line.item.id: line for line in main.materials}
    figures = {key: f.value.usual for key, f in main.figures.items()}
    # two tubes of clay; the seats have no strip of their own. By hand, each from what was cut before: π × 9.95 = 31.26
    # is marked at 31.3; 31.3 + 4 = 35.3 is cut at 35.5; 22 ÷ 0.91 = 24.18 at 24
    tube = 35.5 * 24 * 0.75 * 7 / 1000
    assert figures["body.clay_mass"] == pytest.approx(tube)
    assert lines["silver"].net.usual == pytest.approx(2 * tube)
    assert lines["silver"].allowance == 0.20  # the project's own, over the 15 % of stock
    assert lines["glass-2"].net.usual == 14
    assert lines["glass-2"].allowance == 0.05
    assert lines["ear-wire"].net.usual == 2
    assert lines["epoxy"].net is None  # used by a step, amount not given
    assert "roller" not in lines


def test_every_material_of_the_demonstration_is_the_sum_of_what_its_parts_take(demo: Any) -> None:
    for name in ("buoy-drops", "saltpan-brooch", "tideline-band", "towline-bracelet"):
        for version in demo.worked(name).versions.values():
            wanted: dict[str, float] = {}
            for part in version.parts.values():
                for take in part.takes:
                    wanted[take.item.id] = wanted.get(take.item.id, 0) + take.amount.usual
            for line in version.materials:
                if line.net is not None and line.item.id in wanted:
                    assert line.net.usual >= wanted.pop(line.item.id) - 1e-9
            assert wanted == {}


def test_the_tools_are_those_of_the_steps_with_the_sizes_that_the_parts_need(library: Any) -> None:
    tools = {line.item.id: line.sizes for line in library.main("drops").tools}
    # the former nearest to 8.591 mm of 6, 7, 8, 9, 10; the drill not under (2 + 0.1) ÷ 0.9 = 2.333 mm
    assert tools == {"roller": (), "formers": (9.0,), "drills": (2.4,), "firing-box": ()}


def test_times_add_up_from_the_first_step_to_the_last(library: Any) -> None:
    main = library.main("drops")
    # 10 to 15, 20 and 30 min
    assert [sum(ends) for ends in zip(*((t.low, t.high) for t in main.bench_times), strict=True)] == [60, 65]
    fired = next(s.wait for s in main.steps if s.firing)
    wanted = 60 + 12 * 60 + fired.low + 12 * 60
    assert sum(t.low for t in main.whole_times) == pytest.approx(wanted)


def test_what_a_tool_or_a_firing_brings_is_cautioned_gravest_first(library: Any) -> None:
    steps = {step.title: [c.id for c in step.cautions] for step in library.main("drops").steps}
    assert steps["Roll"] == ["blade"]
    # carbon in any firing gives off its gas
    assert steps["Fire"] == ["carbon box", "kiln", "damp clay", "binder smoke", "kiln glow"]
    assert steps["Set"] == ["epoxy", "small parts"]
    library.change("drops/project.yaml", "  clay: silver", "  clay: copper")
    fired = next(s for s in library.main("drops").steps if s.firing)
    assert [c.id for c in fired.cautions] == ["carbon box", "kiln", "damp clay", "binder smoke", "kiln glow"]


def test_the_clays_own_test_strips_replace_the_makers_shrinkage(library: Any) -> None:
    library.change("stock/clays.yaml", "    test strips:", "    shrinkage: 1-2 %\n    test strips:")
    library.change("pendant/project.yaml", "  clay: silver", "  clay: copper")
    s = library.main("pendant").parts["plate"].clay.shrinkage
    # 1 − 44 ÷ 50 = 12 %, 1 − 43 ÷ 50 = 14 %, 1 − 42.5 ÷ 50 = 15 %
    assert (s.low, s.usual, s.high) == pytest.approx((0.12, 0.14, 0.15))


@pytest.mark.parametrize(
    ("strips", "low", "usual", "high"),
    [
        (["44.6"], 0.108, 0.108, 0.108),
        (["44", "45"], 0.10, 0.11, 0.12),
        (["45", "40", "44", "43"], 0.10, 0.13, 0.20),
    ],
)
def test_one_strip_or_many_give_least_middle_and_most(
    strips: list[str], low: float, usual: float, high: float, library: Any
) -> None:
    text = library.path("stock/clays.yaml").read_text("utf-8")
    lines = "".join(f"      - wet 50 mm, fired {fired} mm\n" for fired in strips)
    text = re.sub(r"    test strips:\n(      - .*\n)+", "    test strips:\n" + lines, text)
    library.write("stock/clays.yaml", text)
    library.change("pendant/project.yaml", "  clay: silver", "  clay: copper")
    s = library.main("pendant").parts["plate"].clay.shrinkage
    assert (s.low, s.usual, s.high) == pytest.approx((low, usual, high))


TWICE = [
    "Set {{ seats.stones }} and {{ ‸seats.stons }}, {{ seats.stones }}.",
    "'It''s {{ seats.stones }} of {{ ‸seats.stons }} here'",
    "|\n      Set {{ seats.stones }}.\n      Then {{ seats.stones }} of {{ ‸seats.stons }}.",
    "Set seats.stons as {{ ‸seats.stons }}.",
    "|\n      Set seats.stons as\n      {{ ‸seats.stons }}.",
    ">\n      Set {{ seats.stones\n      }} or {{   ‸seats.stons }}.",
    "Set {{ 2 * ‸seats.stons }} of them.",
]


@pytest.mark.parametrize("marked", TWICE)
def test_an_unknown_name_in_prose_is_a_trouble_at_its_column(marked: str, library: Any) -> None:
    text = library.path("drops/project.yaml").read_text("utf-8").replace("Set all {{ seats.stones }}.", marked)
    before = text[: text.index("‸")]
    library.write("drops/project.yaml", text.replace("‸", ""))
    told = [t for t in library.check("drops").troubles.errors if "'stons'" in t.message]
    assert [(t.place.line, t.place.column) for t in told] == [
        (before.count("\n") + 1, len(before) - before.rfind("\n"))
    ]


def test_a_name_misspelt_twice_in_one_line_is_told_twice(library: Any) -> None:
    library.change("drops/project.yaml", "Set all {{ seats.stones }}.", "Of {{ seats.stons }}, {{ seats.stons }}.")
    told = [t.place.column for t in library.check("drops").troubles.errors if "'stons'" in t.message]
    assert told == [17, 36]


def test_prose_keeps_its_words_and_its_figures_in_order(library: Any) -> None:
    step = library.main("drops").steps[0]
    shown = [p if isinstance(p, str) else p.label for p in step.text]
    assert shown == ["Cut ", "Length, cut wet", " by ", "Strip, cut", ".\nWind it on ", "Former", ".\n"]


def test_prose_may_reckon(library: Any) -> None:
    library.change("drops/project.yaml", "Set all {{ seats.stones }}.", "Set {{ seats.stones * seats.count }} stones.")
    [figure] = [p for p in library.main("drops").steps[4].text if not isinstance(p, str)]
    assert figure.printed == 14


def test_a_figure_of_ones_own_is_worked_from_the_others(library: Any) -> None:
    figures = library.main("drops").figures
    assert figures["class_clay"].value.usual == pytest.approx(12 * figures["body.clay_mass"].value.usual)
    assert figures["class_clay"].unit == "g"
    assert figures["class_clay"].label == "Class clay"


@pytest.mark.parametrize(
    ("written", "says"),
    [("3 g", "'3 g' is no amount of Ear wire"), ("-2", "'-2' is no amount"), ("2 mm", "'2 mm' is no amount")],
)
def test_an_amount_in_the_wrong_measure_is_a_trouble(written: str, says: str, library: Any) -> None:
    library.change("drops/project.yaml", "    amount: 2", f"    amount: {written}")
    told = [t for t in library.check("drops").troubles.errors if says in t.message]
    assert told
    assert "piece" in told[0].help


def test_all_data_of_the_demonstration_says_where_it_comes_from(demo: Any) -> None:
    library = read_library(demo.root, Troubles())
    assert library is not None
    groups = {Clay: "clays", Wire: "wires", Stone: "stones", Adhesive: "adhesives"}
    seen = 0
    for item in library.stock.items.values():
        wanted = set(SOURCED.get(groups.get(type(item), ""), ()))
        named = {key for key, _ in item.sources}
        if isinstance(item, Clay) and item.tested:
            wanted.discard("shrinkage")
        assert "all" in named or wanted <= named, item.id
        seen += bool(wanted)
    assert seen >= 8


def test_no_clay_of_the_demonstration_fires_denser_than_its_metal(demo: Any) -> None:
    # the mass balance: wet density × metal share ÷ ((1 − s)² × (1 − s thick)) at most the solid metal's
    library = read_library(demo.root, Troubles())
    assert library is not None
    clays = [i for i in library.stock.items.values() if isinstance(i, Clay) and i.solid_density]
    assert len(clays) >= 4
    for clay in clays:
        for end in ("low", "usual", "high"):
            s, t = getattr(clay.shrinkage, end), getattr(clay.thickness_shrinkage, end)
            if end == "low":
                fired = clay.density * clay.metal_share / ((1 - s) ** 2 * (1 - t))
                assert fired <= (clay.solid_density or 0), clay.id
