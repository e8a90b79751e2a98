"""The page of every constant, formula and rule with its source, made from the code, so that a teacher can check us."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from markupsafe import Markup, escape

from sheetgen.base.printed import NBSP
from sheetgen.facts.rules import RULES
from sheetgen.formulas.every import every
from sheetgen.model.page import Page
from sheetgen.model.view import ConstantRow, Constants, Facts, FormulaRow, Formulas, Html, RuleRow, Rules
from sheetgen.render.handout import studio
from sheetgen.render.top import Top, body, page
from sheetgen.render.words import kept

if TYPE_CHECKING:
    from sheetgen.formulas.formula import Formula
    from sheetgen.model.worked import Publisher
    from sheetgen.render.theme import Theme


SHORT = 24  # letters of a condition that a phone's line holds beside another
RAISED = str.maketrans("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹")


def facts_page(publisher: Publisher, theme: Theme) -> Page:
    """facts.html."""
    formulas, facts = every()
    groups: dict[str, list[FormulaRow]] = {}
    for formula in formulas:
        row = FormulaRow(Html(_plain(formula.about)), *map(held, (_says(formula), formula.source, formula.valid)))
        groups.setdefault(_subject(formula.module), []).append(row)
    subjects: dict[str, list[ConstantRow]] = {}
    above = ""
    for fact in facts:
        rows = subjects.setdefault(_subject(fact.module), [])
        source = "as above" if rows and above == fact.source else fact.source
        rows.append(ConstantRow(fact.name, _written(float(fact)), fact.unit, source, fact.grade))
        above = fact.source
    families: dict[str, list[RuleRow]] = {}
    for name, rule in sorted(RULES.items(), key=lambda one: one[1].severity):
        told = rule.severity if rule.waivable else f"{rule.severity}, never waived"
        families.setdefault(rule.family, []).append(RuleRow(name, rule.reason, told, rule.source))
    sheet = Facts(
        studio(publisher),
        publisher.language,
        tuple(Formulas(subject, tuple(rows)) for subject, rows in groups.items()),
        tuple(Rules(family, tuple(families[family])) for family in dict.fromkeys(r.family for r in RULES.values())),
        tuple(Constants(subject, tuple(rows)) for subject, rows in subjects.items()),
    )
    title = f"{publisher.name}: formulas and facts"
    top = Top(title, publisher.language, "facts.html", publisher.address, publisher.name)
    return Page(top.path, page(top, body(theme, "facts.html.j2", sheet)))


def _says(formula: Formula) -> str:
    """Its statement; a text in letters, which is made elsewhere than it is declared, is what its name comes to."""
    says = " ".join(formula.says.split())
    return says if formula.pure.__module__ == formula.module else f"{formula.name.replace('_', ' ')} = {says}"


def held(formula: str) -> str:
    """A formula as it may break: before a sign of arithmetic, and never at a relation, whose sides belong together.

    Of several conditions each short one stays whole.
    """
    each = formula.split(" and ")
    return " and ".join(one.replace(" ", NBSP) if len(each) > 1 and len(one) <= SHORT else _held(one) for one in each)


def _held(formula: str) -> str:
    related = re.sub(r" ([=≠<>≤≥≈]) ", f"{NBSP}\\1{NBSP}", formula)
    return re.sub(r" ([+−×÷]) ", f" \\1{NBSP}", related)


def _plain(about: str) -> Markup:
    """What a formula is, with the quantities it names in italics."""
    return Markup(re.sub(r"`([^`]+)`", lambda name: f"<i>{name[1].replace('_', ' ')}</i>", escape(kept(about))))  # noqa: S704 - escaped


def _written(x: float) -> str:
    """A number as a table prints it: a true minus, and powers of ten raised."""
    digits, _, power = f"{x:.10g}".partition("e")
    raised = f" × 10{str(int(power)).translate(RAISED)}" if power else ""
    return f"{digits}{raised}".replace("-", "−")


def _subject(module: str) -> str:
    return module.rpartition(".")[2].replace("_", " ").capitalize()
