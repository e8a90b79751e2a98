"""The pictures of a design for the screen: each in several widths beside the pages, and what a page says of them."""

from __future__ import annotations

import hashlib
import posixpath
import re
from dataclasses import dataclass, replace
from pathlib import Path, PurePath
from typing import TYPE_CHECKING

from markupsafe import Markup

from sheetgen.base.spelling import slug
from sheetgen.model.drawing import unscaled
from sheetgen.model.page import Page
from sheetgen.model.view import Html
from sheetgen.pictures.ready import ready

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from sheetgen.model.view import Handout, Picture
    from sheetgen.model.worked import Worked
    from sheetgen.pictures.ready import Ready
    from sheetgen.render.job import Makes

FOLDER = "pictures"
WIDTHS = (480, 960, 1600)
"""Pixels: a card, and a phone or a column on a desk; the next for screens of twice the pixels; what print takes."""
ENDS = {"svg+xml": "svg", "jpeg": "jpg"}
_ROOT = re.compile(rb"<svg[^>]*>")
_BOX = re.compile(rb"viewBox=['\"]\s*[-\d.e]+[\s,]+[-\d.e]+[\s,]+([\d.e]+)[\s,]+([\d.e]+)")
_SIDE = rb"\b%s=['\"]\s*([\d.]+)\s*(?:px|mm|cm|pt|in)?\s*['\"]"
GREAT = 1000  # px that a drawing is said to be wide or tall: only the proportion counts


@dataclass(frozen=True, slots=True)
class File:
    """A file of a picture, below the build folder, with its pixels."""

    path: str
    kind: str
    width: int
    height: int


@dataclass(frozen=True, slots=True)
class WebPicture:
    """A picture in all its files, the narrowest first; a drawing has one."""

    files: tuple[File, ...]

    @property
    def plain(self) -> tuple[File, ...]:
        """Those that every browser shows."""
        return tuple(one for one in self.files if one.kind != "webp")

    @property
    def best(self) -> File:
        """The widest of these."""
        return self.plain[-1]

    def shown(self, one: Picture, folder: str) -> Picture:
        """What a page that lies in a folder says of it."""

        def widths(files: Iterable[File]) -> str:
            return ", ".join(f"{posixpath.relpath(file.path, folder)} {file.width}w" for file in files)

        drawn = self.best.kind == "svg+xml"
        return replace(
            one,
            source=posixpath.relpath(self.best.path, folder),
            width=self.best.width,
            height=self.best.height,
            widths="" if drawn else widths(self.plain),
            webp="" if drawn else widths(file for file in self.files if file.kind == "webp"),
        )


def web_pictures(worked: Worked, pool: Makes) -> tuple[list[Page], dict[str, WebPicture]]:
    """The files of all pictures that a design shows, and each picture by its address on paper.

    They are made once, and again only where a picture is another. Their names are those of the files that they are of.
    """
    pages: list[Page] = []
    found: dict[str, WebPicture] = {}
    for name, file in _named(worked).items():
        made = ready(file, (Path(worked.folder) / file).read_bytes())
        of = f"{WIDTHS} {made.kind} {hashlib.sha256(made.data).hexdigest()}"
        own = pool.made(name, of, lambda made=made, name=name: list(_made(made, name)))  # type: ignore[misc]
        pages += own
        found[made.uri] = WebPicture(tuple(_file(page.path, made) for page in own))
    return pages, found


def _named(worked: Worked) -> dict[str, str]:
    """Each picture by the beginning of its files' names; no two begin alike."""
    steps = (step.picture for version in worked.versions.values() for step in version.steps)
    files = dict.fromkeys((*(one.file for one in worked.pictures[:1]), *sorted({one.file for one in steps if one})))
    named: dict[str, str] = {}
    for file in files:
        name = f"{worked.name}/{FOLDER}/{slug(PurePath(file).stem) or 'picture'}"
        named[name if name not in named else f"{name}-{len(named) + 1}"] = file
    return named


def _made(made: Ready, name: str) -> Iterator[Page]:
    if made.kind == "svg+xml":
        yield Page(f"{name}.svg", made.data)
        return
    from sheetgen.pictures.bitmap import narrower  # noqa: PLC0415 - heavy, and not where all pictures are as they were

    for one in narrower(made.data, WIDTHS):
        yield Page(f"{name}-{one.width}.{ENDS.get(one.kind, one.kind)}", one.data)


def _file(path: str, made: Ready) -> File:
    end = path.rpartition(".")[2]
    if end == "svg":
        return File(path, "svg+xml", *_size(made.data))
    width = int(path.rpartition(".")[0].rpartition("-")[2])
    kind = {"jpg": "jpeg"}.get(end, end)
    return File(path, kind, width, max(1, round(made.height * width / made.width)))


def _size(drawing: bytes) -> tuple[int, int]:
    """The proportion of a drawing, as so many pixels that it is kept to a hundredth."""
    found = _ROOT.search(drawing)
    root = found[0] if found else b""
    box = _BOX.search(root)
    sides = (
        [float(one) for one in box.groups()]
        if box
        else [float(side[1]) if (side := re.search(_SIDE % name, root)) else 100.0 for name in (b"width", b"height")]
    )
    largest = max(*sides, 1e-6)
    return max(1, round(sides[0] / largest * GREAT)), max(1, round(sides[1] / largest * GREAT))


def on_screen(sheet: Handout, pictures: Mapping[str, WebPicture], folder: str) -> Handout:
    """A handout with the files of its pictures in place of what is printed, its drawings without their scale."""

    def shown(one: Picture | None) -> Picture | None:
        return pictures[one.source].shown(one, folder) if one is not None and one.source else one

    rows = tuple(
        replace(row, picture=shown(row.picture), drawings=tuple(_without_scale(row.drawings))) for row in sheet.rows
    )
    return replace(sheet, picture=shown(sheet.picture), rows=rows)


def _without_scale(drawings: Iterable[Html]) -> Iterator[Html]:
    yield from (Html(Markup(unscaled(str(svg)))) for svg in drawings)  # noqa: S704 - drawn by our own pen
