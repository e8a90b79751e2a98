"""The page of every constant and formula with its source, made from the code, so that a teacher can check us."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

from markupsafe import Markup, escape

from sheetgen.formulas.every import every
from sheetgen.model.page import Page

if TYPE_CHECKING:
    from sheetgen.formulas.formula import Formula
    from sheetgen.model.worked import Publisher
    from sheetgen.render.theme import Theme


RAISED = str.maketrans("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹")


def facts_page(studio: Publisher, theme: Theme, faces: Markup) -> Page:
    """facts.html."""
    formulas, facts = every()
    groups: dict[str, list[dict[str, str]]] = {}
    for formula in formulas:
        row = {"about": _plain(formula.about), "says": _says(formula), "source": formula.source, "valid": formula.valid}
        groups.setdefault(_subject(formula.module), []).append(row)
    sources: dict[str, list[dict[str, str]]] = {}
    for fact in sorted(facts, key=lambda fact: (fact.source, _natural(fact.name))):
        row = {"name": fact.name, "value": _written(float(fact)), "unit": fact.unit, "grade": fact.grade}
        rows = sources.setdefault(fact.source, [])
        if row not in rows:
            rows.append(row)
    values: dict[str, Any] = {"groups": groups, "sources": sources, "studio": studio, "faces": faces}
    html = theme.page("facts.html.j2", language=studio.language, **values)
    return Page("facts.html", html.encode())


def _says(formula: Formula) -> str:
    """Its statement; a text in letters, which is made elsewhere than it is declared, is what its name comes to."""
    says = " ".join(formula.says.split())
    return says if formula.pure.__module__ == formula.module else f"{formula.name.replace('_', ' ')} = {says}"


def _plain(about: str) -> Markup:
    """What a formula is, with the quantities it names in italics."""
    return Markup(re.sub(r"`([^`]+)`", lambda name: f"<i>{name[1].replace('_', ' ')}</i>", escape(about)))  # noqa: S704 - escaped


def _written(x: float) -> str:
    """A number as a table prints it: a true minus, and powers of ten raised."""
    digits, _, power = f"{x:.10g}".partition("e")
    raised = f" × 10{str(int(power)).translate(RAISED)}" if power else ""
    return f"{digits}{raised}".replace("-", "−")


def _natural(name: str) -> list[tuple[int, str]]:
    """What sorts 9 before 10: words as they are, numbers by their value."""
    return [(int(part), "") if part.isdigit() else (-1, part) for part in re.split(r"(\d+)", name)]


def _subject(module: str) -> str:
    return module.rpartition(".")[2].replace("_", " ").capitalize()
