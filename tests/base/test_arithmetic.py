"""One arithmetic for every number that a person writes."""

from __future__ import annotations

import contextlib
import signal
from fractions import Fraction
from typing import TYPE_CHECKING, Any

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from sheetgen.base.arithmetic import DEEPEST, FORMULAS, LONGEST, read
from sheetgen.base.dimension import (
    ANGLE,
    AREA,
    COUNT,
    DENSITY,
    LENGTH,
    MASS,
    MONEY,
    RATE,
    TEMPERATURE,
    TIME,
    UNITS,
    VOLUME,
    dimension_of,
)
from sheetgen.base.measure import measure
from sheetgen.base.tree import FUNCTIONS, Wrong, named

if TYPE_CHECKING:
    from collections.abc import Iterator

INCH = 25.4  # exact: the international yard and pound agreement of 1959

WRITTEN = [
    # design, section 5
    ("38 mm", 38, LENGTH),
    ("1 1/2 in", 1.5 * INCH, LENGTH),
    ("1½ in", 1.5 * INCH, LENGTH),
    ("1 ½ in", 1.5 * INCH, LENGTH),
    ("½ in", 0.5 * INCH, LENGTH),
    ("3/8 in", 0.375 * INCH, LENGTH),
    ("5⅝ in", 5.625 * INCH, LENGTH),
    ('1 1/2"', 1.5 * INCH, LENGTH),
    ("1½″", 1.5 * INCH, LENGTH),
    ("2,5 mm", 2.5, LENGTH),
    ("2.5 mm", 2.5, LENGTH),
    ("1,5 mm", 1.5, LENGTH),  # never 15
    ("0,75 mm", 0.75, LENGTH),
    ("3 cards", 0.75, LENGTH),  # 0.25 mm a card: two suppliers' charts
    ("1 card", 0.25, LENGTH),
    ("16 awg", 1.2908459, LENGTH),  # GNU Units 2.22
    ("16 AWG", 1.2908459, LENGTH),
    ("16 swg", 0.064 * INCH, LENGTH),  # BS 3737 by fluids and GNU Units
    ("650 °C", 650, TEMPERATURE),
    ("650 C", 650, TEMPERATURE),
    ("1200 °F", 648.8889, TEMPERATURE),  # (1200 − 32) × 5 ÷ 9
    ("800 °C/h", 800 / 60, RATE),
    ("30°", 30, ANGLE),
    ("30 °", 30, ANGLE),
    ("20-40°", 30, ANGLE),
    ("30° + 15°", 45, ANGLE),
    ("2 h", 120, TIME),
    ("90 s", 1.5, TIME),
    ("1 d", 1440, TIME),
    ("25 g", 25, MASS),
    ("1 ozt", 31.1034768, MASS),
    ("20 dwt", 31.1034768, MASS),  # twenty pennyweights a troy ounce
    ("5 ct", 1, MASS),
    ("10 m", 10_000, LENGTH),
    ("3 cm", 30, LENGTH),
    ("250 µm", 0.25, LENGTH),
    ("12 cm²", 1200, AREA),
    ("2 mL", 2000, VOLUME),
    ("7 g/cm³", 0.007, DENSITY),
    ("12.50 EUR", 12.5, MONEY),
    ("15 %", 0.15, COUNT),
    ("12", 12, COUNT),
    (".5 mm", 0.5, LENGTH),
    ("38\u00a0mm", 38, LENGTH),
    ("38\u202fmm", 38, LENGTH),
    ("38mm", 38, LENGTH),
    # ring and stone sizes
    ("US 7", (0.458 + 0.032 * 7) * INCH, LENGTH),  # Wikipedia, Ring size, form A
    ("US 7½", (0.458 + 0.032 * 7.5) * INCH, LENGTH),
    ("US 7 1/2", (0.458 + 0.032 * 7.5) * INCH, LENGTH),
    ("US 7.25", (0.458 + 0.032 * 7.25) * INCH, LENGTH),
    ("UK L", 51.25 / 3.14159265, LENGTH),  # GNU Units 2.22, BS 6820
    ("UK N½", 54.375 / 3.14159265, LENGTH),
    ("ISO 54", 54 / 3.14159265, LENGTH),
    ("JP 14", (38 + 14) / 3, LENGTH),  # GNU Units 2.22
    # arithmetic
    ("2 + 3 * 4", 14, COUNT),
    ("(2 + 3) × 4", 20, COUNT),
    ("12 ÷ 4", 3, COUNT),
    ("7 − 2", 5, COUNT),
    ("-3 + 5", 2, COUNT),
    ("10 - 4 - 3", 3, COUNT),
    ("24 / 4 / 2", 3, COUNT),
    ("2 * -3", -6, COUNT),
    ("height + 3 mm", 25, LENGTH),
    ("12 * body.clay_mass", 48, MASS),
    ("height / 2 mm", 11, COUNT),
    ("height * 2 cm", 440, AREA),
    ("min(3 mm, 1 cm)", 3, LENGTH),
    ("max(3 mm, 1 cm, 4 mm)", 10, LENGTH),
    ("max(2,5 mm, 2 mm)", 2.5, LENGTH),
    ("round(7.4)", 7, COUNT),
    ("round(22.3 mm, 0.5 mm)", 22.5, LENGTH),
    ("up(22.1 mm, 0.5 mm)", 22.5, LENGTH),
    ("down(22.9 mm, 0.5 mm)", 22.5, LENGTH),
    ("up(3.0000000001)", 3, COUNT),  # a hair's rounding is no fourth piece
    ("round(2.5)", 3, COUNT),
    ("min(2, -3)", -3, COUNT),
    ("min(2,-3)", -3, COUNT),
    ("3² + 1", 10, COUNT),
    ("−3²", -9, COUNT),  # a square binds tighter than a sign, as in a school book
    ("(2 mm)²", 4, AREA),
    ("√(9 mm²)", 3, LENGTH),
    ("√(3² + 4²)", 5, COUNT),
    ("2 × π", 6.28318530718, COUNT),
    ("sin(π ÷ 6)", 0.5, COUNT),
    ("sin(30°)", 0.5, COUNT),
    ("1 mm ÷ cos(60°)", 2, LENGTH),
    ("6 × asin(0.5)", 3.14159265359, COUNT),
    ("ln(7.38905609893)", 2, COUNT),
    ("height if pieces > 3 else 5 mm", 22, LENGTH),
    ("height if pieces > 30 else 5 mm", 5, LENGTH),
    ("height if pieces > 3 and height < 10 mm else 5 mm", 5, LENGTH),
    ("height if not pieces > 30 else 5 mm", 22, LENGTH),
    ("height if shape is disc else 5 mm", 22, LENGTH),
    ("height if shape is not disc else 5 mm", 5, LENGTH),
    ("height + (2 mm if pieces > 30)", 22, LENGTH),
    ("hole or 4 mm", 4, LENGTH),
    ("nearest(2.4 mm, drawer.drill)", 2.3, LENGTH),
    ("atleast(2.4 mm, drawer.drill, 1 mm)", 3, LENGTH),
    ("nearest(7.9 mm, drawer.former)", 7.9, LENGTH),  # none is owned: what was wanted
    ("wet(20 mm, 9 %)", 20 / 0.91, LENGTH),
    ("usual(shrinkage) × 100", 9, COUNT),
    ("height in cards", 22, LENGTH),  # the same number, told otherwise
    ("up(height, 1 in)", INCH, LENGTH),
]


