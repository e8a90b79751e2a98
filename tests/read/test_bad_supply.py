# ruff: noqa: E501 - a table is read by its rows
"""How things are bought and kept, written amiss: where the trouble must point, and what it must say.

In the changed words `‸` stands before the character that the trouble must point at.
"""

from __future__ import annotations

from typing import Any, NamedTuple

import pytest

CLAYS = "stock/clays.yaml"
OTHERS = "stock/others.yaml"
STUDIO = "studio.yaml"
SHOPS = "shops: {Tidepool Metals: {least order: 40 EUR, delivery: 6.20 EUR, free from: 60 EUR}}\n"
CLAY, WIRE, STONE, EAR, GLUE, CARBON = (
    f"    name: {name}\n"
    for name in ("Test silver", "Copper wire, 16 AWG", "Glass stone, 2 mm", "Ear wire", "Test epoxy", "Carbon")
)


class Bad(NamedTuple):
    rule: str
    old: str  # the head of an item, or a line of the studio's file
    new: str  # what is put under it
    says: tuple[str, ...]
    helps: tuple[str, ...]


CASES = [
    # Packs
    Bad("a pack of nothing", CLAY, "    packs: [{holds: ‸0 g, price: 38 EUR}]\n", ("a pack holds something",), ("more than nothing",)),
    Bad("a short pack of nothing", CLAY, "    pack: ‸0 g\n", ("a pack holds something",), ("more than nothing",)),
    Bad("a pack that holds from to", CLAY, "    pack: ‸20-30 g\n", ("one amount", "20-30 g"), ("25 g",)),
    Bad("half a piece in a pack", STONE, "    packs: [{holds: 72}, {holds: ‸6.5}]\n", ("6.5", "counted in pieces"), ("a whole number",)),
    Bad("stones by weight", STONE, "    pack: ‸72 g\n", ("72 g", "counted in pieces"), ("say how many",)),
    Bad("clay by length", CLAY, "    pack: ‸25 mm\n", ("25 mm", "weighed"), ("25 g",)),
    Bad("clay by the piece", CLAY, "    pack: ‸25\n", ("25", "weighed"), ("25 g",)),
    Bad("wire by volume", WIRE, "    pack: ‸5 mL\n", ("5 mL", "by length"), ("10 m",)),
    Bad("adhesive by length", "    pack: 12 mL\n", "    pack: ‸12 mm\n", ("12 mm", "by volume"), ("5 mL",)),
    Bad("a pack of time", CARBON, "    pack: ‸3 h\n", ("3 h", "a time"), ("12",)),
    Bad("packs in two units", CARBON, "    packs: [{holds: 1 kg, price: 16 EUR}, {holds: ‸2 L, price: 12 EUR}]\n", ("2 L", "another unit", "1 kg"), ("one unit",)),
    Bad("pack and packs", CLAY, "    pack: ‸25 g\n    packs: [{holds: 25 g}]\n", ("'pack' and 'packs'",), ("keep one",)),
    Bad("a price beside packs", CLAY, "    price: ‸38 EUR\n    packs: [{holds: 25 g}]\n", ("'price' beside 'packs'",), ("price: 38 EUR}",)),
    Bad("a price of nobody knows how much", CLAY, "    price: ‸38 EUR\n", ("a price without a pack",), ("pack: 25 g",)),
    Bad("the same pack twice", CLAY, "    packs: [{holds: 25 g, price: 38 EUR}, {holds: ‸25 g, price: 36 EUR}]\n", ("25 g", "twice"), ("keep one",)),
    Bad("packs without what they hold", CLAY, "    packs: [‸{price: 38 EUR}]\n", ("'holds' is missing",), ("holds: …",)),
    Bad("packs as one word", CLAY, "    packs: ‸25 g\n", ("fields of its own",), ()),
    Bad("a least number of none", CLAY, "    packs: [{holds: 25 g, at least: ‸0}]\n", ("at least", "0"), ("whole number",)),
    Bad("a least number of halves", CLAY, "    packs: [{holds: 25 g, at least: ‸1.5}]\n", ("at least", "1.5"), ("whole number",)),
    # Money
    Bad("a sign for a currency", CLAY, "    packs: [{holds: 25 g, price: ‸€38}]\n", ("'€38'", "three letters"), ("write 38 EUR",)),
    Bad("a sign behind", CLAY, "    packs: [{holds: 25 g, price: ‸38 €}]\n", ("'38 €'", "three letters"), ("write 38 EUR",)),
    Bad("a word for a currency", CLAY, "    packs: [{holds: 25 g, price: ‸38 Euro}]\n", ("'38 Euro'", "three letters"), ("write 38 EUR",)),
    Bad("a price in words", CLAY, "    packs: [{holds: 25 g, price: ‸on request}]\n", ("amount of money", "'on request'"), ("12.50 EUR",)),
    Bad("another money's sign", CLAY, "    packs: [{holds: 25 g, price: ‸£38}]\n", ("'£38'", "studio's currency"), ("12.50 EUR",)),
    Bad("points at the thousands", CLAY, "    packs: [{holds: 1 kg, price: ‸'1.250,00 EUR'}]\n", ("'1.250,00 EUR'", "thousands"), ("write 1250.00 EUR",)),
    Bad("commas at the thousands", CLAY, "    packs: [{holds: 1 kg, price: ‸'1,250.00 EUR'}]\n", ("thousands",), ("write 1250.00 EUR",)),
    Bad("spaces at the thousands", CLAY, "    packs: [{holds: 1 kg, price: ‸1 250 EUR}]\n", ("thousands",), ("write 1250 EUR",)),
    Bad("a price read two ways", CLAY, "    packs: [{holds: 1 kg, price: ‸1.250 EUR}]\n", ("two ways",), ("1250 EUR", "1.25 EUR")),
    Bad("a dash for no cents", CLAY, "    packs: [{holds: 25 g, price: ‸'38,- EUR'}]\n", ("'38,- EUR'",), ("write 38 EUR",)),
    Bad("a bare price", CLAY, "    packs: [{holds: 25 g, price: ‸38}]\n", ("a price is an amount of money",), ("write 38 EUR",)),
    Bad("small letters", CLAY, "    packs: [{holds: 25 g, price: ‸38 eur}]\n", ("'38 eur'",), ("write 38 EUR",)),
    Bad("two currencies", CLAY, "    packs: [{holds: 25 g, price: 38 EUR}, {holds: 100 g, price: ‸139 USD}]\n", ("studio's currency", "139 USD"), ("12.50 EUR",)),
    Bad("a price from to", CLAY, "    packs: [{holds: 25 g, price: ‸30-40 EUR}]\n", ("one amount", "30-40 EUR"), ("12.50 EUR",)),
    Bad("a price below nothing", CLAY, "    packs: [{holds: 25 g, price: ‸-3 EUR}]\n", ("-3 EUR",), ("12.50 EUR",)),
    Bad("a gift", CLAY, "    packs: [{holds: 25 g, price: ‸0 EUR}]\n", ("0 EUR",), ("leave it out",)),
    # What lies in the drawer
    Bad("lengths of clay", CLAY, "    have: [60 g, ‸20 g]\n", ("several", "by length"), ("together",)),
    Bad("clay in the drawer by length", CLAY, "    have: ‸60 mm\n", ("60 mm", "weighed"), ("25 g",)),
    Bad("a drawer below nothing", CLAY, "    have: ‸-60 g\n", ("-60 g",), ("0 or more",)),
    Bad("half a stone in the drawer", STONE, "    have: ‸6.5\n", ("6.5", "counted in pieces"), ("a whole number",)),
    Bad("an end of no length", WIRE, "    have: [620 mm, ‸0 mm]\n", ("an end",), ("more than 0 mm",)),
    Bad("ends without brackets", WIRE, "    have: ‸620 mm, 470 mm\n", ("wants a list",), ("[one, two]",)),
    # How it is given out
    Bad("given out by no known word", CLAY, "    given out: ‸seeled\n", ("'seeled'",), ("did you mean 'sealed'",)),
    Bad("clay that is counted", CLAY, "    given out: ‸counted\n", ("counted", "weighed"), ("weighed",)),
    Bad("stones that are cut", STONE, "    given out: ‸cut\n", ("cut", "counted in pieces"), ("counted",)),
    Bad("sealed without a pack", CLAY, "    given out: ‸sealed\n", ("sealed", "no pack"), ("pack: 25 g",)),
    Bad("a saw cut in clay", CLAY, "    saw cut: ‸0.5 mm\n", ("saw cut", "by length"), ("take it out",)),
    Bad("a saw cut below nothing", WIRE, "    saw cut: ‸-0.5 mm\n", ("saw cut", "-0.5 mm"), ("0 mm or more",)),
    Bad("a saw cut in grams", WIRE, "    saw cut: ‸1 g\n", ("saw cut", "a mass"), ("38 mm",)),
    Bad("ends of stones", STONE, "    keep ends from: ‸60 mm\n", ("keep ends from", "by length"), ("take it out",)),
    Bad("ends longer than a spool", WIRE, "    packs: [{holds: 1 m}, {holds: 5 m}]\n    keep ends from: ‸5.1 m\n", ("keep ends from", "longest spool", "5000 mm"), ("shorter",)),
    Bad("ends below nothing", WIRE, "    keep ends from: ‸-1 mm\n", ("keep ends from", "-1 mm"), ("0 mm or more",)),
    Bad("spares for none", EAR, "    spares: ‸1 per 0\n", ("1 per 0",), ("1 per 10",)),
    Bad("no spares", EAR, "    spares: ‸0 per 10\n", ("0 per 10",), ("1 per 10",)),
    Bad("spares in other words", EAR, "    spares: ‸10 %\n", ("10 %",), ("1 per 10", "allowance")),
    Bad("spares of clay", CLAY, "    spares: ‸1 per 10\n", ("spares", "weighed"), ("allowance",)),
    Bad("posted by no known word", GLUE, "    post: ‸aks\n", ("'aks'",), ("ask",)),
    Bad("a pack that does nothing", CARBON, "    pack: 1 kg\n    a pack does: ‸0 kits\n", ("0 kits",), ("40 kits",)),
    Bad("a pack that does nobody knows what", CARBON, "    pack: 1 kg\n    a pack does: ‸40\n", ("'40'",), ("40 kits", "people", "firings")),
    Bad("a pack that does other things", CARBON, "    pack: 1 kg\n    a pack does: ‸40 rings\n", ("'40 rings'",), ("40 kits",)),
    Bad("no pack that does", CARBON, "    a pack does: ‸40 kits\n", ("a pack does", "no pack"), ("pack:",)),
    # Shops
    Bad("a shop that is none", CLAY, "    pack: 25 g\n    shop: ‸Tidepol Metals\n", ("'Tidepol Metals'",), ("did you mean 'Tidepool Metals'",)),
    Bad("delivery in grams", SHOPS, "shops: {Tidepool Metals: {delivery: ‸6 g}}\n", ("delivery", "money"), ("12.50 EUR",)),
    Bad("a least order in other money", SHOPS, "shops: {Tidepool Metals: {least order: ‸40 USD}}\n", ("studio's currency", "40 USD"), ("12.50 EUR",)),
    Bad("free from what", SHOPS, "shops: {Tidepool Metals: {free from: ‸60 EUR}}\n", ("delivery", "no price"), ("delivery: 6 EUR",)),
    Bad("a shop's misspelt field", SHOPS, "shops: {Tidepool Metals: {‸least ordr: 40 EUR}}\n", ("no field 'least ordr'",), ("least order",)),
    Bad("free of a shop that wants more", SHOPS, "shops: {Tidepool Metals: {least order: 80 EUR, delivery: 6 EUR, free from: ‸60 EUR}}\n", ("least order", "always free"), ("more than",)),
]  # fmt: skip


