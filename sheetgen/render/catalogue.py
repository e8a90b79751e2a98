"""The sheets of all designs together, from what the record says of each: no design is read again for them."""

from __future__ import annotations

import base64
import re
from typing import TYPE_CHECKING, NamedTuple

from markupsafe import Markup

from sheetgen.base.printed import Printed
from sheetgen.base.spelling import counted, in_turn, slug
from sheetgen.model.page import Page
from sheetgen.model.status import OF_CLASS, PUBLIC
from sheetgen.model.view import (
    CatalogueSheet,
    Fitted,
    Head,
    Html,
    IndexLine,
    Listed,
    Picture,
    ProgrammeSheet,
    ToFind,
    Written,
)
from sheetgen.render.handout import studio
from sheetgen.render.job import Job
from sheetgen.render.marks import Marks
from sheetgen.render.ordered import PAPERS, paper_of, sound
from sheetgen.render.qr import code

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator, Sequence

    from sheetgen.model.page import Entry
    from sheetgen.model.worked import Publisher
    from sheetgen.render.job import Doubt, Makes
    from sheetgen.render.theme import Theme

CATALOGUE, PROGRAMME = "catalogue", "programme"
VOLUME = 100
"""Designs of one PDF: fifty pages are printed within the limits of a sheet, whatever their pictures weigh."""
ON_COVER = 6
LETTERS, FEWER, VERSIONS = (110, 300), (70, 180), 160
"""What their places hold: of a title and a summary on half a page and on a quarter; of versions."""
HALF, QUARTER, COVER = (87, 88), (86, 50), (54, 54)
"""mm that a picture may have: on half a page, on a quarter, on the cover."""
HOUR = 60
TIMES = (1, 2, 3, 5)
"""Hours up to which the index by time counts: an evening class, a morning, a day's half."""
_KINDS = {"jpg": "jpeg", "png": "png", "svg": "svg+xml"}
_PLACE = re.compile(r"picture-of:(\d+)")


class LibrarySheets(NamedTuple):
    """The files of the library's own sheets, and what jars in their layout."""

    pages: list[Page]
    doubts: list[Doubt]


class _Asked(NamedTuple):
    """A sheet that is to be printed, and the template it is made by."""

    template: str
    job: Job


def shown(entries: Iterable[Entry], sheet: str) -> list[Entry]:
    """The designs that stand on such a sheet, by their titles: in the catalogue what everybody may have.

    In the programme of classes stand those for classes alone, too.
    """
    wanted = {PUBLIC, OF_CLASS} if sheet == PROGRAMME else {PUBLIC}
    return sorted((one for one in entries if one.status in wanted), key=lambda one: (one.title.casefold(), one.name))


def library_sheets(  # noqa: PLR0913, PLR0917 - what they are made of, and by what
    publisher: Publisher,
    sheets: Sequence[str],
    entries: Sequence[Entry],
    theme: Theme,
    pool: Makes,
    read: Callable[[str], bytes | None],
) -> LibrarySheets:
    """The PDFs of those `sheets`, for each paper; `read` gives the files of what is published.

    Misplaced at the theme's file where a sheet alters what it prints.
    """
    asked: list[_Asked] = []
    if CATALOGUE in sheets and entries:
        asked += _Catalogue(publisher, shown(entries, CATALOGUE), theme, read).volumes()
    if PROGRAMME in sheets and entries:
        asked.append(_programme(publisher, shown(entries, PROGRAMME), theme, read))
    found = LibrarySheets([], [])
    for one, outs in zip(asked, pool.printed([one.job for one in asked]), strict=True):
        for paper, out in zip(one.job.papers, outs, strict=True):
            sound(out.faults, theme, one.template)
            found.pages.append(Page(paper.name, out.pdf))
        found.doubts.extend(outs[0].warnings)  # both papers have one content box
    return found


def library_sheet(path: str) -> str:
    """What a sheet of all designs is called: catalogue-2-a4.pdf is Catalogue 2 A4."""
    name, _, paper = path.removesuffix(".pdf").rpartition("-")
    return f"{name.replace('-', ' ').capitalize()} {paper.upper() if paper == 'a4' else paper.capitalize()}"


