"""Safety on the sheets: in full once, at the bench or at its action, never left out, and never parted from the work."""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest
from markupsafe import Markup

from sheetgen.base.spelling import apostrophes
from sheetgen.base.trouble import Troubles
from sheetgen.facts.cautions import CAUTIONS, DEFERENCE, TAUGHT
from sheetgen.facts.first_aid import FIRST_AID
from sheetgen.facts.joints import JOINTS
from sheetgen.pipeline import work_through
from sheetgen.read.library import read_library
from sheetgen.render.marks import Marks
from sheetgen.render.safety import Hazards
from sheetgen.render.theme import Theme

ROOT = Path(__file__).parents[2]
MORE = "  - title: {}\n    caution: [{}]\n    text: Go.\n"


def own_theme(library: Any, old: str, new: str) -> None:
    """The library's own copy of each template that has some words, in which they stand otherwise."""
    folder = library.root / "themes" / "plain"
    folder.mkdir(parents=True, exist_ok=True)
    for path in (ROOT / "themes" / "plain").glob("*.j2"):
        if old in (text := path.read_text("utf-8")):
            (folder / path.name).write_text(text.replace(old, new), "utf-8")
    assert list(folder.iterdir()), old


def page_of(library: Any, name: str) -> str:
    outcome = library.publish(name)
    assert not outcome.troubles.errors, "\n".join(map(str, outcome.troubles))
    return str((library.build / name / "index.html").read_text("utf-8"))


def on_paper(library: Any, name: str) -> str:
    """The handout as it goes to the printer."""
    return Theme("plain", []).page("handout.html.j2", sheet=library.handout(name), density="")


def row(library: Any, name: str, title: str) -> Any:
    [found] = [one for one in library.handout(name).rows if one.title == title]
    return found


def plain(html: str) -> str:
    """Words without their marks."""
    return str(Markup(html).striptags())  # noqa: S704 - only to be read


def printed(words: str) -> str:
    """As it stands on paper, whatever capitals begin it."""
    return apostrophes(words.lower())


def names(told: Any, libraries: Any) -> list[str]:
    """The hazards that are told in full, each by its own words or by those of several told as one."""
    found = []
    for one in told:
        text = libraries.said(one.text).lower()
        for name, caution in CAUTIONS.items():
            own = printed(f"{caution.hazard} {caution.consequence} {caution.avoid}")
            joint = next((j for j in JOINTS if name in j.each), None)
            shared = joint is not None and printed(joint.consequence) in text and printed(joint.each[name][0]) in text
            if text == own or (shared and joint and printed(joint.each[name][1]) in text):
                found.append(name)
    return found


@pytest.fixture
def all_hazards(library: Any) -> Any:
    """A project in which each caution comes twice."""
    each = list(CAUTIONS)
    steps = "".join(
        MORE.format(f"Step {i} of {j}", ", ".join(each[j : j + 4])) for i in (1, 2) for j in range(0, 32, 4)
    )
    library.change("link/project.yaml", "steps:\n", f"steps:\n{steps}")
    return library


def test_every_caution_is_told_in_full_once_a_handout(all_hazards: Any, libraries: Any) -> None:
    sheet = all_hazards.handout("link")
    told = [*names(sheet.safety.told, libraries), *(name for r in sheet.rows for name in names(r.told, libraries))]
    assert Counter(told) == Counter(list(CAUTIONS))


def test_a_caution_of_an_action_is_told_at_its_first_step_and_the_others_before_the_first(
    all_hazards: Any, libraries: Any
) -> None:
    sheet = all_hazards.handout("link")
    bench = {name for name, caution in CAUTIONS.items() if not caution.at_action}
    assert set(names(sheet.safety.told, libraries)) == bench
    for r in sheet.rows:
        for name in names(r.told, libraries):
            assert r.title == f"Step 1 of {list(CAUTIONS).index(name) // 4 * 4}"


def test_no_version_of_the_demonstration_reminds_of_an_action_s_hazard_that_it_has_not_told(libraries: Any) -> None:
    signs: Any = SimpleNamespace(signs=defaultdict(lambda: SimpleNamespace(svg="")))
    versions = [(worked.name, one) for worked in work_through(ROOT).worked for one in worked.versions.values()]
    assert versions
    for name, version in versions:
        hazards = Hazards(version, signs, Marks())
        told: list[str] = []
        for number, step in enumerate(version.steps):
            told += names(hazards.in_full(number), libraries)
            brought = {c.id for c in step.cautions if c.at_action and c.id in CAUTIONS}
            assert brought <= set(told), f"{name}, {version.title}: {step.title}"
        assert len(told) == len(set(told)), f"{name}, {version.title}"


