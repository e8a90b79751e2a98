"""Shares of the whole as a till writes them, in per cent: markup, margin, tax, overhead and what it is of."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from sheetgen.base.dimension import COUNT
from sheetgen.base.exact import exact, percent, plain
from sheetgen.base.place import Word
from sheetgen.base.spelling import suggest
from sheetgen.model.till import PARTS

if TYPE_CHECKING:
    from fractions import Fraction

    from sheetgen.model.till import Part
    from sheetgen.read.measures import Measures

OF = re.compile(r"\s*(?P<share>[^%A-Za-z]*%)\s*(?:(?P<of>of)\s+(?P<parts>.*\S))?\s*")
OF_WHAT = "of labour, or of materials and labour?"
WHOLE, TWICE = 1, 2
MOST_TIMES = 10  # a bare number under it may be meant as a factor: 1.2 is 120 %


def share(word: Word | None, name: str, measures: Measures, most: int | None = None) -> Fraction | None:
    """A share written in per cent, 0 or more; under `most`, if that is given."""
    if word is None:
        return None
    found = measures.quantity(word)
    if found is None:
        return None
    value = exact(found.value.usual)
    if found.dimension != COUNT:
        measures.troubles.add(f"{name} is a share, and '{word}' is {found.dimension}", word.place, "such as 20 %")
    elif "%" not in word:
        ways = [f"{plain(value)} %", *([percent(value)] if value < (most or MOST_TIMES) else [])]
        told = f"'{word}' is written without its per cent sign"
        measures.troubles.add(told, word.place, f"write {', or '.join(ways)}")
    elif not found.value.exact:
        measures.troubles.add(f"{name} is one share, and '{word}' are several", word.place, "such as 20 %")
    elif value < 0:
        measures.troubles.add(f"{name} cannot be {word}", word.place, "0 % or more")
    elif most is not None and value >= most:
        measures.troubles.add(f"{name} cannot be {word}", word.place, f"less than {percent(most)}")
    else:
        return value
    return None


def margin(word: Word | None, measures: Measures) -> Fraction | None:
    """A share of the price."""
    found = share(word, "a margin", measures)
    if word is not None and found is not None and found >= WHOLE:
        told = f"a margin of {word} leaves nothing for the cost"
        measures.troubles.add(told, word.place, "less than 100 %; a markup may be more")
        return None
    return found


def tax(word: Word | None, measures: Measures) -> Fraction:
    """A rate that is added to a price; what was written as a factor is asked after."""
    found = None if word is None else measures.quantity(word)
    if word is None or found is None:
        return exact(0)
    rate = exact(found.value.usual)
    if found.dimension != COUNT or not found.value.exact or rate <= WHOLE or (rate >= TWICE and "%" not in word):
        return share(word, "a tax", measures, TWICE) or exact(0)
    added = "a rate that is added to the price"
    helped = f"{percent(rate - WHOLE)}? It is {added}" if rate < TWICE else f"{added}, such as 19 %"
    measures.troubles.add(f"a tax of {word}", word.place, helped)
    return exact(0)


def overhead(word: Word | None, measures: Measures) -> tuple[Fraction, tuple[Part, ...]]:
    """A share of parts of the cost: 15 % of materials and labour."""
    nothing: tuple[Fraction, tuple[Part, ...]] = exact(0), ()
    if word is None:
        return nothing
    match = OF.fullmatch(word)
    example = "write it as 15 % of labour, or 15 % of materials and labour"
    if match is None:
        measures.troubles.add(f"'{word}' is no overhead", word.place, example)
        return nothing
    found = share(Word(match["share"], word.place_of(0, len(match["share"]))), "an overhead", measures)
    if match["of"] is None:
        measures.troubles.add(f"an overhead of {match['share']}: of what?", word.place, OF_WHAT)
        return nothing
    named = [one.strip().removeprefix("and ").strip() for one in re.split(r",|\sand\s", match["parts"])]
    for one in named:
        if one not in PARTS:
            at = word.place_of(word.index(one, match.start("parts")), len(one))
            measures.troubles.add(f"an overhead is of {', '.join(PARTS)}, and not of '{one}'", at, suggest(one, PARTS))
    return found or exact(0), tuple(part for part in PARTS if part in named)
