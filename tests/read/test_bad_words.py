# ruff: noqa: E501 - a table is read by its rows
"""Bad input, case by case: what is changed in a good file, where the trouble must point, and what it must say.

In the changed words `‸` stands before the character that the trouble must point at; it is taken out before the
file is written. So line and column are counted from the case itself and never copied from the program.
"""

from __future__ import annotations

import shutil
from typing import Any, NamedTuple

import pytest

pytestmark = pytest.mark.usefixtures("quick")
DROPS = "drops/project.yaml"
CLAYS = "stock/clays.yaml"
OTHERS = "stock/others.yaml"
STUDIO = "studio.yaml"


class Bad(NamedTuple):
    rule: str
    file: str
    old: str
    new: str
    says: tuple[str, ...]
    helps: tuple[str, ...]


CASES = [
    # How YAML is written
    Bad("a tab", DROPS, "    length: height", "‸\tlength: height", ("tab",), ("spaces",)),
    Bad("a tab after spaces", DROPS, "    length: height", "  ‸\tlength: height", ("tab",), ("spaces",)),
    Bad("an unclosed quote", DROPS, 'expect: "The ends meet."', 'expect: ‸"The ends meet.', ("quotation mark", "not closed"), ("close it",)),
    Bad("an unclosed bracket", DROPS, "parts: [body]", "parts: ‸[body", ("bracket", "not closed"), ("close it",)),
    Bad("a colon in plain text", DROPS, "title: Little drops", "title: Little drops‸: two", ("colon",), ("quotes",)),
    Bad("a field without its colon", DROPS, "level: some practice", "level some practice", ("colon",), ("name: value",)),
    Bad("a crooked indentation", DROPS, "  seats:\n    kind: stone row", "   ‸seats:\n    kind: stone row", ("indentation",), ("column",)),
    Bad("a list in place of words or words with a condition", DROPS, "level: some practice", "level: some practice\nfor the teacher:\n  before:\n    - Lay it out.\n    - ‸[]", ("wants plain words",), ("on one line",)),
    Bad("a key twice", DROPS, "    inside: bore", "    inside: bore\n    ‸inside: 7 mm", ("'inside'", "twice"), ("keep one",)),
    Bad("an anchor", DROPS, "  clay: silver", "  clay: ‸&a silver", ("anchor",), ("write the words out",)),
    Bad("an alias", DROPS, "  bore: 8 mm", "  bore: ‸*a", ("alias",), ("write the words out",)),
    Bad("a tag", DROPS, "  bore: 8 mm", "  bore: ‸!!python/name:os.system 8 mm", ("tag",), ("take it out",)),
    Bad("a second document", DROPS, "tags: [metal clay]", "‸---\ntags: [metal clay]", ("second document",), ("---",)),
    Bad("a list for a name", DROPS, "tags: [metal clay]", "tags: [metal clay]\n? ‸[a, b]\n: c", ("plain words",), ("name: value",)),
    Bad("a tag of blanks", DROPS, "tags: [metal clay]", "tags: [metal clay, ‸'  ']", ("nothing in it",), ("take it out",)),
    Bad("a tag of nothing", DROPS, "tags: [metal clay]", "tags: [‸'', metal clay]", ("nothing in it",), ("take it out",)),
    Bad("brackets too deep", DROPS, "tags: [metal clay]", "tags: [[[[[[[[[[[‸[a]]]]]]]]]]]]", ("too deep",), ("12",)),
    Bad("a figure at the head of plain text", DROPS, "    text: Set all {{ seats.stones }}.", "    text: ‸{{ seats.stones }} to set.", ("begins with a figure",), ("{{ body.length }}",)),
    Bad("a figure alone in plain text", DROPS, "    text: Set all {{ seats.stones }}.", "    text: ‸{{ seats.stones }}", ("begins with a figure",), ("{{ body.length }}",)),
    Bad("a quotation mark inside quotes", DROPS, 'expect: "The ends meet."', "expect: 'It'‸s closed'", ("closing quotation mark",), ("other quotation marks",)),
    Bad("a dash where none can stand", DROPS, "title: Little drops", "title: ‸- Little drops", ("dash",), ("line of its own",)),
    # Fields of the project
    Bad("a misspelt field", DROPS, "summary: A pair", "‸sumary: A pair", ("no field 'sumary'",), ("'summary'",)),
    Bad("a field that is missing", DROPS, "makes: 1 pair\n", "", ("'makes' is missing",), ("add makes",)),
    Bad("a list where words stand", DROPS, "title: Little drops", "title: ‸[Little, drops]", ("'title'", "plain words"), ("one line",)),
    Bad("a comma in braces", DROPS, "tags: [metal clay]", "waive: {least-rim: tried on six pieces, ‸and it held}", ("'and it held' has nothing after it",), ("in quotes",)),
    Bad("words where a list stands", DROPS, "tags: [metal clay]", "tags: ‸metal clay, silver", ("'tags' wants a list",), ("[one, two]",)),
    Bad("words where fields stand", DROPS, "figures:\n  class clay: 12 * body.clay_mass", "figures: ‸many", ("'figures'", "fields of its own"), ("indent",)),
    Bad("an empty field", DROPS, "level: some practice", "‸level:", ("'level'", "nothing"), ("fill it in",)),
    Bad("a level that is none", DROPS, "level: some practice", "level: ‸easy", ("level", "'easy'"), ("first piece",)),
    Bad("a date by the calendar of a shop", DROPS, "date: 2026-01-10", "date: ‸10.1.2026", ("not a date",), ("2026-03-14",)),
    Bad("a month that is none", DROPS, "date: 2026-01-10", "date: ‸2026-13-40", ("not a date",), ("2026-03-14",)),
    Bad("a field of a step misspelt", DROPS, "    minutes: 20 min", "    ‸minuts: 20 min", ("no field 'minuts'",), ("'minutes'",)),
    # Parts
    Bad("a misspelt kind", DROPS, "kind: tube", "kind: ‸tubbe", ("no kind of part 'tubbe'",), ("'tube'",)),
    Bad("a kind that is missing", DROPS, "  body:\n    kind: tube\n", "  ‸body:\n", ("kind of part",), ("known here",)),
    Bad("a misspelt field of a part", DROPS, "    overlap: 4 mm", "    ‸overlp: 4 mm", ("tube has no field 'overlp'",), ("'overlap'",)),
    Bad("a field of a part that is missing", DROPS, "  body:\n    kind: tube\n    clay: clay\n    length: height", "  ‸body:\n    kind: tube\n    clay: clay", ("'body' wants its length",), ("add length",)),
    Bad("a list in a part", DROPS, "    overlap: 4 mm", "    ‸overlap: [4 mm]", ("one value",), ("overlap",)),
    Bad("a part named as a function", DROPS, "  seats:\n    kind: stone row", "  ‸round:\n    kind: stone row", ("'round' cannot be the name",), ("has a meaning in arithmetic", "another word")),
    Bad("a part and a choice of one name", DROPS, "  stone: glass-2", "  stone: glass-2\n  body: 3 mm", ("'body' is named twice",), ("another name",)),
    # Numbers
    Bad("a missing unit", DROPS, "  height: 22 mm", "  height: 22", ("length",), ("38 mm",)),
    Bad("a missing unit in place", DROPS, "    overlap: 4 mm", "    overlap: ‸4", ("overlap", "length", "bare number"), ("38 mm",)),
    Bad("a unit that is none", DROPS, "    overlap: 4 mm", "    overlap: 4 ‸inchs", ("unit 'inchs'",), ("'inches'",)),
    Bad("a mass for a length", DROPS, "    overlap: 4 mm", "    overlap: ‸4 g", ("a length", "a mass"), ("38 mm",)),
    Bad("a comma read two ways", DROPS, "    overlap: 4 mm", "    overlap: ‸1,500 mm", ("two ways",), ("1500", "1.500")),
    Bad("a number that begins with nought", DROPS, "    overlap: 4 mm", "    overlap: ‸007 mm", ("begins with a zero",), ("write 7",)),
    Bad("a range upside down", DROPS, "    minutes: 20 min", "    minutes: ‸20-10 min", ("upside down",), ("10-20",)),
    Bad("a power", DROPS, "  bore: 8 mm", "  bore: 9‸**9**9 mm", ("**",), ("product",)),
    Bad("a negative size", DROPS, "    overlap: 4 mm", "    overlap: ‸-4 mm", ("overlap", "-4 mm"), ("0 mm or more",)),
    Bad("a size of nothing", DROPS, "  bore: 8 mm", "  bore: 0 mm", ("inside",), ("more than 0 mm",)),
    Bad("a zero count", DROPS, "    overlap: 4 mm\n    count: 2", "    overlap: 4 mm\n    count: ‸0", ("count", "0"), ("1 or more",)),
    Bad("half a piece", DROPS, "    overlap: 4 mm\n    count: 2", "    overlap: 4 mm\n    count: ‸2.5", ("count",), ("whole number",)),
    Bad("a division by nothing", DROPS, "    overlap: 4 mm", "    overlap: ‸4 mm / 0", ("division by zero",), ()),
    Bad("a number too large", DROPS, "    overlap: 4 mm", "    overlap: ‸" + "9" * 320 + " mm", ("finite",), ()),
    Bad("a sum of unlike things", DROPS, "    overlap: 4 mm", "    overlap: 4 mm + ‸3 g", ("cannot be added",), ("same kind of unit",)),
    # Names
    Bad("a misspelt item of stock", DROPS, "  clay: silver", "  clay: ‸silvr", ("'silvr'", "stock"), ("'silver'",)),
    Bad("a misspelt item in a step", DROPS, "uses: [clay, roller, formers]", "uses: [clay, ‸rolller, formers]", ("'rolller' is not in stock",), ("'roller'",)),
    Bad("a stone where clay is wanted", DROPS, "  clay: silver", "  clay: ‸glass-2", ("is a stone", "a clay is wanted"), ("silver",)),
    Bad("a misspelt figure in a number", DROPS, "  class clay: 12 * body.clay_mass", "  class clay: 12 * ‸body.clay_mas", ("'clay_mas'",), ("'clay_mass'",)),
    Bad("a misspelt name in a number", DROPS, "    along: body.length", "    along: ‸bdy.length", ("'bdy.length'",), ("body.length",)),
    Bad("a misspelt figure in block text", DROPS, "      Wind it on {{ body.former_used }}.", "      Wind it on {{ ‸body.formr_used }}.", ("'formr_used'",), ("former_used",)),
    Bad("a misspelt figure in folded text", DROPS, "      {{ seats.wet_pitch }} apart.", "      {{ ‸seats.wet_pich }} apart.", ("'wet_pich'",), ("wet_pitch",)),
    Bad("a misspelt figure in quotes", DROPS, 'expect: "The ends meet."', 'expect: "The \\"ends\\" meet at {{ ‸body.strip_meet }}."', ("'strip_meet'",), ("strip_meets",)),
    Bad("a misspelt figure in a summary", DROPS, "{{ body.length }} long", "{{ ‸body.lenght }} long", ("'lenght'",), ("length",)),
    Bad("a misspelt part in a step", DROPS, "    parts: [body]", "    parts: [‸bodi]", ("no part 'bodi'",), ("'body'",)),
    Bad("a misspelt caution", DROPS, "caution: [blade]", "caution: [‸blaed]", ("caution 'blaed'",), ("'blade'",)),
    Bad("a version of no choice", DROPS, "    height: 30 mm", "    ‸heigth: 30 mm", ("'heigth' is not a choice",), ("'height'",)),
    Bad("a version without a name", DROPS, "  - name: Long\n    height: 30 mm", "  - ‸height: 30 mm", ("no name",), ("name:",)),
    Bad("a version named twice", DROPS, "    height: 30 mm", "    height: 30 mm\n  - name: ‸Long\n    height: 31 mm", ("'Long' too",), ("another name",)),
    Bad("braces that do not close", DROPS, "Set all {{ seats.stones }}.", "Set all ‸{{ seats.stones }.", ("braces",), ("{{ part.figure }}",)),
    Bad("a check that is no comparison", DROPS, "need: body.inside < 12 mm", "need: ‸body.inside", ("no comparison",), ("<",)),
    Bad("a check of unlike things", DROPS, "need: body.inside < 12 mm", "need: body.inside < ‸12 g", ("cannot be compared",), ("same kind",)),
    Bad("a choice that leads back to itself", DROPS, "  bore: 8 mm", "  bore: bore_two\n  bore two: bore", ("bore → bore_two → bore", "circle"), ("a number",)),
    # What does not fit
    Bad("a row as long as nothing", DROPS, "    along: body.length", "    along: ‸0 mm", ("along",), ("more than 0 mm",)),
    # a stone of 2 mm and a margin of 2 mm at each end are 6 mm
    Bad("a row with no room for a stone", DROPS, "    along: body.length\n    stone: stone\n    margin: 2 mm", "    along: ‸5 mm\n    stone: stone\n    margin: 2 mm", ("no room for a stone", "2 mm"), ("6 mm or more",)),
    Bad("a row shorter than its stone", DROPS, "    along: body.length\n    stone: stone", "    along: ‸1.5 mm\n    stone: stone", ("no room for a stone", "2 mm"), ("6 mm or more", "smaller stone")),
    Bad("a check that does not hold", DROPS, "need: body.inside < 12 mm", "need: ‸body.inside < 7 mm", ("The cap takes no wider tube.",), ("8 mm", "7 mm")),
    Bad("a stone in the kiln", DROPS, "    firing: clay\n    uses: [firing-box, carbon]\n", "    firing: ‸clay\n    uses: [stone]\n    parts: [seats, body]\n", ("meets the kiln at step 4, which it does not bear",), ("after the last firing",)),
    Bad("a stone fired before it is set", DROPS, "    uses: [drills]", "    uses: [drills, stone]", ("put on at step 2, and meets the kiln at step 4, which it does not bear",), ("after the last firing",)),
    Bad("a firing before any drying", DROPS, "  - title: Dry\n    wait: drying\n    does: [test]\n  - title: Fire\n    firing: clay", "  - title: Fire\n    firing: ‸clay", ("nothing dries it before",), ("wait: drying",)),
    # Pictures
    Bad("a missing picture", DROPS, "pictures: [finished.svg]", "pictures: [‸finishd.svg]", ("no picture 'finishd.svg'",), ("finished.svg",)),
    Bad("a picture outside the folder", DROPS, "pictures: [finished.svg]", "pictures: [‸../studio.yaml]", ("outside the project's folder",), ("drops/",)),
    Bad("a picture by its whole path", DROPS, "pictures: [finished.svg]", "pictures: [‸/etc/hostname]", ("outside the project's folder",), ("drops/",)),
    Bad("a picture that is none", DROPS, "pictures: [finished.svg]", "pictures: [‸project.yaml]", ("not a kind of picture",), ("svg",)),
    # Stock
    Bad("a shrinkage of 120 %", CLAYS, "    shrinkage: 8-10 %", "    shrinkage: ‸120 %", ("shrinkage", "120 %"), ("60 % or less",)),
    Bad("a negative shrinkage", CLAYS, "    shrinkage: 8-10 %", "    shrinkage: ‸-3 %", ("shrinkage", "-3 %"), ("0 % or more",)),
    Bad("a shrinkage with a unit", CLAYS, "    shrinkage: 8-10 %", "    shrinkage: ‸8-10 mm", ("shrinkage", "share of the whole", "length"), ("8 %",)),
    Bad("no shrinkage at all", CLAYS, "    shrinkage: 8-10 %\n", "", ("neither shrinkage nor test strips",), ("8-10 %",)),
    Bad("clay denser than its metal", CLAYS, "    wet density: 7 g/cm³", "    solid density: 10.49 g/cm³\n    wet density: ‸9.5 g/cm³", ("cannot be", "solid metal"), ("against each other",)),
    Bad("a metal share above the whole", CLAYS, "    metal share: 92 %", "    metal share: ‸192 %", ("metal share",), ("100 % or less",)),
    Bad("a clay fired past its melting", CLAYS, "    metal share: 92 %", "    metal share: 92 %\n    melting: 640 °C", ("fired at 650 °C", "melts at 640 °C"), ("maker's firing",)),
    Bad("a misspelt kind of tool", OTHERS, "    kind: drill\n", "    kind: ‸drils\n", ("'drils' is not a kind of tool",), ("did you mean 'drill'",)),
    Bad("a figure in a title", DROPS, "  - title: Fire", "  - title: Fire ‸{{ body.former }}", ("a title holds no figures",), ("summary, makes, text",)),
    Bad("a figure that is none in what it makes", DROPS, "makes: 1 pair", "makes: '{{ ‸pears }} pairs'", ("'pears' is not known",), ()),
    Bad("a version called as the main one", DROPS, "versions:\n", "main version: Plain\nversions:\n  - name: ‸plain\n", ("another version is called 'plain'",), ("another name",)),
    Bad("a share without its sign", CLAYS, "    shrinkage: 8-10 %", "    shrinkage: ‸8-10", ("shrinkage cannot be 8-10",), ("write 8-10 %",)),
    Bad("a colon without its space", DROPS, "    overlap: 4 mm\n    count: 2\n", "    overlap: 4 mm\n    ‸count:2\n", ("a field has no colon",), ("a space after the colon",)),
    Bad("a field without its colon", DROPS, "    overlap: 4 mm\n    count: 2\n", "    overlap: 4 mm\n    ‸count 2\n", ("a field has no colon",), ("name: value",)),
    Bad("a version that is no field", DROPS, "  - name: Long\n", "  ‸- Long\n", ("a field has no colon",), ("- name: value",)),
    Bad("an item that is said to equal", DROPS, "  - title: Fire\n", "  - title: Fire\n    when: clay = ‸silver\n", ("is an item and no number",), ("write clay is silver",)),
    Bad("a wait for what is not known", DROPS, "    wait: drying\n", "    wait: ‸dry\n", ("'dry' is not a wait",), ("'drying'",)),
    Bad("a clay heavier than any", CLAYS, "    wet density: 7 g/cm³", "    wet density: ‸70 g/cm³", ("wet density cannot be 70",), ("20 g/cm³ or less",)),
    # 7 g/cm³ × 0.92 ÷ 0.85³ is 10.49 g/cm³ and so all of solid silver's; at 16 % it is 10.87
    Bad("a clay denser than metal where it shrinks most", CLAYS, "    shrinkage: 8-10 %\n    wet density: 7 g/cm³", "    shrinkage: 8-16 %\n    solid density: 10.49 g/cm³\n    wet density: ‸7 g/cm³", ("'silver' cannot be", "at 16 % shrinkage", "denser"), ("shrinkage",)),
    Bad("a test strip that grew", CLAYS, "      - wet 50 mm, fired 42.5 mm", "      - ‸wet 50 mm, fired 52.5 mm", ("fired",), ()),
    Bad("a test strip in other words", CLAYS, "      - wet 50 mm, fired 42.5 mm", "      - ‸50 mm gives 42.5 mm", ("not a test strip",), ("wet 50 mm, fired 44.6 mm",)),
    Bad("a clay of unknown source", CLAYS, "    allowance: 15 %\n    sources:\n      all: invented", "    allowance: 15 %\n    sources:\n      price: invented", ("does not say where its",), ("sources:",)),
    Bad("a stone of unknown source", OTHERS, "    sources:\n      size: invented\n", "", ("'glass-2' does not say where its size",), ("sources: size",)),
    Bad("a misspelt field of stock", CLAYS, "    metal share: 92 %", "    ‸metal shere: 92 %", ("no field 'metal shere'",), ("'metal share'",)),
    Bad("an item with capitals", OTHERS, "  glass-2:", "  ‸Glass_2:", ("'Glass_2' cannot be the name",), ("small letters",)),
    Bad("a caution that nobody wrote", OTHERS, "    cautions: [epoxy]", "    cautions: [‸epoxi]", ("caution 'epoxi'",), ("'epoxy'",)),
    Bad("an item twice", OTHERS, "stones:\n", "clays:\n  ‸silver:\n    name: Again\n    shrinkage: 5 %\n    wet density: 5 g/cm³\n    metal share: 90 %\n    sources: {all: invented}\nstones:\n", ("'silver' is in stock twice",), ("another name",)),
    # The studio
    Bad("a paper nobody has", STUDIO, "paper: [A4, Letter]", "paper: [A4, ‸Foolscap]", ("paper", "'Foolscap'"), ("A4, Letter",)),
    Bad("a price in other money", OTHERS, "    pack: 12 mL", "    pack: 12 mL\n    price: ‸20 USD", ("studio's currency", "20 USD"), ("12.50 EUR",)),
    Bad("a language that sheets are not in", STUDIO, "units: mm", "units: mm\nlanguage: ‸de", ("the language 'de'",), ("take it out",)),
    Bad("a language by its name", STUDIO, "units: mm", "units: mm\nlanguage: ‸English", ("the language 'English'",), ("write en",)),
    Bad("a currency that is none", STUDIO, "currency: EUR", "currency: ‸euros", ("'euros' is not a currency",), ("EUR",)),
    Bad("a bench step of nothing", STUDIO, "bench step: 0.5 mm", "bench step: ‸0 mm", ("bench step",), ("more than 0",)),
    Bad("a misspelt field of the studio", STUDIO, "currency: EUR", "‸curency: EUR", ("no field 'curency'",), ("'currency'",)),
]  # fmt: skip


