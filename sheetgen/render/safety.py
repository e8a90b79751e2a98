"""Where each hazard of a version is told: in full once, at the bench or at its first action, and in a few words after.

First aid and whose word comes first stand once a sheet.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from markupsafe import Markup, escape

from sheetgen.facts.cautions import DEFERENCE, FLAMES, GRAVE, LADDER, OFF_AT_A_FLAME, WORN
from sheetgen.facts.first_aid import FIRST_AID
from sheetgen.facts.joints import JOINTS
from sheetgen.facts.signs import GENERAL
from sheetgen.model.view import Aid, Html, Pointer, Safety, Told, Wear
from sheetgen.render.words import kept

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.facts.joints import Joint
    from sheetgen.model.drawing import Drawings
    from sheetgen.model.project import Caution
    from sheetgen.model.worked import WorkedStep, WorkedVersion
    from sheetgen.render.marks import Marks


class Hazards:
    """The hazards of one version on one sheet."""

    def __init__(self, version: WorkedVersion, drawings: Drawings, marks: Marks, emergency: str = "") -> None:
        self.version, self.drawings, self.marks, self.called = version, drawings, marks, emergency
        self.first: dict[str, int] = {}
        self.known: dict[str, Caution] = {}
        for number, step in enumerate(version.steps):
            for caution in step.cautions:
                self.first.setdefault(caution.id, number)
                self.known.setdefault(caution.id, caution)

    def of_sheet(self) -> Safety:
        """What stands before the first step."""
        bench = sorted((c for c in self.known.values() if not c.at_action), key=lambda c: LADDER.index(c.word))
        return Safety(
            told=tuple(self._joined(bench, "told before the first step")),
            wear=self._wear(bench),
            pointers=tuple(self._pointers()),
            aid=self.aid(),
            deference=" ".join(DEFERENCE) if self.known else "",
            emergency=self.emergency(),
        )

    def aid(self) -> tuple[tuple[Aid, ...], ...]:
        """First aid, where a hazard is grave: the hurts of each line."""
        grave = any(caution.word in GRAVE for caution in self.known.values())
        lines = _first_aid(self.version) if grave else ()
        return tuple(tuple(Aid(hurt, self._said(do, f"first aid, '{hurt}'")) for hurt, do in line) for line in lines)

    def emergency(self) -> Html:
        """The number that is called first, after first aid; nothing where there is none."""
        grave = any(caution.word in GRAVE for caution in self.known.values())
        return self._said(kept(self.called), "the emergency number") if grave and self.called else Html("")

    def in_full(self, number: int) -> tuple[Told, ...]:
        """What stands in full at a step."""
        here = [c for c in self._here(number) if c.at_action and self.first[c.id] == number]
        return tuple(self._joined(here, f"at the step '{self.version.steps[number].title}'"))

    def wear(self, number: int) -> tuple[Wear, ...]:
        """What is worn or had for what stands in full at a step; where there is a flame too, thin gloves are off."""
        here = self._here(number)
        at = f"what is worn at the step '{self.version.steps[number].title}'"
        worn = self._wear([c for c in here if c.at_action and self.first[c.id] == number], here)
        return tuple(Wear(one.sign, Html(self.marks.told(Markup(one.words), at))) for one in worn)  # noqa: S704 - ours

    def reminders(self, number: int) -> tuple[Html, ...]:
        """Every other hazard of a step, in a few words."""
        told = (c for c in self._here(number) if not (c.at_action and self.first[c.id] == number))
        return tuple(self._reminder(self.version.steps[number], c.short) for c in told)

    def in_short(self, number: int) -> tuple[Html, ...]:
        """Every hazard of a step of which a reminder says what to do, for the bench card."""
        step = self.version.steps[number]
        return tuple(self._reminder(step, c.short) for c in step.cautions if ":" in c.short)

    def _said(self, words: str, what: str) -> Html:
        return Html(self.marks.told(escape(words), what))

    def _here(self, number: int) -> Sequence[Caution]:
        return self.version.steps[number].cautions

    def _reminder(self, step: WorkedStep, said: str) -> Html:
        what = f"the reminder '{said}' of the step '{step.title}'"
        return Html(self.marks.told(escape(kept(said)), what))

    def _joined(self, cautions: Sequence[Caution], where: str) -> Iterator[Told]:
        """Each caution, of one kind of harm all in one."""
        left = list(cautions)
        for caution in cautions:
            if caution not in left:
                continue
            joint = next((one for one in JOINTS if caution.id in one.each), None)
            together = [c for c in left if joint is not None and c.id in joint.each]
            if joint is not None and len(together) > 1:
                left = [c for c in left if c not in together]
                together.sort(key=lambda c: list(joint.each).index(c.id))
                yield self._told(together, _joint(joint, together), where)
            else:
                left.remove(caution)
                yield self._told([caution], (caution.name, f"{caution.consequence} {caution.avoid}"), where)

    def _told(self, cautions: Sequence[Caution], said: tuple[str, str], where: str) -> Told:
        word = min((c.word for c in cautions), key=LADDER.index)
        sign = next((s for c in cautions for s in c.signs if s.startswith("W")), GENERAL)
        what = f"the caution '{said[0]}', {where}"
        text = Markup("<strong>{}.</strong> {}").format(*map(kept, said))
        return Told(
            word=Html(self.marks.told(escape(word), f"the signal word of {what}")),
            text=Html(self.marks.told(text, what)),
            sign=self._drawn(sign) if word != LADDER[-1] else Html(""),
        )

    def _wear(self, cautions: Sequence[Caution], at: Sequence[Caution] = ()) -> tuple[Wear, ...]:
        flame = any(c.id in FLAMES for c in at)
        words = dict.fromkeys(w for c in cautions for w in c.wear)
        musts = dict.fromkeys(s for c in cautions for s in c.signs if s.startswith("M"))
        found = []
        for one in words:
            sign = next((s for s in musts if any(re.search(rf"\b{b}", one.lower()) for b in WORN.get(s, ()))), "")
            said = OFF_AT_A_FLAME.get(one, one) if flame else one
            found.append(Wear(self._drawn(sign) if sign else Html(""), Html(escape(_small(said)))))
        return tuple(found)

    def _pointers(self) -> Iterator[Pointer]:
        """What is told in full at its first action: the hazards of each step together, in their shortest words."""
        numbers = self.version.numbers
        found: dict[int, list[str]] = {}
        for name, number in sorted(self.first.items(), key=lambda one: one[1]):
            if self.known[name].at_action:
                step = numbers[number] or next((n for n in numbers[number:] if n), 0)
                found.setdefault(step, []).append(_small(self.known[name].short.partition(":")[0]))
        for step, names in found.items():
            told = f"step\u00a0{step}:\u00a0{', '.join(names)}"
            yield Pointer(self._said(told, f"where it is told in full, '{told}',"))

    def _drawn(self, sign: str) -> Html:
        return Html(Markup(self.drawings.signs[sign].svg))  # noqa: S704 - drawn by our own pen


def _joint(joint: Joint, cautions: Sequence[Caution]) -> tuple[str, str]:
    """Hazard, and what it does with how to avoid it, of several of one kind."""
    each = [one.joined or joint.each[one.id] for one in cautions]
    names = [name for name, _ in each]
    listed = f"{', '.join(names[:-1])} and {names[-1]}"
    own = [words for _, words in each if words]
    hazard = joint.hazard.format(listed)
    return hazard[:1].upper() + hazard[1:], " ".join([joint.consequence, joint.avoid, *own])


def _small(words: str) -> str:
    """As in the middle of a sentence."""
    return words[:1].lower() + words[1:]


def _first_aid(version: WorkedVersion) -> Iterator[list[tuple[str, str]]]:
    """What is done first for each hurt that the hazards of the sheet may do."""
    cautions = [caution for step in version.steps for caution in step.cautions]
    signs, ids = {sign for c in cautions for sign in c.signs}, {c.id for c in cautions}
    for line in FIRST_AID:
        clauses: dict[str, list[str]] = {}
        for aid in line:
            if not (aid.signs or aid.ids) or signs.intersection(aid.signs) or ids.intersection(aid.ids):
                clauses.setdefault(aid.hurt, []).append(aid.do)
        if clauses:
            yield [(hurt, " ".join(done)) for hurt, done in clauses.items()]
