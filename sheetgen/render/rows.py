"""The rows of the bench: sessions, steps and waits of one version, as the handout and the bench card print them."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from markupsafe import Markup

from sheetgen.base.printed import NBSP
from sheetgen.base.spelling import in_a_sentence
from sheetgen.model.numbers import Numbers
from sheetgen.model.view import Clock, Figure, Html, Matrix, MatrixRow, Picture, Row
from sheetgen.model.worked import ON_CARD
from sheetgen.render import words
from sheetgen.render.firing import allowed, bed, phases
from sheetgen.render.given import given
from sheetgen.render.in_hand import in_hand
from sheetgen.render.pictures import of_file
from sheetgen.render.safety import Hazards

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from sheetgen.base.interval import Interval
    from sheetgen.model.drawing import Drawing, Drawings
    from sheetgen.model.plan import Session
    from sheetgen.model.worked import Shown, Worked, WorkedStep, WorkedVersion
    from sheetgen.render.marks import Marks

MOST_COLUMNS = 3
ABREAST = 3  # phases of a firing that have room side by side
LONG = 9  # letters of a number beside a step that no longer stands in the largest figures
NONE = Html("–")


class Rows:
    """One version's rows, their numbers and cautions marked."""

    def __init__(self, worked: Worked, version: WorkedVersion, drawings: Drawings, marks: Marks) -> None:
        self.worked, self.version, self.drawings, self.marks = worked, version, drawings, marks
        self.numbers, self.hazards = Numbers(worked.rounder), Hazards(version, drawings, marks, worked.studio.emergency)

    def all(self) -> tuple[Row, ...]:
        """Every row of the handout, in order."""
        return tuple(self._all())

    def of_card(self) -> tuple[Row, ...]:
        """Every row of the bench card: steps and waits, the last of a session saying what comes then."""
        steps = zip(self.version.steps, self.version.numbers, strict=True)
        return tuple(self._card(number, step, counted) for number, (step, counted) in enumerate(steps))

    def _all(self) -> Iterator[Row]:
        sessions = {session.first: index for index, session in enumerate(self.version.plan.sessions)}
        for number, (step, counted) in enumerate(zip(self.version.steps, self.version.numbers, strict=True)):
            if number in sessions:
                yield self._session(sessions[number])
            yield self._row(number, step, counted)

    def _session(self, index: int) -> Row:
        session, number = self.version.plan.sessions[index], index + 1
        title = f"Session {number}" if len(self.version.plan.sessions) > 1 else "At the bench"
        told, minutes = steps_told(self.version.numbers, session), self.active(session)
        return Row("session", f"session-{number}", number, title, title, Html(minutes), told, self._sat(session))

    def active(self, session: Session) -> str:
        """The time of a session at the bench: the sum of what is printed beside its steps."""
        return self.numbers.added(self._worked(session))

    def _worked(self, session: Session) -> list[Interval]:
        return [step.minutes for step in self.version.steps[session.first : session.last + 1] if step.minutes]

    def _sat(self, session: Session) -> str:
        """The same with the waits inside it that nothing bridges, where that is more."""
        told = self.numbers.added([*self._worked(session), session.idle]) if session.idle.high > 0 else ""
        return told if told != self.active(session) else ""

    def _row(self, number: int, step: WorkedStep, counted: int) -> Row:
        with self.marks.inside(row_id(self.version.numbers, number)):
            row = self._full(number, step, counted)
        self.marks.given[row.id] = given(row)
        return row

    def _full(self, number: int, step: WorkedStep, counted: int) -> Row:
        text = self.marks.done(words.prose(step.text, self.marks), f"what is done in the step '{step.title}'")
        figures = [] if (matrix := self._matrix(step)) else list(self._figures(step, step.show))
        fired = phases(step, self.numbers)
        if len(fired) > 1:
            matrix = self._phases(step, fired)
        else:
            figures += [self._figure(step, *line) for each in fired for line in each]
        meanwhile = self._meanwhile(number, words.prose(step.meanwhile, self.marks, inline=True))
        return Row(
            kind="wait" if step.waits else "step",
            id=row_id(self.version.numbers, number),
            number=counted,
            title=step.title,
            short=step.short,
            minutes=self._minutes(step),
            text=Html(text),
            expect=Html(words.prose(step.expect, self.marks, inline=True)),
            meanwhile=Html(meanwhile) if step.waits or step.wait else Html(""),
            told=self.hazards.in_full(number),
            wear=self.hazards.wear(number),
            reminders=self.hazards.reminders(number),
            who=step.who,
            notes=step.notes,
            hand=in_hand(step.uses),
            figures=tuple(figures),
            matrix=matrix,
            drawings=tuple(self._drawings(step)),
            picture=self._picture(step),
            firing=allowed(step, self.numbers),
            curve=self._curve(self.drawings.narrow_curves, number),
            mishap=self._mishap(step),
            clock=self._clock(step),
        )

    def _card(self, number: int, step: WorkedStep, counted: int) -> Row:
        with self.marks.inside(row_id(self.version.numbers, number)):
            row = self._short(number, step, counted)
        self.marks.given[row.id] = given(row)
        return row

    def _short(self, number: int, step: WorkedStep, counted: int) -> Row:
        return Row(
            kind="wait" if step.waits else "step",
            id=row_id(self.version.numbers, number),
            number=counted,
            title=step.title,
            short=step.short,
            minutes=self._minutes(step),
            expect=Html(words.prose(step.expect, self.marks, inline=True)),
            then=self._then(number),
            reminders=self.hazards.in_short(number),
            card=tuple(self._figures(step, (step.card or step.show)[:ON_CARD])),
            curve=self._curve(self.drawings.curves, number),
            firing=bed(step),
        )

    def _then(self, number: int) -> str:
        """What comes after the last row of a session."""
        for index, session in enumerate(self.version.plan.sessions[:-1]):
            if session.last == number:
                return f"then session {index + 2}: {self.active(self.version.plan.sessions[index + 1])}"
        return ""

    def _minutes(self, step: WorkedStep) -> Html:
        """The time of a step; that of a wait must be printed."""
        if step.waits:
            told = words.kept(self.numbers.time(step.whole_wait)) if step.whole_wait else ""
            return Html(self.marks.number(told, f"the time of the wait '{step.title}'")) if told else Html("")
        return Html(self.numbers.time(step.minutes) if step.minutes else "")  # set as text is, by the theme

    def _meanwhile(self, number: int, own: str) -> str:
        """What can be done while it is waited for: steps by their numbers, one by its title too; and what is named."""
        bridge = self.version.plan.meanwhile.get(number, ())
        counted = {self.version.numbers[i]: self.version.steps[i].title for i in bridge if self.version.numbers[i]}
        if not counted:
            return own
        named = f"step {min(counted)}, {counted[min(counted)]}" if len(counted) == 1 else f"steps {runs([*counted])}"
        return Markup("{}. {}").format(named, own) if own else Markup("{}.").format(named)

    def _curve(self, curves: Mapping[int, Drawing], number: int) -> Html:
        drawn = curves.get(number)
        return Html(Markup(drawn.svg)) if drawn else Html("")  # noqa: S704 - drawn by our own pen

    def _drawings(self, step: WorkedStep) -> Iterator[Html]:
        for drawn in map(self.drawings.diagrams.get, step.diagrams):
            if drawn is not None:
                yield Html(Markup(drawn.svg))  # noqa: S704 - drawn by our own pen, its words escaped there

    def _picture(self, step: WorkedStep) -> Picture | None:
        one = step.picture
        return of_file(self.worked.folder, one, one.shows, one.caption) if one else None

    @staticmethod
    def _clock(step: WorkedStep) -> Clock | None:
        """Its wait in whole minutes; never over before what is printed."""
        wait = step.whole_wait
        return Clock(math.ceil(wait.low), math.ceil(wait.high)) if wait else None

    def _mishap(self, step: WorkedStep) -> Html:
        """One line for who stands at the bench: what is seen first, and its mend."""
        if not step.mishaps:
            return Html("")
        first = step.mishaps[0]
        seen, mend = (words.prose(said, self.marks, inline=True) for said in (first.seen, first.mend))
        return Html(Markup("{}: {}").format(seen, in_a_sentence(mend)))

    def _figure(self, step: WorkedStep, label: str, value: str, unit: str) -> Figure:
        what = f"'{label}' of the step '{step.title}'"
        marked = self.marks.number(value, what)
        beside = self.marks.number(unit, f"the unit of {what}") if unit else Markup("")
        return Figure(label, Html(marked), Html(beside), long=len(value) > LONG)

    def _figures(self, step: WorkedStep, shown: Sequence[Shown]) -> Iterator[Figure]:
        """The numbers beside a step; those of several parts are told apart by their parts."""
        several = len({one.part for one in shown if one.part and not one.labelled}) > 1
        for one in shown:
            label, part = one.label, self._part(one) if one.part and not one.labelled else ""
            if several and part and part.lower() != label.lower():
                label = f"{part}: {in_a_sentence(label)}"
            yield self._figure(step, label, one.printed.words, one.printed.unit)

    def _part(self, shown: Shown) -> str:
        return self.version.parts[shown.part].title

    def _matrix(self, step: WorkedStep) -> Matrix | None:
        """Like figures of two or three parts in columns, where all that the step shows is of them."""
        parts = list(dict.fromkeys(self._host(one.part) for one in step.show))
        cells = {(one.label, self._host(one.part)): one for one in step.show}
        labels = list(dict.fromkeys(one.label for one in step.show))
        shared = sum(all((label, part) in cells for part in parts) for label in labels)
        if not 1 < len(parts) <= MOST_COLUMNS or not all(parts) or shared < 2:  # noqa: PLR2004 - one row is no table
            return None
        columns = tuple(self._counted(name) for name in parts)
        rows = []
        for label in labels:
            units = dict.fromkeys(one.printed.unit for key, one in cells.items() if key[0] == label)
            unit = next(iter(units)) if len(units) == 1 else ""
            each = tuple(self._cell(step, cells.get((label, part)), alone=bool(unit)) for part in parts)
            rows.append(MatrixRow(f"{label}, {unit}" if unit else label, each))
        return Matrix(columns, tuple(rows))

    def _host(self, part: str) -> str:
        """A part; of a hole or a seat the part that it is drilled in."""
        piece = self.version.parts.get(part)
        return next(iter(piece.roles.get("drilled in", ())), part) if piece is not None else part

    def _counted(self, part: str) -> str:
        piece = self.version.parts[part]
        return f"{piece.title}, {piece.count}" if piece.count > 1 else piece.title

    def _cell(self, step: WorkedStep, shown: Shown | None, *, alone: bool) -> Html:
        if shown is None:
            return NONE
        what = f"'{shown.label}' of the step '{step.title}'"
        return Html(self.marks.number(shown.printed.words if alone else shown.printed.told, what))

    def _phases(self, step: WorkedStep, fired: Sequence[Sequence[tuple[str, str, str]]]) -> Matrix:
        """The phases of a firing side by side; more than a few below each other, as a controller of a kiln has them."""
        lines = [{label: (value, unit) for label, value, unit in phase} for phase in fired]
        called, columns = [], []
        for label in dict.fromkeys(label for phase in lines for label in phase):
            units = dict.fromkeys(phase[label][1] for phase in lines if label in phase)
            unit = next(iter(units)) if len(units) == 1 else ""
            each = []
            for phase in lines:
                value, own = phase.get(label, ("", ""))
                told = f"{value}{NBSP}{own}" if own and not unit else value
                what = f"'{label}' of the step '{step.title}'"
                each.append(Html(self.marks.number(told, what)) if told else NONE)
            called.append(f"{label}, {unit}" if unit else label)
            columns.append(tuple(each))
        phases = tuple(f"Phase {n}" for n in range(1, len(fired) + 1))
        if len(phases) > ABREAST:
            return Matrix(tuple(called), tuple(map(MatrixRow, phases, zip(*columns, strict=True))), wide=True)
        return Matrix(phases, tuple(map(MatrixRow, called, columns)))


def row_id(numbers: Sequence[int], at: int) -> str:
    """What a row is called, for links: a step by the number that is printed at it, a wait by its place among waits."""
    return f"step-{numbers[at]}" if numbers[at] else f"wait-{numbers[: at + 1].count(0)}"


def runs(counted: Sequence[int]) -> str:
    """Numbers as a list with runs: 2–4, 7."""
    found: list[list[int]] = []
    for n in sorted(set(counted)):
        if found and n == found[-1][-1] + 1:
            found[-1].append(n)
        else:
            found.append([n])
    return ", ".join(f"{run[0]}–{run[-1]}" if len(run) > 1 else str(run[0]) for run in found)


def steps_told(numbers: Sequence[int], session: Session) -> str:
    """The numbered steps of a session: steps 1–6."""
    own = [n for n in numbers[session.first : session.last + 1] if n]
    if not own:
        return ""
    return f"step {own[0]}" if len(own) == 1 else f"steps {own[0]}–{own[-1]}"
