"""Pictures of a project's folder, for the page."""

from __future__ import annotations

from pathlib import Path

from sheetgen.model.view import Html, Picture
from sheetgen.pictures.ready import ready


def of_file(folder: str, name: str, shows: str, caption: str = "") -> Picture:
    """A picture; an SVG's own title goes before what it is said to show. Raises CannotBe for what is no picture."""
    made = ready(name, (Path(folder) / name).read_bytes())
    return Picture(made.uri, Html(""), made.title or shows, caption)
