"""What the usual cautions say, and which kinds of part carry some."""

from __future__ import annotations

import pytest

from sheetgen.facts.cautions import CAUTIONS
from sheetgen.parts.catalogue import kinds


def test_dust_of_clay_is_kept_dry_and_dust_of_metal_wet() -> None:
    assert "never under water" in CAUTIONS["clay dust"].avoid
    assert "under water" in CAUTIONS["metal dust"].avoid
    assert "never" not in CAUTIONS["metal dust"].avoid


def test_iron_stays_out_of_the_pickle_and_what_is_hot_too() -> None:
    assert "iron stays out" in CAUTIONS["pickle"].avoid
    assert "never in pickle" in CAUTIONS["hot metal"].avoid


def test_soldering_is_leak_checked_with_hair_and_sleeves_tied_back() -> None:
    for word in ("soapy water", "hair", "sleeves"):
        assert word in CAUTIONS["torch"].avoid


def test_carbon_monoxide_says_what_to_do_when_the_alarm_sounds_and_when_to_open() -> None:
    avoid = CAUTIONS["carbon box"].avoid
    assert "everybody out" in avoid
    assert "only when cold" in avoid


@pytest.mark.parametrize("kind", ["jump ring", "bent wire", "toggle clasp", "bezel cup", "metal disc", "slit strips"])
def test_kinds_that_cut_metal_or_fibre_carry_a_caution(kind: str) -> None:
    assert kinds()[kind].hazards


def test_a_bezel_cup_is_soldered_and_pickled_and_says_so() -> None:
    assert {"torch", "pickle"} <= set(kinds()["bezel cup"].hazards)


def test_every_hazard_of_a_kind_is_a_caution_there_is() -> None:
    for name, kind in kinds().items():
        assert set(kind.hazards) <= CAUTIONS.keys(), name
