"""One deed of a step, as a rule sees it: the bench before the deed, what is worked on and what is attached to it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from sheetgen.base.place import Place
    from sheetgen.model.bench.bodies import Attached, Bench, Body
    from sheetgen.model.worked import WorkedStep


@dataclass(frozen=True, slots=True)
class Moment:
    """One deed of a step: `named` are the parts it works on, `whole` those with all that they are joined to.

    `deed` is a word of facts/bench.py, or `shape` for raw clay worked, `begin` and `end` of a step, `finish` of all.
    """

    bench: Bench
    index: int
    step: WorkedStep
    deed: str
    named: tuple[str, ...]
    whole: frozenset[str]

    @property
    def bodies(self) -> list[Body]:
        """What is worked on, with all that it is joined to."""
        return [self.bench.bodies[name] for name in sorted(self.whole) if self.bench.bodies[name].there]

    @property
    def bodies_named(self) -> list[Body]:
        """What the step names, without what it is joined to."""
        return [self.bench.bodies[name] for name in self.named]

    @property
    def attached(self) -> list[Attached]:
        """What is attached to it."""
        return [one for one in self.bench.attached if one.part in self.whole]

    def place(self, *fields: str) -> Place | None:
        """The first of some fields of the step, or items that it uses, that the file has; else its title.

        Of a house step it is where the project uses it: what comes in which order is the project's to mend.
        """
        found = next((self.step.places[name] for name in fields if name in self.step.places), self.step.place)
        return found.where_used if found else None

    def at(self, index: int) -> str:
        """Another step as a trouble tells it."""
        return "this step" if index == self.index else f"step {index + 1}"

    @property
    def number(self) -> str:
        """This step as a trouble tells it."""
        return f"step {self.index + 1}"
