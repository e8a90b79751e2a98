"""What holds for all formulas at once."""

from __future__ import annotations

import ast
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

import sheetgen.formulas
from sheetgen.base.interval import Interval, between
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.every import every
from sheetgen.formulas.gauges import swg
from sheetgen.formulas.pegs import open_belt
from sheetgen.formulas.shrinkage import wet_size

if TYPE_CHECKING:
    from sheetgen.formulas.formula import Formula

FORMULAS, FACTS = every()
MODULES = sorted(Path(sheetgen.formulas.__path__[0]).glob("*.py"))
# Numbers that geometry and arithmetic are made of; every other number must be a Fact.
PLAIN = {
    0,
    1,
    2,
    3,
    4,
    5,
    6,
    7,
    8,
    9,
    10,
    11,
    13,
    18,
    19,
    0.5,
    60,
    90,
    100,
    180,
    200,
    360,
    1e-6,
    1e-9,
    1e-12,
    1e-15,
    1e-300,
}


def test_every_formula_has_a_name_of_its_own() -> None:
    names = [formula.name for formula in FORMULAS]
    assert len(names) == len(set(names)) > 100


@pytest.mark.parametrize("formula", FORMULAS, ids=lambda f: f.name)
def test_a_formula_says_itself_its_source_and_what_it_is(formula: Formula) -> None:
    assert formula.says
    assert formula.source
    assert formula.about.endswith(".")


@pytest.mark.parametrize("formula", FORMULAS, ids=lambda f: f.name)
def test_no_source_is_a_code_that_only_its_author_can_read(formula: Formula) -> None:
    import re  # noqa: PLC0415 - only this test reads text

    assert not re.search(r"\bS\d\d\b", formula.source + formula.says)


@pytest.mark.parametrize("formula", FORMULAS, ids=lambda f: f.name)
def test_no_formula_hands_back_nonsense_for_nonsense(formula: Formula) -> None:
    # every argument below zero, or no number at all: CannotBe or a number, never another fault
    arguments = len(formula.letters)
    for value in (-1.0, 0.0, float("nan"), float("inf"), 1e308):
        try:
            formula(*[value] * arguments)
        except CannotBe as refused:
            assert refused.message  # noqa: PT017 - either outcome is right
        except (OverflowError, ZeroDivisionError, ValueError) as fault:
            assert value > 1e300 or value != value, f"{formula.name}({value}) fails with {fault!r}"  # noqa: PLR0124, PT017


@pytest.mark.parametrize("module", MODULES, ids=lambda p: p.stem)
def test_no_number_of_the_trade_hides_in_a_formula(module: Path) -> None:
    tree = ast.parse(module.read_text(encoding="utf-8"))
    numbers = {n.value for n in ast.walk(tree) if isinstance(n, ast.Constant) and isinstance(n.value, (int, float))}
    heuristics = {2000, 500, 1.02, 700, 100_000, 1e-15} if module.stem in {"cutting", "drying"} else set()
    assert {n for n in numbers if not isinstance(n, bool)} <= PLAIN | heuristics


@pytest.mark.parametrize("module", MODULES, ids=lambda p: p.stem)
def test_a_module_opens_with_its_job_and_stays_short(module: Path) -> None:
    text = module.read_text(encoding="utf-8")
    assert ast.get_docstring(ast.parse(text))
    assert text.count("\n") < 200


def test_a_range_goes_in_and_a_range_comes_out() -> None:
    wet = wet_size(30.0, between(0.08, 0.10))
    assert isinstance(wet, Interval)
    assert (wet.low, wet.high) == pytest.approx((30 / 0.92, 30 / 0.90))


@pytest.mark.parametrize(
    ("wrong", "right"),
    [
        (2.463, 2.4536),  # a supplier's ring table, US 10 circumference in inches
        (21.41, 21.49),  # the same, US 12
        (67.3, 67.5),
        (0.32, 0.032),  # GNU Units' comment on ring sizes
        (0.0149, 0.0148),  # a library's British 28 gauge
        (0.6741, 0.9743),  # a misprinted relative density
        (0.6466, 0.6462),  # circle packing densities from cut radii
        (0.6864, 0.6863),
        (0.6854, 0.6852),
        (0.7328, 0.7325),
        (0.7148, 0.7145),
        (2204.9, 2206.1),  # an open belt solved with the arctangent
    ],
)
def test_no_figure_known_to_be_printed_wrong_is_a_fact_here(wrong: float, right: float) -> None:
    # figures printed wrong in public pages, listed with their true values
    assert wrong != right
    assert all(abs(fact - wrong) > 1e-12 for fact in FACTS)


def test_casting_multipliers_are_not_taken_for_densities() -> None:
    # a supplier's multipliers carry a margin: brass 10.0, silver 10.8, platinum 23.6
    densities = [fact for fact in FACTS if fact.unit == "g/cm³"]
    assert all(fact not in (10.0, 10.8, 23.6) for fact in densities)


def test_figures_known_to_be_printed_wrong_come_out_right() -> None:
    # the same list, worked out here
    assert swg(28) / 25.4 == pytest.approx(0.0148, abs=1e-9)
    assert open_belt(105, 393, 697, 0) == pytest.approx(2206.1, abs=0.05)
