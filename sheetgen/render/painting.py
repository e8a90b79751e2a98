"""In which order, where and how strongly the boxes of a page are painted (CSS 2.2, appendix E)."""

from __future__ import annotations

import copy
import math
from typing import Any, Literal

from sheetgen.render.edges import borders, coloured, imaged, outlines, shadows
from sheetgen.render.seen import EVERYWHERE, Colour, Faded, Fill, Key, Rect, meet

# The layers of one context, from the ground up.
GROUND, BEHIND, BLOCKS, FLOATS, TEXT, PLACED, IN_FRONT, OUTLINES = range(8)
SQUARE = 1e-6  # less than this is a turn by nothing or by a quarter


class Painting:
    """What holds for what is painted within a box. One is made for each box that changes something."""

    def __init__(self, fills: list[Fill]) -> None:
        self.fills = fills
        self.count = [0]  # shared by all of a page: what comes later lies above
        self.path: Key = ()
        self.home: Key = ()  # where what is placed by itself is sorted in
        self.opened = False
        self.clip: Rect = EVERYWHERE
        self.groups: Faded = ()
        self.matrix: tuple[float, float, float, float, float, float] | None = None

    @property
    def turned(self) -> bool:
        """Whether edges are no longer upright or level."""
        if self.matrix is None:
            return False
        a, b, c, d, _, _ = self.matrix
        return min(max(abs(a), abs(d)), max(abs(b), abs(c))) > SQUARE

    @property
    def mirrored(self) -> bool:
        """Whether letters are turned over."""
        return self.matrix is not None and self.matrix[0] * self.matrix[3] - self.matrix[1] * self.matrix[2] < 0

    @property
    def on_its_head(self) -> bool:
        """Whether letters run to the left: a 6 reads as a 9. Those that climb or go down a side do not."""
        return self.matrix is not None and self.matrix[0] < -SQUARE

    @property
    def scale(self) -> float:
        """How large letters become, the smaller way."""
        if self.matrix is None:
            return 1.0
        a, b, c, d, _, _ = self.matrix
        return min(math.hypot(a, b), math.hypot(c, d))

    def key(self, layer: int = TEXT) -> Key:
        """When something is painted in this context."""
        self.count[0] += 1
        return (*self.path, (layer, 0, self.count[0]))

    def placed(self, rect: Rect) -> Rect:
        """Where a rectangle comes to lie on the page: its hull."""
        if self.matrix is None:
            return rect
        a, b, c, d, e, f = self.matrix
        corners = [(x, y) for x in (rect[0], rect[2]) for y in (rect[1], rect[3])]
        across = [a * x + c * y + e for x, y in corners]
        down = [b * x + d * y + f for x, y in corners]
        return min(across), min(down), max(across), max(down)

    def canvas(self, page: Any) -> None:  # noqa: ANN401 - WeasyPrint is not typed
        """The grounds of the whole page."""
        for background in (page.background, page.canvas_background):
            self._painted(background, ((GROUND, 0, self.key()[-1][2]),))

    def page_child(self, box: Any) -> Painting:  # noqa: ANN401
        """The root of the text, or a box in the margin."""
        return self._context(box, (PLACED, _height(box.style)), real=True)

    def entered(self, box: Any) -> Painting:  # noqa: ANN401
        """What holds within a box, which may open a context of its own."""
        style = box.style
        inner = self
        if self.opened:
            inner = copy.copy(self)
            inner.opened = False
        placed = style["position"] != "static"
        stacked = (placed or box.is_grid_item) and style["z_index"] != "auto"
        moved = box.transformation_matrix
        if stacked or style["opacity"] < 1 or moved or style["overflow"] != "visible":
            height = _height(style) if placed or box.is_grid_item else 0
            layer = BEHIND if height < 0 else IN_FRONT if height else PLACED
            inner = self._context(box, (layer, height), real=True)
        elif placed:
            inner = self._context(box, (PLACED, 0), real=False)
        elif box.is_floated():
            inner = self._context(box, (FLOATS, 0), real=False)
        elif type(box).__name__.startswith(("InlineBlock", "InlineFlex", "InlineGrid")):
            inner = self._context(box, (TEXT, 0), real=False)
        if style["clip"] and box.is_absolutely_positioned():
            inner.clip = meet(inner.clip, inner.placed(_clipped(box)))
        return inner

    def _context(self, box: Any, place: tuple[int, int], *, real: bool) -> Painting:  # noqa: ANN401
        inner = copy.copy(self)
        start = self.home if real or place[0] == PLACED else self.path
        self.count[0] += 1
        inner.path = (*start, (*place, self.count[0]))
        inner.home = inner.path if real else self.home
        inner.opened = True
        if box.style["opacity"] < 1:
            inner.groups = (*self.groups, (self.count[0], box.style["opacity"]))
        if box.transformation_matrix:
            inner.matrix = _together(box.transformation_matrix.values, self.matrix)
        return inner

    def ground(self, box: Any) -> None:  # noqa: ANN401
        """A box's own ground, and what it paints at its edges."""
        if not hasattr(box, "border_top_width") or box.style["visibility"] != "visible":
            return
        key = self.key(GROUND if self.opened else TEXT if type(box).__name__ == "InlineBox" else BLOCKS)
        border, padding = rect_of(box, "border"), rect_of(box, "padding")
        for strip, colour in shadows(box, border, inset=False):
            self._filled(strip, key, (colour,))
        self._painted(getattr(box, "background", None), key)
        for strip, colour in (*shadows(box, border, inset=True), *borders(box, padding, border)):
            self._filled(strip, key, (colour,))
        if box.style["border_image_source"][0] != "none":
            for strip in imaged(box, padding, border):
                self._filled(strip, key, ())
        for strip, colour in outlines(box, border):
            self._filled(strip, (*self.home, (OUTLINES, 0, self.key()[-1][2])), (colour,))

    def clipped(self, box: Any) -> Painting:  # noqa: ANN401
        """What holds for what lies in a box that cuts off what is too large."""
        if box.style["overflow"] == "visible":
            return self
        inner = copy.copy(self)
        inner.clip = meet(self.clip, self.placed(rect_of(box, "padding")))
        return inner

    def cut_short(self) -> Painting:
        """What holds in a line that ends in dots."""
        inner = copy.copy(self)
        inner.clip = (0, 0, 0, 0)
        return inner

    def _painted(self, background: Any, key: Key) -> None:  # noqa: ANN401
        if background is None or not background.layers:
            return
        x, y, w, h = background.layers[-1].painting_area
        area = (x, y, x + w, y + h)
        if background.color.alpha > 0:
            self._filled(area, key, (coloured(background.color),))
        for layer in reversed(background.layers):
            if layer.image is not None:
                stops = getattr(layer.image, "colors", ())
                self._filled(_image(layer, area), key, tuple(coloured(stop) for stop in stops))

    def _filled(self, rect: Rect, key: Key, colours: tuple[Colour, ...]) -> None:
        if rect[0] < rect[2] and rect[1] < rect[3] and (not colours or any(colour[3] for colour in colours)):
            self.fills.append(Fill(key, meet(self.placed(rect), self.clip), colours, not self.turned, self.groups))


