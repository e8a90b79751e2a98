"""Hollow lentils: two domes on one ball, sanded to their joint, and a way out for the air."""

from __future__ import annotations

import math
from typing import Any

import pytest

from sheetgen.base.pen import Recorder
from sheetgen.draw.kinds import diagram

LENTIL = {"clay": "silver", "across": "20 mm", "thick": "7.4 mm", "thickness": "1 mm", "vent": "2 mm"}


def test_its_discs_have_the_area_of_the_middle_of_its_halves(workshop: Any) -> None:
    lentil = workshop("hollow lentil", **LENTIL)
    # by geometry: sanded, a half is 20 wide and 3.7 high, so part of a ball of radius r with 10² + (r − 3.7)² = r²;
    # before that it is 4 high. Its cap's area is 2 π r h on the middle of a wall 0.91 thick: r − 0.455, h in proportion
    ball = (100 + 3.7**2) / (2 * 3.7)
    middle = ball - 0.91 / 2
    area = 2 * math.pi * middle * (4 * middle / ball)
    assert lentil.usual("radius") == pytest.approx(ball)
    assert lentil.usual("wet_disc") == pytest.approx(2 * math.sqrt(area / math.pi) / 0.91)


def test_it_takes_two_discs_of_clay_as_they_are_cut(workshop: Any) -> None:
    lentil = workshop("hollow lentil", **LENTIL, count=3)
    cut = float(lentil.figures["it.wet_disc"].printed)
    assert workshop.taken(lentil)["silver"] == pytest.approx(3 * 2 * math.pi / 4 * cut**2 * 1 * 7 / 1000)
    assert [one.times for one in lentil.part.flat] == [2]


def test_on_a_ball_that_fits_it_comes_out_as_thick_as_it_was_asked(workshop: Any) -> None:
    # clay of 9 % and 1 mm on the owned ball of 30 mm: an outside of 16 mm radius, 14.56 fired, of which a cap 20 wide
    # is 14.56 − √(14.56² − 10²) = 3.98 high
    lentil = workshop("hollow lentil", **LENTIL | {"thick": "7.96 mm"})
    assert lentil.usual("ball") == 30
    assert lentil.usual("thick_out") == pytest.approx(7.96, abs=0.15)


def outside(disc: float, ball: float, thickness: float) -> tuple[float, float]:
    """Of a disc laid over a ball: radius of its outside, and the angle from crown to rim whose cap has its area."""
    middle = ball / 2 + thickness / 2
    # Archimedes: 2 π r² (1 − cos) is the area of the disc
    return ball / 2 + thickness, math.acos(1 - math.pi * (disc / 2) ** 2 / (2 * math.pi * middle**2))


@pytest.mark.parametrize(("thick", "sanded"), [(7.4, 0.3), (6, 0), (9, 0.8), (12, 0.3)])
def test_a_half_stands_on_the_inner_edge_of_its_rim_before_it_is_sanded(
    workshop: Any, thick: float, sanded: float
) -> None:
    lentil = workshop("hollow lentil", **LENTIL | {"thick": f"{thick} mm"}, sanded=f"{sanded} mm")
    disc, ball = (float(lentil.figures[f"it.{name}"].printed) for name in ("wet_disc", "ball"))
    outer, angle = outside(disc, ball, 1)
    # the section, point by point: the lowest of all lies on the table, and the highest is the crown
    wall = [(r, angle * i / 500) for r in (outer - 1, outer) for i in range(501)]
    heights = [r * math.cos(turn) for r, turn in wall]
    assert lentil.usual("formed_high") == pytest.approx(max(heights) - min(heights))
    # sanded flat to the outer edge, and then what is asked, larger by what the clay shrinks
    flat = outer * math.cos(angle) + sanded / 0.91
    assert lentil.usual("wet_high") == pytest.approx(outer - flat)
    assert lentil.usual("formed_high") - lentil.usual("wet_high") == pytest.approx(math.cos(angle) + sanded / 0.91)
    labels = [one.label for one in lentil.part.sizes]
    before = labels.index("half, high before its rim is sanded")
    assert labels[before + 1] == "half, high when its rim is sanded"


