"""The picture of a design's card in the library: a narrow file of its own picture, else its view as it is drawn."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.model.page import Page

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sheetgen.model.drawing import Drawing
    from sheetgen.model.view import Picture
    from sheetgen.model.worked import Worked
    from sheetgen.render.web_pictures import WebPicture


@dataclass(frozen=True, slots=True)
class CardPicture:
    """Its path below the build folder, and its size: of a bitmap in px, of a picture that is drawn in proportion.

    Of a view that we drew it is in mm of the piece, and `drawn` says so. `webp` is the same as WebP, or nothing.
    `printed` is the path of what paper takes: of a bitmap a wider one.
    """

    path: str
    width: float
    height: float
    alternative: str
    webp: str = ""
    drawn: bool = False
    printed: str = ""


def card_picture(
    worked: Worked, picture: Picture | None, view: Drawing | None, pictures: Mapping[str, WebPicture]
) -> tuple[CardPicture | None, list[Page]]:
    """The picture, none where the design shows none, and the file that it wants besides those of `pictures`.

    `picture` is that of the main version as paper has it, `view` its finished view.
    """
    if picture is not None and picture.source:
        files = pictures[picture.source]
        narrow = files.plain[0]
        webp = next((one.path for one in files.files if one.kind == "webp" and one.width == narrow.width), "")
        printed = files.plain[min(1, len(files.plain) - 1)].path
        return CardPicture(narrow.path, narrow.width, narrow.height, picture.alternative, webp, printed=printed), []
    if view is None:
        return None, []
    path = f"{worked.name}/view.svg"
    size = view.width / view.shrunk, view.height / view.shrunk
    card = CardPicture(path, *size, view.says, drawn=True, printed=path)
    return card, [Page(path, view.svg.encode())]