def where(text: str) -> tuple[int, int]:
    """Line and column, from 1, of the mark in a text."""
    before = text[: text.index("‸")]
    return before.count("\n") + 1, len(before) - before.rfind("\n")


@pytest.fixture
def shopped(library: Any) -> Any:
    """The small library, whose studio knows one shop."""
    library.change(STUDIO, "units: mm\n", f"units: mm\n{SHOPS}")
    return library


@pytest.mark.parametrize("bad", CASES, ids=lambda bad: bad.rule)
def test_what_is_bought_or_kept_amiss_is_told_once_at_its_place(bad: Bad, shopped: Any) -> None:
    file = next(f for f in (STUDIO, CLAYS, OTHERS) if bad.old in shopped.path(f).read_text("utf-8"))
    under = "" if bad.old in {SHOPS, "    pack: 12 mL\n"} else bad.old
    shopped.change(file, bad.old, under + bad.new)
    changed = shopped.path(file).read_text("utf-8")
    shopped.write(file, changed.replace("‸", ""))
    troubles = shopped.check().troubles.errors
    told = "\n".join(map(str, troubles))
    here = [t for t in troubles if t.place.source.name == f"projects/{file}"]
    assert len(here) == 1, told
    [trouble] = here
    assert (trouble.place.line, trouble.place.column) == where(changed), told
    assert all(w in trouble.message for w in bad.says), told
    assert all(w in trouble.help for w in bad.helps), told


def test_spares_beside_an_allowance_are_a_warning_and_not_an_error(shopped: Any) -> None:
    shopped.change(OTHERS, STONE, f"{STONE}    spares: 1 per 10\n")
    outcome = shopped.check()
    assert not outcome.troubles.errors
    [warning] = [t for t in outcome.troubles if "spares" in t.message]
    assert warning.severity == "warning"
    assert "the larger" in warning.message


def test_a_studio_in_trouble_makes_no_trouble_of_its_shops(shopped: Any) -> None:
    shopped.change(CLAYS, CLAY, f"{CLAY}    pack: 25 g\n    shop: Tidepool Metals\n")
    shopped.change(STUDIO, "units: mm\n", "units: ells\n")
    assert not [t for t in shopped.check().troubles.errors if "shop" in t.message]
