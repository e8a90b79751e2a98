"""Sheets of kits that an earlier run printed, kept in the private folder: the same sheet is not printed twice."""

from __future__ import annotations

import base64
import binascii
import json
import os
from dataclasses import asdict
from typing import TYPE_CHECKING, Any

from sheetgen.publish.inputs import printer_key
from sheetgen.publish.private import inside, write_private
from sheetgen.publish.record import digest_of
from sheetgen.render.job import Doubt, Printout
from sheetgen.render.known import job_key

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence
    from pathlib import Path

    from sheetgen.render.job import Job, Prints

KEPT = "kept"
"""Their folder within the private one. Nobody's name stands in it: these sheets are alike for all who get the kit."""
MOST_KEPT = 3000  # own judgement: a thousand kinds of kit, some 300 MB; those go that were wanted longest ago


class KeptPool:
    """Prints sheets through a pool, but those that are kept; `found` counts them, and `keep` keeps what is new.

    OSError where their folder is a link out of the private one: what lies there is not ours to read or to take out.
    """

    def __init__(self, pool: Prints, private: Path) -> None:
        self.pool = pool
        self.private = private
        self.folder = inside(private, KEPT)
        self.printer = printer_key()
        self.found = 0
        self.new: dict[str, bytes] = {}

    def printed(self, jobs: Sequence[Job]) -> Iterator[list[Printout]]:
        """As `PdfPool.printed`: all are begun at once."""
        keys = [job_key(job, self.printer) for job in jobs]
        found = [self._kept(key) for key in keys]
        made = self.pool.printed([job for job, one in zip(jobs, found, strict=True) if one is None])
        return self._each(keys, found, iter(made))

    def _each(
        self, keys: Sequence[str], found: Sequence[list[Printout] | None], made: Iterator[list[Printout]]
    ) -> Iterator[list[Printout]]:
        for key, one in zip(keys, found, strict=True):
            outs = next(made) if one is None else one
            if one is not None:
                self.found += 1
            elif not any(out.faults for out in outs):
                self.new[key] = _written([_told(out) for out in outs])
            yield outs

    def _kept(self, key: str) -> list[Printout] | None:
        """What was printed of it before; None where that is not there whole."""
        path = self.folder / key
        try:
            if path.is_symlink() or not path.is_file():
                return None
            outs = [_printout(one) for one in _read(path.read_bytes())]
            os.utime(path)
        except (OSError, ValueError, KeyError, TypeError, RecursionError):
            return None
        return outs

    def keep(self) -> None:
        """Keep what was printed, and no more than `MOST_KEPT`. OSError where that cannot be."""
        if self.new:
            write_private(self.private, KEPT, self.new)
        there = [path for path in self.folder.glob("*") if path.is_file()]
        for path in sorted(there, key=lambda path: path.lstat().st_mtime)[:-MOST_KEPT]:
            path.unlink(missing_ok=True)


def _written(told: Any) -> bytes:  # noqa: ANN401 - plain values
    """Plain values behind their digest: what a hand or a full disk has spoilt is not taken."""
    text = json.dumps(told).encode()
    return f"{digest_of(text)}\n".encode() + text


def _read(content: bytes) -> Any:  # noqa: ANN401 - plain values
    """What `_written` wrote. ValueError for anything else."""
    digest, _, text = content.partition(b"\n")
    if digest.decode("ascii") != digest_of(text):
        raise ValueError(digest)
    return json.loads(text)


def _told(out: Printout) -> dict[str, Any]:
    pdf = base64.b64encode(out.pdf).decode()
    return {"pdf": pdf, "pages": out.pages, "way": out.way, "warnings": [asdict(one) for one in out.warnings]}


def _printout(told: dict[str, Any]) -> Printout:
    try:
        pdf = base64.b64decode(told["pdf"], validate=True)
    except binascii.Error as fault:
        raise ValueError(fault) from None
    return Printout(pdf, told["pages"], (), tuple(Doubt(**one) for one in told["warnings"]), told["way"])