class _Pictures:
    """The pictures of a sheet: a theme gets the place of each, and the picture is put there when the page is made."""

    def __init__(self, read: Callable[[str], bytes | None]) -> None:
        self.read = read
        self.found: list[str] = []

    def of(self, entry: Entry, room: tuple[float, float], *, true: bool = False) -> Fitted | None:
        """That of a design in a room, at true size where it is wanted so; none where its file is gone."""
        card = entry.picture or {}
        path = str(card.get("printed") or "")
        kind = _KINDS.get(path.rpartition(".")[2], "")
        data = self.read(path) if kind else None
        if data is None:
            return None
        self.found.append(f"data:image/{kind};base64,{base64.b64encode(data).decode()}")
        shows = str(card.get("alternative") or entry.title)
        sides = [max(float(card.get(side) or 0), 1e-6) for side in ("width", "height")]
        scale = min(most / side for most, side in zip(room, sides, strict=True))
        true = true and card.get("drawn") is True and scale >= 1
        picture = Picture(f"picture-of:{len(self.found) - 1}", Html(""), shows, "")
        return Fitted(picture, f"{sides[0] * (1 if true else scale):.1f}mm", true)

    def put_into(self, html: str) -> str:
        """A page with its pictures."""
        return _PLACE.sub(lambda place: self.found[int(place[1])], html)


class _Catalogue:
    """All designs in their order, and on which page of which volume each stands."""

    def __init__(
        self, publisher: Publisher, designs: Sequence[Entry], theme: Theme, read: Callable[[str], bytes | None]
    ) -> None:
        self.publisher, self.designs, self.theme, self.read = publisher, designs, theme, read
        self.parts = [designs[at : at + VOLUME] for at in range(0, len(designs), VOLUME)]

    def volumes(self) -> Iterator[_Asked]:
        """Each volume: the first with the cover and the index."""
        for number, part in enumerate(self.parts, 1):
            yield self._volume(number, part)

    def _volume(self, number: int, part: Sequence[Entry]) -> _Asked:
        pictures, marks = _Pictures(self.read), Marks()
        listed = tuple(_listed(one, self.publisher, marks, pictures.of(one, HALF, true=True), LETTERS) for one in part)
        cover = [one for one in part if one.picture][:ON_COVER] if number == 1 else []
        several = len(self.parts) > 1
        volume = f"Volume {number} of {len(self.parts)}" if several else ""
        sheet = CatalogueSheet(
            _head("Catalogue", self.publisher, self.designs, volume),
            counted(len(self.designs), "design"),
            volume,
            tuple(filter(None, (pictures.of(one, COVER) for one in cover))),
            self.publisher.address,
            listed,
            tuple(self._index()) if number == 1 else (),
        )
        name = CATALOGUE if number == 1 else f"{CATALOGUE}-{number}"
        return _asked(name, "catalogue.html.j2", sheet, pictures, marks, self)

    def _index(self) -> Iterator[ToFind]:
        """By technique, and by time at the bench."""
        where = {one.name: self._written(at, one) for at, one in enumerate(self.designs)}
        words: dict[str, list[Written]] = {}
        for one in self.designs:
            for tag in dict.fromkeys(filter(None, map(str.strip, one.tags))):
                words.setdefault(tag, []).append(where[one.name])
        if words:
            lines = (IndexLine(word, tuple(words[word])) for word in sorted(words, key=lambda w: in_turn(w.casefold())))
            yield ToFind("By technique", tuple(lines))
        times: dict[str, list[Written]] = {}
        for one in sorted(self.designs, key=lambda one: (not one.minutes, one.minutes)):
            times.setdefault(_long(one.minutes), []).append(where[one.name])
        yield ToFind("By time at the bench", tuple(IndexLine(word, tuple(each)) for word, each in times.items()))

    def _written(self, at: int, one: Entry) -> Written:
        volume, below = divmod(at, VOLUME)
        page = below // 2 + (2 if volume == 0 else 1)  # behind the cover of the first
        told = f"{volume + 1}.{page}" if len(self.parts) > 1 else str(page)
        return Written(_id(one) if volume == 0 else "", one.title, told)


