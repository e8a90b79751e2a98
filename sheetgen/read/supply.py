"""How an item of stock is bought, kept and given out: packs, shop, drawer, spares, each fault at its word."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import TYPE_CHECKING, Any

from sheetgen.base.dimension import LENGTH
from sheetgen.base.exact import exact
from sheetgen.base.spelling import suggest
from sheetgen.base.supply import ASK, DOES, GIVEN_OUT, GIVEN_OUT_BY_UNIT, Does, Spares, Supply
from sheetgen.read.packs import Counting, packs

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.base.place import Word
    from sheetgen.base.supply import Pack, Shop
    from sheetgen.model.stock import WrittenItem
    from sheetgen.read.measures import Measures
    from sheetgen.read.shops import Shops

MOST_CUT = 10  # mm: no saw is wider
SINGULAR = {"kit": "kits", "person": "people", "firing": "firings"}


def supply(written: WrittenItem, counting: Counting, shops: Shops, measures: Measures) -> Supply:
    """What stock says of all that; troubles are noted. `shops` is None where the studio's file is in trouble."""
    sold = packs(written, counting, measures)
    ends = tuple(_ends(written, counting, measures))
    return Supply(
        packs=sold,
        shop=_shop(written.shop, shops, measures),
        have=sum(ends, Fraction(0)),
        ends=tuple(end for end in ends if end) if counting.unit == "mm" else (),
        given_out=_given_out(written.given_out, counting, sold, measures),
        saw_cut=_by_length(written.saw_cut, "saw cut", counting, measures, most=MOST_CUT) or Fraction(0),
        keep_from=_keep_from(written.keep_ends_from, counting, sold, measures),
        spares=_spares(written, counting, measures),
        post=_post(written.post, measures),
        a_pack_does=_does(written, sold, measures),
    )


def _shop(word: Word | None, shops: Shops, measures: Measures) -> Shop | None:
    if word is None or shops is None:
        return None
    if word not in shops:
        helped = suggest(word, shops) if shops else f"add it to studio.yaml: shops: {{{word}: {{}}}}"
        measures.troubles.add(f"the studio knows no shop '{word}'", word.place, helped)
        return None
    return shops[str(word)]


def _ends(written: WrittenItem, counting: Counting, measures: Measures) -> Iterator[Fraction]:
    """What lies in the drawer: one amount, or of what is sold by length each length.

    Of what is used as needed a piece may be begun: half a pad, a fibre blanket for nine firings of ten.
    """
    troubles, begun = measures.troubles, written.a_pack_does is not None
    words = written.have
    if len(words) > 1 and counting.unit != "mm":
        told = f"several amounts are in the drawer, and only what is sold by length has ends; this is {counting.how}"
        troubles.add(told, words[1].place, "write how much there is together")
        return
    for word in words:
        found = counting.amount(word, measures, nothing=True, begun=begun)
        if found is not None and (found < 0 or (not found and len(words) > 1)):
            what, helped = ("an end", "more than 0 mm") if counting.unit == "mm" else ("what is there", "0 or more")
            troubles.add(f"{what} cannot be {word}", word.place, helped)
        elif found is not None:
            yield found


def _given_out(word: Word | None, counting: Counting, sold: Sequence[Pack], measures: Measures) -> str:
    usual = GIVEN_OUT_BY_UNIT[counting.unit]
    if word is None:
        return usual
    if word not in GIVEN_OUT:
        measures.troubles.add(f"nothing is given out '{word}'", word.place, suggest(word, GIVEN_OUT))
    elif counting.unit not in GIVEN_OUT[word]:
        fitting = [one for one, units in GIVEN_OUT.items() if counting.unit in units]
        told = f"it cannot be given out {word}: this is {counting.how}"
        measures.troubles.add(told, word.place, ", ".join(fitting))
    elif word == "sealed" and not sold:
        measures.troubles.add("it is given out sealed, and no pack is written", word.place, f"pack: {counting.example}")
    return str(word)


def _by_length(word: Word | None, name: str, counting: Counting, measures: Measures, **bounds: Any) -> Fraction | None:  # noqa: ANN401
    """A length that only what is sold by length has."""
    if word is None:
        return None
    if counting.unit != "mm":
        told = f"'{name}' is for what is sold by length, and this is {counting.how}"
        measures.troubles.add(told, word.place, "take it out")
        return None
    found = measures.interval(word, LENGTH, least=0, name=name, **bounds)
    return exact(found.usual) if found else None


def _keep_from(word: Word | None, counting: Counting, sold: Sequence[Pack], measures: Measures) -> Fraction | None:
    found = _by_length(word, "keep ends from", counting, measures)
    longest = max((pack.holds for pack in sold), default=None)
    if word is not None and found is not None and longest is not None and found > longest:
        told = f"'keep ends from' {word} is longer than the longest spool, {float(longest):g} mm"
        measures.troubles.add(told, word.place, "a shorter end, from which on it is of use")
        return None
    return found


def _spares(written: WrittenItem, counting: Counting, measures: Measures) -> Spares | None:
    word = written.spares
    if word is None:
        return None
    found = re.fullmatch(r"(\d{1,6}) +per +(\d{1,6})", word.strip(), re.ASCII)
    if found is None or not int(found[1]) or not int(found[2]):
        helped = "1 per 10: for each ten that are begun"
        if "%" in word:
            helped += f"; a share of all is its allowance: {word}"
        measures.troubles.add(f"spares cannot be '{word}'", word.place, helped)
        return None
    if counting.unit != "piece":
        told = f"spares are of what is counted, and this is {counting.how}"
        measures.troubles.add(told, word.place, "allowance: 5 %")
        return None
    if written.allowance is not None:
        told = f"spares and an allowance of {written.allowance} are both written: the larger of the two is taken"
        measures.troubles.add(told, word.place, "keep the one that you mean", "warning")
    return Spares(int(found[1]), int(found[2]))


def _post(word: Word | None, measures: Measures) -> str:
    if word is not None and word != ASK:
        helped = f"{ASK}, where the carrier and the local rules are to be asked; else take it out"
        measures.troubles.add(f"post cannot be '{word}'", word.place, helped)
    return str(word or "")


def _does(written: WrittenItem, sold: Sequence[Pack], measures: Measures) -> Does | None:
    word = written.a_pack_does
    if word is None:
        return None
    found = re.fullmatch(r"(\d{1,6}) +(\w+)", word.strip(), re.ASCII)
    of = SINGULAR.get(found[2], found[2]) if found else ""
    if found is None or of not in DOES or not int(found[1]):
        helped = "how many a pack is enough for: 40 kits, 12 people or 30 firings"
        measures.troubles.add(f"a pack cannot do '{word}'", word.place, helped)
        return None
    if not sold:
        told = "it says what 'a pack does', and no pack is written"
        measures.troubles.add(told, word.place, "add pack: and its price:")
        return None
    return Does(int(found[1]), of)
