"""The type faces that a browser loads: each letter of the packaged ones, the same bytes each time, made once."""

from __future__ import annotations

import io
from pathlib import PurePath
from typing import Any

import pytest
from fontTools.ttLib import TTFont

from sheetgen.render.faces import _packed, faces
from sheetgen.render.pdf import font_files


@pytest.fixture(scope="module")
def packed() -> dict[str, TTFont]:
    return {PurePath(page.path).stem: TTFont(io.BytesIO(page.content)) for page in faces()}


@pytest.mark.parametrize("name", [PurePath(name).stem for name in font_files()])
def test_every_letter_of_a_face_comes_with_its_width_and_its_outline(name: str, packed: dict[str, TTFont]) -> None:
    own = TTFont(next(path for path in font_files().values() if path.stem == name))
    assert packed[name].flavor == "woff2"
    assert packed[name].getBestCmap() == own.getBestCmap()
    for letter in own.getGlyphOrder():
        assert packed[name]["hmtx"][letter] == own["hmtx"][letter]
        outlines = [font["glyf"][letter].getCoordinates(font["glyf"]) for font in (own, packed[name])]
        assert outlines[0][0] == outlines[1][0]
    assert {*own.keys()} - {"DSIG"} == {*packed[name].keys()}  # a signature of the packed file would not hold


def test_they_are_the_same_bytes_each_time() -> None:
    name, path = next((name, path) for name, path in font_files().items() if name.endswith("-It.ttf"))
    assert _packed(path) == _packed(path) == next(page.content for page in faces() if PurePath(name).stem in page.path)


def test_the_three_that_a_design_wants_are_a_third_of_what_they_were() -> None:
    wanted = ("Regular", "Semibold", "Bold")
    small = sum(len(page.content) for page in faces() if PurePath(page.path).stem.endswith(wanted))
    assert small * 3 <= sum(path.stat().st_size for path in font_files().values() if path.stem.endswith(wanted))


@pytest.mark.usefixtures("quick")
def test_they_are_made_once_and_not_with_each_word_that_is_changed(
    standing: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    def made() -> None:
        raise AssertionError("made anew")

    before = {path.name: path.read_bytes() for path in (standing.build / "fonts").iterdir()}
    assert {PurePath(name).suffix for name in before} == {".woff2"}
    monkeypatch.setattr("sheetgen.render.library.faces", made)
    standing.change("pendant/project.yaml", "title: Round pendant", "title: Quite round pendant")
    outcome = standing.publish()
    assert not outcome.troubles.errors, list(map(str, outcome.troubles))
    assert {path.name: path.read_bytes() for path in (standing.build / "fonts").iterdir()} == before
