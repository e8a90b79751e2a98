"""Cards, slips and labels of a few orders of the demonstration, as words: what a packer and a customer look for."""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from typing import NamedTuple

import pytest

from sheetgen.draw.slab import slab_layouts
from sheetgen.kits.bag_labels import bag_labels, label_rows
from sheetgen.kits.coded import code_of_kit
from sheetgen.kits.kit_cards import card_rows, kit_cards
from sheetgen.kits.ordered import Order, Part, Run
from sheetgen.kits.run import taken
from sheetgen.kits.taken import Kits, Taken
from sheetgen.pipeline import work_through
from sheetgen.publish.tables import csv_bytes

ROOT = Path(__file__).parents[2]
NAME, NOTE = "Ottoline Fennimore", "May the tide be kind."


class Sent(NamedTuple):
    run: Run
    taken: tuple[Taken, ...]
    drops: Kits
    ring: Kits
    stones: Kits


@pytest.fixture(scope="module")
def sent() -> Sent:
    """Q-1: two pairs of drops and a ring in US 8, as a gift. Q-2: the stones of a pair again. Q-3: in grey sea."""
    worked = {one.name: one for one in work_through(ROOT, ["buoy-drops", "tideline-band"]).worked}
    drops = _kits(worked, "buoy-drops", "", 2)
    ring = _kits(worked, "tideline-band", "US 8", 1)
    stones = replace(drops, bags=1, only=frozenset({"foiled-pp18"}))
    sea = replace(drops, bags=1, colourway=drops.version.colourways[0], choices=(("eye", "eye-copper"),))
    orders = (
        Order("Q-1", NAME, NOTE, None, (Part(drops, 2), Part(ring, 1))),
        Order("Q-2", "=Wren", "", None, (Part(stones, 1),)),
        Order("Q-3", "", "", None, (Part(sea, 1),)),
    )
    kinds = (drops, ring, stones, sea)
    return Sent(Run(orders, kinds), taken(kinds), drops, ring, stones)


def _kits(worked: dict, design: str, version: str, bags: int) -> Kits:  # type: ignore[type-arg]
    one = worked[design]
    of = one.version(version) if version else one.main
    return Kits(one, replace(of, slabs=slab_layouts(one, of)), bags, posted=True)


def test_each_kit_has_a_card_and_what_is_sent_by_itself_a_slip(sent: Sent) -> None:
    cards = kit_cards(sent.run, sent.taken)
    assert [(one.order, one.which, one.kit.title, one.kit.slip) for one in cards] == [
        ("Q-1", "kit 1 of 3", "Buoy drops", False),
        ("Q-1", "kit 2 of 3", "Buoy drops", False),
        ("Q-1", "kit 3 of 3", "Tideline band", False),
        ("Q-2", "part 1 of 1", "Buoy drops", True),
        ("Q-3", "kit 1 of 1", "Buoy drops", False),
    ]


def test_a_card_tells_each_bag_and_what_is_to_spare_apart(sent: Sent) -> None:
    """As the sheets of the demonstration print it: 12 stones and 1, 16 g of clay, 84 mm of wire, 4 mL."""
    rows = kit_cards(sent.run, sent.taken)[0].kit.rows
    told = {one.name: (one.amount.replace("\u00a0", " "), one.spare.replace("\u00a0", " ")) for one in rows}
    assert told["Foiled stone PP 18"] == ("12", "+ 1 to spare")
    assert told["Fine-silver clay"][0] == "16 g"
    assert told["Copper wire"] == ("84 mm", "")
    assert told["Embedding eye"] == ("2", "")
    assert told["Two-part stone adhesive"][0] == "4 mL"
    assert [one.bag for one in rows if one.bag] == ["A clay", "B stones", "C metal", "D adhesive"]
    assert told["Release sheet"] == ("27 × 94 mm", "")  # a piece that is cut, by its sides as the handout says them


def test_a_card_names_what_is_not_in_it_and_what_is_in_the_box(sent: Sent) -> None:
    kit = kit_cards(sent.run, sent.taken)[0].kit
    assert {"release balm", "isopropyl alcohol"} <= set(kit.lacking)
    assert not {one.name.lower() for one in kit.rows} & set(kit.lacking)
    assert kit.box == ("Setting bur PP 18, turned by hand",)
    assert kit.tools


