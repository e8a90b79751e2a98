"""A clay is fired by one of its maker's programs, and every number is worked with the shrinkage that belongs to it."""

from __future__ import annotations

from typing import Any

import pytest

from sheetgen import pipeline

PROGRAMS = """\
    programs:
      least:
        shrinkage: 8-10 %
        strength: least
        good for: what is not pulled
        firing:
          - to: 650 °C
            hold: 30 min
      full strength:
        shrinkage: 11-13 %
        strength: full
        firing:
          - to: 760 °C
            hold: 60 min
      enamel:
        shrinkage: 10-12 %
        firing:
          - to: 800 °C
            hold: 30 min
"""
WIRE = """\
  silver-wire:
    name: Wire
    thickness: 1 mm
    density: 10.3 g/cm³
    metal: {}
    sources: {{density: x}}
"""

CARBON = "    uses: [firing-box, carbon]\n"


@pytest.fixture
def several(library: Any) -> Any:
    """The silver clay by three programs, the strongest of them not the hottest."""
    library.change("stock/clays.yaml", "    shrinkage: 8-10 %\n", "")
    library.change("stock/clays.yaml", "    firing:\n      - to: 650 °C\n        hold: 30 min\n", PROGRAMS)
    return library


def project(library: Any, words: str) -> None:
    library.change("pendant/project.yaml", "parts:\n  plate:\n", f"{words}parts:\n  plate:\n")


def wet(library: Any, **choices: str) -> Any:
    return library.main("pendant", **choices).figures["plate.wet_disc"].working


def fired(library: Any) -> Any:
    """The clay as the firing step has it."""
    return next(step.clay for step in library.main("pendant").steps if step.clay)


def stone(library: Any, kiln: str) -> None:
    """A stone that is set after the fire, and what it bears."""
    text = f"    kiln: {kiln}\n    sources:\n      size: invented\n      kiln: invented\n"
    library.change(
        "stock/others.yaml",
        "findings:\n",
        f"  spinel:\n    name: Spinel\n    size: 2 mm\n{text}findings:\n",
    )
    library.change("pendant/project.yaml", CARBON, f"{CARBON}  - title: Set\n    uses: [spinel]\n")


def test_full_strength_goes_before_a_hotter_program_of_which_the_maker_says_nothing(several: Any) -> None:
    clay = fired(several)
    assert (clay.program, clay.strength) == ("full strength", "full")
    assert wet(several) == "20 ÷ (1 − 0.12)"  # the middle of 11 to 13 %
    assert [phase.to for phase in clay.firing] == [760]


def test_a_project_names_its_program_by_the_clay_or_by_the_choice_that_holds_it(several: Any) -> None:
    project(several, "programs: {clay: least}\n")
    assert (fired(several).program, wet(several)) == ("least", "20 ÷ (1 − 0.09)")
    several.change("pendant/project.yaml", "programs: {clay: least}", "programs: {silver: Enamel, clay: least}")
    assert "enamel" in str(several.check("pendant").troubles.errors[0])
    several.change("pendant/project.yaml", "silver: Enamel", "silver: enamel")
    assert (fired(several).program, wet(several)) == ("enamel", "20 ÷ (1 − 0.11)")


@pytest.mark.parametrize(
    ("words", "told", "helped"),
    [
        ("{silver: full strenght}", "Test silver has no program 'full strenght'", "full strength"),
        ("{silvr: least}", "'silvr' is neither a clay of stock nor a choice", "silver"),
        ("{roller: least}", "'roller' is a tool, and a program fires a clay", "silver"),
        ("{width: least}", "'width' is neither a clay of stock nor a choice", "silver"),
        ("{copper: least}", "Test copper has no program 'least'", "without a name"),
    ],
)
def test_a_program_that_is_not_there_is_told_with_the_nearest(several: Any, words: str, told: str, helped: str) -> None:
    project(several, f"programs: {words}\n")
    [trouble] = several.check("pendant").troubles.errors
    assert trouble.message == told
    assert helped in trouble.help
    assert "programs:" in trouble.place.source.line(trouble.place.line)


