"""No piece is longer than the wire, thread, chain or ribbon that comes on one spool."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from sheetgen.base.material import Fibre, Wire
from sheetgen.parts.catalogue import kinds
from sheetgen.parts.field import Field

SHORT = """\
wires:
  short-wire: {name: Short wire, thickness: 1 mm, density: 8.96 g/cm³, pack: PACK, sources: {all: invented}}
fibres:
  short-cord: {name: Short cord, thickness: 0.5 mm, pack: PACK, sources: {all: invented}}
  short-ribbon: {name: Short ribbon, thickness: 0.3 mm, width: 25 mm, pack: PACK, sources: {all: invented}}
"""
PROJECT = """\
title: Too long
revision: 1
date: 2026-01-10
summary: One piece.
makes: 1
level: experienced
parts:
  it:
    kind: {kind}
    {fields}
steps:
  - title: Make
    parts: [it]
"""
WIRE, CORD, RIBBON = "wire: short-wire", "short-cord", "fibre: short-ribbon"
# Each takes more than 30 mm at a stretch, and less than 5 m.
PIECES = {
    "S-hook": (WIRE, "upper: 12 mm", "lower: 12 mm", "length: 60 mm"),
    "bead strand": ("bead: bead-8", "length: 100 mm", f"thread: {CORD}"),
    "beads round a neck or wrist": ("bead: bead-8", "girth: 150 mm", f"thread: {CORD}"),
    "bent wire": (WIRE, "form: straight 60 mm"),
    "chain ends": (f"chain: {CORD}", "link: 3 mm", "first: 60 mm", "pieces: 2"),
    "chain weave": (WIRE, "inside: 12 mm", "length: 100 mm"),
    "cord bundle": ("fibre: cord-2", "cords: 7", f"thread: {CORD}"),
    "ear wire": (WIRE, "back: 30 mm"),
    "figure-eight link": (WIRE, "loop: 6 mm", "gap: 20 mm"),
    "flat spiral": (WIRE, "across: 20 mm"),
    "fringe": (f"fibre: {CORD}", "strands: 2", "first: 60 mm"),
    "graduated strand": ("largest: 8 mm", "smallest: 4 mm", "length: 150 mm", f"thread: {CORD}"),
    "head-pin drop": (WIRE, "bead: bead-8", "beads: 8"),
    "jump ring": (WIRE, "inside: 12 mm"),
    "long link": (WIRE, "inside: 6 mm", "gap: 20 mm"),
    "ring blank": (WIRE, "size: US 7"),
    "slit strips": (RIBBON, "strips: 2", "width: 4 mm", "length: 60 mm"),
    "strung wire": (f"thread: {CORD}", "length: 60 mm"),
    "stud post": (WIRE, "lobe: 60 mm"),
    "toggle clasp": (WIRE, "inside: 12 mm"),
    "wire coil": (WIRE, "inside: 6 mm", "length: 10 mm"),
    "wrapped-loop link": (WIRE, "bead: bead-8", "beads: 8"),
}
NONE_CUT = {"hole"}  # its wire only passes


def troubles(libraries: Any, root: Path, kind: str, pack: str) -> list[str]:
    stock = (Path(__file__).parent / "workbench.yaml").read_text("utf-8")
    project = PROJECT.format(kind=kind, fields="\n    ".join(PIECES[kind]))
    more = {"stock/workbench.yaml": stock, "stock/short.yaml": SHORT.replace("PACK", pack), "it/project.yaml": project}
    return [t.message for t in libraries.make(root, libraries.FILES | more).check("it").troubles.errors]


@pytest.mark.parametrize("kind", PIECES)
def test_a_piece_longer_than_its_spool_or_ribbon_is_a_trouble(kind: str, libraries: Any, tmp_path: Path) -> None:
    assert troubles(libraries, tmp_path / "long", kind, "5 m") == []
    found = troubles(libraries, tmp_path / "short", kind, "30 mm")
    assert found
    assert all("holds 30 mm a pack" in message for message in found)


def test_every_kind_that_takes_wire_or_fibre_is_tried_on_a_short_spool() -> None:
    takes = {
        name
        for name, kind in kinds().items()
        if any(isinstance(one, Field) and one.sort in (Wire, Fibre) for one in kind.names.values())
    }
    assert takes - NONE_CUT == set(PIECES)