@pytest.mark.parametrize(("text", "value", "dimension"), WRITTEN, ids=[w[0] for w in WRITTEN])
def test_a_measure_is_read_as_a_person_means_it(text: str, value: float, dimension: Any, work: Any) -> None:
    found = work(text)
    assert found.value.usual == pytest.approx(value, rel=1e-6)
    assert found.dimension == dimension


RANGES = [
    ("12-24 h", 720, 1080, 1440),
    ("12–24 h", 720, 1080, 1440),
    ("12 – 24 h", 720, 1080, 1440),
    ("12 to 24 h", 720, 1080, 1440),
    ("8-10 %", 0.08, 0.09, 0.10),
    ("9 ± 1 %", 0.08, 0.09, 0.10),
    ("2,40-2,50 mm", 2.40, 2.45, 2.50),
    ("10-10 min", 10, 10, 10),
    ("2 * 3-4 mm", 6, 7, 8),
    ("20 mm / (1 - shrinkage)", 20 / 0.92, 20 / 0.91, 20 / 0.90),
    ("10 mm - 3-4 mm", 6, 6.5, 7),
    ("min(2-3, 4)", 2, 2.5, 3),
    ("2-3 mm + 2-3 mm", 4, 5, 6),  # two things of one size each: two inputs
]


@pytest.mark.parametrize(("text", "low", "usual", "high"), RANGES, ids=[r[0] for r in RANGES])
def test_a_range_keeps_its_ends(text: str, low: float, usual: float, high: float, work: Any) -> None:
    found = work(text).value
    assert (found.low, found.usual, found.high) == pytest.approx((low, usual, high))


