"""A tree held against its names: units come out, in a project by conversion, in a kind of part as they stand."""

from __future__ import annotations

from typing import Any

import pytest

from sheetgen.base.arithmetic import read, read_condition
from sheetgen.base.binding import become, bind, bind_condition
from sheetgen.base.dimension import DENSITY, LENGTH, MASS, VOLUME, spelled, unit
from sheetgen.base.measure import measure
from sheetgen.base.reckoning import holds, printed, reckon, settle
from sheetgen.base.tree import Wrong, named

INCH = 25.4


@pytest.mark.parametrize(
    ("text", "value", "dimension"),
    [
        ("1 in + 5 mm", INCH + 5, LENGTH),
        ("5 mm + 1 in", INCH + 5, LENGTH),
        ("1 cm × 1 cm × 1 cm", 1000, VOLUME),
        ("2 mL + 500 mm³", 2500, VOLUME),
        ("500 mm³ + 2 mL", 2500, VOLUME),
        ("1 cm³ − 1 mL", 0, VOLUME),
        ("7 g/cm³ × 500 mm³", 3.5, MASS),  # half a cubic centimetre
        ("body.density × 20 mm × 10 mm × 1 mm", 1.4, MASS),
        ("3.5 g ÷ 500 mm³", 0.007, DENSITY),
        ("stone.weight + 1 g", 2, MASS),  # five carats are a gram
        ("1 g + stone.weight", 2, MASS),
        ("max(stone.weight, 0.5 g)", 1, MASS),
        ("up(1.1 g, 1 ct)", 1.2, MASS),
        ("0 + 3 mm", 3, LENGTH),
        ("3 mm if 1 in > 25 mm else 0", 3, LENGTH),
    ],
)
def test_in_a_project_what_is_alike_is_put_into_one_unit(text: str, value: float, dimension: object, work: Any) -> None:
    found = work(text)
    assert found.value.usual == pytest.approx(value)
    assert found.dimension == dimension


def test_a_conversion_stands_in_the_working_so_that_a_pencil_can_follow(names: Any, pencil: Any) -> None:
    tree, comes = bind(read("body.density × 500 mm³"), names())
    tree = become(tree, comes, unit("g"))
    settled = settle(tree, names())
    assert reckon(settled, names()).usual == pytest.approx(3.5)
    assert printed(settled, names()) == "7 × 500 ÷ 1000"
    assert pencil.reckon(printed(settled, names())) == pytest.approx(3.5)


# text, the character to blame, its width, what is said, the mend
STRICT = [
    ("height × height × height × body.density", "g", 0, 39, "comes to g·mm³/cm³", "÷ 1000 mm³/cm³ is missing"),
    ("height × height × height", "mL", 0, 24, "comes to mm³", "÷ 1000 mm³/mL is missing"),
    ("stone.weight", "g", 0, 12, "comes to ct", "÷ 5 ct/g is missing"),
    ("body.clay_mass", "ct", 0, 14, "comes to g", "× 5 ct/g is missing"),
    ("height + 3", "mm", 9, 1, "a bare number cannot be added to a length", "same kind of unit"),
    ("3 + height", "mm", 4, 6, "a length cannot be added to a bare number", "same kind of unit"),
    ("height", "g", 0, 6, "comes to a length, and a mass is wanted", ""),
    ("height + heigth", "mm", 9, 6, "'heigth' is not known", ""),
    ("wet(height, bore)", "mm", 12, 4, "a length cannot be taken from a bare number", "same kind of unit"),
    ("hole + body.clay_mass", "mm", 7, 14, "a mass cannot be added to a length", ""),
    ("height if pieces > 3 mm else bore", "mm", 19, 4, "a length cannot be compared with a bare number", ""),
    ("√(height)", "mm", 0, 9, "there is no root of a length", ""),
]


