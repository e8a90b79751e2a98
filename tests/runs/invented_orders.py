"""Invented orders, as many as are wanted: mixed designs, versions, choices and colours, the same ones every time."""

from __future__ import annotations

import csv
import random
import sys
from pathlib import Path

HEAD = ("order", "name", "design", "version", "count", "choices", "colourway", "leave out", "only", "gift note", "due")
KITS = (
    ("buoy-drops", ("", "Long", "Slim"), (), ("", "", "grey sea", "deep water")),
    ("tideline-band", ("US 7", "US 5", "US 6", "US 8", "US 9", "UK N½"), (), ("",)),
    ("tideline-band", ("",), ("size=US 8", "size=US 9", "size=US 6"), ("",)),
    ("towline-bracelet", ("",), (), ("",)),
    ("eddy-earrings", ("",), (), ("",)),
)
FIRST = (
    "Marrow", "Ines", "Oda", "Pell", "Ira", "Thessaly", "Ümit", "Łucja", "Σωφία", "Олеся", "סימה", "نورة", "晴香",
)  # fmt: skip
LAST = ("Tidewell", "Harrowgate", "Fennmoor", "Sandry", "Quay", "Wrackline", "Brackwater", "Seawold", "Eelbrook")
NOTES = ("", "", "", "For your bench, with love.", "=1+1", "Happy solstice!\nFrom all of us at the creek.")


def invented(many: int, seed: int = 7) -> list[dict[str, str]]:
    """Lines of so many orders, each with one to three kits; every 20th is a missing part that is sent after."""
    chance = random.Random(seed)  # noqa: S311 - nothing is kept secret with it
    rows = []
    for number in range(many):
        name = f"{chance.choice(FIRST)} {chance.choice(LAST)} {number}"
        due = f"2026-12-{chance.randint(1, 20):02d}" if chance.random() < 0.7 else ""
        parts = chance.sample(KITS, chance.choice((1, 1, 1, 2, 3)))
        reposted = number % 20 == 19
        for at, (design, versions, choices, ways) in enumerate(parts[:1] if reposted else parts):
            row = {
                "order": f"Q-{2600 + number}", "name": "" if at else name, "design": design,
                "version": chance.choice(versions), "count": str(chance.choice((1, 1, 1, 1, 2, 3))),
                "choices": chance.choice(choices) if choices else "",
                "colourway": "" if reposted else chance.choice(ways), "only": "A" if reposted else "",
                "gift note": "" if at else chance.choice(NOTES), "due": due,
            }  # fmt: skip
            rows.append(dict.fromkeys(HEAD, "") | row)
    for row in rows:  # a colourway is of the versions whose stones are PP 18
        if row["version"] == "Slim":
            row["colourway"] = ""
    return rows


def write(path: Path, many: int) -> None:
    """A table of so many orders."""
    with path.open("w", newline="", encoding="utf-8") as file:
        table = csv.DictWriter(file, HEAD)
        table.writeheader()
        table.writerows(invented(many))


if __name__ == "__main__":
    write(Path(sys.argv[1]), int(sys.argv[2]))
