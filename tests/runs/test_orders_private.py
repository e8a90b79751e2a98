"""Who ordered, what was written to them and what the studio reckons with is for the studio's eyes alone.

A thousand invented names, notes and prices are looked for in every byte that is published, in all that commands say,
and in each file of a run in which they have no business.
"""

from __future__ import annotations

import io
import re
import zipfile
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

import pikepdf
import pypdfium2
import pytest
from click.testing import CliRunner

from sheetgen.cli import main
from sheetgen.render.lists import Printed

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator
    from pathlib import Path

MANY, PRINTED = 1000, 8
SECRET = re.compile(rb"Tarn\d{4}|Wrenfold|Dearest\d{4}|Halyardine|37[.,]91|83[.,]17|61[.,]43")
"""A name, a gift note, or a price of the till."""
TILL = """\
rate an hour: 37.91 EUR
packing: {a kit: 2 min, a run: 9 min}
wrapping: {a kit: {box: 83.17 EUR}}
markup: 61.43 %
"""
HEAD = "order,name,design,version,count,choices,colourway,leave out,only,gift note,due,price\n"
KITS = (
    "buoy-drops,,1,,grey sea,,", "tideline-band,US 8,2,,,,", "towline-bracelet,,1,,,,", "buoy-drops,,1,,,,stones",
    "tideline-band,,1,size=US 9,,,",
)  # fmt: skip
WRONG = (
    "buoy-drops,Lang,1,,,,", "buoy-drops,,0,,,,", "bouy-drops,,1,,,,", "buoy-drops,,1,hight=3 mm,,,",
    "buoy-drops,,1,,gray see,,", "buoy-drops,,1,,,pebbles,", "tideline-band,,1,size=US 14,,,",
    "tideline-band,,1,size,,,", "buoy-drops,,1,,,stones,stones",
)  # fmt: skip
BROKEN = (
    "{{ {}[p.head.name] }}", "{{ p.head.name.nothing.at_all }}", "{{ p.head.name + 1 }}", "{{ p.head.name|round }}",
    "{% include p.head.name %}", '<p style="display:none">{{ p.head.name }}</p>', "{{ p.head.name|no_filter }}",
    "<p>{{ p.head.name }}</p>",  # and not its number
    '<img alt="" src="{{ p.head.name }}">', '<p style="{{ p.head.name }}: 1">Q</p>',
)  # fmt: skip


def lines(kits: tuple[str, ...], many: int) -> str:
    return "".join(
        f'Q-{n},Tarn{n:04d} Wrenfold,{kits[n % len(kits)]},"Dearest{n:04d}, with Halyardine love",2026-12-01,83.17\n'
        for n in range(many)
    )


@dataclass
class House:
    """A studio with its private folder in the library, and all that its commands said."""

    bench: Any
    said: dict[str, str] = field(default_factory=dict)

    def says(self, name: str, *words: str) -> int:
        """Run a command; both of its streams are kept under a name."""
        done = CliRunner().invoke(main, [words[0], "--library", str(self.bench.library.root), *words[1:]])
        assert not done.exception or isinstance(done.exception, SystemExit), done.exception
        self.said[name] = done.output
        return done.exit_code

    def table(self, name: str, text: str) -> str:
        path = self.bench.private / f"{name}.csv"
        path.write_text(HEAD + text, "utf-8")
        return str(path)


@pytest.fixture(scope="module")
def house(tmp_path_factory: pytest.TempPathFactory, makes_bench: Callable[..., Any], libraries: Any) -> Any:
    """Orders are made before the library is published and after."""
    root = tmp_path_factory.mktemp("house")
    house = House(makes_bench(root))
    house.bench.private.mkdir()
    (house.bench.private / "till.yaml").write_text(TILL, "utf-8")
    printed, wrong = house.table("printed", lines(KITS, PRINTED)), house.table("wrong", lines(WRONG, MANY))
    many = house.table("many", lines(KITS, MANY))
    assert house.says("printed", "orders", printed, "--apart") == 0
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("sheetgen.render.pdf_pool.PdfPool", libraries.QuickPool)
        assert house.says("all published", "publish") == 0
    assert house.says("published", "publish", "towline-bracelet") == 0
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("sheetgen.runs.press.on_paper", lambda *_: lambda: Printed({}, {}, []))
        assert house.says("many", "orders", many, "--lists-alone") == 0
        assert house.says("wrong", "orders", wrong, "--lists-alone") == 1
        assert house.says("shop", "shop", "buoy-drops=3") == 0
        theme = root / "themes" / "plain"
        theme.mkdir(parents=True)
        for at, broken in enumerate(BROKEN):
            block = f"{{% extends 'pieces.html.j2' %}}{{% block piece %}}{broken}{{% endblock %}}"
            (theme / "label-head.html.j2").write_text(block, "utf-8")
            assert house.says(f"theme {at}", "orders", house.table("one", lines(KITS[3:4], 1))) == 1
        (theme / "label-head.html.j2").unlink()
    house.bench.library.change("tideline-band/project.yaml", "width: 5 mm", "width: 6 mm")
    house.says("changes", "changes")
    house.says("check", "check")
    house.says("figures", "figures", "buoy-drops", "--json")
    sent = house.bench.private / "sent.csv"
    sent.write_bytes(sent.read_bytes() + b'Q-1,"Tarn0001 Wrenfold,buoy-drops\r\n')
    assert house.says("sent broken", "orders", printed) == 1
    return house


