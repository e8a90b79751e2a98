"""Tools of stock: their sizes, and of a kiln and a firing box how fast they are and what goes into them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from sheetgen.base.dimension import LENGTH, RATE
from sheetgen.base.material import TOOL_KINDS, Tool
from sheetgen.base.room import Room
from sheetgen.base.spelling import suggest
from sheetgen.facts.bench import TOOL_GROUPS
from sheetgen.read.measured import cooled
from sheetgen.read.programs import SLOWEST

if TYPE_CHECKING:
    from sheetgen.base.place import Word
    from sheetgen.model import stock as forms
    from sheetgen.read.programs import ProgramMaker

BY_KIND = ("kiln", "drill")  # kinds of tool that say what the tool acts as
MOST_OWNED = 1000
LARGEST = 2000  # mm: no studio's kiln is larger
OF_A_KILN = ("chamber_wide", "chamber_deep", "chamber_high", "shelf_wide", "shelf_deep", "shelf_gap")
OF_A_BOX = ("inside_wide", "inside_deep", "inside_high")


def tool(maker: ProgramMaker, key: Word, written: forms.WrittenTool, common: dict[str, Any]) -> Tool:
    """A tool of a stock file, what is wrong with it noted."""
    each = ((maker.number(word, LENGTH, above=0, name="a size"), " ".join(word.split())) for word in written.sizes)
    sizes = sorted((size, said) for size, said in each if size)
    if written.sizes and not written.kind:
        maker.troubles.add(f"'{key}' has sizes and no kind", key.place, "kind: former, drill, rod, …")
    if written.kind is not None and written.kind not in TOOL_KINDS:
        message = f"'{written.kind}' is not a kind of tool that sizes are chosen from"
        near = suggest(written.kind, TOOL_KINDS)
        maker.troubles.add(message, written.kind.place, f"{near}; a tool of another kind needs none")
    rate = (
        maker.measures.interval(written.full_rate, RATE, least=SLOWEST, name="full rate") if written.full_rate else None
    )
    cooling = cooled(written.cooling, maker.measures) if written.cooling else None
    if written.kind in BY_KIND and written.kind not in common["acts_as"]:
        common = common | {"acts_as": (*common["acts_as"], str(written.kind))}
    for names, word in ((OF_A_KILN, "kiln"), (OF_A_BOX, "firing box")):
        given = next((said for name in names if (said := getattr(written, name)) is not None), None)
        if given is not None and word not in common["acts_as"]:
            helped = "kind: kiln" if word == "kiln" else f"acts as: [{word}]"
            maker.troubles.add(f"'{key}' has the measures of a {word} and is none", given.place, helped)
    shelf = _measured(maker, written, ("shelf_wide", "shelf_deep"))
    chamber, inside = (_measured(maker, written, names) for names in (OF_A_KILN[:3], OF_A_BOX))
    _goes_in(maker, written, chamber, shelf)
    if written.group is not None and written.group not in TOOL_GROUPS:
        told = f"'{written.group}' is no group of tools"
        maker.troubles.add(told, written.group.place, suggest(written.group, TOOL_GROUPS))
    return Tool(
        **common,
        kind=str(written.kind or ""),
        group=str(written.group or ""),
        owned=_owned(maker, written),
        singular=str(written.singular or ""),
        sizes=tuple(size for size, _ in sizes),
        engraved=tuple(said for _, said in sizes),
        full_rate=rate,
        cooling=cooling,
        chamber=Room(*chamber) if chamber else None,
        shelf=(shelf[0], shelf[1]) if shelf else None,
        shelf_gap=maker.number(written.shelf_gap, LENGTH, above=0, most=LARGEST, name="shelf gap"),
        inside=Room(*inside) if inside else None,
    )


def _owned(maker: ProgramMaker, written: forms.WrittenTool) -> int:
    """How many there are; 0 where stock does not say, and everybody has one."""
    if written.owned is None:
        return 0
    if not written.owned.isdecimal() or not 0 < int(written.owned) <= MOST_OWNED:
        maker.troubles.add(f"'{written.owned}' is no number of tools", written.owned.place, "a whole number, such as 3")
        return 0
    return int(written.owned)


def _goes_in(
    maker: ProgramMaker, written: forms.WrittenTool, chamber: tuple[float, ...], shelf: tuple[float, ...]
) -> None:
    """A kiln's shelf lies in its chamber, whichever way it is turned, and a gap is no higher than it."""
    if not chamber:
        return
    sizes = zip(sorted(shelf), sorted(chamber[:2]), strict=False)
    if written.shelf_wide is not None and any(side > within for side, within in sizes):
        maker.troubles.add("the shelf is larger than the chamber", written.shelf_wide.place, "measure both again")
    gap = maker.number(written.shelf_gap, LENGTH)
    if written.shelf_gap is not None and gap is not None and gap >= chamber[2]:
        maker.troubles.add("the shelf gap is higher than the chamber", written.shelf_gap.place, "measure both again")


def _measured(maker: ProgramMaker, written: forms.WrittenTool, names: tuple[str, ...]) -> tuple[float, ...]:
    """Measures that belong together, all of them; nothing where none is given, or one is wrong or missing."""
    words = {name.replace("_", " "): getattr(written, name) for name in names}
    given = [word for word in words.values() if word is not None]
    found = [maker.number(word, LENGTH, above=0, most=LARGEST, name=name) for name, word in words.items()]
    if given and len(given) < len(names):
        missing = " and ".join(name for name, word in words.items() if word is None)
        told = f"{' and '.join(name for name, word in words.items() if word)} without {missing}"
        maker.troubles.add(told, given[0].place, f"add {missing}")
    measured = tuple(one for one in found if one)
    return measured if len(measured) == len(names) else ()
