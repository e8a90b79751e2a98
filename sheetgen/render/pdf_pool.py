"""Prints several PDFs at once, in processes of their own; PDFs are most of the time that publishing takes."""

from __future__ import annotations

import os
from functools import cached_property
from typing import TYPE_CHECKING, Any, Self

from sheetgen.render.crew import Crew
from sheetgen.render.pdf import Printer
from sheetgen.render.worker import Ask

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence
    from concurrent.futures import Future
    from types import TracebackType

    from sheetgen.render.job import Job, Printout
    from sheetgen.render.laid import LaidOut


class PdfPool:
    """Printers in processes, as many as there are cores; the first is begun at once, the others when there is more."""

    def __init__(self, cores: int | None = None) -> None:
        self.crew = Crew(cores or os.cpu_count() or 1)

    @cached_property
    def printer(self) -> Printer:
        """A printer in this process, without limits, for what is ours alone. Raises NoPango where none can work."""
        return Printer()

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, fault: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.crew.end()

    def ready(self) -> None:
        """Wait until something can be printed. Raises NoPango where WeasyPrint cannot work."""
        self.crew.ready()

    def printed(self, jobs: Sequence[Job]) -> Iterator[list[Printout]]:
        """The PDFs of several sheets in their order, of each one a paper.

        All are begun at once, the largest first, behind what was begun before, and each comes when it is ready. Raises
        CannotBe, when it would come, for one that does not print as it should, or takes more than it may.
        """
        return _each(self.crew.ask_all([Ask("printed", job, job.papers[0].name) for job in jobs]))

    def each_in_pieces(self, pages: Sequence[str]) -> list[tuple[bytes, LaidOut, list[str]]]:
        """Pages of pieces that are put onto others, as `Printer.pieces` makes each."""
        return list(_each(self.crew.ask_all([Ask("pieces", page, "a page of labels or cards") for page in pages])))


def _each(begun: list[Future[Any]]) -> Iterator[Any]:
    """What comes, in order; of what nobody waits for any more, nothing is begun."""
    try:
        while begun:
            yield begun.pop(0).result()
    finally:
        for one in begun:
            one.cancel()
