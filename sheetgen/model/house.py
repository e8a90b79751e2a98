"""House steps as their files write them: a step of a project, or several, with parameters."""

from __future__ import annotations

from pydantic import Field

from sheetgen.model.project import Showing, Step
from sheetgen.model.written import Text, Written

Takes = dict[Text, Text | list[Text | Showing]]
"""Parameters and their defaults; one without must be given."""


class HouseStep(Step):
    """One step that designs share."""

    about: Text | None = None
    takes: Takes = Field(default_factory=dict)


class HouseSteps(Written):
    """Several steps that go together, such as one for each way a clay is fired."""

    about: Text | None = None
    takes: Takes = Field(default_factory=dict)
    steps: list[Step]
