"""figures.json: its form is in DEVELOPERS.md and does not drift."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from sheetgen.base.figure import Figure
    from sheetgen.model.worked import Worked


def figures_json(worked: Worked) -> str:
    """The file's text."""
    return json.dumps(figures_data(worked), ensure_ascii=False, indent=1) + "\n"


def figures_data(worked: Worked) -> dict[str, Any]:
    """Every figure of every version, unrounded, and as it is printed."""
    return {
        "project": worked.name,
        "revision": worked.revision,
        "versions": {
            name: {key: _figure(f) for key, f in sorted(version.figures.items())}
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