def rect_of(box: Any, which: Literal["border", "padding", "content"]) -> Rect:  # noqa: ANN401
    """A box's rectangle before it is moved, px."""
    if which == "border":
        x, y, w, h = box.border_box_x(), box.border_box_y(), box.border_width(), box.border_height()
    elif which == "padding":
        x, y, w, h = box.padding_box_x(), box.padding_box_y(), box.padding_width(), box.padding_height()
    else:
        x, y, w, h = box.content_box_x(), box.content_box_y(), box.width, box.height
    return x, y, x + w, y + h


def _height(style: Any) -> int:  # noqa: ANN401
    return 0 if style["z_index"] == "auto" else int(style["z_index"])


def _clipped(box: Any) -> Rect:  # noqa: ANN401
    """The rectangle of `clip`, as WeasyPrint takes it."""
    top, right, bottom, left = box.style["clip"]
    x, y = box.border_box_x(), box.border_box_y()
    sides = 0 if right == "auto" else right, box.border_width() if left == "auto" else left
    ends = 0 if top == "auto" else top, box.border_height() if bottom == "auto" else bottom
    return x + min(sides), y + ends[0], x + max(sides), y + ends[1]


def _image(layer: Any, area: Rect) -> Rect:  # noqa: ANN401
    """Where the picture of a ground lies: where it is not repeated, in one place."""
    x, y, _, _ = layer.positioning_area
    left, top = x + layer.position[0], y + layer.position[1]
    across, down = layer.repeat
    return meet(
        area,
        (
            left if across == "no-repeat" else area[0],
            top if down == "no-repeat" else area[1],
            left + layer.size[0] if across == "no-repeat" else area[2],
            top + layer.size[1] if down == "no-repeat" else area[3],
        ),
    )


def _together(
    inner: tuple[float, float, float, float, float, float],
    outer: tuple[float, float, float, float, float, float] | None,
) -> tuple[float, float, float, float, float, float]:
    """Moved first by one and then by the other."""
    if outer is None:
        return inner
    a, b, c, d, e, f = inner
    p, q, r, s, t, u = outer
    return (
        a * p + b * r, a * q + b * s, c * p + d * r, c * q + d * s,
        e * p + f * r + t, e * q + f * s + u,
    )  # fmt: skip
