"""Drawings: one template, and a page of templates, in millimetres."""

from __future__ import annotations

from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Drawing:
    """An SVG of so many millimetres, with its text alternative."""

    svg: str
    width: float
    height: float
    says: str


@dataclass(frozen=True, slots=True)
class TemplatePage:
    """One page of templates for one paper, its check bars included."""

    paper: str
    drawing: Drawing
    parts: tuple[str, ...]
    share: float = 0.0


@dataclass(frozen=True, slots=True)
class Drawings:
    """All drawings of one version: each part's template, the pages by paper, the diagrams beside steps.

    `diagrams` are by part; `curves` are kiln curves by the number of their step, from 0.
    """

    templates: dict[str, Drawing]
    pages: dict[str, tuple[TemplatePage, ...]]
    diagrams: dict[str, Drawing] = field(default_factory=dict)
    curves: dict[int, Drawing] = field(default_factory=dict)
    finished: Drawing | None = None
