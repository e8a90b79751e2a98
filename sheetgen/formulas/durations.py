"""Minutes as an ISO 8601 duration, for machines that read pages."""

from __future__ import annotations

from sheetgen.facts.units import MINUTES_PER_DAY, MINUTES_PER_HOUR, SECONDS_PER_MINUTE
from sheetgen.formulas import guard


def iso_duration(minutes: float) -> str:
    """A duration such as PT1H30M, to the nearest second; days, never months or years. CannotBe if negative.

    ISO 8601 as in isodate 0.7.2.
    """
    guard.not_below_zero(minutes, "a time", "minutes", "min")
    seconds = round(minutes * SECONDS_PER_MINUTE)
    days, seconds = divmod(seconds, int(MINUTES_PER_DAY * SECONDS_PER_MINUTE))
    hours, seconds = divmod(seconds, int(MINUTES_PER_HOUR * SECONDS_PER_MINUTE))
    whole, seconds = divmod(seconds, int(SECONDS_PER_MINUTE))
    date = f"{days}D" if days else ""
    parts = ((hours, "H"), (whole, "M"), (seconds, "S"))
    time = "".join(f"{n}{letter}" for n, letter in parts if n)
    if not date and not time:
        return "PT0S"
    return f"P{date}" + (f"T{time}" if time else "")
