"""Safety on the sheets: in full once, in one box, never left out, and never parted from the work."""

from __future__ import annotations

import html
import re
from pathlib import Path
from typing import Any

import pytest

from sheetgen.base.trouble import Troubles
from sheetgen.facts.cautions import CAUTIONS, DEFERENCE, FIRST_AID, TAUGHT
from sheetgen.read.library import read_library

ROOT = Path(__file__).parents[2]
WORDS = ("DANGER", "WARNING", "CAUTION", "NOTICE")


def page_of(library: Any, name: str) -> str:
    outcome = library.publish(name)
    assert not outcome.troubles.errors, "\n".join(map(str, outcome.troubles))
    return str((library.build / name / "index.html").read_text("utf-8"))


def said(page: str) -> str:
    page = re.sub(r"<style>.*?</style>|<title>.*?</title>", "", page, flags=re.DOTALL)
    return " ".join(html.unescape(re.sub(r"<[^>]*>", " ", page)).replace("\u00a0", " ").split())


def own_theme(library: Any, old: str, new: str) -> None:
    """The library's own copy of the step's macros, in which some words stand otherwise."""
    text = (ROOT / "themes" / "plain" / "parts.html.j2").read_text("utf-8")
    assert old in text
    folder = library.root / "themes" / "plain"
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "parts.html.j2").write_text(text.replace(old, new), "utf-8")


def test_a_hazard_stands_in_full_at_its_first_step_and_by_its_name_after(library: Any, quick: None) -> None:  # noqa: ARG001
    library.change("drops/project.yaml", "    uses: [drills]\n", "    uses: [drills, knife]\n")
    page = said(page_of(library, "drops"))
    steps = page[page.index("Steps") :]
    assert steps.count(CAUTIONS["blade"].avoid) == 1
    assert steps.index("Roll") < steps.index(CAUTIONS["blade"].avoid) < steps.index("Open the seats")
    assert "CAUTION bare blade" in steps[steps.index("Open the seats") - 100 : steps.index("Mark")]


def test_several_hazards_of_a_step_stand_in_one_box(library: Any, quick: None) -> None:  # noqa: ARG001
    library.change("drops/project.yaml", "  - title: Fire\n", "  - title: Fire\n    caution: [pin, torch]\n")
    page = page_of(library, "drops")
    step = page[page.index("Fire</h3>") - 40 : page.index("Set <span")]
    assert step.count('class="hazards"') == 1
    assert step.count('class="hazard"') == 7  # carbon, kiln, damp clay, smoke, glow, and those two


def test_no_mark_of_ours_is_left_on_a_page(library: Any, quick: None) -> None:  # noqa: ARG001
    assert not re.search("[\ue000-\uf8ff]", page_of(library, "drops"))


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("<strong>{{ c.name }}.</strong>", ""),
        ('<div class="safe">{{ hazards(s) }}</div>', ""),
        ("{% if s.first %}", "{% if s.first and no_more_than_one is defined %}"),
    ],
)
def test_a_theme_that_drops_a_hazard_is_in_trouble(old: str, new: str, library: Any, quick: None) -> None:  # noqa: ARG001
    own_theme(library, old, new)
    troubles = [str(t) for t in library.publish("drops").troubles.errors]
    assert len(troubles) == 1
    assert "the theme prints the step 'Roll' without its hazards: CAUTION, Bare blade" in troubles[0]
    assert "project.html.j2" in troubles[0]
    assert "s.again" in troubles[0]


def test_a_theme_that_drops_the_short_lines_is_in_trouble_too(library: Any, quick: None) -> None:  # noqa: ARG001
    library.change("drops/project.yaml", "    uses: [drills]\n", "    uses: [drills, knife]\n")
    own_theme(library, "{{ g.names|join('; ') }}", "")
    [trouble] = library.publish("drops").troubles.errors
    assert "'Open the seats' without its hazards: CAUTION, Bare blade" in str(trouble)


def test_a_theme_that_does_not_print_the_steps_is_well(library: Any, quick: None) -> None:  # noqa: ARG001
    own_theme(library, "{% macro step(s, no) %}", "{% macro step(s, no) %}{% endmacro %}{% macro unused(s, no) %}")
    assert not library.publish("drops").troubles.errors


def test_a_theme_that_only_names_the_hazards_is_well(library: Any, quick: None) -> None:  # noqa: ARG001
    own_theme(library, "{{ c.consequence }} {{ c.avoid }}", "")
    assert not library.publish("drops").troubles.errors


