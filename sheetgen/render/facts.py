"""The page of every constant, formula and rule with its source, made from the code, so that a teacher can check us."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

from markupsafe import Markup, escape

from sheetgen.facts.rules import RULES
from sheetgen.formulas.every import every
from sheetgen.model.page import Page

if TYPE_CHECKING:
    from sheetgen.facts.rules import Rule
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
    subjects: dict[str, list[dict[str, str]]] = {}
    above = ""
    for fact in facts:
        rows = subjects.setdefault(_subject(fact.module), [])
        row = {"name": fact.name, "value": _written(float(fact)), "unit": fact.unit, "grade": fact.grade}
        rows.append(row | {"source": "as above" if rows and above == fact.source else fact.source})
        above = fact.source
    families: dict[str, list[tuple[str, Rule]]] = {}
    for name, rule in RULES.items():
        families.setdefault(rule.family, []).append((name, rule))
    values: dict[str, Any] = {
        "groups": groups, "subjects": subjects, "families": families, "studio": studio, "faces": faces,
    }  # fmt: skip
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


def _subject(module: str) -> str:
    return module.rpartition(".")[2].replace("_", " ").capitalize()
