"""The documents of one order as one PDF, to be mailed and to be read aloud: PDF/UA-1, as its sheets are."""

from __future__ import annotations

import io
from contextlib import ExitStack
from typing import TYPE_CHECKING
from xml.sax.saxutils import escape

from pikepdf import Array, Dictionary, Name, NameTree, ObjectStreamMode, OutlineItem, Pdf, Stream, String

from sheetgen.publish.stamp import Stamps, box_of
from sheetgen.publish.tagged import Tagged

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from pikepdf import Object, Page

    from sheetgen.model.stack import Document, Stacked

NONE: Mapping[str, bytes] = {}
XMP = """<?xpacket begin="" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/" pdfuaid:part="1"/>
<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/"><dc:title><rdf:Alt>
<rdf:li xml:lang="x-default">{title}</rdf:li></rdf:Alt></dc:title></rdf:Description>
</rdf:RDF></x:xmpmeta>
<?xpacket end="r"?>"""


def apart(documents: Sequence[Document], order: Stacked, face: bytes, drawn: Mapping[str, bytes] = NONE) -> bytes:
    """What one order holds, a copy of each, stamped 'Q-7, page 3 of 9'; each document is found by its title.

    The documents are tagged, as those that we print are. `face` and `drawn` as for a stack, and CannotBe as there. The
    same input gives the same bytes. KeyError for a document that there is not, ValueError for an order without one.
    """
    by_key = {one.key: one for one in documents}
    wanted = [by_key[key] for key in dict.fromkeys(key for key, _ in order.documents)]
    if not wanted:
        raise ValueError("an order without a document has no PDF")
    with ExitStack() as open_files:
        pdf = open_files.enter_context(Pdf.new())
        stamps = Stamps(pdf, face, [order.number], [", page 0123456789 of "], drawn)
        sources = [open_files.enter_context(Pdf.open(io.BytesIO(one.pdf))) for one in wanted]
        tagged = Tagged(pdf)
        titles, begins = [], []
        for source in sources:
            titles.append(str(source.docinfo.get("/Title", "")))
            begins.append(len(pdf.pages))
            _lead_straight(source)
            tagged.apart(source)
            for page in source.pages:
                pdf.pages.append(page)
            tagged.join(source)
        for at, page in enumerate(pdf.pages, 1):
            _stamp(page, stamps, order.number, f", page {at} of {len(pdf.pages)}")
        with pdf.open_outline() as outline:
            outline.root.extend(OutlineItem(title, begin) for title, begin in zip(titles, begins, strict=True))
        _told(pdf, f"{order.number}: {'; '.join(titles)}", str(sources[0].Root.get("/Lang", "en")))
        pdf.Root.StructTreeRoot = tagged.written()
        written = io.BytesIO()
        pdf.save(written, object_stream_mode=ObjectStreamMode.generate, deterministic_id=True, min_version="1.7")
        return written.getvalue()


def _lead_straight(source: Pdf) -> None:
    """Let links lead to their place and not to its name, which another document may have too."""
    names = source.Root.get("/Names", Dictionary()).get("/Dests")
    known = dict(NameTree(names).items()) if names is not None else {}
    for page in source.pages:
        for link in page.obj.get("/Annots", Array()):
            for holder, key in ((link, "/Dest"), (link.get("/A", Dictionary()), "/D")):
                if isinstance(holder.get(key), String):
                    holder[key] = known[str(holder[key])]


def _stamp(page: Page, stamps: Stamps, number: str, words: str) -> None:
    contents = page.obj.get("/Contents", Array())
    painted = [contents] if isinstance(contents, Stream) else list(contents)
    if "/Resources" not in page.obj:
        page.obj.Resources = Dictionary()
    stamps.equip(page.obj.Resources)
    page.obj.Contents = Array([stamps.opening, *painted, stamps.stamp(number, words, box_of(page))])


def _told(pdf: Pdf, title: str, language: str) -> None:
    """What a document says of itself."""
    root: Object = pdf.Root
    root.Lang = String(language)
    root.MarkInfo = Dictionary(Marked=True)
    root.ViewerPreferences = Dictionary(DisplayDocTitle=True)
    root.Metadata = pdf.make_stream(XMP.format(title=escape(title)).encode(), Type=Name.Metadata, Subtype=Name.XML)
    pdf.docinfo["/Title"] = title
