"""What the usual cautions say, and which kinds of part carry some."""

from __future__ import annotations

from pathlib import Path

import pytest

from sheetgen.base.trouble import Troubles
from sheetgen.facts.cautions import CAUTIONS, FLAMES, OFF_AT_A_FLAME
from sheetgen.facts.joints import JOINTS
from sheetgen.parts.catalogue import kinds
from sheetgen.read.library import read_library

ROOT = Path(__file__).parents[2]


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


def test_a_kiln_is_off_at_the_wall_before_a_hand_goes_in() -> None:
    assert "switched off at the wall before you reach in" in CAUTIONS["kiln"].avoid


def test_dust_of_carbon_is_named_and_nothing_damp_goes_into_the_fire() -> None:
    told = CAUTIONS["fibre dust"]
    assert "carbon" in told.hazard
    assert "damp where it may be, and never what comes into the fire" in told.avoid


def test_water_in_a_hollow_spits_on_a_warm_plate() -> None:
    assert "water left in a hollow spits" in CAUTIONS["hot plate"].consequence
    assert "Eye protection, tweezers, hole up" in CAUTIONS["hot plate"].avoid


def test_gloves_for_acid_are_off_at_the_flame_and_on_at_the_pickle() -> None:
    assert "gloves for acid off" in CAUTIONS["torch"].avoid
    assert "Gloves on at the pickle only" in CAUTIONS["pickle"].avoid


def test_every_glove_against_a_liquid_has_its_words_at_a_flame() -> None:
    gloves = {wear for told in CAUTIONS.values() for wear in told.wear if wear.startswith("Gloves for")}
    assert gloves == OFF_AT_A_FLAME.keys()
    assert set(FLAMES) <= CAUTIONS.keys()


def test_shears_and_a_disc_cutter_have_edges_and_only_a_saw_has_a_blade_that_snaps() -> None:
    library = read_library(ROOT, Troubles(), ["towline-bracelet"])
    assert library is not None
    tools = library.stock.items
    assert "saw blade" in tools["saw"].cautions
    for name in ("shears", "disc-cutter"):
        assert "metal edge" in tools[name].cautions
        assert "saw blade" not in tools[name].cautions
    for kind in ("metal disc", "bezel cup", "bezel strip", "ring blank"):
        assert "saw blade" not in kinds()[kind].hazards
    assert (
        "blade" not in CAUTIONS["metal edge"].hazard + CAUTIONS["metal edge"].consequence + CAUTIONS["metal edge"].avoid
    )


@pytest.mark.parametrize("kind", ["jump ring", "bent wire", "toggle clasp", "bezel cup", "metal disc", "slit strips"])
def test_kinds_that_cut_metal_or_fibre_carry_a_caution(kind: str) -> None:
    assert kinds()[kind].hazards


def test_a_bezel_cup_is_soldered_and_pickled_and_says_so() -> None:
    assert {"torch", "pickle"} <= set(kinds()["bezel cup"].hazards)


def test_every_hazard_of_a_kind_is_a_caution_there_is() -> None:
    for name, kind in kinds().items():
        assert set(kind.hazards) <= CAUTIONS.keys(), name


@pytest.mark.parametrize(
    ("caution", "kept"),
    [
        ("clay dust", ("mask on", "dry, over a tray", "wipe up wet", "never blow or sweep")),
        ("metal dust", ("wet", "mask", "wipe up wet", "wash hands")),
        ("fibre dust", ("fibre, firing bed, plug", "mask on", "cut fibre damp, fire it dry", "slowly")),
        ("blade", ("away", "fingers behind the edge", "downwards or away", "cap it")),
        ("pin", ("away from the hand that holds", "fester", "cork")),
        ("burnisher", ("away from the hand that holds", "on a block", "short strokes")),
        ("drilling", ("pierce", "away from the hand that holds", "back drilled work with a block, not a finger")),
        ("wire ends", ("eyes", "eye protection for all", "both sides of the cut", "downwards")),
        ("hammering", ("eyes, ears and fingers", "ears covered", "pliers or tape", "head fast")),
        ("damp clay", ("bursts", "what the mirror passed", "from cold")),
        ("kiln", ("through thin gloves", "cotton sleeves", "within call", "shut until cold", "off at the wall")),
        ("binder smoke", ("lungs and eyes", "vent the room", "do not sit beside it")),
        ("kiln glow", ("eyes", "do not look in", "briefly", "shaded glasses made for it")),
        ("metal edge", ("slice skin", "eye protection", "not by its corners", "file each edge", "brush")),
        ("saw blade", ("blade ends fly", "eye protection", "upright", "unforced", "bench pin", "beside the line")),
    ],
)
def test_what_is_told_as_one_keeps_what_each_of_its_cautions_is_told_for(caution: str, kept: tuple[str, ...]) -> None:
    [joint] = [one for one in JOINTS if caution in one.each]
    told = " ".join([joint.consequence, joint.avoid, *joint.each[caution]]).lower()
    assert [words for words in kept if words not in told] == []


def test_every_caution_that_is_told_with_others_is_held_to_its_words() -> None:
    assert sum(len(joint.each) for joint in JOINTS) == 15