def test_at_every_other_step_that_brings_it_a_caution_is_a_reminder(all_hazards: Any, libraries: Any) -> None:
    version = all_hazards.main("link")
    rows = [r for r in all_hazards.handout("link").rows if r.kind != "session"]
    for step, r in zip(version.steps, rows, strict=True):
        full = [CAUTIONS[name].short for name in names(r.told, libraries) if CAUTIONS[name].at_action]
        reminded = list(map(libraries.said, r.reminders))
        assert sorted([*full, *reminded]) == sorted(caution.short for caution in step.cautions)


def test_a_reminder_has_five_words_at_the_most() -> None:
    assert [c.short for c in CAUTIONS.values() if not 1 <= len(c.short.split()) <= 5] == []


def test_the_first_side_names_the_step_at_which_a_hazard_is_told_in_full(library: Any) -> None:
    sheet = library.handout("drops")
    assert sheet.safety.pointers
    pointers = [plain(p.told).replace("\u00a0", " ").removeprefix("step ").split(": ") for p in sheet.safety.pointers]
    for step, names in pointers:
        [at] = [r for r in sheet.rows if r.kind == "step" and r.number == int(step)]
        shorts = {c.short.partition(":")[0].lower() for c in CAUTIONS.values() if c.at_action}
        assert set(names.split(", ")) <= shorts
        # several of one kind are told as one
        assert len(names.split(", ")) >= len(at.told) > 0
    # after the wait, which has no number
    assert [(step, names.split(", ")[0]) for step, names in pointers] == [("3", "monoxide"), ("4", "adhesive")]


@pytest.mark.parametrize("where", ["paper", "screen"])
def test_a_caution_at_its_action_stands_between_the_title_and_the_words_of_its_step(
    where: str,
    library: Any,
    libraries: Any,
    quick: None,  # noqa: ARG001
) -> None:
    page = on_paper(library, "drops") if where == "paper" else page_of(library, "drops")
    begin = re.search(r'<\w+ [^>]*data-step="step-4"', page)
    end = re.search(r'<\w+ [^>]*data-step="wait-2"', page)
    assert begin
    assert end
    step = libraries.said(page[begin.start() : end.start()])
    assert step.index("Set") < step.index("Uncured adhesive") < step.index("Set all 7")


def test_the_graver_stands_before_the_slighter(library: Any, libraries: Any) -> None:
    steps = MORE.format("Once", "nickel, kiln glow, blade, torch, strand")
    library.change("link/project.yaml", "steps:\n", f"steps:\n{steps}")
    once = row(library, "link", "Once")
    assert names(once.told, libraries) == ["torch", "kiln glow", "nickel"]
    assert list(map(libraries.said, once.reminders)) == ["Strand: no child", "Blade: fingers behind"]
    words = [libraries.said(told.word) for told in library.handout("link").safety.told]
    assert words == sorted(words, key=["DANGER", "WARNING", "CAUTION", "NOTICE"].index)


def test_first_aid_and_who_is_heard_first_stand_once_on_a_handout(library: Any, libraries: Any) -> None:
    library.change("studio.yaml", "currency: EUR\n", "currency: EUR\nemergency: 112\n")
    page = libraries.said(on_paper(library, "drops"))
    for line in (
        *map(apostrophes, DEFERENCE),
        "Cool running water",
        "lids apart",
        "Soap for adhesive",
        "Emergency: 112.",
    ):
        assert page.count(line) == 1, line


def test_first_aid_is_for_burns_eyes_cuts_skin_and_bad_air_in_three_lines(all_hazards: Any) -> None:
    hurts = [[aid.hurt for aid in line] for line in all_hazards.handout("link").safety.aid]
    assert hurts == [["Burn"], ["Eye", "Cut"], ["Skin", "Dizzy, headache"]]


def test_first_aid_leaves_out_nothing_that_decides_how_a_hurt_heals(all_hazards: Any) -> None:
    aid = " ".join(f"{one.hurt}: {plain(one.do)}" for line in all_hazards.handout("link").safety.aid for one in line)
    burn = ("Cool running water at once", "20 min", "rings off", "cling film", "no ice or ointment", "Large: call")
    eye = ("Rinse 15 min", "lids apart", "Doctor", "Stuck in it: do not touch or rinse; call")
    others = ("Soaked clothes off, rinse 20 min", "Soap for adhesive", "cloth", "Everybody out", "headache")
    assert [words for words in (*burn, *eye, *others) if words not in aid] == []


