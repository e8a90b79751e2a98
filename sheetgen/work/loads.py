"""Loading the kiln: how many pieces go on its shelves, how many into the box of carbon, and how often it is fired.

Each part is laid down by itself, as it was cut and formed and before it shrinks: what is joined takes less room.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from sheetgen.base.interval import GRAIN, ceil, floor
from sheetgen.base.material import Clay, Consumable, Tool
from sheetgen.base.measure import measure
from sheetgen.base.packing import packed
from sheetgen.base.room import Room
from sheetgen.base.tree import number as working_number
from sheetgen.facts.kiln import APART, BED_DEPTH, SHELF
from sheetgen.model.worked import Load
from sheetgen.work.firing import kiln_of

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from sheetgen.base.material import Item
    from sheetgen.base.place import Place
    from sheetgen.parts.piece import Piece
    from sheetgen.work.evaluator import Evaluator

MOST_PIECES = 400  # beyond these nobody's class fires, and the search for room would take its time
TRIALS = 60  # of orders in which they are laid down
CUBIC = 1000  # mm³ in a mL
Laid = Sequence[tuple[str, Room, int]]
"""What pieces are called, what one takes up, how many."""


class Loading:
    """One firing of one clay being loaded."""

    def __init__(self, clay: Clay, uses: Sequence[Item], place: Place, evaluator: Evaluator) -> None:
        """`uses` are the kiln, box and carbon of its step, which stands at `place`."""
        self.clay, self.uses, self.place, self.evaluator = clay, uses, place, evaluator
        self.kiln = kiln_of(uses, evaluator)

    def loads(
        self, parts: Mapping[str, Piece], named: Sequence[str], makers: int = 1, beside: Laid = ()
    ) -> tuple[Load, ...]:
        """One for the shelves and one for carbon, as the clay's program wants them; none where stock is silent.

        Of so many makers all pieces are laid down together, and with those of other designs that are `beside` them:
        what a shelf has room for goes on it, whosever it is.
        """
        laid = self.laid(parts, named, makers)
        if not laid:
            return ()
        laid = [*laid, *beside]
        phases = dict.fromkeys(phase.in_carbon for phase in self.clay.firing)
        found = (self._boxed(laid) if boxed else self._shelved(laid) for boxed in phases)
        return tuple(load for load in found if load is not None)

    def laid(self, parts: Mapping[str, Piece], named: Sequence[str], makers: int) -> Laid:
        """The pieces of the clay, of the parts named or of all; nothing where the room of one is not known."""
        found: list[tuple[str, Room, int]] = []
        for part in parts.values():
            if part.clay != self.clay or "clay mass" not in part.roles or (named and part.name not in named):
                continue
            if not part.rooms:
                return []
            found += [(part.title, room, part.count * makers) for room in part.rooms]
        return found

    def _shelved(self, laid: Laid) -> Load | None:
        """On as many shelves as the kiln holds over each other, none of the pieces touching."""
        if self.kiln is None or self.kiln.chamber is None:
            return None
        chamber = self.kiln.chamber
        wide, deep = self.kiln.shelf or (chamber.wide, chamber.deep)
        most, one = chamber.high - SHELF, self.kiln.shelf_gap or chamber.high - SHELF
        lying = [_lying(room, Room(wide, deep, one)) or _lying(room, Room(wide, deep, most)) for _, room, _ in laid]
        if self._too_large(laid, lying, f"on a shelf of {self.kiln.name}"):
            return None
        tallest = max(room.high for room in lying if room)
        shelves = max(1, floor(chamber.high / (one + SHELF))) if tallest <= one + GRAIN else 1
        if (pieces := _pieces(laid)) > MOST_PIECES:
            return None
        filled = _filled(laid, lying, (wide, deep), float(APART))
        return Load(pieces, max(filled), len(filled), ceil(len(filled) / shelves))

    def _boxed(self, laid: Laid) -> Load | None:
        """In carbon, one layer, with a bed of it under, over, beside and between the pieces; one box to a load."""
        box = next((tool for tool in self.uses if isinstance(tool, Tool) and tool.inside is not None), None)
        if box is None or box.inside is None:
            return None
        chamber = self.kiln.chamber if self.kiln else None
        if self.kiln and chamber and any(a > b for a, b in zip(box.inside.sides, chamber.sides, strict=True)):
            told = f"{box.name} does not go into {self.kiln.name}, whose chamber is smaller"
            self.evaluator.troubles.add(told, self.place, "a smaller box in stock")
            return None
        bed = self._bed()
        inside = Room(*(side - 2 * bed for side in (box.inside.wide, box.inside.deep, box.inside.high)))
        lying = [_lying(room, inside) for _, room, _ in laid]
        where = f"into {box.name} with {self.evaluator.told(bed)} of carbon all round"
        if self._too_large(laid, lying, where):
            return None
        if (pieces := _pieces(laid)) > MOST_PIECES:
            return None
        filled = _filled(laid, lying, (inside.wide, inside.deep), bed)
        sides = (box.inside.wide, box.inside.deep, max(room.high for room in lying if room) + 2 * bed)
        return Load(
            pieces,
            max(filled),
            len(filled),
            len(filled),
            boxed=True,
            carbon=sides[0] * sides[1] * sides[2] / CUBIC,
            working=f"{' × '.join(map(working_number, sides))} ÷ {CUBIC}",
            fill=next((item for item in self.uses if isinstance(item, Consumable) and item.acts("carbon")), None),
        )

    def _bed(self) -> float:
        """How deep the carbon lies all round, mm: by the clay's maker, by the studio, or as is common practice."""
        makers = [phase.bed_depth for phase in self.clay.firing if phase.in_carbon and phase.bed_depth]
        studio = self.evaluator.library.studio.bed_depth
        return max(makers, default=measure(studio).value.usual if studio is not None else float(BED_DEPTH))

    def _too_large(self, laid: Laid, lying: Sequence[Room | None], where: str) -> bool:
        """Whether a piece does not go in whichever way it is laid: told once for each part."""
        too_large: dict[str, Room] = {}
        for (name, room, _), found in zip(laid, lying, strict=True):
            if found is None:
                too_large.setdefault(name, room)
        for name, room in too_large.items():
            told = " × ".join(map(self.evaluator.told, (room.wide, room.deep, room.high)))
            helped = "a larger one in stock, or a smaller piece"
            self.evaluator.troubles.add(f"{name}, {told} before it is fired, does not go {where}", self.place, helped)
        return bool(too_large)


