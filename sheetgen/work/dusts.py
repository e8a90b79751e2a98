"""Dust of the fire, called by what a version uses: nobody is told of a plug that there is not."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.spelling import begun, in_a_sentence
from sheetgen.facts.cautions import CAUTIONS
from sheetgen.facts.joints import DUSTS_OF_THE_FIRE, FIBRE, FIBRE_IS, TIP, Dust

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from sheetgen.base.material import Item
    from sheetgen.model.project import Caution
    from sheetgen.model.worked import WorkedStep

FIBRE_DUST = "fibre dust"


def called(steps: Sequence[WorkedStep]) -> list[WorkedStep]:
    """The steps of one version, whose dust of the fire is called in full by all that gives it, in short by the step's.

    A caution in words of the studio's own stays as it is, and so does one that is written where nothing gives dust.
    """
    every = _dusts(item for step in steps for item in step.uses)
    return [
        replace(step, cautions=tuple(_named(c, every, _dusts(step.uses) or every) for c in step.cautions))
        for step in steps
    ]


def _named(caution: Caution, every: Sequence[Dust], here: Sequence[Dust]) -> Caution:
    if caution.id != FIBRE_DUST or caution.hazard != CAUTIONS[FIBRE_DUST].hazard or not every:
        return caution
    names = [one.name for one in every]
    tipped = [one.tipped for one in every if one.tipped]
    handled = [FIBRE_IS] * (FIBRE in every) + [TIP.format(_listed(tipped))] * bool(tipped)
    return replace(
        caution,
        hazard=f"Dust of {_listed(names)}.",
        short=f"{begun(', '.join(one.name for one in here))}: mask",
        joined=(", ".join(names), begun("; ".join(handled)) + "." * bool(handled)),
    )


def _dusts(items: Iterable[Item]) -> list[Dust]:
    """What gives dust of the fire among some items, each once, as the facts order it; then others."""
    found = dict.fromkeys(_dust(item) for item in _dusty(items))
    order = list(DUSTS_OF_THE_FIRE)
    return sorted(found, key=lambda one: order.index(one) if one in order else len(order))


def _dusty(items: Iterable[Item]) -> Iterator[Item]:
    yield from (one for one in items if FIBRE_DUST in one.cautions or (one.acts("support") and not one.cautions))


def _dust(item: Item) -> Dust:
    known = next((one for one in DUSTS_OF_THE_FIRE if item.acts(one.acts)), None)
    return known or Dust("", in_a_sentence(item.name.partition(",")[0]))


def _listed(words: Sequence[str]) -> str:
    return " and ".join(one for one in (", ".join(words[:-1]), *words[-1:]) if one)
