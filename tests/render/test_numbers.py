"""Numbers as the page prints them."""

from __future__ import annotations

import io
import re
from typing import Any

import pdfplumber
import pytest
from hypothesis import given
from hypothesis import strategies as st

from sheetgen.base.interval import Interval, between, interval
from sheetgen.base.material import Item
from sheetgen.base.rounding import Rounder
from sheetgen.model.amounts import amounts
from sheetgen.model.numbers import Numbers
from sheetgen.model.worked import MaterialLine, Shown
from sheetgen.render import words
from sheetgen.render.pdf import Printer

MM, INCH = Numbers(Rounder(0.5)), Numbers(Rounder(0.5, inches=True))


def said(text: object) -> str:
    """As a person reads it: narrow and fast spaces are spaces."""
    return str(text).replace("\u202f", " ").replace("\u00a0", " ")


def shown(value: Interval | float, unit: str, rounding: Any = "fine", numbers: Numbers = MM) -> Shown:
    return Shown("Size", numbers.printed(interval(value), unit, rounding))


def told(value: Interval | float, unit: str, rounding: Any = "fine", numbers: Numbers = MM) -> str:
    return said(numbers.printed(interval(value), unit, rounding).told)


TIMES = [
    ((10, 10), "10 min"),
    ((10, 15), "10 – 15 min"),
    ((0.5, 0.5), "30 s"),
    ((1, 1), "1 min"),
    ((60, 65), "60 – 65 min"),
    ((90, 150), "1 h 30 – 2 h 30"),
    ((720, 1440), "12 – 24 h"),
    ((721, 1439), "12 – 24 h"),
    ((3 * 1440, 5 * 1440), "3 – 5 days"),
    ((30 * 60, 6.5 * 1440), "30 h – 6.5 days"),
    ((420, 500), "7 – 8.5 h"),
    ((120, 120), "2 h"),
    ((120, 240), "2 – 4 h"),
]


@pytest.mark.parametrize(("ends", "printed"), TIMES, ids=[t[1] for t in TIMES])
def test_a_time_is_printed_as_a_teacher_says_it(ends: tuple[float, float], printed: str) -> None:
    assert said(MM.time(between(*ends))) == printed


def test_a_time_of_one_unit_has_its_unit_in_the_column_of_units() -> None:
    printed = MM.printed(between(21, 26), "min", "short")
    assert (said(printed.words), printed.unit) == ("21 – 26", "min")
    printed = MM.printed(between(90, 150), "min", "fine")
    assert (said(printed.words), printed.unit) == ("1 h 30 – 2 h 30", "")


def test_times_add_up_as_they_are_printed() -> None:
    # 12 to 18 min is printed 10 to 20, and 7 to 8 min as it is: together 17 to 28
    assert said(MM.added([between(12, 18), between(7, 8)])) == "17 – 28 min"
    # 119 to 121 min is printed 1 h 55 to 2 h 05, and 3 to 5 min as it is
    assert said(MM.added([between(119, 121), between(3, 5)])) == "1 h 58 – 2 h 10"
    # 62 min sharp is printed 60 to 65 min, seven and a half as 8
    assert (said(MM.time(between(62, 62))), said(MM.time(between(7.5, 7.5)))) == ("60 – 65 min", "8 min")
    assert said(MM.added([between(62, 62), between(7.5, 7.5)])) == "68 – 73 min"
    # 235 and 370 min: 3 h 55 and 6 h 10, as four such sessions of a sheet come to
    sessions = [between(20, 25), between(30, 55), between(160, 250), between(25, 40)]
    assert said(MM.added(sessions)) == "3 h 55 – 6 h 10"
    # with a wait of half a day, which is told to the hour, it is told to the hour: 15 h 55 and 30 h 10
    assert said(MM.added([*sessions, between(720, 1440)])) == "15 – 31 h"


UNIT_MINUTES = {"min": 1, "h": 60, "days": 1440}


def minutes_of(text: str, unit: str) -> float:
    """`10 min`, `1 h 30`, `2 h`, or a bare number in the unit that stands at the end of the range."""
    if parts := re.fullmatch(r"(\d+) h (\d\d)", text):
        return int(parts[1]) * 60 + int(parts[2])
    number, _, own = text.partition(" ")
    return float(number) * UNIT_MINUTES[own or unit]


@given(st.integers(10, 5000), st.integers(0, 5000))
def test_a_printed_time_is_never_shorter_than_the_time(low: int, more: int) -> None:
    text = said(MM.time(between(low, low + more)))
    ends = text.split(" – ")
    unit = text.rpartition(" ")[2]
    first, last = minutes_of(ends[0], unit), minutes_of(ends[-1], unit)
    assert first <= low
    assert last >= low + more


SCALES = [
    (7.0, 7.0, "US", "US 7"),
    (8.86, 8.86, "US", "US 8¾"),
    (6.77, 7.23, "US", "US 6¾ – 7¼"),
    # the low end down and the high end up, so that the range holds what the ring may come to
    (6.85, 7.1, "US", "US 6¾ – 7¼"),
    (0.5, 0.5, "US", "US ½"),
    # letters count from C: L is 9, N½ is 11½ (GNU Units 2.22, BS 6820)
    (9, 9, "UK", "UK L"),
    (11.06, 12.01, "UK", "UK N – O½"),
    (54.421, 54.421, "ISO", "ISO 54.4"),
    (53.82, 55.01, "ISO", "ISO 53.8 – 55.1"),
    (13.39, 14.54, "JP", "JP 13.3 – 14.6"),
]


