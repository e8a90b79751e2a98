"""Pictures of a project's folder, for the page."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from sheetgen.model.view import Html, Picture
from sheetgen.pictures.ready import ready

if TYPE_CHECKING:
    from sheetgen.model.worked import Illustration, Shot


def of_file(folder: str, shot: Shot | Illustration, shows: str, caption: str = "") -> Picture:
    """A picture; an SVG's own title goes before what it is said to show. Raises CannotBe for what is no picture."""
    made = ready(shot.file, (Path(folder) / shot.file).read_bytes())
    made_by = f"Picture: {shot.credit}" if shot.credit else ""
    said = f"{caption.rstrip('.')}. {made_by}" if caption and made_by else caption or made_by
    return Picture(made.uri, Html(""), made.title or shows, said)
