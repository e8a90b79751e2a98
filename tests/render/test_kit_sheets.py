"""The sheets in a posted kit: what is in the bag and what is not, nothing of a class, and no step that lost a word."""

from __future__ import annotations

import re
import shutil
from dataclasses import replace
from pathlib import Path
from typing import Any

import page as validator
import pytest

from sheetgen.base.trouble import Misplaced
from sheetgen.draw.slab import slab_layouts
from sheetgen.draw.templates import draw
from sheetgen.facts.cautions import OUT_OF_CLASS, TAUGHT
from sheetgen.kits.coded import code_of_kit
from sheetgen.kits.contents import contents
from sheetgen.kits.packed import packed
from sheetgen.kits.run import taken
from sheetgen.kits.taken import Kits
from sheetgen.render.handout import Sheets
from sheetgen.render.kit_sheets import kit_sheets, out_of_class
from sheetgen.render.marks import Marks
from sheetgen.render.ordered import HOW, Press
from sheetgen.render.pdf_pool import PdfPool
from sheetgen.render.theme import Theme
from sheetgen.runs.kit_sheets import sheets_of

ROOT = Path(__file__).parents[2]
PLAIN = ROOT / "themes" / "plain"
OF_A_CLASS = re.compile(r"\b(class(es)?|teacher|tutor|evenings?|pupils?|school|course)\b", re.IGNORECASE)


@pytest.fixture(scope="module")
def pool() -> PdfPool:
    return PdfPool()


@pytest.fixture(scope="module")
def designs(demo: Any) -> dict[str, Any]:
    return {worked.name: worked for worked in demo.check().worked}


@pytest.fixture
def kits(designs: dict[str, Any]) -> Any:
    """A kind of kit of the demonstration by its design, version and colours."""

    def of(design: str, version: str = "", way: str = "", **more: Any) -> Kits:
        worked = designs[design]
        one = worked.version(version) if version else worked.main
        colours = next((each for each in one.colourways if each.name == way), None)
        return Kits(worked, replace(one, slabs=slab_layouts(worked, one)), 5, colourway=colours, posted=True, **more)

    return of


def handout(kind: Kits) -> Any:
    """What a theme gets for the handout of a kit."""
    return sheets(kind).handout(Marks(), ())


def sheets(kind: Kits) -> Sheets:
    drawn = draw(kind.worked, kind.version, kind.worked.studio.paper)
    return Sheets(kind.worked, out_of_class(kind.version), drawn, packed(kind, contents(kind, taken([kind]))))


def bags(sheet: Any, libraries: Any) -> dict[str, list[str]]:
    return {bag.name: [f"{one.name} {libraries.said(one.amount)}".strip() for one in bag.things] for bag in sheet.bags}


def test_each_bag_says_what_is_in_it_and_each_colour_by_itself(kits: Any, libraries: Any) -> None:
    found = bags(handout(kits("buoy-drops", way="grey sea")), libraries)
    assert list(found) == ["A clay", "B stones", "C metal", "D adhesive", "In the box"]
    assert found["A clay"] == ["Fine-silver clay 16 g", "Release sheet 27 × 94 mm"]
    assert found["B stones"] == ["Foiled stone PP 18 7 + 1", "Foiled stone PP 18 5 + 1"]
    assert found["In the box"] == ["Setting bur PP 18"]


def test_all_that_is_in_a_bag_is_used_and_of_what_is_on_the_bench_some_comes_back(kits: Any) -> None:
    def clay(needs: Any) -> Any:
        return next(one.detail for one in needs if one.name == "Fine-silver clay")

    assert clay(handout(kits("buoy-drops")).bags[0].things) == "low fire"
    left = handout(kits("buoy-drops", leave_out=frozenset({"silver-low-fire"})))
    assert clay(left.needs) == "low fire; about 13.5\u00a0g is used"


def test_no_thing_of_any_design_is_lost_or_told_twice(designs: dict[str, Any], kits: Any) -> None:
    """Bags, bench and tools together are what the published sheet lists."""
    for worked in designs.values():
        for version in worked.versions.values():
            kit = handout(kits(worked.name, version.title))
            whole = Sheets(worked, version, draw(worked, version, worked.studio.paper)).handout(Marks(), ())
            things = [one.name for bag in kit.bags for one in bag.things] + [one.name for one in kit.needs]
            things += [name for place in kit.tools for name in place.names]
            public = [one.name for one in whole.needs] + [name for place in whole.tools for name in place.names]
            assert sorted(things) == sorted(public), (worked.name, version.title)


