"""What a run of tests begins once and keeps: the printers, and the templates of themes as they were compiled."""

from __future__ import annotations

import os
from contextlib import contextmanager
from typing import TYPE_CHECKING, Any
from unittest import mock

import jinja2

from sheetgen.render.crew import Crew
from sheetgen.render.pdf_pool import PdfPool
from sheetgen.render.sandbox import Sandbox

if TYPE_CHECKING:
    from collections.abc import Iterator
    from types import CodeType

    from jinja2.bccache import Bucket


class Compiled(jinja2.BytecodeCache):
    """Templates by their file and their text: one that a test has changed is compiled anew."""

    def __init__(self) -> None:
        self.known: dict[tuple[str, str], CodeType | None] = {}

    def load_bytecode(self, bucket: Bucket) -> None:
        bucket.code = self.known.get((bucket.key, bucket.checksum))

    def dump_bytecode(self, bucket: Bucket) -> None:
        self.known[bucket.key, bucket.checksum] = bucket.code


@contextmanager
def compiled() -> Iterator[None]:
    """Compile each template once for all tests."""
    begin, known = Sandbox.__init__, Compiled()

    def begun(self: Sandbox, *given: Any) -> None:
        begin(self, *given)
        self.bytecode_cache = known

    with mock.patch.object(Sandbox, "__init__", begun):
        yield


@contextmanager
def printers() -> Iterator[None]:
    """Have every pool that does not say how many printers it wants print by the same ones; they end with the tests.

    To begin one takes longer than most pages of the tests. How they begin, end and die is asked in
    tests/render/test_crew.py, of pools of their own.
    """
    begin, end = PdfPool.__init__, PdfPool.__exit__
    lanes = int(os.environ.get("PYTEST_XDIST_WORKER_COUNT", "1"))
    kept: list[Crew] = []

    def begun(self: PdfPool, cores: int | None = None) -> None:
        if cores is not None:
            begin(self, cores)
            return
        if not kept:
            kept.append(Crew(max(1, (os.cpu_count() or 1) // lanes)))
        self.crew = kept[0]

    def ended(self: PdfPool, *how: Any) -> None:
        if self.crew not in kept:
            end(self, *how)

    with mock.patch.object(PdfPool, "__init__", begun), mock.patch.object(PdfPool, "__exit__", ended):
        yield
    for crew in kept:
        crew.end()
