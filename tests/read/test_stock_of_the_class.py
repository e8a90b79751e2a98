# ruff: noqa: E501 - a table is read by its rows
"""What stock says for a class: where a tool lies and how many there are, what goes wrong, how a caution is told."""

from __future__ import annotations

from pathlib import Path
from typing import Any, NamedTuple

import pytest

from sheetgen.base.material import Tool
from sheetgen.base.trouble import Troubles
from sheetgen.facts.bench import TOOL_GROUPS
from sheetgen.read.library import read_library

ROOT = Path(__file__).parents[2]
OTHERS = "stock/others.yaml"
ROLLER = "  roller:\n    name: Roller\n"
CLASS = """\
cautions:
  scalding wax:
    word: WARNING
    hazard: Scalding wax.
    consequence: Burns and sticks.
    avoid: Dip with tongs.
    short: "Wax: tongs, sleeves"
    told: at the action
  steam:
    word: CAUTION
    hazard: Steam of the pot.
    consequence: Scalds.
    avoid: Lift the lid away from you.
    told: at the bench
  cold hands:
    word: NOTICE
    hazard: Cold hands.
    consequence: Clumsy.
    avoid: Warm them.
faults:
  cracked seam: {seen: A line opens along the seam, why: it dried too early, mend: Fill it with slip}
"""
SHORT = '    short: "Wax: tongs, sleeves"\n'


def stock(library: Any) -> Any:
    """What is read of a stock that is well."""
    troubles = Troubles()
    found = read_library(library.root, troubles)
    assert not list(troubles), "\n".join(map(str, troubles))
    assert found
    return found.stock


def test_a_tool_lies_in_its_group_and_a_class_knows_how_many_there_are(library: Any) -> None:
    library.change(OTHERS, ROLLER, ROLLER + "    group: clay bench\n    owned: 3\n")
    items = stock(library).items
    assert (items["roller"].group, items["roller"].owned) == ("clay bench", 3)
    assert (items["knife"].group, items["knife"].owned) == ("", 0)  # not said: everybody has one


def test_a_fault_is_known_by_its_name_with_what_is_seen_why_and_how_it_is_mended(library: Any) -> None:
    library.write("stock/class.yaml", CLASS)
    fault = stock(library).faults["cracked seam"]
    assert fault.name == "cracked seam"
    assert (fault.seen, fault.why, fault.mend) == (
        "A line opens along the seam", "it dried too early", "Fill it with slip"
    )  # fmt: skip


def test_a_caution_of_a_hot_action_is_told_there_and_every_other_before_the_steps(library: Any) -> None:
    library.write("stock/class.yaml", CLASS)
    cautions = stock(library).cautions
    at = {name: cautions[name].at_action for name in ("scalding wax", "steam", "cold hands")}
    assert at == {"scalding wax": True, "steam": False, "cold hands": False}
    assert cautions["scalding wax"].short == "Wax: tongs, sleeves"
    assert cautions["cold hands"].short == "Cold hands"  # without a reminder of its own, its hazard


class Wrong(NamedTuple):
    """A slip in the file of the class; `‸` stands before what the trouble points at."""

    rule: str
    old: str
    new: str
    says: str
    helps: str


WRONG = [
    Wrong("a place misspelt", "told: at the action", "told: ‸at the acton", "cannot be told 'at the acton'", "at the action"),
    Wrong("a reminder of 35 letters", SHORT, f"    short: ‸{'e' * 35}\n", "a reminder of 35 letters is too long", "at most 34"),
    Wrong("a reminder without words", SHORT, '    short: ‸"…"\n', "here are none", "fill it in"),
    Wrong("a reminder of nothing", SHORT, "    ‸short:\n", "nothing", "fill it in"),
    Wrong("a fault without a mend", ", mend: Fill it with slip", "", "'mend' is missing", "add mend"),
    Wrong("a mend without words", "mend: Fill it with slip", 'mend: ‸"?"', "a fault has words, and here are none", "fill it in"),
    Wrong("nothing to be seen", "seen: A line opens along the seam", 'seen: ‸"-"', "a fault has words", "fill it in"),
    Wrong("a fault's field misspelt", "mend: Fill it with slip", "‸mned: Fill it with slip", "no field 'mned'", "'mend'"),
    Wrong("a fault twice", "faults:\n  cracked", "faults:\n  cracked seam: {seen: a, why: b, mend: c}\n  ‸cracked", "twice", "keep one"),
    Wrong("a comma that ends a field", "mend: Fill it with slip", "mend: Fill it, ‸and dry it", "nothing after it", "in quotes"),
]  # fmt: skip