# text, character to blame (from 0), words of the message, words of the help
REFUSED = [
    ("1,500 mm", 0, "two ways", "write 1500, or 1.500"),
    ("12,000", 0, "two ways", "write 12000"),
    ("007 mm", 0, "begins with a zero", "write 7"),
    ("1.2.3 mm", 0, "is not a number", "2.5 or 2,5"),
    ("1,2,3 mm", 0, "is not a number", "2.5 or 2,5"),
    ("24-12 h", 0, "upside down", "12-24"),
    ("1-1/2 in", 0, "three ways", "1 1/2"),
    ("3/0 in", 0, "over zero", ""),
    ("9**9**9", 1, "'**' is not known", "no powers"),
    ("2 ** 3", 2, "'**' is not known", "no powers"),
    ("2^3", 1, "cannot stand here", "arithmetic is"),
    ("3 mm + 2 g", 7, "cannot be added", "same kind of unit"),
    ("4 + (3 mm - 2)", 12, "cannot be taken from", "same kind of unit"),
    ("min(3 mm, 2 g)", 10, "cannot be compared", "same kind of unit"),
    ("3 mm +", 5, "ends too soon", ""),
    ("(3 mm", 4, "ends too soon", ""),
    ("3 mm)", 4, "cannot stand here", ""),
    ("* 3", 0, "cannot stand here", ""),
    ("", 0, "a number is missing", "38 mm"),
    ("   ", 0, "a number is missing", "38 mm"),
    ("4 mm / 0", 0, "division by zero", ""),
    ("4 mm / (3 - 3)", 0, "division by zero", ""),
    ("4 / (9 ± 9)", 0, "division by zero", ""),
    ("3 furlong", 2, "unit 'furlong' is not known", ""),
    ("3 inchs", 2, "unit 'inchs' is not known", "'inches'"),
    ("heigth + 3 mm", 0, "'heigth' is not known", ""),
    ("3 mm + heigth", 7, "'heigth' is not known", ""),
    ("sqrt(4)", 0, "function 'sqrt' is not known", ""),
    ("roud(4)", 0, "function 'roud' is not known", "'round'"),
    ("min(3)", 0, "two numbers or more", ""),
    ("round(3 mm)", 0, "a number and a step", "0.5 mm"),
    ("round(3, 2, 1)", 0, "a number and a step", ""),
    ("round(3 mm, 0 mm)", 12, "more than nothing", ""),
    ("US 99X", 0, "is not a size", "US 7"),
    ("UK Å", 0, "not known", ""),
    ("UK AA", 0, "not a UK ring size", "A to Z"),
    ("--- 3", 0, "minus", ""),
    ("__import__('os')", 11, "", ""),
    ("height.__class__", 0, "not known", ""),
    ("'a' * 9", 0, "cannot stand here", ""),
    ("3; 4", 1, "cannot stand here", ""),
    ("√(1, 2)", 0, "wants one number", ""),
    ("usual(1, 2)", 0, "wants one number", ""),
    ("max(height)", 0, "two numbers or more", ""),
    ("√(0 − 4)", 0, "no root", ""),
    ("√(3 mm)", 0, "no root of a length", ""),
    ("ln(0)", 0, "no logarithm", ""),
    ("sin(3 mm)", 4, "wants a bare number, not a length", ""),
    ("up(3 g, 1 mm)", 0, "cannot be a step of a mass", ""),
    ("2 mm²²²", 6, "one ² after another", ""),
    ("2 if 3 else 4", 5, "no comparison", "body.inside < 12 mm"),
    ("2 mm if height is disc else 3 mm", 8, "no choice between words", "write ="),
    ("2 mm if shape is disk else 3 mm", 17, "'shape' is never 'disk'", ""),
    ("2 mm if shape is 3 else 3 mm", 17, "cannot stand here", ""),
    ("shape + 2 mm", 0, "'shape' is no number", "figure or a measure"),
    ("nearest(2 mm)", 0, "wants a size and a tool", "drawer.drill"),
    ("nearest(2 mm, drawer.dril)", 14, "a drawer holds no 'dril'", "'drill'"),
    ("nearest(2 g, drawer.drill)", 8, "chosen by a length, not a mass", ""),
    ("nearest(9 mm, drawer.drill)", 0, "no drill of 9 mm or near it", "nearest owned: 3 mm"),
    ("atleast(4 mm, drawer.drill)", 0, "no drill of 4 mm or a little more", "nearest owned: 3 mm"),
    ("wet(20 mm)", 0, "wet wants 2 numbers", ""),
    ("wet(20 mm, 1)", 0, "division by zero", ""),
    ("height in furlong", 10, "no unit to tell it in", ""),
    ("height in g", 10, "a length cannot be told in g", ""),
    ("height in", 8, "ends too soon", ""),
    ("sum(height: 3)", 0, "no list", ""),
]


