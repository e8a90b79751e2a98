"""What every version of the demonstration's designs keeps to: short steps, and each hazard told before its action."""

from __future__ import annotations

import re
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from sheetgen.draw.templates import draw
from sheetgen.model.numbers import Numbers
from sheetgen.pipeline import work_through
from sheetgen.render import words
from sheetgen.render.firing import allowed
from sheetgen.render.handout import Sheets
from sheetgen.render.marks import Marks

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.model.worked import Worked, WorkedStep, WorkedVersion

ROOT = Path(__file__).parents[2]
MOST_SENTENCES = 5
SENTENCE = re.compile(r"[.!?][*”’)]*(?=\s|$)")
FIBRE = "fibre-blanket"


@pytest.fixture(scope="module")
def designs() -> list[Worked]:
    """The demonstration library, worked."""
    return work_through(ROOT).worked


def versions(designs: list[Worked]) -> Iterator[tuple[str, Worked, WorkedVersion]]:
    for worked in designs:
        for version in worked.versions.values():
            yield f"{worked.name}, {version.title}", worked, version


def sentences(text: str) -> int:
    return len(SENTENCE.findall(text))


def told_at(step: WorkedStep) -> set[str]:
    """The hazards of a step that are told in full at an action, by their ids."""
    return {caution.id for caution in step.cautions if caution.at_action}


def test_a_sentence_ends_at_a_stop_and_not_at_a_decimal_point_or_a_label() -> None:
    assert sentences("**In air:** roll it 1.5 mm thick. Is it **flat**? **Then lift it.** Go on") == 3


def test_no_action_takes_more_than_five_sentences(designs: list[Worked]) -> None:
    assert len(list(versions(designs))) > len(designs) > 0
    long = {
        f"{where}: {step.title}"
        for where, _, version in versions(designs)
        for step in version.steps
        if sentences(words.plain(step.text)) > MOST_SENTENCES
    }
    assert long == set()


def test_what_is_said_of_a_firing_takes_no_more_than_five_sentences_either(designs: list[Worked]) -> None:
    long = {
        f"{where}: {step.title}"
        for where, worked, version in versions(designs)
        for step in version.steps
        if sentences(allowed(step, Numbers(worked.rounder))) > MOST_SENTENCES
    }
    assert long == set()


def test_what_can_be_done_in_a_wait_brings_no_hazard_that_is_told_in_full_only_later(designs: list[Worked]) -> None:
    untold = set()
    for where, _, version in versions(designs):
        for wait, steps in version.plan.meanwhile.items():
            told = {name for step in version.steps[: wait + 1] for name in told_at(step)}
            for number in steps:
                bringers = {i for i in steps if i <= number}
                for name in told_at(version.steps[number]) - told:
                    first = next(i for i, step in enumerate(version.steps) if name in told_at(step))
                    if first not in bringers:
                        untold.add(f"{where}: {name} in {version.steps[number].title}")
    assert untold == set()


def test_kiln_fibre_is_cut_in_a_wait_before_the_fire_and_its_mask_is_told_there(designs: list[Worked]) -> None:
    fired = 0
    for where, _, version in versions(designs):
        using = [i for i, step in enumerate(version.steps) if any(item.id == FIBRE for item in step.uses)]
        fires = [i for i in using if version.steps[i].firing]
        if not fires:
            continue
        fired += 1
        cut = version.steps[using[0]]
        assert using[0] < fires[0], where
        assert cut.waits, where
        assert "Mask on, cut the fibre" in words.plain(cut.meanwhile), where
        assert "fibre dust" in {caution.id for caution in cut.cautions}, where
        assert any("damp" in note for note in cut.notes), where
    assert fired > len(designs)


def test_kiln_fibre_that_is_cut_damp_has_six_hours_to_dry_before_the_fire(designs: list[Worked]) -> None:
    for where, _, version in versions(designs):
        cut = next(
            (i for i, s in enumerate(version.steps) if s.waits and any(item.id == FIBRE for item in s.uses)), None
        )
        if cut is not None:
            fire = next(i for i, step in enumerate(version.steps) if step.firing)
            assert sum(step.wait.low for step in version.steps[cut:fire] if step.wait) >= 6 * 60, where


def printed_minutes(told: str) -> tuple[int, int]:
    """The two ends of a time as it is printed: 3 h 55 – 6 h 10, 4 h – 5 h 45, 65 – 90 min, 2 – 3 h, 5 min."""
    ends = [end.strip() for end in re.sub(r"[\u00a0\u202f\u2060]", " ", told).split("–")]
    unit = "h" if re.search(r"\d h$", ends[-1]) else "min"
    whole = [end if re.search("[a-z]", end) else f"{end} {unit}" for end in ends]
    found = [re.fullmatch(r"(?:([\d.]+) h)? ?(?:(\d+)(?: min)?)?", one) for one in whole]
    minutes = [round(float(one[1] or 0) * 60) + int(one[2] or 0) for one in found if one]
    assert len(minutes) == len(ends), told
    return minutes[0], minutes[-1]


def test_the_sessions_of_a_sheet_come_to_the_time_at_the_bench_that_stands_above_them(designs: list[Worked]) -> None:
    seen = 0
    for name, worked, version in versions(designs):
        sheet = Sheets(worked, version, draw(worked, version, worked.studio.paper)).handout(Marks(), ())
        if len(sheet.sessions) > 1:
            each = [printed_minutes(one.minutes) for one in sheet.sessions]
            assert printed_minutes(sheet.head.bench_time) == (sum(a for a, _ in each), sum(b for _, b in each)), name
            seen += 1
    assert seen > 20
