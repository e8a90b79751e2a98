"""The pictures that a project names: each is there, in its own folder, and can be printed as it is."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from sheetgen.base.place import Word
from sheetgen.base.spelling import suggest
from sheetgen.base.trouble import CannotBe
from sheetgen.pictures.ready import ready, small_enough

if TYPE_CHECKING:
    from sheetgen.base.trouble import Troubles
    from sheetgen.model.project import Project
    from sheetgen.pictures.ready import Ready

KINDS = {".svg", ".png", ".jpg", ".jpeg"}
LEAST = 32  # pixels of a side: on paper less than 4 mm


def look_at_pictures(project: Project, folder: Path, troubles: Troubles) -> None:
    """Whatever is wrong with a picture, told at the word that names it."""
    of_steps = [step.picture for step in project.steps if step.picture is not None]
    for one in (*project.pictures, *of_steps):
        if not isinstance(one, Word) and one.credit is not None and not one.credit.strip():
            troubles.add("this has nothing in it", one.credit.place, "say who made the picture, or take it out")
        word = one if isinstance(one, Word) else one.file
        try:
            made = _look_at(folder, word)
            if made.width and min(made.width, made.height) < LEAST:
                message = f"'{word}' has {made.width} × {made.height} pixels: nobody sees anything on it"
                troubles.add(message, word.place, "take a larger one, or leave it out", "warning")
        except CannotBe as fault:
            troubles.add(fault.message, word.place, fault.help)


def _look_at(folder: Path, word: Word) -> Ready:
    """It as it is printed. Raises CannotBe for what is no picture of the project."""
    try:
        path = (folder / word).resolve(strict=True)
    except (OSError, ValueError, RuntimeError):  # not there, a name that no file can have, links in a circle
        path = None
    if path is None and ".." not in Path(word).parts and not Path(word).is_absolute():
        there = [p.name for p in folder.iterdir() if p.suffix.lower() in KINDS and p.name != word and p.is_file()]
        raise CannotBe(f"there is no picture '{word}'", suggest(word, there))
    if path is None or not path.is_relative_to(folder.resolve()):
        raise CannotBe(f"the picture '{word}' lies outside the project's folder", f"copy it into {folder.name}/")
    if not path.is_file():
        raise CannotBe(f"'{word}' is no file", "name a picture in the project's folder")
    if path.suffix.lower() not in KINDS:
        raise CannotBe(f"'{word}' is not a kind of picture that can be printed", "svg, png or jpg")
    try:
        small_enough(word, path.stat().st_size)
        return ready(word, path.read_bytes())
    except OSError:
        raise CannotBe(f"the picture '{word}' cannot be read", "see who may read the file") from None
