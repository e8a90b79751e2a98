"""Where a list is wanted, one thing alone will do: as a person writes it who has only one."""

from __future__ import annotations

from typing import Any

import pytest

PENDANT = "pendant/project.yaml"
OTHERS = "stock/others.yaml"
# file, as it stands, one alone
ALONE = [
    (OTHERS, "    acts as: [carbon]\n", "    acts as: carbon\n"),
    (OTHERS, "    cautions: [epoxy]\n", "    cautions: epoxy\n"),
    (OTHERS, "    cautions: [blade]\n", "    cautions: blade\n"),
    (PENDANT, "    parts: [plate]\n", "    parts: plate\n"),
    (PENDANT, "    does: [test]\n", "    does: test\n"),
    (PENDANT, "    uses: [clay, roller]\n    minutes", "    uses: clay\n    minutes"),
    (PENDANT, "    expect: It is round.\n", "    caution: blade\n    show: plate.wet_disc\n    diagram: plate\n"),
    (PENDANT, "    expect: It is round.\n", "    show: {what: plate.wet_disc, label: Disc}\n"),
    (PENDANT, "choices:\n", "tags: metal clay\nchoices:\n"),
    ("studio.yaml", "paper: [A4, Letter]\n", "paper: A4\n"),
    ("stock/clays.yaml", "    firing:\n      - to: 650 °C\n        hold: 30 min\n",
     "    firing: {to: 650 °C, hold: 30 min}\n"),
    ("stock/clays.yaml", "    shrinkage: 8-10 %\n", "    test strips: wet 50 mm, fired 45.5 mm\n"),
]  # fmt: skip


@pytest.mark.parametrize(("file", "old", "new"), ALONE, ids=[one[2].strip() for one in ALONE])
def test_one_thing_alone_is_read_as_a_list_of_one(file: str, old: str, new: str, library: Any) -> None:
    library.change(file, old, new)
    outcome = library.check()
    assert not outcome.troubles.errors, "\n".join(map(str, outcome.troubles))
    assert len(outcome.worked) == 3


def test_one_word_means_what_a_list_of_it_means(library: Any) -> None:
    listed = library.main("pendant").steps
    library.change(PENDANT, "    parts: [plate]\n", "    parts: plate\n")
    library.change(PENDANT, "    does: [test]\n", "    does: test\n")
    alone = library.main("pendant").steps
    assert [(s.parts, s.does) for s in alone] == [(s.parts, s.does) for s in listed]


def test_a_house_step_takes_one_word_too_and_puts_a_list_into_its_place(library: Any) -> None:
    step = (
        "dry:\n  takes:\n    pieces:\n    deeds: test\n  title: Dry\n  wait: drying\n  does: deeds\n  parts: pieces\n"
    )
    library.write("steps/bench.yaml", step)
    old = "  - title: Dry\n    wait: drying\n    does: [test]\n"
    library.change(PENDANT, old, "  - house: dry\n    pieces: [plate]\n")
    assert library.main("pendant").steps[1].parts == ("plate",)
    assert library.main("pendant").steps[1].does == ("dry", "test")
    library.change(PENDANT, "    pieces: [plate]\n", "    pieces: plate\n    uses: roller\n")
    assert [item.id for item in library.main("pendant").steps[1].uses] == ["roller"]


@pytest.mark.parametrize("several", ["does: pickle, rinse", "diagram: plate, rim"])
def test_several_words_without_brackets_are_told_and_not_guessed_at(several: str, library: Any) -> None:
    library.change(PENDANT, "    expect: It is round.\n", f"    {several}\n")
    [trouble] = library.check("pendant").troubles.errors
    assert "wants a list" in trouble.message
    assert "[one, two]" in trouble.help


def test_what_is_amiss_in_fields_that_stand_alone_is_told_at_its_place(library: Any) -> None:
    firing = "    firing:\n      - to: 650 °C\n        hold: 30 min\n"
    library.change("stock/clays.yaml", firing, "    firing: {to: 650 °C, hold: 30 min, cool bellow: 50 °C}\n")
    trouble = next(t for t in library.check("pendant").troubles.errors if "no field" in t.message)
    assert trouble.help == "did you mean 'cool below'?"
    assert trouble.place.column == len("    firing: {to: 650 °C, hold: 30 min, ") + 1
