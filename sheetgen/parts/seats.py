"""What seats drilled in wet clay share: the hole, its drill, the clay that they need, and what a brilliant weighs.

Figures stand here and are named in each kind where its own order wants them.
"""

from __future__ import annotations

from sheetgen.facts.stones import LEAST_FLOOR, LEAST_WEB
from sheetgen.parts.figure import Need, figure, need

FLOOR, WEB = f"{LEAST_FLOOR:g} mm", f"{LEAST_WEB:g} mm"

# fmt: off
seat = figure("Seat, opened wet", "mm", "seat_wet(stone.size.high, clearance, clay.shrinkage.high)",
              about="Hole, or the length of an oval one, that still takes the stone at the largest shrinkage.")
drill = figure("Drill", "mm", "atleast(seat, drawer.drill)", about="Smallest owned drill that is not under the seat.", at="stone")
loosest = figure("Loosest fit", "mm", "fired(drill, clay.shrinkage.low) − stone.size.low",
                 about="Room round the smallest stone at the least shrinkage.")
needed = figure("Clay needed, wet", "mm",
                "(depth or wet((stone.height.high if stone.height), clay.thickness_shrinkage.high)) + wet(floor, clay.thickness_shrinkage.high)",
                "most", when="deep", about="Seat and floor together.", role="clay needed")
carats = figure("Stone's weight, if it is cut as a brilliant", "ct",
                "oval_brilliant(stone.size, stone.width, stone.height, stone.density) if stone.width else round_brilliant(stone.size, stone.height, stone.density)",
                when="stone.height and stone.density", about="By the formula for diamond, scaled by density.")


def round_only(help: str) -> Need:  # noqa: A002 - what would help
    """Seats that are drilled take round stones."""
    return need("not stone.width", "is oval, and these seats are drilled round", at="stone", help=help)


def web(left: str, least: str) -> Need:
    """Clay is left between two seats: `left` of it, and the `least` gap that leaves enough."""
    return need(
        f"{left} ≥ {WEB}", f"leaves {{{left}}} of clay between two seats", at="gap", least=least, rule="least-web"
    )


right_way = need("narrow ≤ stone.size.high", "is wider than it is long in stock", at="stone", help="size is the longer way")
thick_enough = need("thickness ≥ needed",
                    "leaves {max(0 mm, thickness − needed + wet(floor, clay.thickness_shrinkage.high))} of clay under the stones, and {wet(floor, clay.thickness_shrinkage.high)} is wanted",
                    at="thickness", least="needed", when="deep and thickness", rule="least-floor")
