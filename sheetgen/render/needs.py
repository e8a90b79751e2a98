"""What is needed: what is used up with what to have of it, tools by their place at the bench, and what a kit holds."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.material import Clay, Sheet, Tool, Wire
from sheetgen.base.printed import NBSP
from sheetgen.facts.bench import TOOL_GROUPS
from sheetgen.model.amounts import amounts
from sheetgen.model.tool_told import tool_told
from sheetgen.model.view import Bag, Html, Need, Tools
from sheetgen.model.worn import worn
from sheetgen.render.like_needs import gathered
from sheetgen.render.words import kept

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.material import Item
    from sheetgen.base.rounding import Rounder
    from sheetgen.model.drawing import Drawings
    from sheetgen.model.numbers import Numbers
    from sheetgen.model.packed import Packed
    from sheetgen.model.worked import MaterialLine, ToolLine, WorkedVersion
    from sheetgen.render.marks import Marks

CLAY_BENCH, WIRE, KILN, FINISHING, SAFETY = TOOL_GROUPS
OTHERWISE = {
    "kiln": KILN, "torch": KILN, "firing box": KILN, "abrasive": FINISHING, "wheel": FINISHING, "tumbler": FINISHING,
    "protection": SAFETY, "gloves": SAFETY,
}  # fmt: skip
"""Where a tool lies by what it acts as, where stock does not say it."""
BOX = "In the box"
IN_DRAWER = (Clay, Wire, Sheet)
"""Of what is used up, that of which a drawer has some or none; what else there is, is chosen for a design."""


def place_of(tool: Item, *, of_clay: bool) -> str:
    """Where a tool lies: as stock says it, by what it acts as, or at the bench of a piece of clay or of wire."""
    if isinstance(tool, Tool) and tool.group:
        return tool.group
    acts = (OTHERWISE[word] for word in tool.acts_as if word in OTHERWISE)
    return next(acts, CLAY_BENCH if of_clay else WIRE)


def named(item: Item, rounder: Rounder) -> tuple[str, str]:
    """An item's name and the rest of it; of wire its thickness in mm, the gauge behind it."""
    name, _, rest = item.name.partition(", ")
    if not isinstance(item, Wire):
        return name, rest
    thick = rounder.words(round(item.thickness, 1), "mm", "fine")
    gauge = [said for said in rest.split(", ") if said.split()[-1] in {"AWG", "SWG"}]
    other = [said for said in rest.split(", ") if said not in gauge and not said.endswith(" mm")]
    return name, ", ".join([*other, f"{thick}{NBSP}{rounder.unit('mm')}{''.join(f' ({one})' for one in gauge)}"])


class Needs:
    """What one version needs, and what of that is `packed` in a kit."""

    def __init__(
        self, version: WorkedVersion, drawings: Drawings, numbers: Numbers, marks: Marks, packed: Packed
    ) -> None:
        self.version, self.drawings, self.numbers, self.marks, self.packed = version, drawings, numbers, marks, packed
        self.rounder = numbers.rounder

    def materials(self) -> Iterator[Need]:
        """What comes from the bench: what has an amount in the order it comes to hand, then what is taken as needed."""
        for line in sorted(self.packed.bench, key=lambda line: line.net is None):
            amount, used = self._amount(line, 1)
            yield self._need(line.item, amount, used, "what to have of")

    def bags(self) -> Iterator[Bag]:
        """What lies in a kit: bag by bag, and in its box the tools."""
        for bag in self.packed.bags:
            lots = (self._need(lot.item, lot.amount, "", "what the kit holds of") for lot in bag.lots)
            yield Bag(bag.name, gathered(lots))
        if self.packed.box:
            yield Bag(BOX, tuple(Need(self._tool(line), "", Html("")) for line in self.packed.box))

    def _need(self, item: Item, amount: str, used: str, what: str) -> Need:
        name, detail = named(item, self.rounder)
        detail = "; ".join(one for one in (detail, used) if one)
        told = Html(self.marks.number(amount, f"{what} {item.name}") if amount else "")
        return Need(name, detail, told, own=item.name if isinstance(item, IN_DRAWER) else "")

    def of_class(self, people: int) -> Iterator[Need]:
        """What to have in one pot for several people, each of whom makes what the sheet makes; they roll together."""
        for line in self.version.materials:
            # how its pieces lie on a roll, several side by side, is for the list of what is cut
            amount, used = self._amount(replace(line, blanks=line.blanks or line.off_roll), people)
            if amount:
                name, _, rest = line.item.name.partition(", ")
                yield Need(name, "; ".join(one for one in (rest, used) if one), Html(kept(amount)))

    def _amount(self, line: MaterialLine, people: int) -> tuple[str, str]:
        """What to have, and of clay, which is the dear one, what is used where that is less."""
        told = amounts(line, self.drawings.slabs, self.rounder, people)
        if told is None:
            return "", ""
        less = isinstance(line.item, Clay) and told.back
        return told.listed, f"about {told.used.told} is used" if less else ""

    def tools(self) -> Iterator[Tools]:
        """The tools from the bench by their place, and under safety what the cautions tell to wear or to have."""
        of_clay = any(isinstance(one.item, Clay) for one in self.version.materials)
        found: dict[str, list[tuple[str, str]]] = {place: [] for place in TOOL_GROUPS}
        for line in self.packed.tools:
            found[place_of(line.item, of_clay=of_clay)].append((self._tool(line), line.item.name))
        found[SAFETY] += [(name, "") for name in worn(self.version)]
        # a heading sends nobody to the clay or to the kiln where the piece has no clay
        said = {} if of_clay else {CLAY_BENCH: "bench", KILN: "fire"}
        yield from (Tools(said.get(place, place), *zip(*each, strict=True)) for place, each in found.items() if each)

    def _tool(self, line: ToolLine) -> str:
        return tool_told(line.item, line.sizes, self.rounder)
