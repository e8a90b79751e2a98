# ruff: noqa: E501 - a table is read by its rows
"""What may be wrong with a house step or with its use: told where it is written, and where it is used."""

from __future__ import annotations

from typing import Any

import pytest

STEPS = "steps/bench.yaml"
PENDANT = "pendant/project.yaml"
DRIED = "  - title: Dry\n    wait: drying\n    does: [test]\n"
SEVERAL = "fire:\n  takes:\n    pieces:\n  steps:\n    - title: Fire\n      firing: clay\n      parts: [pieces]\n"

# What stands in projects/steps, how the project uses it, where the trouble is told (`‸` before it, in either), what it
# says and what would help, and whether the use is told too.
FAULTS = [
    ("a house step misspelt", "damp dry:\n  title: Dry\n", "- house: ‸damp-drie", "no house step 'damp-drie'", "'damp dry'", False),
    ("none at all", "", "- house: ‸dry", "no house step 'dry'", "projects/steps", False),
    ("no name of one", "dry:\n  title: Dry\n", "- ‸house: [dry]", "wants the name", "dry", False),
    ("a parameter missing", 'dry:\n  takes:\n    how:\n  title: Dry\n  text: "{how}"\n', "- house: ‸dry", "wants its how", "add how", False),
    ("a parameter misspelt", 'dry:\n  takes:\n    how: so\n  title: Dry\n  text: "{how}"\n', "- house: dry\n    ‸hwo: x", "'hwo' is neither", "'how'", False),
    ("a field misspelt", "dry:\n  title: Dry\n", "- house: dry\n    ‸minuts: 3 min", "'minuts' is neither", "'minutes'", False),
    ("a field of several steps", SEVERAL, "- house: fire\n    pieces: [plate]\n    ‸text: x", "cannot be replaced", "it takes pieces", False),
    ("a list for one", 'dry:\n  takes:\n    piece:\n  title: Dry\n  text: "{{ piece.across }}"\n', "- house: dry\n    piece: ‸[plate, plate]", "this is a list", "give one", False),
    ("fields for a word", 'dry:\n  takes:\n    how:\n  title: Dry\n  text: "{how}"\n', "- house: dry\n    ‸how: {a: b}", "plain words or a list", "on one line", False),
    ("a number for a part", 'dry:\n  takes:\n    piece:\n  title: Dry\n  text: "{{ piece.across }}"\n', "- house: dry\n    piece: ‸3 mm", "'3 mm' is none", "give its name", False),
    ("given twice", 'dry:\n  takes:\n    the how:\n  title: Dry\n  text: "{the how}"\n', "- house: dry\n    the how: a\n    ‸the-how: b", "given twice", "keep one", False),
    ("a wrong number given", "dry:\n  takes:\n    time:\n  title: Dry\n  minutes: 2 * time\n", "- house: dry\n    time: 3 min + ‸4 g", "cannot be added", "same kind", False),
    ("a wrong name given in words", "dry:\n  takes:\n    how:\n  title: Dry\n  text: |\n    Dry\n    it {how}.\n", "- house: dry\n    how: for {{ ‸plat.across }}", "'plat.across' is not known", "plate", False),
    ("a part given that there is not", "dry:\n  takes:\n    pieces:\n  title: Dry\n  parts: [pieces]\n", "- house: dry\n    pieces: [‸plat]", "no part 'plat'", "'plate'", False),
    # In the house step, told at its use too
    ("an item misspelt", "dry:\n  title: Dry\n  uses: [‸rollr]\n", "- house: dry", "'rollr' is not in stock", "'roller'", True),
    ("a figure misspelt", "dry:\n  takes:\n    piece:\n  title: Dry\n  text: |\n    Dry it.\n    See {{ piece‸.wet_disk }}.\n", "- house: dry\n    piece: plate", "no figure 'wet_disk'", "'wet_disc'", True),
    ("a name that stands twice", "dry:\n  takes:\n    how: so\n  title: Dry {how}\n  text: >\n    A wet\n    disk is {{ ‸wet disk }} wide {how}.\n", "- house: dry", "'wet_disk' is not known", "", True),
    ("a time that is none", "dry:\n  takes:\n    n: 2\n  title: Dry\n  minutes: ‸n * 3 mm\n", "- house: dry", "is not a time", "10 min", True),
    ("a caution misspelt", "dry:\n  title: Dry\n  caution: [‸blad]\n", "- house: dry", "'blad' is not known", "'blade'", True),
    ("a default amiss", "dry:\n  takes:\n    n: ‸tools\n  title: Dry\n  uses: [n]\n", "- house: dry", "'tools' is not in stock", "", True),
    # In the house step itself, whoever uses it
    ("a parameter that nothing uses", "dry:\n  takes:\n    ‸how: so\n  title: Dry\n", "- house: dry", "nothing here uses 'how'", "take it out", False),
    ("braces that name none", "dry:\n  takes:\n    how: so\n  title: Dry {how}\n  text: |\n    Dry\n    it {‸hwo}.\n", "- house: dry", "'hwo' is no parameter", "'how'", False),
    ("no title", "dry:\n  ‸text: Dry.\n", "- house: dry", "'title' is missing", "add title", False),
    ("an unknown field", "dry:\n  title: Dry\n  ‸minuts: 3 min\n", "- house: dry", "no field 'minuts'", "'minutes'", False),
    ("a field beside steps", "dry:\n  ‸title: Dry\n  steps:\n    - title: One\n", "- house: dry", "no field 'title'", "steps", False),
    ("words for a list", "dry:\n  takes:\n    it: plate\n  title: Dry\n  parts: ‸it, plate\n", "- house: dry", "wants a list", "[one, two]", False),
    ("words for a step", "‸dry: the clay\n", "- house: dry", "fields of its own", "title", False),
    ("a name with a meaning", "dry:\n  takes:\n    ‸round: 3\n  title: Dry\n", "- house: dry", "cannot be the name", "another word", False),
    ("a name of signs", "dry:\n  takes:\n    ‸3 × a: 3\n  title: Dry\n", "- house: dry", "cannot be the name", "letters", False),
    ("a parameter that hides a word", "dry:\n  takes:\n    test: roller\n  title: Dry\n  does: [‸test]\n  uses: [test]\n", "- house: dry", "the parameter 'test' hides the word 'test' of does", "another name", False),
    ("a parameter that hides a word alone", "dry:\n  takes:\n    drying: 3 h\n  title: Dry\n  wait: ‸drying\n", "- house: dry", "hides the word 'drying' of wait", "another name", False),
    ("two names that are one", "dry:\n  takes:\n    a b: 3\n    ‸a-b: 3\n  title: Dry {a b}\n", "- house: dry", "a parameter twice", "keep one", False),
    ("written twice", "dry:\n  title: Dry\n‸dry:\n  title: Dry\n", "- house: dry", "written twice", "keep one", False),
    ("twice, parted otherwise", "damp dry:\n  title: Dry\n‸damp-dry:\n  title: Dry\n", "- house: damp dry", "a house step twice", "another name", False),
    ("a field with nothing after it", "dry:\n  title: Dry\n  ‸text:\n", "- house: dry", "nothing after it", "fill it in", False),
]  # fmt: skip


