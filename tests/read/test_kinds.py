"""A studio's own kind of part, in YAML: worked and drawn as any other, and every slip in it told at its place."""

# ruff: noqa: E501 - tables, a slip a row
from __future__ import annotations

import math
import pickle
from typing import TYPE_CHECKING, Any

import pytest

from sheetgen.base.place import Word
from sheetgen.base.trouble import Troubles
from sheetgen.parts.described import told
from sheetgen.read.library import read_library

if TYPE_CHECKING:
    from collections.abc import Callable

CONE = """\
kind: paper cone
about: A cone of clay rolled up from a flat sector. The radius of the sector is the slant of the cone.
fields:
  clay:
    item: clay
    role: made of
    about: the clay it is cut from
  across:
    length: finished width of the open end
    above: 0 mm
  height:
    length: finished height
    above: 0 mm
  seam:
    one of: [butted, lapped]
    about: how its edges meet
  lap:
    length: width of the lap, wet
    default: 2 mm
    at least: 0 mm
  hole:
    length: finished hole to hang it by
    optional: yes
    above: 0 mm
  thickness:
    length: what the clay is rolled to
    role: rolled to
    above: 0 mm
asides:
  wet across:
    value: usual(wet(across, clay.shrinkage))
    unit: mm
  more:
    value: lap if seam is lapped else 0 mm
    unit: mm
figures:
  slant:
    label: Radius to cut
    value: √(usual(wet(height, clay.shrinkage))² + (wet across ÷ 2)²)
    unit: mm
    round: tenth
    about: From the point of the sector to its arc.
  turn:
    label: Angle to cut
    value: 180 × wet across ÷ slant
    unit: °
    about: Of the sector, without the lap.
    needs:
      - need: turn ≤ 180
        say: makes a cone so flat that it does not stand
        at: across
        most: height
  drill:
    label: Drill
    value: nearest(usual(wet(hole, clay.shrinkage)), drawer.drill)
    unit: mm
    when: hole
    at: hole
  clay mass:
    label: Clay, each
    value: >-
      (π × slant² × turn ÷ 360 + slant × more)
      × thickness × clay.density ÷ 1000 mm³/cm³
    unit: g
    round: mass up
    role: clay mass
needs:
  - need: lap ≥ thickness
    say: is less than the clay is thick ({thickness})
    at: lap
    least: thickness
    when: seam is lapped
    rule: least-lap
sizes:
  - label: radius
    figure: slant
    tool: template
takes:
  - item: clay
    amount: count × clay mass
    each: clay mass
tools:
  - kind: drill
    size: drill
    when: hole
outline:
  points:
    - [0 mm, 0 mm]
    - [0 mm, 0 mm − more]
    - [slant, 0 mm − more]
    - [slant, 0 mm]
    - arc: turn
      around: [0 mm, 0 mm]
  holes:
    - disc: drill
      at: [slant ÷ 2, slant ÷ 9]
      when: hole
hazards: [blade]
"""

CONES = """\
title: Cones
revision: 1
date: 2026-01-10
summary: A cone cut {{ cone.slant }} in radius.
makes: 2 cones
level: first piece
choices:
  clay: silver
parts:
  cone:
    kind: paper cone
    clay: clay
    across: 12 mm
    height: 20 mm
    thickness: 1 mm
    count: 2
steps:
  - title: Cut
    parts: [cone]
    uses: [clay]
    minutes: 10 min
    text: Cut {{ cone.slant }} at {{ cone.turn }}.
  - title: Dry
    wait: drying
    does: [test]
  - title: Fire
    firing: clay
    uses: [firing-box, carbon]
"""
KIND = "kinds/paper-cone.yaml"
# By geometry, and apart from the program: what is cut wet is 1 ÷ 0.91 of the finished size at 9 %.
SLANT = round(math.hypot(20 / 0.91, 6 / 0.91), 1)  # marked to 0.1 mm: 22.9
TURN = math.degrees(2 * math.pi * (6 / 0.91) / SLANT)  # the arc is as long as the open end is round: 103.7
SECTOR = math.pi * SLANT**2 * TURN / 360  # mm²