def test_what_goes_into_the_kiln_decides_which_program_it_bears(several: Any) -> None:
    stone(several, "to 700 °C")
    assert fired(several).program == "least"


@pytest.mark.parametrize("kiln", ["no", "yes", "to 760 °C"])
def test_what_never_goes_into_the_kiln_or_bears_it_decides_nothing(several: Any, kiln: str) -> None:
    stone(several, kiln)
    assert fired(several).program == "full strength"


@pytest.mark.parametrize(("metal", "program"), [("sterling", "full strength"), ("zinc", "coolest")])
def test_wire_that_stays_in_bears_heat_to_a_little_under_its_solidus(several: Any, metal: str, program: str) -> None:
    # Sterling begins to melt at 802 °C, zinc at 419 °C: less 20 °C that is under every program.
    several.change("stock/others.yaml", "wires:\n", "wires:\n" + WIRE.format(metal))
    several.change("pendant/project.yaml", "uses: [clay, roller]", "uses: [clay, roller, silver-wire]")
    assert fired(several).program == (program if program != "coolest" else "least")


def firing(several: Any) -> str:
    """What the handout says of how it is fired."""
    return " ".join(row.firing for row in several.handout("pendant").rows if row.firing).replace("\u00a0", " ")


def test_what_bears_less_is_told_to_whoever_checks_and_on_the_sheet(several: Any) -> None:
    assert pipeline.notes_told(several.check("pendant")) == []
    stone(several, "to 700 °C")
    told = "Test silver by its program 'least', because of Spinel, which bears no more than 700 °C"
    outcome = several.check("pendant")
    assert pipeline.notes_told(outcome) == [f"pendant fires {told}"]
    assert not outcome.troubles.found
    assert "Program “least”, for Spinel, which bears no more than 700 °C: in air." in firing(several)


def test_a_program_that_the_project_names_or_that_only_one_version_has_to_take_is_told_as_such(several: Any) -> None:
    stone(several, "to 700 °C")
    several.change("pendant/project.yaml", "uses: [spinel]", "uses: [stone]")
    several.change("pendant/project.yaml", "  width: 20 mm\n", "  width: 20 mm\n  stone: glass-2\n")
    several.change("pendant/project.yaml", "steps:\n", "versions:\n  - name: Red\n    stone: spinel\nsteps:\n")
    [note] = pipeline.notes_told(several.check("pendant"))
    assert note.startswith("pendant, version Red, fires Test silver by its program 'least'")
    assert pipeline.notes_told(several.check("pendant"), main=True) == []
    project(several, "programs: {clay: least}\n")
    assert pipeline.notes_told(several.check("pendant")) == []


def test_a_step_of_another_clay_does_not_decide(several: Any) -> None:
    stone(several, "to 700 °C")
    several.change("pendant/project.yaml", "  - title: Set\n", "  - title: Set\n    when: clay is copper\n")
    assert fired(several).program == "full strength"


def test_each_version_takes_the_program_that_its_own_things_bear(several: Any) -> None:
    stone(several, "to 700 °C")
    several.change("pendant/project.yaml", "uses: [spinel]", "uses: [stone]")
    several.change("pendant/project.yaml", "  width: 20 mm\n", "  width: 20 mm\n  stone: spinel\n")
    several.change("pendant/project.yaml", "steps:\n", "versions:\n  - name: Glass\n    stone: glass-2\nsteps:\n")
    worked = several.worked("pendant")
    disc = {name: version.figures["plate.wet_disc"].working for name, version in worked.versions.items()}
    assert disc == {"main": "20 ÷ (1 − 0.09)", "Glass": "20 ÷ (1 − 0.12)"}
    assert [[s.clay.program for s in v.steps if s.clay] for v in worked.versions.values()] == [
        ["least"],
        ["full strength"],
    ]


