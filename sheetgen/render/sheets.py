"""What the theme sees of template pages and slabs: their drawings, and what is said beside them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from markupsafe import Markup

from sheetgen.base.printed import NBSP
from sheetgen.base.spelling import counted, in_a_sentence, slug
from sheetgen.formulas.page import print_again_at, print_scale
from sheetgen.model import view
from sheetgen.model.numbers import whole_cards
from sheetgen.model.view import Html

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from sheetgen.model.drawing import Drawings, SlabLayout, TemplatePage
    from sheetgen.model.worked import Worked
    from sheetgen.render.marks import Marks

READS = {"100 mm": ("97 mm", 97), "4 in": ("3 7/8 in", 96.875)}  # of a long bar: what it may read for an example
CUTTING = "templates"
LINES = {
    ("fired",): "Dots: what it fires to.",
    ("fold",): "Broken: a fold or a guide.",
    ("centre", "meet"): "Chain: a middle, or where ends meet.",
}


def template_pages(pages: Sequence[TemplatePage], marks: Marks) -> Iterator[view.TemplatePage]:
    """Each page's drawing, marked so that it is printed as it is, at true size."""
    for number, page in enumerate(pages, 1):
        what = f"drawing {number} of the templates, true size,"
        yield view.TemplatePage(Html(marks.drawing(page.drawing, what)), page.tile)


def bars(pages: Sequence[TemplatePage]) -> str:
    """How to tell that templates are printed at true size, and what to choose where they are not; whole per cents."""
    along = next((page.bars[0] for page in pages if page.bars[0] in READS), "")
    short = {said for page in pages for said in page.bars} - {along}
    if not along:
        return f"Both bars measure {short.pop()}, or print again, larger or smaller." if short else ""
    read, of_a_hundred = READS[along]
    again = round(print_again_at(print_scale(of_a_hundred, 100)) * 100)
    bars = f"The long bar measures {along}, the short one {short.pop()}" if short else f"Both bars measure {along}"
    return f"{bars}, or print again: at {read} choose {again} %."


def lines(pages: Sequence[TemplatePage], *, wet: bool) -> str:
    """What each kind of line on the templates is; nothing of a line that none of them has."""
    found = frozenset[str]().union(*(page.lines for page in pages))
    deeds = frozenset[str]().union(*(page.deeds for page in pages))
    cut = {"cut": "cut, wet" if wet else "cut", "bend": "bend wire along it", "mark": "mark"}
    heavy = ", or ".join(said for deed, said in cut.items() if deed in deeds)
    told = [f"Heavy: {heavy}."] if heavy else []
    told += [said for kinds, said in LINES.items() if not found.isdisjoint(kinds)]
    return " ".join(told)


def slab_sketches(worked: Worked, layouts: Sequence[SlabLayout]) -> Iterator[view.Slab]:
    """How the wet pieces of each clay and thickness, textured or plain, lie on a slab."""
    rounder = worked.rounder
    for layout in layouts:
        each = [f"{wide.words} × {long.told}" for wide, long in layout.used]
        called = _each_part_once([in_a_sentence(_named(name)) for _, name, _ in layout.pieces])
        pieces = [
            f"{number}:{NBSP}{name}{f'{NBSP}×{NBSP}{times}' if times > 1 else ''}"
            for (number, _, times), name in zip(layout.pieces, called, strict=True)
        ]
        alone = [f"by itself: {in_a_sentence(_named(name))}" for name in dict.fromkeys(layout.too_large)]
        cards = whole_cards(layout.thickness)
        deep = counted(cards, "card") if cards else rounder.length(layout.thickness).told
        yield view.Slab(
            f"{layout.clay.partition(',')[0]}, {deep}",
            f"Roll {' and '.join(_counted(each))}. Drawn {layout.scale.replace(' ', NBSP)}." if each else "",
            "; ".join([*pieces, *alone, *(["textured"] if layout.textured else [])]),
            tuple(Html(Markup(d.svg)) for d in layout.drawings),  # noqa: S704 - drawn by our own pen
        )


def _counted(each: Sequence[str]) -> Iterator[str]:
    """Equal ones said once, with how many."""
    for one in dict.fromkeys(each):
        yield f"{each.count(one)} of {one}" if each.count(one) > 1 else one


def _each_part_once(names: Sequence[str]) -> Iterator[str]:
    """Names of outlines, after the first of a part without the part: box, base; lip."""
    before = ""
    for name in names:
        part, _, what = name.partition(", ")
        yield what if what and part == before else name
        before = part


def _named(name: str) -> str:
    return name.replace("_", " ").capitalize()


def cutters(drawings: Drawings, other_units: str = "") -> Iterator[view.CutterLink]:
    """Each part's template for the screen, and where its file for a cutter stands."""
    paths = cutting_paths(drawings.cutting, other_units)
    for name, drawn in drawings.templates.items():
        svg = Html(Markup(drawn.svg))  # noqa: S704 - our own pen
        yield view.CutterLink(_named(name), *drawings.labels[name], svg, paths.get(name, ""))


def cutting_paths(parts: Iterable[str], other_units: str = "") -> dict[str, str]:
    """Where each part's file for a cutter stands, below its version's folder; no two at one place.

    Worked in other units than the studio's it is of another size, for it is cut as it is printed there.
    """
    paths: dict[str, str] = {}
    below = f"{CUTTING}/{other_units}" if other_units else CUTTING
    for part in parts:
        path = f"{below}/{slug(part)}.svg"
        paths[part] = path if path not in paths.values() else f"{below}/{slug(part)}-{len(paths) + 1}.svg"
    return paths