@pytest.mark.parametrize(("text", "at", "says", "helps"), REFUSED, ids=[r[0] or "nothing" for r in REFUSED])
def test_what_cannot_be_meant_is_refused_at_its_character(
    text: str, at: int, says: str, helps: str, wrong: Any
) -> None:
    found = wrong(text)
    assert says in found.message
    assert helps in found.help
    assert max(0, found.at) == at


HOSTILE = {
    "powers": "9**9**9",
    "brackets": "(" * 100_000,
    "closed brackets": "(" * 50_000 + "1" + ")" * 50_000,
    "minus signs": "-" * 100_000 + "1",
    "minus signs apart": "- " * 190 + "1",
    "digits": "9" * 100_000,
    "as many digits as fit": "9" * LONGEST,
    "dots": "1." * 190,
    "commas": "1," * 190,
    "blanks": " " * 390 + "1",
    "a sum": "1+" * 199 + "1",
    "a product that grows": "*".join(["9" * 60] * 6),
    "names": "a." * 199 + "a",
    "units": "1" + "h" * 390,
    "calls": "up(" * DEEPEST + "1" + ")" * DEEPEST,
    "nulls": "\0" * 300,
    "words of another script": "٣ mm",
    "a superscript": "2² mm",
    "squares": "1" + "²" * 390,
    "squares of a unit": "1 mm²" + "²" * 390,
    "squares of squares": "(" * 24 + "1 mm" + "²)" * 24,
    "roots": "√(" * DEEPEST + "1" + ")" * DEEPEST,
    "conditions": "1 if 1 > 0 else " * 24 + "1",
    "nots": "1 if " + "not " * 90 + "1 > 0 else 2",
    "alternatives": "height or " * 39 + "height",
    "ranges": "1-2+" * 90 + "1",
    "ranges multiplied": "1-2×" * 90 + "1",
    "ranges of a name": "bore*" * 70 + "bore",
}


@contextlib.contextmanager
def over_in_a_moment() -> Iterator[None]:
    """Fails what hangs. A slow machine is given time: what hangs takes for ever."""

    def stop(*_signal: object) -> None:
        raise TimeoutError("it hangs")

    before = signal.signal(signal.SIGALRM, stop)
    signal.alarm(20)
    try:
        yield
    finally:
        signal.alarm(0)
        signal.signal(signal.SIGALRM, before)


@pytest.mark.parametrize("text", HOSTILE.values(), ids=HOSTILE.keys())
def test_a_hostile_expression_is_over_in_a_moment(text: str, work: Any) -> None:
    with contextlib.suppress(Wrong), over_in_a_moment():
        work(text)


@pytest.mark.parametrize("wants", [1, 2, 3, 4])
def test_formulas_inside_formulas_are_over_in_a_moment(wants: int, work: Any) -> None:
    for name in (*FORMULAS, *FUNCTIONS):
        text = f"{name}(" * DEEPEST + "1" + (", 1" * (wants - 1) + ")") * DEEPEST
        for one in (text, text.replace("1", "7 mm", 1), text.replace("1", "9 ± 1")):
            with contextlib.suppress(Wrong), over_in_a_moment():
                work(one)


def test_nothing_past_the_bounds_is_taken(wrong: Any) -> None:
    assert "too long" in wrong("1+" * LONGEST + "1").message
    assert "too deep" in wrong("(" * (DEEPEST + 1) + "1" + ")" * (DEEPEST + 1)).message
    assert read("(" * DEEPEST + "1" + ")" * DEEPEST)
    assert "one ² after another" in wrong("1" + "²" * 390).message
    assert "beyond anything that is measured" in wrong("(" * 4 + "1 mm" + "²)" * 4).message


