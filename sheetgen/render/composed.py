"""Puts pieces that are laid out once onto pages, as often as they are wanted; what of render knows pikepdf."""

from __future__ import annotations

import io
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.facts.paper import PRINTER_EDGE, PT_PER_INCH
from sheetgen.facts.units import MM_PER_INCH

if TYPE_CHECKING:
    from collections.abc import Sequence

PT = PT_PER_INCH / MM_PER_INCH


class Stamp(NamedTuple):
    """A page of one of the sources, counted from 0, with its upper left corner at so many mm from that of the paper."""

    source: int
    page: int
    x: float
    y: float


class Cut(NamedTuple):
    """A broken line to cut along, across the paper as far as a printer prints: mm from its top."""

    y: float


def composed(sources: Sequence[bytes], pages: Sequence[Sequence[Stamp | Cut]], wide: float, tall: float) -> bytes:
    """A PDF of pages of one size, mm. The same input gives the same bytes."""
    import pikepdf  # noqa: PLC0415 - only where pages are put together

    made = pikepdf.new()
    forms: dict[tuple[int, int], tuple[pikepdf.Object, float]] = {}
    edge = PRINTER_EDGE * PT
    opened = [pikepdf.open(io.BytesIO(raw)) for raw in sources]
    for stamps in pages:
        page = made.add_blank_page(page_size=(wide * PT, tall * PT))
        used, content = pikepdf.Dictionary(), []
        for stamp in stamps:
            if isinstance(stamp, Cut):
                y = (tall - stamp.y) * PT
                content.append(f"q 0.6 w [3 3] 0 d {edge:.4f} {y:.4f} m {wide * PT - edge:.4f} {y:.4f} l S Q")
                continue
            key = (stamp.source, stamp.page)
            if key not in forms:
                source = opened[stamp.source].pages[stamp.page]
                forms[key] = (made.copy_foreign(source.as_form_xobject()), float(source.mediabox[3]))
            form, height = forms[key]
            name = f"/P{stamp.source}x{stamp.page}"
            used[name] = form
            content.append(f"q 1 0 0 1 {stamp.x * PT:.4f} {(tall - stamp.y) * PT - height:.4f} cm {name} Do Q")
        page.obj.Resources = pikepdf.Dictionary(XObject=used)
        page.obj.Contents = made.make_stream("\n".join(content).encode())
    written = io.BytesIO()
    made.save(written, deterministic_id=True, object_stream_mode=pikepdf.ObjectStreamMode.generate)
    return written.getvalue()