def test_first_aid_and_who_is_heard_first_stand_once_on_a_sheet(library: Any, quick: None) -> None:  # noqa: ARG001
    library.change("studio.yaml", "currency: EUR\n", "currency: EUR\nemergency: 112\n")
    page = said(page_of(library, "drops"))
    for line in (*DEFERENCE, "cool running water at once", "lids apart", "oap and water for adhesive"):
        assert page.count(line) == 1, line
    assert "Emergency 112" in page


def test_without_a_number_there_is_a_line_to_write_it_on(library: Any, quick: None) -> None:  # noqa: ARG001
    assert re.search(r'Emergency</b> <span class="blank">', page_of(library, "drops"))


def test_a_sheet_whose_hazards_are_slight_has_no_first_aid_and_names_them(library: Any, quick: None) -> None:  # noqa: ARG001
    # longer than the cylinder for small parts is across, 31.75 mm
    library.change("link/project.yaml", "loop: 4 mm", "loop: 16 mm")
    page = said(page_of(library, "link"))
    assert "Emergency" not in page
    assert all(aid.do[1:] not in page for aid in FIRST_AID)
    assert "CAUTION flying wire ends (1)" in page
    assert all(line in page for line in DEFERENCE)


def aid_of(library: Any) -> str:
    found = re.search(r'<table class="aid".*?</table>', page_of(library, "link"), re.DOTALL)
    assert found
    return said(found[0])


@pytest.mark.parametrize(
    ("caution", "helped", "not_helped"),
    [
        # small parts, which the link brings, are grave and hurt nobody's skin
        ("strand", ["Eye lids apart"], ["Burn", "Skin"]),
        ("torch", ["Burn cool running water"], ["Skin"]),
        ("epoxy", ["Skin soap and water for adhesive."], ["Burn", "soaked", "cut"]),
        ("pickle", ["Skin off with what is soaked; much water."], ["Burn", "adhesive", "cut"]),
        ("blade", ["Skin press a clean cloth on a cut."], ["Burn", "adhesive", "soaked"]),
    ],
)
def test_first_aid_is_of_what_the_sheet_can_do_to_a_hand(
    caution: str,
    helped: list[str],
    not_helped: list[str],
    library: Any,
    quick: None,  # noqa: ARG001
) -> None:
    library.change(
        "link/project.yaml", "steps:\n", f"steps:\n  - title: One more\n    caution: [{caution}]\n    text: Go.\n"
    )
    aid = aid_of(library)
    assert all(one in aid for one in (*helped, "Eye")), aid
    assert not any(one in aid for one in not_helped), aid


def test_the_front_leads_to_the_step_that_explains(library: Any, quick: None) -> None:  # noqa: ARG001
    page = page_of(library, "drops")
    leads = re.findall(r'<a href="#(step-\d+)">', page)
    assert leads
    for step in leads:
        assert page.count(f'id="{step}"') == 1


def test_a_repeated_hazard_with_the_higher_word_stands_first(library: Any, quick: None) -> None:  # noqa: ARG001
    more = "  - title: {}\n    caution: [{}]\n    text: Go.\n"
    library.change(
        "link/project.yaml",
        "steps:\n",
        "steps:\n"
        + more.format("Once", "rotary tool")
        + more.format("Twice", "rotary tool, blade")
        + more.format("Thrice", "blade, torch"),
    )
    page = page_of(library, "link")
    twice = said(step_of(page, "Twice"))
    assert twice.index("WARNING turning wheel") < twice.index("CAUTION. Bare blade")
    thrice = said(step_of(page, "Thrice"))
    assert thrice.index("WARNING. Open flame") < thrice.index("CAUTION bare blade")


def test_each_sign_stands_before_its_own_words(library: Any, quick: None) -> None:  # noqa: ARG001
    library.change("drops/project.yaml", "  - title: Fire\n", "  - title: Fire\n    caution: [hammering, metal dust]\n")
    step = step_of(page_of(library, "drops"), "Fire")
    row = re.sub(r"<title>(\w+).*?</title>", r"\1>", step[step.index("Wear, or have at hand") :])
    row = " ".join(re.sub(r"<[^>]*>", "", row).split())
    for worn in ("M004>eye protection", "M003>ear protection", "M016>dust mask", "M009>heat-proof gloves"):
        assert worn in row, row


