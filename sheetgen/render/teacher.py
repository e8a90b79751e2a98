"""The teacher's sheet of one version: the evenings, risks, faults and mends, all sizes, versions and workings."""

from __future__ import annotations

from typing import TYPE_CHECKING

from markupsafe import Markup

from sheetgen.base.interval import GRAIN
from sheetgen.base.material import Clay, Fibre, Sheet, Wire
from sheetgen.base.printed import NBSP
from sheetgen.base.spelling import begun, in_a_sentence, stopped
from sheetgen.facts.cautions import LADDER
from sheetgen.model.amounts import amounts
from sheetgen.model.numbers import Numbers
from sheetgen.model.packed import nothing_packed
from sheetgen.model.view import AllSizes, Html, Mend, Risk, TeacherSheet, VersionTable
from sheetgen.render import words
from sheetgen.render.classes import ClassWords
from sheetgen.render.handout import Sheets
from sheetgen.render.needs import Needs
from sheetgen.render.rows import runs
from sheetgen.render.safety import Hazards
from sheetgen.render.workings import explained, workings

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping, Sequence

    from sheetgen.base.figure import BenchSize
    from sheetgen.base.interval import Interval
    from sheetgen.base.material import Item
    from sheetgen.base.rounding import Rounder
    from sheetgen.model.drawing import Drawings, SlabLayout
    from sheetgen.model.project import Caution
    from sheetgen.model.worked import Prose, Worked, WorkedVersion
    from sheetgen.parts.piece import Piece
    from sheetgen.render.marks import Marks

MOST_COLUMNS = 4
WAITS = "waits"  # in place of steps, where only what has no number brings it
STRIP = ("Clay and batch", "Kiln, program", "Strip wet, {}", "Strip fired, {}", "Date")
CLASS = ("Date", "Begun", "Finished", "What to change")
OTHERS = (("scrap", "A scrap"), ("leftovers", "Leftovers"), ("bring", "Pupils bring"), ("next", "What comes next"))