def _programme(
    publisher: Publisher, designs: Sequence[Entry], theme: Theme, read: Callable[[str], bytes | None]
) -> _Asked:
    pictures, marks = _Pictures(read), Marks()
    listed = tuple(_listed(one, publisher, marks, pictures.of(one, QUARTER), FEWER) for one in designs)
    sheet = ProgrammeSheet(_head("Classes", publisher, designs, ""), publisher.address, listed)
    made = _Catalogue(publisher, designs, theme, read)
    return _asked(PROGRAMME, "programme.html.j2", sheet, pictures, marks, made)


def _asked(  # noqa: PLR0913, PLR0917 - what a sheet is printed by
    name: str, template: str, sheet: object, pictures: _Pictures, marks: Marks, of: _Catalogue
) -> _Asked:
    html = pictures.put_into(of.theme.page(template, sheet=sheet, density=""))
    papers = tuple(paper_of(f"{name}-{p.lower()}.pdf", PAPERS[p], "") for p in of.publisher.paper)
    return _Asked(template, Job((html,), papers, tuple(marks.must), tuple(marks.may)))


def _listed(one: Entry, publisher: Publisher, marks: Marks, seen: Fitted | None, letters: tuple[int, int]) -> Listed:
    address = f"{publisher.address}{one.name}/" if publisher.address and one.public else ""
    time = marks.in_text(Printed(0, one.time), f"the time of {one.title}") if one.time else ""
    evenings = counted(one.evenings, "evening") if one.evenings else ""
    made = code(address) if address else None
    return Listed(
        id=_id(one),
        title=_cut(one.title, letters[0]),
        summary=_cut(one.summary, letters[1]),
        time=Html(time),
        level=one.level,
        heat=one.heat.capitalize(),
        evenings=Html(marks.in_text(Printed(0, evenings), f"the evenings of {one.title}") if evenings else ""),
        versions=_cut("; ".join(one.versions), VERSIONS),
        revised=f"revision {one.revision}, {one.date}",
        seen=seen,
        address=address,
        code=Html(_code_of(made.svg, one.title) if made else ""),
    )


def _code_of(svg: str, title: str) -> Markup:
    """A code with the title that a drawing wants."""
    says = Markup("><title>Code that leads to the page of {}</title>").format(title)
    return Markup(svg.replace(">", str(says), 1))  # noqa: S704 - ours, and the words are escaped


def _head(sheet: str, publisher: Publisher, designs: Sequence[Entry], volume: str) -> Head:
    """The head of what belongs to no one design: the day is that of the latest."""
    date = max((one.date for one in designs), default="")
    foot = " · ".join(filter(None, (sheet, volume, publisher.name, date, publisher.licence.text)))
    return Head(
        sheet=sheet,
        title=publisher.name,
        version=volume,
        summary=Html(""),
        summary_plain=publisher.about,
        foot=foot,
        code="",
        date=date,
        language=publisher.language,
        makes="",
        level="",
        bench_time="",
        whole_time="",
        untimed="",
        studio=studio(publisher),
    )


def _id(one: Entry) -> str:
    return f"design-{slug(one.name)}"


def _long(minutes: float) -> str:
    """The part of the index by time that a design stands in."""
    if not minutes:
        return "Not told"
    upper = next((hours for hours in TIMES if minutes <= hours * HOUR), None)
    if upper is None:
        return f"More than {TIMES[-1]} hours"
    lower = ([0, *TIMES])[TIMES.index(upper)]
    return f"{lower} to {upper} hours" if lower else f"Up to {counted(upper, 'hour')}"


def _cut(words: str, letters: int) -> str:
    """Words that their place holds: what is over goes from the end, at the end of a word."""
    if len(words) <= letters:
        return words
    whole = words[:letters].rsplit(None, 1)[0].rstrip(" ,;:.")
    return f"{whole} …"
