"""A class that makes several designs: what they share is told and printed for all, and what does not fit by itself too.

The designs are those of tests/work/together, where they are planned; here they are made up from a list.
"""

from __future__ import annotations

import shutil
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from tests.classes.conftest import Bench

if TYPE_CHECKING:
    from collections.abc import Callable

    from tests.classes.conftest import Held

DESIGNS = Path(__file__).parents[1] / "work" / "together"
WELL = 0


@pytest.fixture(scope="module")
def evening(tmp_path_factory: pytest.TempPathFactory) -> Callable[..., Held]:
    """A class of these designs, so many of each."""

    def made(*, printed: bool = False, evenings: str = "", **people: int) -> Held:
        root = tmp_path_factory.mktemp("library")
        (root / "projects" / "stock").mkdir(parents=True)
        shutil.copy(DESIGNS / "studio.yaml", root / "projects")
        shutil.copy(DESIGNS / "stock.yaml", root / "projects" / "stock")
        names = {name.replace("_", "-"): many for name, many in people.items()}
        for name in names:
            (root / "projects" / name).mkdir()
            shutil.copy(DESIGNS / f"{name}.yaml", root / "projects" / name / "project.yaml")
        bench = Bench(root)
        if evenings:
            bench.change("studio.yaml", '"18:00-20:00", "18:00-20:00"', evenings)
        return bench.held(
            *(f"Pupil {i} of {name},{name},,,,1" for name, many in names.items() for i in range(many)), printed=printed
        )

    return made


def test_a_class_of_two_designs_that_fit_only_apart_is_told_with_what_would_make_it_fit(
    evening: Callable[..., Held],
) -> None:
    """Six and six at three torches, half an hour each: four rounds, and not two and two."""
    held = evening(printed=True, bangle=6, bar=6)
    assert held.code == WELL, held.said
    assert held.said.count("6 of a class of 12 do not get through") == 2
    assert "4 of ‘Torch’ in place of 3" in held.said
    assert "Torch: 3 for 12 who use it in one evening" in held.said
    words = " ".join(held.pages("teacher-bangle-as-designed"))
    assert "It fits with 4 of torch or with pupils in pairs or with evenings 30 min longer." in words


def test_what_a_plan_by_itself_would_need_is_not_told_where_others_share(evening: Callable[..., Held]) -> None:
    """Cut for 80 min and heated in two rounds a bar takes over an evening, with no others too: but not what is told."""
    held = evening(bar_slowly_cut=6, bangle=6, evenings='"18:00-20:00"')
    assert "a class of 6 does not get through" not in held.said
    assert held.said.count("6 of a class of 12 do not get through") == 2


def test_the_teachers_sheet_says_whose_the_hours_are_and_counts_the_tools_for_all(evening: Callable[..., Held]) -> None:
    held = evening(printed=True, bangle_quickly=6, bar_quickly=6)
    assert "warning" not in held.said, held.said
    words = " ".join(held.pages("teacher-bangle-quickly-as-designed"))
    assert "The hours are those of this design by itself; 6 others of the class make another." in words
    assert "Torch: 3 for 12, step 2" in words


def test_pieces_of_two_designs_in_one_load_are_told_as_one(evening: Callable[..., Held]) -> None:
    held = evening(printed=True, disc_20=3, token_20=3)
    assert "Fire it (Disc of 20 mm), with the pieces of other designs: 6 pieces, 1 load\n" in held.said
    assert held.said.count("with the pieces of other designs") == 1
    [paper] = [row for row in held.rows("buy") if row["item"] == "kiln-paper"]
    assert paper["needed"] == "1"  # a sheet to a firing
    assert "Fire it, with the pieces of other designs" in " ".join(held.pages("teacher-token-20-as-designed"))


def test_a_class_of_one_design_shares_with_nobody(evening: Callable[..., Held]) -> None:
    held = evening(bangle=6)
    assert "planned by themselves" not in held.said
    assert "who use it in one evening" not in held.said
