"""What each sheet says: the pupil's handout, the bench card, the teacher's sheet, and the templates alone."""

from __future__ import annotations

import base64
import dataclasses
import re
from typing import TYPE_CHECKING, Any

import pytest
from markupsafe import Markup

from sheetgen.base.trouble import Misplaced
from sheetgen.facts.bench import TOOL_GROUPS
from sheetgen.model import view
from sheetgen.render.theme import Theme

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

PENDANT, DROPS = "pendant/project.yaml", "drops/project.yaml"
UNIT_MINUTES = {"min": 1, "h": 60, "days": 1440}
# one pixel
DOT = base64.b64decode("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNgAAAAAgABSK+kcQAAAABJRU5ErkJggg==")


def minutes(said: str) -> tuple[float, float]:
    """`30 – 45 min`, `1 h 20 – 2 h 05`, or nothing: the least and the most."""
    if not said:
        return 0, 0
    unit = said.rpartition(" ")[2]

    def one(text: str) -> float:
        if parts := re.fullmatch(r"(\d+) h (\d\d)", text):
            return int(parts[1]) * 60 + int(parts[2])
        number, _, own = text.partition(" ")
        return float(number) * UNIT_MINUTES[own or (unit if unit in UNIT_MINUTES else "h")]

    first, _, last = said.partition(" – ")
    return one(first), one(last or first)


def row(sheet: Any, title: str) -> Any:
    [found] = [one for one in sheet.rows if one.title == title]
    return found


# The rows of the bench


def test_a_wait_has_no_number_and_a_row_with_a_clock(library: Any, libraries: Any) -> None:
    sheet = library.handout("drops")
    assert [r.number for r in sheet.rows if r.kind == "step"] == [1, 2, 3, 4]
    waits = [r for r in sheet.rows if r.kind == "wait"]
    assert [(r.title, r.number, libraries.said(r.minutes)) for r in waits] == [
        ("Dry", 0, "12 – 24 h"),
        ("Cure", 0, "12 – 24 h"),
    ]
    html = Theme("plain", []).page("handout.html.j2", sheet=sheet, density="")
    assert html.count('<span class="clock">') == len(waits)


@pytest.mark.parametrize("project", ["drops", "pendant"])
def test_sessions_and_sizes_may_go_before_the_steps_and_nothing_is_lost_by_it(project: str, library: Any) -> None:
    sheet = library.handout(project)
    first, later = (Theme("plain", []).page("handout.html.j2", sheet=sheet, density=way) for way in ("", "plan-after"))

    def words(html: str) -> list[str]:
        return sorted(re.sub(r"<[^>]*>", " ", html.partition("<body")[2].partition(">")[2]).split())

    assert words(first) == words(later)
    assert first.index("Finished sizes") < first.index("Have ready") < first.index("Read before you begin")
    begins = later.index('class="row steps"')
    assert later.index("Have ready") < later.index("Read before you begin") < later.index("Finished sizes") < begins


def test_a_session_ends_where_its_wait_begins(library: Any, libraries: Any) -> None:
    sheet = library.handout("drops")
    assert [(s.number, s.steps) for s in sheet.sessions] == [(1, "steps 1–2"), (2, "step 3"), (3, "step 4")]
    assert [libraries.said(s.then) for s in sheet.sessions] == [
        "dry 12 – 24 h",
        "kiln 3.5 – 8 h",
        "cure 12 – 24 h",
    ]
    assert [r.title for r in sheet.rows if r.kind == "session"] == ["Session 1", "Session 2", "Session 3"]


@pytest.mark.parametrize("project", ["buoy-drops", "saltpan-brooch", "towline-bracelet", "shingle-keeper"])
def test_the_printed_times_of_the_sessions_add_up_to_the_printed_time_at_the_bench(
    project: str, demo: Any, libraries: Any
) -> None:
    sheet = demo.handout(project)
    least, most = minutes(libraries.said(sheet.head.bench_time))
    sessions = [minutes(libraries.said(s.minutes)) for s in sheet.sessions]
    assert (least, most) == (sum(one for one, _ in sessions), sum(one for _, one in sessions))


