"""What a theme gets of a step's hazards, and whether it printed them.

Each name carries a mark that nobody sees, and so does each word of its step. A page that holds a step's mark and not
those of all its hazards is no page: whatever the theme, no hazard of a step goes unprinted where the step is printed.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

from markupsafe import Markup

from sheetgen.base.trouble import Misplaced, Trouble
from sheetgen.facts.cautions import DEFERENCE, FIRST_AID, FLAMES, GRAVE, LADDER, OFF_AT_A_FLAME, WORN
from sheetgen.facts.signs import GENERAL

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.model.drawing import Drawings
    from sheetgen.model.project import Caution
    from sheetgen.model.worked import WorkedStep, WorkedVersion
    from sheetgen.render.theme import Theme

STEP, HAZARD, END = "\ue010", "\ue011", "\ue012"  # letters of nobody's alphabet
ONE_LINE = 80  # letters of a title with hazards beside it
HAVE, SIGN = "Wear or have:", 3  # what stands before what to wear in a short line; letters that a sign takes up
MARK = re.compile(
    f"{STEP}([0-9]{{1,6}}){END}|{HAZARD}([0-9]{{1,6}}):([0-9]{{1,6}}){END}"
)  # figures only: it spans no HTML


def marked(text: str | Markup, number: int) -> str | Markup:
    """A text of a step, marked as that step's; nothing stays nothing."""
    return type(text)(f"{STEP}{number}{END}") + text if text else text


def checked(html: str, steps: Sequence[WorkedStep], theme: Theme, template: str) -> str:
    """A page without its marks. Misplaced at the theme's file for a hazard of a printed step that it leaves out."""
    found = list(MARK.finditer(html))
    printed = {int(one[1]) for one in found if one[1]}
    told = {(int(one[2]), int(one[3])) for one in found if one[2]}
    for number in sorted(printed.intersection(range(len(steps)))):
        step = steps[number]
        lost = [f"{c.word}, {c.name}" for i, c in enumerate(step.cautions) if (number, i) not in told]
        if lost:
            message = f"the theme prints the step '{step.title}' without its hazards: {'; '.join(lost)}"
            helped = "of each step print the cautions in s.first, and the names in s.again"
            raise Misplaced(Trouble(message, theme.place(template), helped))
    return MARK.sub("", html)


def of_step(number: int, step: WorkedStep, drawings: Drawings) -> dict[str, Any]:
    """`first` in full, each with its sign; `again` by name, under their signal words; `have` to wear or at hand.

    `again_first`: what is told again has a higher word than what is told here first, so it stands before.
    What to wear is that of all of them, told here in full or not, each with its sign; `musts` are the other signs.
    `brief`: there are only names and what to wear, and so little that they share the line of the title.
    """
    again: dict[str, list[str]] = {}
    for caution in step.told_again:
        again.setdefault(caution.word, []).append(_marked(number, step, caution, _small(caution.name)))
    told = step.told_first
    names = sum(len(c.name) + 2 for c in step.told_again) + sum(len(word) + 4 for word in again)
    musts = dict.fromkeys(sign for c in step.cautions for sign in c.signs if sign.startswith("M"))
    have = _have(step.cautions)
    row = len(HAVE) + sum(len(wear) + 2 for wear in have) + SIGN * len(musts) if have else 0
    belongs = {wear: next((sign for sign in musts if _told_by(sign, wear)), "") for wear in have}
    left = [sign for sign in musts if sign not in belongs.values()]
    return {
        "first": [_in_full(number, step, caution, drawings) for caution in told],
        "again": [{"word": word, "names": names} for word, names in again.items()],
        "brief": bool(again) and not told and len(step.title) + names + row <= ONE_LINE,
        "again_first": bool(again and told) and _rank(next(iter(again))) < _rank(told[0].word),
        "have": [{"sign": _drawn(sign, drawings) if sign else "", "words": wear} for wear, sign in belongs.items()],
        "musts": [_drawn(sign, drawings) for sign in left],
        "who": step.who,
        "notes": step.notes,
    }


def _have(cautions: Sequence[Caution]) -> list[str]:
    """What to wear or to have; where there is a flame too, when thin gloves are off."""
    flame = any(c.id in FLAMES for c in cautions)
    wear = dict.fromkeys(wear for c in cautions for wear in c.wear)
    return [_small(OFF_AT_A_FLAME.get(one, one) if flame else one) for one in wear]


def _told_by(sign: str, wear: str) -> bool:
    """Whether a sign tells to wear what these words name."""
    return any(re.search(rf"\b{begin}", wear.lower()) for begin in WORN.get(sign, ()))


def _rank(word: str) -> int:
    return LADDER.index(word)


def _drawn(sign: str, drawings: Drawings) -> Markup:
    return Markup(drawings.signs[sign].svg)  # noqa: S704 - drawn by our own pen


def _marked(number: int, step: WorkedStep, caution: Caution, name: str) -> str:
    """By its number in the step: a studio's own caution may be called anything."""
    return f"{HAZARD}{number}:{step.cautions.index(caution)}{END}{name}"


def _small(words: str) -> str:
    """As in the middle of a sentence."""
    return words[:1].lower() + words[1:]


def _in_full(number: int, step: WorkedStep, caution: Caution, drawings: Drawings) -> dict[str, Any]:
    warns = next((sign for sign in caution.signs if sign.startswith("W")), GENERAL)
    alert = caution.word != LADDER[-1]
    return {
        "word": caution.word,
        "name": _marked(number, step, caution, caution.name),
        "consequence": caution.consequence,
        "avoid": caution.avoid,
        "sign": _drawn(warns, drawings) if alert else "",
    }


def of_sheet(version: WorkedVersion, emergency: str) -> dict[str, Any]:
    """Every hazard once with the step that explains it, gravest first; first aid where one is grave.

    Nothing where there is none.
    """
    first: dict[str, list[tuple[str, int]]] = {word: [] for word in LADDER[:-1]}
    for number, step in enumerate(version.steps, 1):
        for caution in step.told_first:
            if caution.word in first:
                first[caution.word].append((_small(caution.name), number))
    groups = [{"word": word, "hazards": hazards} for word, hazards in first.items() if hazards]
    if not groups:
        return {}
    grave = groups[0]["word"] in GRAVE
    return {
        "groups": groups,
        "deference": list(DEFERENCE),
        "first_aid": _first_aid(version) if grave else [],
        "emergency": emergency,
    }


def _first_aid(version: WorkedVersion) -> list[tuple[str, str]]:
    """What is done first for each hurt that the hazards of the sheet may do."""
    cautions = [caution for step in version.steps for caution in step.cautions]
    signs, ids = {sign for c in cautions for sign in c.signs}, {c.id for c in cautions}
    clauses: dict[str, list[str]] = {}
    for aid in FIRST_AID:
        if not (aid.signs or aid.ids) or signs.intersection(aid.signs) or ids.intersection(aid.ids):
            clauses.setdefault(aid.hurt, []).append(aid.do)
    return [(hurt, _small(" ".join(done))) for hurt, done in clauses.items()]
