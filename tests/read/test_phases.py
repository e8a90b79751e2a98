"""A clay's firing, phase by phase: what is fired in air is cold before it is packed in carbon."""

from __future__ import annotations

from typing import Any

import pytest

COOL = "        cool below: 50 °C\n"


def test_a_phase_in_air_without_cooling_before_one_in_carbon_is_a_trouble_at_that_phase(library: Any) -> None:
    library.change("stock/clays.yaml", COOL, "")
    troubles = [t for t in library.check("drops").troubles.errors if "carbon" in t.message]
    assert [t.message for t in troubles] == [
        "the phase at 290 °C is followed by one in carbon, and nothing says how far it cools before"
    ]
    assert troubles[0].place.source.line(troubles[0].place.line).strip() == "- to: 290 °C"
    assert "cool below: 50 °C" in troubles[0].help


def test_between_two_phases_in_carbon_nothing_need_cool(library: Any) -> None:
    library.change("stock/clays.yaml", COOL, "        bed: carbon\n")
    assert not library.check("drops").troubles.errors


@pytest.mark.parametrize("bed", ["charcoal", "Carbon", "activated charcoal", "coconut shell", "open  shelf"])
def test_a_bed_by_another_name_is_refused_and_never_taken_for_an_open_shelf(bed: str, library: Any) -> None:
    # else a box of carbon would be fired without a word of carbon monoxide
    library.change("stock/clays.yaml", "        bed: carbon\n", f"        bed: {bed}\n")
    [trouble] = library.check("drops").troubles.errors
    assert trouble.message == f"a bed cannot be '{bed}'"
    assert trouble.place.source.line(trouble.place.line).strip() == f"bed: {bed}"
    assert "carbon" in trouble.help