def test_the_version_its_choices_and_colours_stand_in_one_place(kits: Any) -> None:
    kind = kits("buoy-drops", "Long", "grey sea", choices=(("eye loop", "3 mm"),))
    for head in (handout(kind).head, sheets(kind).card(Marks()).head):
        assert head.version == "eye loop 3 mm (else as Long), grey sea"
        assert head.foot.startswith("Buoy drops · eye loop 3 mm (else as Long), grey sea · revision ")
    assert handout(kits("buoy-drops", "Long")).head.version == "Long"


def test_a_kit_of_a_version_bears_a_fingerprint_of_what_it_prints_and_its_published_sheets_one_of_theirs(
    designs: dict[str, Any], kits: Any
) -> None:
    """Those have the hours of a class and the workings of the teacher besides."""
    worked = designs["buoy-drops"]
    public = Sheets(worked, worked.main, draw(worked, worked.main, worked.studio.paper))
    kind = kits("buoy-drops")
    assert handout(kind).head.code == code_of_kit(kind) != public.code


def test_a_kit_in_a_colourway_bears_the_fingerprint_of_its_colours(kits: Any) -> None:
    kind = kits("buoy-drops", way="grey sea")
    assert handout(kind).head.code == code_of_kit(kind) != handout(kits("buoy-drops")).head.code


def test_a_kit_with_other_choices_bears_the_fingerprint_of_the_version_as_worked_with_them(demo: Any) -> None:
    """A tube of 26 mm has other numbers than one of 22 mm, and so another fingerprint on its foot."""
    codes = []
    for choices in ({}, {"height": "26 mm"}):
        worked = demo.worked("buoy-drops", **choices)
        kind = Kits(
            worked,
            replace(worked.main, slabs=slab_layouts(worked, worked.main)),
            1,
            tuple(choices.items()),
            posted=True,
        )
        head = handout(kind).head
        assert head.code in head.foot
        codes.append(head.code)
    assert codes[0] != codes[1]


def test_a_picture_of_other_choices_is_drawn_and_not_that_of_the_design(kits: Any) -> None:
    own, other = (sheets(kits("buoy-drops", choices=some)).picture() for some in ((), (("height", "26 mm"),)))
    assert own
    assert own.source
    assert other
    assert other.svg


def test_no_step_loses_a_word_a_number_or_a_caution(designs: dict[str, Any], kits: Any) -> None:
    for worked in designs.values():
        kit = handout(kits(worked.name))
        whole = Sheets(worked, worked.main, draw(worked, worked.main, worked.studio.paper)).handout(Marks(), ())
        assert (kit.safety.wear, kit.sessions) == (whole.safety.wear, whole.sessions)
        assert unmarked(kit.safety.aid) == unmarked(whole.safety.aid)
        for ours, theirs in zip(kit.rows, whole.rows, strict=True):
            assert unmarked(replace(ours, who="")) == unmarked(replace(theirs, who=""))
            assert ours.who == (OUT_OF_CLASS[TAUGHT] if theirs.who else "")


def unmarked(row: Any) -> str:
    """A row, or first aid, without the numbers of its marks, which count what stands before it on the sheet."""
    return re.sub(r'data-(n|told)="\w+"', "", repr(row))


def test_nothing_on_a_kit_of_the_demonstration_speaks_of_a_class(
    designs: dict[str, Any], kits: Any, libraries: Any
) -> None:
    theme = Theme("plain", [])
    for worked in designs.values():
        for version in worked.versions.values():
            html = theme.page("handout.html.j2", sheet=handout(kits(worked.name, version.title)), density="")
            assert OF_A_CLASS.findall(libraries.said(html)) == [], (worked.name, version.title)


def test_what_is_taught_in_a_class_is_done_by_somebody_qualified_at_home(kits: Any) -> None:
    said = {row.who for row in handout(kits("sedge-bookmark")).rows}
    assert said == {"", "A qualified person or a firing service does this."}


