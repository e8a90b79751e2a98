"""Forty edits by chance: what is published of each is what publishing everything anew would give, to the byte."""

from __future__ import annotations

import random
from typing import TYPE_CHECKING, Any

import pytest

from sheetgen import publishing

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

MANY, PRINTED = 40, 3


def by_chance(library: Any, edits: Any, many: int, seed: int) -> list[Any]:
    dice = random.Random(seed)  # noqa: S311 - chance, not secrecy
    files = sorted((library.root / "projects").rglob("*.yaml"))
    return dice.sample([edit for path in files for edit in edits.edits_of(library.root, path, dice)], many)


def test_forty_edits_by_chance_are_published_as_if_everything_were_anew(
    library: Any, edits: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("sheetgen.render.pdf_pool.PdfPool", edits.Digests)
    publishing.publish(library.root, library.build)
    for edit in by_chance(library, edits, MANY, 20):
        assert edits.differences(library.root, library.build, edit) == [], str(edit)


def test_a_few_edits_are_printed_to_the_bytes_of_their_pdfs(library: Any, edits: Any) -> None:
    library.path("drops").rename(library.root / "elsewhere")
    library.publish()
    printed = 0
    for edit in by_chance(library, edits, 40, 3):
        if "project" not in edit.path.rsplit("/", 1)[-1] or printed == PRINTED:
            continue
        before = pdfs(library.build)
        assert edits.differences(library.root, library.build, edit) == [], str(edit)
        printed += pdfs(library.build) != before
    assert printed == PRINTED, "edits that print nothing anew show nothing"


@pytest.fixture
def in_doubt(
    library: Any, edits: Any, monkeypatch: pytest.MonkeyPatch, tmp_path_factory: Any
) -> Callable[[], list[str]]:
    """What is in doubt of eight edits of stock and eight of designs, held in brief."""
    monkeypatch.setattr("sheetgen.render.pdf_pool.PdfPool", edits.Digests)
    every = by_chance(library, edits, 120, 7)
    chosen = [edit for word in ("/stock/", "project.yaml") for edit in [one for one in every if word in one.path][:8]]

    def found() -> list[str]:
        publishing.publish(library.root, library.build)
        base, aside = edits.Base(library.root), tmp_path_factory.mktemp("aside")
        each = enumerate(chosen)
        return [line for n, one in each for line in edits.doubts(base, one, aside / str(n), edits.Digests.printout)]

    return found


def test_edits_held_in_brief_are_in_no_doubt(in_doubt: Callable[[], list[str]]) -> None:
    assert in_doubt() == []


def test_a_design_that_does_not_heed_its_stock_is_in_doubt(
    in_doubt: Callable[[], list[str]], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("sheetgen.publish.standing.stock_key", lambda _root: "the same")
    assert any("is left alone, and is worked otherwise" in line for line in in_doubt())


def test_a_sheet_that_is_taken_though_its_page_is_another_is_in_doubt(
    in_doubt: Callable[[], list[str]], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("sheetgen.render.known.job_key", lambda *_: "the same")
    assert any("is not as it was asked for" in line for line in in_doubt())


def pdfs(build: Path) -> dict[str, bytes]:
    return {str(path): path.read_bytes() for path in build.rglob("*.pdf")}