def test_the_firing_step_says_by_which_program_it_is_fired(several: Any) -> None:
    assert firing(several).startswith("Program “full strength”: in air.")
    assert any("shrinks 11" in line for line in several.teacher("pendant").shrinkage)


def test_a_clay_with_one_nameless_program_says_nothing_of_programs(library: Any) -> None:
    assert (fired(library).program, fired(library).strength) == ("", "")
    library.publish("pendant")
    assert "program “" not in (library.build / "pendant/index.html").read_text("utf-8")


def test_what_shrinks_in_drying_and_what_shrinks_in_the_fire_make_one_shrinkage(library: Any) -> None:
    # By pencil: 1 − 0.98 × 0.92 = 0.0984 at the least of both, 1 − 0.97 × 0.9 = 0.127 at the most.
    library.change(
        "stock/clays.yaml", "    shrinkage: 8-10 %\n", "    drying shrinkage: 2-3 %\n    firing shrinkage: 8-10 %\n"
    )
    clay = fired(library)
    assert (clay.shrinkage.low, clay.shrinkage.high) == pytest.approx((0.0984, 0.127))
    assert clay.thickness_shrinkage == clay.shrinkage
    assert (clay.drying_shrinkage.usual, clay.firing_shrinkage.usual) == pytest.approx((0.025, 0.09))


def test_programs_may_share_what_the_clay_shrinks_in_drying(several: Any) -> None:
    several.change("stock/clays.yaml", "    programs:\n", "    drying shrinkage: 2 %\n    programs:\n")
    text = several.path("stock/clays.yaml").read_text("utf-8")
    several.write("stock/clays.yaml", text.replace("        shrinkage:", "        firing shrinkage:"))
    assert fired(several).shrinkage.usual == pytest.approx(1 - 0.98 * 0.88)


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ("shrinkage: 8 %\n    firing shrinkage: 6 %", "'silver' says twice how it shrinks"),
        ("shrinkage: 8 %\n    drying shrinkage: 2 %", "'silver' says twice how it shrinks"),
        ("drying shrinkage: 2 %", "'silver' has a drying shrinkage and no firing shrinkage"),
        ("firing shrinkage: 2 %", "'silver' has a firing shrinkage and no drying shrinkage"),
        ("shrinkage: 8 %\n    strength: strong", "a program's strength cannot be 'strong'"),
        ("shrinkage: 8 %\n    programs:\n      hot: {shrinkage: 8 %, firing: [{to: 700 °C, hold: 1 h}]}",
         "'silver' has programs, and its firing would belong to none of them"),
    ],
)  # fmt: skip
def test_a_clay_says_once_how_it_is_fired_and_how_it_shrinks(library: Any, words: str, told: str) -> None:
    library.change("stock/clays.yaml", "    shrinkage: 8-10 %\n", f"    {words}\n")
    assert told in [t.message for t in library.check("pendant").troubles.errors]


def test_two_programs_do_not_have_one_name(several: Any) -> None:
    several.change("stock/clays.yaml", "      enamel:\n", "      Full-strength:\n")
    several.change("stock/clays.yaml", "      full strength:\n", "      Full strength:\n")
    assert any("two programs called" in t.message for t in several.check("pendant").troubles.errors)


def test_no_program_is_so_hot_that_the_metal_melts(several: Any) -> None:
    several.change("stock/clays.yaml", "    programs:\n", "    melting: 780 °C\n    programs:\n")
    told = [t.message for t in several.check("pendant").troubles.errors]
    assert "the clay is fired at 800 °C, and its metal melts at 780 °C" in told


def test_no_program_leaves_more_metal_than_solid_metal(several: Any) -> None:
    # 7 × 0.92 ÷ 0.6³ is 29.8 g/cm³; silver is 10.49.
    several.change("stock/clays.yaml", "        shrinkage: 10-12 %\n", "        shrinkage: 40 %\n")
    several.change("stock/clays.yaml", "    programs:\n", "    solid density: 10.49 g/cm³\n    programs:\n")
    assert any("program 'enamel'" in t.message for t in several.check("pendant").troubles.errors)