def test_a_kit_has_the_bur_of_its_own_stones() -> None:
    """Slim is set with PP 14, all others with PP 18; no kit has a bur that does not say its size."""
    worked = {one.name: one for one in work_through(ROOT, ["buoy-drops"]).worked}
    kits = [_kits(worked, "buoy-drops", name, 1) for name in ("", "Long", "Slim")]
    run = Run((Order("Q-1", "", "", None, tuple(Part(one, 1) for one in kits)),), tuple(kits))
    assert [one.kit.box for one in kit_cards(run, taken(kits))] == [
        ("Setting bur PP 18, turned by hand",), ("Setting bur PP 18, turned by hand",),
        ("Setting bur PP 14, turned by hand",),
    ]  # fmt: skip


def test_a_card_says_that_small_parts_choke_and_whom_to_ask_before_adhesive_is_posted(sent: Sent) -> None:
    drops, _, ring, stones, _ = (one.kit.warned for one in kit_cards(sent.run, sent.taken))
    assert [one.word for one in drops] == ["WARNING", "NOTICE"]
    assert drops[0].text.startswith("Small parts choke a small child. ")
    assert drops[1].text == "In it: two-part stone adhesive. Ask the carrier, and the local rules, before it is posted."
    assert not any("carrier" in one.text for one in (*ring, *stones))


def test_colour_and_choices_stand_on_card_and_label(sent: Sent) -> None:
    card, label = kit_cards(sent.run, sent.taken)[-1], bag_labels(sent.run, sent.taken, lambda *_: "")[-1]
    assert card.kit.version == label.label.version == "eye eye-copper (else as Silver, short)"
    assert card.kit.colourway == label.label.colourway == "grey sea"
    assert {("Foiled stone PP 18", "7"), ("Foiled stone PP 18", "5")} <= {(r.name, r.amount) for r in card.kit.rows}


def test_a_card_bears_revision_date_and_fingerprint(sent: Sent) -> None:
    worked = sent.drops.worked
    told = (f"revision {worked.revision}", worked.date, code_of_kit(sent.drops), worked.studio.name)
    assert kit_cards(sent.run, sent.taken)[0].kit.foot == " · ".join(told)


def test_a_gift_note_stands_once_an_order_and_no_name_on_a_card_or_slip(sent: Sent) -> None:
    cards = kit_cards(sent.run, sent.taken)
    assert [one.note for one in cards] == [NOTE, "", "", "", ""]
    assert not any(name in f"{one.order} {one.kit}" for one in cards for name in (NAME, "Wren"))


def test_a_slip_tells_what_is_sent_and_for_which_design_and_nothing_else(sent: Sent) -> None:
    slip = kit_cards(sent.run, sent.taken)[3].kit
    assert [(one.name, one.amount, one.spare) for one in slip.rows] == [("Foiled stone PP 18", "12", "+ 1 to spare")]
    assert (slip.title, slip.version) == ("Buoy drops", "Silver, short")
    assert (slip.lacking, slip.box, slip.tools) == ((), (), False)


def test_a_bag_has_a_label_and_the_last_one_says_what_is_not_in_it(sent: Sent) -> None:
    labels = [one for one in bag_labels(sent.run, sent.taken, lambda *_: "") if one.head.order == "Q-1"]
    told = [(one.label.which, one.label.bag, bool(one.label.items)) for one in labels[:4] + labels[8:]]
    assert [(a.replace("\u00a0", " "), b.replace("\u00a0", " "), c) for a, b, c in told] == [
        ("kit 1 of 3", "A clay, 1 of 4", False),
        ("kit 1 of 3", "B stones, 2 of 4", False),
        ("kit 1 of 3", "C metal, 3 of 4", False),
        ("kit 1 of 3", "D adhesive, 4 of 4", True),
        ("kit 3 of 3", "A clay, 1 of 2", False),
        ("kit 3 of 3", "B plug, 2 of 2", True),
    ]
    assert "release balm" in labels[3].label.items