@pytest.mark.parametrize("case", FAULTS, ids=[case[0] for case in FAULTS])
def test_a_fault_is_told_where_it_is_written_and_where_it_is_used(case: tuple[Any, ...], library: Any) -> None:
    _, steps, uses, says, helps, used = case
    whole = library.path(PENDANT).read_text("utf-8").replace(DRIED, f"  {uses}\n" + DRIED)
    line = whole[: whole.index(uses)].count("\n") + 1
    marked, name = (steps, f"projects/{STEPS}") if "‸" in steps else (whole, f"projects/{PENDANT}")
    before = marked[: marked.index("‸")]
    if steps:
        library.write(STEPS, steps.replace("‸", ""))
    library.write(PENDANT, whole.replace("‸", ""))
    outcome = library.check()
    told = [t for t in outcome.troubles.gathered() if says in t.message]
    assert len(told) == 1, "\n".join(map(str, outcome.troubles))
    [trouble] = told
    assert trouble.place is not None
    at = (trouble.place.source.name, trouble.place.line, trouble.place.column)
    assert at == (name, before.count("\n") + 1, len(before) - before.rfind("\n"))
    assert helps in trouble.help
    lines = [place.line for place in trouble.place.used_at]
    assert ("used at projects/pendant/project.yaml:" in str(trouble)) == used
    assert all(line <= one <= line + uses.count("\n") for one in lines)
    # the project is held back, and no other
    assert sorted(worked.name for worked in outcome.worked) == ["drops", "link"]


