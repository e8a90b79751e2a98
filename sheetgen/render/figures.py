"""figures.json: its form is in DEVELOPERS.md and does not drift."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

from sheetgen.model.amounts import amounts

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from sheetgen.base.figure import Figure
    from sheetgen.base.material import Item
    from sheetgen.model.drawing import SlabLayout
    from sheetgen.model.in_print import Amounts
    from sheetgen.model.worked import Worked


def figures_json(worked: Worked, slabs: Mapping[str, Sequence[SlabLayout]]) -> str:
    """The file's text; `slabs` are those of each version, by its name."""
    return json.dumps(figures_data(worked, slabs), ensure_ascii=False, indent=1) + "\n"


def figures_data(worked: Worked, slabs: Mapping[str, Sequence[SlabLayout]]) -> dict[str, Any]:
    """Every figure of every version, unrounded and as it is printed, and what each version takes of its materials."""
    return {
        "project": worked.name,
        "revision": worked.revision,
        "versions": {
            name: {key: _figure(f) for key, f in sorted(version.figures.items())}
            for name, version in worked.versions.items()
        },
        "materials": {
            name: {
                line.item.id: _material(line.item, told)
                for line in version.materials
                if (told := amounts(line, slabs[name], worked.rounder)) is not None
            }
            for name, version in worked.versions.items()
        },
    }


def _figure(figure: Figure) -> dict[str, Any]:
    value, printed = figure.value, figure.printed
    return {
        "label": figure.label, "value": value.usual, "low": value.low, "high": value.high,
        "unit": figure.unit, "working": figure.working,
        "printed": {"value": float(printed), "words": printed.words, "unit": printed.unit},
    }  # fmt: skip


def _material(item: Item, told: Amounts) -> dict[str, Any]:
    three = {"used": told.used, "have": told.have, "back": told.back}
    return {
        "name": item.name, "unit": item.unit, **{word: float(one) for word, one in three.items()},
        "printed": {word: one.plain for word, one in three.items()},
    }  # fmt: skip
