"""A second count of a run of orders, by a script that imports nothing of the program.

It reads the orders as a spreadsheet program saves them, what `sheetgen figures --json` says of each design, and the
YAML of the library, adds up what all bags hold, and holds that against pick, cut, buy and left. Differences are
returned, each in a line; an empty list is agreement.
"""

from __future__ import annotations

import csv
import json
import sys
from collections import Counter, defaultdict
from fractions import Fraction
from math import ceil, floor
from pathlib import Path
from typing import Any

import yaml

Figures = dict[str, dict[str, dict[str, dict[str, Any]]]]
"""By design, its choices as they are ordered ('' for none) and version: its materials."""

FLAT = {"tube", "dome", "cut shape", "ring band", "stone row", "bent wire", "flat spiral"}
"""Kinds of the demonstration that have an outline on a page of templates."""


def rows(path: Path) -> list[dict[str, str]]:
    with path.open(newline="", encoding="utf-8-sig") as file:
        return list(csv.DictReader(file))


class Library:
    """What the files of a library say, by what a reader of YAML makes of them."""

    def __init__(self, root: Path) -> None:
        self.root = root
        self.stock: dict[str, Any] = {}
        for file in (root / "projects" / "stock").glob("*.yaml"):
            for sort, items in yaml.safe_load(file.read_text("utf-8")).items():
                self.stock |= {name: one | {"sort": sort} for name, one in items.items() if isinstance(one, dict)}
        self.designs = {
            path.parent.name: yaml.safe_load(path.read_text("utf-8"))
            for path in (root / "projects").glob("*/project.yaml")
        }

    def choices(self, design: str, version: str, ordered: dict[str, str]) -> dict[str, str]:
        """What each choice is, of a version, as it is ordered."""
        project = self.designs[design]
        other: dict[str, str] = next((one for one in project.get("versions", []) if one["name"] == version), {})
        found = {**project["choices"], **{k: v for k, v in other.items() if k != "name"}, **ordered}
        for name, value in found.items():
            if isinstance(value, dict):
                found[name] = value[found[value["by"]]]
        return found

    def kit(self, design: str, choices: dict[str, str]) -> tuple[dict[str, list[str]], list[str]]:
        """The bags of a kit with their items, and the tools in its box. A design without a kit has one bag of all."""
        told = self.designs[design].get("kit") or {}
        bags = {
            name: [str(choices.get(word, word)) for word in ([words] if isinstance(words, str) else words)]
            for name, words in (told.get("bags") or {}).items()
        }
        return bags, [str(choices.get(word, word)) for word in told.get("in the box") or []]

    def sheets(self, design: str) -> list[str]:
        """The sheets that lie in a kit: templates where a part is cut out of something flat."""
        flat = any(part["kind"] in FLAT for part in self.designs[design]["parts"].values())
        return ["handout", "bench card", *(["templates"] if flat else [])]

    def mix(self, design: str, name: str, seats: int) -> dict[str, int]:
        """A colourway by largest remainder, ties to the first named."""
        told = self.designs[design]["colourways"][name]
        if isinstance(told, str):
            pairs = [part.split() for part in told.split(" : ")]
            told = {colour: many for many, colour in pairs}
        parts = {colour: Fraction(str(many).replace("%", "").strip()) for colour, many in told.items()}
        whole = sum(parts.values())
        shares = {colour: part / whole * seats for colour, part in parts.items()}
        found = {colour: floor(share) for colour, share in shares.items()}
        over = sorted(shares, key=lambda colour: found[colour] - shares[colour])[: seats - sum(found.values())]
        return {colour: many + (colour in over) for colour, many in found.items()}

    def to_spare(self, item: str, many: int) -> int:
        """What is counted with its spares or its allowance, whichever is more."""
        stock = self.stock[item]
        with_allowance = ceil(many * (1 + Fraction(str(stock.get("allowance", "0 %")).split()[0]) / 100))
        spares = stock.get("spares")
        if not spares:
            return with_allowance
        some, per = (int(part) for part in spares.split(" per "))
        return max(with_allowance, many + some * ceil(Fraction(many, per)))


