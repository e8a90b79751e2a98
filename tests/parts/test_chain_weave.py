"""Weaves of rings: counted along a row of circles, and pulled taut by trying."""

from __future__ import annotations

import math
import re
from typing import Any

import pytest

from sheetgen.base.pen import Recorder
from sheetgen.draw.kinds import diagram, view
from sheetgen.parts.catalogue import kinds

WEAVE = {"wire": "round-1", "rod": "5 mm", "length": "100 mm"}


def test_one_in_one_grows_by_the_inside_of_each_ring(workshop: Any) -> None:
    weave = workshop("chain weave", **WEAVE)
    # taut, inner walls touch: rings at 0, 5, 10 …, the last as far as its own outside
    reach = [5 * n + 7 for n in range(30)]
    rings = next(n + 1 for n, end in enumerate(reach) if end >= 100)
    assert weave.usual("rings") == rings == 20
    assert weave.usual("comes_out") == reach[rings - 1] == 102
    assert weave.usual("per_length") == 2
    assert weave.usual("aspect") == 5
    # 1 mm copper weighs 7.0372 g a metre
    assert weave.usual("mass") == pytest.approx(20 * math.pi * 6 / 1000 * 7.0372, rel=1e-4)


def test_two_in_two_is_a_little_shorter_than_its_insides(workshop: Any, pencil: Any) -> None:
    weave = workshop("chain weave", **WEAVE, together=2, count=3)
    grows = pencil.reckon("linked_pitch(5, 1, 2)")  # circle against circle, tried
    assert weave.usual("pitch") == pytest.approx(grows, rel=1e-6)
    assert 0.95 < grows / 5 < 1
    pairs = math.ceil((100 - 7) / grows) + 1
    assert weave.usual("each") == 2 * pairs
    assert weave.usual("rings") == 6 * pairs
    assert weave.usual("comes_out") == pytest.approx((pairs - 1) * grows + 7)
    assert workshop.taken(weave) == {"round-1": pytest.approx(6 * pairs * math.pi * 6 + 20)}


def test_another_weave_goes_by_its_trial(workshop: Any) -> None:
    weave = workshop("chain weave", **WEAVE, repeat_rings=6, grows="8 mm", through=4)
    assert weave.usual("repeats") == math.ceil(98 / 8)
    assert weave.usual("rings") == 6 * 13
    assert weave.usual("per_length") == pytest.approx(7.5)


def test_a_saw_cut_makes_every_ring_and_so_the_chain_shorter(workshop: Any) -> None:
    weave = workshop("chain weave", **WEAVE, kerf="0.4 mm", springback="2 %", coil="10 mm")
    assert weave.usual("inner") == pytest.approx(5.1 - 0.4 / math.pi)
    assert weave.usual("one") == pytest.approx(math.pi * 6.1)
    assert weave.usual("coils") == math.ceil(weave.usual("rings") / 10)


def test_rings_are_counted_over_a_length_that_is_told_in_millimetres_and_in_inches(workshop: Any, inched: Any) -> None:
    def told(weave: Any) -> tuple[str, ...]:
        printed = (weave.figures[f"it.{name}"].printed for name in ("over", "per_length"))
        return tuple(one.told.replace("\u00a0", " ") for one in printed)

    # rings of 5 mm inside, one in one: 10 ÷ 5, and 25.4 ÷ 5 to the inch, 12.7 ÷ 5 to its half
    assert told(workshop("chain weave", **WEAVE)) == ("10 mm", "2")
    assert told(workshop("chain weave", **WEAVE, counted_over="1 in")) == ("25.4 mm", "5.08")
    inches = WEAVE | {"length": "4 in"}
    assert told(inched("chain weave", **inches, counted_over="1 in")) == ("1 in", "5.08")
    assert told(inched("chain weave", **inches, counted_over="1/2 in")) == ("0.5 in", "2.54")
    # three rings to 4 mm are four and a half to 6 mm
    other = {"repeat_rings": 3, "grows": "4 mm", "through": 4, "counted_over": "6 mm"}
    assert told(workshop("chain weave", **WEAVE, **other)) == ("6 mm", "4.5")


def test_no_label_of_any_kind_names_a_unit_of_length() -> None:
    units = re.compile(r"\b(mm|cm|\w*metres?|inch(es)?|foot|feet)\b", re.IGNORECASE)
    labels = [spec.label for kind in kinds().values() for spec in kind.figures().values()]
    labels += [one.label for kind in kinds().values() for one in kind.sizes]
    assert len(labels) > 300
    assert [label for label in labels if units.search(label)] == []


@pytest.mark.parametrize(("together", "wires"), [(1, 2), (2, 2.4142136)])
def test_the_wires_that_pass_through_a_ring_fit_into_it(workshop: Any, together: int, wires: float) -> None:
    # Wikipedia, Circle packing in a circle: 2 and 1 + √2
    weave = workshop("chain weave", wire="round-1", rod="3 mm", length="50 mm", together=together)
    assert weave.usual("least") == pytest.approx(wires)


@pytest.mark.parametrize(
    ("change", "field", "helps"),
    [
        ({"rod": "2 mm", "together": 2}, "rod", "2.5 mm or more"),
        ({"rod": "2 mm", "together": 2, "kerf": "0.4 mm", "springback": "2 %"}, "rod", "2.5 mm or more"),
        ({"rod": None, "inside": "2 mm", "together": 2}, "inside", "2.5 mm or more"),
        ({"inside": "5 mm"}, "inside", "give one"),
        ({"together": 3}, "together", "give grows"),
        ({"repeat_rings": 6, "through": 4}, "repeat rings", "give grows"),
        ({"repeat_rings": 6, "grows": "8 mm"}, "repeat rings", "give through"),
        ({"counted_over": "0 mm"}, "counted over", "more than"),
        ({"length": "90 m"}, "wire", "coil: 529 mm or less"),
    ],
)
def test_a_weave_that_cannot_be_is_told_at_its_field(
    workshop: Any, change: dict[str, Any], field: str, helps: str
) -> None:
    fields = {k: v for k, v in (WEAVE | change).items() if v is not None}
    found = workshop.refused("chain weave", **fields)
    assert any(at == field and helps in helped for at, _, helped in found), found


def test_a_plain_weave_is_drawn_and_another_is_not(workshop: Any) -> None:
    plain = workshop("chain weave", **WEAVE, together=2).part
    pen = Recorder()
    assert "2 through 2" in diagram(pen, plain, 1)
    assert view(pen, plain) == pytest.approx(plain.figures["comes_out"].value.usual - 1, abs=0.2)
    other = workshop("chain weave", **WEAVE, repeat_rings=6, grows="8 mm", through=4).part
    assert "A ring of the weave" in diagram(Recorder(), other, 1)
    assert view(Recorder(), other) == 0
