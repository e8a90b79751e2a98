"""Prints several PDFs at once, a process for each core; PDFs are most of the time that publishing takes."""

from __future__ import annotations

import gc
import multiprocessing
import os
import threading
import time
from concurrent.futures import ProcessPoolExecutor
from multiprocessing.util import Finalize
from typing import TYPE_CHECKING, Self

from sheetgen.render.pdf import Printer

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence
    from types import TracebackType

    from sheetgen.render.job import Job, Printout
    from sheetgen.render.laid import LaidOut

FEWEST = 4  # fewer PDFs than this are done before another process is ready

_here: list[Printer] = []


def _begin() -> None:
    """One printer for each process, which ends when the one that began it has ended, however that was."""
    parent = os.getppid()

    def watch() -> None:
        while os.getppid() == parent:
            time.sleep(1)
        os._exit(1)

    threading.Thread(target=watch, daemon=True).start()
    _here.append(Printer())
    Finalize(None, _here.clear, exitpriority=1)  # its fonts go before what frees them is gone
    gc.disable()  # a layout is made of rings that all live until it is printed: to look through them is in vain
    gc.freeze()


def _print(job: Job) -> list[Printout]:
    try:
        return _here[0].printed(job)
    finally:
        gc.collect()


def _pieces(page: str) -> tuple[bytes, LaidOut, list[str]]:
    try:
        return _here[0].pieces(page)
    finally:
        gc.collect()


class PdfPool:
    """A printer, and more of them in processes of their own as soon as there is enough to print.

    Raises NoPango where WeasyPrint cannot work.
    """

    def __init__(self, cores: int | None = None) -> None:
        self.printer = Printer()
        self.cores = cores or os.cpu_count() or 1
        self.pool: ProcessPoolExecutor | None = None

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, fault: BaseException | None, trace: TracebackType | None
    ) -> None:
        if self.pool is not None:
            self.pool.shutdown(cancel_futures=True)

    def printed(self, jobs: Sequence[Job]) -> Iterator[list[Printout]]:
        """The PDFs of several sheets in their order, of each one a paper.

        All are begun at once, beside what was begun before, and each comes when it is ready. Raises CannotBe, when it
        would come, for one that does not print as it should.
        """
        few = len(jobs) == 1 or sum(len(job.papers) for job in jobs) < FEWEST
        if self.cores < 2 or (few and self.pool is None):  # noqa: PLR2004 - one core has nobody to share with
            return iter([self.printer.printed(job) for job in jobs])
        return self._ready().map(_print, jobs)

    def each_in_pieces(self, pages: Sequence[str]) -> list[tuple[bytes, LaidOut, list[str]]]:
        """Pages of pieces that are put onto others, as `Printer.pieces` makes each."""
        if self.cores < 2 or (len(pages) < FEWEST and self.pool is None):  # noqa: PLR2004 - as above
            return self.printer.each_in_pieces(pages)
        return list(self._ready().map(_pieces, pages))

    def _ready(self) -> ProcessPoolExecutor:
        if self.pool is None:
            # Not forked: a fork would copy the threads of a progress display half way.
            context = multiprocessing.get_context("spawn")
            self.pool = ProcessPoolExecutor(self.cores, context, _begin)
        return self.pool