@pytest.fixture
def cones(tmp_path: Any, libraries: Any) -> Any:
    """A library with a kind of its own."""
    files = {
        "studio.yaml": libraries.STUDIO,
        "stock/clays.yaml": libraries.CLAYS,
        "stock/others.yaml": libraries.OTHERS,
        KIND: CONE,
        "cones/project.yaml": CONES,
    }
    return libraries.make(tmp_path, files)


def test_a_kind_of_the_studios_own_is_worked_as_any_other(cones: Any) -> None:
    version = cones.main("cones")
    figures = version.figures
    assert figures["cone.slant"].printed.told == f"{SLANT:.1f}\u00a0mm"
    assert figures["cone.turn"].value.usual == pytest.approx(TURN, rel=1e-4)
    mass = SECTOR * 1 * 7 / 1000
    assert figures["cone.clay_mass"].value.usual == pytest.approx(mass, rel=1e-4)
    assert mass < float(figures["cone.clay_mass"].printed) <= mass + 0.1  # what is weighed out is enough
    assert "cone.drill" not in figures
    [line] = [m for m in version.materials if m.item.id == "silver"]
    assert line.net.usual == pytest.approx(2 * mass, rel=1e-4)
    piece = version.parts["cone"]
    assert [s.label for s in piece.sizes] == ["radius"]
    assert piece.tools == ()
    assert piece.deep.usual == 1


def test_its_workings_come_to_their_values_by_pencil(cones: Any, pencil: Any) -> None:
    for figure in cones.main("cones").figures.values():
        assert pencil.reckon(figure.working) == pytest.approx(figure.value.usual, rel=1e-4), figure.working


def test_its_template_is_the_sector_that_the_figures_tell(cones: Any) -> None:
    [flat] = cones.main("cones").parts["cone"].flat
    assert flat.outline.area == pytest.approx(SECTOR, rel=1e-3)
    assert flat.outline.perimeter == pytest.approx(2 * SLANT + math.pi * 12 / 0.91, rel=1e-3)
    assert (min(x for x, _ in flat.outline.points), min(y for _, y in flat.outline.points)) == (0, 0)
    assert flat.thickness == 1
    assert flat.holes == ()


def test_what_is_chosen_shows_in_the_template(cones: Any) -> None:
    cones.change(
        "cones/project.yaml", "    thickness: 1 mm\n", "    thickness: 1 mm\n    hole: 2 mm\n    seam: lapped\n"
    )
    piece = cones.main("cones").parts["cone"]
    [flat] = piece.flat
    assert flat.outline.area == pytest.approx(SECTOR + 2 * SLANT, rel=1e-3)
    [hole] = flat.holes
    assert hole.width == hole.height == 2.2  # 2 ÷ 0.91 is 2.198: the nearest owned
    left = SLANT * math.cos(math.radians(TURN))  # how far the sector reaches to the left of its point
    assert hole.centre == pytest.approx((SLANT / 2 - left, SLANT / 9 + 2), abs=1e-3)
    assert piece.tools == (("drill", 2.2),)


@pytest.mark.usefixtures("quick")
def test_its_pages_are_made_and_its_template_drawn(cones: Any) -> None:
    outcome = cones.publish()
    assert not outcome.troubles.errors, "\n".join(map(str, outcome.troubles))
    assert outcome.published == ["cones"]


def test_a_worked_part_knows_no_file(cones: Any) -> None:
    version = cones.main("cones", clay="copper")
    piece = version.parts["cone"]
    assert pickle.loads(pickle.dumps(piece)).figures == piece.figures  # noqa: S301 - made just now
    words = [*piece.roles, *(s.label for s in piece.sizes), *(k for k, _ in piece.tools)]
    words += [f.label for f in piece.figures.values()] + [piece.kind, *piece.hazards]
    assert not [w for w in words if isinstance(w, Word)]


