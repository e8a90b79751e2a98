"""What a person is told of a library on a terminal: figures, house steps, kinds of part, words, what a theme gets."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from sheetgen.base.spelling import suggest
from sheetgen.base.trouble import CannotBe, Troubles

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from sheetgen.model.worked import Worked, WorkedVersion
    from sheetgen.pipeline import Outcome

PLAIN = str.maketrans({"\u00a0": " ", "\u202f": ""})
Rows = list[tuple[str, ...]]


def figures_told(outcome: Outcome, name: str | None = None) -> Iterator[tuple[str, Rows, Rows]]:
    """Each project's numbers for a terminal: a title, its figures and its materials.

    A figure is name, label, printed value, range and working; a material name in stock, name, used, have, back and
    working. `name` names a version; raises CannotBe for one that there is not.
    """
    for worked in outcome.worked:
        version = worked.version(name) if name else worked.main
        rows: Rows = []
        for key, figure in version.figures.items():
            value = figure.value
            span = "" if value.exact else f"{value.low:.4g} – {value.high:.4g}"
            rows.append((key, figure.label, figure.printed.told.translate(PLAIN), span, figure.working))
        title = worked.title if version is worked.main else f"{worked.title}, {version.name}"
        yield title, rows, list(_materials_told(worked, version))


def _materials_told(worked: Worked, version: WorkedVersion) -> Iterator[tuple[str, ...]]:
    """What a version takes of each item, on the slabs that are drawn of it."""
    from sheetgen.model import amounts as reckoned  # noqa: PLC0415

    slabs = version.slabs
    for line in version.materials:
        told = reckoned.amounts(line, slabs, worked.rounder)
        three = (told.used.plain, told.have.plain, told.back.plain) if told else ("", "as needed", "")
        yield line.item.id, line.item.name, *three, reckoned.worked(line, slabs)


def figures_as_data(outcome: Outcome) -> list[dict[str, Any]]:
    """What figures.json of each project holds."""
    from sheetgen.render.figures import figures_data  # noqa: PLC0415

    return [
        figures_data(worked, {name: version.slabs for name, version in worked.versions.items()})
        for worked in outcome.worked
    ]


def house_steps_told(root: Path) -> str:
    """The house steps of a library: name, what each is for, and its parameters with their defaults."""
    from sheetgen.read.house_steps import read_house_steps  # noqa: PLC0415 - only where it is wanted

    lines = []
    for entry in read_house_steps(root / "projects", Troubles()).entries.values():
        many = f" ({len(entry.steps)} steps)" if entry.several else ""
        lines.append(f"{entry.name}{many}: {entry.about}".removesuffix(": "))
        for one in entry.takes.values():
            given = "must be given" if one.default is None else f"else {_told(one.default)}"
            lines.append(f"  {one.name}: {given}")
    return "\n".join([*lines, ""]) if lines else "no house steps in projects/steps\n"


def _told(default: Any) -> str:  # noqa: ANN401 - a word, or a list of words and mappings
    if not default:
        return "nothing"
    each = default if isinstance(default, list) else [default]
    return ", ".join(str(one["label"] if isinstance(one, dict) else one) for one in each)


def words_told() -> str:
    """What a kind of one's own may say: formulas, numbers of stock, roundings, roles."""
    from sheetgen.parts import described  # noqa: PLC0415 - only where it is wanted

    return described.words_told()


def theme_told() -> str:
    """What a theme gets, may load and must print."""
    from sheetgen.render import theme_told as told  # noqa: PLC0415 - only where it is wanted

    return told.theme_told()


def kinds_told(root: Path, name: str = "") -> str:
    """What kinds of part a library may use, its own too, or one of them, in plain lines; of all, their names first.

    Raises CannotBe for one that there is not.
    """
    from sheetgen.parts import described  # noqa: PLC0415 - only where it is wanted
    from sheetgen.parts.catalogue import kinds  # noqa: PLC0415
    from sheetgen.read.library import read_library  # noqa: PLC0415

    library = read_library(root, Troubles())
    known = dict(sorted((library.kinds if library is not None else kinds()).items()))
    if name and name not in known:
        raise CannotBe(f"there is no kind '{name}'", suggest(name, known))
    each = [described.told(one, kind) for one, kind in known.items() if name in {"", one}]
    names = [] if name else [f"{len(known)} kinds of part: {', '.join(known)}\n"]
    return "\n".join([*names, *each])
