"""What a page says of its design in the words of schema.org: only words that the vocabulary has, each where it belongs.

The vocabulary is asked in the classes that pydantic2-schemaorg 0.3.0 makes of it, a class a type, a field a property;
durations are read back by isodate.
"""

from __future__ import annotations

import datetime as dt
import importlib
import json
import re
from typing import TYPE_CHECKING, Any

import isodate
import pytest

from sheetgen.model.numbers import Numbers
from sheetgen.render.howto import Stands, duration

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

AT = "https://quillmarsh.example/sheets/"
DATA = re.compile(r'<script type="application/ld\+json">(.*?)</script>', re.DOTALL)
PLAIN = {"Text", "URL", "Date", "DateTime", "Duration", "Distance", "str"}
UNIT = {"s": 1 / 60, "min": 1, "h": 60, "days": 1440}


def data_of(path: Path) -> dict[str, Any]:
    [said] = DATA.findall(path.read_text("utf-8"))
    told: dict[str, Any] = json.loads(said)
    return told


def class_of(name: str) -> Any:
    return getattr(importlib.import_module(f"pydantic2_schemaorg.{name}"), name)


def expected(kind: Any, prop: str) -> set[str]:
    """The types that a property of a type may have; none where it is no property of it."""
    for one in kind.__mro__:
        told = vars(one).get("__annotations__", {})
        known = {field.alias: name for name, field in getattr(one, "__fields__", {}).items()}
        if known.get(prop) in told:
            return set(re.findall(r"\w+", str(told[known[prop]]))) - {"Optional", "Union", "List"}
    return set()


def wrong(node: dict[str, Any]) -> Iterator[str]:
    kind = class_of(node["@type"])
    for prop, value in node.items():
        if prop.startswith("@"):
            continue
        may = expected(kind, prop)
        for one in value if isinstance(value, list) else [value]:
            if isinstance(one, dict):
                kinds = {each.__name__ for each in class_of(one["@type"]).__mro__}
                if not kinds & may:
                    yield f"{prop} of {node['@type']} is {one['@type']}, not one of {sorted(may)}"
                yield from wrong(one)
            elif not (PLAIN if isinstance(one, str) else {"Number", "Integer", "StrictInt"}) & may:
                yield f"{prop} of {node['@type']} is {one!r}, not one of {sorted(may)}"


@pytest.fixture(scope="module")
def pages(tmp_path_factory: pytest.TempPathFactory, libraries: Any) -> dict[str, dict[str, Any]]:
    """The data of the small library's pages, on a site with an address and a licence."""
    library = libraries.make(tmp_path_factory.mktemp("stated"))
    stated = f"address: {AT}\nlicence: {{text: for your bench, pictures: ask first, link: {AT}copying.html}}\n"
    library.change("studio.yaml", "units: mm\n", f"units: mm\n{stated}")
    library.change("drops/project.yaml", "[finished.svg]", "[{file: finished.svg, credit: Wren Tidewell}]")
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("sheetgen.render.pdf_pool.PdfPool", libraries.QuickPool)
        assert not library.publish().troubles.errors
    return {name: data_of(library.build / name / "index.html") for name in ("drops", "drops/long", "pendant", "link")}


def test_every_type_and_property_is_one_of_the_vocabulary_and_stands_where_it_may(pages: Any) -> None:
    assert not [f"{name}: {fault}" for name, data in pages.items() for fault in wrong(data)]


@pytest.mark.parametrize(
    ("node", "told"),
    [
        ({"@type": "HowToStep", "performTime": "PT5M"}, "performTime of HowToStep"),
        ({"@type": "HowTo", "supplies": "x"}, "supplies of HowTo"),
        ({"@type": "HowTo", "supply": {"@type": "HowToTool", "name": "x"}}, "supply of HowTo is HowToTool"),
    ],
)
def test_the_check_tells_a_word_that_the_vocabulary_does_not_have(node: dict[str, Any], told: str) -> None:
    assert told in "\n".join(wrong(node))


def test_the_data_says_what_the_page_says(pages: Any) -> None:
    data = pages["drops"]
    assert (data["@context"], data["@type"]) == ("https://schema.org", "HowTo")
    assert data["name"] == "Little drops, As designed"
    assert data["yield"] == "1 pair"
    assert data["url"] == f"{AT}drops/index.html"
    # 2 × 35.5 × 24 × 0.75 × 7 ÷ 1000 = 8.946 g, and a fifth more: up to the next half, 11 g
    supplies = {one["name"]: one.get("requiredQuantity") for one in data["supply"]}
    assert supplies["Test silver, about 9 g is used"] == "11 g"
    assert supplies["Ear wire"] == "2"
    assert {"@type": "HowToTool", "name": "Craft knife"} not in data["tool"]
    assert {"@type": "HowToTool", "name": "Roller"} in data["tool"]


