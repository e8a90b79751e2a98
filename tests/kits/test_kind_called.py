"""What was chosen is read first, and of the version's name only what is still true."""

from __future__ import annotations

from dataclasses import replace

import pytest

from sheetgen.base.frozen import Frozen
from sheetgen.kits.kind_called import still_holds
from sheetgen.kits.taken import Kits
from sheetgen.model.worked import WorkedVersion
from tests import lists_made as made


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
        ("Broad ring, US 7", [("ring", "US 7")], ""),  # one too many: it might say a size, as a small ring does
    ],
)
def test_of_a_versions_name_the_part_that_was_chosen_otherwise_is_not_said(
    title: str, own: list[tuple[str, str]], rest: str
) -> None:
    assert still_holds(title, own) == rest


def of_two(broad: str, slim: str, ring: str) -> list[str]:
    """Two versions of one design in US 7, each ordered with another `ring`, as their bags are called."""
    titles = {"broad": (broad, "8 mm"), "slim": (slim, "5 mm")}
    versions = {
        name: WorkedVersion(name, title, choices=Frozen({"ring": "US 7", "width": width}))
        for name, (title, width) in titles.items()
    }
    worked = replace(made.DROPS, versions=Frozen(versions))
    own = (("ring", "US 7"),)
    return [Kits(worked, one, 1, (("ring", ring),), posted=True, own=own).called for one in versions.values()]


def test_two_versions_are_never_called_the_same_however_little_of_their_names_still_holds() -> None:
    """Of both nothing would be left; so the whole name stands behind "else as", after what was chosen."""
    assert of_two("Broad ring, US 7", "Slim ring, US 7", "US 8") == [
        "ring US 8 (else as Broad ring, US 7)",
        "ring US 8 (else as Slim ring, US 7)",
    ]
    assert of_two("Broad, US 7", "US 7", "US 8") == ["ring US 8 (else as Broad)", "ring US 8"]
