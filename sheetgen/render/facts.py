"""The page of every constant and formula with its source, made from the code, so that a teacher can check us."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

from sheetgen.formulas.every import every
from sheetgen.model.page import Page

if TYPE_CHECKING:
    from markupsafe import Markup

    from sheetgen.model.project import Studio
    from sheetgen.render.theme import Theme


def facts_page(studio: Studio, theme: Theme, faces: Markup) -> Page:
    """facts.html."""
    formulas, facts = every()
    groups: dict[str, list[dict[str, str]]] = {}
    for formula in formulas:
        row = {"about": _plain(formula.about), "says": formula.says, "source": formula.source, "valid": formula.valid}
        groups.setdefault(_subject(formula.pure.__module__), []).append(row)
    sources: dict[str, list[dict[str, str]]] = {}
    for fact in sorted(facts, key=lambda fact: (fact.source, _natural(fact.name))):
        row = {"name": fact.name, "value": f"{float(fact):.10g}", "unit": fact.unit, "grade": fact.grade}
        rows = sources.setdefault(fact.source, [])
        if row not in rows:
            rows.append(row)
    values: dict[str, Any] = {"groups": groups, "sources": sources, "studio": studio, "faces": faces}
    html = theme.page("facts.html.j2", language=str(studio.language), **values)
    return Page("facts.html", html.encode())


def _plain(about: str) -> str:
    """A docstring's first sentence without what only a programmer needs."""
    return re.sub(r"\s*CannotBe\b[^.]*\.", "", about).replace("`", "").strip()


def _natural(name: str) -> list[tuple[int, str]]:
    """What sorts 9 before 10: words as they are, numbers by their value."""
    return [(int(part), "") if part.isdigit() else (-1, part) for part in re.split(r"(\d+)", name)]


def _subject(module: str) -> str:
    return module.rpartition(".")[2].replace("_", " ").capitalize()
