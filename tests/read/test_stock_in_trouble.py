"""An item of stock in trouble is withheld by itself: the others of its file are used, and each fault is told once."""

from __future__ import annotations

from typing import Any

import pytest

CLAYS = "stock/clays.yaml"
OTHERS = "stock/others.yaml"
EPOXY = "  epoxy:\n    name: Test epoxy\n"
# Which item has a fault of shape, how it stands and how it is written amiss; the fault's line is the one with ‸ in it.
SHAPES = [
    ("epoxy", EPOXY, "  epoxy:\n    ‸nmae: Test epoxy\n"),
    ("epoxy", "    cautions: [epoxy]\n", "    cautions: ‸{a: b}\n"),
    ("epoxy", "    cure: 12-24 h\n", "    ‸cure:\n"),
    ("epoxy", "    cure: 12-24 h\n", "    cure: 12-24 h\n    ‸cure: 6 h\n"),
    ("glass-2", "    size: 1.95-2 mm\n", "    size: ‸[1.95 mm, 2 mm]\n"),
    ("knife", "    name: Craft knife\n    cautions: [blade]\n", "    ‸Craft knife\n"),
    ("knife", "  knife:\n    name: Craft knife\n", "  knife:\n    name: Knife\n  ‸knife:\n    name: Craft knife\n"),
]


def told(outcome: Any) -> list[tuple[str, int]]:
    return [(t.place.source.name.removeprefix("projects/"), t.place.line) for t in outcome.troubles.errors]


@pytest.mark.parametrize(("item", "old", "new"), SHAPES, ids=[one[2].replace("\n", " ").strip() for one in SHAPES])
def test_one_fault_of_shape_holds_back_only_the_projects_that_use_the_item(
    item: str, old: str, new: str, library: Any
) -> None:
    # the link is made of the same file's wire, the pendant with its roller, and both are well
    library.change(OTHERS, old, new)
    text = library.path(OTHERS).read_text("utf-8")
    library.write(OTHERS, text.replace("‸", ""))
    outcome = library.check()
    used = item != "knife"  # no project uses the knife
    assert sorted(worked.name for worked in outcome.worked) == (
        ["link", "pendant"] if used else ["drops", "link", "pendant"]
    )
    line = text[: text.index("‸")].count("\n") + 1
    faults = [t for t in outcome.troubles.errors if t.place.source.name.endswith("others.yaml")]
    assert {t.place.line for t in faults} <= {line, line - 1}
    assert any(t.place.line == line for t in faults)
    blamed = [t for t in outcome.troubles.errors if "in stock, but its own data" in t.message]
    assert len(blamed) == used
    assert all(t.help.startswith(f"first mend projects/{OTHERS}:{line}:") for t in blamed)


def test_the_fault_itself_is_told_before_what_it_leads_to(library: Any) -> None:
    library.change(CLAYS, "    metal share: 92 %", "    metal share: [92 %]")
    names = [t.place.source.name for t in library.check().troubles.gathered()]
    assert names == [f"projects/{CLAYS}", "projects/drops/project.yaml", "projects/pendant/project.yaml"]


def test_an_item_in_trouble_is_told_once_a_project_however_often_it_is_used(library: Any) -> None:
    library.change("pendant/project.yaml", "  clay: silver\n  width", "  width")
    text = library.path("pendant/project.yaml").read_text("utf-8")
    library.write(
        "pendant/project.yaml",
        text.replace("clay: clay", "clay: silver")
        .replace("[clay,", "[silver,")
        .replace("firing: clay", "firing: silver"),
    )
    library.change(CLAYS, "    metal share: 92 %", "    metal share: [92 %]")
    assert len(library.check("pendant").troubles.errors) == 2


def test_an_adhesive_in_trouble_is_not_said_to_be_used_nowhere(library: Any) -> None:
    library.change(OTHERS, EPOXY, "  epoxy:\n    nmae: Test epoxy\n")
    assert not [t for t in library.check("drops").troubles.errors if "no adhesive is used" in t.message]


def test_a_curing_without_any_adhesive_is_told_still(library: Any) -> None:
    library.change("drops/project.yaml", "uses: [stone, epoxy, ear-wire]", "uses: [stone, ear-wire]")
    assert [t.message for t in library.check("drops").troubles.errors] == [
        "no adhesive is used before this that has not cured"
    ]


def test_a_tool_in_trouble_is_not_passed_over_for_the_next_nearest(library: Any) -> None:
    library.change(OTHERS, "    kind: former\n", "    kind: former\n    lenght: 3\n")
    library.change(OTHERS, "  knife:\n", "  others:\n    name: Others\n    kind: former\n    sizes: [5 mm]\n  knife:\n")
    outcome = library.check("drops")
    assert not outcome.worked
    assert any("the former 'formers' is in stock, but" in t.message for t in outcome.troubles.errors)
    assert not any("5 mm" in t.message for t in outcome.troubles.errors)


def test_a_group_misspelt_is_one_fault_and_its_items_are_not_called_misspelt(library: Any) -> None:
    library.change(OTHERS, "stones:\n", "stons:\n")
    outcome = library.check()
    assert [t.message for t in outcome.troubles.gathered()] == [
        "there is no field 'stons' here",
        "'glass-2' is in stock, but its own data is in trouble",
    ]


def test_a_group_written_twice_leaves_the_first_one_in_use(library: Any) -> None:
    library.change(OTHERS, "stones:\n", "wires:\n  thin:\n    name: Thin\nstones:\n")
    library.change("drops/project.yaml", "uses: [drills]", "uses: [drills, thin]")
    outcome = library.check()
    assert sorted(worked.name for worked in outcome.worked) == ["link", "pendant"]
    assert [t.help for t in outcome.troubles.errors] == ["keep one of the two", f"first mend projects/{OTHERS}"]


def test_a_caution_in_trouble_is_told_once_and_what_names_it_is_withheld(library: Any) -> None:
    own = "cautions:\n  dye: {word: CAUTION, hazard: Dye, consequence: It stains.}\n"
    library.change(OTHERS, "stones:\n", f"{own}stones:\n")
    library.change(OTHERS, "    cautions: [epoxy]\n", "    cautions: [epoxy, dye]\n")
    outcome = library.check()
    assert [t.message for t in outcome.troubles.gathered()] == [
        "'avoid' is missing",
        "'epoxy' is in stock, but its own data is in trouble",
    ]