def bag_totals(orders: list[dict[str, str]], library: Library, figures: Figures) -> dict[str, Fraction]:
    """What all bags of all orders hold of each item: each bag as its sheet says it, added up one by one."""
    found: defaultdict[str, Fraction] = defaultdict(Fraction)
    sealed: Counter[str] = Counter()
    for order in orders:
        design, count = order["design"], int(order["count"])
        main = library.designs[design].get("main version", "As designed")
        version = "main" if order["version"] in {"", main} else order["version"]
        ordered = dict(part.split("=") for part in order["choices"].split(";") if part)
        materials = figures[design][order["choices"]][version]
        bags, box = library.kit(design, library.choices(design, version, ordered))
        if order["only"]:
            bags, box = {name: items for name, items in bags.items() if name.startswith(order["only"])}, []
        for item in dict.fromkeys(item for items in bags.values() for item in items):  # two choices may be one wire
            one = materials[item]
            stone = library.designs[design].get("choices", {}).get("stone")
            if order["colourway"] and item == stone:
                for colour, many in library.mix(design, order["colourway"], int(one["used"])).items():
                    found[colour] += library.to_spare(colour, many) * count
            elif library.stock[item].get("given out") == "sealed":
                sealed[item] += count
            elif one["unit"] == "piece":
                found[item] += library.to_spare(item, int(one["used"])) * count
            else:
                found[item] += Fraction(str(one["have"])) * count
        for extra in (*box, *([] if order["only"] else library.sheets(design))):
            found[extra] += count
    for item, many in sealed.items():  # each bag has one: every piece of the demonstration takes less than a pack
        found[item] = Fraction(_cheapest(library.stock[item], many)) * many
    return dict(found)


def _cheapest(stock: dict[str, Any], many: int) -> str:
    def cost(pack: dict[str, Any]) -> Fraction:
        return Fraction(str(pack["price"]).split()[0]) * max(many, int(pack.get("at least", 1)))

    return str(min(stock["packs"], key=cost)["holds"]).split()[0]


def differences(folder: Path, wanted: dict[str, Fraction], rolled: set[str]) -> list[str]:
    """What the lists in a folder say otherwise; `rolled` are items that lie side by side on a roll, for cut to say."""
    pick, cut, buy, left = (rows(folder / f"{name}.csv") for name in ("pick", "cut", "buy", "left"))
    said = []
    picked: defaultdict[str, Fraction] = defaultdict(Fraction)
    for row in pick:
        picked[row["item"]] += Fraction(row["together"])
        if Fraction(row["in one bag"]) * int(row["bags"]) != Fraction(row["together"]):
            said.append(f"pick: {row['item']}: {row['bags']} × {row['in one bag']} is not {row['together']}")
    said += [
        f"pick: {item}: {picked[item]} and not {wanted.get(item)}"
        for item in sorted(picked.keys() | wanted.keys())
        if item not in rolled and picked[item] != wanted.get(item)
    ]
    lengths: Counter[str] = Counter()
    for row in cut:
        for piece in row["pieces"].split(" · "):
            many, _, label = piece.partition(" × ")
            lengths[row["item"]] += int(many) * int(row["times"]) * _length(label)
    said += [
        f"cut: {item}: {lengths[item]} mm are cut, and {wanted[item]} mm go into bags"
        for item in lengths
        if item not in rolled and lengths[item] != wanted[item]
    ]
    for row in left:
        packs = [one for one in buy if one["item"] == row["item"]]
        got = sum(Fraction(one["pack"].split()[0]) * int(one["packs"]) for one in packs if one["pack"])
        if Fraction(row["before"]) + got != Fraction(row["used"]) + Fraction(row["after"]):
            said.append(f"left: {row['item']}: {row['before']} + {got} is not {row['used']} + {row['after']}")
        needed = wanted.get(row["item"], Fraction(0))
        if row["item"] not in rolled and Fraction(row["before"]) + got < needed:
            said.append(f"buy: {row['item']}: {row['before']} + {got} is less than {needed}")
    return said


def _length(label: str) -> int:
    """The length of a piece: '465 mm, tag c, Towline bracelet, …'."""
    sized = [part for part in label.split(", ") if part.endswith(" mm") and part.removesuffix(" mm").isdecimal()]
    return int(sized[-1].removesuffix(" mm"))


if __name__ == "__main__":
    told = json.loads(Path(sys.argv[3]).read_text("utf-8"))
    counted = bag_totals(rows(Path(sys.argv[1])), Library(Path(sys.argv[4])), told)
    sys.stdout.write("\n".join(differences(Path(sys.argv[2]), counted, {"release-sheet"})) + "\n")
