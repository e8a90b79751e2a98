"""What differs only in its size is one line of the list, with a box and an amount for each size."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from sheetgen.model.view import Html, Need
from sheetgen.render.like_needs import gathered

if TYPE_CHECKING:
    from collections.abc import Iterable


def needs(*told: str) -> list[Need]:
    """Each as `name; detail; amount`."""
    return [Need(name, detail, Html(amount)) for name, detail, amount in (one.split("; ") for one in told)]


def said(listed: Iterable[Need]) -> list[str]:
    return [f"{n.name}; {n.detail}; {n.amount}" + "".join(f" [{s.size} {s.amount}]" for s in n.sizes) for n in listed]


def test_three_sizes_of_one_bead_stand_in_one_line_from_the_smallest() -> None:
    listed = gathered(needs("Bead 12 mm; grey; 1", "Cord; 1 mm; 2 m", "Bead 8 mm; grey; 27", "Bead 9.5 mm; grey; 2"))
    assert said(listed) == ["Bead; grey;  [8\u00a0mm 27] [9.5\u00a0mm 2] [12\u00a0mm 1]", "Cord; 1 mm; 2 m"]


def test_what_is_not_alike_or_only_two_keeps_its_line_and_its_place() -> None:
    for honest in (
        ("Bead 12 mm; grey; 1", "Cord; 1 mm; 2 m", "Bead 8 mm; grey; 27"),
        ("Bead 12 mm; grey; 1", "Bead 8 mm; green; 27", "Bead 6 mm; round; 2"),
        ("Sheet 12 mm by 8 mm; ; 1", "Sheet 12 mm by 9 mm; ; 1", "Sheet 12 mm by 7 mm; ; 1"),
        ("Ring 4 mm; of 1 mm wire; 1", "Ring 5 mm; of 1.2 mm wire; 1", "Ring 6 mm; of 0.8 mm wire; 1"),
        ("Rod 4 mm; ; ", "Rod 5 mm; ; ", "Rod 6 mm; ; "),
    ):
        assert said(gathered(needs(*honest))) == said(needs(*honest))


def test_every_graded_bead_of_a_strand_is_on_its_list_with_its_spare(demo: Any, libraries: Any) -> None:
    # one in the middle, two of each other size; of 8 mm the bracelet's besides, counted for the smallest, 7.9 mm:
    # (166 + 3.1416 × 7.9) / 7.9 = 24.2, so 25; 5 % more to spare, of 27 two
    [agates] = [one for one in demo.handout("slackwater-strand").needs if one.name == "Agate bead"]
    listed = {libraries.said(s.size): libraries.said(s.amount) for s in agates.sizes}
    alike = dict.fromkeys(["6 mm", "7 mm", "9 mm", "10 mm", "11 mm"], "2 + 1")
    assert listed == alike | {"8 mm": "27 + 2", "12 mm": "1 + 1"}
