"""How a class is held, as a studio or a project writes it, and what its words cannot be."""

from __future__ import annotations

from typing import Any

import pytest

GOOD = """\
class:
  people: 12
  evenings: ["18:30-21:15", "9:00-16:00"]
  days between: 7
  set up: 10 min
  clear up: 5-10 min
  teacher's piece: yes
  a spare set for: 12
"""


def studio(library: Any, written: str) -> Any:
    library.write("studio.yaml", library.path("studio.yaml").read_text() + written)
    return library.check("pendant")


def test_a_class_of_twelve_on_two_days_is_read(library: Any) -> None:
    outcome = studio(library, GOOD)
    assert not outcome.troubles.errors
    held = outcome.worked[0].main.plan.class_plan.held
    assert (held.people, held.evenings) == (12, ((18 * 60 + 30, 21 * 60 + 15), (9 * 60, 16 * 60)))
    assert (held.days_between, held.set_up, held.clear_up) == (7, 10, 7.5)


HOURS = 'from when to when, on one day, in quotes: "18:30-21:10"'
SPARE = "a whole number from 1 to 100: a spare set for: 12"
PEOPLE, DAYS = "a whole number from 1 to 100: people: 12", "a whole number from 1 to 60: days between: 7"


@pytest.mark.parametrize(("old", "new", "said", "help"), [
    ("people: 12", "people: a dozen", "people cannot be a dozen", PEOPLE),
    ("people: 12", "people: 0", "people cannot be 0", PEOPLE),
    ("people: 12", "people: 12.5", "people cannot be 12.5", PEOPLE),
    ("days between: 7", "days between: 0", "days between cannot be 0", DAYS),
    ("18:30-21:15", "18.30-21.15", "'18.30-21.15' is no evening", HOURS),
    ("18:30-21:15", "21:15-18:30", "'21:15-18:30' is no evening", HOURS),
    ("18:30-21:15", "18:30-25:15", "'18:30-25:15' is no evening", HOURS),
    ("18:30-21:15", "18:30-20:75", "'18:30-20:75' is no evening", HOURS),
    ("18:30-21:15", "18:30-18:45", "the evening 18:30-18:45 is over before it has been set up and cleared up",
     "a later end, or a shorter set up: and clear up:"),
    ("set up: 10 min", "set up: 10 mm", "set up wants a time, and '10 mm' is a length", "write it as 12-24 h"),
    ("teacher's piece: yes", "teacher's piece: two", "teacher's piece cannot be two", "yes or no"),
    ("a spare set for: 12", "a spare set for: 0", "a spare set for cannot be 0", f"{SPARE}; or none"),
    ("a spare set for: 12", "a spare set for: no", "a spare set for cannot be no", f"{SPARE}; or none"),
    ("clear up: 5-10 min", "clear up: 3 h", "clear up cannot be 3 h", "0 min or more and 120 min or less"),
])  # fmt: skip
def test_what_a_class_cannot_be_is_told_at_its_word(old: str, new: str, said: str, help: str, library: Any) -> None:  # noqa: A002
    [trouble] = studio(library, GOOD.replace(old, new)).troubles.errors
    assert (trouble.message, trouble.help) == (said, help)
    at = trouble.place.source.line(trouble.place.line)[trouble.place.column - 1 :]
    assert at.lstrip('"').startswith(new.rpartition(": ")[-1])


def test_every_fault_of_a_class_is_told_in_one_run(library: Any) -> None:
    wrong = (
        GOOD.replace("people: 12", "people: none").replace("between: 7", "between: x").replace("9:00-16:00", "all day")
    )
    assert len(studio(library, wrong).troubles.errors) == 3


def test_a_project_that_speaks_of_its_class_says_all_that_the_studio_does_not(library: Any) -> None:
    project = library.path("pendant/project.yaml").read_text()
    library.write("pendant/project.yaml", project.replace("choices:\n", "class: {people: 4}\nchoices:\n"))
    [trouble] = library.check("pendant").troubles.errors
    assert trouble.message == "this class has no evenings"
    assert (trouble.place.line, trouble.help) == (7, 'add evenings: ["18:30-21:10"], here or to class: of the studio')
    outcome = studio(library, GOOD)
    assert not outcome.troubles.errors
    assert outcome.worked[0].main.plan.class_plan.held.people == 4


def test_more_evenings_than_anybody_holds_are_refused(library: Any) -> None:
    many = ", ".join(['"18:30-21:15"'] * 31)
    [trouble] = studio(library, f"class:\n  people: 12\n  evenings: [{many}]\n").troubles.errors
    assert trouble.message == "a class of 31 evenings is too long to plan"
