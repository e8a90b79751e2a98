"""Ten invented pieces reckoned by other means, each beside its project, and held against what the program prints.

A reckoning is a table, `figure | what | arithmetic | printed`: written by hand in `reckoned.txt`, or told by
`reckoned.py`, which knows nothing of the program and runs by itself. Its printed words are typed by hand. Of a range
the arithmetic has both ends.
"""

from __future__ import annotations

import ast
import math
import os
import re
import shutil
import subprocess
import sys
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest

from sheetgen import pipeline
from sheetgen.draw.slab import slab_layouts
from sheetgen.model.amounts import amounts

if TYPE_CHECKING:
    from collections.abc import Callable

HERE = Path(__file__).parent
STUDIOS = {"sluice-box": "studio-inches.yaml", "mussel-lentils": "studio-comma.yaml"}
PLAIN = str.maketrans({"\u00a0": " ", "\u202f": ""})
HAIR = 1e-6
SIGNS = str.maketrans({"×": "*", "÷": "/", "−": "-", "π": "p", "√": "r"})
STEPS: dict[type[ast.operator], Callable[[float, float], float]] = {
    ast.Add: lambda a, b: a + b, ast.Sub: lambda a, b: a - b, ast.Mult: lambda a, b: a * b,
    ast.Div: lambda a, b: a / b, ast.Pow: lambda a, b: a**b,
}  # fmt: skip
CALLS: dict[str, Callable[..., float]] = {"r": math.sqrt, "up": lambda x, step: math.ceil(x / step - 1e-9) * step}


@dataclass(frozen=True)
class Row:
    """One line of a reckoning."""

    figure: str
    arithmetic: str
    printed: str


def rows(piece: str) -> list[Row]:
    """The table of a piece; a script is run in a process of its own."""
    script = HERE / piece / "reckoned.py"
    if script.exists():
        environment = {key: word for key, word in os.environ.items() if key != "PYTHONPATH"}
        done = subprocess.run(
            [sys.executable, "-I", script.name], cwd=script.parent, env=environment, capture_output=True, text=True,
            check=True, encoding="utf-8",
        )  # fmt: skip
        lines = done.stdout.splitlines()
    else:
        lines = (HERE / piece / "reckoned.txt").read_text("utf-8").splitlines()
        lines = lines[lines.index("figure | what | arithmetic | printed") + 1 :]
    cells = [[cell.strip() for cell in line.split("|")] for line in lines if line.strip()]
    return [Row(figure, arithmetic, printed) for figure, _what, arithmetic, printed in cells]


def reckoned(arithmetic: str) -> float:
    """What a line of pencil arithmetic comes to."""

    def value(node: ast.AST) -> float:
        match node:
            case ast.Expression(body=body):
                return value(body)
            case ast.Constant(value=int() | float() as number):
                return number
            case ast.Name(id="p"):
                return math.pi
            case ast.UnaryOp(op=ast.USub(), operand=one):
                return -value(one)
            case ast.BinOp(left=left, op=step, right=right):
                return STEPS[type(step)](value(left), value(right))
            case ast.Call(func=ast.Name(id=name), args=args):
                return CALLS[name](*map(value, args))
        raise ValueError(f"no pencil reckons {arithmetic!r}")

    return value(ast.parse(arithmetic.strip().translate(SIGNS).replace("²", "**2"), mode="eval"))


def number(words: str) -> tuple[float, float]:
    """A printed number, and half of its last place."""
    if "/" in words:
        whole, _, part = words.rpartition(" ")
        return float(Fraction(part) + Fraction(whole or 0)), 1 / 128
    plain = words.replace(",", ".").replace("−", "-")
    return float(plain), 0.5 * 10.0 ** -len(plain.partition(".")[2])


def fits(row: Row) -> bool:
    """Whether the words typed are the number reckoned: to the last place, and of a range both ends outwards."""
    numbers = re.findall(r"−?\d+ \d+/\d+|\d+/\d+|−?\d+(?:[.,]\d+)?", row.printed)
    if ".." in row.arithmetic:
        (low, half), (high, _) = map(number, numbers)
        least, most = map(reckoned, row.arithmetic.split(".."))
        if "–" not in row.printed:
            return (least, most) == (low, high)
        return 0 <= least - low + HAIR < 2 * half + HAIR and 0 <= high - most + HAIR < 2 * half + HAIR
    told, half = number(numbers[0])
    return abs(reckoned(row.arithmetic) - told) <= half + HAIR


