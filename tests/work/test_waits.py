"""Drying, firing, torch and steps that hold for some choices only."""

from __future__ import annotations

import math
from typing import Any

import pytest

HOURS = 60
COOLING = "    cooling: from 650 °C to 50 °C in 4 h\n"


def wait(library: Any, title: str = "Dry", **choices: str) -> Any:
    return next(step.wait for step in library.main("pendant", **choices).steps if step.title == title)


def thick(library: Any, at: str = "1 mm") -> None:
    """The maker's 12-24 h are meant for clay of this thickness."""
    library.change("stock/clays.yaml", "    drying: 12-24 h\n", f"    drying: 12-24 h\n    drying thickness: {at}\n")


def test_clay_twice_as_thick_dries_two_to_four_times_as_long(library: Any) -> None:
    # t ∝ H to the power of 1 (rate-limited) to 2 (diffusion-limited, Terzaghi): 12 × 2 to 24 × 4 hours.
    thick(library)
    library.change("pendant/project.yaml", "thickness: 4 cards", "thickness: 2 mm")
    assert (wait(library).low, wait(library).high) == (24 * HOURS, 96 * HOURS)


def test_clay_half_as_thick_dries_in_a_quarter_to_half_the_time(library: Any) -> None:
    thick(library)
    library.change("pendant/project.yaml", "thickness: 4 cards", "thickness: 0.5 mm")
    assert (wait(library).low, wait(library).high) == (3 * HOURS, 12 * HOURS)


def test_clay_that_dries_from_one_face_is_as_slow_as_clay_twice_as_thick(library: Any) -> None:
    thick(library)
    library.change("pendant/project.yaml", "    wait: drying\n", "    wait: drying\n    faces: one\n")
    assert (wait(library).low, wait(library).high) == (24 * HOURS, 96 * HOURS)


def test_a_maker_who_names_no_thickness_is_taken_to_mean_four_cards(library: Any) -> None:
    # Common practice: a card is 0.25 mm, and 1 mm is what most pieces are rolled to. Ten cards are 2.5 times as thick.
    assert (wait(library).low, wait(library).high) == (12 * HOURS, 24 * HOURS)
    library.change("pendant/project.yaml", "thickness: 4 cards", "thickness: 10 cards")
    assert (wait(library).low, wait(library).high) == (12 * 2.5 * HOURS, 24 * 2.5**2 * HOURS)
    library.change("pendant/project.yaml", "thickness: 10 cards", "thickness: 2 cards")
    assert (wait(library).low, wait(library).high) == (12 / 4 * HOURS, 24 / 2 * HOURS)


def test_what_the_maker_did_not_say_is_said_in_the_working(library: Any) -> None:
    working = next(str(step.wait_working) for step in library.main("pendant").steps if step.title == "Dry")
    assert working.endswith("the maker’s time taken as meant for 1 mm, as is common practice")
    thick(library)
    working = next(str(step.wait_working) for step in library.main("pendant").steps if step.title == "Dry")
    assert working == "720 to 1440 min × (1 ÷ 1) to the power of 1 to 2"


def test_a_strip_on_a_wall_dries_as_thick_as_both(library: Any) -> None:
    # 1 mm and 1 mm on it: 12 × 2 to 24 × 4 hours, as above
    thick(library)
    library.change("pendant/project.yaml", "    wait: drying\n", "    wait: drying\n    thick: 2 * plate.thickness\n")
    assert (wait(library).low, wait(library).high) == (24 * HOURS, 96 * HOURS)


def test_air_of_75_percent_doubles_what_air_of_50_percent_takes(library: Any) -> None:
    # Rate ∝ 1 − relative humidity: (1 − 0.5) ÷ (1 − 0.75) = 2.
    library.change("studio.yaml", "units: mm\n", "units: mm\nhumidity: 75 %\n")
    assert (wait(library).low, wait(library).high) == (24 * HOURS, 48 * HOURS)


def test_air_that_cannot_be_is_told(library: Any) -> None:
    library.change("studio.yaml", "units: mm\n", "units: mm\nhumidity: 140 %\n")
    troubles = [str(t) for t in library.check("pendant").troubles.errors]
    assert any("humidity" in t and "studio.yaml" in t for t in troubles), troubles


def test_a_firing_takes_its_ramp_its_hold_and_its_cooling(library: Any) -> None:
    # 630 °C at 600 °C/h is 63 min, 30 min held, and the studio has timed its kiln from 650 to 50 °C: 4 h
    library.change(
        "stock/clays.yaml",
        "      - to: 650 °C\n        hold: 30 min\n",
        "      - to: 650 °C\n        hold: 30 min\n        rate: 600 °C/h\n",
    )
    library.change("stock/others.yaml", "  roller:\n", f"  kiln:\n    name: Kiln\n    kind: kiln\n{COOLING}  roller:\n")
    assert wait(library, "Fire").usual == pytest.approx(63 + 30 + 240)


