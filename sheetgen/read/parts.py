"""Parts as written against their kinds: kinds and fields that are not known, fields that are missing."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from sheetgen.base.arithmetic import RESERVED
from sheetgen.base.outline import Outline
from sheetgen.base.place import Word
from sheetgen.base.spelling import plain as in_arithmetic
from sheetgen.base.spelling import suggest
from sheetgen.base.trouble import FIRST_MEND
from sheetgen.model.written import Traced

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sheetgen.base.place import Place
    from sheetgen.base.trouble import Troubles
    from sheetgen.model.project import PartWords, Project
    from sheetgen.parts.kind import Part
    from sheetgen.read.yaml_words import Words

    Kinds = Mapping[str, type[Part]]
    Withheld = Mapping[str, Place]

LONGEST_NAME = 60
NONE: Withheld = {}


def check_parts(project: Project, kinds: Kinds, troubles: Troubles, withheld: Withheld = NONE) -> None:
    """Note every fault in how parts, choices and figures are named and filled in."""
    names: dict[str, Place] = {}
    for group, found in (("choice", project.choices), ("part", project.parts), ("figure", project.figures)):
        for key in found:
            plain = in_arithmetic(key)
            if not re.fullmatch(r"[^\W\d]\w*", plain) or plain in RESERVED:
                helped = "letters, digits and spaces, a letter first, such as upper ring"
                if plain in RESERVED:
                    helped = f"'{plain}' has a meaning in arithmetic ({', '.join(sorted(RESERVED))}); take another word"
                troubles.add(f"'{key}' cannot be the name of a {group}", key.place, helped)
            elif len(plain) > LONGEST_NAME:
                troubles.add(f"this name of a {group} is too long", key.place, f"at most {LONGEST_NAME} letters")
            elif plain in names:
                troubles.add(
                    f"'{key}' is named twice; first at {names[plain]}", key.place, f"give the {group} another name"
                )
            else:
                names[plain] = key.place
    if not project.steps:
        troubles.add("there are no steps", project.title.place, "a project wants at least one under steps:")
    for version in project.versions:
        for key, word in version.items():
            if key == "name" and len(word) > LONGEST_NAME:
                troubles.add("this name of a version is too long", word.place, f"at most {LONGEST_NAME} letters")
    check_fields(project.parts, kinds, troubles, withheld)


def check_fields(parts: Words, kinds: Kinds, troubles: Troubles, withheld: Withheld = NONE) -> None:
    """Note every fault in the fields of parts, as far as they are written as parts at all.

    A kind that is `withheld` since it is in trouble itself is told once a project.
    """
    told: set[str] = set()
    for name, part in parts.items() if isinstance(parts, dict) else ():
        kind_word = next((v for k, v in part.items() if k == "kind"), None) if isinstance(part, dict) else None
        if isinstance(kind_word, Word) and (place := withheld.get(str(kind_word))):
            if str(kind_word) not in told:
                message = f"'{kind_word}' is a kind of this library, but its own file is in trouble"
                troubles.add(message, kind_word.place, f"{FIRST_MEND} {place}")
            told.add(str(kind_word))
        elif isinstance(part, dict):
            _check_part(name, part, kind_word, kinds, troubles)


def _check_part(
    name: Word, part: PartWords, kind_word: Word | list[Word] | None, kinds: Kinds, troubles: Troubles
) -> None:
    if kind_word is None:
        troubles.add(f"'{name}' does not say what kind of part it is", name.place, suggest("", kinds))
        return
    kind = kinds.get(str(kind_word))
    if kind is None or not isinstance(kind_word, Word):
        place = kind_word.place if isinstance(kind_word, Word) else name.place
        troubles.add(f"there is no kind of part '{kind_word}'", place, suggest(str(kind_word), kinds))
        return
    fields = kind.fields()
    for key in [k for k in part if k not in fields and in_arithmetic(k) in map(in_arithmetic, fields)]:
        named = next(f for f in fields if in_arithmetic(f) == in_arithmetic(key))
        part[Word(named, key.place)] = part.pop(key)  # a field's words may be parted in any way
    for key, value in list(part.items()):
        if key == "kind" or isinstance(value, dict):  # fields below a field: the form has told that
            continue
        if key not in fields:
            troubles.add(f"a {kind.kind} has no field '{key}'", key.place, suggest(key, fields))
        elif isinstance(value, list):
            troubles.add(f"'{key}' wants one value, not a list", key.place, f"write {key}: …")
        elif not value.strip():
            troubles.add(f"'{key}' has nothing after it", key.place, "fill it in or take it out")
        elif fields[key].sort is Outline and (traced := _traced(value, troubles)):
            part[key] = traced
    for field in fields.values():
        if field.required and field.name not in part:
            troubles.add(f"'{name}' wants its {field.name}: {field.about}", name.place, f"add {field.name}: …")


def _traced(path: Word, troubles: Troubles) -> Traced | None:
    from sheetgen.read.paths import outline  # noqa: PLC0415 - the path reader is heavy and seldom wanted

    found = outline(path, troubles)
    if found is None:
        return None
    traced = Traced(path, path.place, path.block)
    traced.outline = found
    return traced
