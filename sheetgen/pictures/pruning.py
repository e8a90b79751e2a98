"""What of a drawing nothing leads to, and what leads nowhere, taken out of it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.pictures.allowed import COPIED, GRADIENTS, POINTS_AT
from sheetgen.pictures.element import PAINTS, Element

if TYPE_CHECKING:
    from collections.abc import Mapping


def prune(top: Element, known: Mapping[str, Element]) -> None:
    """Take out of a drawing what is not seen; `known` are its elements by their ids."""
    for one in top.all():
        _drop_what_is_lacking(one, known)
    _drop_what_nobody_copies(top, {name for one in top.all() for name in one.points_at.values()}, hidden=False)


def _drop_what_is_lacking(one: Element, known: Mapping[str, Element]) -> None:
    """What points at nothing, or at what cannot be meant, is as if it pointed nowhere."""
    for name, target in list(one.points_at.items()):
        kinds = POINTS_AT.get(name, COPIED if one.tag == "use" else GRADIENTS if one.tag in GRADIENTS else {one.tag})
        if target not in known or known[target].tag not in kinds:
            del one.points_at[name]
            if name in PAINTS:
                one.own.setdefault(name, "none")


def _drop_what_nobody_copies(one: Element, wanted: set[str], *, hidden: bool) -> bool:
    """Whether anything of it is wanted; what is hidden and is not goes, for it may hold words."""
    here = one.identity in wanted
    hidden = (hidden or one.tag == "defs") and not here
    kept: list[Element | str] = []
    for inner in one.inside:
        wants = isinstance(inner, Element) and _drop_what_nobody_copies(inner, wanted, hidden=hidden)
        if wants or not hidden:
            kept.append(inner)
    one.inside[:] = kept
    return here or any(isinstance(inner, Element) for inner in kept)
