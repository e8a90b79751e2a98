"""How long words and lists may be: what no person writes is told before anything of it is worked."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.place import Word
from sheetgen.model.written import MOST_LISTED

if TYPE_CHECKING:
    from sheetgen.base.trouble import Troubles
    from sheetgen.read.yaml_words import Mapping, Words

OF_STOCK = 2000  # characters of a word of stock or of the studio


def too_long(word: Word, longest: int, troubles: Troubles) -> bool:
    """Whether a text has more than `longest` characters, with its trouble noted."""
    if len(word) <= longest:
        return False
    troubles.add(f"a text of {len(word)} characters is too long", word.place, f"at most {longest}")
    return True


def few(found: Mapping, troubles: Troubles) -> bool:
    """Whether no field of a project has too many names below it; the first that has is told."""
    for key, value in found.items():
        if isinstance(value, dict) and len(value) > MOST_LISTED:
            troubles.add(f"'{key}' with {len(value)} names is too long", key.place, f"at most {MOST_LISTED}")
            return False
    return True


def bounded(written: Words, longest: int, troubles: Troubles) -> bool:
    """Whether every word is at most `longest`, and no list has too many entries; the first that has is told."""
    if isinstance(written, Word):
        return not too_long(written, longest, troubles)
    if isinstance(written, list) and len(written) > MOST_LISTED:
        troubles.add(f"a list of {len(written)} is too long", written.place, f"at most {MOST_LISTED}")  # type: ignore[attr-defined]
        return False
    each = (one for pair in written.items() for one in pair) if isinstance(written, dict) else written
    return all(bounded(one, longest, troubles) for one in each)
