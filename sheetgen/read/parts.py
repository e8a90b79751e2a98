"""Parts as written against their kinds: kinds and fields that are not known, fields that are missing."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from sheetgen.base.outline import Outline
from sheetgen.base.place import Word
from sheetgen.base.spelling import suggest
from sheetgen.model.written import Traced
from sheetgen.parts.catalogue import kinds

if TYPE_CHECKING:
    from sheetgen.base.place import Place
    from sheetgen.base.trouble import Troubles
    from sheetgen.model.project import PartWords, Project
    from sheetgen.read.yaml_words import Words

LONGEST_NAME = 60
RESERVED = ("min", "max", "round", "up", "down", "pi", "π")


def check_parts(project: Project, troubles: Troubles) -> None:
    """Note every fault in how parts, choices and figures are named and filled in."""
    names: dict[str, Place] = {}
    for group, found in (("choice", project.choices), ("part", project.parts), ("figure", project.figures)):
        for key in found:
            plain = str(key).replace(" ", "_")
            if not re.fullmatch(r"[^\W\d]\w*", plain) or plain in RESERVED:
                helped = "letters, digits and spaces, a letter first, such as upper ring"
                if plain in RESERVED:
                    helped = f"'{plain}' has a meaning in arithmetic ({', '.join(RESERVED)}); take another word"
                troubles.add(f"'{key}' cannot be the name of a {group}", key.place, helped)
            elif len(plain) > LONGEST_NAME:
                troubles.add(f"this name of a {group} is too long", key.place, f"at most {LONGEST_NAME} letters")
            elif plain in names:
                troubles.add(
                    f"'{key}' is named twice; first at {names[plain]}", key.place, f"give the {group} another name"
                )
            else:
                names[plain] = key.place
    if not project.parts:
        troubles.add("there are no parts", project.title.place, "a project wants at least one under parts:")
    if not project.steps:
        troubles.add("there are no steps", project.title.place, "a project wants at least one under steps:")
    for version in project.versions:
        for key, word in version.items():
            if key == "name" and len(word) > LONGEST_NAME:
                troubles.add("this name of a version is too long", word.place, f"at most {LONGEST_NAME} letters")
    check_fields(project.parts, troubles)


def check_fields(parts: Words, troubles: Troubles) -> None:
    """Note every fault in the fields of parts, as far as they are written as parts at all."""
    for name, part in parts.items() if isinstance(parts, dict) else ():
        if isinstance(part, dict):
            _check_part(name, part, troubles)


def _check_part(name: Word, part: PartWords, troubles: Troubles) -> None:
    kind_word = next((v for k, v in part.items() if k == "kind"), None)
    if kind_word is None:
        troubles.add(f"'{name}' does not say what kind of part it is", name.place, suggest("", kinds()))
        return
    kind = kinds().get(str(kind_word))
    if kind is None or not isinstance(kind_word, Word):
        place = kind_word.place if isinstance(kind_word, Word) else name.place
        troubles.add(f"there is no kind of part '{kind_word}'", place, suggest(str(kind_word), kinds()))
        return
    fields = kind.fields()
    for key, value in list(part.items()):
        if key == "kind":
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
