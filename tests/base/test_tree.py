"""What is printed is what is worked: a printed working, read again, comes to the same number."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

import pytest
from hypothesis import assume, given, reject
from hypothesis import strategies as st

from sheetgen.base.arithmetic import read
from sheetgen.base.binding import bind
from sheetgen.base.measure import measure
from sheetgen.base.reckoning import printed, reckon, settle
from sheetgen.base.tree import Node, Number, number

if TYPE_CHECKING:
    from collections.abc import Callable

TWO = ("+", "−", "×", "÷")
SHORT = st.integers(-40, 40).map(lambda n: n / 4)  # printed in full


@st.composite
def leaves(draw: Any) -> Node:
    found = draw(SHORT)
    if draw(st.booleans()):
        return Node("number", (), Number(abs(found)))
    return Node("value", (), _Value(found))


class _Value:
    """A number that a name stood for: it may be below nothing."""

    def __init__(self, usual: float) -> None:
        self.usual, self.keys = usual, ()

    def __repr__(self) -> str:
        return f"{self.usual}"


def _grown(inner: st.SearchStrategy[Node]) -> st.SearchStrategy[Node]:
    two = st.builds(lambda op, a, b: Node(op, (a, b)), st.sampled_from(TWO), inner, inner)
    one = st.builds(lambda op, a: Node(op, (a,)), st.sampled_from(["²", "neg", "usual"]), inner)
    root = inner.map(lambda a: Node("√", (Node("+", (Node("²", (a,)), Node("number", (), Number(1.0)))),)))
    chosen = st.builds(lambda op, a, b: Node(op, (a, b)), st.sampled_from(["min", "max"]), inner, inner)
    return st.one_of(two, one, root, chosen)


trees = st.recursive(leaves(), _grown, max_leaves=12)


def worked(node: Node) -> float:
    """A tree by Python's own arithmetic."""
    if node.op in {"number", "value"}:
        return float(node.it.usual)
    a, *rest = map(worked, node.args)
    b = rest[0] if rest else math.nan
    ways: dict[str, Callable[[], float]] = {
        "+": lambda: a + b, "−": lambda: a - b, "×": lambda: a * b, "÷": lambda: a / b, "²": lambda: a * a,
        "neg": lambda: -a, "usual": lambda: a, "√": lambda: math.sqrt(a), "min": lambda: min(a, b),
        "max": lambda: max(a, b),
    }  # fmt: skip
    return ways[node.op]()


def told(node: Node) -> str:
    return printed(node, None)  # type: ignore[arg-type]  # no name stands in it


@given(node=trees)
def test_a_printed_working_read_again_comes_to_the_same(node: Node) -> None:
    try:
        value = worked(node)
    except (ZeroDivisionError, OverflowError):
        reject()
    assume(abs(value) < 1e9)
    text = told(node)
    assume(len(text) < 300)
    assume("²²" not in text)
    assert measure(text).value.usual == pytest.approx(value, rel=1e-9, abs=1e-9), text


@given(node=trees)
def test_a_pencil_comes_to_the_same(node: Node, pencil: Any) -> None:
    try:
        value = worked(node)
    except (ZeroDivisionError, OverflowError):
        reject()
    assume(abs(value) < 1e9)
    assert pencil.reckon(told(node)) == pytest.approx(value, rel=1e-9, abs=1e-9)


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("height − (2 mm − 1 mm)", "22 − (2 − 1)"),
        ("height − 2 mm − 1 mm", "22 − 2 − 1"),
        ("height + (2 mm − 1 mm)", "22 + 2 − 1"),
        ("height ÷ (pieces × 2)", "22 ÷ (12 × 2)"),
        ("height ÷ pieces × 2", "22 ÷ 12 × 2"),
        ("height × (pieces ÷ 2)", "22 × 12 ÷ 2"),
        ("(height + 1 mm) × 2", "(22 + 1) × 2"),
        ("(height + 1 mm)²", "(22 + 1)²"),
        ("height × −2", "22 × (−2)"),
        ("height − −2 mm", "22 − (−2)"),
        ("−(height + 1 mm)", "−(22 + 1)"),
        ("(−height)²", "(−22)²"),
        ("−height²", "−22²"),
        ("usual(height + 1 mm) × 2", "(22 + 1) × 2"),
        ("√(height² + 9 mm²)", "√(22² + 9)"),
        ("2 × height if pieces > 3 else 1 mm", "2 × 22"),
        ("wet(height + 1 mm, shrinkage)", "(22 + 1) ÷ (1 − 0.09)"),
        ("nearest(2.4 mm, drawer.drill)", "nearest(2.4, 2, 2.3, 3)"),
        ("atleast(2.2 mm, drawer.drill)", "atleast(2.2, 2.3, 3)"),
        ("round(height, 0.5 mm)", "round(22, 0.5)"),
        ("hole or height", "22"),
        ("height in cards", "22"),
    ],
)
def test_a_working_has_the_brackets_that_it_needs_and_no_others(text: str, shown: str, names: Any) -> None:
    settled = settle(bind(read(text), names())[0], names())
    assert printed(settled, names()) == shown
    assert math.isfinite(reckon(settled, names()).usual)


@given(st.floats(-1e8, 1e8))
def test_a_number_in_a_working_has_six_figures_and_no_power_of_ten(x: float) -> None:
    text = number(x)
    assert "e" not in text
    assert "-" not in text
    assert float(text.replace("−", "-")) == pytest.approx(x, rel=1e-5, abs=1e-8)
