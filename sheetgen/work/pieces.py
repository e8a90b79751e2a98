"""A part worked through: all its figures, sizes, takings and tools, as plain values that do not change."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any

from sheetgen.base.cases import Cases
from sheetgen.base.figure import BenchSize
from sheetgen.base.frozen import Frozen
from sheetgen.base.interval import GRAIN
from sheetgen.base.material import Item
from sheetgen.base.reckoning import beside, compare, holds
from sheetgen.base.spot import Neighbour
from sheetgen.base.supply import counted_in
from sheetgen.base.trouble import CannotBe, Misplaced
from sheetgen.parts.field import Field
from sheetgen.parts.figure import Aside, FigureSpec
from sheetgen.parts.piece import Piece, Take
from sheetgen.parts.reading import unit_of
from sheetgen.work.rooms import rooms
from sheetgen.work.stopped import Stopped

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.figure import Figure
    from sheetgen.base.interval import Interval
    from sheetgen.parts.figure import SizeSpec, TakeSpec
    from sheetgen.work.evaluator import Evaluator
    from sheetgen.work.part import PartSource


def pieces(evaluator: Evaluator) -> dict[str, Piece]:
    """Every part that could be worked, with its template and what is drilled in it; troubles are noted."""
    found = {name: _piece(part) for name, part in evaluator.parts.items()}
    found = {name: _with_flat(piece, evaluator) for name, piece in found.items()}
    found = {name: replace(piece, rooms=rooms(piece, evaluator.parts[name])) for name, piece in found.items()}
    return {name: _with_drilled(piece, found, evaluator) for name, piece in found.items()}


def _piece(part: PartSource) -> Piece:
    fields: dict[str, Any] = {}
    numbers: dict[str, Interval] = {}
    figures: dict[str, Figure] = {}
    for owner in part.kind.names.values():
        try:
            if isinstance(owner, Field):
                fields[owner.attribute] = _field(part, owner, numbers)
            elif isinstance(owner, FigureSpec) and part.has(owner):
                figures[owner.name] = part.figure(owner)[0]
        except Stopped:
            continue
        except CannotBe as fault:
            part.evaluator.troubles.add(f"{part.title}: {fault.message}", part.place(fault.field), fault.help)
    _must_hold(part)
    count = numbers.get("count")
    made = tuple(_each(part, part.kind.sizes, lambda one: _size(part, one, figures)))
    taken = tuple(_each(part, part.kind.takes, lambda one: _take(part, one)))
    tools = tuple(_tools(part))
    deep = _deep(part, numbers)
    numbers |= _asides(part)
    roles, played = _roles(part, fields, numbers, figures)
    return Piece(
        name=part.name,
        kind=part.kind.kind,
        count=round(count.usual) if count else 1,
        rounder=part.evaluator.rounder,
        fields=Frozen(fields),
        numbers=Frozen(numbers),
        figures=Frozen(figures),
        roles=Frozen(roles),
        sizes=made,
        takes=taken,
        tools=tools,
        deep=deep,
        hazards=part.kind.hazards,
        reshaped=part.kind.reshaped,
        places=Frozen({"": part.home, **{name: word.place for name, word in part.words.items()}}),
        role_fields=Frozen(played),
    )


def _asides(part: PartSource) -> dict[str, Interval]:
    """What a drawing may ask for: one that nothing else asked for, and that cannot be worked, is nobody's trouble."""
    found = {}
    troubles = part.evaluator.troubles.found
    for name in (k for k, v in part.kind.names.items() if isinstance(v, Aside)):
        before = len(troubles)
        try:
            found[name] = part.cases(name).interval
        except (Stopped, CannotBe, ArithmeticError, ValueError):
            del troubles[before:]
    return found


def _field(part: PartSource, owner: Field[Any], numbers: dict[str, Interval]) -> Any:  # noqa: ANN401 - of any sort
    value = part.field(owner)
    if not isinstance(value, Cases):
        return value
    numbers[owner.attribute] = value.interval
    return part.evaluator.numbers.printed(value.interval, unit_of(owner), "fine", given=True)


