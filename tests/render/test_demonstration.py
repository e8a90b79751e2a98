"""Every sheet of the demonstration as it is printed: it can be read aloud, and nothing of its layout jars."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import page as validator
import pdfplumber
import pytest

from sheetgen import publishing

ROOT = Path(__file__).parents[2]
DESIGNS = sorted(path.parent.name for path in ROOT.glob("projects/*/project.yaml"))
MOST_SIDES = 60  # of the handouts of all designs together, on A4
PHONE = (390, 844)
TOO_LONG = {"shingle-keeper"}  # its lists, 109 mm, and hazards, 105 mm, leave no room for its title and picture


@pytest.fixture(scope="module")
def published(tmp_path_factory: Any) -> Any:
    """The whole library, published once, with what was told."""
    build = tmp_path_factory.mktemp("demonstration")
    return build, publishing.publish(ROOT, build)


def test_every_design_is_published_without_a_trouble_or_a_warning(published: Any) -> None:
    _, outcome = published
    assert [str(trouble).splitlines()[0] for trouble in outcome.troubles] == []
    assert sorted(outcome.published) == DESIGNS


@pytest.mark.parametrize("design", DESIGNS)
def test_every_pdf_of_a_design_can_be_read_aloud(design: str, published: Any) -> None:
    build, _ = published
    sheets = sorted((build / design).rglob("*.pdf"))
    assert len(sheets) >= 6
    failed = {}
    for sheet in sheets:
        report = validator.validate_pdf_bytes(sheet.read_bytes(), profile="ua1")
        if report.failures:
            failed[str(sheet.relative_to(build))] = [f"{one.rule_id}: {one.message}" for one in report.failures]
    assert failed == {}


def test_the_handouts_take_sixty_sides_and_none_more_than_six(published: Any) -> None:
    build, _ = published
    sides = {}
    for design in DESIGNS:
        with pdfplumber.open(build / design / "handout-a4.pdf") as pdf:
            sides[design] = len(pdf.pages)
    assert sum(sides.values()) <= MOST_SIDES, sides
    assert max(sides.values()) <= 6, sides


@pytest.mark.parametrize("design", DESIGNS)
def test_who_opens_a_design_on_a_phone_sees_what_begins_it(design: str, published: Any, browser: Any) -> None:
    build, _ = published
    page = browser.new_page(viewport={"width": PHONE[0], "height": PHONE[1]})
    asked = [path for path in sorted((build / design).rglob("*.html")) if 'id="steps"' in path.read_text("utf-8")]
    assert asked
    for path in asked:
        page.goto(path.as_uri())
        parts = [
            page.locator(what).all() for what in (".bar", "h1", "nav[aria-label=Versions]", ".brief tr", ".top > .go")
        ]
        boxes = [part.bounding_box() for several in (*parts, page.locator(".picture").all()) for part in several]
        ends = [box["y"] + box["height"] for box in boxes]
        assert len(parts[3]) == 3
        assert max(ends) <= PHONE[1], path
        assert parts[4][0].bounding_box()["y"] >= parts[3][2].bounding_box()["y"], path
    page.close()


@pytest.mark.parametrize("design", [name for name in DESIGNS if name not in TOO_LONG])
def test_what_to_have_the_tools_and_the_hazards_stand_on_the_first_side(design: str, published: Any) -> None:
    build, _ = published
    with pdfplumber.open(build / design / "handout-a4.pdf") as pdf:
        side = pdf.pages[0].extract_text()
    for said in ("Have ready", "Tools", "Read before you begin", "Emergency:"):
        assert said in side


@pytest.mark.parametrize("design", DESIGNS)
def test_both_papers_break_at_the_same_places(design: str, published: Any) -> None:
    build, _ = published
    first = []
    for paper in ("a4", "letter"):
        with pdfplumber.open(build / design / f"handout-{paper}.pdf") as pdf:
            first.append([re.sub(r"\s+", " ", (page.extract_text() or ""))[:60] for page in pdf.pages])
    assert first[0] == first[1]
