"""A slip in a kind stops the program as its class is made, with the text, a caret and the mend: in no studio."""

from __future__ import annotations

from typing import Any

import pytest

from sheetgen.base.material import Clay, Wire
from sheetgen.parts import field
from sheetgen.parts.described import CALLS, words_told
from sheetgen.parts.figure import figure, need, size, take
from sheetgen.parts.kind import Part

SOUND: dict[str, Any] = {
    "kind": lambda: "plate",
    "clay": lambda: field.item(Clay, "the clay it is cut from", role="made of"),
    "wire": lambda: field.maybe_item(Wire, "the wire that must pass", role="lets through"),
    "length": lambda: field.length("finished length", above=0),
    "thickness": lambda: field.length("thickness the clay is rolled to", above=0, role="rolled to"),
    "wet_length": lambda: figure("Length, cut wet", "mm", "wet(length, clay.shrinkage)", "tenth"),
    "clay_mass": lambda: figure(
        "Clay", "g", "wet_length² × thickness × clay.density ÷ 1000 mm³/cm³", "mass up", role="clay mass"
    ),
    "sizes": lambda: (size("length", "wet_length", finished="length"),),
    "takes": lambda: (take("clay", "count × clay_mass", each="clay_mass"),),
    "hazards": lambda: ("blade",),
}


def made(**changed: Any) -> type[Part]:
    """A kind of its own, a square plate of clay, with some of its lines changed."""
    lines = {name: make() for name, make in (SOUND | changed).items() if make is not None}
    return type("Plate", (Part,), lines)


def test_a_sound_kind_is_made() -> None:
    assert made().figures().keys() == {"wet_length", "clay_mass"}


SLIPS: dict[str, tuple[dict[str, Any], list[str]]] = {
    "a name that there is not": (
        {"wet_length": lambda: figure("Length", "mm", "wet(lenght, clay.shrinkage)", "tenth")},
        ["'lenght' is not known", "wet(lenght, clay.shrinkage)\n        ^^^^^^", "did you mean 'length'?"],
    ),
    "a conversion left out": (
        {"clay_mass": lambda: figure("Clay", "g", "wet_length² × thickness × clay.density", role="clay mass")},
        ["comes to g·mm³/cm³", "÷ 1000 mm³/cm³ is missing"],
    ),
    "another dimension than the figure's": (
        {"wet_length": lambda: figure("Length", "g", "wet(length, clay.shrinkage)")},
        ["comes to a length, and a mass is wanted"],
    ),
    "a unit that is not told": (
        {"wet_length": lambda: figure("Length", "", "wet(length, clay.shrinkage)")},
        ["comes to a length, and no unit is told", "unit: mm"],
    ),
    "lengths and masses added": (
        {"wet_length": lambda: figure("Length", "mm", "length + clay.density")},
        ["cannot be added to a length"],
    ),
    "a figure worked from itself": (
        {"wet_length": lambda: figure("Length", "mm", "wet_length + 1 mm")},
        ["'wet_length' is worked from itself"],
    ),
    "what may be left out": (
        {"wet_length": lambda: figure("Length", "mm", "length + wire.thickness")},
        ["'wire' may be left out"],
    ),
    "a field without its role": (
        {"clay": lambda: field.item(Clay, "the clay it is cut from")},
        ["'clay' does not say what it does", "made of"],
    ),
    "a role that there is not": (
        {"clay": lambda: field.item(Clay, "the clay", role="made off")},
        ["there is no role 'made off'", "'made of'"],
    ),
    "clay of no thickness": (
        {"thickness": lambda: field.length("thickness", above=0)},
        ["nothing in it has the role 'rolled to'"],
    ),
    "a mass of clay without clay": (
        {"clay": lambda: field.item(Wire, "the wire", role="made of"),
         "wet_length": lambda: figure("Length", "mm", "length"),
         "clay_mass": lambda: figure("Mass", "g", "wire_grams(1 mm, length, clay.density)", role="clay mass")},
        ["nothing in it is made of clay"],
    ),
    "a need of an unknown number": (
        {"needs": lambda: (need("breadth > 1 mm", "is narrow", at="length"),)},
        ["'breadth' is not known"],
    ),
    "a size of no figure": (
        {"sizes": lambda: (size("length", "wet_lenght"),)},
        ["there is no figure 'wet_lenght'", "'wet_length'"],
    ),
    "a caution that nobody wrote": (
        {"hazards": lambda: ("knife",)},
        ["there is no caution 'knife'"],
    ),
}  # fmt: skip


@pytest.mark.parametrize(("changed", "told"), SLIPS.values(), ids=SLIPS.keys())
def test_a_slip_stops_the_program_as_the_class_is_made(changed: dict[str, Any], told: list[str]) -> None:
    with pytest.raises(TypeError) as fault:
        made(**changed)
    for words in told:
        assert words in str(fault.value), str(fault.value)


def test_what_a_kind_may_say_is_told_with_every_formula_rounding_and_role() -> None:
    told = words_told()
    for words in ("wet(fired, s)", "nearest(x, drawer.rod)", "tenth: cut", "clay mass: the clay", "clay: shrinkage"):
        assert words in told
    assert "CannotBe" not in told
    assert all(call in told for call in CALLS)
