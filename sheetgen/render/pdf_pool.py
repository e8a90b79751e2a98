"""Prints several PDFs at once, a process for each core; PDFs are most of the time that publishing takes."""

from __future__ import annotations

import multiprocessing
import os
import threading
import time
from concurrent.futures import ProcessPoolExecutor
from typing import TYPE_CHECKING, Self

from sheetgen.render.pdf import Printer

if TYPE_CHECKING:
    from collections.abc import Sequence
    from types import TracebackType

    from sheetgen.render.job import Job, Printout

FEWEST = 4  # fewer PDFs than this are done before another process is ready

_here: list[Printer] = []


def _ready() -> None:
    """One printer for each process, which ends when the one that began it has ended, however that was."""
    parent = os.getppid()

    def watch() -> None:
        while os.getppid() == parent:
            time.sleep(1)
        os._exit(1)

    threading.Thread(target=watch, daemon=True).start()
    _here.append(Printer())


def _print(job: Job) -> list[Printout]:
    return _here[0].printed(job)


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

    def printed(self, jobs: Sequence[Job]) -> list[list[Printout]]:
        """The PDFs of several sheets in their order, of each one a paper.

        Raises CannotBe for one that does not print as it should.
        """
        if sum(len(job.papers) for job in jobs) < FEWEST or len(jobs) == 1 or self.cores < 2:  # noqa: PLR2004 - one core has nobody to share with
            return [self.printer.printed(job) for job in jobs]
        if self.pool is None:
            # Not forked: a fork would copy the threads of a progress display half way.
            context = multiprocessing.get_context("spawn")
            self.pool = ProcessPoolExecutor(self.cores, context, _ready)
        return list(self.pool.map(_print, jobs))