def test_of_two_kilns_the_one_in_the_step_gives_the_time(library: Any) -> None:
    slow = "  big-kiln:\n    name: Big kiln\n    kind: kiln\n    full rate: 100 °C/h\n"
    quick = "  small-kiln:\n    name: Small kiln\n    kind: kiln\n    full rate: 2000 °C/h\n"
    library.change("stock/others.yaml", "  roller:\n", f"{slow}{quick}  roller:\n")
    library.change("pendant/project.yaml", "    uses: [firing-box, carbon]\n", "    uses: [small-kiln]\n")
    # 630 °C at 2000 °C/h is 19 min, and at 100 °C/h more than 6 h
    assert wait(library, "Fire").low < 6 * HOURS


def test_a_kiln_measured_by_the_studio_gives_one_time_and_an_unknown_kiln_a_range(library: Any) -> None:
    unknown = wait(library, "Fire")
    assert unknown.high > unknown.low * 1.5
    library.change(
        "stock/others.yaml",
        "  roller:\n",
        f"  kiln:\n    name: Kiln\n    kind: kiln\n    full rate: 1200 °C/h\n{COOLING}  roller:\n",
    )
    known = wait(library, "Fire")
    assert known.exact
    assert known.usual == pytest.approx(630 / 20 + 30 + 240)


def test_a_kiln_timed_between_other_temperatures_cools_by_newton(library: Any) -> None:
    # 780 to 80 °C above a room of 20 °C in 6 h; 630 to 30 °C above it takes as much longer as its logarithm is larger
    library.change(
        "stock/others.yaml",
        "  roller:\n",
        "  kiln:\n    name: Kiln\n    kind: kiln\n    full rate: 1200 °C/h\n"
        "    cooling: from 800 °C to 100 °C in 6 h\n  roller:\n",
    )
    cools = 6 * HOURS * math.log(630 / 30) / math.log(780 / 80)
    assert wait(library, "Fire").usual == pytest.approx(630 / 20 + 30 + cools)
    [walk] = [step.walk for step in library.main("pendant").steps if step.walk]
    assert walk.slow[-1][0] == pytest.approx(630 / 20 + 30 + cools)


def torch(library: Any, **choices: str) -> str:
    return next(str(step.torch) for step in library.main("pendant", **choices).steps if step.title == "Fire")


def test_no_torch_where_the_clay_does_not_allow_it(library: Any) -> None:
    assert torch(library) == "No torch."


def test_a_torch_only_up_to_the_width_and_the_weight_that_teachers_name(library: Any) -> None:
    # At most 25 g and a 2-euro coin (two teachers' pages; the coin 25.75 mm from memory).
    library.change("stock/clays.yaml", "    drying: 12-24 h\n", "    drying: 12-24 h\n    torch: yes\n")
    assert torch(library).startswith("A torch would do")
    assert "30 mm across" in torch(library, width="30 mm")
    library.change("pendant/project.yaml", "thickness: 4 cards", "thickness: 12 mm")
    assert "weighs" in torch(library, width="25 mm")


def test_a_step_may_hold_for_one_clay_only(library: Any) -> None:
    library.change(
        "pendant/project.yaml",
        "  - title: Fire\n",
        "  - title: Pack in carbon\n    when: clay is copper\n    text: Pack it.\n  - title: Fire\n",
    )
    assert "Pack in carbon" not in [s.title for s in library.main("pendant").steps]
    assert "Pack in carbon" in [s.title for s in library.main("pendant", clay="copper").steps]


def test_a_step_may_hold_for_all_clays_but_one_or_above_a_size(library: Any) -> None:
    library.change(
        "pendant/project.yaml",
        "  - title: Fire\n",
        "  - title: Burnish bright\n    when: clay is not copper\n    text: Rub.\n"
        "  - title: Prop it\n    when: width > 25 mm\n    text: Prop.\n  - title: Fire\n",
    )
    titles = [s.title for s in library.main("pendant").steps]
    assert "Burnish bright" in titles
    assert "Prop it" not in titles
    titles = [s.title for s in library.main("pendant", clay="copper", width="30 mm").steps]
    assert "Burnish bright" not in titles
    assert "Prop it" in titles


def test_a_condition_with_an_unknown_clay_is_told_with_the_nearest(library: Any) -> None:
    library.change(
        "pendant/project.yaml", "  - title: Fire\n", "  - title: Pack\n    when: clay is coper\n  - title: Fire\n"
    )
    troubles = [str(t) for t in library.check("pendant").troubles.errors]
    assert any("'coper' is not in stock" in t and "did you mean 'copper'" in t for t in troubles), troubles


