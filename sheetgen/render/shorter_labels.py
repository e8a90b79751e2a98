"""What of a label gives where it has too little room, and what stays: bag, version, colourway, and a caution."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any

from sheetgen.base.printed import NBSP
from sheetgen.render.shortening import LESS, shortened

if TYPE_CHECKING:
    from sheetgen.model.kit_cards_view import Label, Piece


KIND = ("title", "version", "colourway")


def shorter_label(piece: Piece, letters: int) -> Piece | None:
    """What is least missed gives first, and last of all the version, the colourway and which bag it is.

    What is not in the kit gives first, for the card names it; then what lies in the bag from its end, down to its first
    and how many more; then a caution is told in few words, which stay, and of what it warns of only how much there is;
    then the design's name. Only then gives the rest of its line: of bags of two colours on one table nothing else tells
    which is which.
    """
    label = piece.label
    if label is None:
        return None
    changed: dict[str, Any] | None
    if label.items:
        changed = _fewer_named(label, letters)
    elif label.more:
        changed = {"more": 0}
    else:
        ways = (
            _fewer_inside(label, letters),
            _briefer_caution(label),
            _amount_alone(label),
            _of_the_kind(label, letters),
        )
        changed = next(filter(None, ways), None)
    return replace(piece, label=replace(label, **changed)) if changed else None


def _fewer_named(label: Label, letters: int) -> dict[str, Any]:
    """Fewer of what is not in the kit by its name."""
    kept, gone = list(label.items), 0
    while kept and gone < letters:
        gone += len(kept.pop())
    return {"items": tuple(kept), "more": label.more + len(label.items) - len(kept)}


def _fewer_inside(label: Label, letters: int) -> dict[str, Any] | None:
    """Fewer of what lies in the bag; None where its first is all that is named.

    Of what is named once for several, one gives at a time.
    """
    kept, gone, beyond = list(label.inside), 0, label.beyond
    while kept and gone < letters:
        fewer, several, last = kept[-1].rpartition(", ")
        if several:
            kept[-1] = fewer
        elif kept[1:]:
            kept.pop()
        else:
            break
        gone, beyond = gone + len(last), beyond + 1
    return {"inside": tuple(kept), "beyond": beyond} if gone else None


def _briefer_caution(label: Label) -> dict[str, Any] | None:
    """Each caution in few words; where nothing else has more than a sign left, without its signal word."""
    if any(one.short for one in label.warned):
        return {"warned": tuple(replace(one, text=one.short or one.text, short="") for one in label.warned)}
    told = label.inside or label.amount or any(getattr(label, name) not in {"", LESS} for name in KIND)
    if told or not any(one.word for one in label.warned):
        return None
    return {"warned": tuple(replace(one, word="") for one in label.warned)} | dict.fromkeys(KIND, "")


def _amount_alone(label: Label) -> dict[str, Any] | None:
    """Of the one thing that is in a bag, and that a caution is of, how much: what it is its bag and caution say."""
    if not label.warned or len(label.inside) != 1 or label.beyond:
        return None
    much = label.inside[0].rpartition(":")[2].strip(f" {NBSP}")
    return {"inside": (), "amount": much} if much != label.inside[0] else None


def _of_the_kind(label: Label, letters: int) -> dict[str, Any] | None:
    """Less of the design's name, then nothing of what lies in the bag, then less of colourway, version and bag."""
    if label.title and (label.version or label.colourway):
        less = shortened(label.title, letters) or LESS
        return {"title": "" if less == LESS else less}  # a sign alone says nothing
    if label.inside:
        return {"inside": (), "beyond": 0}
    if label.amount:
        return {"amount": ""}
    said = [name for name in ("bag", *KIND) if getattr(label, name) not in {"", LESS}]
    if not said:
        return None
    less = shortened(getattr(label, said[-1]), letters) or LESS
    if less == LESS and said[1:]:  # one sign is enough: what stands before it has it
        return {said[-1]: "", said[-2]: getattr(label, said[-2]).removesuffix(LESS) + LESS}
    return {said[-1]: less}
