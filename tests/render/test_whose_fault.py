"""A fault in a template is the theme's, at its line; one of the program's own is never put down to a theme."""

from __future__ import annotations

import shutil
from typing import TYPE_CHECKING

import pytest

from sheetgen.base.spelling import slug
from sheetgen.base.trouble import Misplaced
from sheetgen.render import sandbox
from sheetgen.render import theme as themes
from sheetgen.render.theme import Theme, shipped

if TYPE_CHECKING:
    from pathlib import Path


@pytest.fixture
def ours(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Our own theme, in a copy that can be broken."""
    folder = tmp_path / "program"
    shutil.copytree(shipped("themes"), folder)
    monkeypatch.setattr(themes, "shipped", lambda _name: folder)
    return folder / "plain"


@pytest.fixture
def library(tmp_path: Path) -> Path:
    """The folder of themes of a library, with an empty one of the name of ours."""
    folder = tmp_path / "library" / "themes"
    (folder / "plain").mkdir(parents=True)
    return folder


@pytest.mark.parametrize(
    ("template", "word"),
    [
        ("<p>\n{{ sheet.glaze }}</p>", "glaze"),
        ("<p>\n{{ sheet['glaze'] }}</p>", "glaze"),
        ("<p>\n{{ glaze }}</p>", "glaze"),
        ("<p>\n{{ sheet.title.glaze.colour }}</p>", "glaze"),
        ("<p>\n{% for one in glazes %}{{ one }}{% endfor %}</p>", "glazes"),
        ("<p>\n{{ glazed('red') }}</p>", "glazed"),
    ],
)
def test_a_field_that_there_is_not_is_the_themes_fault_at_its_line(template: str, word: str, library: Path) -> None:
    (library / "plain" / "mine.html.j2").write_text(template, "utf-8")
    with pytest.raises(Misplaced, match=word) as caught:
        Theme("plain", [library]).page("mine.html.j2", sheet={"title": "Round"})
    assert caught.value.trouble.place is not None
    assert caught.value.trouble.place.source.name == "themes/plain/mine.html.j2"
    assert caught.value.trouble.place.line == 2


def test_an_unknown_field_in_a_template_of_ours_is_a_fault_of_the_program(ours: Path, library: Path) -> None:
    (ours / "mine.html.j2").write_text("<p>\n{{ sheet.glaze }}</p>", "utf-8")
    with pytest.raises(Exception, match="glaze") as caught:
        Theme("plain", [library]).page("mine.html.j2", sheet={})
    assert not isinstance(caught.value, Misplaced)


def test_a_fault_of_what_a_theme_prints_with_is_a_fault_of_the_program(
    library: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (library / "plain" / "mine.html.j2").write_text("<p>\n{{ sheet.title }}</p>", "utf-8")
    monkeypatch.setattr(sandbox, "kept", lambda _text: slug(None))  # type: ignore[arg-type]  # breaks within the program
    with pytest.raises((TypeError, AttributeError)):
        Theme("plain", [library]).page("mine.html.j2", sheet={"title": "Round"})


def test_a_fault_of_ours_in_what_is_private_is_told_without_a_word_of_it(ours: Path, library: Path) -> None:
    (ours / "mine.html.j2").write_text("{{ sheet.name + 1 }}", "utf-8")
    with pytest.raises(RuntimeError) as caught:
        Theme("plain", [library]).private_page("mine.html.j2", sheet={"name": "Odo Marsh"})
    assert "Odo" not in str(caught.value)
    assert caught.value.__suppress_context__


def test_a_page_of_ours_that_a_theme_takes_apart_is_the_themes_fault(ours: Path, library: Path) -> None:
    (ours / "mine.html.j2").write_text("{% include 'part.html.j2' %}", "utf-8")
    (ours / "part.html.j2").write_text("{{ sheet.title }}", "utf-8")
    (library / "plain" / "part.html.j2").write_text("\n{{ sheet.titel }}", "utf-8")
    with pytest.raises(Misplaced, match="titel") as caught:
        Theme("plain", [library]).page("mine.html.j2", sheet={"title": "Round"})
    assert caught.value.trouble.place is not None
    assert caught.value.trouble.place.line == 2


def test_of_a_macro_that_is_given_the_wrong_thing_the_line_that_calls_it_is_told_too(library: Path) -> None:
    macro = "{% macro each(things) %}\n{% for one in things %}{{ one }}{% endfor %}\n{% endmacro %}\n\n{{ each(7) }}"
    (library / "plain" / "mine.html.j2").write_text(macro, "utf-8")
    with pytest.raises(Misplaced) as caught:
        Theme("plain", [library]).page("mine.html.j2", sheet={})
    assert caught.value.trouble.help.endswith("or line 5 of themes/plain/mine.html.j2, which calls it")
