"""A design's printed numbers to the ledger of its revision: written when that is first published, and never again."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

from sheetgen.model.fingerprint import GROUPS
from sheetgen.model.ledger import ALONE, FOLDER, file_name
from sheetgen.publish.folder import beside

if TYPE_CHECKING:
    from collections.abc import Iterable
    from pathlib import Path

    from sheetgen.model.fingerprint import Number
    from sheetgen.model.ledger import Kept, Ledger


def keep(project: Path, ledger: Ledger, other_units: str = "") -> Path | None:
    """Write a revision's ledger beside its design; None where there is one. OSError where nothing can be written.

    That of its pages in other units lies in a folder of its own.
    """
    folder = project / FOLDER / other_units
    target = folder / file_name(ledger.revision)
    if target.exists() or target.is_symlink():
        return None
    if folder.resolve() != project.resolve() / FOLDER / other_units:
        raise OSError(0, "the folder of the ledgers is a link to one elsewhere", str(folder))
    folder.mkdir(exist_ok=True, parents=True)
    laid = beside(target, ledger_text(ledger).encode())
    try:
        laid.replace(target)
    finally:
        laid.unlink(missing_ok=True)
    return target


def ledger_text(ledger: Ledger) -> str:
    """A ledger as JSON, a number a line, each group by its names.

    Versions stand in their order. What the main one is worked from stands once, and of the others what differs.
    """
    first = ledger.versions[0].inputs
    told = {
        "design": ledger.design,
        "revision": ledger.revision,
        "date": ledger.date,
        "inputs": dict(sorted(first.items())),
        **({} if ledger.prices is None else {"prices": _rows(ledger.prices)}),
        "versions": {one.name: _version(one, dict(first)) for one in ledger.versions},
    }
    return f"{_lines(told)}\n"


def _version(one: Kept, first: dict[str, str]) -> dict[str, Any]:
    own: dict[str, str | None] = {key: value for key, value in one.inputs.items() if first.get(key) != value}
    own |= dict.fromkeys(first.keys() - one.inputs.keys())
    grouped = {group: _rows(number for number in one.numbers if number.group == group) for group in GROUPS}
    base = _rows(one.kits[""][0]) if one.kits.get("") else {}
    kits = {name: [_beside(base, _rows(lists)) for lists in own] for name, own in one.kits.items()}
    return {
        "title": one.title,
        "fingerprint": one.code,
        "inputs": dict(sorted(own.items())),
        "numbers": {group: rows for group, rows in grouped.items() if rows},
        **({} if one.teachers is None else {ALONE: _grouped(one.teachers)}),
        **({"kit": base, "kits": kits} if kits else {}),
    }


def _beside(base: dict[str, list[str]], own: dict[str, list[str]]) -> dict[str, list[str] | None]:
    """What of a kit's lists is otherwise than in the one by itself and in no colourway; nothing for what it has not."""
    found: dict[str, list[str] | None] = {key: row for key, row in own.items() if base.get(key) != row}
    return found | dict.fromkeys(sorted(base.keys() - own.keys()))


def _grouped(keys: frozenset[tuple[str, str]]) -> dict[str, list[str]]:
    """Keys by their groups, each group on a line."""
    found = {group: sorted(key for own, key in keys if own == group) for group in GROUPS}
    return {group: each for group, each in found.items() if each}


def _rows(numbers: Iterable[Number]) -> dict[str, list[str]]:
    return {number.key: [number.label, number.told] for number in sorted(numbers)}


def _lines(told: Any, deep: int = 1) -> str:  # noqa: ANN401 - names and words, as above
    """Names in braces on lines of their own, and whatever else on one."""
    if not isinstance(told, dict) or not told:
        return json.dumps(told, ensure_ascii=False)
    rows = (f"{' ' * deep}{json.dumps(key, ensure_ascii=False)}: {_lines(one, deep + 1)}" for key, one in told.items())
    return "{\n" + ",\n".join(rows) + f"\n{' ' * (deep - 1)}}}"
