"""Tills, honest and wrong, as makers write them: what is read, and what is told of each, at its place."""

from __future__ import annotations

import re
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from sheetgen.base.trouble import Troubles
from sheetgen.read.till import read_till

HERE = Path(__file__).parent
HONEST = sorted((HERE / "honest").iterdir())
WRONG = sorted((HERE / "wrong").iterdir())
DESIGNS = ("drops", "link", "pendant")
D = Decimal

# Of each wrong file: line, the words marked in it, what is told, what would help.
TOLD: dict[str, list[tuple[int, str, str, str]]] = {
    "empty": [(1, "", "the file is empty", "")],
    "fee-is-nothing": [(2, "0 EUR", "a fee cannot be 0 EUR", "more than 0")],
    "fee-of-no-design": [(3, "dropz", "there is no design 'dropz'", "did you mean 'drops'?")],
    "load-from-to": [(1, "5-7 EUR", "the cost of a load is one amount", "12.50 EUR")],
    "margin": [(2, "100 %", "a margin of 100 % leaves nothing for the cost", "a markup may be more")],
    "margin-over": [(1, "130 %", "a margin of 130 % leaves nothing for the cost", "less than 100 %")],
    "markup-bare": [(1, "1.2", "'1.2' is written without its per cent sign", "write 1.2 %, or 120 %")],
    "negative": [
        (1, "-32 EUR", "the rate an hour cannot be -32 EUR", "0 or more"),
        (2, "-20 %", "a markup cannot be -20 %", "0 % or more"),
        (3, "-2 %", "replacements cannot be -2 %", "0 % or more"),
        (5, "-3 min", "packing cannot take -3 min", "from 0 min"),
    ],
    "overhead": [(2, "15 %", "an overhead of 15 %: of what?", "of labour, or of materials and labour?")],
    "overhead-of-what": [(1, "wages", "and not of 'wages'", "labour, materials")],
    "overhead-other-words": [(1, "labour 15 %", "'labour 15 %' is no overhead", "15 % of labour")],
    "packing-bare": [(3, "3", "packing takes a time, and '3' is a bare number", "such as 3 min")],
    "packing-in-money": [(3, "1.50 EUR", "packing takes a time, and '1.50 EUR' is money", "such as 3 min")],
    "packing-without-rate": [(2, "3 min", "nobody says what an hour of it costs", "add rate an hour: 32 EUR")],
    "pieces-a-load": [(2, "0", "'pieces a load' cannot be 0", "a whole number")],
    "pieces-a-load-half": [(1, "7.5", "'pieces a load' cannot be 7.5", "a whole number")],
    "price-step": [(1, "0 EUR", "a price step cannot be 0 EUR", "more than 0")],
    "price-step-bare": [(1, "0.50", "'0.50' is a bare number", "write 0.50 EUR")],
    "replacements": [(1, "2", "'2' is written without its per cent sign", "write 2 %")],
    "replacements-all": [(1, "100 %", "replacements cannot be 100 %", "less than 100 %")],
    "several-at-once": [
        (1, "$38", "the rate an hour is in the studio's currency, and '$38' is not", "12.50 EUR"),
        (2, "20 % from labour", "'20 % from labour' is no overhead", "15 % of labour"),
        (3, "190 %", "a tax of 190 %", "90 %?"),
        (4, "-0.50 EUR", "a price step cannot be -0.50 EUR", "0 or more"),
        (6, "forty", "the room is an amount of money, and 'forty' is not", "12.50 EUR"),
    ],
    "share-from-to": [(1, "80-120 %", "a markup is one share, and '80-120 %' are several", "20 %")],
    "sign": [(1, "€38", "'€38' has a sign", "write 38 EUR")],
    "tax-as-factor": [(1, "119 %", "a tax of 119 %", "19 %?")],
    "tax-bare": [(1, "19", "'19' is written without its per cent sign", "write 19 %")],
    "tax-factor-bare": [(1, "1.19", "a tax of 1.19", "19 %?")],
    "thousands": [(2, "1.250,00 EUR", "the thousands of '1.250,00 EUR' are parted", "write 1250.00 EUR")],
    "twice": [(2, "tax", "'tax' is written twice; first on line 1", "keep one of the two")],
    "two-currencies": [(2, "6.50 USD", "in the studio's currency, and '6.50 USD' is not", "12.50 EUR")],
    "unknown-below": [(3, "per run", "there is no field 'per run' here", "did you mean 'a run'?")],
    "unknown-key": [
        (1, "rate per hour", "there is no field 'rate per hour' here", "did you mean 'rate an hour'?"),
        (2, "mark up", "there is no field 'mark up' here", "did you mean 'markup'?"),
        (3, "markupp", "there is no field 'markupp' here", "did you mean 'markup'?"),
    ],
    "wrapping-list": [(1, "1.20 EUR", "'wrapping' wants fields of its own", "indent name: value lines below it")],
    "wrapping-unpriced": [(4, "some", "the price of tissue is an amount of money, and 'some' is not", "12.50 EUR")],
}  # fmt: skip

