"""Hears what WeasyPrint only logs: a refusal inside a drawing must not pass unseen."""

from __future__ import annotations

import logging
from contextlib import contextmanager
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator


class _Warnings(logging.Handler):
    """Collects what is said."""

    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.said: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.said.append(record.getMessage())


@contextmanager
def heard() -> Iterator[list[str]]:
    """What WeasyPrint murmurs meanwhile, told to nobody else."""
    log, warnings = logging.getLogger("weasyprint"), _Warnings()
    before, log.handlers = log.handlers, [warnings]
    try:
        yield warnings.said
    finally:
        log.handlers = before