def test_without_a_number_there_is_a_line_to_write_it_on(library: Any) -> None:
    assert re.search(r'Emergency: <span class="blank">', on_paper(library, "drops"))


def test_a_sheet_whose_hazards_are_slight_has_no_first_aid(library: Any, libraries: Any) -> None:
    # longer than the cylinder for small parts is across, 31.75 mm
    library.change("link/project.yaml", "loop: 4 mm", "loop: 16 mm")
    page = libraries.said(on_paper(library, "link"))
    assert "Emergency" not in page
    assert all(aid.do not in page for line in FIRST_AID for aid in line)
    assert names(library.handout("link").safety.told, libraries) == ["wire ends"]
    assert all(apostrophes(line) in page for line in DEFERENCE)


@pytest.mark.parametrize(
    ("caution", "helped", "not_helped"),
    [
        # small parts, which the link brings, are grave and hurt nobody's skin
        ("strand", ["Eye: Rinse"], ["Burn", "Skin", "Cut", "Dizzy"]),
        ("torch", ["Burn: Cool running water"], ["Skin"]),
        ("epoxy", ["Skin: Soap for adhesive."], ["Burn", "Soaked", "Cut", "Dizzy"]),
        ("pickle", ["Skin: Soaked clothes off, rinse 20 min."], ["Burn", "adhesive", "Cut", "Dizzy"]),
        ("blade", ["Cut: Press a cloth on it."], ["Burn", "Skin", "Dizzy"]),
        (
            "solvent vapour",
            ["Dizzy, headache: Everybody out; call.", "Soaked clothes off"],
            ["adhesive", "Cut"],
        ),
    ],
)
def test_first_aid_is_of_what_the_sheet_can_do_to_a_hand(
    caution: str, helped: list[str], not_helped: list[str], library: Any
) -> None:
    library.change("link/project.yaml", "steps:\n", f"steps:\n{MORE.format('One more', caution)}")
    aid = " ".join(f"{one.hurt}: {plain(one.do)}" for line in library.handout("link").safety.aid for one in line)
    assert all(one in aid for one in (*helped, "Eye: ")), aid
    assert not any(one in aid for one in not_helped), aid


def test_what_a_hazard_asks_to_be_worn_stands_with_it_and_its_sign(library: Any) -> None:
    library.change("drops/project.yaml", "  - title: Fire\n", "  - title: Fire\n    caution: [hammering, metal dust]\n")
    signs = {one.words: re.findall(r"<title>(\w+)", one.sign) for one in library.handout("drops").safety.wear}
    assert signs == {"eye protection": ["M004"], "ear protection": ["M003"], "dust mask, FFP2, N95 or better": ["M016"]}
    worn = {plain(one.words): re.findall(r"<title>(\w+)", one.sign) for one in row(library, "drops", "Fire").wear}
    assert worn["heat-proof gloves, dry"] == ["M009"]


def test_gloves_for_acid_are_off_where_the_same_step_has_a_flame(library: Any) -> None:
    acid = "gloves for acid"
    library.change("drops/project.yaml", "  - title: Fire\n", "  - title: Fire\n    caution: [pickle, torch]\n")
    worn = [plain(one.words) for one in row(library, "drops", "Fire").wear]
    assert f"{acid} at the pickle only, off before the flame" in worn
    library.change("drops/project.yaml", "caution: [pickle, torch]", "caution: [pickle]")
    assert acid in [plain(one.words) for one in row(library, "drops", "Fire").wear]


def test_a_notice_never_has_the_sign_of_danger(library: Any, libraries: Any) -> None:
    library.change("stock/clays.yaml", "    name: Test silver\n", "    name: Test silver\n    metal: fine silver\n")
    library.change("stock/others.yaml", "    name: Ear wire\n", "    name: Ear wire\n    metal: copper\n")
    signs = {libraries.said(one.word): one.sign for one in library.handout("drops").safety.told}
    assert signs["NOTICE"] == ""
    assert "<svg" in signs["CAUTION"]


def test_who_does_it_and_what_stock_says_stand_at_the_step(library: Any, libraries: Any) -> None:
    library.change(
        "stock/others.yaml", "    name: Test epoxy\n", "    name: Test epoxy\n    at the bench: Keep it cool.\n"
    )
    library.change("drops/project.yaml", "level: some practice", "level: first piece")
    page = libraries.said(on_paper(library, "drops"))
    assert page.count(TAUGHT) == 1
    assert row(library, "drops", "Fire").who == TAUGHT
    assert row(library, "drops", "Roll").who == ""
    assert page.index("Uncured adhesive") < page.index("Test epoxy: keep it cool.")
    assert row(library, "drops", "Set").notes == ("Test epoxy: keep it cool.",)