def step_of(page: str, title: str) -> str:
    """The HTML of one step of a page."""
    [found] = [one for one in re.split('<div class="(?:step|wait)', page)[1:] if re.search(rf"<h3>.*{title}", one)]
    return found


@pytest.mark.parametrize("title", ["Mark", "Open the seats of both drops, and clear every one of them"])
def test_a_step_with_only_short_cautions_tells_what_to_wear_and_shows_its_signs(
    title: str,
    library: Any,
    quick: None,  # noqa: ARG001
) -> None:
    library.change("drops/project.yaml", "    caution: [blade]", "    caution: [drilling, metal dust]")
    library.change("drops/project.yaml", "    uses: [drills]\n", "    uses: [drills]\n    caution: [metal dust]\n")
    library.change("drops/project.yaml", "  - title: Open the seats\n", f"  - title: {title}\n")
    step = step_of(page_of(library, "drops"), title)
    assert 'class="hazards"' not in step
    assert "Wear or have: dust mask." in said(step)
    assert "M016" in step
    # in the line of the title where there is room
    assert ('<h3><span class="mind">' in step) is (len(title) < 20)


def test_gloves_for_acid_are_off_where_the_same_step_has_a_flame(library: Any, quick: None) -> None:  # noqa: ARG001
    acid = "gloves for acid"
    library.change("drops/project.yaml", "  - title: Fire\n", "  - title: Fire\n    caution: [pickle, torch]\n")
    assert f"{acid} at the pickle only, off before the flame" in said(step_of(page_of(library, "drops"), "Fire"))
    library.change("drops/project.yaml", "caution: [pickle, torch]", "caution: [pickle]")
    step = said(step_of(page_of(library, "drops"), "Fire"))
    assert acid in step
    assert "flame" not in step


def test_a_hazard_in_the_title_is_a_sentence_of_its_own(library: Any, quick: None) -> None:  # noqa: ARG001
    library.change("drops/project.yaml", "    caution: [blade]", "    caution: [pin]")
    library.change(
        "drops/project.yaml",
        "  - title: Cure\n",
        "  - title: Put by\n    caution: [pin]\n    text: Put it by.\n  - title: Cure\n",
    )
    [title] = re.findall(r"<h3>.*Put by.*</h3>", page_of(library, "drops"))
    # letter by letter, as it is copied
    assert html.unescape(re.sub(r"<[^>]*>", "", title)) == "CAUTION sharp point. Put by"


def test_a_notice_never_has_the_sign_of_danger(library: Any, quick: None) -> None:  # noqa: ARG001
    library.change("stock/clays.yaml", "    name: Test silver\n", "    name: Test silver\n    metal: fine silver\n")
    library.change("stock/clays.yaml", "    name: Test copper\n", "    name: Test copper\n    metal: copper\n")
    page = page_of(library, "drops")
    notice = re.search(r'<div class="hazard bare"><span class="sign">(.{0,20})</span><p><b>NOTICE', page)
    assert notice
    assert notice[1] == ""


def test_who_does_it_and_what_stock_says_stand_at_the_step(library: Any, quick: None) -> None:  # noqa: ARG001
    library.change(
        "stock/others.yaml", "    name: Test epoxy\n", "    name: Test epoxy\n    at the bench: Keep it cool.\n"
    )
    library.change("drops/project.yaml", "level: some practice", "level: first piece")
    library.change("drops/project.yaml", "  clay: silver\n", "  clay: copper\n")
    page = said(page_of(library, "drops"))
    steps = page[page.index("Steps") :]
    assert steps.count(TAUGHT) == 1
    assert steps.index("Fire") < steps.index(TAUGHT) < steps.index("Set all")
    assert steps.index("Uncured adhesive") < steps.index("Test epoxy: Keep it cool.") < steps.index("Set all")


def test_a_sign_of_the_studios_own_caution_is_drawn_and_one_that_is_not_is_told(library: Any, quick: None) -> None:  # noqa: ARG001
    own = "cautions:\n  saw: {word: CAUTION, hazard: Saw., consequence: Cuts., avoid: Slowly., signs: [W022]}\n"
    library.write("stock/cautions.yaml", own)
    library.change("drops/project.yaml", "    caution: [blade]", "    caution: [saw]")
    assert "W022, sharp element" in page_of(library, "drops")
    library.write("stock/cautions.yaml", own.replace("W022", "W999"))
    assert any("'W999' is no sign that is drawn" in str(t) for t in library.check("drops").troubles)


