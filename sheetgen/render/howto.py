"""A version in the words of schema.org: a HowTo with its supplies, tools, steps, pictures and times.

All of it stands on the page too, as it is printed. Of a range of time the most is said, for a duration of ISO 8601 has
one end.
"""

from __future__ import annotations

import html
import posixpath
import re
from typing import TYPE_CHECKING, Any, NamedTuple

from sheetgen.model.numbers import Numbers

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.interval import Interval
    from sheetgen.model.view import Handout, Need, Picture, Row
    from sheetgen.model.worked import Worked, WorkedVersion

HOUR, DAY = 60, 1440
SECONDS = 2  # minutes under which a time with a rest is told in seconds
_TAGS = re.compile(r"<(/?)(p|li|ul|ol|br|blockquote|div)\b[^>]*>|<[^>]*>")


class Stands(NamedTuple):
    """Where the page of a version stands: its path below the build folder, and the address of that, or nothing."""

    path: str
    address: str

    def at(self, link: str) -> str:
        """The address of something that the page links to; from the page itself where the site has none."""
        if not self.address:
            return link
        here = posixpath.dirname(self.path)
        return self.address + (posixpath.normpath(f"{here}/{link}") if link[:1] not in {"", "#"} else self.path + link)


def howto(worked: Worked, version: WorkedVersion, sheet: Handout, stands: Stands) -> dict[str, Any]:
    """The data of a version's page; `sheet` is its handout as the screen has it."""
    head, said, numbers = sheet.head, worked.studio.licence, Numbers(worked.rounder)
    rows = _Rows(worked, version, numbers, stands)
    tools = [name for group in sheet.tools for name in group.names]
    return _told(
        {
            "@context": "https://schema.org",
            "@type": "HowTo",
            "name": ", ".join(filter(None, (head.title, head.version))),
            "description": head.summary_plain,
            "url": stands.at("") if stands.address else "",
            "inLanguage": head.language,
            "author": {"@type": "Organization", "name": head.studio.name},
            "version": worked.revision,
            "dateModified": worked.date,
            "educationalLevel": worked.level,
            "keywords": ", ".join(worked.tags),
            "copyrightNotice": said.text,
            "license": said.link,
            "yield": head.makes,
            "performTime": duration(numbers.most(version.bench_times)),
            "totalTime": duration(numbers.most(version.whole_times)),
            "image": rows.image(sheet.picture, _credit(worked)),
            "supply": [one for need in sheet.needs for one in _supplies(need)],
            "tool": [{"@type": "HowToTool", "name": _bare(name)} for name in tools],
            "step": list(rows.sections(sheet)),
        }
    )


def duration(minutes: float) -> str:
    """A time by ISO 8601: P1DT2H30M; nothing for none."""
    if not minutes:
        return ""
    if minutes < SECONDS and minutes % 1:
        return f"PT{minutes * 60:.0f}S"
    days, rest = divmod(round(minutes), DAY)
    hours, rest = divmod(rest, HOUR)
    time = (f"{hours}H" if hours else "") + (f"{rest}M" if rest else "")
    return "P" + (f"{days}D" if days else "") + (f"T{time}" if time else "")