SAW = "cautions:\n  saw: {word: CAUTION, hazard: Saw., consequence: Cuts., avoid: Slowly."


@pytest.mark.parametrize(
    ("told", "where"), [("", "bench"), (", told: at the bench", "bench"), (", told: at the action", "action")]
)
def test_a_studios_own_caution_is_told_where_the_studio_says(
    told: str, where: str, library: Any, libraries: Any
) -> None:
    library.write("stock/cautions.yaml", f"{SAW}, short: 'Saw: slowly'{told}}}\n")
    library.change("drops/project.yaml", "    caution: [blade]", "    caution: [saw]")
    roll = row(library, "drops", "Roll")
    here = [libraries.said(one.text) for one in roll.told]
    before = [libraries.said(one.text) for one in library.handout("drops").safety.told]
    assert ("Saw. Cuts. Slowly." in here) is (where == "action")
    assert ("Saw. Cuts. Slowly." in before) is (where == "bench")
    assert ("Saw: slowly" in map(libraries.said, roll.reminders)) is (where == "bench")


def test_a_sign_of_the_studios_own_caution_is_drawn_and_one_that_is_not_is_told(library: Any, quick: None) -> None:  # noqa: ARG001
    library.write("stock/cautions.yaml", f"{SAW}, signs: [W022]}}\n")
    library.change("drops/project.yaml", "    caution: [blade]", "    caution: [saw]")
    assert "W022, sharp element" in page_of(library, "drops")
    library.write("stock/cautions.yaml", f"{SAW}, signs: [W999]}}\n")
    assert any("'W999' is no sign that is drawn" in str(t) for t in library.check("drops").troubles)


# What a theme does to it


FULL = "<b>{{ t.word }}.</b> {{ t.text }}"


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        (FULL, "<b>{{ t.word }}.</b>", "the caution 'Small parts', told before the first step is not printed"),
        (
            FULL,
            "<b>{{ t.word }}.</b> {{ t.text|replace('small', 'grown') }}",
            "hoke a grown child",
        ),
        (FULL, "<b>{{ t.word }}.</b> <span hidden>{{ t.text }}</span>", "is printed, but nobody sees it: it is hidden"),
        (
            FULL,
            "{{ t.text }}",
            "the signal word of the caution 'Small parts', told before the first step is not printed",
        ),
    ],
    ids=["drops", "alters", "hides", "drops the signal word"],
)
def test_a_theme_that_drops_hides_or_alters_a_caution_is_refused(
    old: str,
    new: str,
    said: str,
    library: Any,
    quick: None,  # noqa: ARG001
) -> None:
    own_theme(library, old, new)
    [trouble] = library.publish("drops").troubles.errors
    assert said in trouble.message
    assert "project.html.j2" in str(trouble.place)
    assert "print it whole" in trouble.help


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        (
            '<span class="mind alert">{{ m }}</span>',
            "",
            "the reminder 'Blade: fingers behind' of the step 'Roll' is not printed",
        ),
        ("{% if r.who %}", "{% if nobody is defined %}", "is not printed"),
    ],
    ids=["reminders", "nothing of a step"],
)
def test_a_theme_that_drops_reminders_is_refused_and_one_that_drops_who_does_it_is_not(
    old: str,
    new: str,
    said: str,
    library: Any,
    quick: None,  # noqa: ARG001
) -> None:
    own_theme(library, old, new)
    errors = library.publish("drops").troubles.errors
    assert [said in trouble.message for trouble in errors] == ([True] if "mind" in old else [])


@pytest.mark.parametrize(
    ("new", "said"),
    [
        (
            "{{ f.value|replace('24', '42') }}",
            "'Length, cut wet' of the step 'Roll' reads '42' in place of '24'",
        ),
        ("", "'Length, cut wet' of the step 'Roll' is not printed"),
    ],
    ids=["alters", "drops"],
)
def test_a_theme_that_drops_or_alters_a_number_is_refused(new: str, said: str, library: Any, quick: None) -> None:  # noqa: ARG001
    own_theme(library, "{{ f.value }}", new)
    [trouble] = library.publish("drops").troubles.errors
    assert said in trouble.message


