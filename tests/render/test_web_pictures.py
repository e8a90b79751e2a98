"""The pictures of a page: in the width that a screen wants, small, in a room of their size, and pixels alone."""

from __future__ import annotations

import io
import re
from pathlib import Path
from typing import Any
from xml.etree import ElementTree as ET

import pytest
from PIL import Image

from sheetgen.render import web_pictures


def photograph(width: int, height: int, kind: str = "JPEG", mode: str = "RGB") -> bytes:
    """A picture with a place, a comment and a profile in it."""
    made, kept = Image.radial_gradient("L").resize((width, height)).convert(mode), io.BytesIO()
    exif = Image.Exif()
    exif[0x010F] = "a camera"
    exif.get_ifd(0x8825)[1] = "N"
    made.save(kept, kind, exif=exif, icc_profile=b"a profile", comment=b"a comment")
    return kept.getvalue()


@pytest.fixture
def shown(library: Any, quick: None) -> Any:  # noqa: ARG001
    """Publishes the pendant with a picture, and gives its page."""

    def published(name: str, raw: bytes) -> str:
        if not library.path(f"pendant/{name}").exists():
            library.change("pendant/project.yaml", "choices:", f'pictures: ["{name}"]\nchoices:')
        library.write(f"pendant/{name}", raw)
        outcome = library.publish("pendant")
        assert not outcome.troubles.errors, list(map(str, outcome.troubles))
        return str((library.build / "pendant" / "index.html").read_text("utf-8"))

    return published


def files(library: Any) -> dict[str, tuple[str, int, int]]:
    found = {}
    for path in sorted((library.build / "pendant" / "pictures").iterdir()):
        with Image.open(path) as one:
            found[path.name] = (str(one.format), *one.size)
    return found


