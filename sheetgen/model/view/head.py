"""What every sheet begins with: who publishes it, its head and its foot."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, NewType

Html = NewType("Html", str)
NOTHING = Html("")


@dataclass(frozen=True, slots=True)
class Studio:
    """Who publishes."""

    name: Annotated[str, "its name"]
    about: Annotated[str, "one line about it, or nothing"]
    contact: Annotated[str, "how it is reached, or nothing"]
    note: Annotated[str, "what stands on every sheet, or nothing"]
    emergency: Annotated[str, "the emergency number, or nothing: then leave a line to write it on"]
    licence: Annotated[str, "what may be done with its words, or nothing"] = ""
    of_pictures: Annotated[str, "what may be done with its pictures, or nothing"] = ""
    licence_link: Annotated[str, "the address of the page that tells all of it, or nothing"] = ""


@dataclass(frozen=True, slots=True)
class Head:
    """What every sheet begins with, and its foot."""

    sheet: Annotated[str, "what the sheet is called: Handout, Bench card …"]
    title: Annotated[str, "the design"]
    version: Annotated[str, "the version; nothing where the design has only one"]
    summary: Annotated[Html, "one or two sentences"]
    summary_plain: Annotated[str, "the same without marks"]
    foot: Annotated[
        str, "the line at the foot of each page, the fingerprint in it, and where there is room the licence"
    ]
    code: Annotated[str, "the fingerprint of the printed numbers, six letters and digits"]
    date: Annotated[str, "of the revision, as year-month-day"]
    language: Annotated[str, "by BCP 47, such as en"]
    makes: Annotated[str, "how many pieces"]
    level: Annotated[str, "for whom"]
    bench_time: Annotated[str, "time at the bench, or nothing"]
    whole_time: Annotated[str, "from the first cut to the finished piece, or nothing"]
    untimed: Annotated[str, "what to add to the times where some step says none"]
    studio: Studio