@pytest.mark.parametrize("project", ["buoy-drops", "saltpan-brooch", "towline-bracelet"])
def test_the_printed_times_of_the_steps_come_to_the_time_at_the_bench(project: str, demo: Any, libraries: Any) -> None:
    sheet = demo.handout(project)
    steps = [minutes(libraries.said(r.minutes)) for r in sheet.rows if r.kind == "step"]
    whole = minutes(libraries.said(sheet.head.bench_time))
    assert (sum(low for low, _ in steps), sum(high for _, high in steps)) == whole


def test_the_printed_times_of_the_steps_of_a_session_come_to_the_time_of_the_session(demo: Any, libraries: Any) -> None:
    for project in ("buoy-drops", "slackwater-strand", "tideline-band", "lantern-pull"):
        here: list[tuple[float, float]] = []
        told: tuple[float, float] | None = None
        for row in [*demo.handout(project).rows, None]:
            if row is None or row.kind == "session":
                found = (sum(low for low, _ in here), sum(high for _, high in here))
                assert told in {None, found}, project
                here, told = [], row and minutes(libraries.said(row.minutes))
            elif row.kind == "step":
                here.append(minutes(libraries.said(row.minutes)))


def test_minutes_for_each_piece_grow_with_what_is_made(library: Any, libraries: Any) -> None:
    library.change(DROPS, "    minutes: 20 min\n", "    minutes each: 10-15 min\n")
    # two rows of seats
    assert libraries.said(row(library.handout("drops"), "Open the seats").minutes) == "20 – 30 min"


LID = "  lid:\n    kind: cut shape\n    clay: clay\n    shape: disc\n    across: 15 mm\n    thickness: 3 cards\n"


def test_like_parts_share_a_matrix(library: Any, libraries: Any) -> None:
    library.change(PENDANT, "steps:\n", f"{LID}steps:\n")
    shown = "plate.wet_disc, plate.thickness, lid.wet_disc, lid.thickness"
    library.change(PENDANT, "    parts: [plate]\n", f"    parts: [plate, lid]\n    show: [{shown}]\n")
    cut = row(library.handout("pendant"), "Cut")
    assert cut.figures == ()
    assert cut.matrix.columns == ("Plate", "Lid")
    # 20 and 15 mm ÷ 0.91 are 21.98 and 16.48; 4 and 3 cards are 1 and 0.75 mm
    assert [(one.label, list(map(libraries.said, one.cells))) for one in cut.matrix.rows] == [
        ("Disc, cut wet, mm", ["22", "16.5"]),
        ("Thickness, mm", ["1", "0.75"]),
    ]


def test_figures_that_are_not_alike_stand_one_under_the_other(library: Any) -> None:
    library.change(PENDANT, "steps:\n", f"{LID}steps:\n")
    library.change(
        PENDANT, "    parts: [plate]\n", "    parts: [plate, lid]\n    show: [plate.wet_disc, lid.clay_mass]\n"
    )
    cut = row(library.handout("pendant"), "Cut")
    assert cut.matrix is None
    assert [figure.label for figure in cut.figures] == ["Plate: disc, cut wet", "Lid: clay, each"]


def test_the_phases_of_a_firing_stand_side_by_side_with_a_dash_where_one_says_nothing(
    library: Any,
    libraries: Any,
    quick: None,  # noqa: ARG001
) -> None:
    library.change(PENDANT, "  clay: silver\n", "  clay: copper\n")
    assert not library.publish("pendant").troubles.errors
    matrix = row(library.handout("pendant"), "Fire").matrix
    assert matrix.columns == ("Phase 1", "Phase 2")
    cells = {one.label: list(map(libraries.said, one.cells)) for one in matrix.rows}
    assert cells["Cool below, °C"] == ["50", "–"]
    assert cells["Heat to, °C"] == ["290", "925"]


