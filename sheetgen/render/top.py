"""What stands round the body of every page on a screen: its head, with what the page may load, and its end.

The program writes it and no theme: what a page may load and run is not a matter of how it looks.
"""

from __future__ import annotations

import base64
import hashlib
import json
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any

from markupsafe import Markup

from sheetgen.base.spelling import apostrophes
from sheetgen.base.trouble import Misplaced, Trouble
from sheetgen.facts.languages import direction
from sheetgen.model.page import END, NEIGHBOURS
from sheetgen.render.script import FIND
from sheetgen.render.script import NAME as SCRIPT

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sheetgen.render.theme import Theme

STYLE = "style.css"
OWN = "'self'"
POLICY = "; ".join(
    (
        "default-src 'none'",
        f"script-src {OWN}",
        f"worker-src {OWN}",
        f"style-src {OWN}",
        f"font-src {OWN}",
        f"img-src {OWN} data:",
        f"form-action {OWN}",
        "base-uri 'none'",
    )
)
"""What a page may load: our own files, pictures within the page, and nothing else. It holds in a folder too, where
browsers take the files of the disk for `'self'`."""
NO_CODE = str.maketrans({sign: f"\\u{ord(sign):04x}" for sign in "<>&\u2028\u2029"})


@dataclass(frozen=True, slots=True)
class Preview:
    """The picture that is shown where somebody passes a link on: its path below the build folder, px, what it shows."""

    path: str
    width: int
    height: int
    alternative: str


@dataclass(frozen=True, slots=True)
class Top:
    """What the head of a page says.

    `path` is that of the page below the build folder and `address` that of the folder as it is published, or empty.
    `of_design`: whether it is the page of a design and not of the library. `found`: whether it is a page to be found
    and used, and not one that only leads on. `finds`: whether designs are found on it. `leads_to`: where it leads by
    itself, or nothing. `canonical`: the path of the page that stands for this one, where that is another. `style` is
    all the style of a page that can load none. `data` is said in JSON-LD.
    """

    title: str
    language: str
    path: str
    address: str = ""
    site: str = ""
    description: str = ""
    of_design: bool = False
    found: bool = True
    finds: bool = False
    leads_to: str = ""
    canonical: str = ""
    preview: Preview | None = None
    style: str = ""
    data: Mapping[str, Any] | None = None

    @property
    def home(self) -> str:
        """The way up to the library's page."""
        return "../" * self.path.count("/")


def body(theme: Theme, template: str, sheet: object) -> str:
    """What a theme makes of the body of a page. Misplaced for a template that writes the head too, as they once did."""
    made = theme.page(template, sheet=sheet)
    if made.lstrip().lower().startswith(("<!doctype", "<html", "<head")):
        told = "the page begins with its head, which the program writes"
        raise Misplaced(Trouble(told, theme.place(template), "begin with what stands in the body, and end with it"))
    return made


def styled(theme: Theme, body: str) -> str:
    """The body of a page with the style that it has, as it is looked for what the style hides."""
    return f"<!doctype html><style>{theme.styles['screen.css']}</style><body>{body}"


def page(top: Top, body: str) -> bytes:
    """A whole page of what a theme made of its body; of a design with a place for what leads to others."""
    top = replace(top, style=top.style.replace("</", "<\\/"))  # no style ends the element that it stands in
    head = Markup("\n").join(_head(top))
    lang = Markup('<html lang="{}" dir="{}">').format(top.language, direction(top.language))
    begun = f"<!doctype html>\n{lang}<head>\n{head}\n</head><body>\n{body.strip()}".encode()
    return begun + (b"\n" + NEIGHBOURS if top.of_design else b"") + END


def _head(top: Top) -> list[Markup]:
    lines = [
        _put(f'<meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="{policy(top.style)}">'),
        _put('<meta name="viewport" content="width=device-width, initial-scale=1"><title>{}</title>', top.title),
        *_meta("name", {"author": top.site, "description": top.description, "robots": "" if top.found else "noindex"}),
    ]
    if top.leads_to:
        lines.append(_put('<meta http-equiv="refresh" content="0; url={}">', top.leads_to))
    if top.address and (top.found or top.canonical):
        lines.append(_put('<link rel="canonical" href="{}">', top.address + (top.canonical or top.path)))
    if top.address and top.found:
        lines += _meta("property", _shared(top))
        feed = '<link rel="alternate" type="application/atom+xml" title="{}" href="{}feed.xml">'
        lines.append(_put(feed, f"{top.site}: revisions", top.home))
    # without one a browser asks the host for an icon, which is none of our files
    lines.append(_put('<link rel="icon" href="data:,">'))
    own = Markup(f"<style>{top.style}</style>")  # noqa: S704 - a file of the theme
    lines.append(own if top.style else _put('<link rel="stylesheet" href="{}">', top.home + STYLE))
    if top.found:
        lines.append(_put('<script src="{}" defer></script>', top.home + (FIND if top.finds else SCRIPT)))
    if top.data:
        lines.append(Markup('<script type="application/ld+json">{}</script>').format(json_in_html(top.data)))
    return lines


def policy(style: str = "") -> str:
    """What a page may load; of one with a style of its own that style too, by its digest, and no other."""
    digest = base64.b64encode(hashlib.sha256(style.encode()).digest()).decode()
    return POLICY.replace(f"style-src {OWN}", f"style-src 'sha256-{digest}'") if style else POLICY


def _shared(top: Top) -> dict[str, str]:
    """What is shown of a link that is passed on, in the words of the Open Graph protocol."""
    told = {
        "og:type": "article" if top.of_design else "website",
        "og:title": top.title,
        "og:description": top.description,
        "og:site_name": top.site,
        "og:url": top.address + top.path,
    }
    if top.preview is not None:
        told |= {
            "og:image": top.address + top.preview.path,
            "og:image:type": "image/png",
            "og:image:width": str(top.preview.width),
            "og:image:height": str(top.preview.height),
            "og:image:alt": top.preview.alternative,
        }
    return told


def json_in_html(data: Mapping[str, Any]) -> Markup:
    """Plain values as JSON in which no sign can end the element that it stands in."""
    text = apostrophes(json.dumps(data, ensure_ascii=False, separators=(",", ":")))
    return Markup(text.translate(NO_CODE))  # noqa: S704 - no < is left


def _meta(by: str, told: Mapping[str, str]) -> list[Markup]:
    return [_put(f'<meta {by}="{{}}" content="{{}}">', name, value) for name, value in told.items() if value]


def _put(html: str, *words: str) -> Markup:
    return Markup(html).format(*map(apostrophes, words))  # noqa: S704 - our own, and the words are escaped
