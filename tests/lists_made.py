"""Runs of kits made up for the lists on paper, with no library behind them."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

from sheetgen.base.frozen import Frozen
from sheetgen.base.interval import interval
from sheetgen.base.material import Clay, Stone, Wire
from sheetgen.base.place import Place, Source
from sheetgen.base.rounding import Rounder
from sheetgen.base.supply import Pack, Supply
from sheetgen.kits.money import Coin
from sheetgen.kits.taken import Kits
from sheetgen.kits.without_orders import lists_of
from sheetgen.model.kit import Kit, KitBag
from sheetgen.model.worked import MaterialLine, Publisher, Worked, WorkedVersion

STUDIO = Publisher("Anybench", paper=("A4", "Letter"))
DROPS = Worked(
    name="drops", folder="", title="Drops", revision="1", date="2026-05-01", level="Beginner",
    place=Place(Source("", ""), 1), worn_by="wearer", worn_at="ear", worn_places=Frozen(), studio=STUDIO,
    rounder=Rounder(),
)  # fmt: skip


def wire(name: str = "Wire", **supply: Any) -> Wire:
    made = {"given_out": "cut", "packs": (Pack(Fraction(1000)),), "keep_from": Fraction(60), **supply}
    return Wire(id=name, name=name, unit="mm", thickness=1, density=9, supply=Supply(**made))


def stone(name: str = "Stone", **supply: Any) -> Stone:
    return Stone(id=name, name=name, size=interval(2), supply=Supply(packs=(Pack(Fraction(100)),), **supply))


def clay(name: str = "Clay", given: str = "weighed", holds: str = "25") -> Clay:
    return Clay(
        id=name, name=name, unit="g", shrinkage=interval(0.1), thickness_shrinkage=interval(0.1), density=7,
        metal_share=0.9, supply=Supply(given_out=given, packs=(Pack(Fraction(holds)),)),
    )  # fmt: skip


def line(item: Any, net: float | None, allowance: float = 0.0) -> MaterialLine:
    return MaterialLine(item, None if net is None else interval(net), allowance)


def kits(*lines: MaterialLine, bags: int = 1, title: str = "Long", worked: Worked = DROPS, **more: Any) -> Kits:
    version = WorkedVersion("main", title, materials=lines, kit=more.pop("kit", None))
    return Kits(worked, version, bags, **{"posted": True, **more})


def bagged(*bags: tuple[str, tuple[Any, ...]]) -> Kit:
    return Kit(tuple(KitBag(name, items) for name, items in bags))


def in_units(rounder: Rounder) -> Worked:
    return replace(DROPS, rounder=rounder)


def lists(*run: Kits, checked: tuple[Any, ...] = ()) -> Any:
    found, _, troubles = lists_of(run, Coin(point=run[0].rounder.point), checked)
    assert troubles == []
    return found