def test_a_label_says_what_is_in_its_bag_in_the_words_of_card_and_handout(sent: Sent) -> None:
    labels = [one.label for one in bag_labels(sent.run, sent.taken, lambda *_: "")]
    told = {
        one.bag[0]: [inside.replace("\u00a0", " ").replace("\u202f", " ") for inside in one.inside]
        for one in labels[:4]
    }
    assert told == {
        "A": ["Fine-silver clay: 16 g", "Release sheet: 27 × 94 mm"],
        "B": ["Foiled stone PP 18: 12 + 1"],
        "C": ["Copper wire: 84 mm", "Embedding eye: 2", "Ear wires: 2 + 1"],
        "D": ["Two-part stone adhesive: 4 mL"],
    }
    assert [" ".join(one.split()) for one in labels[-3].inside] == ["Foiled stone PP 18: clear 7 + 1, smoke 5 + 1"]


def test_the_label_of_an_adhesive_warns_of_it_for_out_of_its_pack_it_has_no_label_of_its_maker(sent: Sent) -> None:
    labels = [one.label for one in bag_labels(sent.run, sent.taken, lambda *_: "")]
    assert [bool(one.warned) for one in labels[:4]] == [False, False, False, True]
    [warned] = labels[3].warned
    assert (warned.word, warned.short) == ("WARNING", "Adhesive: gloves")
    assert warned.text == (
        "Uncured adhesive. Irritates skin and eyes, and can make you allergic for good. "
        "Open and use it as the sheet says."
    )


def test_a_solvent_that_is_sent_by_itself_warns_on_its_label(sent: Sent) -> None:
    """Vapour that burns, and the flame that must be away: the usual caution of a solvent."""
    version = sent.drops.version
    alone = replace(sent.drops, only=frozenset({"stone-adhesive"}))
    assert any(one.acts("solvent") for step in version.steps for one in step.uses)
    spirit = next(one for step in version.steps for one in step.uses if one.acts("solvent"))
    kind = replace(
        sent.drops, version=replace(version, materials=(replace(version.materials[0], item=spirit),), kit=None)
    )
    for kits, word in ((alone, "Uncured adhesive."), (kind, "Solvent vapour.")):
        run = Run((Order("Q-1", "", "", None, (Part(kits, 1),)),), (kits,))
        [label] = [one.label for one in bag_labels(run, taken((kits,)), lambda *_: "") if one.label.warned]
        assert label.warned[0].text.startswith(word)


def test_beads_of_two_sizes_in_one_bag_are_named_once() -> None:
    [worked] = work_through(ROOT, ["eddy-earrings"]).worked
    kits = _kits({"eddy-earrings": worked}, "eddy-earrings", "", 1)
    run = Run((Order("Q-1", "", "", None, (Part(kits, 1),)),), (kits,))
    beads = bag_labels(run, taken((kits,)), lambda _kits, _code: "")[-1].label.inside
    assert [" ".join(one.split()) for one in beads] == ["Pressed-glass bead: 8 mm 2 + 1, 5 mm 4 + 1"]


def test_wires_stand_in_one_order_on_card_and_label_as_on_the_lists() -> None:
    [worked] = work_through(ROOT, ["eddy-earrings"]).worked
    kits = _kits({"eddy-earrings": worked}, "eddy-earrings", "", 1)
    run = Run((Order("Q-1", "", "", None, (Part(kits, 1),)),), (kits,))
    [label, _] = bag_labels(run, taken((kits,)), lambda _kits, _code: "")
    assert " ".join(label.label.inside[0].split()) == (
        "Sterling-silver wire: 20 AWG 365 mm, 22 AWG 320 mm, 24 AWG 110 mm"
    )
    rows = kit_cards(run, taken((kits,)))[0].kit.rows
    assert [one.detail for one in rows[:3]] == ["20 AWG, soft", "22 AWG, soft", "24 AWG, soft"]


def test_a_card_names_the_sheets_that_go_with_the_kit_and_a_slip_none(sent: Sent) -> None:
    drops, _, ring, stones, _ = kit_cards(sent.run, sent.taken)
    assert drops.kit.sheets == ring.kit.sheets == ("handout", "bench card", "templates")
    assert stones.kit.sheets == ()