def _lying(room: Room, within: Room) -> Room | None:
    """A piece as it stands, or laid on another side, so that it goes in; None where it does not."""
    for wide, deep, high in (
        (room.wide, room.deep, room.high), (room.wide, room.high, room.deep), (room.deep, room.high, room.wide),
    ):  # fmt: skip
        flat = max(wide, deep) <= max(within.wide, within.deep) + GRAIN
        if flat and min(wide, deep) <= min(within.wide, within.deep) + GRAIN and high <= within.high + GRAIN:
            return Room(wide, deep, high)
    return None


def _pieces(laid: Laid) -> int:
    return sum(many for _, _, many in laid)


def _filled(laid: Laid, lying: Sequence[Room | None], room: tuple[float, float], apart: float) -> list[int]:
    """How many pieces lie in each place, so far apart; at its edge nothing has to be."""
    pairs = zip(laid, lying, strict=True)
    sides = [(one.wide + apart, one.deep + apart) for (_, _, many), one in pairs if one for _ in range(many)]
    within = (room[0] + apart, room[1] + apart)
    places = packed(tuple(sides), within, turn=True)
    if len(places) > 1:  # where all lie in one place it does not matter how
        places = packed(tuple(sides), within, turn=True, trials=TRIALS)
    return [len(place) for place in places]


def carbon(steps: Iterable[tuple[Load, ...]]) -> Iterator[tuple[Item, float, str]]:
    """The carbon that the boxes are filled with: item, amount in its unit, working. It is used again and again."""
    most: dict[str, Load] = {}
    for load in (one for each in steps for one in each):
        if load.fill is not None and load.carbon > most.get(load.fill.id, load).carbon - GRAIN:
            most[load.fill.id] = load
    for load in most.values():
        item = load.fill
        if item is not None and item.unit == "mL":
            yield item, load.carbon, load.working
        elif isinstance(item, Consumable) and item.unit == "g" and item.bulk_density:
            yield item, load.carbon * item.bulk_density, f"{load.working} × {working_number(item.bulk_density)}"
