"""The lists of a run on paper: one PDF a list and paper, for each is handed to another table."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.printed import NBSP
from sheetgen.base.spelling import counted
from sheetgen.model.lists_view import (
    BuyList,
    CheckKit,
    CheckList,
    CheckOrder,
    CutList,
    LeftList,
    ListHead,
    PickList,
)
from sheetgen.render.buy_list import enough, places, shops
from sheetgen.render.cut_list import cut_items
from sheetgen.render.handout import studio as of_studio
from sheetgen.render.job import Job
from sheetgen.render.pages import PAPERS, paper_of, sheet_path, sound
from sheetgen.render.pick_list import stations

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.base.rounding import Rounder
    from sheetgen.kits.check_list import Checked
    from sheetgen.kits.run_lists import Lists
    from sheetgen.model.drawing import Drawing
    from sheetgen.model.worked import Publisher
    from sheetgen.render.job import Doubt
    from sheetgen.render.pdf_pool import PdfPool
    from sheetgen.render.theme import Theme

DOES = {
    "pick": "Tick an item when it is fetched, and a row when it lies in its bags.",
    "cut": "Cut the longest first, tick a box a piece, and bundle by the letter of the tag.",
    "check": "Look into every bag. Tick a box a bag, the leaves, the note; then the order.",
    "buy": "Needed for the run, less what lies in the drawer. Tick what is ordered.",
    "left": "The drawer as it should look afterwards. Count, write what is there, and copy it into stock.",
}
NAMES = {name: name.capitalize() for name in DOES}


class Printed(NamedTuple):
    """The files by their names, the pages of each, and what jars in their layout."""

    files: dict[str, bytes]
    pages: dict[str, int]
    doubts: list[Doubt]


def lists_pdf(  # noqa: PLR0913, PLR0917 - what pages are made of, and by what
    lists: Lists,
    bars: Sequence[Sequence[Drawing | None]],
    studio: Publisher,
    rounder: Rounder,
    theme: Theme,
    pool: PdfPool,
) -> Printed:
    """Each list that has something on it, on each paper of the studio; `bars` are drawn of `lists.cuttings`.

    Misplaced at a theme's file that cannot be used.
    """
    sheets = dict(list_sheets(lists, bars, studio, rounder))
    jobs = [
        Job(
            (theme.page(f"{name}.html.j2", sheet=sheet, density=""),),
            tuple(paper_of(sheet_path(name, paper), PAPERS[paper], "") for paper in studio.paper),
        )
        for name, sheet in sheets.items()
    ]
    found = Printed({}, {}, [])
    for name, job, outs in zip(sheets, jobs, pool.printed(jobs), strict=True):
        for paper, out in zip(job.papers, outs, strict=True):
            sound(out.faults, theme, f"{name}.html.j2")
            found.files[paper.name], found.pages[paper.name] = out.pdf, out.pages
        found.doubts.extend(outs[0].warnings)  # both papers have one content box
    return found


def list_sheets(
    lists: Lists, bars: Sequence[Sequence[Drawing | None]], studio: Publisher, rounder: Rounder
) -> Iterator[tuple[str, object]]:
    """What a theme gets of each list, in the order in which a person works."""
    heads = {name: _head(name, lists, studio) for name in DOES}
    yield "pick", PickList(heads["pick"], tuple(stations(lists, rounder)))
    if lists.cuttings:
        yield (
            "cut",
            CutList(
                heads["cut"], "inches" if rounder.inches else "mm", tuple(cut_items(lists.cuttings, bars, rounder))
            ),
        )
    if lists.checked:
        yield "check", CheckList(heads["check"], tuple(map(_order, lists.checked)))
    shopping = lists.shopping
    total = shopping.coin.bare(shopping.total.amount or 0)
    yield (
        "buy",
        BuyList(
            heads["buy"], shopping.coin.currency, tuple(shops(shopping, rounder)), tuple(enough(shopping, rounder)),
            shopping.named, total,
        ),
    )  # fmt: skip
    yield "left", LeftList(heads["left"], tuple(places(lists.got, rounder)))


def _head(name: str, lists: Lists, studio: Publisher) -> ListHead:
    kits, kinds = sum(one.bags for one in lists.run), len(lists.run)
    many = f"{counted(kits, 'kit')} of {counted(kinds, 'kind')}"
    if lists.checked:
        many = f"{counted(len(lists.checked), 'order')}, {many}"
    each = tuple(f"{one.bags}{NBSP}×{NBSP}{one.told}" for one in lists.run)
    return ListHead(NAMES[name], DOES[name], each, many, studio.language, of_studio(studio))


def _order(one: Checked) -> CheckOrder:
    kits = tuple(CheckKit(packed.count, packed.kit, packed.bags) for packed in one.packed)
    leaves = counted(one.sheets, "leaf").replace("leafs", "leaves") if one.sheets else ""
    return CheckOrder(one.number, one.due.isoformat() if one.due else "", kits, leaves, one.note)
