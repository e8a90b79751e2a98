"""The type faces as a browser loads them: WOFF2 of the packaged files, a third of their bytes, with every letter.

No letter is left out, for nobody knows today what a design will be called. The same files give the same bytes.
"""

from __future__ import annotations

import functools
import io
from pathlib import Path, PurePath

from sheetgen.model.page import Page
from sheetgen.render.pdf import font_css, font_files

FOLDER = "fonts"
ENDS = ".woff2"
# On a slow line a page is read in a face of the device until ours has come.
SEEN_AT_ONCE = ";font-display:swap"


def face_paths() -> tuple[str, ...]:
    """Where they lie, below the build folder."""
    return tuple(f"{FOLDER}/{PurePath(name).with_suffix(ENDS)}" for name in font_files())


def face_css() -> str:
    """The rules of a style at the root of the site that load them."""
    return font_css(f"{FOLDER}/", SEEN_AT_ONCE, ENDS)


@functools.cache
def faces() -> tuple[Page, ...]:
    """All of them, made once a run: that takes a second or two."""
    return tuple(Page(path, _packed(own)) for path, own in zip(face_paths(), font_files().values(), strict=True))


def _packed(face: Path) -> bytes:
    from fontTools.ttLib import TTFont  # noqa: PLC0415 - only where faces are made

    kept = io.BytesIO()
    with TTFont(face, recalcBBoxes=False, recalcTimestamp=False) as font:
        font.flavor = ENDS.removeprefix(".")
        font.save(kept, reorderTables=False)
    return kept.getvalue()
