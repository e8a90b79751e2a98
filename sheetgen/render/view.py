"""What a template sees of one version: plain values, rounded and in words."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from markupsafe import Markup

from sheetgen.base.material import Clay, Fibre, Sheet, Tool, Wire
from sheetgen.base.rounding import up_for_buying
from sheetgen.base.spelling import slug
from sheetgen.base.spread import GRAIN
from sheetgen.facts.cautions import LADDER
from sheetgen.facts.gauges import CARD
from sheetgen.render import pictures, words
from sheetgen.render.numbers import NBSP, Numbers
from sheetgen.render.sheets import at_once, reprint, slab_sheets, templates
from sheetgen.render.workings import workings

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.base.figure import Figure, Made
    from sheetgen.model.drawing import Drawings
    from sheetgen.model.worked import ToolLine, Worked, WorkedStep, WorkedVersion
    from sheetgen.parts.kind import Part

MOST_COLUMNS = 5


def version_name(worked: Worked, name: str) -> str:
    """What a version is called on the page."""
    return worked.called(name)


class View:
    """Everything of one version, ready for the theme."""

    def __init__(self, worked: Worked, version: WorkedVersion, drawings: Drawings) -> None:
        self.worked, self.version, self.drawings = worked, version, drawings
        self.project, self.studio = worked.filed.project, worked.studio
        self.numbers = Numbers(worked.rounder)

    def values(self) -> dict[str, Any]:
        """All values by the name the theme uses."""
        version, numbers = self.version, self.numbers
        several = len(self.worked.versions) > 1
        return {
            "title": str(self.project.title),
            "language": str(self.studio.language),
            "summary": words.prose(version.summary, numbers, inline=True),
            "summary_plain": words.plain(version.summary, numbers),
            "version": version_name(self.worked, version.name) if several else "",
            "revision": str(self.project.revision),
            "date": str(self.project.date),
            "studio": self.studio,
            "makes": words.plain(version.makes, numbers),
            "level": str(self.project.level),
            "tags": [str(t) for t in self.project.tags],
            "bench_time": numbers.added(version.bench_times),
            "whole_time": numbers.added(version.whole_times),
            "pictures": [
                {"src": pictures.data_uri(self.worked.filed.folder / p), "alt": self._alternative(p)}
                for p in self._pictures()
            ],
            "pictured": self._pictured(),
            "finished": self._finished_view(),
            "materials": list(self._materials()),
            "at_once": list(self._at_once()),
            "spared": any("+" in line["amount"] for line in self._materials()),
            "tools": [*(self._tool(line) for line in version.tools), *self._worn()],
            "sizes": list(self._sizes()),
            "unit": self.worked.rounder.unit("mm"),
            "shrinkage": list(self._shrinkage()),
            "cautions": self._front_cautions(),
            "steps": [self._step(i, step) for i, step in enumerate(version.steps)],
            "versions": list(self._versions()) if several else [],
            "version_tables": list(self._version_tables()) if several else [],
            "templates": templates(self.drawings),
            "reprint": reprint(self.worked),
            "clayed": any(isinstance(line.item, Clay) for line in self.version.materials),
            "slabs": list(slab_sheets(self.worked, self.drawings.slabs)),
            **workings(version, numbers),
        }

    def _finished_view(self) -> Markup | None:
        """The view drawn from the parts, for a version without a picture of its own."""
        drawn = self.drawings.finished
        return Markup(drawn.svg) if drawn and not self._pictures() else None  # noqa: S704 - drawn by our own pen

    def _pictures(self) -> Sequence[str]:
        """The project's pictures, which show its main version; another is better shown by its view, if it has one."""
        other = self.version is not self.worked.main
        return () if other and self.drawings.finished else self.project.pictures

    def _pictured(self) -> str:
        """Which version a picture shows, on the sheet of another."""
        if self.version is self.worked.main or not self._pictures():
            return ""
        return f"The picture shows the version {self.worked.called(self.worked.main.name)}."

    def _alternative(self, picture: str) -> str:
        return pictures.alternative(self.worked.filed.folder / picture, f"{self.project.title}, finished")

    def _materials(self) -> Iterator[dict[str, str]]:
        for line in self.version.materials:
            note = f"for {line.use}" if line.use else ""
            yield {"name": line.item.name, "amount": self.numbers.amount(line), "note": note}

    def _at_once(self) -> Iterator[str]:
        """Where rolling a slab as drawn wants more clay in the hand than the pieces use up."""
        for line in self.version.materials:
            if isinstance(line.item, Clay) and line.net is not None:
                mass = at_once(self.drawings.slabs, line.item.name)
                if mass > up_for_buying(max(line.net.high, line.least) * (1 + line.allowance)):
                    grams = self.worked.rounder.decimal(mass, 1)
                    yield (
                        f"{line.item.name}: to roll the slabs of this sheet as they are drawn, one after the other, "
                        f"takes {grams}{NBSP}g in the hand; what is cut away goes back into the wrap. With less, roll "
                        "closer to the pieces."
                    )

    def _tool(self, line: ToolLine) -> str:
        unit = self.worked.rounder.unit("mm")
        each = [f"{self.numbers.length(s)}{NBSP}{unit}{self._cards(line, s)}" for s in line.sizes]
        sizes = " and ".join([", ".join(each[:-1]), each[-1]] if len(each) > 1 else each)
        return f"{line.item.name}: {sizes}" if sizes else line.item.name

    @staticmethod
    def _cards(line: ToolLine, size: float) -> str:
        """The cards that a slat is as thick as: the steps may speak of cards."""
        cards = size / float(CARD)
        if not isinstance(line.item, Tool) or line.item.kind != "slat" or abs(cards - round(cards)) > GRAIN * cards:
            return ""
        return f" ({round(cards)}{NBSP}cards)"

    def _worn(self) -> Iterator[str]:
        """What the cautions tell to wear or to have, unless the lists have it already."""
        items = [*(line.item for line in self.version.tools), *(line.item for line in self.version.materials)]
        had = [item.name.lower() for item in items]
        told = dict.fromkeys(w for step in self.version.steps for caution in step.cautions for w in caution.wear)
        for wear in told:
            noun = wear.split(",")[0].lower()
            if not any(noun in name for name in had):
                yield wear

    def _made(self, version: WorkedVersion) -> Iterator[tuple[str, Made, Figure]]:
        for part in version.parts.values():
            for made in part.made():
                yield part.name, made, version.figures[f"{part.name}.{made.figure}"]

    def _sizes(self) -> Iterator[dict[str, str]]:
        for part, made, figure in self._made(self.version):
            printed = self.worked.rounder.size(figure)
            fires = self.numbers.range(made.fires(float(printed))) if made.fires else "–"
            count = self.version.parts[part].count.usual
            name = part.replace("_", " ").capitalize() + (f" ×{count:g}" if count > 1 else "")
            of = ", ".join(self._stuff(self.version.parts[part]))
            finished = "–" if made.finished is None else self._finished(made.finished)
            yield {
                "part": name,
                "of": of,
                "label": made.label,
                "finished": finished,
                "make": f"{printed.words}{NBSP}{made.counted}" if made.counted else printed.words,
                "unit": "" if made.counted else self.worked.rounder.unit("mm"),
                "fires": fires,
                "tool": made.tool,
            }

    def _stuff(self, part: Part) -> Iterator[str]:
        """The metals and fibres that a part is cut from; its clay only where the project has several."""
        clays = sum(isinstance(line.item, Clay) and line.net is not None for line in self.version.materials)
        for item in dict.fromkeys(take.item for take in part.takes()):
            if isinstance(item, Wire | Sheet | Fibre) or (isinstance(item, Clay) and clays > 1):
                yield item.name

    def _finished(self, finished: Any) -> str:  # noqa: ANN401 - a Spread
        if finished.exact:
            # As it is given; a size that is worked, such as that of a ring, to what a calliper reads.
            given = abs(finished.usual * 20 - round(finished.usual * 20)) < GRAIN or self.worked.rounder.inches
            return self.numbers.length(finished.usual if given else round(finished.usual, 1))
        return self.numbers.range(finished)

    def _shrinkage(self) -> Iterator[str]:
        for line in self.version.materials:
            if isinstance(line.item, Clay):
                s = line.item.shrinkage * 100
                source = dict(line.item.sources).get("shrinkage") or dict(line.item.sources).get("all", "")
                origin = "the studio’s own test strips" if line.item.tested else source
                thick = line.item.thickness_shrinkage * 100
                also = "" if thick == s else f", {self.worked.rounder.range(thick, 1, '%')} % in thickness,"
                yield f"{line.item.name} shrinks {self.worked.rounder.range(s, 1, '%')} %{also} in the kiln ({origin})."

    def _front_cautions(self) -> dict[str, Any]:
        """Every hazard of the project once, under the gravest signal word among them."""
        seen: dict[str, str] = {}
        words_used = set()
        for step in self.version.steps:
            for caution in step.cautions:
                if caution.word != "NOTICE":
                    first = caution.hazard.rstrip(".")
                    seen.setdefault(caution.id, first[:1].lower() + first[1:])
                    words_used.add(caution.word)
        return {"word": min(words_used, key=LADDER.index), "hazards": list(seen.values())} if seen else {}

    def _step(self, number: int, step: WorkedStep) -> dict[str, Any]:
        numbers = self.numbers
        phases = [{"bed": p.bed, "lines": numbers.firing(p)} for p in step.firing]
        return {
            "title": step.title,
            "text": words.prose(step.text, numbers),
            "expect": words.prose(step.expect, numbers, inline=True),
            "cautions": step.cautions,
            "hazards": [hazard[:1].lower() + hazard[1:] for c in step.cautions if (hazard := c.hazard.rstrip("."))],
            "figures": list(self._beside(step)),
            "minutes": numbers.time(step.minutes) if step.minutes else "",
            "wait": numbers.time(step.wait) if step.wait else "",
            "wait_for": step.wait_for,
            "is_wait": step.wait is not None and not step.firing and step.minutes is None,
            "phases": phases,
            "torch": step.torch,
            "drawings": [
                Markup(d.svg)  # noqa: S704 - drawn by our own pen, its words escaped there
                for d in (*map(self.drawings.diagrams.get, step.diagrams), self.drawings.curves.get(number))
                if d is not None
            ],
            "fired": step.fired,
        }

    def _beside(self, step: WorkedStep) -> Iterator[dict[str, str]]:
        """The figures beside a step; those of several parts are told apart by their parts."""
        several = len({figure.part for figure in step.show if figure.part}) > 1
        for figure in step.show:
            label = figure.label
            if several and figure.part:
                label = f"{figure.part.replace('_', ' ').capitalize()}: {label[:1].lower()}{label[1:]}"
            yield {"label": label, "value": self.numbers.value(figure), "unit": self.numbers.unit(figure)}

    def _versions(self) -> Iterator[dict[str, Any]]:
        for name in self.worked.versions:
            yield {
                "name": version_name(self.worked, name),
                "path": "" if name == self.worked.main.name else slug(name),
                "here": name == self.version.name,
            }

    def _version_tables(self) -> Iterator[dict[str, Any]]:
        """Sizes of all versions side by side: those that differ, a few versions to a table."""
        own = self.version.name
        names = [own, *(name for name in self.worked.versions if name != own)]
        cells: dict[tuple[str, str], dict[str, str]] = {}
        for name in names:
            for part, made, figure in self._made(self.worked.versions[name]):
                label = (part.replace("_", " ").capitalize(), made.label)
                size = self.worked.rounder.size(figure).words
                cells.setdefault(label, {})[name] = f"{size} {made.counted}".strip()
            for one in self.worked.versions[name].parts.values():
                label = (one.name.replace("_", " ").capitalize(), "how many")
                cells.setdefault(label, {})[name] = f"{one.count.usual:g}"
            for figure in self.worked.versions[name].figures.values():
                if not figure.part:
                    value = str(self.numbers.words(figure).striptags())
                    cells.setdefault(("", figure.label), {})[name] = value
            for line in self.worked.versions[name].materials:
                cells.setdefault(("Used up", line.item.name), {})[name] = self.numbers.amount(line) or "as needed"
        differ = {label: row for label, row in cells.items() if len(set(row.values())) > 1 or len(row) < len(names)}
        tables = -(-len(names) // MOST_COLUMNS)
        wide = -(-len(names) // tables)
        for i in range(0, len(names), wide):
            some = names[i : i + wide]
            yield {
                "names": [version_name(self.worked, n) for n in some],
                "own": own in some,
                "rows": [
                    {"part": part, "label": label, "cells": [row.get(n, "–") for n in some]}
                    for (part, label), row in differ.items()
                    if any(n in row for n in some)
                ],
            }
