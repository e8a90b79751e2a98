"""Prints only what was not printed before: a sheet of the same page, rules and printer is taken as it was made."""

from __future__ import annotations

import hashlib
import json
from contextlib import suppress
from dataclasses import asdict
from typing import TYPE_CHECKING, Any, NamedTuple

from sheetgen.model.page import Page
from sheetgen.render.job import Doubt, Printout

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Mapping, Sequence

    from sheetgen.render.job import Job, Prints


class Before(NamedTuple):
    """What was printed before: `known` of each sheet by its first file, `read` the bytes of a file, or None.

    `printer`: what the bytes hang on besides the sheet; `wanted`: whether a file is to be made anew where it is not as
    the sheet is now.
    """

    known: Mapping[str, Any]
    read: Callable[[str], bytes | None]
    printer: str
    wanted: Callable[[str], bool] = lambda _path: True
    always: bool = False


class KnownPool:
    """Prints through a pool; `now` is what is known of every sheet afterwards, plain values. `kept` counts files."""

    def __init__(self, pool: Prints, before: Before) -> None:
        self.pool = pool
        self.before = before
        self.now: dict[str, Any] = {}
        self.kept = 0

    def printed(self, jobs: Sequence[Job]) -> Iterator[list[Printout]]:
        """As `PdfPool.printed`: all are begun at once."""
        found = [self._known(job) for job in jobs]
        made = self.pool.printed([job for job, one in zip(jobs, found, strict=True) if one is None])
        return self._each(jobs, found, iter(made))

    def made(self, name: str, of: str, make: Callable[[], Sequence[Page]]) -> list[Page]:
        """Files that are made of something, `of` its words: those of before where these and the program are as then."""
        key = hashlib.sha256(f"{self.before.printer} {of}".encode()).hexdigest()
        told = self.before.known.get(name)
        if told is not None and not self.before.always and told.get("key") == key:
            with suppress(TypeError, ValueError, LookupError, AttributeError):
                pages = [self._page(path, digest) for path, digest in told["made"].items()]
                self.now[name] = told
                return pages
        pages = list(make())
        self.now[name] = {"key": key, "made": {page.path: hashlib.sha256(page.content).hexdigest() for page in pages}}
        return pages

    def _page(self, path: str, digest: str) -> Page:
        content = self.before.read(path)
        if content is None or hashlib.sha256(content).hexdigest() != digest:
            raise LookupError(path)
        return Page(path, content)

    def _each(
        self, jobs: Sequence[Job], found: Sequence[list[Printout] | None], made: Iterator[list[Printout]]
    ) -> Iterator[list[Printout]]:
        for job, one in zip(jobs, found, strict=True):
            outs = next(made) if one is None else one
            if one is not None:
                self.kept += len(outs) if not job.pixels else 0
            elif not any(each.faults for each in outs):
                self._remember(job, outs)
            yield outs

    def _known(self, job: Job) -> list[Printout] | None:
        """What was printed of a sheet before; None where it is to be printed."""
        first = job.papers[0].name
        told = self.before.known.get(first)
        wanted = self.before.wanted(first)
        if told is None or (wanted and (self.before.always or told.get("key") != job_key(job, self.before.printer))):
            return None
        try:
            outs = [self._printout(paper.name, told["files"][paper.name]) for paper in job.papers]
        except (KeyError, TypeError, ValueError, LookupError):
            return None
        self.now[first] = told
        return outs

    def _printout(self, path: str, told: Mapping[str, Any]) -> Printout:
        pdf = self.before.read(path)
        if pdf is None or hashlib.sha256(pdf).hexdigest() != told["pdf"]:
            raise LookupError(path)
        warnings = tuple(Doubt(str(sheet), int(page), str(words)) for sheet, page, words in told["warnings"])
        return Printout(pdf, int(told["pages"]), (), warnings, int(told["way"]))

    def _remember(self, job: Job, outs: Sequence[Printout]) -> None:
        self.now[job.papers[0].name] = {
            "key": job_key(job, self.before.printer),
            "files": {
                paper.name: {
                    "pdf": hashlib.sha256(out.pdf).hexdigest(),
                    "pages": out.pages,
                    "way": out.way,
                    "warnings": [[one.sheet, one.page, one.words] for one in out.warnings],
                }
                for paper, out in zip(job.papers, outs, strict=True)
            },
        }


def job_key(job: Job, printer: str) -> str:
    """All that a sheet's bytes hang on; `printer` is what they hang on besides the sheet."""
    told = json.dumps(asdict(job), default=sorted, sort_keys=True)  # of what a step may say the order is any
    return hashlib.sha256(f"{printer} {told}".encode("utf-8", "surrogatepass")).hexdigest()
