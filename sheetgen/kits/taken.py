"""What a run takes of an item, kind of bag by kind of bag: plain values, exact, in the item's unit."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING, Literal

from sheetgen.base.exact import plain
from sheetgen.base.spelling import in_a_sentence, told_apart

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.material import Item
    from sheetgen.base.rounding import Rounder
    from sheetgen.base.supply import Pack
    from sheetgen.kits.cutting import Wanted
    from sheetgen.model.kit import Colourway
    from sheetgen.model.worked import Worked, WorkedVersion

BAG = "bag "
Way = Literal["bags", "sealed", "cut", "blanks", "pot", "as needed"]


@dataclass(frozen=True, slots=True)
class Kits:
    """So many kits of one kind, all alike: a version of a design.

    `choices` are those that differ from the version's own, as they are ordered. `leave_out` and `only` are items by
    their names in stock, of a mix its colours: what the order does without, or all that is sent. What the design itself
    leaves out is not repeated. What is `posted` is what lies in the bags, and nothing beside them. `loads` is how often
    the kiln is fired for all of these at once; None: each is fired by itself.
    """

    worked: Worked
    version: WorkedVersion
    bags: int
    choices: tuple[tuple[str, str], ...] = ()
    colourway: Colourway | None = None
    leave_out: frozenset[str] = frozenset()
    only: frozenset[str] = frozenset()
    posted: bool = False
    loads: int | None = None

    @property
    def design(self) -> str:
        """The title of the design."""
        return self.worked.title

    @property
    def rounder(self) -> Rounder:
        """How the studio prints its numbers."""
        return self.worked.rounder

    @property
    def chosen(self) -> str:
        """What was chosen otherwise than in the version, in words; an item by its printed name."""
        used = [line.item for line in self.version.materials] + [line.item for line in self.version.tools]
        names = {item.id: item.name for item in used}
        return ", ".join(_choice(name, value, names.get(value, "")) for name, value in self.choices)

    @property
    def otherwise(self) -> str:
        """The same behind a version, whose name may say the opposite: Wrist 160 mm, but wrist 165 mm."""
        return f"but {self.chosen}" if self.choices else ""

    @property
    def named(self) -> str:
        """Design, version, and what was chosen otherwise, as a tag says them."""
        way = self.colourway.name if self.colourway else ""
        return ", ".join(told for told in (self.design, self.version.title, self.otherwise, way) if told)

    @property
    def told(self) -> str:
        """The same, with what is left out, or all that is sent: what makes these kits unlike others."""
        without = f"without {' and '.join(self._parts(self.leave_out))}" if self.leave_out else ""
        return ", ".join(said for said in (self.named, without, self.alone) if said)

    @property
    def alone(self) -> str:
        """All that is sent, where a part is sent by itself: only bag A clay; only stones and wire."""
        return f"only {' and '.join(self._parts(self.only))}" if self.only else ""

    @property
    def bags_alone(self) -> str:
        """The bags that are sent by themselves: A clay; nothing where something is sent that is not a whole bag."""
        parts = list(self._parts(self.only))
        whole = all(part.startswith(BAG) for part in parts)
        return " and ".join(part.removeprefix(BAG) for part in parts) if whole else ""

    def _parts(self, ids: frozenset[str]) -> Iterator[str]:
        """Items as a person calls them: a bag where they are all that is in it, else by their printed names.

        Of a name as much as tells it from the others in the kit.
        """
        kit, way, rest = self.version.kit, self.colourway, set(ids)
        for bag in kit.bags if kit else ():
            inside = {item.id for item in bag.items}
            if way and way.of.id in inside:
                inside = inside - {way.of.id} | {item.id for item in way.items}
            if inside and inside <= rest:
                rest -= inside
                yield f"{BAG}{bag.name}"
        box = kit.in_the_box if kit else ()
        items = (*(line.item for line in self.version.materials), *(way.items if way else ()), *box)
        known = {item.id: item.name for item in items}
        yield from (
            in_a_sentence(told)
            for id_, told in zip(known, told_apart(list(known.values())), strict=True)
            if id_ in rest
        )

    @property
    def sheets(self) -> tuple[str, ...]:
        """The sheets that lie in one of these kits; none where a missing part is sent after."""
        flat = any(piece.flat for piece in self.version.parts.values())
        have = ("handout", "bench card", *(("templates",) if flat else ()))
        return () if self.only else tuple(sheet for sheet in have if sheet in self.worked.sheets)

    @property
    def firings(self) -> int:
        """How often the makers of these kits fire a kiln: each step that is fired, once for each of its loads."""
        if self.loads is not None:
            return self.loads
        steps = (max((load.loads for load in step.loads), default=1) for step in self.version.steps if step.firing)
        return self.bags * sum(steps)


def _choice(name: str, value: str, item: str) -> str:
    """A choice in words: size US 8; ring wire: copper wire (20 AWG, soft)."""
    first, _, rest = item.partition(", ")
    return f"{name}: {in_a_sentence(first)}{f' ({rest})' if rest else ''}" if item else f"{name} {value}"


@dataclass(frozen=True, slots=True)
class Held:
    """What one bag of a kind holds of an item; `unit` is the item's, or names a piece by its `sides`, mm.

    `why` says by what rule so much of it is to spare.
    """

    kits: Kits
    each: Fraction
    spare: Fraction
    unit: str
    sides: tuple[Fraction, Fraction] | None = None
    why: str = ""

    @property
    def together(self) -> Fraction:
        """What all bags of the kind hold."""
        return self.each * self.kits.bags


@dataclass(frozen=True, slots=True)
class Blank:
    """So many pieces of two sides, mm, and whose they are."""

    long: Fraction
    wide: Fraction
    many: int
    label: str

    @property
    def sides(self) -> str:
        """Its sides, as a list says them."""
        return f"{plain(self.long)} × {plain(self.wide)} mm"


@dataclass(frozen=True, slots=True)
class Taken:
    """Of one item: what each kind of bag holds, what the run takes, and by which way it is given out.

    `wanted` are the lengths to cut of it, `blanks` the pieces of sheet, `pack` the one that is given out sealed. It is
    `beside` what is taken of the same item by amount, for which the drawer goes: of that nothing is left for it.
    `exactly` is what is used as needed before it is rounded up to what can be counted out. `used` is what of it is left
    in the pieces, where the rest comes back; None where all is gone that is given out.
    """

    item: Item
    way: Way
    need: Fraction
    held: tuple[Held, ...] = ()
    wanted: tuple[Wanted, ...] = ()
    blanks: tuple[Blank, ...] = ()
    pack: Pack | None = None
    bags: int = 0
    beside: bool = False
    exactly: Fraction | None = None
    used: Fraction | None = None

    @property
    def have(self) -> Fraction:
        """What the drawer has for it."""
        return Fraction(0) if self.beside else self.item.supply.have
