"""Whatever decides whether a sheet passes is a fact, and stands on the facts page."""

from __future__ import annotations

import ast
import re
from pathlib import Path

import pytest

import sheetgen

ROOT = Path(sheetgen.__file__).parent
FILES = sorted(file for folder in ("parts", "check", "work") for file in (ROOT / folder).rglob("*.py"))
# Halves and doubles, none and one, are geometry; with a unit they are not.
NUMBER = re.compile(r"(?<![\w.])(?P<number>\d+(?:\.\d+)?)(?P<unit>\s*(?:mm|g|°C|%|min)\b)?")
GEOMETRY = {"0", "1", "2"}
STEP = re.compile(r"\b(?:round|up|down)\([^()]*\)")  # what is printed to a tenth is compared as it is printed
# How far the arcs of an outline are straight runs; what stands for any distance at all.
DRAWN = {"HAIR", "NEAREST", "_ENOUGH"}


def named(file: Path) -> str:
    return str(file.relative_to(ROOT))


def pieces(node: ast.expr) -> list[str]:
    """What is written out of a text; what is put into it from elsewhere is left out."""
    return [one.value for one in ast.walk(node) if isinstance(one, ast.Constant) and isinstance(one.value, str)]


def bare(text: str) -> list[str]:
    """The numbers of a condition that decide, as they are written."""
    return [
        found[0] for found in NUMBER.finditer(STEP.sub("", text))
        if not (found["number"] == "0" or (found["number"] in GEOMETRY and not found["unit"]))
    ]  # fmt: skip


def test_a_decision_is_told_from_geometry() -> None:
    assert bare("wide > 2 × thickness and lip > 0 mm and round(thick, 0.1 mm) > thin") == []
    assert bare("rise ≤ 0.4 × across or edge ≥ 1 mm or wire ≥ 3 × bead") == ["0.4", "1 mm", "3"]


@pytest.mark.parametrize("file", FILES, ids=named)
def test_no_number_of_common_practice_is_kept_beside_what_uses_it(file: Path) -> None:
    lines = file.read_text("utf-8").splitlines()
    tree = ast.parse("\n".join(lines))
    kept = []
    for node in tree.body:
        if isinstance(node, ast.Assign | ast.AnnAssign):
            written = "\n".join(lines[node.lineno - 1 : node.end_lineno])
            number = any(
                isinstance(one, ast.Constant)
                and (isinstance(one.value, int | float) or re.match(r"[\d.]+( mm)?$", str(one.value)))
                for one in ast.walk(node)
            )
            if number and "common practice" in written:
                kept.append(written)
    assert kept == []


@pytest.mark.parametrize("file", [f for f in FILES if f.parent.name == "parts"], ids=named)
def test_no_condition_of_a_kind_holds_a_number_of_its_own(file: Path) -> None:
    tree = ast.parse(file.read_text("utf-8"))
    calls = [node for node in ast.walk(tree) if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "need"]
    conditions = [call.args[0] for call in calls if call.args]
    # What conditions are put together from stands at the head of a file.
    for node in tree.body:
        if isinstance(node, ast.Assign) and isinstance(node.targets[0], ast.Name) and node.targets[0].id not in DRAWN:
            used = {one.id for text in conditions for one in ast.walk(text) if isinstance(one, ast.Name)}
            if node.targets[0].id in used:
                conditions.append(node.value)
    assert [number for text in conditions for piece in pieces(text) for number in bare(piece)] == []
