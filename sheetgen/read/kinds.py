"""A studio's own kinds of part: each file of projects/kinds read, and told apart in nothing by what comes after."""

from __future__ import annotations

import re
from dataclasses import fields, replace
from typing import TYPE_CHECKING, Any

from sheetgen.base.place import Place, Word
from sheetgen.base.trouble import Troubles
from sheetgen.parts.field import Field
from sheetgen.parts.figure import FigureSpec
from sheetgen.read.text import read_text
from sheetgen.read.yaml_words import words

if TYPE_CHECKING:
    from collections.abc import Collection
    from pathlib import Path

    from sheetgen.parts.kind import Part


def read_kinds(
    projects: Path, known: Collection[str], cautions: Collection[str], troubles: Troubles
) -> tuple[dict[str, type[Part]], dict[str, Place]]:
    """The kinds of a library, and where those stand that are in trouble, by their names."""
    found: dict[str, type[Part]] = {}
    withheld: dict[str, Place] = {}
    first: dict[str, Place] = {}
    for path in sorted((projects / "kinds").glob("*.y*ml")):
        from sheetgen.read.kind_maker import KindMaker  # noqa: PLC0415 - few libraries have kinds of their own

        own = Troubles()
        name = f"projects/kinds/{path.name}"
        source = read_text(path, name, own)
        written = words(source, own) if source else None
        if written is not None:
            maker = KindMaker(written, own, cautions)
            if maker.name and str(maker.name) in known:
                own.add(f"there is a kind '{maker.name}' already", maker.name.place, "give this one another name")
            elif maker.name and str(maker.name) in first:
                told = f"'{maker.name}' is the kind of another file too: {first[str(maker.name)]}"
                own.add(told, maker.name.place, "give one of them another name")
            elif maker.name:
                first[str(maker.name)] = maker.name.place
                kind = maker.made()
                if not own.errors:
                    _told_nowhere(kind)
                    found[str(maker.name)] = kind
                else:
                    withheld[str(maker.name)] = maker.name.place
        elif source and (named := re.search(r"^kind:[ \t]*([^#\n]*[^#\s])", source.text, re.MULTILINE)):
            withheld[named[1].strip("'\"")] = Place(source, source.text[: named.start()].count("\n") + 1)
        troubles.extend(own)
    return found, withheld


def _told_nowhere(kind: type[Part]) -> None:
    """Once all is checked, what goes into a worked part is plain text that knows no file."""
    for owner in kind.names.values():
        if isinstance(owner, Field | FigureSpec):
            owner.role = str(owner.role)
    kind.sizes = tuple(replace(one, **_words(one)) for one in kind.sizes)
    kind.takes = tuple(replace(one, **_words(one)) for one in kind.takes)
    kind.tools = tuple(replace(one, **_words(one)) for one in kind.tools)


def _words(one: Any) -> dict[str, Any]:  # noqa: ANN401 - any of the lists of a kind
    return {f.name: str(value) for f in fields(one) if isinstance(value := getattr(one, f.name), Word)}
