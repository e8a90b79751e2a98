"""The texts and rows of numbers that handout and bench card print of a version, apart from those for its teacher."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from sheetgen.model.worked import ON_CARD

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.model.worked import Prose, Shown, WorkedVersion


class Text(NamedTuple):
    """Words with numbers in them, or numbers beside a step: by the step's place (step 04), under which title."""

    at: str
    title: str
    told: Prose | tuple[Shown, ...]


def texts_of_the_maker(version: WorkedVersion) -> Iterator[Text]:
    """Head and steps. Of what can go wrong at a step a handout prints one line: what is seen first, and its mend."""
    yield Text("head", "Head", version.summary)
    yield Text("head", "Head", version.makes)
    for nth, step in enumerate(version.steps, 1):
        first = (text for mishap in step.mishaps[:1] for text in (mishap.seen, mishap.mend))
        for told in (step.text, step.expect, step.meanwhile, step.show, step.card[:ON_CARD], *first):
            yield Text(f"step {nth:02}", step.title, told)


def texts_of_the_teacher(version: WorkedVersion) -> Iterator[Text]:
    """What the teacher's sheet alone prints: why a thing goes wrong, what else does, and how the piece is taught."""
    for nth, step in enumerate(version.steps, 1):
        for one in step.mishaps:
            for told in (one.seen, one.why, one.mend):
                yield Text(f"step {nth:02}", step.title, told)
    teaching = version.teaching
    lines = (*teaching.before, *teaching.show, teaching.scrap, teaching.leftovers, *teaching.bring, teaching.next)
    yield from (Text("teacher", "For the teacher", line) for line in lines)


def shown_to_the_maker(version: WorkedVersion) -> Iterator[Shown]:
    """Every number in those texts and beside those steps, and the finished sizes."""
    yield from version.finished
    yield from (one for text in texts_of_the_maker(version) for one in text.told if not isinstance(one, str))
