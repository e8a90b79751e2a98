"""What is told while pages are printed: what is begun, and where somebody looks on, how long it still takes."""

from __future__ import annotations

import time
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable

SOON, MINUTE = 50.0, 60
EARLY = 0.02  # of all: before it, what is left is a guess


class Progress:
    """Tells nothing: for who does not look on."""

    def begun(self, what: str) -> None:
        """A version of a design is begun."""

    def done(self, share: float) -> None:
        """That share of all is published."""


class Lines(Progress):
    """A line for each version that is begun."""

    def __init__(self, say: Callable[[str], None]) -> None:
        self.say = say

    def begun(self, what: str) -> None:
        """Say it."""
        self.say(f"printing {what}")


class Shown(Progress):
    """One line that changes: what was begun last, and the time that is left."""

    def __init__(self, show: Callable[[str], None], clock: Callable[[], float] = time.monotonic) -> None:
        self.show, self.clock, self.what = show, clock, ""
        self.since: float | None = None
        self.ends: float | None = None

    def begun(self, what: str) -> None:
        """Show it."""
        self.since = self.clock() if self.since is None else self.since
        self.what = what
        self._show()

    def done(self, share: float) -> None:
        """Reckon the time left from what was needed for that share."""
        if self.since is not None and share > EARLY:
            self.ends = self.since + (self.clock() - self.since) / share
        self._show()

    def _show(self) -> None:
        left = "" if self.ends is None else f", {left_told(self.ends - self.clock())}"
        self.show(f"Printing {self.what}{left}")


def left_told(seconds: float) -> str:
    """How long it still takes, in words, never less than it may be."""
    if seconds < SOON:
        return "less than a minute left"
    return f"about {-int(-seconds // MINUTE)} min left"