def _must_hold(part: PartSource) -> None:
    """What the kind needs, what every kind needs, and of two fields one."""
    for a, b in part.kind.either:
        if (a in part.words) == (b in part.words):  # given, whether or not it could be read
            told = [part.kind.names[name].name for name in (a, b)]
            message = f"{part.title}: {told[0]} or {told[1]} is wanted, one of the two"
            part.evaluator.troubles.add(message, part.place(told[0]), "give one")
    _rolled(part)
    for one in part.kind.needs:
        try:
            if (trouble := part.broken(one)) is not None:
                part.evaluator.troubles.extend([trouble])
        except (Stopped, CannotBe):  # told where the number was worked
            continue


def _rolled(part: PartSource) -> None:
    """Texture only thins."""
    first, last = part.kind.with_role("rolled first"), part.kind.with_role("rolled to")
    if not isinstance(first, Field) or not isinstance(last, Field):
        return
    try:
        thick, thin = part.field(first), part.field(last)
    except Stopped:
        return
    if thick is not None and thin is not None and compare("<", thick.usual, thin.usual):
        message = f"{part.title}: {first.name} is thinner than the last thickness"
        part.evaluator.troubles.add(message, part.place(first.name), f"{part.told(thin.usual)} or more")


def _roles(
    part: PartSource, fields: dict[str, Any], numbers: dict[str, Interval], figures: dict[str, Figure]
) -> tuple[dict[str, tuple[Any, ...]], dict[str, tuple[str, ...]]]:
    """What each role is played by: an item, a part by its name, a word, a number; and by which field."""
    found: dict[str, tuple[Any, ...]] = {}
    played: dict[str, tuple[str, ...]] = {}
    for owner in part.kind.names.values():
        role = getattr(owner, "role", "")
        if not role:
            continue
        value: Any = None
        if isinstance(owner, FigureSpec):
            value = figures[owner.name].value if owner.name in figures else None
        elif isinstance(owner, Aside):
            value = numbers.get(owner.name)
        else:
            value = fields.get(owner.attribute)
            value = numbers.get(owner.attribute, value.name if isinstance(value, Neighbour) else value)
        if value is not None:
            found[role] = (*found.get(role, ()), value)
            played[role] = (*played.get(role, ()), owner.name)
    mass = part.kind.with_role("clay mass")
    if isinstance(mass, FigureSpec) and not (mass.name in figures or not mass.when):
        for role in ("rolled first", "rolled to"):  # what takes no clay of its own is not rolled
            found.pop(role, None)
            played.pop(role, None)
    if part.kind.closes:
        found["closes"] = (True,)
    return found, played


def _each(part: PartSource, specs: Any, make: Any) -> Iterator[Any]:  # noqa: ANN401 - any of the lists of a kind
    for spec in specs:
        try:
            if not spec.when or holds(part.kind.texts.conditions[spec.when], part):
                yield make(spec)
        except Stopped:
            continue
        except CannotBe as fault:
            part.evaluator.troubles.add(f"{part.title}: {fault.message}", part.place(fault.field), fault.help)


def _size(part: PartSource, one: SizeSpec, figures: dict[str, Figure]) -> BenchSize:
    if one.figure not in figures:
        raise Stopped
    made = figures[one.figure]
    aim = made.printed  # what is made is one size, also where it may come out as one of several
    if made.unit == "mm" and made.rounding == "fine" and not made.value.exact:
        aim = part.evaluator.rounder.length(made.value.usual)
    return BenchSize(
        part.say(one.label),
        one.figure,
        aim,
        _optional(part, one.finished),
        _optional(part, one.fires),
        part.say(one.tool),
        one.counted,
    )  # fmt: skip


def _optional(part: PartSource, text: str) -> Interval | None:
    """A number; none where its text is the name of what is not given."""
    if not text or (text in part.kind.names and not part.given(text)):
        return None
    return part.number(text).interval


