"""Every printed working comes to its value when it is reckoned by hand."""

from __future__ import annotations

import json
import math
import re
from typing import Any

import pytest

from sheetgen.render.figures import figures_json


@pytest.mark.parametrize(
    ("working", "value"),
    [
        ("8 ÷ (1 − 0.09) − 2 × 1 × 0.1", 8.5912),
        ("√(25² + 4 × 4²)", math.sqrt(689)),
        ("2 × 3² × 2", 36),
        ("down((22 − 2 × 2 + 0.5) ÷ (2 + 0.5))", 7),
        ("down((5.6 − 2.4 + 0.1) ÷ 1.1)", 3),
        ("nearest(8.59, 8, 9, 10)", 9),
        ("atleast(2.33, 2.4, 2.5)", 2.4),
        ("4 × sin(asin(0.5) ÷ 2)", 4 * math.sin(math.pi / 12)),
        ("−3 + π", math.pi - 3),
        ("10 − 4 − 3", 3),
        ("24 ÷ 4 ÷ 2", 3),
        ("round(5.66667 ÷ (1 - 0.09), 0.5 mm)", 6),
        ("1.25 ÷ 1 card", 5),
    ],
)
def test_the_pencil_itself_reckons_right(working: str, value: float, pencil: Any) -> None:
    assert pencil.reckon(working) == pytest.approx(value, abs=1e-4)


@pytest.mark.parametrize("working", ["3 +", "(3", "3 4", "9**2", "{size}", "body.length", "1e-05 × 2", "None", "nan"])
def test_the_pencil_stops_where_a_person_would(working: str, pencil: Any) -> None:
    with pytest.raises((ValueError, TypeError)):
        pencil.reckon(working)


def all_workings(worked: Any) -> list[tuple[str, str, float]]:
    told = json.loads(figures_json(worked, dict.fromkeys(worked.versions, ())))
    return [
        (f"{told['project']}, {version}, {name}", figure["working"], figure["value"])
        for version, figures in told["versions"].items()
        for name, figure in figures.items()
    ]


def reckoned_wrong(worked: Any, pencil: Any) -> list[str]:
    wrong = []
    for where, working, value in all_workings(worked):
        try:
            found = pencil.reckon(working)
        except (ValueError, TypeError, ZeroDivisionError) as fault:
            wrong.append(f"{where}: {working} cannot be followed: {fault}")
            continue
        # workings carry six figures, so a difference of near numbers loses a little
        if not math.isclose(found, value, rel_tol=2e-4, abs_tol=2e-5):
            wrong.append(f"{where}: {working} comes to {found:.6g} and not to {value:.6g}")
    return wrong


@pytest.mark.parametrize("project", ["buoy-drops", "saltpan-brooch", "tideline-band", "towline-bracelet"])
def test_every_working_of_the_demonstration_comes_to_its_value(project: str, demo: Any, pencil: Any) -> None:
    worked = demo.worked(project)
    assert len(all_workings(worked)) > 30
    assert reckoned_wrong(worked, pencil) == []


@pytest.mark.parametrize("project", ["drops", "pendant", "link"])
def test_every_working_of_the_small_projects_comes_to_its_value(project: str, library: Any, pencil: Any) -> None:
    assert reckoned_wrong(library.worked(project), pencil) == []


def test_every_working_of_every_flat_kind_comes_to_its_value(flats: Any, pencil: Any) -> None:
    assert reckoned_wrong(flats.worked("flats"), pencil) == []


VARIANTS = [
    ("a plain tube by its former", {"    inside: 8 mm\n": "    former: 10 mm\n"}),
    ("a dome in a cup", {"    rise: 4 mm\n": "    rise: 4 mm\n    formed: in\n"}),
    ("a dome of no holes", {"    hole: 2 mm\n    holes: 8\n    around: 15 mm\n    opening: 2.5 mm\n": ""}),
    ("a wide band", {"    width: 5 mm\n    thickness: 5 cards": "    width: 9 mm\n    thickness: 5 cards"}),
    ("a row of one", {"    along: 22 mm": "    along: 7 mm"}),
    ("no release sheet", {"    release sheet: 0.1 mm\n": "    turns: 0\n"}),
    ("an outline scaled", {"    shape: outline\n": "    shape: outline\n    across: 33 mm\n"}),
    ("copper", {"  clay: silver\n": "  clay: copper\n"}),
]