def test_more_than_three_phases_of_a_firing_stand_one_under_the_other(
    library: Any,
    libraries: Any,
    quick: None,  # noqa: ARG001
) -> None:
    more = "".join(
        f"      - {{to: {to} °C, hold: {hold}}}\n" for to, hold in ((200, "1 h"), (320, "30 min"), (540, "2 h"))
    )
    library.change("stock/clays.yaml", "      - to: 650 °C\n", f"{more}      - to: 650 °C\n")
    matrix = row(library.handout("pendant"), "Fire").matrix
    assert matrix.wide
    assert matrix.columns == ("Heat to, °C", "Hold")
    cells = {one.label: list(map(libraries.said, one.cells)) for one in matrix.rows}
    assert cells == {
        "Phase 1": ["200", "60 min"], "Phase 2": ["320", "30 min"],
        "Phase 3": ["540", "2 h"], "Phase 4": ["650", "30 min"],
    }  # fmt: skip


# The first side


def test_wire_is_told_in_millimetres_with_its_gauge_behind(library: Any, libraries: Any) -> None:
    # 16 AWG is 1.29 mm (ASTM B258)
    [wire] = library.handout("link").needs
    assert (wire.name, libraries.said(wire.detail)) == ("Copper wire", "1.3 mm (16 AWG)")


def test_tools_lie_in_five_groups_by_what_stock_says_or_by_what_they_act_as(library: Any) -> None:
    library.change("stock/others.yaml", "    name: Roller\n", "    name: Roller\n    group: wire\n")
    tools = {one.place: one.names for one in library.handout("drops").tools}
    assert tools["wire"] == ("Roller",)
    assert tools["kiln"] == ("Firing box",)
    assert "Heat-proof gloves, dry" in tools["safety"]
    assert set(tools) <= set(TOOL_GROUPS)
    assert len(TOOL_GROUPS) == 5
    library.change("stock/others.yaml", "    group: wire\n", "    group: shelf\n")
    assert any("shelf" in t.message for t in library.check().troubles.errors)


def test_a_piece_without_clay_has_its_tools_at_the_bench_and_at_the_fire(library: Any) -> None:
    library.change("stock/others.yaml", "    name: Roller\n", "    name: Roller\n    group: clay bench\n")
    assert "clay bench" in {one.place for one in library.handout("drops").tools}
    library.change("link/project.yaml", "uses: [copper-16awg]", "uses: [copper-16awg, roller]")
    places = {one.place for one in library.handout("link").tools}
    assert "bench" in places
    assert "clay bench" not in places
    library.change(
        "stock/others.yaml", "    name: Roller\n    group: clay bench\n", "    name: Roller\n    group: kiln\n"
    )
    assert "fire" in {one.place for one in library.handout("link").tools}


def test_finished_sizes_are_those_that_the_project_names_or_those_of_its_parts(library: Any, libraries: Any) -> None:
    def sizes() -> list[tuple[str, str]]:
        return [(one.label, libraries.said(one.told)) for one in library.handout("drops").sizes]

    assert sizes()[:2] == [("Body, length", "22 mm"), ("Body, bore", "8 mm")]
    assert len(sizes()) <= 6
    library.change(DROPS, "steps:\n", "finished sizes: [{what: body.length, label: Drop}, seats.stones]\nsteps:\n")
    assert sizes() == [("Drop", "22 mm"), ("Stones in the row", "7")]


# The bench card


def test_the_bench_card_has_a_row_for_every_step_and_every_wait_with_three_figures_at_most(library: Any) -> None:
    show = "[body.wet_length, body.strip_cut, body.former_used, body.clay_mass]"
    library.change(DROPS, '    expect: "The ends meet."\n', f"    expect: It meets.\n    show: {show}\n")
    card = library.card("drops")
    assert [(r.kind, r.number) for r in card.rows] == [
        ("step", 1), ("step", 2), ("wait", 0), ("step", 3), ("step", 4), ("wait", 0),
    ]  # fmt: skip
    assert [len(r.card) for r in card.rows] == [3, 2, 0, 0, 1, 0]
    assert [bool(r.curve) for r in card.rows] == [r.title == "Fire" for r in card.rows]


