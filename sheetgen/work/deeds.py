"""What a step does, in the words of the trade: as it says itself, and what firing, wait and tools make plain."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.material import Adhesive
from sheetgen.base.spelling import plain, suggest
from sheetgen.facts.bench import DOES, HEATS
from sheetgen.work.gestures import of_parts

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.base.material import Item
    from sheetgen.model.project import Step
    from sheetgen.work.evaluator import Evaluator

WETS = {"join", "close", "fill"}
FIXES = {"set", "glue", "string", "hang", "take off"}
COVERS = {
    "join": WETS, "fill": WETS, "heat": {*HEATS}, "glue": FIXES, "patinate": {"patinate", "polish"},
    "rinse": {"rinse", "quench", "cool"},
}  # fmt: skip
"""What a step says itself makes these plain already: any of its words will do."""


def deeds(step: Step, evaluator: Evaluator, parts: Sequence[str], uses: Sequence[Item]) -> tuple[str, ...]:
    """Its own words in their order, then what is plain and not said."""
    said = []
    for word in step.does:
        if word in DOES:
            said.append(str(word))
        else:
            evaluator.troubles.add(f"a step does not '{word}'", word.place, _ours(word))
    if "fire" in said and step.firing is None:
        place = next(word.place for word in step.does if word == "fire")
        evaluator.troubles.add("a step that fires does not say what", place, "firing: and the clay")
    found = [one for one in _plain(step, parts, uses) if not COVERS.get(one, {one}).intersection(said)]
    if "dry" in found and "test" in said:  # it is dry that is tested
        said.insert(said.index("test"), "dry")
    return tuple(dict.fromkeys([*said, *found]))


def _ours(word: str) -> str:
    """What to write for a word of the trade that is none of ours."""
    said = plain(word.lower()).replace("_", " ")
    found = next((ours for ours, others in OTHER_WORDS.items() if said in others.split(", ")), "")
    if found:
        return f"write {found}: {DOES[found]}"
    if said in SHAPES:
        return "leave it out: what is shaped is told by its kind; write stretch where it is bent after the fire"
    return suggest(word, DOES)


def _plain(step: Step, parts: Sequence[str], uses: Sequence[Item]) -> Iterator[str]:
    """What firing, wait and uses make plain, in the order in which a bench does it."""

    def used(*words: str) -> bool:
        return any(item.acts(*words) for item in uses)

    worked = parts or of_parts(step.diagram)
    if used("slip", "paste for fired metal") and worked:
        yield "join" if len(worked) > 1 else "fill"
    if used("drill"):
        yield "drill"
    if step.wait == "drying":
        yield "dry"
    if used("dry test"):
        yield "test"
    if step.firing is not None:
        if any(isinstance(item, Adhesive) for item in uses):
            yield "glue"  # what is named where it is fired goes into the fire
        yield "fire"
    elif used("torch"):
        yield "solder" if used("solder") else "heat"
    yield from (deed for word, deed in PLAIN.items() if used(word))
    if used("water") and not used("torch"):  # beside a torch it may only be at hand
        yield "rinse"
    if any(isinstance(item, Adhesive) for item in uses):
        yield "glue"
    if step.opened_at is not None:
        yield "open"
    if step.wait == "curing":
        yield "cure"


PLAIN = {"pickle": "pickle", "sulphide": "patinate", "tumbler": "tumble", "wheel": "polish", "solvent": "degrease"}
"""What is done with a thing that has one use."""

OTHER_WORDS = {
    "join": "attach, slip, fix on, assemble",
    "fill": "mend, patch, repair, fill in",
    "test": "check, mirror, weigh",
    "refine": "sand, file, smooth, grind, clean up, deburr",
    "fire": "sinter, kiln, bake",
    "heat": "anneal, ball, ball up, melt, torch, fuse",
    "solder": "braze, flux",
    "cool": "air cool, leave, wait",
    "rinse": "wash, clean, scrub, neutralise",
    "polish": "buff, burnish, brush, shine",
    "harden": "hammer, forge, planish, work harden, flatten",
    "patinate": "oxidise, darken, blacken, colour, patina",
    "degrease": "wipe, wipe down",
    "set": "mount, bezel set, rub over",
    "glue": "stick, bond",
    "string": "thread, knot, crimp",
    "hang": "attach rings, link, connect",
    "take off": "remove, take out",
    "close": "seal, shut",
}
"""Other words of the trade for what a step does, by ours."""
SHAPES = {"cut", "roll", "bend", "shape", "form", "texture", "saw", "wind", "wrap", "dome", "coil", "mark", "twist"}
"""What needs no word: no rule hangs on it."""
