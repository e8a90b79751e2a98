"""Designs with their versions, and the reading of a file of orders."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

import pytest

from sheetgen.base.trouble import Trouble, Troubles
from sheetgen.read.orders import read_orders

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from sheetgen.model.orders import Orders

VERSIONS = {
    "buoy-drops": ("Long", "Short"),
    "tideline-band": ("US 7", "US 5", "US 6", "US 8"),
    "towline-bracelet": ("Silver, long", "Silver, short"),
    "shingle-keeper": ("Shingle keeper",),
}


class Read(NamedTuple):
    """What a file came to."""

    orders: Orders
    troubles: list[Trouble]

    @property
    def told(self) -> list[str]:
        return [str(trouble) for trouble in self.troubles]


def read(path: Path) -> Read:
    troubles = Troubles()
    orders = read_orders(path, path.name, VERSIONS, troubles)
    return Read(orders, list(troubles))


@pytest.fixture(scope="session", name="read")
def reading() -> Callable[[Path], Read]:
    return read


@pytest.fixture
def read_bytes(tmp_path: Path) -> Callable[..., Read]:
    def reads(content: bytes | str, name: str = "orders.csv") -> Read:
        path = tmp_path / name
        path.write_bytes(content.encode() if isinstance(content, str) else content)
        return read(path)

    return reads
