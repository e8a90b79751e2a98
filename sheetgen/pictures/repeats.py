"""How often a gradient, a pattern or a dash repeats over a shape: never more than is said here, often less."""

from __future__ import annotations

from math import hypot, inf, sqrt
from typing import TYPE_CHECKING

from sheetgen.pictures import values

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sheetgen.pictures.outline import Box
    from sheetgen.pictures.values import Length, Matrix

PLAIN: Matrix = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)


def dashes(said: str, box: Box) -> float:
    """Of a line that goes once round the box of its shape."""
    each = [values.length(one).px(100) for one in values.parts(said)] if said not in {"", "none"} else []
    return 2 * (box[2] - box[0] + box[3] - box[1]) / sum(each) if sum(each) else 0.0


def tiles(own: Mapping[str, str], box: Box) -> float:
    """Of a pattern on a shape; none where it has no size, and is not drawn."""
    wide, high = box[2] - box[0], box[3] - box[1]
    inside = own.get("patternUnits", "objectBoundingBox") == "objectBoundingBox"
    default = "100%" if inside else "0"
    sizes = []
    for name, of in (("width", wide), ("height", high)):
        size = values.length(own.get(name, default))
        sizes.append(_share(size) * of if inside else size.px(of))
    if not all(size > 0 for size in sizes):
        return 0.0
    least, _ = _stretch(values.moves(own.get("patternTransform", "none")))
    reach = hypot(wide, high)
    return (reach / (sizes[0] * least) + 1) * (reach / (sizes[1] * least) + 1)


def repeats(tag: str, own: Mapping[str, str], box: Box) -> float:
    """Of a gradient on a shape; without end where it has no length."""
    wide, high = box[2] - box[0], box[3] - box[1]
    inside = own.get("gradientUnits", "objectBoundingBox") == "objectBoundingBox"
    moved = values.moves(own.get("gradientTransform", "none"))

    def at(name: str, default: str, of: float) -> float:
        size = values.length(own.get(name, default))
        return _share(size) if inside else size.px(of)

    if tag == "linearGradient":
        x1, y1 = at("x1", "0", wide), at("y1", "0", high)
        across, down = at("x2", "100%", wide) - x1, at("y2", "0", high) - y1
        scale = (wide, high) if inside else (1.0, 1.0)
        begin = (
            (moved[0] * x1 + moved[2] * y1 + moved[4]) * scale[0] + (box[0] if inside else 0.0),
            (moved[1] * x1 + moved[3] * y1 + moved[5]) * scale[1] + (box[1] if inside else 0.0),
        )
        length = hypot(
            (moved[0] * across + moved[2] * down) * scale[0], (moved[1] * across + moved[3] * down) * scale[1]
        )
        far = max(hypot(x - begin[0], y - begin[1]) for x in box[::2] for y in box[1::2])
        return 2 * far / length if length else inf
    round_ = hypot(wide, high)
    outer, inner = at("r", "50%", round_), at("fr", "0", round_)
    length = outer - inner
    least, _ = _stretch(moved)
    side = min(wide, high) if inside else 1.0
    if length <= 0 or least <= 0 or side <= 0:
        return inf
    # the printer measures the far corner from the origin, in the gradient's own unit
    far = max(map(abs, (*box, wide, high, 1.0, moved[4], moved[5])))
    middle = max(abs(at(name, "50%", wide)) for name in ("cx", "cy", "fx", "fy"))
    return (4 * (far / side + 1) / least + 2 * middle + inner) / length


def _share(size: Length) -> float:
    """A part of a box: 0.5 or 50 %."""
    return size.number / 100 if size.unit == "%" else size.number


def _stretch(matrix: Matrix) -> tuple[float, float]:
    """By how much it makes things larger at least and at most (the singular values of its four numbers)."""
    a, b, c, d = matrix[:4]
    whole, flat = a * a + b * b + c * c + d * d, a * d - b * c
    root = sqrt(max(0.0, whole * whole - 4 * flat * flat))
    most = sqrt((whole + root) / 2)
    return abs(flat) / most if most else 0.0, most