def test_its_needs_are_told_at_the_field_of_the_project(cones: Any) -> None:
    cones.change("cones/project.yaml", "across: 12 mm", "across: 90 mm")
    [trouble] = cones.check().troubles.errors
    assert str(trouble).startswith("projects/cones/project.yaml:13:13: error: cone: across makes a cone so flat")
    assert "20 mm or less" in trouble.help


def test_a_rule_of_it_may_be_waived(cones: Any) -> None:
    cones.change(
        "cones/project.yaml", "    thickness: 1 mm\n", "    thickness: 1 mm\n    seam: lapped\n    lap: 0.8 mm\n"
    )
    [trouble] = cones.check().troubles.errors
    assert "lap is less than the clay is thick (1 mm)" in trouble.message
    assert "waive: {least-lap:" in trouble.help
    cones.change("cones/project.yaml", "choices:", "waive:\n  least-lap: tried, and it held\nchoices:")
    assert not cones.check().troubles.errors


def test_a_missing_field_and_a_misspelt_one_are_told_as_of_any_kind(cones: Any) -> None:
    cones.change("cones/project.yaml", "    height: 20 mm\n", "    heigth: 20 mm\n")
    said = [(t.message, t.help) for t in cones.check().troubles.errors]
    assert ("a paper cone has no field 'heigth'", "did you mean 'height'?") in said
    assert ("'cone' wants its height: finished height", "add height: …") in said


def test_kinds_tells_it_as_any_other(cones: Any) -> None:
    library = read_library(cones.root, Troubles())
    assert library
    lines = told("paper cone", library.kinds["paper cone"])
    assert (
        "  A cone of clay rolled up from a flat sector\n  The radius of the sector is the slant of the cone." in lines
    )
    assert "    across: finished width of the open end (length, as 38 mm, over 0) [must be given]" in lines
    assert "    seam: how its edges meet (butted | lapped) [butted]" in lines
    assert "    hole: finished hole to hang it by (length, as 38 mm, over 0) [may be left out]" in lines
    assert "    slant: Radius to cut, mm" in lines


