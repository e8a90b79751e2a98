"""What the lists say on paper: amounts a packer fetches and lays into bags, and how they are told in other units."""

from __future__ import annotations

import datetime as dt
import re
from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest

from sheetgen.base.rounding import Rounder
from sheetgen.base.supply import Pack, Spares
from sheetgen.kits.check_list import bags_of, check, checked
from sheetgen.kits.kit_lines import place_of
from sheetgen.kits.ordered import Order, Part, Run
from sheetgen.model.kit import Colourway
from sheetgen.render.theme import Theme
from sheetgen.runs import paper


def views(found: Any) -> dict[str, Any]:
    return paper.views(found)


def flat(text: str) -> str:
    return text.replace("\u00a0", " ")


def items(made: Any, *run: Any) -> dict[str, Any]:
    return {item.name: item for at in views(made.lists(*run))["pick"].stations for item in at.items}


def told(line: Any) -> str:
    return flat(f"{line.kit}: {line.bags} × {line.each} ({line.working})")


def test_a_row_says_why_so_much_is_to_spare(made: Any) -> None:
    """16 with 5 % are 16.8, so 17; with 1 per 10 that are begun 18."""
    each = (made.stone("Plain"), made.stone("With spares", spares=Spares(1, 10)))
    found = items(made, *(made.kits(made.line(one, 16, 0.05), bags=8) for one in each))
    assert told(found["Plain"].lines[0]) == "Drops, Long: 8 bags × 17 (16 + 1: allowance 5 %)"
    assert "(16 + 2: spares 1 per 10, not less than the allowance of 5 %)" in told(found["With spares"].lines[0])
    assert (found["Plain"].together, found["Plain"].lines[0].together) == ("136", "136")


def test_clay_is_weighed_and_wrapped_or_given_out_sealed(made: Any) -> None:
    """30 × 16 g are 480 g, 20 packs of 25 g; and a pack of 20 g holds the 16 g of a bag."""
    found = items(
        made,
        made.kits(made.line(made.clay("Open"), 15.5), made.line(made.clay("Shut", "sealed", "20"), 15.5), bags=30),
    )
    assert flat(found["Open"].fetch) == "From 20 new packs of 25 g. Weigh each, and wrap it at once."
    assert flat(found["Open"].lines[0].each) == "16 g"
    assert flat(found["Open"].together) == "480 g"
    assert flat(found["Shut"].fetch) == "From 30 new packs of 20 g. Sealed: leave each pack shut."
    assert flat(found["Shut"].lines[0].each) == "1 pack of 20 g"
    assert found["Shut"].together == "30 packs"


def test_of_sealed_packs_of_which_more_must_be_bought_it_is_told_how_many_are_given_out(made: Any) -> None:
    """Of packs of 20 g five are the least that is sold: four bags take four, and one stays."""
    shut = made.clay("Shut", "sealed", "20")
    shut = replace(shut, supply=replace(shut.supply, packs=(replace(shut.supply.packs[0], at_least=5),)))
    found = items(made, made.kits(made.line(shut, 15.5), bags=4))["Shut"]
    assert flat(found.fetch) == "From 4 of 5 new packs of 20 g. Sealed: leave each pack shut."
    assert found.together == "4 packs"


def test_the_drawer_goes_first_and_a_row_names_its_bag(made: Any) -> None:
    seed = made.stone(have=Fraction(40))
    found = items(made, made.kits(made.line(seed, 13), bags=8, kit=made.bagged(("B stones", (seed,)))))["Stone"]
    assert found.fetch == "40 from the drawer, the rest from 1 new pack of 100. Count each out."
    assert found.lines[0].where == "bag\u00a0B\u00a0stones"  # on one line