def test_a_photograph_stands_beside_its_page_in_three_widths_and_as_webp_too(library: Any, shown: Any) -> None:
    page = shown("The ring.jpg", photograph(2000, 1000))
    assert files(library) == {
        f"the-ring-{wide}.{end}": (kind, wide, wide // 2)
        for wide in (480, 960, 1600)
        for end, kind in (("jpg", "JPEG"), ("webp", "WEBP"))
    }
    [source] = re.findall(r"<picture>(.*?)</picture>", page)
    assert 'type="image/webp" srcset="pictures/the-ring-480.webp 480w, pictures/the-ring-960.webp 960w, ' in source
    assert 'src="pictures/the-ring-1600.jpg"' in source
    assert 'width="1600" height="800"' in source
    assert "loading" not in source  # it is seen at once
    assert "data:image/jpeg" not in page


@pytest.mark.parametrize(("wide", "widths"), [(300, [300]), (480, [480]), (700, [480, 700]), (960, [480, 960])])
def test_no_picture_is_made_wider_than_it_is(wide: int, widths: list[int], library: Any, shown: Any) -> None:
    shown("a.jpg", photograph(wide, 400))
    assert sorted({size[1] for size in files(library).values()}) == widths


def test_nothing_of_where_and_by_what_it_was_taken_stands_in_any_of_its_files(library: Any, shown: Any) -> None:
    raw = photograph(1000, 800)
    shown("a.jpg", raw)
    for path in (library.build / "pendant" / "pictures").iterdir():
        with Image.open(path) as one:
            assert not {*one.info} - {"jfif", "jfif_version", "jfif_unit", "jfif_density", "loop", "background"}, path
        assert not re.search(b"camera|comment|profile", path.read_bytes())
    assert library.path("pendant/a.jpg").read_bytes() == raw


def test_what_is_clear_stays_clear_in_every_width(library: Any, shown: Any) -> None:
    clear, kept = Image.new("RGBA", (1000, 500), (200, 0, 0, 0)), io.BytesIO()
    clear.paste((0, 0, 200, 255), (0, 0, 500, 500))
    clear.save(kept, "PNG")
    shown("a.png", kept.getvalue())
    for path in (library.build / "pendant" / "pictures").iterdir():
        with Image.open(path) as one:
            corners = [one.getpixel((x, one.height // 2)) for x in (5, one.width - 5)]
            assert [corner[3] for corner in corners] == [255, 0], path  # type: ignore[index]


def test_the_webp_is_smaller_than_the_file_beside_it(library: Any, shown: Any) -> None:
    shown("a.jpg", photograph(1600, 1200))
    folder = library.build / "pendant" / "pictures"
    assert (folder / "a-1600.webp").stat().st_size < (folder / "a-1600.jpg").stat().st_size


def test_a_drawing_is_one_file_and_its_room_has_its_proportion(library: Any, shown: Any) -> None:
    page = shown("a.svg", b'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 60 30"><path d="M0 0H60"/></svg>')
    assert [path.name for path in (library.build / "pendant" / "pictures").iterdir()] == ["a.svg"]
    assert 'src="pictures/a.svg" width="1000" height="500"' in page
    assert "srcset" not in page


@pytest.mark.parametrize(("size", "told"), [((1, 1), "1 × 1 pixels"), ((4000, 3), "1600 × 1 pixels")])
def test_a_picture_on_which_nobody_sees_anything_is_told_and_shown(
    size: tuple[int, int], told: str, library: Any, shown: Any
) -> None:
    assert "<picture>" in shown("a.png", photograph(*size, "PNG"))
    [warning] = [str(one) for one in library.publish("pendant").troubles if one.severity == "warning"]
    assert told in warning
    assert "projects/pendant/project.yaml:" in warning


def test_a_picture_of_twenty_thousand_pixels_is_told_and_not_made(library: Any) -> None:
    library.change("pendant/project.yaml", "choices:", "pictures: [a.png]\nchoices:")
    kept = io.BytesIO()
    Image.new("1", (20_000, 20_000)).save(kept, "PNG")
    library.write("pendant/a.png", kept.getvalue())
    [trouble] = library.publish("pendant").troubles.errors
    assert "too many pixels" in trouble.message
    assert not (library.build / "pendant").exists()


def test_pictures_are_made_again_only_where_they_are_others(
    library: Any, shown: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    made: list[str] = []
    make = web_pictures._made

    def counted(one: Any, name: str) -> Any:
        made.append(name)
        return make(one, name)

    monkeypatch.setattr(web_pictures, "_made", counted)
    shown("a.jpg", photograph(600, 400))
    library.change("pendant/project.yaml", "expect: It is round.", "expect: It is quite round.")
    shown("a.jpg", photograph(600, 400))
    assert made == ["pendant/pictures/a"]
    shown("a.jpg", photograph(601, 400))
    assert len(made) == 2
    Path(library.build / "pendant/pictures/a-480.webp").write_bytes(b"spoilt")
    shown("a.jpg", photograph(601, 400))
    assert len(made) == 3
    with Image.open(library.build / "pendant/pictures/a-480.webp") as one:
        assert one.size == (480, 319)


def test_two_pictures_whose_names_are_alike_have_each_their_own_file(library: Any, shown: Any) -> None:
    step = "  - title: Cut\n    picture: {file: A.png, caption: Cut., shows: A disc.}\n"
    library.change("pendant/project.yaml", "  - title: Cut\n", step)
    library.write("pendant/A.png", photograph(100, 50, "PNG"))
    page = shown("a.png", photograph(200, 50, "PNG"))
    assert {name: size[1] for name, size in files(library).items() if name.endswith(".jpg")} == {
        "a-200.jpg": 200,
        "a-2-100.jpg": 100,
    }
    assert re.findall(r'loading="(\w+)"', page) == ["lazy"]  # the first is seen at once, what comes later is waited for


def test_a_drawing_says_its_scale_on_paper_alone_for_a_screen_has_none(demo: Any) -> None:
    paper = demo.handout("shingle-keeper")
    pictures: Any = {paper.picture.source: Untouched()}
    screen = web_pictures.on_screen(paper, pictures, "shingle-keeper")
    for said in ("scale 1 : 1.5</text>", "drawn at scale 1 : 1.5</title>"):
        assert said in "".join(svg for row in paper.rows for svg in row.drawings)
    shown = [(before, after) for old, new in zip(paper.rows, screen.rows, strict=True)
             for before, after in zip(old.drawings, new.drawings, strict=True)]  # fmt: skip
    assert len(shown) == 4
    for before, after in shown:
        drawn, left = ([(one.tag, one.text) for one in ET.fromstring(svg).iter()] for svg in (before, after))  # noqa: S314 - our own
        assert left == [
            (tag, text and text.partition("; drawn at scale")[0])
            for tag, text in drawn
            if not (tag.endswith("}text") and (text or "").startswith("scale"))
        ]


class Untouched:
    """A picture that a page shows as it is printed."""

    def shown(self, one: Any, _folder: str) -> Any:
        return one