def test_of_a_bag_that_is_sent_by_itself_label_and_slip_name_the_bag(sent: Sent) -> None:
    """The stones are all of bag B; the release sheet is a part of bag A."""
    sheet = replace(sent.stones, only=frozenset({"release-sheet"}))
    orders = (Order("Q-1", "", "", None, (Part(sent.stones, 1), Part(sheet, 1))),)
    run = Run(orders, (sent.stones, sheet))
    held = taken(run.kinds)
    assert [one.label.bag for one in bag_labels(run, held, lambda _kits, _code: "")] == ["B stones", ""]
    assert [one.kit.alone for one in kit_cards(run, held)] == ["B stones", ""]


def test_what_is_sent_by_itself_has_one_label_and_no_code(sent: Sent) -> None:
    [label] = [
        one for one in bag_labels(sent.run, sent.taken, lambda *_: "https://a.example") if one.head.order == "Q-2"
    ]
    assert label.label.slip
    assert label.label.inside == ("Foiled stone PP 18:\u00a012\u202f+\u202f1",)
    assert not label.url


def test_the_address_is_asked_once_for_each_kind(sent: Sent) -> None:
    asked: list[str] = []

    def address(kits: Kits, _code: str) -> str:
        asked.append(kits.named)
        return "https://a.example"

    bag_labels(sent.run, sent.taken, address)
    assert len(asked) == 3


def test_the_rows_of_the_cards_add_up_to_what_is_picked(sent: Sent) -> None:
    sums: dict[str, Fraction] = defaultdict(Fraction)
    for row in card_rows(sent.run, sent.taken).rows:
        if row[3] is not None:
            sums[str(row[2])] += Fraction(row[3])  # type: ignore[arg-type]
    picked = {one.item.id: sum(held.together for held in one.held) for one in sent.taken if one.held}
    assert sums == picked
    assert sums["foiled-pp18"] == 13 + 13 + 13 + 8  # two pairs, the stones again, and 7 and 1 of the grey sea


def test_the_rows_of_the_labels_are_the_labels(sent: Sent) -> None:
    sheet = label_rows(sent.run, sent.taken)
    assert sheet.head == (
        "order", "name", "design", "version", "colourway", "kit", "bag", "contents", "caution",
        "not in the bag", "code",
    )  # fmt: skip
    printed = Counter(one.head.order for one in bag_labels(sent.run, sent.taken, lambda *_: ""))
    assert Counter(row[0] for row in sheet.rows) == printed == {"Q-1": 10, "Q-2": 1, "Q-3": 4}
    labels = bag_labels(sent.run, sent.taken, lambda *_: "")
    for row, one in zip(sheet.rows, labels, strict=True):
        label, told = one.label, [str(cell or "").replace(" ", "") for cell in row]
        warned = " ".join(f"{each.word}: {each.text}" for each in label.warned)
        said = (label.which, label.bag, "; ".join(label.inside), warned, ", ".join(label.items))
        assert told[5:10] == [re.sub(r"\s", "", words) for words in said]
        assert told[:2] == [one.head.order, one.head.name.replace(" ", "")]
    last = dict(zip(sheet.head, sheet.rows[-1], strict=True))
    assert (last["colourway"], last["bag"]) == ("grey sea", "D adhesive, 4 of 4")
    assert last["contents"] == "Two-part stone adhesive: 4 mL"
    assert "release balm" in str(last["not in the bag"])
    stones = next(row for row in sheet.rows if row[4] == "grey sea" and str(row[6]).startswith("B stones"))
    assert stones[7] == "Foiled stone PP 18: clear 7 + 1, smoke 5 + 1"


def test_a_name_that_begins_as_a_formula_stays_text(sent: Sent) -> None:
    assert "Q-2,'=Wren,Buoy drops" in csv_bytes(label_rows(sent.run, sent.taken)).decode("utf-8-sig")


def test_no_repr_shows_a_name_or_a_note(sent: Sent) -> None:
    shown = repr((kit_cards(sent.run, sent.taken), bag_labels(sent.run, sent.taken, lambda *_: "")))
    assert not any(private in shown for private in (NAME, NOTE, "Wren"))