# Of each honest file what differs from a till that says nothing.
COMES_TO: dict[str, dict[str, Any]] = {
    "a-load-that-costs-nothing": {"load": D(0)},
    "big": {"room": D(1250), "fees": {"": D(1250)}},
    "decimal-comma": {"hour": D("32.5"), "tax": Fraction(77, 1000)},
    "hours-for-minutes": {"hour": D(32), "packing_a_run": Fraction(90)},
    "margin-nearly-all": {"margin": Fraction(995, 1000)},
    "markup-of-much": {"markup": Fraction(28, 10)},
    "markup-of-nothing": {"markup": Fraction(0)},
    "one-line": {"hour": D(28)},
    "overhead-of-all": {
        "overhead": Fraction(125, 1000), "overhead_of": ("materials", "wrapping", "labour", "firing"),
    },
    "overhead-with-and": {"overhead": Fraction(1, 10), "overhead_of": ("materials", "labour")},
    "tax-of-a-hundred": {"tax": Fraction(1)},
    "whole": {
        "hour": D(32), "packing_a_kit": Fraction(5, 2), "packing_a_run": Fraction(20), "overhead": Fraction(15, 100),
        "overhead_of": ("labour",), "load": D("6.5"), "pieces_a_load": 8, "replacements": Fraction(2, 100),
        "wrapping_a_kit": (("box", D("1.2")), ("tissue", D("0.15"))),
        "wrapping_with_sheets": (("sheets printed", D("0.4")),),
        "wrapping_a_run": (("tape", D("2.4")),), "markup": Fraction(12, 10), "margin": Fraction(55, 100),
        "tax": Fraction(19, 100), "step": D("0.5"), "room": D(40), "teaching": D(110),
        "fees": {"drops": D(95), "pendant": D(60)},
    },
}  # fmt: skip
NOTHING: dict[str, Any] = {
    "hour": None, "packing_a_kit": 0, "packing_a_run": 0, "overhead": 0, "overhead_of": (), "load": None,
    "pieces_a_load": 1, "wrapping_a_kit": (), "wrapping_with_sheets": (), "wrapping_a_run": (),
    "replacements": 0, "markup": None, "margin": None, "tax": 0, "step": None, "room": None, "teaching": None,
    "fees": {},
}  # fmt: skip


@pytest.mark.parametrize("path", WRONG, ids=lambda path: path.stem)
def test_what_is_wrong_in_a_till_is_told_at_its_place_with_its_mend(path: Path) -> None:
    troubles = Troubles()
    assert read_till(path, "EUR", DESIGNS, troubles) is None
    lines = path.read_text("utf-8").split("\n")
    found = []
    for trouble in troubles:
        place = trouble.place
        assert place
        assert place.source.name == f"wrong/{path.name}"
        marked = lines[place.line - 1][place.column - 1 : place.column - 1 + place.width]
        found.append((place.line, marked, trouble))
    assert [(line, marked) for line, marked, _ in found] == [told[:2] for told in TOLD[path.stem]]
    for (_, _, trouble), (_, _, says, helps) in zip(found, TOLD[path.stem], strict=True):
        assert says in trouble.message
        assert helps in trouble.help


@pytest.mark.parametrize("path", HONEST, ids=lambda path: path.stem)
def test_an_honest_till_is_read_as_its_maker_means_it(path: Path) -> None:
    troubles = Troubles()
    till = read_till(path, "EUR", DESIGNS, troubles)
    assert not list(troubles)
    assert {name: getattr(till, name) for name in NOTHING} == NOTHING | COMES_TO[path.stem]


def test_every_file_is_told_of() -> None:
    assert {path.stem for path in WRONG} == set(TOLD)
    assert {path.stem for path in HONEST} == set(COMES_TO)


def test_the_till_in_the_readme_is_one(tmp_path: Path) -> None:
    readme = (HERE.parents[1] / "README.md").read_text("utf-8")
    [block] = [one for one in re.findall(r"```yaml\n(.*?)```", readme, re.DOTALL) if "private/till.yaml" in one]
    (tmp_path / "till.yaml").write_text(block, "utf-8")
    troubles = Troubles()
    till = read_till(tmp_path / "till.yaml", "EUR", ("tideline-band", "buoy-drops"), troubles)
    assert not list(troubles)
    assert till
    assert till.fees == {"tideline-band": D("100.5"), "buoy-drops": D(165)}
    assert all(getattr(till, name) != nothing for name, nothing in NOTHING.items())


def test_without_a_till_there_is_none_and_nothing_is_wrong(tmp_path: Path) -> None:
    troubles = Troubles()
    assert read_till(tmp_path / "till.yaml", "EUR", DESIGNS, troubles) is None
    assert not list(troubles)


def test_a_till_in_pounds_is_one_of_a_studio_in_pounds(tmp_path: Path) -> None:
    (tmp_path / "till.yaml").write_text("rate an hour: £30\ncost of a load: 6 EUR\n", "utf-8")
    troubles = Troubles()
    read_till(tmp_path / "till.yaml", "GBP", DESIGNS, troubles)
    assert [trouble.help for trouble in troubles] == ["write 30 GBP", "12.50 GBP"]
