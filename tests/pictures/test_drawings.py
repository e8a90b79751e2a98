"""Drawings as programs write them print as they did; of what is not known it is told what and where."""

from __future__ import annotations

import base64
import random
import re
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest
from PIL import Image, ImageChops

from sheetgen.base.trouble import CannotBe
from sheetgen.pictures import repeats, values
from sheetgen.pictures.ready import ready

if TYPE_CHECKING:
    from collections.abc import Callable

TESTS = Path(__file__).parents[1]
HONEST = sorted((TESTS / "honest" / "pictures").iterdir())
OURS = sorted((TESTS.parent / "projects").glob("*/*.svg"))
NS = 'xmlns="http://www.w3.org/2000/svg"'


def svg(body: str, head: str = 'viewBox="0 0 60 30"') -> bytes:
    return f"<svg {NS} {head}>\n{body}\n</svg>".encode()


def made(body: str, head: str = 'viewBox="0 0 60 30"') -> str:
    return ready("a.svg", svg(body, head)).data.decode()


def refusal(body: str) -> str:
    with pytest.raises(CannotBe) as fault:
        made(body)
    return fault.value.message


@pytest.mark.parametrize("path", [*HONEST, *OURS], ids=lambda path: f"{path.parent.name}/{path.stem}")
def test_an_honest_drawing_looks_on_the_page_as_it_did(path: Path, page_picture: Callable[[str], Image.Image]) -> None:
    raw = path.read_bytes()
    before = page_picture("data:image/svg+xml;base64," + base64.b64encode(raw).decode())
    after = page_picture(ready(path.name, raw).uri)
    differs = ImageChops.difference(before, after).convert("L")
    most = 40 if "photograph" in path.stem else 0  # a photograph is packed anew
    assert not differs.point([255 * (value > most) for value in range(256)]).getbbox()
    assert ImageChops.difference(after, Image.new("RGB", after.size, "white")).getbbox()


@pytest.mark.parametrize("path", HONEST, ids=lambda path: path.stem)
def test_of_a_drawing_only_what_shows_is_printed(path: Path) -> None:
    text = ready(path.name, path.read_bytes()).data.decode()
    assert not re.search(r"<!|<\?|metadata|<title|<desc|<style| style=|class=|xmlns:|editor|office", text)
    assert set(re.findall(r' id="([^"]*)"', text)) <= {f"n{n}" for n in range(200)}


def test_its_own_title_says_what_a_drawing_shows() -> None:
    assert ready("a.svg", svg("<title>A  washer,\n<!-- x -->from above</title><rect/>")).title == "A washer, from above"
    assert ready("a.svg", svg("<g><title>Layer 1</title><rect/></g>")).title == ""


# CSS 2.1, 6.4: a style attribute goes before rules, an id before a class, a class before a name, later before
# earlier, what is important before all; CSS 2.1, 6.4.4: an attribute of the drawing comes last
STYLES = [
    ("rect{fill:blue}", 'fill="red"', "blue"),
    (".a{fill:red}rect{fill:blue}", 'class="a"', "red"),
    ("#i{fill:lime}.a{fill:red}", 'class="a" id="i"', "lime"),
    (".a{fill:red}.b{fill:blue}", 'class="b a"', "blue"),
    ("rect.a{fill:lime}.a{fill:red}", 'class="a"', "lime"),
    ("#i{fill:lime}", 'id="i" style="fill:red"', "red"),
    ("rect{fill:blue !important}", 'style="fill:red"', "blue"),
    ("*{fill:blue}", 'fill="red"', "blue"),
    ("circle{fill:blue}.c{fill:blue}", 'class="a" fill="red"', "red"),
    ("<![CDATA[.a{fill:/* } */red}]]>", 'class="a"', "red"),
]


@pytest.mark.parametrize(("sheet", "own", "wanted"), STYLES)
def test_of_several_styles_that_holds_which_goes_before(sheet: str, own: str, wanted: str) -> None:
    assert f'fill="{wanted}"' in made(f"<style>{sheet}</style><rect {own}/>")


REFUSALS = [
    ("<script/>", "holds a script (line 2)"),
    ("<g>\n<foreignObject/></g>", "holds a web page (line 3)"),
    ("<switch/>", "holds a 'switch', which cannot be printed (line 2)"),
    ('<rect width="wide"/>', 'has width="wide", which cannot be printed (line 2)'),
    ('<rect style="fill:url(a.svg#b)"/>', "points at another file (line 2)"),
    ('<rect style="cursor:url(a.svg)"/>', "points at another file (line 2)"),
    ("<style>g rect{fill:red}</style>", "has a style sheet that asks for 'g rect'"),
    ("<style>@media print{g{fill:red}}</style>", "has a style sheet that cannot be followed"),
    ('<text style="font:bold 3px serif">a</text>', "names a type face in short (line 2)"),
    ("<g>", "is not an SVG picture, or is cut short (line 3)"),
]


