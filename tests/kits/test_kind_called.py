"""What was chosen is read first, and of the version's name only what is still true."""

from __future__ import annotations

import pytest

from sheetgen.kits.kind_called import still_holds


@pytest.mark.parametrize(
    ("title", "own", "rest"),
    [
        ("Copper, wrist 160 mm", [("wrist", "160 mm")], "Copper"),
        ("US 7", [("size", "US 7")], ""),
        ("Broad, US 7", [("size", "US 7")], "Broad"),
        ("UK N½", [("size", "UK N½")], ""),
        ("Wrist 160, copper", [("wrist", "160 mm")], "copper"),  # named without its unit
        ("Wide, 12mm", [("across", "12 mm")], "Wide"),
        ("Class of 12", [("people", "12")], ""),
        ("Silver, short", [("height", "24 mm")], "Silver, short"),
        ("Long, 24 mm", [("width", "4 mm")], "Long, 24 mm"),  # 24 is not 4
        ("US 7½", [("size", "US 7")], "US 7½"),
        ("US 7.5", [("size", "US 7")], "US 7.5"),
        ("Sterling clay, US 7", [("clay", "silver-low-fire"), ("size", "US 7")], ""),
        ("Resized in copper", [("size", "7")], "Resized in copper"),
        ("Plain", [("mark", "")], "Plain"),
    ],
)
def test_of_a_versions_name_the_part_that_was_chosen_otherwise_is_not_said(
    title: str, own: list[tuple[str, str]], rest: str
) -> None:
    assert still_holds(title, own) == rest
