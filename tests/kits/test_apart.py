"""A design that names no bags: clay, stones and wire lie together; what leaks, stains or dusts lies by itself."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from sheetgen.base.material import Adhesive, Consumable, Finding, Metal
from sheetgen.base.supply import Pack, Supply
from sheetgen.kits.apart import bagged
from sheetgen.kits.check_list import bags_of
from sheetgen.kits.pick_paper import stations
from sheetgen.model.kit import Kit
from tests.lists_made import bagged as in_bags
from tests.lists_made import clay, kits, line, lists, stone, wire


def stuff(name: str, unit: str = "g", **more: Any) -> Consumable:
    supply = Supply(given_out="weighed", packs=(Pack(Fraction(100)),), post=more.pop("post", ""))
    return Consumable(id=name.casefold(), name=name, unit=unit, supply=supply, **more)


def glue(name: str = "Epoxy, slow", **supply: Any) -> Adhesive:
    supply = {"given_out": "from the pot", "packs": (Pack(Fraction(12)),), **supply}
    return Adhesive(id=name, name=name, unit="mL", mixed=name.startswith("Epoxy"), supply=Supply(**supply))


def bags(*items: Any, kit: Kit | None = None) -> dict[str, list[str]]:
    version = bagged(kits(*(line(item, 1) for item in items), kit=kit).version)
    return {bag.name: [one.name for one in bag.items] for bag in (version.kit.bags if version.kit else ())}


@pytest.mark.parametrize(
    "own",
    [
        glue(),
        glue("Cord glue", given_out="sealed"),
        stuff("Alcohol", "mL", acts_as=("solvent",)),
        stuff("Water", "mL"),
        stuff("Balm"),  # out of a tub
        stuff("Pickle", acts_as=("acid", "pickle")),
        stuff("Cells", "piece", post="ask"),  # batteries are counted
        stuff("Liver", "piece", acts_as=("sulphide",)),
    ],
    ids=lambda item: item.name,
)
def test_an_adhesive_a_liquid_a_powder_and_what_the_post_asks_of_lie_in_a_bag_of_their_own(own: Any) -> None:
    told = own.name.partition(",")[0].casefold()
    assert bags(clay(), own, stone()) == {"A": ["Clay", "Stone"], f"B {told}": [own.name]}


def test_each_of_them_lies_by_itself_and_alike_names_are_told_apart() -> None:
    found = bags(glue("Epoxy, slow"), wire(), glue("Epoxy, fast"), stuff("Alcohol", "mL"))
    assert list(found) == ["A", "B epoxy slow", "C epoxy fast", "D alcohol"]


def test_clay_wire_stones_and_findings_need_no_second_bag() -> None:
    hook = Finding(id="hook", name="Hook")
    grain = Metal(id="grain", name="Grain", unit="g", density=10)
    assert bags(clay(), wire(), stone(), hook, grain, stuff("Plug", "piece", acts_as=("plug",))) == {}


def test_a_design_that_names_its_bags_keeps_them() -> None:
    assert bags(clay(), glue(), kit=in_bags(("A all", (clay(), glue())))) == {"A all": ["Clay", "Epoxy, slow"]}


def test_what_is_left_out_and_what_is_used_as_needed_have_no_bag() -> None:
    assert bags(clay(), glue(), kit=Kit(leave_out=(glue(),))) == {}
    version = bagged(kits(line(clay(), 1), line(glue(), None)).version)
    assert version.kit is None


def test_the_pick_list_says_in_which_bag_and_that_it_is_shut_up() -> None:
    """Both parts of an adhesive are kept apart; only bag A has something more to come, and is closed by it."""
    first = kits(line(clay(), 3), line(stone(), 2), line(glue(), 1), line(stuff("Balm"), 1), bags=2, posted=True)
    packed = replace(first, version=bagged(first.version))
    assert bags_of(packed) == ("A", "B epoxy", "C balm")
    items = {one.short: one for station in stations(lists(packed), packed.rounder) for one in station.items}
    where = {name: one.lines[0].where.replace("\N{NO-BREAK SPACE}", " ") for name, one in items.items() if one.lines}
    assert {name: where[name] for name in ("Clay", "Stone", "Balm", "Epoxy")} == {
        "Clay": "bag A", "Stone": "bag A", "Balm": "bag C balm", "Epoxy": "bag B epoxy",
    }  # fmt: skip
    assert [items[name].lines[0].close for name in ("Clay", "Stone", "Epoxy", "Balm")] == [
        "closed at stones", "close the bag", "close the bag", "close the bag",
    ]  # fmt: skip
    assert (
        "Measure each out into a pot that shuts tight, so much of its parts A and B together, 1 : 1, "
        "each into its own, marked." in items["Epoxy"].fetch
    )
    assert "Weigh each into a pot that shuts tight." in items["Balm"].fetch


def test_an_adhesive_of_one_part_goes_into_one_pot() -> None:
    """Who packs would look for a part B that there is not."""
    packed = replace(first := kits(line(glue("Cord glue"), 1), bags=2, posted=True), version=bagged(first.version))
    each = [one for station in stations(lists(packed), packed.rounder) for one in station.items]
    [item] = [one for one in each if one.short == "Cord glue"]
    assert item.fetch.endswith("Measure each out into a pot that shuts tight.")
