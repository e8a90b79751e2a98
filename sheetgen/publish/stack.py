"""The stack of a run of orders: one PDF for a printer that prints on both sides, sorted and stamped.

Each document is in the file once, however many orders have it.
"""

from __future__ import annotations

import io
from contextlib import ExitStack
from dataclasses import dataclass
from typing import TYPE_CHECKING

from pikepdf import Array, Dictionary, Name, ObjectStreamMode, Pdf, Stream

from sheetgen.publish.stamp import Stamps, box_of

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from pikepdf import Object

    from sheetgen.model.stack import Document, Stacked
    from sheetgen.publish.stamp import Box

NONE: Mapping[str, bytes] = {}


@dataclass(frozen=True)
class _Side:
    """A page of a document, within the stack: what paints it, and its boxes."""

    media: Object
    box: Box
    resources: Object
    streams: tuple[Object, ...]


@dataclass(frozen=True)
class _Leaf:
    """A leaf of paper: its front, and its back."""

    front: _Side
    back: _Side


def stack(
    documents: Sequence[Document], orders: Sequence[Stacked], face: bytes, drawn: Mapping[str, bytes] = NONE
) -> bytes:
    """All that a run prints: the orders in their order, their documents as they are named, stamped 'Q-7, sheet 2 of 5'.

    Of an order of several kits the stamp says which: 'Q-7, kit 2 of 3, sheet 4 of 9'. The first sheet of an order has
    its number in bold at its head. Each document begins on a front. `face` is the type face of the stamps, `drawn` the
    numbers that it lacks, as `render.number` draws them. Links and what is read aloud stay behind: this is for the
    printer. The same input gives the same bytes. CannotBe for a number that does not fit or cannot be set, KeyError for
    a document that there is not.
    """
    with ExitStack() as open_files:
        pdf = open_files.enter_context(Pdf.new())
        numbers = [order.number for order in orders]
        stamps = Stamps(
            pdf, face, numbers, [", sheet 0123456789 of ", *(which for order in orders for which in order.kits)], drawn
        )
        leaves = {}
        for one in documents:
            source = open_files.enter_context(Pdf.open(io.BytesIO(one.pdf)))
            leaves[one.key] = list(_leaves(list(_sides(source, stamps)), stamps, one_sided=one.one_sided))
        root = pdf.Root.Pages
        kids = []
        for order in orders:
            whose = order.kits or ("",) * len(order.documents)
            of_order = [
                (leaf, which)
                for (key, copies), which in zip(order.documents, whose, strict=True)
                for _ in range(copies)
                for leaf in leaves[key]
            ]
            if of_order:
                kids.append(_pages(stamps, order.number, of_order, root))
        root.Kids = Array(kids)
        root.Count = sum(int(kid.Count) for kid in kids)
        written = io.BytesIO()
        pdf.save(written, object_stream_mode=ObjectStreamMode.generate, deterministic_id=True, min_version="1.7")
        return written.getvalue()


def _sides(source: Pdf, stamps: Stamps) -> Iterator[_Side]:
    """The pages of a document, brought over: what several pages share stays one."""
    for page in source.pages:
        contents = page.obj.get("/Contents", Array())
        streams = [contents] if isinstance(contents, Stream) else list(contents)
        resources = page.obj.get("/Resources", Dictionary())
        if not resources.is_indirect:
            resources = page.obj.Resources = source.make_indirect(resources)
        brought = stamps.pdf.copy_foreign(resources)
        stamps.equip(brought)
        media = Array([float(at) for at in page.mediabox])
        yield _Side(media, box_of(page), brought, tuple(map(stamps.pdf.copy_foreign, streams)))


def _leaves(sides: Sequence[_Side], stamps: Stamps, *, one_sided: bool) -> Iterator[_Leaf]:
    """The paper that a document takes; a back without a page is blank, and as large as its front."""
    every = 1 if one_sided else 2
    bare = Dictionary()
    stamps.equip(bare)
    resources = stamps.pdf.make_indirect(bare)
    for front, *back in (sides[at : at + every] for at in range(0, len(sides), every)):
        yield _Leaf(front, back[0] if back else _Side(front.media, front.box, resources, ()))


def _pages(stamps: Stamps, number: str, leaves: Sequence[tuple[_Leaf, str]], root: Object) -> Object:
    """The pages of one order, stamped; of each leaf of which kit it is."""
    pdf = stamps.pdf
    node = pdf.make_indirect(Dictionary(Type=Name.Pages, Parent=root, Count=2 * len(leaves)))
    kids = []
    for at, (leaf, which) in enumerate(leaves, 1):
        stamped: dict[Box, Object] = {}
        kit = f", {which}" if which else ""
        for side in (leaf.front, leaf.back):
            if side.box not in stamped:
                stamped[side.box] = stamps.stamp(number, f"{kit}, sheet {at} of {len(leaves)}", side.box)
            head = [stamps.head(number, side.box)] if at == 1 and side is leaf.front else []
            page = Dictionary(
                Type=Name.Page, Parent=node, MediaBox=side.media, Resources=side.resources,
                Contents=Array([stamps.opening, *side.streams, stamped[side.box], *head]),
            )  # fmt: skip
            kids.append(pdf.make_indirect(page))
    node.Kids = Array(kids)
    return node
