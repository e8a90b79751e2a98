"""Kit cards on paper: half a page each with a line to cut along, a whole one where need be; a gift note is whole."""

from __future__ import annotations

import io
from dataclasses import replace
from typing import Any

import pdfplumber
import pytest

from sheetgen.model.cards import Card
from sheetgen.model.kit_cards_view import KitCard, Ticked, Warned
from sheetgen.render.kit_cards import kit_cards_pdf
from sheetgen.render.pdf import Printer
from sheetgen.render.theme import Theme

MM = 25.4 / 72
TALL = {"A4": 297, "Letter": 279.4}
THEME = Theme("plain", [])
NOTE = ("For your birthday, with love from all at number nine; may the tide be kind, and the kiln kinder. " * 5)[:400]
ROW = Ticked("", "12", "+ 1 to spare", "Glass stone", "2 mm, round")
KIT = KitCard(
    slip=False, title="Buoy drops", version="Long", colourway="grey sea", rows=(ROW,) * 6, box=("Setting bur",),
    lacking=("release balm", "alcohol"), tools=True, warned=(Warned("WARNING", "Small parts. Choke a small child."),),
    foot="revision 2 · 2026-11-27 · K7M3QX · Quillmarsh Bench",
)  # fmt: skip


@pytest.fixture(scope="module")
def printer() -> Printer:
    return Printer()


def card(number: str, rows: int = 6, note: str = "") -> Card:
    return Card(number, "kit 1 of 1", replace(KIT, rows=(ROW,) * rows), note)


def pages(printer: Printer, *cards: Card, paper: str = "A4") -> list[Any]:
    made = kit_cards_pdf(cards, [paper], THEME, printer)
    return list(pdfplumber.open(io.BytesIO(made.pdfs[paper])).pages)


def words(page: Any) -> list[tuple[float, str]]:
    """The words of a page, with how far down they stand, mm."""
    return [(word["top"] * MM, word["text"]) for word in page.extract_words()]


def numbers(page: Any) -> list[tuple[str, str]]:
    half = float(page.height) * MM / 2
    return [(text, "upper" if down < half else "lower") for down, text in words(page) if text.startswith("Q-")]


def cut_lines(page: Any) -> list[float]:
    return [one["top"] * MM for one in page.lines if float(one["width"]) > float(page.width) - 13 / MM]


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_two_cards_stand_on_a_page_with_a_line_in_its_middle(printer: Printer, paper: str) -> None:
    first, second = pages(printer, card("Q-1"), card("Q-2"), card("Q-3"), paper=paper)
    assert [numbers(first), numbers(second)] == [[("Q-1", "upper"), ("Q-2", "lower")], [("Q-3", "upper")]]
    for page in (first, second):
        assert float(page.height) * MM == pytest.approx(TALL[paper], abs=0.1)
        assert cut_lines(page) == pytest.approx([TALL[paper] / 2], abs=0.1)


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_no_ink_of_a_card_lies_within_a_quarter_inch_of_an_edge(printer: Printer, paper: str) -> None:
    for page in pages(printer, card("Q-1", note=NOTE), card("Q-2", rows=25), paper=paper):
        inked = [*page.chars, *page.lines, *page.rects]
        edges = [one[side] for one in inked for side in ("x0", "top")]
        edges += [float(page.width) - one["x1"] for one in inked] + [
            float(page.height) - one["bottom"] for one in inked
        ]
        assert min(edges) * MM >= 6.35 - 0.01


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_a_card_that_needs_more_than_half_a_page_takes_a_whole_one(printer: Printer, paper: str) -> None:
    found = pages(printer, card("Q-1"), card("Q-2", rows=25), card("Q-3"), card("Q-4"), paper=paper)
    assert [numbers(page) for page in found] == [
        [("Q-1", "upper")], [("Q-2", "upper")], [("Q-3", "upper"), ("Q-4", "lower")],
    ]  # fmt: skip
    assert cut_lines(found[1]) == []
    assert all(down < TALL[paper] - 10 for down, _ in words(found[1]))


def test_a_card_of_more_than_a_page_goes_on_with_its_number(printer: Printer) -> None:
    found = pages(printer, card("Q-1", rows=60, note=NOTE), card("Q-2"))
    assert [[number for number, _ in numbers(page)] for page in found] == [["Q-1"], ["Q-1", "Q-1"], ["Q-2"]]
    stones = [sum(text == "stone," for _, text in words(page)) for page in found]
    assert sum(stones[:2]) == 60
    assert "kinder." in " ".join(text for _, text in words(found[1]))