def test_a_kit_of_which_only_a_part_is_sent_has_no_sheet(made: Any) -> None:
    seed = made.stone()
    whole, part = (
        made.kits(made.line(seed, 3), bags=4),
        made.kits(made.line(seed, 3), bags=1, only=frozenset({"Stone"})),
    )
    [handout, *_] = [
        item for at in views(made.lists(whole, part))["pick"].stations if at.name == "paper" for item in at.items
    ]
    assert (handout.name, handout.together) == ("Handout", "4")
    assert [line.kit for line in handout.lines] == ["Drops, Long, revision 1"]


def test_spools_are_cut_longest_first_and_a_length_says_what_is_left(made: Any) -> None:
    """Of 1000 mm two of 465 leave 70, which is kept; of the kept end of 500 one leaves 35, which is not."""
    w = made.wire(ends=(Fraction(500),), have=Fraction(500))
    [item] = views(made.lists(made.kits(made.line(w, 465), bags=5)))["cut"].items
    told = [flat(f"{line.source}: {line.pieces}, {line.left}") for line in item.lines]
    assert told == [
        "Kept end 1 of 1, 500 mm: 465 a, left 35, too short to keep",
        "Spools 1 to 2 of 2, each 1000 mm: 465 a · 465 a, left 70, keep",
    ]
    assert [line.tallies for line in item.lines] == [("",), ("spool 1", "spool 2")]
    assert [(b.mark, flat(b.size), b.many, flat(b.whose)) for b in item.bundles] == [("a", "465 mm", 5, "Drops, Long")]


def test_whoever_picks_calls_a_bundle_by_the_letter_of_its_tag_and_no_two_bear_the_same(made: Any) -> None:
    """Of two wires and two kits four bundles; the longest of a wire has its first letter, whichever kit is first."""
    thick, thin = made.wire("Thick"), made.wire("Thin")
    run = [
        made.kits(made.line(thick, short), made.line(thin, long), bags=bags, title=name)
        for short, long, bags, name in ((200, 90, 2, "Small"), (260, 120, 3, "Tall"))
    ]
    found = made.lists(*run)
    on_paper, sheets = views(found), {sheet.name: sheet for sheet in found.sheets}
    tagged = [(b.mark, flat(b.size), b.many, b.whose) for item in on_paper["cut"].items for b in item.bundles]
    assert tagged == [
        ("a", "260 mm", 3, "Drops, Tall"), ("b", "200 mm", 2, "Drops, Small"),
        ("c", "120 mm", 3, "Drops, Tall"), ("d", "90 mm", 2, "Drops, Small"),
    ]  # fmt: skip
    picked = [line for at in on_paper["pick"].stations if at.name == "wire" for item in at.items for line in item.lines]
    assert [(line.tag, flat(line.each), line.kit) for line in picked] == [
        ("b", "200 mm", "Drops, Small"), ("a", "260 mm", "Drops, Tall"),
        ("d", "90 mm", "Drops, Small"), ("c", "120 mm", "Drops, Tall"),
    ]  # fmt: skip
    assert [row[-1] for row in sheets["pick"].rows if row[0] == "wire"] == ["b", "a", "d", "c"]


def test_a_bar_is_cut_where_the_pieces_end(made: Any) -> None:
    """To scale: of 1000 mm on paper of 171 mm, 465 mm end at 79.515 mm, and twice that at 159.03."""
    [item] = views(made.lists(made.kits(made.line(made.wire(), 465), bags=2)))["cut"].items
    cuts = re.findall(r'<line x1="([\d.]+)" y1="0"', item.lines[0].bar)
    assert [float(x) for x in cuts] == [pytest.approx(79.515), pytest.approx(159.03)]
    assert ">keep 70<" not in item.lines[0].bar  # 12 mm are too short for it
    assert item.lines[0].bar.count(">465<") == 2


