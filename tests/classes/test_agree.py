"""One class, counted in several places: its lists, its tables, its cost and its teacher's sheet say the same."""

from __future__ import annotations

import csv
import io
import json
import re
from collections import defaultdict
from fractions import Fraction
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple
from unittest.mock import patch

import pytest
from click.testing import CliRunner

from sheetgen.cli import main
from sheetgen.kits.class_share import share
from sheetgen.kits.kit_lines import where_it_is_made
from sheetgen.kits.run import taken
from sheetgen.kits.taken import Kits
from sheetgen.pipeline import projects_of, work_through

if TYPE_CHECKING:
    from collections.abc import Callable

    from sheetgen.model.class_tables import Share
    from tests.classes.conftest import Bench, Held, Rows

ROOT = Path(__file__).parents[2]
DESIGNS = sorted(path.parent.name for path in (ROOT / "projects").glob("*/project.yaml"))
WELL = 0
SHARE = re.compile(r"([\d.]+) ÷ [\d.]+(?: \S+)? × [\d.]+(?: from the drawer)?")


class Counted(NamedTuple):
    """A class with all places taken: its people, its lists, its share of the teacher's sheet, its cost both ways."""

    people: int
    held: Held
    share: Share
    from_list: dict[str, Rows]
    from_design: dict[str, Rows]


@pytest.fixture(scope="module", params=DESIGNS)
def counted(request: Any, bench: Callable[..., Bench]) -> Counted:
    """As many as there are places make a design as it is, at two tables, with the teacher's piece and a spare set."""
    made, shares = bench(request.param), list[Any]()
    own = re.search(r"people: (\d+)", (made.root / "projects" / request.param / "project.yaml").read_text("utf-8"))
    people = int(own[1]) if own else 12

    def seen(_by: Any, _called: str, run: Any, _laid: Any, needs: Any, *_: Any) -> list[Any]:
        shares.append(share(run, run.kinds, needs, run.kinds[0].rounder))
        return []

    with patch("sheetgen.runs.class_list.printed", side_effect=seen):
        held = made.held(*(f"Pupil {i},{request.param},,,,{i % 2}" for i in range(people)))
    assert held.code == WELL, held.said
    return Counted(people, held, shares[0], *(_costed(made, *words) for words in (
        (str(made.root / "evening.csv"),), (request.param, "--class"),
    )))  # fmt: skip


def _costed(made: Bench, *words: str) -> dict[str, Rows]:
    """The lists of the class that is costed, by their names."""
    into = made.root / "private" / "cost"
    before = {path.name for path in into.glob("*.csv")}
    result = CliRunner().invoke(main, ["cost", *words, "--library", str(made.root)])
    assert result.exit_code == WELL, result.output
    found = [path for path in into.glob("*.csv") if path.name not in before]
    return {
        path.stem.rpartition("-")[2]: list(csv.DictReader(io.StringIO(path.read_text("utf-8-sig")))) for path in found
    }


def _number(told: str) -> Fraction:
    """An amount as a sheet prints it, in the item's unit: 168 + 9, 215 g, 1.01 m, 12 cm²."""
    plain = told.replace("\u00a0", " ").replace("\u202f", "")
    amount, _, unit = plain.partition(" ") if "+" not in plain else (plain, "", "")
    whole = sum((Fraction(part) for part in amount.split("+")), Fraction(0))
    return whole * {"m": 1000, "cm²": 100}.get(unit, 1)


def _pots(counted: Counted) -> dict[str, Fraction]:
    return {
        row["name"]: Fraction(row["together"])
        for row in counted.held.rows("pick")
        if row["station"] and not row["design"]
    }


def test_all_but_lengths_and_blanks_is_one_pot(counted: Counted) -> None:
    for row in counted.held.rows("pick"):
        bagged = row["design"] and row["station"] != "paper"
        assert not bagged or row["unit"] == "mm" or row["unit"].startswith(("piece of", "blank of")), row


