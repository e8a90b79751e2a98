"""Two publications held against each other, figure by figure: `python tests/compare_figures.py OLD NEW`.

Prints every figure whose usual value differs by more than 1e-9 of itself, whose range, unit or working differs, and
every one that is in only one of the two; then how many are the same.
"""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import Any

GRAIN = 1e-9


def figures(build: Path) -> dict[str, dict[str, Any]]:
    """Every figure of every version of every project, by project, version and name."""
    found: dict[str, dict[str, Any]] = {}
    for path in sorted(build.glob("*/figures.json")):
        told = json.loads(path.read_text("utf-8"))
        for version, each in told["versions"].items():
            found |= {f"{told['project']} / {version} / {key}": one for key, one in each.items()}
    return found


def near(a: float, b: float) -> bool:
    """Whether two numbers are one, to 1e-9 of themselves."""
    return abs(a - b) <= GRAIN * max(1.0, abs(a), abs(b))


def differs(old: dict[str, Any], new: dict[str, Any]) -> list[str]:
    """What of a figure has moved: value, range, unit, label, working."""
    found = [] if near(old["value"], new["value"]) else ["value"]
    found += [] if near(old["low"], new["low"]) and near(old["high"], new["high"]) else ["range"]
    return found + [word for word in ("unit", "label", "working") if old[word] != new[word]]


def main(old_build: str, new_build: str) -> int:
    """Print the comparison."""
    old, new = figures(Path(old_build)), figures(Path(new_build))
    counts: dict[str, int] = {}
    for key in sorted({*old, *new}):
        if key not in old or key not in new:
            print(f"{'only before' if key in old else 'only after'}: {key}")
            continue
        moved = differs(old[key], new[key])
        for word in moved or ["same"]:
            counts[word] = counts.get(word, 0) + 1
        if {"value", "range", "unit"} & set(moved):
            a, b = ([one[word] for word in ("low", "value", "high")] for one in (old[key], new[key]))
            print(f"{', '.join(moved)}: {key}")
            print(f"    {_three(a)}  {old[key]['working']}")
            print(f"    {_three(b)}  {new[key]['working']}")
    print(counts)
    return 0


def _three(ends: list[float]) -> str:
    return " ".join(f"{x:.6g}" for x in ends)


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:3]))
