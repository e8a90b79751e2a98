"""The slab: wet pieces nested on rolled clay of the studio's own size, counted, weighed and told."""

from __future__ import annotations

import math
from typing import Any
from xml.etree import ElementTree as ET

import pytest

from sheetgen.base.pen import Extent, Recorder
from sheetgen.draw.numbered import numbered
from sheetgen.draw.templates import draw

SVG = "{http://www.w3.org/2000/svg}"
SLAB = "slab width: 100 mm\nslab length: 150 mm\n"


def boxes(svg: str, over: int) -> list[tuple[float, float, float, float]]:
    """The pieces in a picture, true size, mm."""
    found = []
    for e in ET.fromstring(svg).iter():  # noqa: S314 - our own drawing
        if e.get("stroke-width") != "0.21" or e.get("stroke-dasharray"):
            continue
        if e.tag == f"{SVG}polygon":
            numbers = [[float(n) for n in p.split(",")] for p in (e.get("points") or "").split()]
            xs, ys = [n[0] for n in numbers], [n[1] for n in numbers]
        else:
            x, y = float(e.get("cx") or 0), float(e.get("cy") or 0)
            rx, ry = (float(e.get(a) or e.get("r") or 0) for a in ("rx", "ry"))
            xs, ys = [x - rx, x + rx], [y - ry, y + ry]
        found.append((min(xs) * over, min(ys) * over, max(xs) * over, max(ys) * over))
    return found


@pytest.fixture
def slabbed(libraries: Any, tmp_path: Any) -> Any:
    library = libraries.make(tmp_path)
    library.change("studio.yaml", "units: mm\n", "units: mm\n" + SLAB)
    return library


def layouts(library: Any, project: str) -> Any:
    worked = library.worked(project)
    return draw(worked, worked.main, ["A4"]).slabs


def test_without_a_slab_nothing_is_laid_out(library: Any) -> None:
    assert layouts(library, "pendant") == ()


def test_a_disc_on_its_slab_is_weighed_and_its_offcut_counted(slabbed: Any) -> None:
    # a disc cut at 22.0 of 1 mm, 7 g/cm³, with 3 mm kept round it: 28 × 28 is rolled, and not the whole slab
    [layout] = layouts(slabbed, "pendant")
    disc = math.pi / 4 * 22**2
    assert layout.clay == "Test silver"
    assert layout.thickness == pytest.approx(1.0)
    assert layout.rolled == pytest.approx(28 * 28 * 1 * 7 / 1000)  # 28 is a whole step
    assert layout.cut == pytest.approx(disc * 7 / 1000)
    assert layout.offcut == pytest.approx(1 - disc / (28 * 28))
    assert layout.used == (pytest.approx((28, 28)),)
    assert layout.pieces == ((1, "plate", 1),)


def test_the_mass_of_a_slab_is_that_of_the_rectangle_told(slabbed: Any) -> None:
    # a disc of 7.55 mm is cut at 8.3: with 3 mm round it 14.3 by 14.3, which is told as 14.5 by 14.5, and so rolled and
    # weighed: 1 mm thick, 7 g/cm³
    slabbed.change("pendant/project.yaml", "  width: 20 mm", "  width: 7.55 mm")
    [layout] = layouts(slabbed, "pendant")
    [(wide, long)] = layout.used
    assert (wide.words, long.told) == ("14.5", "14.5\u00a0mm")
    assert layout.rolled == pytest.approx(14.5 * 14.5 * 1 * 7 / 1000)
    assert layout.offcut == pytest.approx(1 - math.pi / 4 * 8.3**2 / 14.5**2)


def test_pieces_are_counted_and_each_thickness_has_its_own_slab(slabbed: Any) -> None:
    slabbed.change(
        "drops/project.yaml", "    gap: 0.5 mm\n", "    gap: 0.5 mm\n    width: 5 mm\n    thickness: 4 cards\n"
    )
    found = {layout.thickness: layout for layout in layouts(slabbed, "drops")}
    assert {t: layout.pieces for t, layout in found.items()} == {
        0.75: ((1, "body", 2),),
        1.0: ((1, "seats", 2),),
    }


def test_what_is_cut_of_textured_clay_lies_on_another_slab_than_what_is_cut_of_plain(
    slabbed: Any, libraries: Any
) -> None:
    slabbed.change(
        "drops/project.yaml", "    gap: 0.5 mm\n", "    gap: 0.5 mm\n    width: 5 mm\n    thickness: 3 cards\n"
    )
    [together] = layouts(slabbed, "drops")
    assert together.pieces == ((1, "body", 2), (2, "seats", 2))
    slabbed.change("drops/project.yaml", "    inside: bore\n", "    inside: bore\n    rolled first: 5 cards\n")
    assert [layout.pieces for layout in layouts(slabbed, "drops")] == [((1, "body", 2),), ((1, "seats", 2),)]
    assert [libraries.said(slab.pieces) for slab in slabbed.handout("drops").slabs] == [
        "1: body × 2; textured", "1: seats × 2",
    ]  # fmt: skip


def test_a_marking_guide_takes_no_clay(slabbed: Any) -> None:
    assert [layout.pieces for layout in layouts(slabbed, "drops")] == [((1, "body", 2),)]


