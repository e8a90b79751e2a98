"""Class lists, honest and wrong, as a teacher writes them: who is read, and what is told of the rest."""

from __future__ import annotations

import re
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

import pytest

from sheetgen.base.trouble import Trouble, Troubles
from sheetgen.read.pupils import read_pupils

if TYPE_CHECKING:
    from sheetgen.model.class_list import PupilLine

HERE = Path(__file__).parent
HONEST = sorted((HERE / "honest").iterdir())
WRONG = sorted((HERE / "wrong").iterdir())
VERSIONS = {"buoy-drops": ("Silver, short", "Silver, long"), "tideline-band": ("US 7", "US 5", "US 8", "US 9")}
SECRETS = (
    "Wren",
    "Tidewell",
    "Odo",
    "ODO",
    "Marsh",
    "Ida",
    "Knot",
    "Bo",
    "Tern",
    "Käthe",
    "0555",
    "Nickelfree",
    "long one",
)

# Of each honest file: name, design, version, choices, colourway, table.
COMES_TO = {
    "one-design.csv": [
        ("Wren Tidewell", "tideline-band", "US 8", {}, "", "1"),
        ("Odo Marsh", "tideline-band", "US 7", {}, "", "1"),
        ("Ines Sandpiper", "tideline-band", "US 7", {}, "", "2"),
    ],
    "any-order-and-case.csv": [
        ("Odo Marsh", "tideline-band", "US 8", {}, "", "Window"),
        ("Käthe Möwe", "tideline-band", "US 7", {}, "", "Door"),
    ],
    "two-designs.csv": [
        ("Marsh, Odo", "buoy-drops", "Silver, short", {}, "Grey Sea", "1"),
        ("Ida Knot", "tideline-band", "US 7", {"size": "US 9"}, "", "1"),
        ("Bo Tern", "buoy-drops", "Silver, short", {"height": "20 mm", "bore": "8 mm"}, "slate", "1"),
    ],
    "no-table.csv": [
        ("Ida Knot", "buoy-drops", "Silver, short", {}, "", ""),
        ("Bo Tern", "buoy-drops", "Silver, short", {}, "", ""),
    ],
    "numbers-for-names.csv": [
        ("1", "buoy-drops", "Silver, short", {}, "", "1"),
        ("2", "buoy-drops", "Silver, short", {}, "", "1"),
    ],
    "begins-with-a-sign.csv": [
        ("=Odo", "buoy-drops", "Silver, short", {}, "", "-1"),
        ("@Ida", "buoy-drops", "Silver, short", {}, "", "-1"),
    ],
    "table-spelt-two-ways.csv": [
        ("Odo Marsh", "buoy-drops", "Silver, short", {}, "", "Window"),
        ("Ida Knot", "buoy-drops", "Silver, short", {}, "", "Window"),
        ("Bo Tern", "buoy-drops", "Silver, short", {}, "", "Window"),
    ],
}

# Of each wrong file: how many pupils are kept, and of each trouble its line, what it says, its mend.
TOLD = {
    "no-design-column.csv": (0, [(1, "no column is called 'design'", "wanted are name and design; there may be")]),
    "no-name-column.csv": (0, [(1, "no column is called 'name'", "wanted are name and design")]),
    "double-column.csv": (0, [(1, "two columns are called 'design'", "keep one")]),
    "misspelt-column.csv": (0, [(1, "there is no column 'verison'", "did you mean 'version'?")]),
    "own-columns.csv": (1, [(1, "the columns 'phone' and 'allergy' are not read", "read are name, design")]),
    "no-header.csv": (0, [(1, "no column is called 'name' or 'design'", "the first line names the columns")]),
    "only-header.csv": (0, [(1, "no pupil stands under", "a line for each pupil")]),
    "design.csv": (
        1,
        [
            (3, "there is no design 'bouy-drops'", "did you mean 'buoy-drops'?"),
            (4, "the design is missing", "known here: buoy-drops"),
            (5, "there is no design 'earrings'", "known here: buoy-drops"),
        ],
    ),
    "version.csv": (
        1,
        [
            (3, "tideline-band has no version 'US 10'; known: US 7, US 5", "write one of these"),
            (4, "tideline-band has no version '8'; known: US 7", "write one of these"),
        ],
    ),
    "choices.csv": (
        1,
        [
            (3, "the choice 'US 8' has no '='", "write name=value"),
            (4, "the choice 'size' is made twice", "keep one of the two"),
        ],
    ),
    "no-name.csv": (1, [(3, "the pupil has no name", "a name, or a number")]),
    "name-not-quoted.csv": (
        1,
        [
            (3, "the design stands in another column", "between quotation marks"),
            (4, "the line has 7 cells", "between quotation marks"),
        ],
    ),
    "twice.csv": (3, [(4, "the name is the same as on line 2", "unless they are two")]),
    "some-without-table.csv": (2, [(3, "sits at no table, and others do", "fill in 'table'")]),
    "long-table.csv": (0, [(2, "the table's name has 70 letters", "at most 40")]),
    "failed-formula.csv": (1, [(2, "'version' is a formula that failed", "mend the formula")]),
}
WARNED = {"own-columns.csv", "twice.csv", "some-without-table.csv"}


class Read(NamedTuple):
    pupils: tuple[PupilLine, ...]
    troubles: list[Trouble]


def read(path: Path) -> Read:
    troubles = Troubles()
    return Read(read_pupils(path, path.name, VERSIONS, troubles), list(troubles))


def test_every_file_here_has_its_row_in_the_table() -> None:
    assert {path.name for path in HONEST} == COMES_TO.keys()
    assert {path.name for path in WRONG} == TOLD.keys()


@pytest.mark.parametrize("path", HONEST, ids=lambda path: path.stem)
def test_an_honest_list_is_read_whole_and_nothing_is_said(path: Path) -> None:
    found = read(path)
    assert [str(one) for one in found.troubles] == []
    assert [
        (one.name, one.design, one.version, dict(one.choices), one.colourway, one.table) for one in found.pupils
    ] == COMES_TO[path.name]


@pytest.mark.parametrize("path", WRONG, ids=lambda path: path.stem)
def test_what_is_wrong_is_told_at_its_line_with_a_mend_and_the_rest_is_kept(path: Path) -> None:
    kept, told = TOLD[path.name]
    found = read(path)
    assert [one.place.line for one in found.troubles if one.place] == sorted(line for line, *_ in told)
    for trouble, (_, message, helped) in zip(found.troubles, sorted(told), strict=True):
        assert message in trouble.message
        assert helped in trouble.help
        assert trouble.severity == ("warning" if path.name in WARNED else "error")
    assert len(found.pupils) == kept


@pytest.mark.parametrize("path", WRONG + HONEST, ids=lambda path: path.stem)
def test_no_trouble_and_no_repr_shows_a_name_or_a_table(path: Path) -> None:
    found = read(path)
    for told in (*map(str, found.troubles), *map(repr, found.troubles), *map(repr, found.pupils)):
        assert not [secret for secret in SECRETS if re.search(rf"\b{secret}\b", told)], told