def test_lengths_are_told_in_inches_where_the_studio_measures_so(made: Any) -> None:
    """18 1/4 in are 463.55 mm, two of which leave 2 7/8 in of 39 3/8: 1000 − 927.1 = 72.9 mm."""
    inches = made.in_units(Rounder(inches=True))
    found = views(made.lists(made.kits(made.line(made.wire(), 460), bags=2, worked=inches)))
    [item] = found["cut"].items
    [line] = item.lines
    assert flat(item.bundles[0].size) == "18 1/4 in"
    assert flat(f"{line.source}: {line.pieces}, {line.left}") == (
        "Spool 1 of 1, 39.4 in: 18 1/4 a · 18 1/4 a, left 2 7/8, keep"
    )
    assert found["cut"].unit == "inches"
    [left] = found["left"].places[0].items
    assert flat(left.after) == "2 7/8 in"


def test_a_studio_with_a_decimal_comma_has_it_on_every_list(made: Any) -> None:
    comma = made.in_units(Rounder(point=","))
    priced = made.wire(packs=(Pack(Fraction(1000), Decimal("7.50")),), saw_cut=Fraction(1, 2))
    found = views(
        made.lists(made.kits(made.line(priced, 400), made.line(made.clay(), 3.1, 0.125), bags=3, worked=comma))
    )
    texts = re.sub(r"<svg.*?</svg>", "", repr([found[name] for name in ("pick", "cut", "buy", "left")]))
    assert "12,5 %" in texts
    assert "7,50" in texts
    assert "598,5" in texts or "199" in texts
    assert not re.findall(r"\d\.\d", texts)


def test_every_list_goes_from_station_to_station_and_there_by_name(made: Any) -> None:
    """So that the next wire on the cutting list is the next on the pick list, and in the drawer."""
    big, small = made.stone("Stone PP 18"), made.stone("Stone PP 14")
    each = made.line(made.wire("Wire 20"), 100), made.line(big, 2), made.line(made.wire("Wire 9"), 50)
    found = made.lists(made.kits(*each, made.line(small, 3)), made.kits(made.line(big, 2), title="Small"))
    shown = views(found)
    assert [one.name for one in shown["cut"].items] == ["Wire 9", "Wire 20"]
    picked = [item.name for station in shown["pick"].stations[:2] for item in station.items]
    assert picked == ["Wire 9", "Wire 20", "Stone PP 14", "Stone PP 18"]
    assert [item.name for place in shown["left"].places for item in place.items] == picked


def orders(made: Any) -> tuple[Run, dict[str, int]]:
    clay, seed = made.clay(), made.stone()
    kit = made.bagged(("A clay", (clay,)), ("B stones", (seed,)))
    lines = made.line(clay, 8), made.line(seed, 12)
    whole = made.kits(*lines, bags=4, kit=kit)
    part = made.kits(*lines, bags=1, kit=kit, only=frozenset({"Stone"}))
    bare = made.kits(made.line(seed, 2), bags=1, title="Small")
    less = made.kits(*lines, bags=1, kit=kit, leave_out=frozenset({"Clay"}))
    first = Order("Q-1", "Wenna Pottifer", "Happy birthday, dear!", dt.date(2026, 12, 1), (Part(whole, 3),))
    second = Order("Q-2", "Tam Ozzard", "", None, (Part(whole, 1), Part(bare, 1), Part(less, 1)))
    return Run((first, second, Order("Q-3", "Ib Quell", "", None, (Part(part, 1),))), (whole, part, bare, less)), {
        "Q-1": 9, "Q-2": 1,
    }  # fmt: skip


def test_an_order_is_checked_bag_by_bag_and_nobody_is_named(made: Any) -> None:
    run, leaves = orders(made)
    rows = list(check(checked(run, leaves)).rows)
    assert rows == [
        ("Q-1", 1, "3 × Drops, Long", "A clay · B stones", 9, "yes", dt.date(2026, 12, 1)),
        ("Q-2", 1, "1 × Drops, Long", "A clay · B stones", 1, "no", None),
        ("Q-2", 2, "1 × Drops, Small", "bag", None, None, None),
        ("Q-2", 3, "1 × Drops, Long, without bag A clay", "B stones", None, None, None),
        ("Q-3", 1, "1 × Drops, Long, only bag B stones", "B stones", 0, "no", None),
    ]
    found = views(made.lists(*run.kinds, checked=checked(run, leaves)))["check"]
    html = Theme("plain", []).page("check.html.j2", sheet=found, density="")
    assert "☐☐☐&nbsp;A\u00a0clay, ☐☐☐&nbsp;B\u00a0stones" in html
    assert [(o.sheets, o.note) for o in found.orders] == [("9 sheets", True), ("1 sheet", False), ("", False)]
    assert not re.search("Wenna|Pottifer|Tam|Ozzard|Quell|birthday", html + repr(rows) + repr(found))