@pytest.mark.parametrize(
    ("design", "version", "way"),
    [("buoy-drops", "", "grey sea"), ("tideline-band", "US 8", ""), ("saltpan-brooch", "", "")],
)
def test_a_kit_prints_on_both_papers_no_longer_than_the_published_sheet(
    design: str, version: str, way: str, kits: Any, pool: Any
) -> None:
    """Nothing of its layout jars, each sheet can be read aloud, and no teacher's sheet is among them."""
    kind = kits(design, version, way)
    theme = Theme("plain", [])
    worked, drawn = kind.worked, draw(kind.worked, kind.version, kind.worked.studio.paper)
    marks = Marks()
    public = Sheets(worked, kind.version, drawn).handout(marks, drawn.pages["A4"])
    job = Press(theme, worked.studio.paper, "1", "public").ordered("handout", public, marks, HOW["handout"]).job
    [[longest, _]] = pool.printed([job])
    found = sheets_of(kind, taken([kind]), theme, pool).done()
    assert [str(doubt) for doubt in found.doubts] == []
    assert [(one.paper, one.sheet) for one in found.sheets] == [
        (paper, sheet) for paper in ("A4", "Letter") for sheet in ("handout", "bench card", "templates")
    ]
    for one in found.sheets:
        assert one.pages <= (longest.pages if one.sheet == "handout" else 1)
        assert validator.validate_pdf_bytes(one.pdf, profile="ua1").failures == [], one.sheet
        assert one.pdf[:5] == b"%PDF-"


def test_a_theme_that_says_nothing_of_the_bags_is_refused(kits: Any, pool: Any, tmp_path: Path) -> None:
    """Written before there were kits, it prints what comes from the bench and leaves the bags out."""
    own = tmp_path / "themes" / "plain"
    shutil.copytree(PLAIN, own)
    text = (own / "handout.html.j2").read_text("utf-8")
    assert "kit() if sheet.bags else lists()" in text
    (own / "handout.html.j2").write_text(text.replace("kit() if sheet.bags else lists()", "lists()"), "utf-8")
    kind = kits("eddy-earrings")
    drawn = draw(kind.worked, kind.version, kind.worked.studio.paper)
    with pytest.raises(Misplaced, match="what the kit holds of") as refused:
        kit_sheets(
            kind.worked, kind.version, drawn, packed(kind, contents(kind, taken([kind]))),
            Theme("plain", [tmp_path / "themes"]), pool,
        ).done()  # fmt: skip
    assert "handout.html.j2" in str(refused.value.trouble)


def test_the_templates_are_in_the_kit_and_nobody_is_sent_to_print_them(kits: Any, libraries: Any) -> None:
    theme = Theme("plain", [])
    kind = kits("buoy-drops")
    drawn = draw(kind.worked, kind.version, kind.worked.studio.paper)
    pages = drawn.pages["A4"]
    kit = theme.page("handout.html.j2", sheet=sheets(kind).handout(Marks(), pages), density="")
    assert "to cut, take the sheet Templates." in libraries.said(kit)


def test_a_second_kit_of_a_design_is_set_as_its_first_and_takes_no_page_more_than_by_itself(
    kits: Any, pool: Any
) -> None:
    """What the first found too roomy is not laid out again for the second."""

    def printed(kind: Kits, by: Any, like: Any = None) -> Any:
        drawn = draw(kind.worked, kind.version, kind.worked.studio.paper)
        what = packed(kind, contents(kind, taken([kind])))
        return kit_sheets(kind.worked, kind.version, drawn, what, Theme("plain", []), by, like).done()

    tried: list[int] = []

    class Counted(PdfPool):
        def printed(self, jobs: Any) -> Any:
            tried.extend(len(job.htmls) for job in jobs)
            return super().printed(jobs)

    first, second = kits("tideline-band"), kits("tideline-band", "US 8")
    before, alone = printed(first, pool), printed(second, pool)
    like = printed(second, Counted(), before)
    assert [one.way for one in like.sheets] == [one.way for one in before.sheets]
    assert [one.pages for one in like.sheets] == [one.pages for one in alone.sheets]
    way = next(one.way for one in before.sheets if one.sheet == "handout")
    assert way > 0
    assert tried[0] == len(HOW["handout"].ways) - way
