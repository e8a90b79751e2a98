"""What a run takes of an item, kind of bag by kind of bag: plain values, exact, in the item's unit."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING, Literal

from sheetgen.base.exact import plain as told
from sheetgen.base.spelling import counted, plain
from sheetgen.kits.kind_called import BAG, choice, parts_told, still_holds

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.base.material import Item
    from sheetgen.base.rounding import Rounder
    from sheetgen.base.supply import Pack
    from sheetgen.kits.cutting import Wanted
    from sheetgen.model.kit import Colourway
    from sheetgen.model.worked import Worked, WorkedVersion

Bundle = tuple[tuple["Fraction", ...], str]
"""Pieces cut alike for the same bags: their length or two sides, mm, and whose they are."""
Way = Literal["bags", "sealed", "cut", "blanks", "pot", "as needed"]


@dataclass(frozen=True, slots=True)
class Kits:
    """So many kits of one kind, all alike: a version of a design.

    `choices` are those that differ from the version's own, as they are ordered, and `own` is what they are there.
    `leave_out` and `only` are items by their names in stock, of a mix its colours: what the order does without, or all
    that is sent. What the design itself leaves out is not repeated. What is `posted` is what lies in the bags, and
    nothing beside them. `loads` is how often the kiln is fired for all of these at once; None: each is fired by itself.
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
    own: tuple[tuple[str, str], ...] = ()

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
        return ", ".join(choice(name, value, names.get(value, "")) for name, value in self.choices)

    @property
    def called(self) -> str:
        """The version as every sheet, list and label calls it: Wrist 160 mm; wrist 165 mm (else as Copper).

        What was chosen stands first, and a size that it is not stands nowhere.
        """
        if not self.choices:
            return self.version.title
        rest = self._rest if len(self.worked.versions) > 1 else ""
        return f"{self.chosen} (else as {rest})" if rest else self.chosen

    @property
    def _rest(self) -> str:
        """What of the version's name still holds; all of it where else another version would be called the same.

        Broad ring, US 7 and Slim ring, US 7 in `ring` US 8: a part that has the choice's name in it may say its size,
        and is left out unless two bags would then bear one name.
        """
        rest, asked = still_holds(self.version.title, self.own), [plain(name) for name, _ in self.own]
        for one in self.worked.versions.values():
            own = [(name, str(value)) for name, value in one.choices.items() if plain(name) in asked]
            if _besides(one, asked) != _besides(self.version, asked) and still_holds(one.title, own) == rest:
                return self.version.title
        return rest

    @property
    def named(self) -> str:
        """Design, version, and the colours, as a tag says them."""
        way = self.colourway.name if self.colourway else ""
        return ", ".join(told for told in (self.design, self.called, way) if told)

    @property
    def told(self) -> str:
        """The same, with what is left out, or all that is sent: what makes these kits unlike others."""
        return ", ".join(said for said in (self.named, self._without, self.alone) if said)

    @property
    def unlike(self) -> str:
        """What makes them unlike others of the version, where that stands by itself: the choices first."""
        way = self.colourway.name if self.colourway else ""
        return ", ".join(said for said in (self.chosen, way, self._without, self.alone) if said)

    @property
    def _without(self) -> str:
        return f"without {' and '.join(parts_told(self, self.leave_out))}" if self.leave_out else ""

    @property
    def alone(self) -> str:
        """All that is sent, where a part is sent by itself: only bag A clay; only stones and wire."""
        return f"only {' and '.join(parts_told(self, self.only))}" if self.only else ""

    @property
    def bags_alone(self) -> str:
        """The bags that are sent by themselves: A clay; nothing where something is sent that is not a whole bag."""
        parts = list(parts_told(self, self.only))
        whole = all(part.startswith(BAG) for part in parts)
        return " and ".join(part.removeprefix(BAG) for part in parts) if whole else ""

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


def held_told(run: Sequence[Kits]) -> str:
    """How many a run is of, in words: 10 kits and 1 part of 9 kinds; 14 sets of 3 kinds."""
    noun = "kit" if any(one.posted for one in run) else "set"
    each = ((sum(one.bags for one in run if bool(one.only) is alone), alone) for alone in (False, True))
    held = " and ".join(counted(many, "part" if alone else noun) for many, alone in each if many)
    return f"{held} of {counted(len(run), 'kind')}"


def _besides(version: WorkedVersion, asked: Sequence[str]) -> dict[str, str]:
    """The other choices of a version."""
    return {plain(name): str(value) for name, value in version.choices.items() if plain(name) not in asked}


@dataclass(frozen=True, slots=True)
class Held:
    """What one bag of a kind holds of an item; `unit` is the item's, or names a piece by its `sides`, mm.

    `why` says by what rule so much of it is to spare. `bundle` is the one that it comes in from the cutting table: the
    length or the sides that its pieces are cut to, and whose they are.
    """

    kits: Kits
    each: Fraction
    spare: Fraction
    unit: str
    sides: tuple[Fraction, Fraction] | None = None
    why: str = ""
    bundle: Bundle | None = None

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
        return f"{told(self.long)} × {told(self.wide)} mm"


@dataclass(frozen=True, slots=True)
class Taken:
    """Of one item: what each kind of bag holds, what the run takes, and by which way it is given out.

    `wanted` are the lengths to cut of it, `blanks` the pieces of sheet, `pack` the one that is given out sealed. It is
    `beside` what is taken of the same item by amount, for which the drawer goes: of that nothing is left for it.
    `used` is what of it is left in the pieces, where the rest comes back; None where all is gone that is given out.
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
    used: Fraction | None = None

    @property
    def have(self) -> Fraction:
        """What the drawer has for it."""
        return Fraction(0) if self.beside else self.item.supply.have