# What is planted in the file: words that stand there once, what stands in their place; what is said, the mend, and the
# words that the caret stands under.
SLIPS: list[tuple[str, str, str, str, str, str]] = [
    ("a name that is none", "÷ slant\n", "÷ slent\n", "'slent' is not known", "did you mean 'slant'?", "slent"),
    ("a name in a folded text", "× thickness × clay", "× thikness × clay", "'thikness' is not known", "'thickness'", "thikness"),
    ("a unit that is missing", " ÷ 1000 mm³/cm³", "", "comes to g·mm³/cm³", "÷ 1000 mm³/cm³ is missing", "π"),
    ("a figure whose unit is not told", "    unit: mm\n    round: tenth\n", "    round: tenth\n", "comes to a length, and no unit is told", "unit: mm", "√"),
    ("a number without its unit", "    - [slant, 0 mm]\n", "    - [6.7, 0 mm]\n", "comes to a bare number, and a length is wanted", "such as 38 mm", "6.7"),
    ("needs that stand too far out", "    needs:\n      - need: turn ≤ 180\n        say: makes a cone so flat that it does not stand\n        at: across\n        most: height\n", "  needs:\n      - need: turn ≤ 180\n        say: makes a cone so flat that it does not stand\n        at: across\n        most: height\n", "'needs' cannot be a name here", "indent it", "needs"),
    ("a bare number among lengths", "(wet across ÷ 2)²)", "4)", "a bare number cannot be added to an area", "", "4"),
    ("a formula that is none", "value: usual(wet(across", "value: usual(wett(across", "the function 'wett' is not known", "'wet'", "wett"),
    ("a formula of too few numbers", "usual(wet(across, clay.shrinkage))", "wet(across)", "wet wants 2 numbers", "fired, s", "wet"),
    ("a word that it never is", "value: lap if seam is lapped", "value: lap if seam is laped", "'seam' is never 'laped'", "lapped", "laped"),
    ("what may be left out", "    when: hole\n    at: hole\n", "    at: hole\n", "'hole' may be left out", "when: hole", "hole"),
    ("a number of clay that is none", "clay.density", "clay.weight", "a clay has no 'weight'", "'clay.density'", "clay.weight"),
    ("a tool that no drawer holds", "drawer.drill", "drawer.dril", "a drawer holds no 'dril'", "'drill'", "drawer.dril"),
    ("a bracket left open", "180 × wet across ÷ slant", "180 × (wet across ÷ slant", "ends too soon", "", "t"),
    ("a figure worked from itself", "value: 180 × wet across ÷ slant", "value: turn", "'turn' is worked from itself: turn → turn", "", "turn"),
    ("a unit that no sheet prints", "    unit: °\n", "    unit: furlong\n", "a figure cannot be in 'furlong'", "one of mm", "furlong"),
    ("a rounding that is none", "round: tenth", "round: tenths", "there is no rounding 'tenths'", "'tenth'", "tenths"),
    ("a role that is none", "role: rolled to", "role: roled to", "there is no role 'roled to'", "'rolled to'", "roled to"),
    ("a part of clay and no mass", "    role: clay mass\n", "", "nothing in it has the role 'clay mass'", "the figure that says", "clay"),
    ("an item without a role", "    role: made of\n", "", "'clay' does not say what it does", "made of", "clay"),
    ("an item that stock has not", "item: clay\n    role", "item: cley\n    role", "stock holds no 'cley'", "'clay'", "cley"),
    ("a bound of another sort", "the open end\n    above: 0 mm", "the open end\n    above: 0 g", "'above' wants a length", "38 mm", "0 g"),
    ("a default out of bounds", "default: 2 mm", "default: 0 − 2 mm", "the lap cannot be 0 − 2 mm", "0 mm or more", "0 − 2 mm"),
    ("two sorts at once", "    length: width of the lap, wet\n", "    length: width of the lap, wet\n    mass: x\n", "'lap' is two things at once", "one of these", "lap"),
    ("no sort at all", "    length: width of the lap, wet\n", "", "'lap' does not say what it takes", "one of these", "lap"),
    ("a line that there is not", "    label: Drill\n", "    lable: Drill\n    label: Drill\n", "there is no field 'lable'", "'label'", "lable"),
    ("a figure without a label", "    label: Drill\n", "", "'label' is missing", "add label", "value"),
    ("a group that there is not", "hazards: [blade]", "hazard: [blade]", "there is no field 'hazard'", "'hazards'", "hazard"),
    ("a caution in braces", "hazards: [blade]", "hazards: {blade: 2}", "a caution is a name", "", "{blade"),
    ("a caution in a list of its own", "hazards: [blade]", "hazards: [[blade]]", "a caution is a name", "", "[blade]]"),
    ("a caution that nobody wrote", "hazards: [blade]", "hazards: [blades]", "the caution 'blades' is not known", "'blade'", "blades"),
    ("a field to blame that is none", "        at: across\n", "        at: acros\n", "there is no field 'acros' to blame", "'across'", "acros"),
    ("a number in braces", "({thickness})", "({thicknes})", "'thicknes' is not known", "'thickness'", "thicknes"),
    ("a condition that is none", "    when: seam is lapped\n    rule", "    when: lap\n      is lapped\n    rule", "no choice between words", "", "lap"),
    ("a size of no figure", "    figure: slant\n", "    figure: slent\n", "there is no figure 'slent'", "'slant'", "slent"),
    ("a tool of no kind", "  - kind: drill\n", "  - kind: dril\n", "there is no kind of tool 'dril'", "'drill'", "dril"),
    ("a take of no field", "  - item: clay\n", "  - item: cley\n", "there is no field 'cley' to take from", "'clay'", "cley"),
    ("an outline's point", "    - [slant, 0 mm]\n", "    - [slent, 0 mm]\n", "'slent' is not known", "'slant'", "slent"),
    ("an outline's angle in mm", "arc: turn", "arc: slant", "comes to a length, and a bare number is wanted", "", "slant"),
    ("a point of one number", "    - [slant, 0 mm]\n", "    - [slant]\n", "'a point' wants two numbers", "[12 mm, 8 mm]", "slant]"),
    ("a hole that may not be there", "      when: hole\nhaz", "haz", "'drill' is there only when hole", "when: hole", "drill"),
    ("an outline that is two", "outline:\n", "outline:\n  disc: slant\n", "one shape, and not disc and points", "one of", "slant"),
    ("a name that every part has", "  slant:\n", "  count:\n    label: x\n    value: 1\n  slant:\n", "'count' cannot be a name here", "every part has", "count"),
    ("a name that has a meaning", "  more:\n", "  sum:\n    value: 2 mm\n    unit: mm\n  more:\n", "nothing may be called 'sum'", "", "sum"),
    ("a name twice", "  more:\n", "  slant:\n    value: 2 mm\n    unit: mm\n  more:\n", "'slant' is named twice", "another name", "slant"),
    ("no name of the kind", "kind: paper cone\n", "", "'kind' is missing", "add kind", "about"),
    ("the name of a kind there is", "kind: paper cone", "kind: tube", "there is a kind 'tube' already", "another name", "tube"),
    ("clay that it does not take", "takes:\n  - item: clay\n    amount: count × clay mass\n    each: clay mass\n", "", "takes none of it from stock", "count × …", "clay"),
    ("yes or no", "optional: yes", "optional: maybe", "'optional' is yes or no, not 'maybe'", "write yes", "maybe"),
    ("a choice of one", "[butted, lapped]", "[lapped]", "'seam' leaves no choice", "one of:", "seam"),
]  # fmt: skip


