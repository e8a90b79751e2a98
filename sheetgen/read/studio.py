"""The studio's file: who publishes, in which units and money, on which paper, which sheets."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from sheetgen.base.address import folder_address
from sheetgen.base.dimension import LENGTH
from sheetgen.base.place import Place, Source, Word
from sheetgen.base.trouble import CannotBe, Troubles
from sheetgen.model.status import TEACHERS
from sheetgen.model.studio import Studio
from sheetgen.model.worked import OF_THE_LIBRARY, SHEETS, UNITS
from sheetgen.read.bounds import OF_STOCK, bounded
from sheetgen.read.classes import check_class
from sheetgen.read.files import file_words, once_a_line
from sheetgen.read.forms import form
from sheetgen.read.labels import read_labels
from sheetgen.read.licence import look_at_licence
from sheetgen.read.measures import Measures
from sheetgen.read.shops import read_shops
from sheetgen.read.text import read_text

if TYPE_CHECKING:
    from collections.abc import Sequence
    from pathlib import Path

PAPERS = ("A4", "Letter")


def _read(path: Path, name: str, troubles: Troubles) -> Studio | None:
    found = file_words(path, name, troubles)
    if found is None or not bounded(found, OF_STOCK, troubles):
        return None
    with once_a_line(troubles) as more:
        return form(Studio, found, more)


def read_studio(projects: Path, troubles: Troubles) -> Studio | None:
    """The studio's file; None with its troubles noted."""
    name = "projects/studio.yaml"
    path = projects / "studio.yaml"
    if not path.exists():
        troubles.add("the studio's file is missing", Place(Source(name)), "write who publishes: name: …")
        return None
    before = len(troubles.errors)
    studio = _read(path, name, troubles)
    if studio is None:
        return None
    for said in (studio.name, studio.about, studio.contact, studio.note, studio.humidity, studio.emergency):
        if said is not None and not said.strip():
            troubles.add("this has nothing in it", said.place, "fill it in or take it out")
    among(studio.units, UNITS, "units", troubles)
    _pages_in(studio, troubles)
    among(studio.decimal_sign, (".", ","), "decimal sign", troubles)
    if not studio.paper or len(set(map(str, studio.paper))) < len(studio.paper):
        troubles.add("paper names each size once, and one at least", studio.name.place, f"paper: [{', '.join(PAPERS)}]")
    for paper in studio.paper:
        among(paper, PAPERS, "paper", troubles)
    if studio.language != "en":
        told = f"the language '{studio.language}' is not known: sheets are in English until they can be translated"
        troubles.add(told, studio.language.place, "take it out, or write en")
    currency = str(studio.currency)
    if not re.fullmatch(r"[A-Z]{3}", currency):
        currency = currency_of(projects)
        troubles.add(
            f"'{studio.currency}' is not a currency", studio.currency.place, "three capitals by ISO 4217, such as EUR"
        )
    among(studio.teachers_sheets, TEACHERS, "teacher's sheets", troubles)
    if studio.address is not None:
        _address(studio.address, troubles)
    sheets_among(studio.sheets, (*SHEETS, *OF_THE_LIBRARY), troubles)
    measures = Measures(currency, troubles)
    measures.interval(studio.bench_step, LENGTH, above=0, most=5, name="bench step")
    _slab(studio, measures, troubles)
    check_class(studio.class_, measures)
    read_shops(studio.shops, measures)
    read_labels(studio, PAPERS, measures.currency, troubles)
    look_at_licence(studio.licence, troubles)
    if studio.bed_depth is not None:
        measures.interval(studio.bed_depth, LENGTH, above=0, most=100, name="bed depth")
    return studio if len(troubles.errors) == before else None


def _pages_in(studio: Studio, troubles: Troubles) -> None:
    """In which units the pages on a screen are: once each, and the studio's own among them."""
    for units in studio.pages_in:
        among(units, UNITS, "pages in", troubles)
    named = list(map(str, studio.pages_in))
    if named and (len({*named}) < len(named) or studio.units not in named):
        told = f"the pages are in the studio's own units, {studio.units}, and may be in others besides, each named once"
        troubles.add(told, studio.pages_in[0].place, "pages in: [mm, in]")


def _address(written: Word, troubles: Troubles) -> None:
    try:
        folder_address(written)
    except CannotBe as fault:
        troubles.add(fault.message, written.place, fault.help)


def sheets_among(named: Sequence[Word], known: Sequence[str], troubles: Troubles) -> None:
    """Note a sheet that is none, or that is not of one design."""
    for sheet in named:
        if sheet in OF_THE_LIBRARY and sheet not in known:
            troubles.add(f"the {sheet} is of all designs, and not of one", sheet.place, "ask for it in studio.yaml")
        else:
            among(sheet, known, "a sheet", troubles)


def currency_of(projects: Path) -> str:
    """The currency of a studio whose file is in trouble, so that each price is not in trouble for it too."""
    text = read_text(projects / "studio.yaml", "projects/studio.yaml", Troubles())
    found = re.search(r"^currency:[ \t]*([A-Z]{3})\b", text.text if text else "", re.MULTILINE)
    return found[1] if found else "EUR"


def _slab(studio: Studio, measures: Measures, troubles: Troubles) -> None:
    """A rolled slab has two sides, each larger than the gaps at its edges."""
    sides = {"slab width": studio.slab_width, "slab length": studio.slab_length}
    given = {name: word for name, word in sides.items() if word is not None}
    gap = measures.interval(studio.slab_gap, LENGTH, least=0, most=50, name="slab gap")
    for name, word in given.items():
        measures.interval(word, LENGTH, above=2 * gap.usual if gap else 0, most=1000, name=name)
    if len(given) == 1:
        [missing], [word] = sides.keys() - given.keys(), given.values()
        troubles.add(f"a slab has two sides, and '{missing}' is missing", word.place, f"add {missing}: 150 mm")


def among(word: Word, known: Sequence[str], name: str, troubles: Troubles) -> None:
    """Note a word that is none of those that are known."""
    if word not in known:
        troubles.add(f"{name} cannot be '{word}'", word.place, "one of " + ", ".join(known))
