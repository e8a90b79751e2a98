"""What of a label gives where it has too little room, and what stays: its bag, and all that lies in it."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any

from sheetgen.render.shortening import LESS, shortened

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.model.kit_cards_view import Label, Piece


def shorter_label(piece: Piece, letters: int) -> Piece | None:
    """What is least missed gives first, and what lies in the bag last of all but which bag it is.

    What is not in the kit is named as far as there is room, else the card is; then the line of the design is shortened
    from its end, for card and code tell the kind of kit too.
    """
    label = piece.label
    if label is None:
        return None
    if label.items:
        kept, gone = list(label.items), 0
        while kept and gone < letters:
            gone += len(kept.pop())
        more = len(label.items) - len(kept) + label.more
        return replace(piece, label=replace(label, items=tuple(kept), more=more))
    said = [name for name in ("title", "version", "colourway") if getattr(label, name) not in {"", LESS}]
    changed: dict[str, Any]
    if said and (said[1:] or not label.more):
        changed = _shorter(label, said, letters)
    elif label.more:
        changed = {"more": 0}
    elif label.inside and label.title == LESS:
        changed = {"title": ""}  # a sign alone says nothing
    elif label.inside:
        *others, last = label.inside
        fewer, _, _ = last.rpartition(", ")  # of what is named once for several, one
        inside = (*others, fewer) if fewer else tuple(others)
        changed = {"inside": inside, "beyond": label.beyond + 1 if inside else 0}
    elif label.bag not in {"", LESS}:
        changed = _shorter(label, ["bag"], letters)
    else:
        return None
    return replace(piece, label=replace(label, **changed))


def _shorter(label: Label, said: Sequence[str], letters: int) -> dict[str, Any]:
    """The last of what is `said` with so many letters less.

    One sign is enough: where nothing of it is left, what stands before it has the sign.
    """
    less = shortened(getattr(label, said[-1]), letters) or LESS
    if less == LESS and said[1:]:
        return {said[-1]: "", said[-2]: getattr(label, said[-2]).removesuffix(LESS) + LESS}
    return {said[-1]: less}
