"""What a template sees of one version: plain values, rounded and in words."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

from markupsafe import Markup

from sheetgen.base.interval import GRAIN
from sheetgen.base.material import Clay, Fibre, Sheet, Tool, Wire
from sheetgen.base.printed import NBSP
from sheetgen.base.rounding import up_for_buying
from sheetgen.base.spelling import slug
from sheetgen.facts.gauges import CARD
from sheetgen.model.numbers import Numbers
from sheetgen.render import hazards, pictures, words
from sheetgen.render.firing import fired
from sheetgen.render.sheets import at_once, slab_sheets, templates
from sheetgen.render.workings import workings

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.base.figure import BenchSize
    from sheetgen.base.interval import Interval
    from sheetgen.model.drawing import Drawings
    from sheetgen.model.worked import ToolLine, Worked, WorkedStep, WorkedVersion
    from sheetgen.parts.piece import Piece

MOST_COLUMNS = 5
SO_FAR = ", so far as told"


class View:
    """Everything of one version, ready for the theme."""

    def __init__(self, worked: Worked, version: WorkedVersion, drawings: Drawings) -> None:
        self.worked, self.version, self.drawings = worked, version, drawings
        self.rounder, self.numbers = worked.rounder, Numbers(worked.rounder)

    def values(self) -> dict[str, Any]:
        """All values by the name the theme uses."""
        worked, version, numbers = self.worked, self.version, self.numbers
        several = len(worked.versions) > 1
        materials = list(self._materials())
        return {
            "title": worked.title,
            "language": worked.studio.language,
            "summary": words.prose(version.summary, inline=True),
            "summary_plain": words.plain(version.summary),
            "version": version.title if several else "",
            "revision": worked.revision,
            "date": worked.date,
            "studio": worked.studio,
            "makes": words.plain(version.makes),
            "level": worked.level,
            "tags": list(worked.tags),
            "bench_time": numbers.added(version.bench_times),
            "whole_time": numbers.added(version.whole_times),
            "untimed": SO_FAR if version.untimed else "",
            "pictures": [
                {"src": pictures.data_uri(Path(worked.folder) / p), "alt": self._alternative(p)}
                for p in self._pictures()
            ],
            "pictured": self._pictured(),
            "finished": self._finished_view(),
            "materials": materials,
            "at_once": list(self._at_once()),
            "listed": list(self._listed()),
            "spared": any("+" in line["amount"] for line in materials),
            "tools": [*(self._tool(line) for line in version.tools), *self._worn()],
            "sizes": list(self._sizes()),
            "unit": self.rounder.unit("mm"),
            "shrinkage": list(self._shrinkage()),
            "safety": hazards.of_sheet(version, worked.studio.emergency),
            "steps": [self._step(i, step) for i, step in enumerate(version.steps)],
            "versions": list(self._versions()) if several else [],
            "version_tables": list(self._version_tables()) if several else [],
            "templates": templates(self.drawings),
            "clayed": any(isinstance(line.item, Clay) for line in version.materials),
            "slabs": list(slab_sheets(worked, self.drawings.slabs)),
            **workings(version, numbers),
        }

    def _finished_view(self) -> Markup | None:
        """The view drawn from the parts, for a version without a picture of its own."""
        drawn = self.drawings.finished
        return Markup(drawn.svg) if drawn and not self._pictures() else None  # noqa: S704 - drawn by our own pen

    def _pictures(self) -> Sequence[str]:
        """The project's pictures, which show its main version; another is better shown by its view, if it has one."""
        other = self.version is not self.worked.main
        return () if other and self.drawings.finished else self.worked.pictures

    def _pictured(self) -> str:
        """Which version a picture shows, on the sheet of another."""
        if self.version is self.worked.main or not self._pictures():
            return ""
        return f"The picture shows the version {self.worked.main.title}."

    def _alternative(self, picture: str) -> str:
        return pictures.alternative(Path(self.worked.folder) / picture, f"{self.worked.title}, finished")

    def _materials(self) -> Iterator[dict[str, str]]:
        for line in self.version.materials:
            note = f"for {line.use}" if line.use else ""
            yield {"name": line.item.name, "amount": self.numbers.amount(line), "note": note}

    def _listed(self) -> Iterator[str]:
        """Why more clay is listed than the parts' own figures add up to."""
        for line in self.version.materials:
            parts = [part for part in self.version.parts.values() if line.item == part.clay]
            own = sum(part.count * self._clay_told(part) for part in parts)
            if line.net is None or not own or up_for_buying(line.needed) <= own + GRAIN:
                continue
            reasons = ["what is in the hand to roll it thick first"] if line.least > line.net.high else []
            reasons += [f"{self.rounder.decimal(line.allowance * 100, 1)} % for waste"] if line.allowance else []
            yield f"{line.item.name}: {'with ' + ' and '.join(reasons) if reasons else 'rounded up'}."

    def _clay_told(self, part: Piece) -> float:
        """The clay that one of a part takes, as its own figure prints it, g."""
        mass: Interval | None = next(iter(part.roles.get("clay mass", ())), None)
        return self.numbers.printed(mass, "g", "mass up") if mass is not None else 0.0

    def _at_once(self) -> Iterator[str]:
        """Where rolling a slab as drawn wants more clay in the hand than the pieces use up."""
        for line in self.version.materials:
            if isinstance(line.item, Clay) and line.net is not None:
                mass = at_once(self.drawings.slabs, line.item.name)
                if mass > up_for_buying(line.needed):
                    grams = self.rounder.decimal(mass, 1)
                    yield (
                        f"{line.item.name}: to roll the slabs of this sheet as they are drawn, one after the other, "
                        f"takes {grams}{NBSP}g in the hand; what is cut away goes back into the wrap. With less, roll "
                        "closer to the pieces."
                    )

    def _tool(self, line: ToolLine) -> str:
        each = [f"{self._engraved(line, size)}{self._cards(line, size)}" for size in line.sizes]
        sizes = " and ".join([", ".join(each[:-1]), each[-1]] if len(each) > 1 else each)
        return f"{line.item.name}: {sizes}" if sizes else line.item.name

    def _engraved(self, line: ToolLine, size: float) -> str:
        """A size of a tool as it is engraved, and in the studio's unit where that is another."""
        told = self.rounder.length(size)
        own = line.item.engraved_as(size) if isinstance(line.item, Tool) else ""
        number, _, unit = own.partition(" ")
        if not unit or unit == told.unit:
            return told.told
        return f"{number.replace('.', self.rounder.point)}{NBSP}{unit} ({told.told})"

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

    def _sizes(self) -> Iterator[dict[str, str]]:
        for part, size in _made(self.version):
            yield {
                "part": part.title + (f" ×{part.count}" if part.count > 1 else ""),
                "of": ", ".join(self._stuff(part)),
                "label": size.label,
                "finished": "–" if size.finished is None else self._finished(size.finished),
                "make": f"{size.made.words}{NBSP}{size.counted}" if size.counted else size.made.words,
                "unit": size.made.unit,
                "fires": "–" if size.fires is None else self.numbers.range(size.fires),
                "tool": size.tool,
            }

    def _stuff(self, part: Piece) -> Iterator[str]:
        """The metals and fibres that a part is cut from; its clay only where the project has several."""
        clays = sum(isinstance(line.item, Clay) and line.net is not None for line in self.version.materials)
        for item in dict.fromkeys(take.item for take in part.takes):
            if isinstance(item, Wire | Sheet | Fibre) or (isinstance(item, Clay) and clays > 1):
                yield item.name

    def _finished(self, finished: Interval) -> str:
        if finished.exact:
            # As it is given; a size that is worked, such as that of a ring, to what a calliper reads.
            given = abs(finished.usual * 20 - round(finished.usual * 20)) < GRAIN or self.rounder.inches
            return self.numbers.length(finished.usual if given else round(finished.usual, 1))
        return self.numbers.range(finished)

    def _shrinkage(self) -> Iterator[str]:
        for line in self.version.materials:
            if isinstance(line.item, Clay):
                s = line.item.shrinkage * 100
                source = dict(line.item.sources).get("shrinkage") or dict(line.item.sources).get("all", "")
                origin = "the studio’s own test strips" if line.item.tested else source
                thick = line.item.thickness_shrinkage * 100
                also = "" if thick == s else f", {self.rounder.range(thick, 1, '%')} % in thickness,"
                yield f"{line.item.name} shrinks {self.rounder.range(s, 1, '%')} %{also} in the kiln ({origin})."

    def _step(self, number: int, step: WorkedStep) -> dict[str, Any]:
        numbers = self.numbers
        return {
            "title": hazards.marked(step.title, number),
            "text": hazards.marked(words.prose(step.text), number),
            "expect": hazards.marked(words.prose(step.expect, inline=True), number),
            **hazards.of_step(number, step, self.drawings),
            "figures": list(self._beside(step)),
            "minutes": numbers.time(step.minutes) if step.minutes else "",
            "wait": numbers.time(step.wait) if step.wait else "",
            "wait_for": step.wait_for,
            "is_wait": step.wait is not None and not step.firing and step.minutes is None,
            "phases": [{"bed": p.bed, "lines": numbers.firing(p)} for p in step.firing],
            "torch": step.torch,
            "drawings": [
                Markup(d.svg)  # noqa: S704 - drawn by our own pen, its words escaped there
                for d in (*map(self.drawings.diagrams.get, step.diagrams), self.drawings.curves.get(number))
                if d is not None
            ],
            **fired(step),
        }

    def _beside(self, step: WorkedStep) -> Iterator[dict[str, str]]:
        """The numbers beside a step; those of several parts are told apart by their parts."""
        several = len({shown.part for shown in step.show if shown.part}) > 1
        for shown in step.show:
            label = shown.label
            part = self.version.parts[shown.part].title if shown.part else label
            if several and part.lower() != label.lower():
                label = f"{part}: {label[:1].lower()}{label[1:]}"
            yield {"label": label, "value": shown.printed.words, "unit": shown.printed.unit}

    def _versions(self) -> Iterator[dict[str, Any]]:
        for version in self.worked.versions.values():
            yield {
                "name": version.title,
                "path": "" if version is self.worked.main else slug(version.name),
                "here": version is self.version,
            }

    def _version_tables(self) -> Iterator[dict[str, Any]]:
        """Sizes of all versions side by side: those that differ, a few versions to a table."""
        versions = [self.version, *(v for v in self.worked.versions.values() if v is not self.version)]
        cells: dict[tuple[str, str], dict[str, str]] = {}
        for version in versions:
            for label, told in self._compared(version):
                cells.setdefault(label, {})[version.name] = told
        differ = {label: row for label, row in cells.items() if len(set(row.values())) > 1 or len(row) < len(versions)}
        tables = -(-len(versions) // MOST_COLUMNS)
        wide = -(-len(versions) // tables)
        for i in range(0, len(versions), wide):
            some = versions[i : i + wide]
            yield {
                "names": [v.title for v in some],
                "own": self.version in some,
                "rows": [
                    {"part": part, "label": label, "cells": [row.get(v.name, "–") for v in some]}
                    for (part, label), row in differ.items()
                    if any(v.name in row for v in some)
                ],
            }

    def _compared(self, version: WorkedVersion) -> Iterator[tuple[tuple[str, str], str]]:
        """What versions are compared by: sizes, counts, the project's own figures, what is used up."""
        for part, size in _made(version):
            comes = f", {self.numbers.range(size.fires)}" if size.counted and size.fires is not None else ""
            yield (part.title, size.label), f"{size.made.words} {size.counted}{comes}".strip()
        for part in version.parts.values():
            yield (part.title, "how many"), str(part.count)
        for figure in version.figures.values():
            if not figure.part:
                yield ("", figure.label), figure.printed.told
        for line in version.materials:
            yield ("Used up", line.item.name), self.numbers.amount(line) or "as needed"


def _made(version: WorkedVersion) -> Iterator[tuple[Piece, BenchSize]]:
    yield from ((part, size) for part in version.parts.values() for size in part.sizes)