class Teacher:
    """What only the teacher reads."""

    def __init__(
        self,
        worked: Worked,
        version: WorkedVersion,
        drawings: Drawings,
        marks: Marks,
        slabs: Mapping[str, Sequence[SlabLayout]],
    ) -> None:
        """`slabs` are those of every version, by its name, for what is compared between them."""
        self.worked, self.version, self.drawings, self.marks, self.slabs = worked, version, drawings, marks, slabs
        self.numbers = Numbers(worked.rounder)
        self.course = ClassWords(version, self.numbers)

    def sheet(self) -> TeacherSheet:
        """All of it."""
        sheets, told, taught = Sheets(self.worked, self.version, self.drawings), self.course, self.version.teaching
        needs = Needs(self.version, self.drawings, self.numbers, self.marks, nothing_packed(self.version))
        hazards = Hazards(self.version, self.drawings, self.marks, self.worked.studio.emergency)
        worked_out = workings(self.version, self.numbers, self.drawings.slabs, self._told_apart)
        return TeacherSheet(
            head=sheets.head("Teacher’s sheet"),
            people=told.people,
            plan_says=tuple(told.says()),
            timetable=tuple(Html(Markup(d.svg)) for d in self.drawings.timetable),  # noqa: S704 - by our own pen
            between=tuple(told.between()),
            stations=tuple(told.stations()),
            before=tuple(map(self._prose, taught.before)),
            show=tuple(map(self._prose, taught.show)),
            others=tuple(self._others()),
            quantities=tuple(needs.of_class(told.people)) if told.people else (),
            quantities_for=f"{told.people} pupils, without a teacher’s piece or a spare set",
            aid=hazards.aid(),
            emergency=hazards.emergency(),
            risks=tuple(self._risks()),
            waived=tuple((one.rule.replace("-", " "), stopped(one.reason)) for one in self.worked.waive),
            mends=tuple(self._mends()),
            sizes=tuple(self._sizes()),
            unit=self.worked.rounder.unit("mm"),
            shrinkage=tuple(self._shrinkage()),
            versions=tuple(self._versions()),
            workings=worked_out,
            signs=explained(worked_out, self.version, self.numbers, self.drawings.slabs),
            results=sheets.results(STRIP if sheets.clayed else CLASS),
        )

    def _prose(self, said: Prose) -> Html:
        return Html(words.prose(said, self.marks, inline=True))

    def _others(self) -> Iterator[tuple[str, Html]]:
        taught = self.version.teaching
        for name, label in OTHERS:
            said = getattr(taught, name)
            each = map(self._prose, said if name == "bring" else [said])
            told = Markup(" ").join(stopped(one) for one in each if one)
            if told:
                yield label, Html(told)

    def _risks(self) -> Iterator[Risk]:
        """Every hazard once, gravest first, with its steps."""
        steps: dict[str, list[int]] = {}
        known: dict[str, Caution] = {}
        for number, step in zip(self.version.numbers, self.version.steps, strict=True):
            for caution in step.cautions:
                known.setdefault(caution.id, caution)
                steps.setdefault(caution.id, []).append(number)
        for one in sorted(known.values(), key=lambda c: LADDER.index(c.word)):
            numbered = [n for n in steps[one.id] if n]
            where = [runs(numbered)] * bool(numbered) + [WAITS] * (0 in steps[one.id])
            yield Risk(one.word, one.name, ", ".join(where), one.consequence, one.avoid)

    def _mends(self) -> Iterator[Mend]:
        """Faults with their mends, each once, with the steps at which it may come."""
        found: dict[tuple[str, str], tuple[Mend, list[int]]] = {}
        for number, step in zip(self.version.numbers, self.version.steps, strict=True):
            for one in step.mishaps:
                seen, why, mend = (begun(self._prose(said)) for said in (one.seen, one.why, one.mend))
                kept = found.setdefault((str(seen), str(mend)), (Mend(seen, why, mend, ""), []))
                kept[1].extend([number] if number else [])
        for told, numbers in found.values():
            yield Mend(told.seen, told.why, told.mend, runs(numbers) if numbers else WAITS)

    def _sizes(self) -> Iterator[AllSizes]:
        before = None
        for part, size in _made(self.version):
            stuff = ", ".join(map(in_a_sentence, self._stuff(part)))
            named = f"{part.title}{f' × {part.count}' if part.count > 1 else ''}{f' ({stuff})' if stuff else ''}"
            yield AllSizes(
                part=named if part is not before else "",
                label=size.label,
                finished="–" if size.finished is None else self.numbers.finished(size.finished),
                make=Html(self.marks.number(self._make(size), f"'{size.label}' of {part.title}")),
                fires="–" if size.fires is None else self.numbers.range(size.fires),
                tool=size.tool,
            )
            before = part

    def _make(self, size: BenchSize) -> str:
        return f"{size.made.words}{NBSP}{size.counted}" if size.counted else size.made.words

    def _stuff(self, part: Piece) -> Iterator[str]:
        """The metals and fibres that a part is cut from; its clay only where the project has several."""
        clays = sum(isinstance(line.item, Clay) and line.net is not None for line in self.version.materials)
        for item in dict.fromkeys(take.item for take in part.takes):
            if isinstance(item, Wire | Sheet | Fibre) or (isinstance(item, Clay) and clays > 1):
                yield item.name

    def _shrinkage(self) -> Iterator[str]:
        for line in self.version.materials:
            if isinstance(line.item, Clay):
                s = line.item.shrinkage * 100
                source = dict(line.item.sources).get("shrinkage") or dict(line.item.sources).get("all", "")
                origin = "the studio’s own test strips" if line.item.tested else source
                thick = line.item.thickness_shrinkage * 100
                rounder = self.worked.rounder
                also = "" if thick == s else f", {_per_cent(thick, rounder)} in thickness,"
                comma = "," if "," in line.item.name else ""
                yield f"{line.item.name}{comma} shrinks {_per_cent(s, rounder)}{also} in the kiln ({origin})."

    def _versions(self) -> Iterator[VersionTable]:
        """What differs between the versions, a few to a table, this one first."""
        others = [v for v in self.worked.versions.values() if v is not self.version]
        versions = [self.version, *others]
        cells: dict[str, dict[str, str]] = {}
        for version in versions:
            for label, told in self._compared(version):
                cells.setdefault(label, {})[version.name] = told
        differ = {label: row for label, row in cells.items() if len(set(row.values())) > 1 or len(row) < len(versions)}
        if not others:
            return
        wide = -(-len(others) // -(-len(others) // (MOST_COLUMNS - 1)))
        for i in range(0, len(others), wide):
            some = [self.version, *others[i : i + wide]]
            rows = [(label, tuple(row.get(v.name, "–") for v in some)) for label, row in differ.items()]
            yield VersionTable(tuple(v.title for v in some), tuple(r for r in rows if len(set(r[1])) > 1))

    def _compared(self, version: WorkedVersion) -> Iterator[tuple[str, str]]:
        """What versions are compared by: sizes as made, counts, what to have."""
        for part, size in _made(version):
            yield f"{part.title}: {in_a_sentence(size.label)}", f"{size.made.words} {size.counted}".strip()
        for part in version.parts.values():
            yield f"{part.title}: how many", str(part.count)
        for line in version.materials:
            told = amounts(line, self.slabs[version.name], self.worked.rounder)
            yield f"Have: {in_a_sentence(self._told_apart(line.item))}", told.listed if told else "as needed"

    def _told_apart(self, item: Item) -> str:
        """The first words of its name; where others in use have them too its whole name, and then its name in stock."""
        every = (line.item for version in self.worked.versions.values() for line in version.materials)
        others = [other.name for other in every if other.id != item.id]
        head = item.name.partition(",")[0]
        if item.name in others:
            return f"{item.name} ({item.id})"
        return item.name if head in {other.partition(",")[0] for other in others} else head


def _per_cent(share: Interval, rounder: Rounder) -> str:
    """A share or its range in per cent: whole ones without a tenth."""
    whole = all(abs(end - round(end)) < GRAIN for end in (share.low, share.high))
    return f"{rounder.range(share, 0 if whole else 1, '%')}{NBSP}%"


def _made(version: WorkedVersion) -> Iterable[tuple[Piece, BenchSize]]:
    return ((part, size) for part in version.parts.values() for size in part.sizes)