def text_of(path: Path) -> str:
    """What stands on the pages of a PDF."""
    with pypdfium2.PdfDocument(path) as book:
        return "\n".join(page.get_textpage().get_text_range() for page in book)


def insides(path: Path) -> Iterator[bytes]:
    """All that a file holds: of a PDF also its text as a reader finds it, its metadata and each stream unpacked."""
    content = path.read_bytes()
    yield content
    if content.startswith(b"%PDF-"):
        with pikepdf.open(io.BytesIO(content)) as book:
            yield repr(dict(book.docinfo)).encode()
            for one in book.objects:
                yield (
                    one.read_bytes()
                    if isinstance(one, pikepdf.Stream)
                    and "/Filter" in one
                    and str(one.get("/Filter")) == "/FlateDecode"
                    else repr(one).encode()
                )
        yield text_of(path).encode()
    if content.startswith(b"PK"):
        with zipfile.ZipFile(io.BytesIO(content)) as packet:
            yield from map(packet.read, packet.namelist())


def secrets_in(path: Path) -> set[bytes]:
    return {found for inside in insides(path) for found in SECRET.findall(inside)}


def test_what_is_looked_for_is_found_where_it_stands(house: Any) -> None:
    """Else a test that finds nothing would say nothing."""
    folder = house.bench.folder("printed")
    assert {b"Tarn0000", b"Wrenfold"} <= secrets_in(folder / "labels-a4.pdf")
    assert {b"Dearest0000", b"Halyardine"} <= secrets_in(folder / "kit-cards-a4.pdf")
    assert len({name for name in secrets_in(house.bench.folder("many") / "labels.csv") if b"Tarn" in name}) == MANY
    assert {b"83.17"} <= secrets_in(house.bench.private / "till.yaml")


def test_nothing_private_is_in_any_byte_outside_of_the_private_folder(house: Any) -> None:
    """The site, its search, feed and record, the ledgers beside the designs, and the library that is handed on."""
    root = house.bench.library.root
    files = [one for one in root.rglob("*") if one.is_file() and not one.is_relative_to(house.bench.private)]
    found = [str(one.relative_to(root)) for one in files]
    assert {"build/index.html", "build/towline-bracelet/handout-a4.pdf"} <= set(found)
    assert [name for name in found if "/ledger" in name]
    assert [name for name in found if name.endswith("figures.json")]
    assert {name: secrets for name, one in zip(found, files, strict=True) if (secrets := secrets_in(one))} == {}
    assert not [name for name in found if SECRET.search(name.encode())]


def test_no_command_says_a_name_a_note_or_a_price_of_the_till(house: Any) -> None:
    assert len(house.said) == 10 + len(BROKEN)
    assert {name: set(found) for name, said in house.said.items() if (found := SECRET.findall(said.encode()))} == {}


def test_every_wrong_line_is_told_by_the_number_of_its_order(house: Any) -> None:
    told = set(re.findall(r"error: order (Q-\d+):", house.said["wrong"]))
    assert told == {f"Q-{n}" for n in range(MANY)}


def test_a_broken_theme_is_told_at_its_file(house: Any) -> None:
    for at in range(len(BROKEN)):
        assert "label-head.html.j2" in house.said[f"theme {at}"], BROKEN[at]


def test_names_stand_on_labels_and_notes_on_cards_alone(house: Any) -> None:
    names, notes = set(), set()
    for path in (one for one in house.bench.private.rglob("*") if one.is_file()):
        found = b" ".join(secrets_in(path))
        name = str(path.relative_to(house.bench.private))
        names |= {name} if b"Tarn" in found or b"Wrenfold" in found else set()
        notes |= {name} if b"Dearest" in found or b"Halyardine" in found else set()
    tables = {f"{table}.csv" for table in ("printed", "wrong", "many", "one")}
    labelled = {f"orders/{run}/{file}" for run in ("printed", "many") for file in ("labels.csv", "lists.xlsx")}
    cards = "orders/printed/kit-cards-a4.pdf"
    assert names - tables - {"sent.csv"} == {*labelled, "orders/printed/labels-a4.pdf"}
    assert notes - tables == {cards}


def test_a_name_stands_in_the_workbook_on_the_sheet_of_the_labels_alone(house: Any) -> None:
    with zipfile.ZipFile(house.bench.folder("many") / "lists.xlsx") as packet:
        sheets = re.findall(r'<sheet [^>]*name="([^"]+)"', packet.read("xl/workbook.xml").decode())
        named = [
            sheet for at, sheet in enumerate(sheets, 1) if SECRET.search(packet.read(f"xl/worksheets/sheet{at}.xml"))
        ]
    assert named in ([], ["labels"])  # words of all sheets may stand in one place of the packet


def test_no_card_and_no_slip_bears_a_name(house: Any) -> None:
    """A part is sent by itself too, with its slip."""
    words = text_of(house.bench.folder("printed") / "kit-cards-a4.pdf")
    assert "ent by itself" in words
    assert not re.findall(r"Tarn\d{4}", words)