@pytest.mark.parametrize("wrong", WRONG, ids=[one.rule for one in WRONG])
def test_a_slip_in_what_is_said_for_a_class_is_told_at_its_place_with_its_mend(wrong: Wrong, library: Any) -> None:
    assert CLASS.count(wrong.old) == 1
    text = CLASS.replace(wrong.old, wrong.new)
    library.write("stock/class.yaml", text.replace("‸", ""))
    troubles = library.check().troubles
    about = [t for t in troubles.errors if wrong.says in t.message]
    assert about, "\n".join(map(str, troubles))
    assert wrong.helps in about[0].help
    if "‸" in text:
        before = text[: text.index("‸")]
        at = (before.count("\n") + 1, len(before) - before.rfind("\n"))
        assert at in {(t.place.line, t.place.column) for t in about}


def test_one_fault_may_not_be_told_in_two_files(library: Any) -> None:
    library.write("stock/class.yaml", CLASS)
    library.write("stock/more.yaml", "faults:\n  cracked seam: {seen: a, why: b, mend: c}\n")
    [trouble] = library.check().troubles.errors
    assert trouble.message == "the fault 'cracked seam' is written twice"
    assert trouble.help == "keep one"
    assert trouble.place.source.name == "projects/stock/more.yaml"


GROUPS = [("clay bnech", "'clay bench'"), ("Wire", "'wire'"), ("shelf", "clay bench")]


@pytest.mark.parametrize(("written", "helped"), GROUPS)
def test_a_group_that_no_bench_has_is_told_with_the_nearest(written: str, helped: str, library: Any) -> None:
    library.change(OTHERS, ROLLER, f"{ROLLER}    group: {written}\n")
    trouble = next(t for t in library.check().troubles.errors if "no group of tools" in t.message)
    assert f"'{written}'" in trouble.message
    assert helped in trouble.help
    assert trouble.place.source.line(trouble.place.line).strip() == f"group: {written}"


@pytest.mark.parametrize("written", ["0", "-2", "2.5", "three", "1001", "3 pairs", "²"])
def test_tools_are_counted_in_whole_numbers(written: str, library: Any) -> None:
    library.change(OTHERS, ROLLER, f"{ROLLER}    owned: {written}\n")
    trouble = next(t for t in library.check().troubles.errors if "no number of tools" in t.message)
    assert "a whole number" in trouble.help
    assert trouble.place.source.line(trouble.place.line).strip() == f"owned: {written}"


def test_a_tool_that_is_miscounted_holds_back_the_projects_that_use_it_and_no_other(library: Any) -> None:
    library.change(OTHERS, ROLLER, f"{ROLLER}    owned: some\n")
    assert [worked.name for worked in library.check().worked] == ["link"]  # drops and pendant are rolled


def test_every_tool_of_the_demonstration_lies_in_a_group_in_the_order_of_the_bench() -> None:
    troubles = Troubles()
    found = read_library(ROOT, troubles)
    assert found
    tools = [item for item in found.stock.items.values() if isinstance(item, Tool)]
    assert not [tool.id for tool in tools if tool.group not in TOOL_GROUPS]
    order = [TOOL_GROUPS.index(tool.group) for tool in tools]
    assert order == sorted(order)
    kiln = found.stock.items["kiln"]
    assert isinstance(kiln, Tool)
    assert (kiln.group, kiln.owned) == ("kiln", 1)


def test_every_name_of_the_demonstrations_stock_has_a_label_that_fits_a_list() -> None:
    found = read_library(ROOT, Troubles())
    assert found
    assert not [item.name for item in found.stock.items.values() if len(item.name.split(",")[0]) > 34]


def test_every_fault_of_the_demonstration_fits_a_row_of_the_teachers_table() -> None:
    found = read_library(ROOT, Troubles())
    assert found
    assert found.stock.faults
    told = [said for fault in found.stock.faults.values() for said in (fault.seen, fault.why, fault.mend)]
    assert not [said for said in told if len(said) > 60]