def printed(piece: str, root: Path) -> dict[str, str]:
    """What the program prints of a piece: figures, amounts of materials, and sizes of tools in mm."""
    projects = root / "projects"
    (projects / "stock").mkdir(parents=True)
    shutil.copy(HERE / STUDIOS.get(piece, "studio.yaml"), projects / "studio.yaml")
    shutil.copy(HERE / "stock.yaml", projects / "stock" / "stock.yaml")
    (projects / piece).mkdir()
    shutil.copy(HERE / piece / "project.yaml", projects / piece / "project.yaml")
    outcome = pipeline.work_through(root)
    assert not list(outcome.troubles), "\n".join(map(str, outcome.troubles))
    (worked,) = outcome.worked
    slabs = slab_layouts(worked, worked.main)
    have = {line.item.id: amounts(line, slabs, worked.rounder) for line in worked.main.materials}
    told = {key: figure.printed.told for key, figure in worked.main.figures.items()}
    told |= {f"materials.{item}": one.listed if one else "" for item, one in have.items()}
    told |= {f"tools.{line.item.id}": ", ".join(f"{size:g}" for size in line.sizes) for line in worked.main.tools}
    return {key: words.translate(PLAIN) for key, words in told.items()}


def holds(piece: str, root: Path) -> None:
    """The reckoning agrees in itself and with the program, and leaves out no tool with a size, no amount."""
    table = rows(piece)
    wrong = [row for row in table if row.arithmetic and row.printed[0] in "−0123456789" and not fits(row)]
    assert not wrong, wrong
    by_hand = {row.figure: row.printed for row in table}
    assert len(by_hand) == len(table)
    told = printed(piece, root)
    assert {key: told.get(key, "nothing") for key in by_hand} == by_hand
    listed = {key for key, words in told.items() if key.startswith(("materials.", "tools.")) and words}
    assert listed <= by_hand.keys()


def test_a_domed_button_with_a_ring_of_holes_is_a_cap_of_equal_area(tmp_path: Path) -> None:
    holds("whelk-buttons", tmp_path)


def test_a_wide_copper_band_goes_to_the_nearest_owned_ring_former(tmp_path: Path) -> None:
    holds("kelp-band", tmp_path)


def test_a_hollow_lentil_is_told_with_a_decimal_comma(tmp_path: Path) -> None:
    holds("mussel-lentils", tmp_path)


def test_a_box_with_a_lip_lid_closes_in_sixty_fourths_of_an_inch(tmp_path: Path) -> None:
    holds("sluice-box", tmp_path)


def test_a_domed_brooch_holds_a_ring_of_stones_and_one_in_its_middle(tmp_path: Path) -> None:
    holds("sundew-brooch", tmp_path)


def test_a_bracelet_of_long_links_has_a_toggle_and_a_woven_charm_chain(tmp_path: Path) -> None:
    holds("ferry-bracelet", tmp_path)


def test_a_knotted_strand_has_two_head_pin_drops_with_wrapped_loops(tmp_path: Path) -> None:
    holds("rope-drops", tmp_path)


def test_a_pointed_tassel_goes_into_its_cord_end_and_a_veil_over_its_bar(tmp_path: Path) -> None:
    holds("eelgrass-tassels", tmp_path)


def test_a_ring_of_sheet_carries_an_oval_stone_in_a_bezel_cup(tmp_path: Path) -> None:
    holds("plover-ring", tmp_path)


def test_cast_pieces_with_their_sprue_hang_on_a_chain_of_figure_eights(tmp_path: Path) -> None:
    holds("otter-fob", tmp_path)


@pytest.mark.parametrize("script", sorted(HERE.glob("*/reckoned.py")), ids=lambda path: path.parent.name)
def test_a_reckoning_by_script_knows_nothing_of_the_program(script: Any) -> None:
    assert "sheetgen" not in script.read_text("utf-8")