class _Rows:
    """The steps of one version."""

    def __init__(self, worked: Worked, version: WorkedVersion, numbers: Numbers, stands: Stands) -> None:
        self.worked, self.version, self.numbers, self.stands = worked, version, numbers, stands

    def sections(self, sheet: Handout) -> Iterator[dict[str, Any]]:
        """What is to be read first, then each session with its steps; where there is one alone, the steps."""
        safety = sheet.safety
        if safety.deference:
            before = [*(f"{_bare(one.word)}. {_bare(one.text)}" for one in safety.told), safety.deference]
            tips = [_tip(_bare(words)) for words in before]
            yield {"@type": "HowToSection", "name": "Read before you begin", "itemListElement": tips}
        steps = iter(zip([row for row in sheet.rows if row.kind != "session"], self.version.steps, strict=True))
        each = [self._step(row, step.minutes, step.whole_wait, n) for n, (row, step) in enumerate(steps, 1)]
        sessions = self.version.plan.sessions
        if len(sessions) < 2:  # noqa: PLR2004 - one is no part of anything
            yield from each
            return
        heads = [row for row in sheet.rows if row.kind == "session"]
        for session, row in zip(sessions, heads, strict=True):
            own = each[session.first : session.last + 1]
            yield {"@type": "HowToSection", "name": row.title, "position": row.number, "itemListElement": own}

    def _step(self, row: Row, minutes: Interval | None, wait: Interval | None, number: int) -> dict[str, Any]:
        done = " ".join(filter(None, (_bare(row.text), *row.notes, row.firing, *_figures(row)))) or row.title
        directions = {
            "@type": "HowToDirection",
            "text": done,
            "performTime": duration(self.numbers.most([minutes])) if minutes else "",
            "totalTime": duration(self.numbers.most([wait])) if wait and not minutes else "",
        }
        tips = [f"{_bare(one.word)}. {_bare(one.text)}" for one in row.told] + [_bare(one) for one in row.reminders]
        after = [f"You should see: {_bare(row.expect)}"] if row.expect else []
        after += [f"If not: {_bare(row.mishap)}."] if row.mishap else []
        return _told(
            {
                "@type": "HowToStep",
                "name": row.title,
                "position": number,
                "url": self.stands.at(f"#{row.id}"),
                "image": self.image(row.picture, self._made_by(number)),
                "itemListElement": [*map(_tip, tips), _told(directions), *map(_tip, after)],
            }
        )

    def _made_by(self, number: int) -> str:
        picture = self.version.steps[number - 1].picture
        return picture.credit if picture else ""

    def image(self, picture: Picture | None, credit: str) -> dict[str, Any] | str:
        """A picture that is a file; what is drawn within the page is none."""
        if picture is None or not picture.source:
            return ""
        said = self.worked.studio.licence
        return _told(
            {
                "@type": "ImageObject",
                "contentUrl": self.stands.at(picture.source),
                "width": f"{picture.width} px" if picture.widths else "",
                "height": f"{picture.height} px" if picture.widths else "",
                "description": picture.alternative,
                "creditText": credit,
                "copyrightNotice": said.pictures,
                "license": said.link,
            }
        )


def _credit(worked: Worked) -> str:
    return worked.pictures[0].credit if worked.pictures else ""


def _tip(words: str) -> dict[str, Any]:
    return {"@type": "HowToTip", "text": words}


def _supplies(need: Need) -> Iterator[dict[str, Any]]:
    sizes = [(f"{need.name} {one.size}", one.amount) for one in need.sizes] or [(need.name, need.amount)]
    for name, amount in sizes:
        whole = f"{name}, {need.detail}" if need.detail else name
        yield _told({"@type": "HowToSupply", "name": _bare(whole), "requiredQuantity": _bare(amount)})


def _figures(row: Row) -> Iterator[str]:
    """The numbers beside a step, as words after what is done."""
    for one in row.figures:
        yield f"{_bare(one.label)}: {_bare(f'{one.value} {one.unit}')}."
    for line in row.matrix.rows if row.matrix else ():
        each = zip(row.matrix.columns if row.matrix else (), line.cells, strict=True)
        yield f"{_bare(line.label)}: {'; '.join(f'{_bare(column)} {_bare(cell)}' for column, cell in each)}."


def _bare(words: str) -> str:
    """HTML as plain words."""
    return " ".join(html.unescape(_TAGS.sub(lambda tag: " " if tag[2] else "", words)).split())


def _told(data: dict[str, Any]) -> dict[str, Any]:
    """Only what has something in it."""
    return {name: value for name, value in data.items() if value not in ("", [], None)}
