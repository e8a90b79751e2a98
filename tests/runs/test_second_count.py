"""A thousand invented orders, added up once more by a script that knows nothing of the program's own counting."""

from __future__ import annotations

import csv
import importlib.util
import json
import shutil
from collections import Counter
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple

import pytest
import yaml
from click.testing import CliRunner

from sheetgen.cli import main

if TYPE_CHECKING:
    from types import ModuleType

ROOT = Path(__file__).parents[2]
MANY = 1000
ON_A_ROLL = {"release-sheet"}
"""Pieces of it lie side by side, which cut says."""


def script(name: str) -> ModuleType:
    """One of the scripts beside this file, by its path."""
    spec = importlib.util.spec_from_file_location(name, Path(__file__).parent / f"{name}.py")
    assert spec
    assert spec.loader
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


invented_orders, second_count = script("invented_orders"), script("second_count")


class Wrong(NamedTuple):
    """A number of a list that is made one more than it is, and which list is told for it."""

    name: str
    column: str
    says: str


@pytest.fixture(scope="module")
def orders(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("orders") / "invented.csv"
    invented_orders.write(path, MANY)
    return path


@pytest.fixture(scope="module")
def lists(orders: Path, without_paper: None) -> Path:
    """The folder of the lists."""
    assert without_paper is None
    private = orders.parent / "private"
    words = ["orders", str(orders), "--library", str(ROOT), "--private", str(private), "--lists-alone"]
    done = CliRunner().invoke(main, words)
    assert done.exit_code == 0, done.output
    return private / "orders" / "invented"


@pytest.fixture(scope="module")
def alone(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The library with the main version of each design alone: what is ordered of it need not pass in the others."""
    root = tmp_path_factory.mktemp("alone")
    shutil.copytree(ROOT / "projects", root / "projects", ignore=shutil.ignore_patterns("ledger"))
    for path in (root / "projects").glob("*/project.yaml"):
        told = yaml.safe_load(path.read_text("utf-8"))
        told.pop("versions", None)
        path.write_text(yaml.safe_dump(told, allow_unicode=True, sort_keys=False), "utf-8")
    return root


@pytest.fixture(scope="module")
def wanted(orders: Path, alone: Path) -> Any:
    """What all bags hold together, by the figures of each design with its choices as they are ordered."""
    rows = second_count.rows(orders)
    figures: dict[str, Any] = {}
    for design, choices in sorted({(row["design"], row["choices"]) for row in rows}):
        given = [word for choice in choices.split(";") if choice for word in ("--with", choice)]
        library = alone if choices else ROOT
        done = CliRunner().invoke(main, ["figures", design, "--json", "--library", str(library), *given])
        assert done.exit_code == 0, done.output
        figures.setdefault(design, {})[choices] = json.loads(done.stdout)["materials"]
    return second_count.bag_totals(rows, second_count.Library(ROOT), figures)


def test_pick_cut_buy_and_left_of_a_thousand_orders_agree_with_a_second_count_to_the_piece(
    lists: Path, wanted: Any
) -> None:
    assert len(wanted) >= 20
    assert second_count.differences(lists, wanted, ON_A_ROLL) == []


def test_the_second_count_imports_nothing_of_the_program() -> None:
    text = Path(str(second_count.__file__)).read_text("utf-8")
    assert "sheetgen" not in text.replace("`sheetgen figures --json`", "")


def test_every_kit_of_every_order_has_its_labels(orders: Path, lists: Path) -> None:
    """A bag each: four of the drops, two of each other design, and of a part that is sent by itself one."""
    bags: Counter[str] = Counter()
    for row in second_count.rows(orders):
        each = 1 if row["only"] else 4 if row["design"] == "buoy-drops" else 2
        bags[row["order"]] += int(row["count"]) * each
    assert Counter(row["order"] for row in second_count.rows(lists / "labels.csv")) == bags


@pytest.mark.parametrize(
    "wrong",
    [
        Wrong("pick", "together", "pick: "), Wrong("cut", "times", "cut: "), Wrong("buy", "packs", "left: "),
        Wrong("left", "after", "left: "),
    ],
    ids=lambda wrong: wrong.name,
)  # fmt: skip
def test_the_second_count_tells_a_list_that_is_wrong_by_one(
    lists: Path, wanted: Any, tmp_path: Path, wrong: Wrong
) -> None:
    for path in lists.glob("*.csv"):
        shutil.copy(path, tmp_path)
    text = (tmp_path / f"{wrong.name}.csv").read_text("utf-8-sig").splitlines()
    at = text[0].split(",").index(wrong.column)
    row = next(
        n for n, line in enumerate(text) if "foiled-pp18," in line or (wrong.name == "cut" and "copper-16awg" in line)
    )
    fields = next(csv.reader([text[row]]))
    fields[at] = str(int(fields[at]) + 1)
    text[row] = ",".join(f'"{field}"' for field in fields)
    (tmp_path / f"{wrong.name}.csv").write_text("\n".join(text), "utf-8")
    assert any(line.startswith(wrong.says) for line in second_count.differences(tmp_path, wanted, ON_A_ROLL))
