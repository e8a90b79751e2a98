"""What is drilled in a flat part is marked on its template, where a calliper would mark it."""

from __future__ import annotations

from typing import Any

import pytest

from sheetgen.base.pen import Recorder
from sheetgen.draw.piece import templates

HOLE = "  eye:\n    kind: hole\n    clay: clay\n    drill: 2 mm\n    edge: 2 mm\n    drilled in: plate\n{more}steps:\n"


def drawn(library: Any, more: str = "") -> Any:
    library.change("pendant/project.yaml", "steps:\n", HOLE.format(more=more))
    worked = library.worked("pendant")
    [template] = templates(worked.main)
    pen = Recorder()
    template.own(pen)
    holes = [at for kind, at, wide, _ in pen.ovals if kind == "cut" and wide == pytest.approx(2)]
    return template, template.piece.flat[0].extent, holes


def test_a_hole_stands_so_far_from_the_edge_as_is_printed(library: Any) -> None:
    template, disc, holes = drawn(library)
    # 2 mm of finished metal ÷ 0.91, and half the drill: 2.198 + 1, marked at 3.2
    [(x, y)] = holes
    assert x == pytest.approx((disc.left + disc.right) / 2)
    assert y - disc.top == pytest.approx(3.2)
    assert "eye Ø 2 mm" in template.says.replace("\u00a0", " ")


def test_holes_on_both_sides_stand_alike(library: Any) -> None:
    _, disc, holes = drawn(library, "    beside: left and right\n")
    assert [round(x, 3) for x, _ in sorted(holes)] == [
        pytest.approx(disc.left + 3.2, abs=1e-3), pytest.approx(disc.right - 3.2, abs=1e-3)
    ]  # fmt: skip


def test_what_has_no_template_takes_no_mark(library: Any) -> None:
    library.change(
        "pendant/project.yaml", "steps:\n", HOLE.format(more="").replace("drilled in: plate", "drilled in: eye")
    )
    [trouble] = library.check("pendant").troubles.errors
    assert "has no template" in trouble.message
    assert "plate" in trouble.help


def test_a_hole_in_a_pointed_tip_is_refused_by_the_metal_beside_it(library: Any) -> None:
    # a teardrop 12 × 18 mm: its sides leave the tip at asin(6 ÷ 12) = 30° to the middle line; a hole with 1.5 mm under
    # the tip is marked at 1.5 ÷ 0.91 + 1 = 2.6: 2.6 × sin 30° − 1 = 0.3 of clay is left on each side, 0.27 fired
    library.change("pendant/project.yaml", "    shape: disc\n", "    shape: teardrop\n    down: 18 mm\n")
    library.change("pendant/project.yaml", "    across: width\n", "    across: 12 mm\n")
    library.change("pendant/project.yaml", "{{ plate.wet_disc }}", "{{ plate.wet_across }}")
    library.change("pendant/project.yaml", "steps:\n", HOLE.format(more="").replace("edge: 2 mm", "edge: 1.5 mm"))
    [trouble] = library.check("pendant").troubles.errors
    assert trouble.message == "eye: edge is 1.5 mm, and only 0.3 mm of 'plate' is left beside the hole"


def test_a_seat_wants_the_clay_that_it_is_drilled_in(library: Any) -> None:
    seat = "  set:\n    kind: seat\n    clay: clay\n    stone: glass-2\n    thickness: 3 mm\n    drilled in: plate\n"
    library.change("pendant/project.yaml", "steps:\n", seat + "steps:\n")
    found = [t.message for t in library.check("pendant").troubles.errors]
    assert any("set: drilled in is 'plate', rolled to 1 mm, and seat and floor want" in m for m in found), found
