"""What the file of a project that is not read says of it: single fields, as far as they are written plainly."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.paths import leads_out
from sheetgen.base.place import Word
from sheetgen.base.trouble import Troubles
from sheetgen.read.formats import as_now
from sheetgen.read.text import read_text
from sheetgen.read.yaml_words import words

if TYPE_CHECKING:
    from pathlib import Path


def titles_of(folder: Path) -> list[Word]:
    """What a project is called, if it says so."""
    return words_under("title", folder)


def words_under(field: str, folder: Path) -> list[Word]:
    """What the file of a project that is not read says under a field, if it says so plainly."""
    if leads_out(folder, folder.parents[1]):
        return []
    source = read_text(folder / "project.yaml", f"projects/{folder.name}/project.yaml", Troubles())
    source = as_now(source, Troubles()) if source else None
    said = re.search(rf"^{field}:.*\n(?:[ \t].*\n|\n)*", source.text, re.MULTILINE) if source else None
    found = words(replace(source, text=source.text[: said.end()]), Troubles()) if source and said else None
    return [value for key, value in (found or {}).items() if key == field and isinstance(value, Word)]


def one_title(said: str) -> str:
    """A title as it is held against others."""
    return " ".join(said.lower().split())