OWN = "cautions:\n  saw: {word: CAUTION, hazard: Saw., consequence: Cuts., avoid: Slowly.}\n"


@pytest.mark.parametrize(
    ("own", "says"),
    [
        (OWN.replace("saw:", "kiln:"), "the caution 'kiln' is built in"),
        (OWN.replace("saw:", "carbon box:"), "the caution 'carbon box' is built in"),
        (OWN.replace("Saw.", '"."'), "a caution has words"),
        (OWN.replace("Cuts.", '" "'), "a caution has words"),
        (OWN.replace("Slowly.", '"\u00a0"'), "a caution has words"),
        (OWN.replace("Slowly.", 'Slowly., wear: ["-"]'), "a caution has words"),
        (OWN.replace("Slowly.", "Slowly., signs: [W999]"), "no sign that is drawn"),
        (OWN.replace("CAUTION", "Caution"), "no signal word"),
    ],
)
def test_a_caution_of_ones_own_silences_none_and_says_something(own: str, says: str, library: Any) -> None:
    library.write("stock/own.yaml", own)
    found = read_library(library.root, troubles := Troubles())
    assert [says in t.message for t in troubles.errors] == [True], list(map(str, troubles))
    assert found
    assert set(found.stock.cautions) == set(CAUTIONS)
    assert all(found.stock.cautions[name].word == told.word for name, told in CAUTIONS.items())


def test_a_caution_that_two_files_write_is_told_at_the_second(library: Any) -> None:
    library.write("stock/own.yaml", OWN)
    library.write("stock/own2.yaml", OWN.replace("CAUTION", "NOTICE"))
    [trouble] = library.check().troubles.errors
    assert "written twice; first at projects/stock/own.yaml:2:3" in trouble.message
    assert str(trouble.place) == "projects/stock/own2.yaml:2:3"


@pytest.fixture(scope="module")
def everything(libraries: Any, tmp_path_factory: pytest.TempPathFactory) -> Any:
    """A sheet of two steps with every caution between them, the first longer than a page."""
    library = libraries.make(tmp_path_factory.mktemp("everything"))
    names = list(CAUTIONS)
    filler = "".join(f"  - title: Filler {i}\n    text: Wait here.\n" for i in range(8))
    long = "\n".join(f"      Line {i} of the long work.\n" for i in range(90))
    library.change(
        "link/project.yaml",
        "steps:\n",
        f"steps:\n{filler}  - title: The long one\n    caution: [{', '.join(names[:5])}]\n    text: |\n{long}"
        f"  - title: All at once\n    caution: [{', '.join(names[5:])}]\n    text: Begin here.\n",
    )
    assert not library.publish("link").troubles.errors
    return library


@pytest.mark.parametrize("paper_size", ["a4", "letter"])
def test_a_caution_reads_in_two_lines(paper_size: str, everything: Any, paper: Any) -> None:
    with paper.Sheet(everything.build / "link" / f"handout-{paper_size}.pdf") as sheet:
        lines = sheet.text.splitlines()
    seen = 0
    for title in ("The long one", "All at once"):
        start = next(i for i, line in enumerate(lines) if title in line)
        end = next(i for i, line in enumerate(lines) if i > start and line.startswith("Wear, or have"))
        told = [line for line in lines[start + 1 : end] if not re.search(r"page \d", line)]
        firsts = [i for i, line in enumerate(told) if line.startswith(tuple(f"{word}." for word in WORDS))]
        seen += len(firsts)
        for i, after in zip(firsts, [*firsts[1:], len(told)], strict=True):
            assert after - i <= 2, told[i:after]
    assert seen == len(CAUTIONS)


@pytest.mark.parametrize("paper_size", ["a4", "letter"])
def test_a_box_never_parts_from_the_first_line_of_its_action(paper_size: str, everything: Any, paper: Any) -> None:
    with paper.Sheet(everything.build / "link" / f"handout-{paper_size}.pdf") as sheet:
        texts = sheet.texts
    # longer than a page, so that it is broken: after its first lines, and not after its box
    [begun] = [text for text in texts if "The long one" in text]
    for words in ("Carbon monoxide", "Wear, or have at hand", "Line 0 of the long", "Line 2 of the long"):
        assert words in begun
    assert "Line 89 of the long" not in begun