def test_a_thickness_without_a_slat_is_told_with_the_two_nearest(library: Any) -> None:
    library.change(
        "stock/others.yaml",
        "  roller:\n",
        "  slats:\n    name: Slats\n    kind: slat\n    sizes: [0.5 mm, 0.75 mm, 1.5 mm, 2 mm]\n  roller:\n",
    )
    found = [t for t in library.check("pendant").troubles.errors if "no slat" in t.message]
    assert found
    assert str(found[0].place) == "projects/pendant/project.yaml:16:16"
    assert "0.75 mm and 1.5 mm" in found[0].help


def test_slats_of_the_right_thickness_stand_among_the_tools(library: Any) -> None:
    library.change(
        "stock/others.yaml",
        "  roller:\n",
        "  slats:\n    name: Slats\n    kind: slat\n    sizes: [0.75 mm, 1 mm]\n  roller:\n",
    )
    tools = {line.item.name: line.sizes for line in library.main("pendant").tools}
    assert tools["Slats"] == (1.0,)


@pytest.mark.parametrize("thickness", ["4 cards", "1.1 mm"])
def test_a_drawer_without_slats_is_a_normal_drawer(thickness: str, library: Any) -> None:
    library.change("pendant/project.yaml", "thickness: 4 cards", f"thickness: {thickness}")
    assert not list(library.check("pendant").troubles)


def test_clay_rolled_on_cards_needs_no_slat(library: Any) -> None:
    # a card is 0.25 mm; 1.1 mm is no number of cards
    drawer = "  deck:\n    name: Cards\n    kind: cards\n  slats:\n    name: Slats\n    kind: slat\n    sizes: [2 mm]\n"
    library.change("stock/others.yaml", "  roller:\n", f"{drawer}  roller:\n")
    assert not list(library.check("pendant").troubles)
    library.change("pendant/project.yaml", "thickness: 4 cards", "thickness: 1.1 mm")
    assert ["no slat of it" in t.message for t in library.check("pendant").troubles.errors] == [True]


GLUES = """\
adhesives:
  slow:
    name: Slow
    cure: 24-36 h
    sources: {cure: invented}
  quick:
    name: Quick
    cure: 1-2 h
    sources: {cure: invented}
"""
MIX = """\
  glue:
    kind: adhesive mix
    adhesive: slow
    seats: 3
    across: 2 mm
    depth: 1 mm
"""


def cures(library: Any, *steps: str, parts: str = "") -> list[tuple[float, float]]:
    """Hours of every curing, least and most, of steps that come after the firing."""
    library.write("stock/glues.yaml", GLUES)
    library.change("pendant/project.yaml", "steps:\n", f"{parts}steps:\n")
    text = library.path("pendant/project.yaml").read_text("utf-8")
    library.write(
        "pendant/project.yaml", text + "".join(f"  - title: Step {n}\n    {s}\n" for n, s in enumerate(steps))
    )
    waits = [step.wait for step in library.main("pendant").steps if step.wait_for == "curing"]
    return [(one.low / HOURS, one.high / HOURS) for one in waits]


def test_of_two_adhesives_the_slower_is_waited_for(library: Any) -> None:
    assert cures(library, "uses: [quick]", "uses: [slow]", "wait: curing") == [(24, 36)]


def test_what_has_cured_is_not_waited_for_again(library: Any) -> None:
    steps = ("uses: [slow]", "wait: curing", "uses: [quick]", "wait: curing")
    assert cures(library, *steps) == [(24, 36), (1, 2)]


def test_an_adhesive_of_the_waiting_step_itself_counts_and_one_of_a_later_step_does_not(library: Any) -> None:
    assert cures(library, "uses: [quick]\n    wait: curing", "uses: [slow]", "wait: 36 h") == [(1, 2)]


def test_what_bonds_a_part_that_is_named_cures_too(library: Any) -> None:
    assert cures(library, "parts: [glue]", "uses: [quick]", "wait: curing", parts=MIX) == [(24, 36)]


def test_a_cure_of_a_time_of_ones_own_is_a_cure(library: Any) -> None:
    steps = ("uses: [slow]", "does: [cure]\n    wait: 40 h", "uses: [quick]", "wait: curing")
    assert cures(library, *steps) == [(1, 2)]


def test_a_step_of_another_clay_glues_nothing(library: Any) -> None:
    steps = ("uses: [slow]\n    when: clay is copper", "uses: [quick]", "wait: curing")
    assert cures(library, *steps) == [(1, 2)]


def test_nothing_cures_where_nothing_was_glued(library: Any) -> None:
    library.change("pendant/project.yaml", "wait: drying", "wait: curing")
    told = [t.message for t in library.check("pendant").troubles.errors]
    assert "no adhesive is used before this that has not cured" in told