def test_a_pile_of_cards_is_cut_at_half_its_height_and_no_note_is_cut_through(printer: Printer) -> None:
    """Short notes and long ones on cards short and long: a line at half the sheet wherever it is cut apart."""
    notes = ("", "Happy solstice!", NOTE)
    each = [card(f"Q-{rows}{n}", rows, note) for rows in (5, 6, 8) for n, note in enumerate(notes)]
    found = pages(printer, *each, card("Q-9", 25, NOTE))
    for page in found:
        half = TALL["A4"] / 2
        if sum(text == "stone," for _, text in words(page)) < 25:
            assert any(line == pytest.approx(half, abs=0.1) for line in cut_lines(page))
            assert not any(down < half < down + 5 for down, _ in words(page))
    letters = " ".join(text for page in found for _, text in words(page))
    assert (letters.count("solstice!"), letters.count("birthday,")) == (3, 4 * NOTE.count("birthday,"))


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_a_card_and_its_note_are_never_on_two_sheets(printer: Printer, paper: str) -> None:
    """Cards of several lengths, after one that leaves half a page free."""
    for rows in (5, 8, 9, 25):
        found = pages(printer, card("Q-1"), card("Q-2", rows, NOTE), card("Q-3"), paper=paper)
        [sheet] = [" ".join(text for _, text in words(page)) for page in found if "Q-2" in dict(numbers(page))]
        assert "Packed" in sheet
        assert sheet.count("birthday,") == NOTE.count("birthday,")


def test_a_note_that_is_cut_off_bears_the_number_of_its_order(printer: Printer) -> None:
    for rows in (4, 8):  # below its card, and on a half of its own
        [page] = pages(printer, card("Q-2602", rows, "Happy solstice!"))
        downs = [down for down, text in words(page) if text == "Q-2602"]
        [note] = [down for down, text in words(page) if text == "solstice!"]
        assert 0 < note - max(downs) < 8
        [small] = {round(c["size"], 1) for c in page.chars if abs(c["top"] * MM - max(downs)) < 0.1}
        assert small == 8.5


def test_nothing_of_a_card_is_on_the_other_side_of_the_cut(printer: Printer) -> None:
    """The largest that still goes on half a page, with its note at the foot."""
    for rows in range(4, 16):
        found = pages(printer, card("Q-1", rows, NOTE), card("Q-2", rows, NOTE))
        if len(found) == 1:
            [page] = found
            upper = [down for down, _ in words(page) if down < TALL["A4"] / 2]
            assert max(upper) < TALL["A4"] / 2 - 8
            [signed] = [down for down, text in words(page) if text == "Packed" and down < TALL["A4"] / 2]
            assert signed + 4 < min(down for down, text in words(page) if text == "For")
            assert sum(text == "stone," for down, text in words(page) if down < TALL["A4"] / 2) == rows
            fits = rows
    assert fits >= 5
    assert len(found) > 1


@pytest.mark.parametrize(
    "note",
    [NOTE, "Με αγάπη από όλους μας, και καλή τύχη με το καμίνι. " * 8, "В день рождения, с любовью от всех нас! " * 10],
    ids=["Latin", "Greek", "Cyrillic"],
)
def test_a_gift_note_of_400_letters_is_all_there(printer: Printer, note: str) -> None:
    page = pages(printer, card("Q-1", note=note), card("Q-2"))[0]
    assert " ".join(note.split()) in " ".join(text for _, text in words(page))


def test_a_gift_note_keeps_its_lines(printer: Printer) -> None:
    [page] = pages(printer, card("Q-1", note="Dear Wren,\nwith love\nAda"))
    downs = {text: down for down, text in words(page)}
    assert downs["Dear"] < downs["with"] < downs["Ada"]


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_a_note_is_cut_off_along_a_line_with_a_margin_of_its_own(printer: Printer, paper: str) -> None:
    """It is given without the card: below the line nothing but the note, 6 mm or more clear on every side."""
    for rows in (5, 6, 8):  # at the foot of its half; on the other half, by itself
        [page] = pages(printer, card("Q-1", rows, note="For Wren,\nwith love\nAda"), paper=paper)
        [*inner, middle] = sorted(cut_lines(page))
        along, below = (inner[0], middle) if inner else (middle, TALL[paper])
        held = [word for word in page.extract_words() if along < word["top"] * MM < below]
        assert [word["text"] for word in held] == ["Q-1", "For", "Wren,", "with", "love", "Ada"]
        assert min(word["top"] * MM for word in held) >= along + 6
        assert max(word["bottom"] * MM for word in held) <= below - 6
        assert min(word["x0"] * MM for word in held) >= 6
        assert max(down for down, text in words(page) if text == "Packed") + 3 < along


