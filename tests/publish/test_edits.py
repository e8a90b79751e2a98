"""Forty edits by chance: what is published of each is what publishing everything anew would give, to the byte."""

from __future__ import annotations

import random
from typing import TYPE_CHECKING, Any

from sheetgen import publishing

if TYPE_CHECKING:
    from pathlib import Path

    import pytest

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


def pdfs(build: Path) -> dict[str, bytes]:
    return {str(path): path.read_bytes() for path in build.rglob("*.pdf")}