# What is wrong with copper does not touch the drops, which are of silver.
OF_OTHERS = {"a test strip that grew", "a test strip in other words"}


def where(text: str) -> tuple[int, int]:
    """Line and column, from 1, of the mark in a text."""
    before = text[: text.index("‸")]
    return before.count("\n") + 1, len(before) - before.rfind("\n")


@pytest.mark.parametrize("bad", CASES, ids=lambda bad: bad.rule)
def test_bad_words_get_a_trouble_at_their_place_and_leave_the_last_good_sheets(bad: Bad, standing: Any) -> None:
    library = standing
    before = library.sheets("drops")
    text = library.path(bad.file).read_text("utf-8")
    assert text.count(bad.old) == 1
    changed = text.replace(bad.old, bad.new)
    library.write(bad.file, changed.replace("‸", ""))
    library.change("link/project.yaml", "Links of copper wire.", "Links of soft copper wire.")

    outcome = library.publish()

    about = [t for t in outcome.troubles.errors if all(w in t.message for w in bad.says)]
    told = "\n".join(map(str, outcome.troubles))
    assert about, told
    trouble = about[0]
    assert trouble.place
    assert trouble.place.source.name == f"projects/{bad.file}"
    assert all(w in trouble.help for w in bad.helps), told
    if "‸" in bad.new:
        assert any(t.place and (t.place.line, t.place.column) == where(changed) for t in about), told
    assert ("drops" in outcome.failed) != (bad.rule in OF_OTHERS)
    assert library.sheets("drops") == before
    if bad.file != STUDIO:
        assert "soft copper" in (library.build / "link" / "index.html").read_text("utf-8")