def test_one_fault_used_by_several_is_told_once_with_every_use(library: Any) -> None:
    library.write(STEPS, "dry:\n  title: Dry\n  wait: drying\n  uses: [rollr]\n")
    library.change(PENDANT, DRIED, "  - house: dry\n  - house: dry\n")
    library.change("drops/project.yaml", DRIED, "  - house: dry\n")
    outcome = library.check()
    [trouble] = outcome.troubles.gathered()
    at = [line.strip() for line in str(trouble).splitlines() if "used at" in line]
    drops = library.path("drops/project.yaml").read_text("utf-8").splitlines().index("  - house: dry") + 1
    assert at == [
        f"used at projects/drops/project.yaml:{drops}:12",
        "used at projects/pendant/project.yaml:25:12",
        "used at projects/pendant/project.yaml:26:12",
    ]
    assert [worked.name for worked in outcome.worked] == ["link"]


def test_what_is_wrong_with_the_order_of_a_project_is_told_where_the_project_uses_the_step(library: Any) -> None:
    library.write(STEPS, "fire:\n  title: Fire\n  firing: clay\n")
    library.change(
        PENDANT, DRIED + "  - title: Fire\n    firing: clay\n    uses: [firing-box, carbon]\n", "  - house: fire\n"
    )
    [trouble] = library.check("pendant").troubles.errors
    assert "nothing dries it before" in trouble.message
    assert str(trouble.place) == "projects/pendant/project.yaml:25:12"


def test_a_faulty_house_step_holds_back_only_the_projects_that_use_it(library: Any) -> None:
    library.write(STEPS, "dry:\n  title: Dry\n  wait: drying\nfire:\n  tite: Fire\n  firing: clay\n")
    library.write("steps/more.yaml", "odd: [\n")
    library.change(PENDANT, DRIED, "  - house: dry\n")
    library.change(
        "drops/project.yaml", "  - title: Fire\n    firing: clay\n    uses: [firing-box, carbon]\n", "  - house: fire\n"
    )
    outcome = library.check()
    assert sorted(worked.name for worked in outcome.worked) == ["link", "pendant"]
    told = [(t.message, t.help) for t in outcome.troubles.errors if t.place and "drops" in t.place.source.name]
    assert told == [("'fire' is a house step, but it is in trouble itself", "first mend projects/steps/bench.yaml:4:1")]


@pytest.mark.parametrize(("written", "also"), [("[]", set()), ("[blade, pin]", {"blade"})])
def test_no_use_of_a_house_step_takes_a_caution_of_it_away(written: str, also: set[str], library: Any) -> None:
    library.write(STEPS, "dry:\n  title: Dry\n  wait: drying\n  does: [test]\n  caution: [pin, torch]\n")
    library.change(PENDANT, DRIED, f"  - house: dry\n    caution: {written}\n")
    outcome = library.check("pendant")
    assert not outcome.troubles.errors
    assert {one.id for one in outcome.worked[0].main.steps[1].cautions} == {"pin", "torch"} | also


def test_two_files_cannot_hold_one_house_step(library: Any) -> None:
    library.write(STEPS, "dry:\n  title: Dry\n  wait: drying\n")
    library.write("steps/more.yaml", "dry:\n  title: Dry\n  wait: drying\n")
    library.change(PENDANT, DRIED, "  - house: dry\n")
    outcome = library.check()
    assert any("twice; first at projects/steps/bench.yaml:1:1" in t.message for t in outcome.troubles.errors)
    assert "pendant" in outcome.failed
