"""How many points a shape has, and a box that holds it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.pictures import outline, values

if TYPE_CHECKING:
    from sheetgen.pictures.element import Element

SIZES = frozenset({"x", "y", "width", "height", "x1", "y1", "x2", "y2", "cx", "cy", "r", "rx", "ry"})


def reach(one: Element, view: float) -> outline.Reach:
    """Of a shape, in its own unit; 100 % are `view`. What has no points but sizes has none."""
    if one.tag == "path":
        return outline.of_path(one.own.get("d", ""))
    if one.tag in {"polyline", "polygon"}:
        return outline.of_points(one.own.get("points", ""))
    sizes = dict.fromkeys(SIZES, 0.0) | {
        name: values.length(value).px(view) for name, value in one.own.items() if name in SIZES
    }
    if one.tag == "line":
        xs, ys = (sorted((sizes[f"{side}1"], sizes[f"{side}2"])) for side in "xy")
        return outline.Reach(0, (xs[0], ys[0], xs[1], ys[1]))
    if one.tag == "rect":
        left, top = sizes["x"], sizes["y"]
        return outline.Reach(0, (left, top, left + sizes["width"], top + sizes["height"]))
    rx, ry = (sizes["r"], sizes["r"]) if one.tag == "circle" else (sizes["rx"], sizes["ry"])
    return outline.Reach(0, (sizes["cx"] - rx, sizes["cy"] - ry, sizes["cx"] + rx, sizes["cy"] + ry))
