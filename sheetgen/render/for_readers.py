"""What other programs read of a site with an address: its feed (RFC 4287) and the list of its pages (Sitemaps 0.90)."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, NamedTuple
from xml.sax.saxutils import escape, quoteattr

from sheetgen.model.page import Page

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from sheetgen.model.page import Entry
    from sheetgen.model.worked import Publisher

FEED, SITEMAP = "feed.xml", "sitemap.xml"
MOST = 50
"""Entries of a feed: who has not looked for so many revisions looks at the library. Common practice."""
HEAD = '<?xml version="1.0" encoding="utf-8"?>\n'
_UNSAID = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
"""Signs that XML 1.0 cannot hold (2.2)."""


class News(NamedTuple):
    """A revision of a design, its day as year-month-day, and what it changed."""

    design: Entry
    revision: str
    date: str
    words: str


def for_readers(
    publisher: Publisher, entries: Sequence[Entry], pages: Mapping[str, Sequence[str]], own: Sequence[str]
) -> list[Page]:
    """Both files; none without an address, since both hold whole addresses.

    `pages` are those of each design, `own` those of the library, its first one first.
    """
    if not publisher.address:
        return []
    return [
        Page(FEED, "".join(_feed(publisher, entries)).encode()),
        Page(SITEMAP, "".join(_sitemap(publisher, entries, pages, own)).encode()),
    ]


def _feed(publisher: Publisher, entries: Sequence[Entry]) -> Iterator[str]:
    told = [News(one, *said) for one in entries for said in one.revisions if _is_news(said)]
    told.sort(key=lambda news: (news.date, news.design.name), reverse=True)
    latest = max((news.date for news in told), default="1970-01-01")
    at, title = publisher.address, _text(f"{publisher.name}: revisions")
    yield f'{HEAD}<feed xmlns="http://www.w3.org/2005/Atom" xml:lang={quoteattr(publisher.language)}>\n'
    yield f"<id>{escape(at)}</id><title>{title}</title><updated>{_moment(latest)}</updated>\n"
    yield f"<author><name>{_text(publisher.name)}</name></author>\n"
    yield f'<link rel="self" type="application/atom+xml" href={quoteattr(at + FEED)}/>'
    yield f'<link rel="alternate" type="text/html" href={quoteattr(at)}/>\n'
    if publisher.licence.text:
        yield f"<rights>{_text(publisher.licence.text)}</rights>\n"
    for one, revision, date, words in told[:MOST]:
        page = f"{at}{one.name}/index.html"
        title = _text(f"{one.title}, revision {revision}")
        yield f"<entry><id>{escape(_id(page, revision))}</id><title>{title}</title>"
        yield f"<updated>{_moment(date)}</updated>"
        yield f'<link rel="alternate" type="text/html" href={quoteattr(page)}/>'
        yield f"<summary>{_text(words)}</summary></entry>\n"
    yield "</feed>\n"


def _is_news(said: object) -> bool:
    """Whether it is as it was written into the record, and not changed by a hand."""
    return isinstance(said, list) and len(said) == len(News._fields) - 1 and all(isinstance(one, str) for one in said)


def _id(page: str, revision: str) -> str:
    """What an entry is known by for ever: the page and its revision, with what no address holds written out."""
    plain = "".join(c if c.isascii() and (c.isalnum() or c in "-._~") else f"%{c.encode().hex()}" for c in revision)
    return f"{page}#revision-{plain}"


def _sitemap(
    publisher: Publisher, entries: Sequence[Entry], pages: Mapping[str, Sequence[str]], own: Sequence[str]
) -> Iterator[str]:
    yield f'{HEAD}<urlset xmlns="http://www.sitemaps.org/schemas/sitemap/0.9">\n'
    dated = [(own[0], max((one.date for one in entries), default="")), *((path, "") for path in own[1:])]
    dated += [(path, one.date) for one in entries for path in pages.get(one.name, ())]
    for path, date in dated:
        changed = f"<lastmod>{escape(date)}</lastmod>" if date else ""
        yield f"<url><loc>{escape(publisher.address + path)}</loc>{changed}</url>\n"
    yield "</urlset>\n"


def _moment(date: str) -> str:
    """A day as RFC 3339 writes a moment: its beginning."""
    return f"{date}T00:00:00Z"


def _text(words: str) -> str:
    return escape(_UNSAID.sub("\ufffd", words))
