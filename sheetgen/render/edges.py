"""What a box paints at its edges: its border, its outline and its shadows, as strips."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from sheetgen.render.seen import Colour, Rect

if TYPE_CHECKING:
    from collections.abc import Iterator

Strip = tuple[Rect, Colour]
SIDES = ("top", "right", "bottom", "left")
TABLE = frozenset({"TableBox", "InlineTableBox", "TableCellBox", "TableRowBox", "TableRowGroupBox"})


def borders(box: Any, padding: Rect, border: Rect) -> Iterator[Strip]:  # noqa: ANN401 - WeasyPrint is not typed
    """The strips of its border. Borders that cells of a table share are the table's, and are left out."""
    style = box.style
    if style["border_collapse"] == "collapse" and type(box).__name__ in TABLE:
        return
    for side, strip in zip(SIDES, _beside(padding, border), strict=True):
        if style[f"border_{side}_style"] not in {"none", "hidden"}:
            yield strip, _coloured(style, style[f"border_{side}_color"])


def imaged(box: Any, padding: Rect, border: Rect) -> tuple[Rect, ...]:  # noqa: ANN401
    """Where a picture stands in place of its border; all of the box, where that is wider than the border or filled."""
    style = box.style
    wider = set(style["border_image_width"]) != {1} or "fill" in style["border_image_slice"]
    return (border,) if wider else _beside(padding, border)


def outlines(box: Any, border: Rect) -> Iterator[Strip]:  # noqa: ANN401
    """The strips of its outline, which is painted when all else of its context is."""
    style = box.style
    if style["outline_style"] == "none" or not style["outline_width"]:
        return
    inner = _grown(border, style["outline_offset"])
    for strip in _beside(inner, _grown(inner, style["outline_width"])):
        yield strip, _coloured(style, style["outline_color"])


def shadows(box: Any, border: Rect, *, inset: bool) -> Iterator[Strip]:  # noqa: ANN401
    """The strips of its shadows outside of it or inside, without what is blurred."""
    for x, y, _, spread, colour, inside in box.style["box_shadow"]:
        if inside == inset:
            by = -spread.value if inset else spread.value
            left, top, right, bottom = _grown(border, by)
            moved = left + x.value, top + y.value, right + x.value, bottom + y.value
            for strip in _beside(moved, border) if inset else _beside(border, moved):
                yield strip, _coloured(box.style, colour)


def coloured(colour: Any) -> Colour:  # noqa: ANN401
    """A colour of WeasyPrint's."""
    red, green, blue = (min(1.0, max(0.0, float(one or 0))) for one in colour.to("srgb")[:3])
    return red, green, blue, float(colour.alpha)


def _coloured(style: Any, colour: Any) -> Colour:  # noqa: ANN401
    return coloured(style["color"] if colour == "currentcolor" else colour)


def _grown(rect: Rect, by: float) -> Rect:
    return rect[0] - by, rect[1] - by, rect[2] + by, rect[3] + by


def _beside(inner: Rect, outer: Rect) -> tuple[Rect, Rect, Rect, Rect]:
    """What of the outer lies above, to the right, under and to the left of the inner."""
    left, top, right, bottom = outer
    return (
        (left, top, right, min(bottom, inner[1])),
        (max(left, inner[2]), top, right, bottom),
        (left, max(top, inner[3]), right, bottom),
        (left, top, min(right, inner[0]), bottom),
    )