@pytest.mark.parametrize(("body", "says"), REFUSALS)
def test_a_refusal_says_what_and_in_which_line_of_the_drawing(body: str, says: str) -> None:
    assert refusal(body) == f"'a.svg' {says}"


def test_what_points_at_nothing_is_drawn_without_it() -> None:
    text = made('<rect fill="url(#gone) red"/><circle fill="url(#gone)"/><path clip-path="url(#gone)" d="M0 0H9"/>')
    assert '<rect fill="red"/>' in text
    assert '<circle fill="none"/>' in text
    assert "gone" not in text


def test_a_large_honest_drawing_is_printed() -> None:
    chance = random.Random(1)  # noqa: S311 - for a drawing
    lines = "".join(
        f'<path d="M{chance.uniform(0, 60):.3f},{chance.uniform(0, 30):.3f} l0.5,0.25 0.1,-0.3" style="stroke:#000"/>'
        for _ in range(6000)
    )
    assert made(lines).count("<path") == 6000


def test_a_repeat_is_never_counted_fewer_times_than_the_printer_makes_it(
    printer: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    from weasyprint.svg import defs  # noqa: PLC0415 - heavy

    made_by_printer: list[int] = []
    monkeypatch.setattr("sheetgen.render.pdf.allowed", bytes)  # what is refused is printed too, to be counted
    for kind in ("linear", "radial"):
        spread = getattr(defs, f"spread_{kind}_gradient")

        def counted(*given: Any, spread: Any = spread) -> Any:
            found = spread(*given)
            made_by_printer.append(len(found[0]))
            return found

        monkeypatch.setattr(defs, f"spread_{kind}_gradient", counted)
    chance = random.Random(7)  # noqa: S311 - for drawings
    tried = 0
    for _ in range(400):
        kind = chance.choice(("linearGradient", "radialGradient"))
        names = ("x1", "y1", "x2", "y2") if kind == "linearGradient" else ("cx", "cy", "r", "fr", "fx", "fy")
        own = {name: f"{chance.choice((0.01, 0.1, 1, 10)) * chance.uniform(-1, 1):.5f}" for name in names}
        own |= {name: own[name].lstrip("-") for name in ("r", "fr") if name in own}
        own["gradientUnits"] = chance.choice(("userSpaceOnUse", "objectBoundingBox"))
        own["spreadMethod"] = chance.choice(("repeat", "reflect"))
        a, b, c, d = (chance.choice((0.1, 1, 3)) * chance.uniform(-1, 1) for _ in range(4))
        own["gradientTransform"] = f"matrix({a:.4f} {b:.4f} {c:.4f} {d:.4f} {chance.uniform(-9, 9):.3f} 2)"
        x, y, wide, high = (chance.uniform(*ends) for ends in ((-30, 30), (-9, 9), (0.1, 60), (0.1, 30)))
        if abs(a * d - b * c) < 1e-3:
            continue
        said = "".join(f' {name}="{value}"' for name, value in own.items())
        stops = '<stop stop-color="red"/><stop offset="1" stop-color="blue"/>'
        body = f'<{kind} id="a"{said}>{stops}</{kind}>'
        body += f'<rect x="{x}" y="{y}" width="{wide}" height="{high}" fill="url(#a)"/>'
        counted_here = repeats.repeats(kind, own, (x, y, x + wide, y + high))
        if counted_here > 5000:
            continue
        made_by_printer.clear()
        raw = base64.b64encode(svg(body)).decode()
        printer.pdf(f"<html lang=en><title>x</title><img alt=x src='data:image/svg+xml;base64,{raw}'>", "x")
        assert max(made_by_printer) <= 2 * (counted_here + 3), body
        tried += 1
    assert tried > 150


def test_moves_come_to_what_their_matrices_come_to() -> None:
    assert values.moves("translate(3,4)scale(2)") == (2, 0, 0, 2, 3, 4)
    assert values.moves("rotate(90 10 0)") == pytest.approx((0, 1, -1, 0, 10, -10))
    assert values.moves("scale(2) translate(3 4)") == (2, 0, 0, 2, 6, 8)


@pytest.mark.parametrize("strange", [b"\0", b"\xff", b"\xc3"], ids=["nothing", "no letter", "half a letter"])
def test_a_byte_that_is_of_no_text_is_told_at_its_line(strange: bytes) -> None:
    raw = (
        b'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 60 30">\n<title>A</title>\n<g id="'
        + strange
        + b'"/></svg>'
    )
    with pytest.raises(CannotBe, match=r"is not written in UTF-8 \(line 3\)"):
        ready("a.svg", raw)