@pytest.mark.parametrize(("what", "old", "new", "says", "helps", "under"), SLIPS, ids=[s[0] for s in SLIPS])
def test_a_slip_is_told_at_its_place(  # noqa: PLR0917 - a case has so many columns
    what: str, old: str, new: str, says: str, helps: str, under: str, cones: Any
) -> None:
    cones.change(KIND, old, new)
    troubles = cones.check().troubles.errors
    own = [t for t in troubles if t.place and t.place.source.name == f"projects/{KIND}"]
    assert own, what
    found = [t for t in own if says in t.message]
    assert found, [t.message for t in own]
    [trouble] = found
    assert helps in trouble.help
    assert trouble.place
    line = trouble.place.source.line(trouble.place.line)
    assert line[trouble.place.column - 1 :].startswith(under), (line, trouble.place.column)


ONE_FAULT = [s for s in SLIPS if s[0] not in {"a choice of one", "no name of the kind"}]


@pytest.mark.parametrize(("old", "new"), [s[1:3] for s in ONE_FAULT], ids=[s[0] for s in ONE_FAULT])
def test_one_slip_is_one_trouble_of_the_kind_and_one_of_the_project(old: str, new: str, cones: Any) -> None:
    cones.change(KIND, old, new)
    outcome = cones.check()
    said = [str(t) for t in outcome.troubles.errors]
    of_kind = [s for s in said if s.startswith(f"projects/{KIND}")]
    of_project = [s for s in said if s.startswith("projects/cones")]
    assert len(of_kind) == 1, said
    assert len(of_project) == 1, said
    assert outcome.failed == ["cones"]


def test_all_slips_of_one_file_are_told_in_one_run(cones: Any) -> None:
    planted = ["a name that is none", "a name in a folded text", "a word that it never is", "a rounding that is none",
               "a default out of bounds", "a number in braces", "an outline's point", "a caution that nobody wrote"]  # fmt: skip
    for what in planted:
        [(_, old, new, *_rest)] = [s for s in SLIPS if s[0] == what]
        cones.change(KIND, old, new)
    said = [t.message for t in cones.check().troubles.errors]
    for what in planted:
        [says] = [s[3] for s in SLIPS if s[0] == what]
        assert any(says in message for message in said), says
    assert len(said) == len(planted) + 1  # and the project, once