@pytest.mark.parametrize("count", [1, 7, 30])
def test_pieces_keep_their_gap_and_stay_on_the_slab(slabbed: Any, count: int) -> None:
    slabbed.change("pendant/project.yaml", "    across: width\n", f"    across: width\n    count: {count}\n")
    [layout] = layouts(slabbed, "pendant")
    assert sum(len(boxes(d.svg, layout.over)) for d in layout.drawings) == count
    for drawing in layout.drawings:
        laid = boxes(drawing.svg, layout.over)
        for i, a in enumerate(laid):
            assert min(a[0], a[1]) >= 3 - 0.01
            assert a[2] <= 97 + 0.01
            assert a[3] <= 147 + 0.01
            for b in laid[i + 1 :]:
                across = max(b[0] - a[2], a[0] - b[2])
                down = max(b[1] - a[3], a[1] - b[3])
                assert max(across, down) >= 3 - 0.01
    # a grid of 22 mm discs 3 mm apart: three across of 94 mm, five down of 144 mm
    assert len(layout.drawings) == math.ceil(count / 15)


def test_four_like_discs_are_rolled_in_two_rows_of_two(slabbed: Any) -> None:
    # each takes 22 mm and the 3 mm beside it, and 3 mm once more along two edges: 53 × 53; three and one take 78 × 53
    slabbed.change("pendant/project.yaml", "    across: width\n", "    across: width\n    count: 4\n")
    [layout] = layouts(slabbed, "pendant")
    assert layout.used == (pytest.approx((53, 53)),)


def test_a_sketch_is_no_wider_than_a_third_of_a_page_and_numbers_every_piece(slabbed: Any) -> None:
    slabbed.change("pendant/project.yaml", "    across: width\n", "    across: width\n    count: 15\n")
    [layout] = layouts(slabbed, "pendant")
    [drawing] = layout.drawings
    assert layout.used == (pytest.approx((78, 128)),)  # three by five discs of 22, with 3 round each
    assert layout.scale == "1 : 5"
    assert drawing.width == pytest.approx(78 / 5 + 1)
    texts = list(ET.fromstring(drawing.svg).iter(f"{SVG}text"))  # noqa: S314 - our own drawing
    assert [t.text for t in texts] == ["1"] * 15
    assert {t.get("font-size") for t in texts} == {"3"}


def test_a_piece_larger_than_the_slab_is_named(slabbed: Any) -> None:
    slabbed.change("pendant/project.yaml", "  width: 20 mm", "  width: 120 mm")
    [layout] = layouts(slabbed, "pendant")
    assert layout.too_large == ("plate",)
    assert layout.drawings == ()


def test_the_walls_of_a_box_are_cut_twice_and_it_is_named_once_on_each_slab(slabbed: Any, libraries: Any) -> None:
    box = (
        "  plate:\n    kind: box\n    clay: clay\n    across: 30 mm\n    down: 20 mm\n    wall height: 6 mm\n"
        "    thickness: 4 cards\n    base thickness: 5 cards\n    lid: with a lip\n    count: 2\n"
    )
    start = (slabbed.path("pendant/project.yaml")).read_text("utf-8")
    begin, end = start.index("  plate:\n"), start.index("steps:\n")
    slabbed.write("pendant/project.yaml", (start[:begin] + box + start[end:]).replace("wet_disc", "wet_across"))
    found = {layout.thickness: [count for _, _, count in layout.pieces] for layout in layouts(slabbed, "pendant")}
    assert found == {1.25: [4, 2], 1.0: [4, 4]}
    named = {libraries.said(slab.pieces) for slab in slabbed.handout("pendant").slabs}
    assert named == {"1: plate, base and lid × 4; 2: lip × 2", "1: plate, long walls × 4; 2: short walls × 4"}


def test_a_picture_of_a_slab_says_what_lies_on_it(slabbed: Any) -> None:
    [layout] = layouts(slabbed, "pendant")
    [drawing] = layout.drawings
    first = next(iter(ET.fromstring(drawing.svg)))  # noqa: S314 - our own drawing
    assert first.tag == f"{SVG}title"
    assert first.text == "A slab of 28 × 28\u00a0mm with 1 plate, at 1 : 2"


@pytest.mark.parametrize(
    ("written", "message"),
    [
        ("slab width: 100 mm\n", "a slab has two sides"),
        ("slab width: 100 mm\nslab length: 150\n", "slab length wants"),
        ("slab width: 5 mm\nslab length: 150 mm\n", "slab width cannot be"),
        ("slab width: 100 mm\nslab length: 150 mm\nslab gap: -1 mm\n", "slab gap cannot be"),
    ],
)
def test_a_slab_that_cannot_be_is_a_trouble_at_its_place(library: Any, written: str, message: str) -> None:
    library.change("studio.yaml", "units: mm\n", "units: mm\n" + written)
    [trouble] = library.check().troubles.errors
    assert message in trouble.message
    assert trouble.place.source.name == "projects/studio.yaml"


def test_the_handout_says_how_large_to_roll_and_shows_what_lies_there(slabbed: Any, libraries: Any) -> None:
    [slab] = slabbed.handout("pendant").slabs
    # slats of 4 cards are 1 mm; the disc of 22 mm with 3 mm kept round it
    assert libraries.said(slab.title) == "Test silver, 4 cards"
    assert libraries.said(slab.roll) == "Roll 28 × 28 mm. Drawn 1 : 2."
    assert libraries.said(slab.pieces) == "1: plate"
    assert len(slab.drawings) == 1


class Covered(Recorder):
    """A pen that counts what is covered."""

    covers = 0

    def cover(self, loops: Any) -> None:
        self.covers += len(loops)


def test_a_number_stands_inside_a_narrow_strip_and_breaks_neither_of_its_long_sides() -> None:
    # strips of 1.7 mm on paper, upright and lying; a figure is 1.6 mm wide and 2 mm high
    pen = Covered()
    numbered(pen, [(1, Extent(0, 0, 1.7, 9.5)), (2, Extent(4, 0, 13.5, 1.7)), (3, Extent(20, 0, 21, 9))])
    assert [words for _, words in pen.texts] == ["1", "2", "3"]
    assert pen.covers == 1  # only the last, of 1 mm, has no room for its number
