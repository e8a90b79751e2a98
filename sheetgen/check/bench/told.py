"""How a rule of the bench is told: with its name, at its place, and with how to waive it where it may be waived."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

from sheetgen.base.trouble import Severity, Trouble, refused
from sheetgen.facts.rules import RULES

if TYPE_CHECKING:
    from sheetgen.base.place import Place


def told(rule: str, message: str, place: Place | None, help: str) -> Trouble:  # noqa: A002 - the word a reader sees
    """A trouble of a rule."""
    known = RULES[rule]
    severity = cast("Severity", known.severity)
    if not known.waivable:
        return Trouble(message, place, help, severity, rule)
    return refused(rule, message, place, help, severity)


def degrees(celsius: float) -> str:
    """A temperature in a trouble."""
    return f"{celsius:g} °C"


def hours(minutes: float) -> str:
    """A time in a trouble."""
    return f"{minutes / 60:.3g} h" if minutes >= 60 else f"{minutes:.3g} min"  # noqa: PLR2004 - minutes of an hour


def listed(words: list[str]) -> str:
    """Several things, told as one."""
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"