@pytest.mark.parametrize(("rule", "changes"), VARIANTS, ids=[v[0] for v in VARIANTS])
def test_every_working_holds_when_the_parts_are_otherwise(
    rule: str, changes: dict[str, str], libraries: Any, pencil: Any, tmp_path: Any
) -> None:
    library = libraries.make(tmp_path, libraries.FLAT_FILES)
    for old, new in changes.items():
        library.change("flats/project.yaml", old, new)
    assert reckoned_wrong(library.worked("flats"), pencil) == [], rule


RINGS = """
  {name}:
    kind: jump ring
    wire: copper-16awg
    {fields}
    count: 12
"""
SHAPES = {
    "hoop": "inside: 5 mm",
    "sprung": "inside: 5 mm\n    springback: 4 %",
    "sawn": "inside: 5 mm\n    kerf: 0.4 mm",
    "oval": "shape: oval\n    inside: 12 mm\n    inside width: 6 mm",
    "ellipse": "shape: ellipse\n    inside: 12 mm\n    inside width: 6 mm",
}


def test_every_working_of_every_ring_and_link_comes_to_its_value(library: Any, pencil: Any) -> None:
    rings = "".join(RINGS.format(name=name, fields=fields) for name, fields in SHAPES.items())
    links = "".join(
        f"\n  {name}:\n    kind: figure-eight link\n    wire: copper-16awg\n    loop: 6 mm\n    {fields}\n"
        for name, fields in {"twin": "gap: 3 mm", "odd": "second loop: 4 mm\n    length: 17 mm"}.items()
    )
    library.change("link/project.yaml", "parts:\n", "parts:" + rings + links)
    assert reckoned_wrong(library.worked("link"), pencil) == []


@pytest.mark.parametrize("project", ["buoy-drops", "saltpan-brooch", "tideline-band", "towline-bracelet"])
def test_every_working_of_the_materials_comes_to_its_amount(project: str, demo: Any, pencil: Any) -> None:
    for version in demo.worked(project).versions.values():
        for line in version.materials:
            if line.net is not None:
                wanted = max(line.net.high, line.least) * (1 + line.allowance)
                assert pencil.reckon(line.working) == pytest.approx(wanted, rel=2e-4), line.item.id


def test_a_working_holds_no_power_of_ten_and_no_long_tail(flats: Any, demo: Any) -> None:
    for worked in (flats.worked("flats"), demo.worked("buoy-drops"), demo.worked("towline-bracelet")):
        for where, working, _ in all_workings(worked):
            assert "e-" not in working, where
            assert max((len(n) for n in working.replace(",", " ").split()), default=0) < 16, where


def test_what_the_teachers_sheet_says_a_working_comes_to_is_what_it_comes_to_as_it_is_cut(
    flats: Any, pencil: Any
) -> None:
    figures = flats.worked("flats").main.figures.values()
    printed = {(f.part, f.label, f.working): (f.value.usual, f.printed.told) for f in figures}
    seen = 0
    for group in flats.teacher("flats").workings:
        for row in group.rows:
            key = (group.part.lower(), row.label, row.working)
            if key in printed:
                worked, told = printed[key]
                assert pencil.reckon(row.working) == pytest.approx(worked, rel=2e-4, abs=6e-4), row
                assert row.comes_to == told
                seen += 1
    assert seen > 30


def test_no_working_on_the_teachers_sheet_only_repeats_an_input(flats: Any, demo: Any) -> None:
    for sheet in (flats.teacher("flats"), demo.teacher("saltpan-brooch")):
        rows = [row for group in sheet.workings for row in group.rows]
        assert any("÷" in row.working for row in rows)
        assert [row for row in rows if re.fullmatch(r"[\d., ]+|[\d.,]+ to [\d.,]+", row.working)] == []