def test_projects_that_use_a_kind_in_trouble_say_so_once_and_no_others(cones: Any, libraries: Any) -> None:
    cones.change(KIND, "÷ slant\n", "÷ slent\n")
    cones.change("cones/project.yaml", "  cone:\n", "  other:\n    kind: paper cone\n    nonsense: 3\n  cone:\n")
    cones.write("pendant/project.yaml", libraries.PENDANT)
    outcome = cones.check()
    [of_project] = [t for t in outcome.troubles.errors if "projects/cones/" in str(t)]
    assert of_project.message == "'paper cone' is a kind of this library, but its own file is in trouble"
    assert of_project.help == f"first mend projects/{KIND}:1:7"
    assert [w.name for w in outcome.worked] == ["pendant"]


def test_a_kind_whose_file_cannot_be_read_is_withheld_too(cones: Any) -> None:
    cones.change(KIND, "  clay:\n", "  clay: [\n")
    outcome = cones.check()
    assert any("its own file is in trouble" in t.message for t in outcome.troubles.errors)
    assert not any("there is no kind" in t.message for t in outcome.troubles.errors)


def test_two_files_of_one_kind_are_told(cones: Any) -> None:
    cones.write("kinds/second.yaml", CONE)
    [trouble] = cones.check().troubles.errors
    assert str(trouble).startswith(
        "projects/kinds/second.yaml:1:7: error: 'paper cone' is the kind of another file too"
    )


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("    - arc: turn\n", "    - arc: turn × 9\n", "goes more than once round"),
        ("- [slant, 0 mm]\n", "- [slant × 1000, 0 mm]\n", "reaches too far"),
        ("- [slant, 0 mm − more]", "- [slant, slant ÷ (turn − turn)]", "cannot be drawn"),
        (
            "    - [slant, 0 mm]\n    - arc: turn\n      around: [0 mm, 0 mm]\n",
            "    - [0 mm, slant]\n    - [slant × 2, slant]\n",
            "crosses itself",
        ),
    ],
)
def test_an_outline_that_cannot_be_drawn_is_told_at_its_part(old: str, new: str, says: str, cones: Any) -> None:
    cones.change(KIND, old, new)
    [trouble] = cones.check().troubles.errors
    assert str(trouble).startswith("projects/cones/project.yaml:10:3: error: cone: its outline cannot be drawn")
    assert says in trouble.message or says == "cannot be drawn"


def test_a_point_that_is_an_empty_list_is_told_at_what_stands_before_it(cones: Any) -> None:
    cones.change(KIND, "    - [slant, 0 mm]\n", "    - [slant, 0 mm]\n    - []\n")
    told = [one for one in cones.check().troubles.errors if "wants two numbers" in one.message]
    line = cones.path(KIND).read_text("utf-8").split("\n").index("    - [slant, 0 mm]") + 1
    assert [one.place.line for one in told] == [line]


@pytest.mark.parametrize("spot", ["0 mm, 0 mm", "slant × 3, slant ÷ 9", "slant ÷ 2, 0 mm"])
def test_a_hole_that_reaches_over_the_edge_is_told_and_not_printed(spot: str, cones: Any) -> None:
    cones.change("cones/project.yaml", "    thickness: 1 mm\n", "    thickness: 1 mm\n    hole: 2 mm\n")
    assert not cones.check().troubles.errors
    cones.change(KIND, "at: [slant ÷ 2, slant ÷ 9]", f"at: [{spot}]")
    [trouble] = cones.check().troubles.errors
    assert "a hole in it reaches over its edge" in trouble.message
    assert "upper left corner" in trouble.help