@pytest.mark.parametrize("style", ["color: #fff", "font-size: 3pt", "position: absolute; left: -90mm"])
def test_a_theme_that_hides_a_caution_by_its_style_is_refused_on_paper(style: str, library: Any) -> None:
    library.write("studio.yaml", library.path("studio.yaml").read_text("utf-8") + "sheets: [bench card]\n")
    own_theme(library, '<i class="w alert">', f'<i style="{style}">')
    [trouble] = library.publish("link").troubles.errors
    assert "is printed, but nobody sees it" in trouble.message
    assert "link/bench-card-a4.pdf" in trouble.message
    assert "card.html.j2" in str(trouble.place)


OWN = "cautions:\n  saw: {word: CAUTION, hazard: Saw., consequence: Cuts., avoid: Slowly.}\n"


@pytest.mark.parametrize(
    ("own", "says"),
    [
        (OWN.replace("saw:", "kiln:"), "the caution 'kiln' is built in"),
        (OWN.replace("saw:", "carbon box:"), "the caution 'carbon box' is built in"),
        (OWN.replace("Saw.", '"."'), "a caution has words"),
        (OWN.replace("Cuts.", '" "'), "this has nothing in it"),
        (OWN.replace("Slowly.", '"\u00a0"'), "this has nothing in it"),
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
    """A handout of two steps with every caution between them, the first longer than a page."""
    library = libraries.make(tmp_path_factory.mktemp("everything"))
    library.change("studio.yaml", "paper: [A4, Letter]\n", "paper: [A4, Letter]\nsheets: [handout]\n")
    each = list(CAUTIONS)
    filler = "".join(f"  - title: Filler {i}\n    text: Wait here.\n" for i in range(8))
    long = "\n".join(f"      Line {i} of the long work.\n" for i in range(90))
    head = "title: Work\nrevision: 1\ndate: 2026-01-10\nsummary: All hazards.\nmakes: nothing\nlevel: some practice\n"
    library.write(
        "work/project.yaml",
        f"{head}steps:\n{filler}  - title: The long one\n    caution: [{', '.join(each[:5])}]\n    text: |\n{long}"
        f"  - title: All at once\n    caution: [{', '.join(each[5:])}]\n    text: Begin here.\n",
    )
    assert not library.publish("work").troubles.errors
    return library


@pytest.mark.parametrize("paper_size", ["a4", "letter"])
def test_a_caution_reads_in_three_lines(paper_size: str, everything: Any, paper: Any) -> None:
    with paper.Sheet(everything.build / "work" / f"handout-{paper_size}.pdf") as sheet:
        lines = [" ".join(line.split()) for line in sheet.text.splitlines()]
    joined = {name for joint in JOINTS for name in joint.each}
    for name in CAUTIONS.keys() - joined:
        told = f"{CAUTIONS[name].hazard} {CAUTIONS[name].consequence} {CAUTIONS[name].avoid}"
        begins = [i for i, line in enumerate(lines) if CAUTIONS[name].hazard in line and told[:30] in line]
        ends = [i for i in begins if any(_read(lines[i : i + n]).endswith(told) for n in (1, 2, 3))]
        assert len(ends) == 1, name


@pytest.mark.parametrize("paper_size", ["a4", "letter"])
def test_first_aid_is_three_lines_on_paper_with_the_emergency_number_right_after(
    paper_size: str, everything: Any, paper: Any
) -> None:
    with paper.Sheet(everything.build / "work" / f"handout-{paper_size}.pdf") as sheet:
        lines = ["".join(line.split()) for line in sheet.text.splitlines() if line.strip()]
    told = [" ".join(f"{aid.hurt}: {aid.do}" for aid in line) for line in FIRST_AID]
    told[2] = told[2].replace(" Skin: Soap", " Soap")
    told = ["".join(line.split()) for line in told]  # a gap between two marks is no letter of the PDF
    begun = lines.index(told[0])
    assert lines[begun : begun + 3] == told
    assert lines[begun + 3].startswith("Emergency:")


def _read(lines: list[str]) -> str:
    """Lines as one text; a word that is broken at a hyphen of its own runs on."""
    return " ".join(lines).replace("- ", "-")


@pytest.mark.parametrize("paper_size", ["a4", "letter"])
def test_a_box_never_parts_from_the_first_line_of_its_action(paper_size: str, everything: Any, paper: Any) -> None:
    with paper.Sheet(everything.build / "work" / f"handout-{paper_size}.pdf") as sheet:
        texts = sheet.texts
    # longer than a page, so that it is broken: after its first lines, and not after its box
    [begun] = [text for text in texts if "The long one" in text]
    for words in ("Carbon monoxide", "Wear or have", "Line 0 of the long", "Line 2 of the long"):
        assert words in begun
    assert "Line 89 of the long" not in begun