@pytest.mark.parametrize("written", ["6 h", "from 100 °C to 800 °C in 6 h", "from 800 °C to 10 °C in 6 h"])
def test_a_kiln_that_is_said_to_cool_as_none_can_is_told(written: str, library: Any) -> None:
    library.change("stock/others.yaml", "tools:\n", f"tools:\n  kiln:\n    name: Kiln\n    cooling: {written}\n")
    [trouble] = library.publish().troubles.errors
    assert trouble.place
    assert trouble.place.source.line(trouble.place.line).strip() == f"cooling: {written}"


def test_a_stock_file_in_trouble_is_blamed_once_where_its_items_are_chosen(library: Any) -> None:
    library.change("stock/clays.yaml", "    wet density: 7 g/cm³\n", "")
    found = [str(t) for t in library.publish().troubles.errors]
    assert len(found) == 1 + 2, "\n".join(found)  # the missing field, and the two projects that choose the clay
    assert sum("first mend projects/stock/clays.yaml:3:5" in t for t in found) == 2


def test_a_studio_in_trouble_leaves_its_prices_alone(library: Any) -> None:
    library.change("studio.yaml", "currency: EUR\n", "currency: GBP\ndecimal sign: ,\n")
    library.change(
        "stock/clays.yaml",
        "    wet density: 7 g/cm³\n",
        "    wet density: 7 g/cm³\n    price: 40 GBP\n    pack: 25 g\n",
    )
    [trouble] = library.publish().troubles.errors
    assert trouble.help == "put it in quotes"


def test_a_library_without_stock_is_told_so_before_all_that_follows_from_it(library: Any) -> None:
    shutil.rmtree(library.path("stock"))
    first = str(next(iter(library.publish().troubles)))
    assert "projects has no folder 'stock'" in first
    assert "make projects/stock" in first


def test_a_clay_in_trouble_is_not_blamed_for_its_drying_too(library: Any) -> None:
    library.change("stock/clays.yaml", "    shrinkage: 8-10 %", "    shrinkage: 8 mm")
    assert "how long it dries" not in "\n".join(map(str, library.publish().troubles))