def test_the_bench_card_says_a_step_in_its_own_short_words_and_figures(library: Any) -> None:
    library.change(
        DROPS, "  - title: Roll\n", "  - title: Roll\n    short: Roll, cut, wind\n    on the card: [body.former_used]\n"
    )
    roll = library.card("drops").rows[0]
    assert roll.short == "Roll, cut, wind"
    assert [figure.label for figure in roll.card] == ["Former"]


def test_a_fourth_number_on_the_card_is_told_where_it_stands_and_not_dropped(library: Any) -> None:
    four = "[body.former_used, body.wet_length, body.strip_cut, body.thickness]"
    library.change(DROPS, "  - title: Roll\n", f"  - title: Roll\n    on the card: {four}\n")
    [trouble] = library.check("drops").troubles.errors
    assert trouble.message == "a row of the bench card has room for 3 numbers, and here are 4"
    line, column = trouble.place.line, trouble.place.column
    written = library.path(DROPS).read_text("utf-8").splitlines()[line - 1]
    assert written[column - 1 :].startswith("body.thickness]")
    assert trouble.help.startswith("keep the 3 that are set or checked")
    library.change(DROPS, four, four.replace(", body.thickness]", "]"))
    assert not library.check("drops").troubles.errors
    assert len(library.card("drops").rows[0].card) == 3


# The teacher's sheet

FAULTS = """\
faults:
  cracked seam: {seen: A line opens, why: it dried too soon, mend: Fill it with slip}
"""


def test_every_fault_stands_once_on_the_teachers_sheet_with_its_steps(library: Any, libraries: Any) -> None:
    library.write("stock/faults.yaml", FAULTS)
    wrong = "    if it goes wrong: [cracked seam]\n"
    for title in ("Roll", "Open the seats", "Set"):
        library.change(DROPS, f"  - title: {title}\n", f"  - title: {title}\n{wrong}")
    own = "    if it goes wrong: {seen: It mists, why: it is damp, mend: Wait on}\n"
    library.change(DROPS, "  - title: Dry\n", f"  - title: Dry\n{own}")
    told = [(libraries.said(m.seen), libraries.said(m.mend), m.steps) for m in library.teacher("drops").mends]
    assert told == [("A line opens", "Fill it with slip", "1–2, 4"), ("It mists", "Wait on", "waits")]
    assert libraries.said(row(library.handout("drops"), "Set").mishap) == "A line opens: fill it with slip"


@pytest.mark.parametrize("name", ["Copper wire, 18 AWG", "Copper wire, 16 AWG", "Copper wire"])
def test_two_wires_of_one_name_have_two_rows_among_what_differs(name: str, library: Any, libraries: Any) -> None:
    library.change(
        "stock/others.yaml",
        "stones:\n",
        f"  copper-18awg:\n    name: {name}\n    thickness: 18 awg\n    density: 8.96 g/cm³\n"
        "    allowance: 10 %\n    sources:\n      density: periodictable 2.1.0\nstones:\n",
    )
    rings = "{{kind: jump ring, wire: {}, inside: 5 mm, count: many}}"
    both = "".join(
        f"  {part}: {rings.format(wire)}\n" for part, wire in (("thick", "copper-16awg"), ("thin", "copper-18awg"))
    )
    library.change(DROPS, "parts:\n", f"  many: 4\nparts:\n{both}")
    library.change(DROPS, "versions:\n", "versions:\n  - {name: More, many: 9}\n")
    tables = library.teacher("drops").versions
    had = [libraries.said(label) for table in tables for label, _ in table.rows if "wire" in label]
    assert len(had) == len(set(had)) == 2, had