@pytest.mark.parametrize(("text", "wanted", "at", "width", "says", "helps"), STRICT, ids=[s[0] for s in STRICT])
def test_in_a_kind_a_unit_that_does_not_come_out_is_an_error_with_the_mend(  # noqa: PLR0917 - a case has so many columns
    text: str, wanted: str, at: int, width: int, says: str, helps: str, names: Any
) -> None:
    with pytest.raises(Wrong) as caught:
        become(*bind(read(text), names(), strict=True), unit(wanted), strict=True)
    assert says in caught.value.message
    assert helps in caught.value.help
    assert (caught.value.at, caught.value.width) == (at, width)


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("height × height × height × body.density ÷ 1000 mm³/cm³", "g"),
        ("body.clay_mass ÷ body.density", "cm³"),
        ("height × height × height ÷ 1000 mm³/mL", "mL"),
        ("0", "mm"),
        ("0 × height", "mm"),
        ("height + 0", "mm"),
        ("height ÷ bore", ""),
        ("up(height ÷ bore)", ""),
        ("height × loss", "mm"),
        ("√(height² + bore²)", "mm"),
        ("2 × asin(bore ÷ height)", ""),
        ("(hole or 2 mm) × 3", "mm"),
    ],
)
def test_in_a_kind_what_comes_out_is_taken_as_it_stands(text: str, wanted: str, names: Any) -> None:
    tree, comes = bind(read(text), names(), strict=True)
    assert become(tree, comes, unit(wanted), strict=True) == tree


def test_the_mend_that_is_told_mends_it(names: Any) -> None:
    text = "height × height × height × body.density"
    with pytest.raises(Wrong) as caught:
        become(*bind(read(text), names(), strict=True), unit("g"), strict=True)
    mended = f"{text} {caught.value.help.removesuffix(' is missing')}"
    assert bind(read(mended), names(), strict=True)[1] == unit("g")


SPELLED = ["top_hole", "top hole", "top-hole"]


@pytest.mark.parametrize("name", SPELLED)
def test_a_name_is_one_however_its_words_are_parted(name: str, names: Any, work: Any) -> None:
    assert work(f"2 × {name}").value.usual == 6
    tree, _ = bind(read(f"2 × {name}"), names())
    assert named(tree) == {"top_hole"}
    condition = bind_condition(read_condition(f"{name} > 2 mm"), names())
    assert holds(condition, names())


@pytest.mark.parametrize("word", ["long_oval", "long oval", "long-oval"])
def test_a_word_is_one_however_it_is_parted(word: str, names: Any) -> None:
    condition = bind_condition(read_condition(f"shape is {word}"), names())
    assert not holds(condition, names())
    assert condition.it == "long_oval"


@pytest.mark.parametrize(
    ("text", "value"),
    [("height-bore", 14), ("body.clay-mass", 4), ("height-2 mm", 20), ("pieces-3", 9)],
)
def test_a_hyphen_between_two_names_takes_one_from_the_other(text: str, value: float, work: Any) -> None:
    assert work(text).value.usual == value


def test_a_hyphen_between_what_is_no_name_is_told_as_one_unknown_name(wrong: Any) -> None:
    assert wrong("2 mm + heigth-bore").message == "'heigth_bore' is not known"


@pytest.mark.parametrize("there", [True, False])
def test_a_term_that_is_not_there_is_left_out_of_value_and_working(there: bool, names: Any) -> None:  # noqa: FBT001
    around = names({"hole": 3.0} if there else {})
    tree, _ = bind(read("height − (2 × hole if hole)"), around)
    settled = settle(tree, around)
    assert reckon(settled, around).usual == (16 if there else 22)
    assert printed(settled, around) == ("22 − 2 × 3" if there else "22")


@pytest.mark.parametrize(
    ("text", "unit_"), [("12 EUR/g × 3 g", "EUR"), ("6 g ÷ 2 cm³", "g/cm³"), ("1 g/mL × 3", "g/mL")]
)
def test_a_number_of_a_mixed_dimension_knows_its_unit(text: str, unit_: str, names: Any) -> None:
    assert spelled(bind(read(text), names())[1]) == unit_


def test_a_shrinkage_that_is_asked_for_twice_is_one_input(work: Any) -> None:
    assert work("loss − shrinkage").value.exact
    assert not work("loss − bore ÷ 8 mm").value.exact


def test_two_ranges_at_one_place_of_two_texts_are_two_inputs(names: Any) -> None:
    # each of two figures may be written as a range from its first character on
    a, b = (reckon(settle(bind(read(text), names())[0], names()), names()) for text in ("2-3 mm", "2-3 mm × 1"))
    assert a.keys != b.keys


def test_a_measure_keeps_its_range_through_a_conversion() -> None:
    found = measure("1-2 mL + 100 mm³").value
    assert (found.low, found.usual, found.high) == pytest.approx((1100, 1600, 2100))