def test_sheets_that_lie_in_the_stack_are_not_fetched_once_more(made: Any) -> None:
    run, leaves = orders(made)
    for checks, stacked in ((checked(run, leaves), True), ((), False)):
        stations = views(made.lists(*run.kinds, checked=checks))["pick"].stations
        [handout, *_] = [item for at in stations if at.name == "paper" for item in at.items]
        assert ("in the stack" in handout.fetch) == stacked


def test_a_colour_lies_in_the_bag_of_the_stone_and_tools_in_the_box(made: Any) -> None:
    own, smoke, bur = made.stone("Clear"), made.stone("Smoke"), made.stone("Bur")
    clay = made.clay()
    grey = Colourway("grey sea", own, 12, "counts", (("Smoke", Fraction(12)),), (smoke,))
    kit = replace(made.bagged(("A clay", (clay,)), ("B stones", (own,))), in_the_box=(bur,))
    one = made.kits(made.line(clay, 8), kit=kit, colourway=grey)
    assert [place_of(one, item) for item in (smoke, clay, bur)] == ["bag B stones", "bag A clay", "in the box"]
    assert bags_of(one) == ("A clay", "B stones", "in the box")
    assert bags_of(replace(one, only=frozenset({"Smoke"}))) == ("B stones",)
    assert bags_of(replace(one, only=frozenset({"Bur"}))) == ("in the box",)
    assert bags_of(replace(one, leave_out=frozenset({"Smoke"}))) == ("A clay", "in the box")
    assert one.told == "Drops, Long, grey sea"


def test_whoever_checks_sees_of_what_the_carrier_must_be_asked(made: Any) -> None:
    """A sealed clay is asked of the carrier here; of the order without it nothing is."""
    asked, plain = made.clay("Glue"), made.clay("Clay")
    asked = replace(asked, supply=replace(asked.supply, post="ask"))
    lines = (made.line(asked, 5), made.line(plain, 5))
    with_it, without = (
        made.kits(*lines, kit=made.bagged(("A", (plain,)), ("B glue", (asked,))), **more)
        for more in ({}, {"leave_out": frozenset({"Glue"})})
    )
    each = (Order(number, "", "", None, (Part(one, 1),)) for number, one in (("Q-1", with_it), ("Q-2", without)))
    run = Run(tuple(each), (with_it, without))
    found = views(made.lists(*run.kinds, checked=checked(run, {})))
    assert [(one.number, one.ask) for one in found["check"].orders] == [("Q-1", "glue"), ("Q-2", "")]
    picked = {item.name: item.fetch for at in found["pick"].stations for item in at.items}
    assert picked["Glue"].startswith("Ask the carrier first whether it takes it. From ")
    assert "carrier" not in picked["Clay"]


def test_an_order_on_the_check_list_is_few_elements(made: Any) -> None:
    """A thousand orders are laid out in seconds: a row, its four cells, and a line for each kind of kit."""
    run, _ = orders(made)
    many = Run(tuple(Order(f"Q-{n}", "", "", None, run.orders[0].parts) for n in range(100)), run.kinds)
    found = views(made.lists(*run.kinds, checked=checked(many, {})))["check"]
    html = Theme("plain", []).page("check.html.j2", sheet=found, density="")
    assert len(re.findall(r"<[a-z]", html.split("<tbody>")[1].split("</tbody>")[0])) == 100 * (
        5 + len(run.orders[0].parts)
    )
