"""The demonstration's files, each read by the program as it reads them, with all that is beside it read only once."""

from __future__ import annotations

import functools
import re
import shutil
from contextlib import ExitStack
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple
from unittest import mock

import jinja2

from sheetgen import pipeline
from sheetgen.base.frozen import Frozen
from sheetgen.base.trouble import CannotBe, Misplaced, Troubles
from sheetgen.pictures.ready import ready
from sheetgen.read import library as of_library
from sheetgen.read import stock_files
from sheetgen.read.files import file_words
from sheetgen.read.house_steps import read_house_steps
from sheetgen.read.pupils import read_pupils
from sheetgen.render.musts import checked_html
from sheetgen.render.theme import Theme
from sheetgen.render.top import styled
from sheetgen.runs import changes, class_made, cost, orders
from sheetgen.runs import designs as of_runs
from tests.edits import Digests
from tests.made_beside import book_text, packed, sent_list

if TYPE_CHECKING:
    from collections.abc import Collection

    from sheetgen.base.trouble import Trouble
    from sheetgen.model.project import Filed, Library
    from sheetgen.pipeline import Outcome

ROOT = Path(__file__).parents[1]
HERE = Path(__file__).parent / "beside"
"""The files that the demonstration has none of: a kind of one's own and its design, tables, a till."""
PRINTED = "towline-bracelet"  # the design whose pages are filled in: the smallest
LEFT = ("towline-bracelet", "buoy-drops")  # of which kits were sent
LOADED = re.compile(r"[\w-]+\.html\.j2")
LINE = re.compile(r"\(line (\d+)\)")


class Told(NamedTuple):
    """Something told: file and line (0 where it has none), its words, whether a reader told it.

    A reader tells what cannot be read; all else was read, and does not hold together with what stands elsewhere.
    """

    file: str
    line: int
    words: str
    by_reader: bool = False