@pytest.mark.parametrize(("low", "high", "scale", "printed"), SCALES, ids=[s[3] for s in SCALES])
def test_a_ring_size_is_printed_as_its_scale_is_marked(low: float, high: float, scale: str, printed: str) -> None:
    assert told(between(low, high), scale) == printed


def test_a_ring_off_the_letters_is_said_to_be_off_them() -> None:
    assert told(30, "UK") == "outside the UK scale (77.5 mm round)"
    assert told(30, "UK", numbers=INCH) == "outside the UK scale (3 3/64 in round)"  # 77.5 ÷ 25.4 × 64 = 195.3


def test_a_fired_size_is_printed_by_its_ends_and_a_cut_size_by_its_middle() -> None:
    s = Interval(21.978, 21.739, 22.223)
    assert told(s, "mm") == "21.7 – 22.3 mm"
    assert told(s, "mm", "bench") == "22 mm"


def test_a_number_is_never_parted_from_its_unit() -> None:
    assert '<span class="n">22\u00a0mm</span>' in str(words.prose((shown(22, "mm", "bench"),)))
    assert MM.printed(interval(7), "", "fine").told == "7"
    assert INCH.printed(interval(25.4), "mm", "bench").told == "1\u00a0in"


def test_what_is_printed_is_a_number_with_its_words_and_its_unit() -> None:
    printed = INCH.printed(interval(27.9), "mm", "bench")
    assert (printed.words, printed.unit) == ("1 3/32", "in")
    assert printed == pytest.approx(1.09375 * 25.4)  # as it is cut, still in mm


def test_what_is_bought_by_length_is_one_fraction_in_the_list_and_in_its_figure() -> None:
    # 460 mm are 18.11 in: 18 1/4
    assert told(460, "mm", "length up", INCH) == "18 1/4 in"
    line = MaterialLine(Item(id="wire", name="Wire", unit="mm"), interval(460))
    told_of = amounts(line, (), INCH.rounder)
    assert told_of is not None
    assert said(told_of.listed) == "18 1/4 in"


@pytest.mark.parametrize(
    ("grams", "printed"), [(0.00046, "0.46 mg"), (0.0042, "4.2 mg"), (0.0051, "0.01 g"), (0.42, "0.42 g")]
)
def test_fine_wire_under_5_mg_is_printed_in_mg(grams: float, printed: str) -> None:
    assert told(grams, "g") == printed
    assert told(grams, "g", numbers=INCH) == printed


PROSE = [
    ("*soft* and **hard**", "<em>soft</em> and <strong>hard</strong>"),
    ("- one\n- two", "<ul>\n<li>one</li>\n<li>two</li>\n</ul>"),
    ("<script>alert(1)</script>rest", "&lt;script&gt;alert(1)&lt;/script&gt;rest"),
    ("<b onclick=x>bold</b>", "&lt;b onclick=x&gt;bold&lt;/b&gt;"),
    ("[a](javascript:alert(1))", '<a rel="noopener noreferrer">a</a>'),
    ("<img src=x onerror=y>", "&lt;img src=x onerror=y&gt;"),
    ("Use the <former> you have.", "Use the &lt;former&gt; you have."),
    ("5 < 6 & 7 > 3", "5 &lt; 6 &amp; 7 &gt; 3"),
]


@pytest.mark.parametrize(("text", "html"), PROSE, ids=[p[0] for p in PROSE])
def test_prose_becomes_clean_html(text: str, html: str) -> None:
    assert str(words.prose((text,), inline=True)).strip() == html


def test_a_figure_in_prose_is_put_in_after_the_washing() -> None:
    text = ("Cut ", shown(22, "mm", "bench"), " by *", shown(7, ""), "*.")
    assert (
        said(words.prose(text, inline=True)) == 'Cut <span class="n">22 mm</span> by <em><span class="n">7</span></em>.'
    )


def test_a_sign_that_marks_a_figure_cannot_be_forged() -> None:
    assert "22" not in str(words.prose(("\ue0000\ue001 and ", shown(22, "mm")))).split("and")[0]


def test_a_run_of_brackets_is_cut_to_what_markdown_reads_quickly() -> None:
    assert str(words.prose(("[" * 5000,))).count("[") < 4


def test_plain_words_have_no_marks() -> None:
    assert said(words.plain(("A *soft* `thing`\n of ", shown(22, "mm", "bench")))) == "A soft thing of 22 mm"


def test_no_line_ends_inside_a_date_or_a_rate_and_a_date_by_itself_is_as_written() -> None:
    joined = "\u2060"  # no line ends at it
    assert words.kept("revision 2, 2026-11-27") == f"revision 2, 2026-{joined}11-{joined}27"
    assert words.kept("Heat up at, °C/h") == f"Heat up at, °C/{joined}h"
    assert words.kept("2026-11-27") == "2026-11-27"  # a machine reads it


def test_no_line_ends_inside_a_range_whatever_stands_round_its_dash() -> None:
    printer = Printer()
    # 30 mm hold the words and the first number, not the second
    for written in ("11.7 – 12.1 mm", "18–54 h", "18\u202f–\u202f54\u00a0h", "0.5 – 0.7 mm"):
        html = (
            "<!doctype html><html lang='en'><head><meta charset='utf-8'><title>x</title><style>@page { size: 100mm }"
            f"</style></head><body><p style='width: 30mm; font: 12pt serif'>Comes out at {words.kept(written)}</p>"
        )
        with pdfplumber.open(io.BytesIO(printer.pdf(f"{html}</body></html>", "narrow"))) as pdf:
            lines = pdf.pages[0].extract_text().split("\n")
        assert len(lines) == 2
        assert lines[1][0].isdigit(), f"{lines} begins with the whole range"
        assert lines[1].endswith(written[-1])
