"""What stock says of an item at the bench: what it acts as, what metal it is, and what it bears."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

from sheetgen.base.dimension import TEMPERATURE
from sheetgen.base.place import Word
from sheetgen.base.spelling import suggest
from sheetgen.facts.bench import ACTS, BEARS
from sheetgen.facts.metals import METALS, named

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.model.stock import WrittenItem
    from sheetgen.read.measures import Measures

HEATS = ("kiln", "torch")  # borne up to a temperature
HARD = ("hard", "half hard")  # what heat takes away
TEMPERS = (*HARD, "soft")


def at_the_bench(written: WrittenItem, measures: Measures) -> dict[str, Any]:
    """What an item is made with: `acts_as`, `metal`, `coated`, `hard`, `bears`; troubles are noted."""
    troubles = measures.troubles
    for word in written.acts_as:
        if word not in ACTS:
            troubles.add(f"an item cannot act as '{word}'", word.place, suggest(word, ACTS))
    if written.metal is not None and written.metal not in METALS:
        # Never a guess: one alloy for another is a melted piece.
        helped = f"one of: {named()}; of another alloy leave it out, and say what it bears, such as kiln: to 750 °C"
        troubles.add(f"'{written.metal}' is not a metal that is known", written.metal.place, helped)
    if written.temper is not None and written.temper not in TEMPERS:
        troubles.add(f"a temper cannot be '{written.temper}'", written.temper.place, ", ".join(TEMPERS))
    return {
        "acts_as": tuple(map(str, written.acts_as)),
        "metal": str(written.metal or ""),
        "coated": str(written.coated_with or ""),
        "hard": written.temper in HARD,
        "bears": tuple(_bears(written, measures)),
    }


def _bears(written: WrittenItem, measures: Measures) -> Iterator[tuple[str, float]]:
    for name in BEARS:
        word: Word | None = getattr(written, name)
        if word is None:
            continue
        if word in {"yes", "no"}:
            yield name, math.inf if word == "yes" else 0.0
        elif name in HEATS and word.startswith("to "):
            limit = Word(word[3:], word.place_of(3, len(word) - 3))
            found = measures.interval(limit, TEMPERATURE, above=20, most=1300, name=f"what it bears of {BEARS[name]}")
            if found:
                yield name, found.usual
        else:
            helped = "write yes, no, or to 900 °C" if name in HEATS else "write yes or no"
            measures.troubles.add(f"'{name}' cannot be '{word}'", word.place, helped)


def unsourced(written: WrittenItem) -> Iterator[str]:
    """What an item is said to bear without a word of where that comes from; that it does not bear it is safe."""
    for name in BEARS:
        word = getattr(written, name)
        if word is not None and word != "no" and not any(key in {name, "all"} for key in written.sources):
            yield name