class Readers:
    """A copy of the demonstration library, and what reads each of its files."""

    def __init__(self, root: Path, designs: Collection[str] = ()) -> None:
        self.root = root
        for part in ("projects", "themes"):
            shutil.copytree(ROOT / part, root / part, dirs_exist_ok=True)
        for path in (root / "projects").glob("*/project.yaml"):
            if designs and path.parent.name not in designs:
                shutil.rmtree(path.parent)
        shutil.copytree(HERE, root, dirs_exist_ok=True)
        (root / "season.book").write_text(book_text(root / "season.csv"), "utf-8")
        (root / "private" / "sent.csv").write_text(sent_list(root / "projects", LEFT), "utf-8", newline="")
        self.words: dict[Path, Any] = {}
        outcome = pipeline.work_through(root)
        assert not outcome.troubles.errors, "\n".join(map(str, outcome.troubles))
        assert outcome.library
        self.library, self.worked = outcome.library, {one.name: one for one in outcome.worked}
        projects = root / "projects"
        self.beside = {
            "read_stock": outcome.library.stock,
            "read_house_steps": read_house_steps(projects, Troubles()),
        }
        self.classes: dict[str, Any] = {}
        self.versions = of_runs.versions_of(root)
        self.texts = {one.name: (projects / one.name / "project.yaml").read_text("utf-8") for one in outcome.worked}

    def files(self) -> dict[str, list[str]]:
        """The files that are made otherwise, by their sort."""
        below = {
            "project": "projects/*/project.yaml", "stock": "projects/stock/*.yaml", "studio": "projects/studio.yaml",
            "steps": "projects/steps/*.yaml", "kind": "projects/kinds/*.yaml", "picture": "projects/*/*.svg",
            "theme": "themes/plain/*.j2", "orders": "season.csv", "pupils": "evening.csv", "till": "private/till.yaml",
            "ledger": "projects/*/ledger/*.json", "sent": "private/sent.csv", "book": "season.book",
        }  # fmt: skip
        return {sort: sorted(str(p.relative_to(self.root)) for p in self.root.glob(one)) for sort, one in below.items()}

    def told(self, sort: str, path: str, text: str, near: set[str]) -> list[Told]:
        """What is told of a file with another text; `near` are names by which a design is found that uses it.

        Raises whatever the program does not catch.
        """
        if sort == "theme":
            _ = self.loads  # as they are while the theme is whole
        target = self.root / path
        whole = target.read_bytes()
        target.write_text(text, "utf-8", newline="")
        try:
            found: list[Told] = getattr(self, f"_{sort}")(path, near)
        finally:
            target.write_bytes(whole)
        return found

    def _project(self, path: str, _near: set[str]) -> list[Told]:
        return self._checked(path.split("/")[1], "read_stock", "read_house_steps")

    def _stock(self, path: str, near: set[str]) -> list[Told]:
        def known(other: Path, name: str, troubles: Troubles) -> Any:
            """The words of the other files of stock, known once."""
            if other == self.root / path:
                return file_words(other, name, troubles)
            if other not in self.words:
                self.words[other] = file_words(other, name, troubles)
            return self.words[other]

        with mock.patch.object(stock_files, "file_words", known):
            return self._checked(self._using(near), "read_house_steps")

    def _studio(self, _path: str, near: set[str]) -> list[Told]:
        return self._checked(self._using(near), "read_house_steps")

    def _steps(self, _path: str, near: set[str]) -> list[Told]:
        return self._checked(self._using({f"house: {name}" for name in near}), "read_stock")

    def _kind(self, _path: str, _near: set[str]) -> list[Told]:
        return self._checked("cones", "read_stock", "read_house_steps")

    def _using(self, near: set[str]) -> str:
        """The smallest design in whose file one of the names stands, the longest names first."""
        small = sorted(self.texts, key=lambda name: len(self.texts[name]))
        for one in sorted(near, key=lambda word: (-len(word), word)):
            if found := [name for name in small if one in self.texts[name]]:
                return found[0]
        return small[0]

    def _checked(self, name: str, *shared: str) -> list[Told]:
        with ExitStack() as stack:
            for one in shared:
                stack.enter_context(mock.patch.object(of_library, one, lambda *_, one=one: self.beside[one]))
            outcome = pipeline.work_through(self.root, [name])
        return _of(outcome, read=outcome.library is None or bool(outcome.library.failed))

    def _picture(self, path: str, _near: set[str]) -> list[Told]:
        try:
            ready(path, (self.root / path).read_bytes())
        except CannotBe as fault:
            line = LINE.search(fault.message)
            return [Told(path, int(line[1]) if line else 0, f"{fault.message} {fault.help}", by_reader=True)]
        return []

    @functools.cached_property
    def pages(self) -> dict[str, tuple[dict[str, Any], tuple[Any, ...]]]:
        """What each template was given for a page of the smallest design, and what a page must show."""
        given: dict[str, dict[str, Any]] = {}
        must: list[tuple[Any, ...]] = []
        worked = self.worked[PRINTED]
        small = replace(worked, versions=Frozen({worked.main.name: worked.main}))

        def kept(theme: Theme, template: str, **values: Any) -> str:
            given[template] = values
            return theme._filled(template, values)

        def checked(html: str, *marks: Any) -> Any:
            must.append(marks)
            return checked_html(html, *marks)

        with mock.patch.object(Theme, "page", kept), mock.patch("sheetgen.render.pages.checked_html", checked):
            list(pipeline.pages_of(small, Theme("plain", [self.root / "themes"]), Digests()))
        return {name: (values, must[0] if name == "project.html.j2" else ()) for name, values in given.items()}

    def _theme(self, path: str, _near: set[str]) -> list[Told]:
        name = Path(path).name
        theme = Theme("plain", [self.root / "themes"])
        try:
            if not any(name in loaded for loaded in self.loads.values()):
                _filled_with_nothing(theme, name)  # a list's, or a part of one
            for one, (values, must) in self.pages.items():
                html = theme.page(one, **values) if name in self.loads[one] else ""
                if html and must and checked_html(styled(theme, html), *must):
                    return [Told(path, 0, "the page leaves out what it must show")]
        except Misplaced as fault:
            return [_one(fault.trouble, read=True)]
        return []

    @functools.cached_property
    def loads(self) -> dict[str, set[str]]:
        """The templates that each page is filled in by, its own among them."""
        found: dict[str, set[str]] = {}
        for one in self.pages:
            open_, found[one] = [one], set()
            while open_:
                name = open_.pop()
                found[one].add(name)
                text = (self.root / "themes" / "plain" / name).read_text("utf-8")
                if one == "project.html.j2":
                    found[one].add("screen.css")
                open_ += [other for other in LOADED.findall(text) if other not in found[one]]
        return found

    def _book(self, path: str, _near: set[str]) -> list[Told]:
        book = (self.root / path).with_suffix(".xlsx")
        book.write_bytes(packed((self.root / path).read_text("utf-8")))
        found = self._orders(book.name, set())  # of its lines no person sees those of the text
        return [Told(path, 0, one.words, by_reader=True) if one.file == book.name else one for one in found]

    def _orders(self, path: str, _near: set[str]) -> list[Told]:
        outcome = pipeline.Outcome()
        known = functools.partial(of_runs.Designs, as_written=dict(self.worked))
        with (
            mock.patch.object(orders, "versions_of", return_value=self.versions),
            mock.patch.object(orders, "read_library", return_value=self.library),
            mock.patch.object(orders, "Designs", known),
        ):
            orders.packed(self.root, self.root / path, outcome)
        return _of(outcome, read=True)

    def _pupils(self, path: str, _near: set[str]) -> list[Told]:
        outcome = pipeline.Outcome()
        pupils = read_pupils(self.root / path, path, self.versions, outcome.troubles)
        with mock.patch.object(of_runs, "work_one", self._worked_once):
            if pupils:
                class_made.of_pupils(self.root, self.library, pupils, outcome)
        return _of(outcome, read=True)

    def _worked_once(self, filed: Filed, library: Library, faults: list[str], *ways: Any) -> Any:
        """A design for so many people, known once."""
        key = repr((filed.name, filed.project.class_, ways))
        if key not in self.classes:
            self.classes[key] = pipeline.work_one(filed, library, faults, *ways)
        return self.classes[key]

    def _ledger(self, path: str, _near: set[str]) -> list[Told]:
        return self._moved([path.split("/")[1]])

    def _sent(self, _path: str, _near: set[str]) -> list[Told]:
        return self._moved([])

    def _moved(self, designs: list[str]) -> list[Told]:
        """What is told where a list of what was sent and the ledgers are held against today."""
        worked = [self.worked[name] for name in designs or LEFT if name in self.worked]
        known = pipeline.Outcome(library=self.library, worked=worked)
        with (
            mock.patch.object(changes, "work_through", return_value=known),
            mock.patch.object(changes, "work_one", self._worked_once),
        ):
            outcome, _ = changes.changes(self.root, designs, "", self.root / "private")
        here = f"{self.root}/"
        return [
            one._replace(file=one.file.removeprefix(here), by_reader="not those of its fingerprint" not in one.words)
            for one in _of(outcome, read=True)
        ]

    def _till(self, path: str, _near: set[str]) -> list[Told]:
        worked = [self.worked[PRINTED]]
        known = pipeline.Outcome(library=self.library, worked=worked)
        with (
            mock.patch.object(cost, "work_through", return_value=known),
            mock.patch.object(cost, "projects_of", return_value=list(self.versions)),
            mock.patch.object(cost, "write_private", return_value=[]),
        ):
            outcome, _ = cost.cost(
                self.root, [f"{PRINTED}=3"], (self.root / path).parent, self.root / "build", a_class=False
            )
        return _of(outcome, read=True)


class Nothing(jinja2.ChainableUndefined):
    """What a template is not given, whatever it asks of it."""

    def __call__(self, *_args: Any, **_more: Any) -> Any:
        return self


def _filled_with_nothing(theme: Theme, name: str) -> None:
    """Misplaced for a fault in it, but for what is lacking."""
    with mock.patch.object(theme.environment, "undefined", Nothing):
        theme.page(name)


def _of(outcome: Outcome, *, read: bool) -> list[Told]:
    if outcome.faults:
        raise AssertionError(outcome.faults[0])
    return [_one(trouble, read=read) for trouble in outcome.troubles]


def _one(trouble: Trouble, *, read: bool) -> Told:
    place = trouble.place
    if place is None:
        return Told("", 0, f"{trouble.message} {trouble.help}", read)
    return Told(place.source.name, place.line, f"{trouble.message} {trouble.help}", read)
