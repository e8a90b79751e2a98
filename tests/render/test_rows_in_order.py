"""The rows of the bench are all printed, in the order in which they are done: what is damp is never fired."""

from __future__ import annotations

from typing import Any

import pytest

from sheetgen.render.job import Job, Paper
from sheetgen.render.musts import checked_html
from sheetgen.render.pdf import Printer

HAS = tuple((id_, frozenset({"12", "12 h"})) for id_ in ("step-1", "step-2", "step-3"))
CUT, DRY, FIRE = (
    f"<div data-step='step-{at}'><b>{said}</b></div>" for at, said in enumerate(["Cut.", "Dry: 12 h.", "Fire."], 1)
)
PAGE = """<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Rod</title><style>
@page {{ size: 148mm 105mm }} html {{ font: 10pt/1.4 'Source Sans Pro' }} {css}</style></head><body>
{rows}</body></html>"""


@pytest.fixture(scope="module")
def printer() -> Any:
    return Printer()


@pytest.fixture
def told(printer: Any) -> Any:
    """What is told of these rows on paper and on a screen."""

    def of(*rows: str, css: str = "") -> tuple[list[str], list[str]]:
        html = PAGE.format(rows="".join(rows), css=css)
        [out] = printer.printed(Job((html,), (Paper("card"),), given=HAS))
        return list(out.faults), [str(fault) for fault in checked_html(html, (), (), HAS)]

    return of


def test_rows_in_order_are_told_of_nothing_in_columns_too(told: Any) -> None:
    assert told(CUT, DRY, FIRE) == ([], [])
    assert told("<div class='two'>", CUT, DRY, FIRE, "</div>", css=".two { columns: 2 }") == ([], [])


def test_a_wait_that_is_left_out_is_told(told: Any) -> None:
    for found in told(CUT, FIRE):
        assert [fault.partition("'")[2] for fault in found] == ["step-2' is left out, a row of the bench"]


def test_a_row_before_what_is_done_first_is_told(told: Any) -> None:
    for found in told(CUT, FIRE, DRY):
        assert len(found) == 1
        assert "'step-3' stands before 'step-2', which is done first" in found[0]


def test_a_row_that_is_carried_above_what_is_done_first_is_told(told: Any) -> None:
    carried = "[data-step=step-1] { margin-top: 20mm } [data-step=step-3] { position: absolute; top: 0 }"
    [fault] = told(CUT, DRY, FIRE, css=carried)[0]
    assert "'step-3' stands before 'step-2', which is done first" in fault
