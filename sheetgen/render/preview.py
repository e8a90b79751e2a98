"""The picture that is shown of a link to a design: its drawing or picture, what it is called, and whose it is."""

from __future__ import annotations

from typing import TYPE_CHECKING

from markupsafe import Markup

from sheetgen.render import words
from sheetgen.render.job import Job, Paper
from sheetgen.render.top import Preview

if TYPE_CHECKING:
    from sheetgen.model.view import Picture
    from sheetgen.model.worked import Worked

WIDE, HIGH = 1200, 630
"""Pixels: what most readers of links ask for, common practice; the Open Graph protocol itself names no size."""
SIZES = ((24, 84), (48, 64), (96, 48), (160, 38))
"""Letters of a title, and how many pixels high it is set up to so many."""
SMALLEST = 30
PAGE = """<!doctype html><html lang="{}"><head><meta charset="utf-8"><title>{}</title><style>
@page {{ size: {}px {}px; margin: 0 }}
body {{ margin: 0; font: 30px/1.3 'Source Sans Pro'; color: #000; overflow-wrap: anywhere }}
.picture {{ position: absolute; left: 50px; top: 50px; width: 540px; height: 530px }}
.picture img, .picture svg {{ width: 540px; height: 530px; object-fit: contain }}
.said {{ position: absolute; left: {}px; top: 50px; width: {}px; height: 470px; overflow: hidden }}
h1 {{ font-size: {}px; line-height: 1.1; font-weight: 700; margin: 0 0 20px }} p {{ margin: 0 }}
.by {{ position: absolute; left: {}px; bottom: 50px; width: {}px; height: 40px; overflow: hidden; font-weight: 600 }}
</style></head><body>{}<div class="said"><h1>{}</h1><p>{}</p></div><p class="by">{}</p></body></html>"""


def preview_of(worked: Worked, picture: Picture | None) -> Preview:
    """Where it stands and what it shows."""
    shows = picture.alternative if picture is not None else f"The title {worked.title}"
    return Preview(f"{worked.name}/preview.png", WIDE, HIGH, shows)


def preview_job(worked: Worked, picture: Picture | None) -> Job:
    """What is printed and then made into pixels."""
    left, wide = (640, 510) if picture is not None else (100, 1000)
    size = next((size for most, size in SIZES if len(worked.title) <= most), SMALLEST)
    html = Markup(PAGE).format(  # noqa: S704 - our own, and the words are escaped
        worked.studio.language,
        worked.title,
        *(WIDE, HIGH, left, wide, size, left, wide),
        _shown(picture),
        worked.title,
        words.plain(worked.main.summary),
        worked.studio.name,
    )
    path = preview_of(worked, picture).path
    return Job((str(html),), (Paper(path, revision=worked.revision),), pixels=WIDE)


def _shown(picture: Picture | None) -> Markup:
    if picture is None:
        return Markup("")
    if picture.source:
        img = Markup('<div class="picture"><img src="{}" alt="{}"></div>')
        return img.format(picture.source, picture.alternative)
    return Markup('<div class="picture">{}</div>').format(Markup(picture.svg))  # noqa: S704 - drawn by our own pen