def _take(part: PartSource, one: TakeSpec) -> Take:
    """In the unit that stock counts the item in."""
    owner = part.kind.names.get(one.item)
    item = part.field(owner) if owner is not None else None
    if not isinstance(item, Item):
        raise Stopped
    text, told = one.amount, part.kind.texts.units[one.amount] or "piece"
    if item.unit == "g" and told != "g" and one.grams:
        text, told = one.grams, "g"
    if item.unit != told:
        counted, taken = (counted_in(unit) for unit in (item.unit, told))
        field = str(owner.name) if isinstance(owner, Field) else ""
        message = f"{item.name} is counted {counted} in stock, and is taken here {taken}"
        raise CannotBe(message, f"give its pack {taken}, or take it {counted}", field)
    blank = tuple(part.number(side).high for side in one.blank) if one.blank else None
    return Take(
        item,
        part.number(text).interval,
        part.number(one.each).high if one.each else 0.0,
        (blank[0], blank[1]) if blank else None,
        part.number(one.spent).interval if one.spent else None,
    )


def _tools(part: PartSource) -> Iterator[tuple[str, float]]:
    for one in part.kind.tools:
        try:
            if one.when and not holds(part.kind.texts.conditions[one.when], part):
                continue
            if one.each:
                entries = part.series(one.each)
                yield from (
                    (one.kind, size)
                    for size in sorted({e.cases(one.size).usual for e in entries if e.true(f"{one.each}.degrees")})
                )
                continue
            size = part.number(one.size).usual
            if one.given and part.given(one.given):
                _owned(part, one.kind, size, one.given)
            if one.within:
                near = min(part.owned(one.kind), key=lambda s: abs(s - size), default=None)
                if near is not None and abs(near - size) <= part.number(one.within).usual + GRAIN:
                    yield one.kind, near
                continue
            yield one.kind, size
        except (Stopped, CannotBe):  # told where the figure was worked
            continue


def _owned(part: PartSource, kind: str, size: float, field: str) -> None:
    """A tool given by its size is in the drawer, when the stock lists any of its kind."""
    owned = part.owned(kind)
    if owned and all(abs(size - one) > GRAIN for one in owned):
        near = " and ".join(part.told(one) for one in beside(owned, size))
        message = f"{part.title}: {part.kind.names[field].name} of {part.told(size)} is not in the drawer"
        part.evaluator.troubles.add(message, part.place(field), f"the nearest owned: {near}; or add to stock")


def _deep(part: PartSource, numbers: dict[str, Interval]) -> Interval | None:
    """How thick the clay is where it is thickest: what the kind says, or what it is rolled to."""
    if part.kind.dries:
        try:
            return part.number(part.kind.dries).interval
        except (Stopped, CannotBe):
            return None
    rolled = part.kind.with_role("rolled to")
    return numbers.get(rolled.attribute) if isinstance(rolled, Field) else None


def _with_flat(piece: Piece, evaluator: Evaluator) -> Piece:
    """Its template, from its figures; none where one of them could not be worked."""
    kind = evaluator.library.kinds[piece.kind]
    if kind.flat is None:
        return piece
    try:
        return replace(piece, flat=tuple(kind.flat(piece)))
    except Misplaced as fault:
        evaluator.troubles.extend([fault.trouble])
        return piece
    except KeyError:
        if not evaluator.troubles.errors:
            raise
        return piece


def _with_drilled(piece: Piece, found: dict[str, Piece], evaluator: Evaluator) -> Piece:
    """The holes or seats of it, as they lie on the template of the part that it is drilled in."""
    kind = evaluator.library.kinds[piece.kind]
    host = found.get(next(iter(piece.roles.get("drilled in", ())), ""))
    if kind.drilled is None or host is None or not host.flat:
        return piece
    try:
        return replace(piece, drilled=tuple(kind.drilled(piece, host.flat[0].extent)))
    except KeyError:
        if not evaluator.troubles.errors:
            raise
        return piece
