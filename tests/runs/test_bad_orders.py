"""What somebody orders that cannot be made: it is told at its line and held back, and the others are made."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from sheetgen.model.stack import Stacked
from sheetgen.pipeline import Outcome
from sheetgen.render.pdf import Printer
from sheetgen.runs.documents import _named
from sheetgen.runs.orders import packed
from tests.runs.test_kinds import HEAD, ROOT, Read

if TYPE_CHECKING:
    from pathlib import Path


@pytest.fixture(scope="module")
def printer() -> Printer:
    return Printer()


def read(path: Path, printer: Printer, *lines: str) -> Read:
    table = path / "orders.csv"
    table.write_text(HEAD + "".join(f"{line}\n" for line in lines), "utf-8")
    outcome = Outcome()
    run, told = packed(ROOT, table, outcome, printer)
    return Read(run, told, [str(one) for one in outcome.troubles])


def numbers(found: Read) -> list[str]:
    return [order.number for order in found.run.orders] if found.run else []


def test_a_bracelet_longer_than_every_spool_is_held_back_and_the_others_are_made(
    tmp_path: Path, printer: Printer
) -> None:
    found = read(
        tmp_path, printer, "Q-1,,towline-bracelet,,1,wrist=165 in,,,,,", "Q-2,,tideline-band,US 8,1,,,,,,",
        "Q-3,,towline-bracelet,,1,wrist=165 in,,,,,",
    )  # fmt: skip
    assert numbers(found) == ["Q-2"]
    for line, trouble in zip((2, 4), found.troubles, strict=True):
        assert trouble.startswith(f"orders.csv:{line}:32: error: order Q-{line - 1}: Copper wire, 16 AWG")
        assert "longer than every length" in trouble
        assert "a shorter piece" in trouble


def test_an_order_whose_number_no_type_face_can_print_is_held_back_and_the_others_are_made(
    tmp_path: Path, printer: Printer
) -> None:
    found = read(tmp_path, printer, "𒀀-4,,tideline-band,US 8,1,,,,,,", "Ölberg-5,,tideline-band,US 8,1,,,,,,")
    assert numbers(found) == ["Ölberg-5"]
    [trouble] = found.troubles
    assert "orders.csv:2:1: error: order 𒀀-4: no type face of this machine" in trouble
    assert found.told == ["held back, since something of it is in trouble: 𒀀-4"]


@pytest.mark.parametrize("number", ["Q\u200b1", "\u202eQ-1", '"Q\n1"', "Q\u00a01"])
def test_an_order_s_number_holds_nothing_that_cannot_be_seen(tmp_path: Path, printer: Printer, number: str) -> None:
    """Two such numbers look alike on a label, and one may turn the words beside it round."""
    found = read(tmp_path, printer, f"{number},,tideline-band,US 8,1,,,,,,", "Q-2,,tideline-band,US 8,1,,,,,,")
    assert numbers(found) == ["Q-2"]
    assert "the order's number has a sign that cannot be seen" in found.troubles[0]
    assert len(found.told[0].splitlines()) == 1


def test_every_order_has_a_file_of_its_own_however_alike_their_numbers_are() -> None:
    orders = [Stacked(number, ()) for number in ("Q-1", "Q 1", "Q-1-2", "q/1", "Q-1-3", "..", "//")]
    names = [name for name, _ in _named(orders)]
    assert len(set(names)) == len(orders)
    assert dict(zip([one.number for one in orders], names, strict=True))["Q-1-2"] == "q-1-2.pdf"
    assert all("/" not in name and not name.startswith(".") for name in names)