def test_a_card_says_by_when_its_order_is_due_and_nothing_where_nobody_said_so(printer: Printer) -> None:
    first, second = (replace(card(number), due=due) for number, due in (("Q-1", "2026-12-01"), ("Q-2", "")))
    [page] = pages(printer, first, second)
    due = [(round(down), text) for down, text in words(page) if text in {"due", "2026-12-01"}]
    assert [text for _, text in due] == ["due", "2026-12-01"]
    assert max(down for down, _ in due) < TALL["A4"] / 2


def test_a_note_too_long_for_any_card_is_visibly_shortened(printer: Printer) -> None:
    found = pages(printer, card("Q-1", note=NOTE * 20))
    text = " ".join(text for page in found for _, text in words(page))
    assert "…" in text
    assert len(text) > 1500


def test_a_note_that_is_read_from_the_right_begins_there(printer: Printer) -> None:
    [page] = pages(printer, card("Q-1", note="שלום, וברכה."))
    letters = {c["text"]: c["x0"] for c in page.chars if "א" <= c["text"] <= "ת" or c["text"] == "."}
    assert letters["ש"] > letters["כ"] > letters["ה"]
    stops = [c["x0"] for c in page.chars if c["text"] == "." and abs(c["top"] - page.chars[-1]["top"]) < 4]
    assert min(stops) < letters["ה"]


def test_a_long_note_that_is_read_from_the_right_stays_on_its_half(printer: Printer) -> None:
    [page] = pages(printer, card("Q-1", rows=4, note="באהבה רבה מכולנו ליום ההולדת, " * 9), card("Q-2"))
    lows = [c["bottom"] * MM for c in page.chars if "א" <= c["text"] <= "ת"]
    assert len({round(low) for low in lows}) > 2
    assert max(lows) < TALL["A4"] / 2 - 8


def test_a_slip_says_that_it_is_sent_by_itself_and_not_what_must_be_to_hand(printer: Printer) -> None:
    slip = replace(KIT, slip=True, lacking=(), box=(), tools=False)
    [page] = pages(printer, Card("Q-9", "part 1 of 1", slip))
    text = " ".join(text for _, text in words(page))
    assert "Q-9" in text
    assert "Sent by itself" in text
    assert "Not in it" not in text


def test_a_slip_of_a_whole_bag_says_which(printer: Printer) -> None:
    slip = replace(KIT, slip=True, lacking=(), box=(), tools=False, alone="A clay")
    [page] = pages(printer, Card("Q-9", "part 1 of 1", slip))
    assert "A clay, sent by itself, to go with" in " ".join(text for _, text in words(page))


def test_a_card_says_all_that_it_must(printer: Printer) -> None:
    [page] = pages(printer, card("Q-2602"))
    text = " ".join(text for _, text in words(page))
    for said in (
        "Q-2602", "kit 1 of 1", "Buoy drops", "Long", "grey sea", "12 + 1 to spare", "Glass stone, 2 mm, round",
        "In the box: Setting bur",
        "Not in the kit, and must be to hand: release balm, alcohol, and the tools of the handout’s list.",
        "WARNING Small parts. Choke a small child.", "revision 2 · 2026-11-27 · K7M3QX · Quillmarsh Bench",
    ):  # fmt: skip
        assert said in text, said


def test_what_of_a_card_is_wider_than_its_column_is_told_by_design_and_version(printer: Printer) -> None:
    wide = replace(KIT, rows=(replace(ROW, amount="120000000 mm × 2 mm"), ROW))
    made = kit_cards_pdf([Card("Q-1", "kit 1 of 1", wide), card("Q-2")], ["A4"], THEME, printer)
    assert made.troubles
    assert all(told.message.startswith("the kit card of Buoy drops, Long: ") for told in made.troubles)


def test_a_letter_that_cannot_be_printed_is_told_by_the_orders_number_alone(printer: Printer) -> None:
    made = kit_cards_pdf([card("Q-1", note=NOTE), card("Q-2", note="love \U00016f00")], ["A4"], THEME, printer)
    [told] = made.troubles
    assert "order Q-2: its gift note" in told.message
    assert "love" not in str(told)
    text = " ".join(text for page in pdfplumber.open(io.BytesIO(made.pdfs["A4"])).pages for _, text in words(page))
    assert "(see the order)" in text
    assert "love \U00016f00" not in text
