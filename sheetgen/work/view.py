"""The view of the finished piece: which parts and findings stand where, and what is laid in a row."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.material import Finding
from sheetgen.base.spelling import plain, suggest
from sheetgen.base.spot import Spot
from sheetgen.facts.findings import FORMS
from sheetgen.facts.gestures import OF
from sheetgen.facts.made import MADE
from sheetgen.model.worked import TURNED, Laid, Stood
from sheetgen.work.fields import spot
from sheetgen.work.stopped import Stopped

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.base.place import Word
    from sheetgen.model.project import Standing
    from sheetgen.work.evaluator import Evaluator


def view(evaluator: Evaluator) -> tuple[Stood, ...]:
    """Everything in the view in its order; what cannot stand is told and left out."""
    return tuple(_stood(evaluator))


def _stood(evaluator: Evaluator) -> Iterator[Stood]:
    standing: list[str] = []
    for one in evaluator.project.view:
        try:
            stood = _one(one, evaluator, standing)
        except Stopped:
            continue
        if stood.name:
            standing.append(stood.name)
        yield stood


def _one(one: Standing, evaluator: Evaluator, standing: Sequence[str]) -> Stood:
    """One entry of the view. Raises Stopped with its trouble noted."""
    ways = [name for name in ("part", "finding", "closed", "led_back") if getattr(one, name)]
    if len(ways) != 1:
        told = " and ".join(f"'{name.replace('_', ' ')}'" for name in ways) or "nothing"
        helped = "one of part: …, finding: …, closed: [ … ], led back: [ … ]"
        named = next((word for word in (one.part, one.finding, *one.closed, *one.led_back, one.at) if word), None)
        place = (named or evaluator.project.title).place
        evaluator.troubles.add(f"an entry of the view shows one thing, and this one names {told}", place, helped)
        raise Stopped
    if str(one.turned) not in TURNED:
        evaluator.troubles.add(f"turned cannot be '{one.turned}'", one.turned.place, f"one of {', '.join(TURNED)}")
    above = one.hangs_from
    if above is not None and plain(above) not in standing:
        known = suggest(above, standing) if standing else "at: 0 mm, 0 mm"
        evaluator.troubles.add(f"'{above}' does not stand in this view before it", above.place, known)
        raise Stopped
    at = _spot(one, evaluator)
    row = tuple(_laid(word, evaluator) for word in (*one.closed, *one.led_back))
    part: str | Finding = ""
    if one.part is not None:
        part = _part(one.part, evaluator)
    elif one.finding is not None:
        part = _finding(one.finding, evaluator)
    name = plain(one.part or one.finding or "")
    hung = plain(above) if above is not None else ""
    return Stood(part, at.x, at.y, hung, str(one.turned), row, bool(one.closed), name)


def _part(word: Word, evaluator: Evaluator) -> str:
    if plain(word) not in evaluator.parts:
        evaluator.troubles.add(f"there is no part '{word}'", word.place, suggest(word, evaluator.parts))
        raise Stopped
    return plain(word)


def _finding(word: Word, evaluator: Evaluator) -> Finding:
    """A finding of which stock says all that a drawing of it needs."""
    found = evaluator.item(word, Finding)
    if not isinstance(found, Finding):
        raise Stopped
    if not found.form:
        told = f"stock does not say what '{found.id}' is drawn as"
        evaluator.troubles.add(told, word.place, f"add to it drawn as: {', '.join(FORMS)}")
        raise Stopped
    if missing := [name for name in FORMS.get(found.form, ()) if getattr(found, name) is None]:
        told = f"'{found.id}' is drawn by its {' and '.join(missing)}, which stock does not say"
        evaluator.troubles.add(told, word.place, f"add to it {missing[0]}: 5 mm")
        raise Stopped
    return found


def _laid(word: Word, evaluator: Evaluator) -> Laid:
    """One or several parts or findings of a row, by the word between them."""
    made, of, _ = word.partition(OF)
    if of and made.strip() in MADE:
        return _made(made.strip(), word.cut(len(made) + len(of), len(word)), evaluator)
    for how in ("with", "on"):
        between = f" {how} "
        pieces, at = [], 0
        for piece in word.split(between):
            pieces.append(word.cut(at, at + len(piece)))
            at += len(piece) + len(between)
        if len(pieces) > 1:
            return Laid(tuple(_named(one, evaluator) for one in pieces), how)
    return Laid((_named(word, evaluator),))


def _named(word: Word, evaluator: Evaluator) -> str | Finding:
    return plain(word) if plain(word) in evaluator.parts else _finding(word, evaluator)


def _made(made: str, of: Word, evaluator: Evaluator) -> Laid:
    """What is made of a part, by how long the project says it is."""
    kind, figure = MADE[made]
    name = _part(of, evaluator)
    if evaluator.parts[name].kind.kind != kind:
        told = f"a {made} is made of {kind}, and '{of}' is {evaluator.parts[name].kind.kind}"
        evaluator.troubles.add(told, of.place, f"name a part of kind {kind}")
        raise Stopped
    if figure not in evaluator.own:
        evaluator.troubles.add(f"a {made} is drawn by the figure '{figure}'", of.place, "add it under figures:")
        raise Stopped
    return Laid((name,), made=made)


def _spot(one: Standing, evaluator: Evaluator) -> Spot:
    try:
        return spot(evaluator, one.at) if one.at is not None else Spot(0.0, 0.0)
    except Stopped:
        return Spot(0.0, 0.0)