def test_steps_stand_in_their_sessions_and_each_has_its_own_place_on_the_page(pages: Any) -> None:
    first, *sessions = pages["drops"]["step"]
    assert first["name"] == "Read before you begin"
    assert [one["name"] for one in sessions] == [f"Session {n}" for n in range(1, len(sessions) + 1)]
    steps = [step for session in sessions for step in session["itemListElement"]]
    assert [step["name"] for step in steps] == ["Roll", "Open the seats", "Dry", "Fire", "Set", "Cure"]
    assert [step["position"] for step in steps] == [1, 2, 3, 4, 5, 6]
    places = ("step-1", "step-2", "wait-1", "step-3", "step-4", "wait-2")  # by the numbers that are printed
    assert [step["url"] for step in steps] == [f"{AT}drops/index.html#{place}" for place in places]


def test_a_step_warns_before_it_says_what_to_do_and_says_what_is_seen_after_it(pages: Any) -> None:
    [roll] = [s for part in pages["drops"]["step"] for s in part["itemListElement"] if s.get("name") == "Roll"]
    kinds = [(one["@type"], one["text"].split()[0]) for one in roll["itemListElement"]]
    assert kinds[-2:] == [("HowToDirection", "Cut"), ("HowToTip", "You")]
    assert all(kind == "HowToTip" for kind, _ in kinds[:-2])
    assert len(kinds) > 2
    direction = roll["itemListElement"][-2]
    # the strip is 22 ÷ 0.91 = 24.2 mm long, cut at 24
    assert "Cut 24 mm by" in direction["text"].replace("\u00a0", " ")
    assert isodate.parse_duration(direction["performTime"]) == dt.timedelta(minutes=15)


def test_who_made_a_picture_and_what_may_be_done_is_said_of_it_and_of_the_words(pages: Any) -> None:
    data = pages["drops"]
    assert data["copyrightNotice"] == "for your bench"
    assert data["license"] == f"{AT}copying.html"
    picture = data["image"]
    assert picture["contentUrl"] == f"{AT}drops/pictures/finished.svg"
    assert (picture["creditText"], picture["copyrightNotice"]) == ("Wren Tidewell", "ask first")
    assert "image" not in pages["pendant"]  # it is drawn within the page


@pytest.mark.parametrize(
    ("minutes", "said"),
    [(0.5, "PT30S"), (15, "PT15M"), (60, "PT1H"), (150, "PT2H30M"), (1440, "P1D"), (2160, "P1DT12H"), (0, "")],
)
def test_a_time_is_a_duration_of_iso_8601(minutes: float, said: str) -> None:
    assert duration(minutes) == said
    assert not said or isodate.parse_duration(said) == dt.timedelta(minutes=minutes)


def test_the_time_of_every_design_is_the_most_that_its_sheets_print(demo: Any) -> None:
    seen = 0
    for worked in demo.check().worked:
        numbers = Numbers(worked.rounder)
        for version in worked.versions.values():
            for times in (version.bench_times, version.whole_times, *([one] for one in version.whole_times)):
                printed = numbers.added(times).replace("\u202f", "").replace("\u00a0", " ")
                most = printed.rpartition("–")[2].strip()
                parts = re.findall(r"([\d.]+) ?(s|min|h|days)?", most)
                units = [unit or {"h": "min"}.get(parts[0][1], "") for _, unit in parts]
                told = sum(float(number) * UNIT[unit] for (number, _), unit in zip(parts, units, strict=True))
                assert isodate.parse_duration(duration(numbers.most(times))) == dt.timedelta(minutes=told), printed
                seen += 1
    assert seen > 200


def test_without_an_address_what_is_said_leads_from_the_page_itself() -> None:
    stands = Stands("drops/long/index.html", "")
    assert (stands.at("#step-1"), stands.at("../pictures/a.jpg")) == ("#step-1", "../pictures/a.jpg")
    stands = Stands("drops/long/index.html", AT)
    assert stands.at("../pictures/a.jpg") == f"{AT}drops/pictures/a.jpg"
