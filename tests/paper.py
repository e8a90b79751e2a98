"""A ruler for PDFs: what stands on a page, in millimetres from its upper left, as pdfplumber finds it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Self

import pdfplumber

if TYPE_CHECKING:
    from pathlib import Path

MM = 25.4 / 72
CUT, THIN = 0.5, 0.21  # line weights of the paper pen, mm


@dataclass(frozen=True)
class Mark:
    """One drawn shape by its box, line weight and dashes."""

    left: float
    top: float
    right: float
    bottom: float
    weight: float
    dashed: bool
    filled: bool
    points: int

    @property
    def width(self) -> float:
        return self.right - self.left

    @property
    def height(self) -> float:
        return self.bottom - self.top

    @property
    def middle(self) -> tuple[float, float]:
        return (self.left + self.right) / 2, (self.top + self.bottom) / 2

    def is_about(self, width: float, height: float, within: float = 0.05) -> bool:
        return abs(self.width - width) <= within and abs(self.height - height) <= within


class Sheet:
    """A PDF and its pages."""

    def __init__(self, path: Path) -> None:
        self.pdf = pdfplumber.open(path)
        self.pages = self.pdf.pages
        self.texts = [page.extract_text() or "" for page in self.pages]

    def close(self) -> None:
        self.pdf.close()

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    @property
    def text(self) -> str:
        return "\n".join(self.texts)

    def template_pages(self) -> list[Any]:
        return [page for page, text in zip(self.pages, self.texts, strict=True) if "Templates, true" in text]


def marks(page: Any) -> list[Mark]:
    """Everything drawn on a page with a line or a filling."""
    return [
        Mark(
            float(o["x0"]) * MM, float(o["top"]) * MM, float(o["x1"]) * MM, float(o["bottom"]) * MM,
            float(o["linewidth"] or 0) * MM, bool((o.get("dash") or ([], 0))[0]), bool(o["fill"] and not o["stroke"]),
            len(o.get("pts") or ()),
        )
        for o in (*page.lines, *page.rects, *page.curves)
    ]  # fmt: skip


def cuts(page: Any) -> list[Mark]:
    """The closed shapes to be cut: heavy, unbroken lines, the check bars left out."""
    return [m for m in marks(page) if abs(m.weight - CUT) < 0.02 and not m.dashed and m.width > 0.5 and m.height > 0.5]


def thin_circles(page: Any, diameter: float, within: float = 0.05) -> list[Mark]:
    found = [m for m in marks(page) if abs(m.weight - THIN) < 0.02 and m.points > 4 and not m.filled]
    return sorted((m for m in found if m.is_about(diameter, diameter, within)), key=lambda m: m.left)


def bars(page: Any, length: float | None = None) -> tuple[list[Mark], list[Mark]]:
    """The heavy straight lines of a page, of any length or of one: upright and level."""
    heavy = [m for m in marks(page) if abs(m.weight - CUT) < 0.02 and not m.dashed]
    upright, level = [m for m in heavy if m.width < 0.01], [m for m in heavy if m.height < 0.01]
    if length is None:
        return upright, level
    return [m for m in upright if abs(m.height - length) < 0.05], [m for m in level if abs(m.width - length) < 0.05]