def test_a_template_that_cannot_be_drawn_hides_no_other_trouble(cones: Any) -> None:
    cones.change(KIND, "    - arc: turn\n", "    - arc: turn × 9\n")
    cones.change("cones/project.yaml", "Cut {{ cone.slant }} at", "Cut {{ cone.slent }} at")
    told = [t.message for t in cones.check().troubles.errors]
    assert len(told) == 2, told
    assert any("outline cannot be drawn" in message for message in told)
    assert any("slent" in message for message in told)


def test_a_size_finds_its_figure_however_its_words_are_parted(cones: Any) -> None:
    cones.change(KIND, "figure: slant\n", "figure: clay mass\n")
    assert not [t for t in cones.check().troubles.errors if "there is no figure" in t.message]


HOSTILE: dict[str, Callable[[], str]] = {
    "empty": lambda: "",
    "a word": lambda: "cone",
    "a list": lambda: "- kind: cone\n",
    "fields that are none": lambda: "kind: x\nabout: y\nfields: 3\nfigures: [1, 2]\nneeds: z\noutline: q\ntakes: {a: b}\n",
    "nothing but a name": lambda: "kind: x\nabout: y\n",
    "deep brackets": lambda: CONE.replace("180 × wet across ÷ slant", "(" * 300 + "1" + ")" * 80),
    "a row of squares": lambda: CONE.replace("180 × wet across ÷ slant", "slant" + "²" * 300),
    "formulas inside formulas": lambda: CONE.replace("180 × wet across ÷ slant", "cap_blank(" * 25 + "slant" + ", slant)" * 25),
    "thousands of figures": lambda: CONE.replace(
        "figures:\n", "figures:\n" + "".join(f"  f{i}:\n    label: x\n    value: f{i + 1}\n    unit: mm\n" for i in range(2000))
    ),
    "a long chain of figures": lambda: CONE.replace(
        "figures:\n", "figures:\n  f300:\n    label: x\n    value: slant\n    unit: mm\n"
        + "".join(f"  f{i}:\n    label: x\n    value: f{i + 1}\n    unit: mm\n" for i in range(300))
    ),
    "thousands of points": lambda: CONE.replace("    - [slant, 0 mm]\n", "    - [slant, 0 mm]\n" * 5000),
    "a name of another script": lambda: CONE.replace("kind: paper cone", "kind: конус"),
    "signs": lambda: CONE.replace("about: A cone", "about: \x1b[31m A cone"),
    "python": lambda: CONE.replace("180 × wet across ÷ slant", "__import__('os')"),
    "a format": lambda: CONE.replace("({thickness})", "({thickness.__class__})"),
    "a tag": lambda: CONE.replace("kind: paper cone", "kind: !!python/name:os.system cone"),
    "times": lambda: CONE.replace("outline:\n", "outline:\n  times: 999999999999\n"),
}  # fmt: skip


@pytest.mark.parametrize("text", HOSTILE.values(), ids=HOSTILE.keys())
def test_a_hostile_kind_is_told_and_stops_nothing_else(text: Callable[[], str], cones: Any, libraries: Any) -> None:
    cones.write(KIND, text())
    cones.write("pendant/project.yaml", libraries.PENDANT)
    outcome = cones.check()
    assert "pendant" in [w.name for w in outcome.worked]
    for trouble in outcome.troubles:
        assert trouble.message
        assert "cannot be worked through" not in trouble.message, trouble


def test_the_demonstration_of_a_mistake_reads_as_a_jeweller_would_want_it(cones: Any) -> None:
    cones.change(KIND, "÷ slant\n", "÷ slent\n")
    [shown] = [str(t) for t in cones.check().troubles.errors if "kinds/paper-cone" in str(t.place)]
    line = CONE[: CONE.index("÷ slant\n")].count("\n") + 1
    assert shown == (
        f"projects/kinds/paper-cone.yaml:{line}:31: error: 'slent' is not known\n"
        f"{line:5d} |     value: 180 × wet across ÷ slent\n"
        "      |                               ^^^^^\n"
        "   help: did you mean 'slant'?"
    )
