"""The clock: an evening as it is written, and a minute of a day as it is told."""

from __future__ import annotations

import re

MINUTES_PER_HOUR = 60
MINUTES_PER_DAY = 24 * MINUTES_PER_HOUR
SPAN = re.compile(r"\s*(\d{1,2}):(\d{2})\s*[-–]\s*(\d{1,2}):(\d{2})\s*")


def evening(text: str) -> tuple[int, int] | None:
    """From when to when, in minutes of the day: "18:30-21:10"; None where it is no such span within one day."""
    found = SPAN.fullmatch(text)
    if found is None:
        return None
    hours, minutes = [int(one) for one in found.groups()[::2]], [int(one) for one in found.groups()[1::2]]
    begin, end = (hour * MINUTES_PER_HOUR + minute for hour, minute in zip(hours, minutes, strict=True))
    good = max(minutes) < MINUTES_PER_HOUR and begin < end <= MINUTES_PER_DAY
    return (begin, end) if good else None


def clock(minute: float) -> str:
    """A minute of the day as a clock tells it, of the day after too: 18:30."""
    whole = round(minute) % MINUTES_PER_DAY
    return f"{whole // MINUTES_PER_HOUR:02}:{whole % MINUTES_PER_HOUR:02}"