def test_homework_goes_by_the_number_and_the_words_of_the_timetable(demo: Any) -> None:
    at_home = [one.what for one in demo.teacher("slackwater-strand").between]
    assert at_home == ["Let the adhesive cure", "10 Trim the ends", "11 Hang the hook"]


def test_a_working_that_changes_nothing_is_left_out(demo: Any) -> None:
    # wire wound on a rod of 8 mm springs back by nothing here: 8 ÷ (1 + 0) is 8
    rows = [row.working for group in demo.teacher("lantern-pull").workings for row in group.rows]
    assert "8 ÷ (1 + 0)" not in rows
    assert "π × (8 + 1.02369)" in rows
    assert "nearest(5, 4.5, 5, 5.5)" in rows  # a tool is chosen, though it is what was asked for


def test_a_firing_box_is_filled_once_for_a_class_and_each_load_is_numbered(demo: Any, libraries: Any) -> None:
    sheet, own = demo.teacher("lantern-pull", "Copper clay"), demo.handout("lantern-pull", "Copper clay")
    had = {one.name: libraries.said(one.amount) for one in sheet.quantities}
    needs = {one.name.partition(",")[0]: libraries.said(one.amount) for one in own.needs}
    assert had["Activated carbon"] == needs["Activated carbon"]
    assert had["Copper clay"] != needs["Copper clay"]
    fired = [one.what for one in sheet.between if "load" in one.what]
    assert [words.rpartition(", ")[2] for words in fired] == [
        f"load {n} of {len(fired)}" for n in range(1, len(fired) + 1)
    ]


def test_a_class_that_rolls_at_the_same_time_has_a_slab_for_each_in_the_hand(demo: Any, libraries: Any) -> None:
    sheet, own = demo.teacher("tideline-band"), demo.handout("tideline-band")
    [for_all] = [one for one in sheet.quantities if "clay" in one.name]
    [for_one] = [one for one in own.needs if "clay" in one.name and one.amount]
    grams = [float(libraries.said(one.amount).removesuffix(" g")) for one in (for_all, for_one)]
    assert grams[0] == pytest.approx(sheet.people * grams[1], rel=0.06)  # each is rounded up by itself
    assert "is used" in for_all.detail


def test_a_fault_that_stock_does_not_know_is_a_trouble_with_the_nearest_name(library: Any) -> None:
    library.write("stock/faults.yaml", FAULTS)
    library.change(DROPS, "  - title: Roll\n", "  - title: Roll\n    if it goes wrong: [craked seam]\n")
    [trouble] = library.check("drops").troubles.errors
    assert trouble.message == "the fault 'craked seam' is not known"
    assert trouble.help == "did you mean 'cracked seam'?"


def test_every_hazard_stands_once_among_the_risks_with_its_steps(library: Any) -> None:
    library.change(DROPS, "    uses: [drills]\n", "    uses: [drills, knife]\n")
    risks = {one.hazard: one.steps for one in library.teacher("drops").risks}
    assert len(risks) == len(library.teacher("drops").risks)
    assert risks["Bare blade"] == "1–2"
    assert risks["Hot kiln"] == "3"


# Which sheets there are


def published(library: Any, project: str) -> set[str]:
    return {path.name for path in (library.build / project).glob("*.pdf")}


def test_studio_or_project_says_which_sheets_are_published(library: Any, quick: None) -> None:  # noqa: ARG001
    library.publish()
    both = [f"{name}-{paper}.pdf" for name in ("handout", "bench-card", "teacher") for paper in ("a4", "letter")]
    assert published(library, "link") == set(both)  # it has no templates
    assert published(library, "pendant") == {*both, "templates-a4.pdf", "templates-letter.pdf"}
    library.change("studio.yaml", "units: mm\n", "units: mm\nsheets: [handout, bench card]\n")
    library.change(PENDANT, "steps:\n", "sheets: [templates]\nsteps:\n")
    library.publish()
    assert published(library, "link") == {name for name in both if not name.startswith("teacher")}
    assert published(library, "pendant") == {"templates-a4.pdf", "templates-letter.pdf"}
    library.change(PENDANT, "sheets: [templates]", "sheets: [handuot]")
    assert any("handuot" in t.message for t in library.check("pendant").troubles.errors)