@pytest.mark.parametrize(("across", "thick"), [(20, 7.4), (20, 9.6), (29, 11.6), (41, 18.9)])
def test_the_width_that_comes_out_is_that_of_the_ball_where_it_is_sanded(
    workshop: Any, across: float, thick: float
) -> None:
    lentil = workshop("hollow lentil", **LENTIL | {"across": f"{across} mm", "thick": f"{thick} mm"})
    disc, ball = (float(lentil.figures[f"it.{name}"].printed) for name in ("wet_disc", "ball"))
    outer, angle = outside(disc, ball, 1)
    # down the outside from its rim to where it is sanded, by halving: its width there, fired
    low, high = 0.0, angle
    while high - low > 1e-12:
        turn = (low + high) / 2
        low, high = (turn, high) if outer * (math.cos(turn) - math.cos(angle)) > 0.3 / 0.91 else (low, turn)
    assert lentil.usual("width_out") == pytest.approx(2 * outer * math.sin(low) * 0.91, abs=1e-6)
    assert lentil.usual("thick_out") == pytest.approx(2 * outer * (1 - math.cos(low)) * 0.91, abs=1e-6)
    assert (lentil["width_out"].low, lentil["width_out"].high) == pytest.approx(
        (2 * outer * math.sin(low) * 0.90, 2 * outer * math.sin(low) * 0.92), abs=1e-6
    )


@pytest.mark.parametrize(
    ("across", "thick", "says"),
    [
        (20, 9.6, "thick is 1.33 mm more than the drawer allows"),
        (29, 11.6, "thick is 1.25 mm less than the drawer allows"),
        (14, 4.8, "thick is 0.85 mm less than the drawer allows"),
        (20, 9, ""),  # 0.85 less, and a tenth of it is 0.9
        (20, 7.4, ""),
    ],
)
def test_a_ball_that_makes_it_much_thicker_or_thinner_is_told_with_the_thickness_that_it_allows(
    workshop: Any, across: float, thick: float, says: str
) -> None:
    fields = LENTIL | {"across": f"{across} mm", "thick": f"{thick} mm"}
    lentil = workshop("hollow lentil", **fields)
    disc, ball = (float(lentil.figures[f"it.{name}"].printed) for name in ("wet_disc", "ball"))
    outer, angle = outside(disc, ball, 1)
    comes = 2 * (outer * (1 - math.cos(angle)) * 0.91 - 0.3)
    assert (abs(comes - thick) > max(0.5, thick / 10)) == bool(says)
    found = [one for one in workshop.refused("hollow lentil", **fields) if "the drawer" in one[1]]
    if not says:
        assert not found
        return
    [(field, message, helps)] = found
    assert field == "thick"
    assert says in message
    assert f"{abs(comes - thick):.2f} mm" in message
    assert f"it comes out {comes:.1f} mm thick on the ball of {ball:g} mm" in helps
    assert not workshop.refused("hollow lentil", **fields | {"thick": f"{comes:.1f} mm"})


@pytest.mark.parametrize("k", [1, 2])
def test_it_is_drawn_on_its_ball_with_the_line_that_its_rim_is_sanded_to(workshop: Any, k: float) -> None:
    lentil, pen = workshop("hollow lentil", **LENTIL), Recorder()
    says = diagram(pen, lentil.part, k)
    formed, high = (lentil.figures[f"it.{name}"].printed for name in ("formed_high", "wet_high"))
    assert (formed.words, high.words) == ("5.3", "4.3")
    assert formed.told in says
    assert high.told in says
    # every dimension has its words, and each height is as long as it says
    assert all(words for _, words in pen.texts)
    clay = next(points for kind, points, closed in pen.lines if kind == "cut" and closed)
    crown, foot = min(y for _, y in clay), max(y for _, y in clay)
    [(_, sanded), _] = next(points for kind, points, _ in pen.lines if kind == "meet")
    assert foot - crown == pytest.approx(5.3 * k, abs=0.05 * k)
    assert sanded - crown == pytest.approx(4.3 * k)
    tips = sorted(points[0][1] for kind, points, _ in pen.lines if kind == "solid")
    assert tips == pytest.approx([crown, crown, sanded, foot])


@pytest.mark.parametrize(
    ("fields", "field", "says"),
    [
        ({"vent": "0 mm"}, "vent", "bursts"),
        ({"vent": "0.3 mm"}, "vent", "lets too little"),
        ({"thick": "21 mm"}, "thick", "more than a ball"),
        ({"thick": "19.8 mm"}, "thick", "nothing to sand"),
        ({"sanded": "60 mm"}, "thick", "nothing to sand"),
        ({"across": "10 mm", "thick": "2 mm", "sanded": "12 mm"}, "sanded", "nothing of a half on the ball of 30 mm"),
        ({"thickness": "5 mm"}, "thickness", "no hollow"),
        ({"thickness": "1 mm", "rolled_first": "0.75 mm"}, "rolled first", "thinner"),
    ],
)
def test_a_lentil_that_cannot_be_is_told_at_its_field(
    workshop: Any, fields: dict[str, str], field: str, says: str
) -> None:
    found = workshop.refused("hollow lentil", **LENTIL | fields)
    assert any(at == field and says in message for at, message, _ in found), found
