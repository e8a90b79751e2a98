"""How things are bought, kept and given out, as stock says it and as it is then known: exact, in the item's unit."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest

from sheetgen.base.supply import Does, Pack, Shop, Spares
from sheetgen.base.trouble import Troubles
from sheetgen.read.library import read_library

HEADS = {
    "silver": "Test silver", "copper-16awg": "Copper wire, 16 AWG", "glass-2": "Glass stone, 2 mm",
    "ear-wire": "Ear wire", "epoxy": "Test epoxy", "carbon": "Carbon",
}  # fmt: skip


@pytest.fixture
def item(library: Any) -> Any:
    """An item of the small library, with more words under its name."""

    def found(name: str, *lines: str) -> Any:
        head = f"    name: {HEADS[name]}\n"
        file = "stock/clays.yaml" if name == "silver" else "stock/others.yaml"
        library.change(file, head, head + "".join(f"    {line}\n" for line in lines))
        troubles = Troubles()
        read = read_library(library.root, troubles)
        assert read
        assert not troubles.errors, "\n".join(map(str, troubles))
        return read.stock.items[name]

    return found


def test_two_sizes_of_a_clay_keep_their_prices_and_the_least_number_of_the_large_one(item: Any) -> None:
    clay = item("silver", "packs: [{holds: 25 g, price: 38 EUR}, {holds: 100 g, price: 139 EUR, at least: 2}]")
    assert clay.supply.packs == (Pack(Fraction(25), Decimal(38)), Pack(Fraction(100), Decimal(139), 2))
    assert clay.pack == 25  # of the first the sheets tell how many pieces come from a packet


def test_the_short_form_is_one_pack(item: Any) -> None:
    assert item("silver", "pack: 1 oz", "price: 12,40 EUR").supply.packs == (
        Pack(Fraction("28.349523125"), Decimal("12.4")),  # international yard and pound agreement of 1959
    )


def test_a_clay_by_volume_is_weighed_by_its_density(item: Any) -> None:
    assert item("silver", "pack: 25 mL").supply.packs == (Pack(Fraction(175)),)  # at 7 g/cm³


def test_what_is_counted_and_has_a_price_alone_is_sold_one_by_one(item: Any) -> None:
    assert item("ear-wire", "price: 0.75 EUR").supply.packs == (Pack(Fraction(1), Decimal("0.75")),)


def test_a_price_that_is_not_known_is_not_nothing(item: Any) -> None:
    assert item("glass-2", "packs: [{holds: 72}, {holds: 720, price: 40 EUR}]").supply.packs[0].price is None


def test_spools_kept_ends_and_saw_cuts_are_in_mm(item: Any) -> None:
    packs = "packs: [{holds: 1 m, price: 2 EUR}, {holds: 16 ft}]"
    wire = item("copper-16awg", packs, "have: [620 mm, 47 cm]", "saw cut: 0.5 mm", "keep ends from: 6 cm")
    of = wire.supply
    assert (wire.spool, wire.longest) == (1000, pytest.approx(16 * 304.8))
    assert (of.ends, of.have) == ((Fraction(620), Fraction(470)), Fraction(1090))
    assert (of.saw_cut, of.keep_from, of.given_out) == (Fraction(1, 2), Fraction(60), "cut")


def test_a_piece_as_long_as_the_longest_spool_can_be_cut(library: Any) -> None:
    # the link's wire is some 60 mm; the first spool is shorter than that, the second is not
    head = "    name: Copper wire, 16 AWG\n"
    library.change("stock/others.yaml", head, f"{head}    packs: [{{holds: 20 mm}}, {{holds: 1 m}}]\n")
    assert not library.check("link").troubles.errors
    library.change("stock/others.yaml", "{holds: 1 m}", "{holds: 25 mm}")
    assert "holds 25 mm a pack" in library.check("link").troubles.errors[0].message


@pytest.mark.parametrize(
    ("name", "given"),
    [("silver", "weighed"), ("copper-16awg", "cut"), ("glass-2", "counted"), ("epoxy", "from the pot")],
)
def test_without_a_word_clay_is_weighed_wire_cut_stones_counted_and_adhesive_taken_from_the_pot(
    name: str, given: str, item: Any
) -> None:
    assert item(name, "note: as it comes").supply.given_out == given


def test_a_shop_and_its_terms_go_with_the_item(library: Any, item: Any) -> None:
    terms = "{least order: 40 EUR, delivery: 6.20 EUR, free from: 60 EUR}"
    library.change("studio.yaml", "units: mm\n", f"units: mm\nshops: {{Tidepool Metals: {terms}, Reed Beads: {{}}}}\n")
    clay = item("silver", "pack: 25 g", "given out: sealed", "shop: Tidepool Metals", "have: 60 g")
    assert clay.supply.shop == Shop("Tidepool Metals", Decimal(40), Decimal("6.2"), Decimal(60))
    assert (clay.supply.given_out, clay.supply.have, clay.supply.ends) == ("sealed", Fraction(60), ())


def test_spares_post_and_what_a_pack_does(item: Any) -> None:
    ear = item("ear-wire", "spares: 1 per 10", "pack: 100", "have: 0")
    assert (ear.supply.spares, ear.supply.have) == (Spares(1, 10), 0)
    carbon = item("carbon", "pack: 1 kg", "post: ask", "a pack does: 1 person")
    assert (carbon.supply.post, carbon.supply.a_pack_does) == ("ask", Does(1, "people"))


def test_of_what_is_used_as_needed_a_piece_that_is_begun_lies_in_the_drawer(item: Any) -> None:
    """Two and a half pads, as the list left says it, can be copied into stock; of a stone half a one cannot."""
    assert item("ear-wire", "pack: 6", "a pack does: 12 people", "have: 2.5").supply.have == Fraction(5, 2)