def test_a_button_names_its_sheet_its_paper_and_its_pages(flats: Any, paper: Any) -> None:
    html = (flats.build / "flats" / "index.html").read_text("utf-8")
    buttons = dict(re.findall(r'<a href="([\w-]+\.pdf)">([^<]*)</a>', html))
    assert len(buttons) == 8
    for name, said in buttons.items():
        with paper.Sheet(flats.build / "flats" / name) as sheet:
            count = len(sheet.pages)
        size = {"a4": "A4", "letter": "Letter"}[name.removesuffix(".pdf").rpartition("-")[2]]
        assert said.replace("\u00a0", " ").endswith(f" {size}, {count} page{'s' * (count > 1)}")
    assert buttons["handout-a4.pdf"].startswith("Handout A4, ")


# A picture of a step


def test_a_picture_of_a_step_prints_with_its_words_and_one_that_is_not_there_is_a_trouble(
    library: Any,
    quick: None,  # noqa: ARG001
) -> None:
    library.write("pendant/cut.png", DOT)
    said = "    picture: {file: cut.png, caption: The cut disc., shows: A round disc on a card.}\n"
    library.change(PENDANT, "    expect: It is round.\n", f"    expect: It is round.\n{said}")
    assert not library.publish("pendant").troubles.errors
    html = (library.build / "pendant" / "index.html").read_text("utf-8")
    assert re.search(r'<img src="pictures/cut-1\.\w+" [^>]*alt="A round disc on a card\."', html)
    assert "The cut disc." in html
    library.path("pendant/cut.png").unlink()
    [trouble] = library.publish("pendant").troubles.errors
    assert "cut.png" in trouble.message
    assert str(trouble.place).startswith("projects/pendant/project.yaml")


@pytest.mark.parametrize("field", ["caption", "shows"])
def test_a_picture_of_a_step_without_its_words_is_a_trouble(field: str, library: Any) -> None:
    said = "{file: cut.png, caption: The cut disc., shows: A round disc.}".replace(f"{field}: ", f"not {field}: ")
    library.write("pendant/cut.png", DOT)
    library.change(PENDANT, "    expect: It is round.\n", f"    expect: It is round.\n    picture: {said}\n")
    assert any(field in t.message for t in library.check("pendant").troubles.errors)


# Plain data, from a folder of its own

PLAIN = (str, Markup, int, bool, type(None))


def strange(one: object, where: str = "sheet") -> Iterator[str]:
    """Whatever in a sheet is more than words, numbers, lists and dataclasses of model/view."""
    if dataclasses.is_dataclass(one) and getattr(view, type(one).__name__, None) is type(one):
        for field in dataclasses.fields(one):
            yield from strange(getattr(one, field.name), f"{where}.{field.name}")
    elif type(one) is tuple:
        for i, inner in enumerate(one):
            yield from strange(inner, f"{where}[{i}]")
    elif type(one) not in PLAIN:
        yield f"{where} is a {type(one).__name__}"


def test_a_theme_gets_words_numbers_and_lists_and_nothing_that_does_anything(demo: Any, flats: Any) -> None:
    sheets = (demo.handout("buoy-drops"), demo.card("buoy-drops"), demo.teacher("buoy-drops"), flats.handout("flats"))
    assert [slip for sheet in sheets for slip in strange(sheet)] == []
    classes = [one for one in vars(view).values() if dataclasses.is_dataclass(one)]
    assert [
        one for one in classes if [n for n in vars(one) if callable(getattr(one, n)) and not n.startswith("__")]
    ] == []