@given(text=st.text(max_size=60))
@example(text="1 mm" * 20)
@example(text="US")
@example(text="1_000 mm")
def test_whatever_is_typed_there_is_a_number_or_a_reason(text: str, work: Any) -> None:
    said = None
    try:
        work(text)
    except Wrong as wrong:
        said = wrong
    assert said is None or (said.message and said.at <= max(len(text), 1))


numbers = st.integers(1, 9999).map(lambda n: Fraction(n, 100))


@given(values=st.lists(numbers, min_size=1, max_size=8), data=st.data())
def test_sums_and_products_come_to_what_fractions_say(values: list[Fraction], data: Any, work: Any) -> None:
    # second opinion: Python's exact fractions
    text, exact = str(float(values[0])), values[0]
    for value in values[1:]:
        sign = data.draw(st.sampled_from("+-*/"))
        text = f"({text}) {sign} {float(value)}"
        exact = {"+": exact + value, "-": exact - value, "*": exact * value, "/": exact / value}[sign]
    assert work(text).value.usual == pytest.approx(float(exact), rel=1e-9, abs=1e-9)


@given(whole=st.integers(0, 40), bottom=st.sampled_from([2, 4, 8, 16, 32, 64]), data=st.data())
def test_a_mixed_inch_is_the_whole_and_its_part(whole: int, bottom: int, data: Any, work: Any) -> None:
    top = data.draw(st.integers(1, bottom - 1))
    text = f"{whole} {top}/{bottom} in" if whole else f"{top}/{bottom} in"
    assert work(text).value.usual == pytest.approx(float((whole + Fraction(top, bottom)) * Fraction("25.4")))


@given(whole=st.integers(1, 99), part=st.integers(0, 99))
def test_a_comma_and_a_point_are_one(whole: int, part: int, work: Any) -> None:
    assert work(f"{whole},{part:02d} mm") == work(f"{whole}.{part:02d} mm")


@pytest.mark.parametrize("name", sorted(UNITS))
def test_every_unit_can_be_written(name: str, work: Any) -> None:
    assert work(f"2 {name}").dimension == dimension_of(UNITS[name].unit)


GNU = [("in", "mm"), ("ft", "mm"), ("lb", "g"), ("oz", "g"), ("ozt", "g"), ("dwt", "g"), ("ct", "g"), ("h", "min")]


@pytest.mark.parametrize(("unit", "ours"), GNU)
def test_units_are_those_of_gnu_units(unit: str, ours: str, gnu_units: Any, work: Any) -> None:
    spelling = {"ozt": "troyounce", "dwt": "pennyweight", "ct": "carat", "h": "hour", "min": "minute"}
    theirs = gnu_units(spelling.get(unit, unit), spelling.get(ours, ours))
    assert work(f"1 {unit}").value.usual == pytest.approx(theirs, rel=1e-9)


@pytest.mark.parametrize("gauge", [10, 16, 18, 20, 22, 24, 28, 30])
def test_a_gauge_is_that_of_gnu_units(gauge: int, gnu_units: Any, work: Any) -> None:
    assert work(f"{gauge} awg").value.usual == pytest.approx(gnu_units(f"awg({gauge})", "mm"), rel=1e-7)


def test_an_expression_names_what_it_asks_for() -> None:
    assert named(read("height + 2 * body.clay_mass")) == {"height", "body.clay_mass"}


@pytest.mark.parametrize("spelled", ["top_hole", "top hole", "top-hole", "top  hole"])
def test_a_name_may_be_parted_in_any_way(spelled: str, work: Any) -> None:
    assert work(f"{spelled} + 1 mm").value.usual == 4


def test_a_measure_in_a_stock_file_knows_no_names() -> None:
    assert measure("2 × 19 mm").value.usual == 38
    with pytest.raises(Wrong, match="'height' is not a measure"):
        measure("2 mm + height")


def test_a_range_of_stones_has_its_usual_size_in_the_middle(work: Any) -> None:
    # a supplier's size table: PP 18 is 2.40 to 2.50 mm
    size = work("PP 18").value
    assert (size.low, size.usual, size.high) == pytest.approx((2.40, 2.45, 2.50))
