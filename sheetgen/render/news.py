"""What each revision of a design changed, in a sentence, from its ledgers: for the feed."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import TYPE_CHECKING

from sheetgen.base.frozen import Frozen
from sheetgen.render.changes_told import moved_told

if TYPE_CHECKING:
    from collections.abc import Iterable

    from sheetgen.model.ledger import Ledger

FIRST = "First published here."
WORDS = "No printed number has moved."


def news(now: Ledger, kept: Iterable[Ledger]) -> list[list[str]]:
    """Each revision with its date and what it changed, the oldest first.

    Only what everybody may read: no number that the teacher's sheet alone prints, nothing of kits, and no price.
    """
    known = {one.revision: one for one in (now, *kept)}  # of the present one as it was published
    each = [_for_all(one) for one in sorted(known.values(), key=lambda one: one.order)]
    told = [FIRST, *(_sentence(moved_told(was, one)) for was, one in pairwise(each))]
    return [[one.revision, one.date, words] for one, words in zip(each, told, strict=True)]


def _sentence(told: str) -> str:
    return f"{told[:1].upper()}{told[1:]}." if told else WORDS


def _for_all(ledger: Ledger) -> Ledger:
    versions = tuple(replace(one.of_the_maker, kits=Frozen()) for one in ledger.versions)
    return replace(ledger, versions=versions, prices=None)