@pytest.fixture
def own(library: Any) -> Path:
    """A folder of the library's own for the plain theme."""
    folder: Path = library.root / "themes" / "plain"
    folder.mkdir(parents=True)
    return folder


@pytest.mark.parametrize("name", ["../secret.txt", "/etc/hostname", "inner/part.html.j2", "..", "linked.html.j2"])
@pytest.mark.parametrize("how", ["{% include '&' %}", "{% extends '&' %}", "{% import '&' as x %}"])
def test_a_theme_loads_bare_names_from_its_own_folder_and_nothing_else(
    name: str,
    how: str,
    own: Path,
    library: Any,
    quick: None,  # noqa: ARG001
) -> None:
    (own / "inner").mkdir()
    (own / "inner" / "part.html.j2").write_text("a secret", "utf-8")
    (own.parent / "secret.txt").write_text("a secret", "utf-8")
    (own / "linked.html.j2").symlink_to(own.parent / "secret.txt")
    (own / "index.html.j2").write_text(how.replace("&", name), "utf-8")
    [trouble] = library.publish().troubles.errors
    assert "TemplateNotFound" in trouble.message or "a link to one outside the theme" in trouble.message
    assert str(trouble.place).startswith(("themes/plain/index.html.j2:1", "themes/plain/linked.html.j2:1"))
    assert not (library.build / "index.html").exists()


def test_a_style_sheet_that_links_out_of_the_theme_is_refused_at_its_file(own: Path, library: Any) -> None:
    (own.parent / "secret.css").write_text("a secret", "utf-8")
    (own / "more.css").symlink_to(own.parent / "secret.css")
    (own / "mine.css").write_text("p { color: #000 }", "utf-8")
    with pytest.raises(Misplaced, match="link to one outside the theme"):
        _ = Theme("plain", [library.root / "themes"]).styles
    (own / "more.css").unlink()
    styles = Theme("plain", [library.root / "themes"]).styles
    assert styles["mine.css"] == "p { color: #000 }"
    assert {"paper.css", "screen.css"} <= styles.keys()


@pytest.mark.parametrize(
    "reach", ["{{ sheet.__class__.__mro__ }}", "{{ styles.__class__ }}", "{{ sheet.head.__init__.__globals__ }}"]
)
def test_a_theme_reaches_nothing_behind_the_data(reach: str, own: Path, library: Any, quick: None) -> None:  # noqa: ARG001
    (own / "index.html.j2").write_text(reach, "utf-8")
    [trouble] = library.publish().troubles.errors
    assert "SecurityError" in trouble.message or "unsafe" in trouble.message


def test_what_can_be_done_while_it_is_waited_for_is_named_by_the_steps_and_by_what_the_project_says(
    demo: Any, libraries: Any
) -> None:
    said = {r.title: libraries.said(r.meanwhile) for r in demo.handout("shingle-keeper").rows}
    assert said["Dry flat, then test"] == "steps 8–12. Make the cup."
    assert said["Let the walls set"] == "Try lip and collar, dry."
    said = {r.title: libraries.said(r.meanwhile) for r in demo.handout("buoy-drops").rows}
    assert said["Dry the joins"] == "step 15, Wind the two rings."


def test_a_teacher_s_line_of_one_clay_stands_on_the_sheets_of_its_versions_alone(demo: Any, libraries: Any) -> None:
    for version, there in (("main", True), ("Bronze clay", False)):
        before = " ".join(libraries.said(line) for line in demo.teacher("shingle-keeper", version).before)
        assert ("Cut the kiln fibre for all" in before) is there, version


def test_what_stock_gives_to_spare_stands_in_the_list_of_the_sheet(demo: Any, libraries: Any) -> None:
    # two crimps of a kind that stock gives with one for each ten that are begun
    [crimps] = [one for one in demo.handout("slackwater-strand").needs if "Crimp" in one.name]
    assert libraries.said(crimps.amount) == "2 + 1"