def test_the_teachers_sheet_has_the_pots_of_the_lists(counted: Counted) -> None:
    told: defaultdict[str, list[Fraction]] = defaultdict(list)
    for lot in counted.share.lots:
        if "×" not in lot.amount:
            told[lot.name].append(_number(lot.amount))
    pots = _pots(counted)
    assert pots
    assert counted.share.counted == f"{counted.people} pupils + 1 teacher’s piece + 1 spare set"
    for name, much in pots.items():
        assert much in told[name.partition(", ")[0]], name
    assert sum(map(len, told.values())) == len(pots)


def test_what_stands_on_the_tables_and_by_the_kiln_is_the_pot(counted: Counted) -> None:
    laid: defaultdict[str, Fraction] = defaultdict(Fraction)
    for row in counted.held.rows("tables"):
        if row["lies"] not in {"at the place", "of what is on the table"} and row["amount"]:
            laid[row["name"]] += Fraction(row["amount"])
    pots = _pots(counted)
    assert {name: laid[name] for name in pots} == pots


def test_the_cost_buys_the_packs_of_the_list_and_pays_what_they_cost(counted: Counted) -> None:
    packs: defaultdict[str, list[str]] = defaultdict(list)
    cost: defaultdict[str, Fraction] = defaultdict(Fraction)
    name = ""
    for row in counted.held.rows("buy"):
        if row["item"]:
            name = row["name"]
            if row["packs"] not in {"", "0"}:
                packs[name].append(f"{row['packs']} × {row['pack'].removesuffix(' piece')}")
            if row["cost"] != "unknown":
                cost[name] += Fraction(row["cost"])
    for found in (counted.from_list["bought"], counted.from_design["bought"]):
        bought = {row["line"]: row for row in found}
        for item, amount in cost.items():
            if bought[item]["amount"] != "unknown":
                assert sorted(bought[item]["working"].split(" + ")) == sorted(packs[item] or ["nothing to buy"]), item
                assert Fraction(bought[item]["amount"]) == amount, item


def test_what_the_cost_pays_for_is_what_is_used_up_on_the_list_of_what_is_left(counted: Counted) -> None:
    """Pots, lengths with their cuts, sheets without what is left of them, and what is used as needed, begun or not."""
    used = {row["line"]: row["working"] for row in counted.from_list["used"]}
    names = {row["item"]: row["name"] for row in counted.held.rows("buy") if row["item"]}
    looked: set[str] = set()
    for row in counted.held.rows("left"):
        name = names[row["item"]]
        parts = SHARE.findall(used.get(name, ""))
        if parts and row["used"]:
            rest = re.search(r"with offcuts ([\d.]+) mm²", row["ends"])
            gone = Fraction(row["used"]) - (Fraction(rest[1]) if rest else 0)
            assert sum(map(Fraction, parts)) == gone, name
            assert Fraction(row["before"]) + Fraction(row["bought"]) - Fraction(row["used"]) == Fraction(row["after"])
            looked.add(name)
    assert looked == {name for name, told in used.items() if SHARE.search(told) and name in names.values()}


def test_a_class_costs_the_same_by_its_list_and_by_its_plan(counted: Counted) -> None:
    for name in ("used", "bought", "drawer"):
        assert counted.from_list[name] == counted.from_design[name], name


def test_the_pot_of_every_version_is_what_its_ledger_keeps_of_the_teachers_sheet() -> None:
    """A ledger has what was printed for the people of its class, without the teacher's piece or a spare set."""
    looked = 0
    for worked in work_through(ROOT, projects_of(ROOT)).worked:
        [path] = (ROOT / "projects" / worked.name / "ledger").glob(f"revision-{worked.revision}.json")
        kept = json.loads(path.read_text("utf-8"))["versions"]
        for version in worked.versions.values():
            told = kept[version.name]["numbers"]["lists"]
            plan = version.plan.class_plan
            assert plan is not None
            kits = where_it_is_made(Kits(worked, version, plan.held.people))
            for one in taken([kits]):
                if one.way == "pot":
                    label, printed = told[f"{one.item.id}, class"]
                    assert label.endswith(f", for {plan.held.people}")
                    assert _number(printed) == one.need, (worked.name, version.title, label)
                    looked += 1
    assert looked > len(DESIGNS)
