"""The project's own figures: what they are called, and how one that is cut is rounded."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.dimension import spelled
from sheetgen.base.figure import CUT
from sheetgen.base.spelling import suggest
from sheetgen.model.project import OwnFigure
from sheetgen.work.stopped import Stopped

if TYPE_CHECKING:
    from sheetgen.base.figure import Rounding
    from sheetgen.base.place import Word
    from sheetgen.work.evaluator import Evaluator


@dataclass(frozen=True, slots=True)
class Own:
    """One of the project's own figures as it is written; `cut`, how it is rounded if a hand cuts it."""

    label: str
    word: Word
    cut: Word | None = None

    def rounding(self, name: str, evaluator: Evaluator) -> Rounding | None:
        """How it is rounded, if it says so. Stopped, its trouble noted, where nothing is cut so."""
        if self.cut is None:
            return None
        rounding = next((one for one in CUT if one == str(self.cut)), None)
        if rounding is None:
            evaluator.troubles.add(f"nothing is cut '{self.cut}'", self.cut.place, suggest(self.cut, sorted(CUT)))
        elif spelled(evaluator.own_worked(name).unit) != "mm":
            told = f"'{self.word}' is no length, and is not cut"
            evaluator.troubles.add(told, self.cut.place, "leave out 'round'")
        else:
            return rounding
        raise Stopped


def own(key: str, written: Word | OwnFigure) -> Own:
    """One of the project's own figures; the name is the label of one that has none."""
    if isinstance(written, OwnFigure):
        return Own(str(written.label), written.value, written.round)
    return Own(key.replace("_", " ").capitalize(), written)
