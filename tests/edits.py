"""Edits a library in every field, and holds what is published of the change against everything published anew.

`.ci/with --tests python tests/edits.py [NUMBER] [--designs DESIGN...] [--from N] [--to N] [--whole N]` edits every
field of the demonstration in turn, or of the designs named and of what they share, from one number to another; or so
many of them by chance. A folder in memory (`TMPDIR=/dev/shm`) is quicker, and each core can take a part.
Sheets are not laid out: a digest of all that a sheet's bytes hang on stands in for its bytes. Of every field in turn
one in two hundred is held against everything published anew, and so is whatever is in doubt; the others in brief
(tests/edited.py), which takes two seconds and not thirty.
"""

from __future__ import annotations

import argparse
import functools
import hashlib
import json
import random
import re
import shutil
import sys
import tempfile
import time
from collections import Counter
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import TYPE_CHECKING
from unittest import mock

import yaml

from sheetgen import publishing
from sheetgen.model.page import neighbours_of, with_neighbours
from sheetgen.publish.record import RECORD
from sheetgen.render.job import Doubt, Printout
from tests.edited import Base, doubts
from tests.library import QuickPool

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator, Sequence

    from sheetgen.pipeline import Outcome
    from sheetgen.render.job import Job, Paper

ROOT = Path(__file__).parents[1]
FIELD = re.compile(r"^(\s*(?:- )?[\w' -]+:\s+|\s*- )(\S.*)$")
"""A line with a value of its own, and the value."""
NUMBER = re.compile(r"\d+(?:\.\d+)?")
OF_ALL = re.compile(r"warning: (?:catalogue|programme)-")
"""What is told of a sheet of the whole library."""


class Digests(QuickPool):
    """Stands in for the printers: of a sheet a digest of its whole job, and a doubt where its page says so."""

    @staticmethod
    def printout(job: Job, paper: Paper) -> Printout:
        told = json.dumps(asdict(job), default=sorted, sort_keys=True)
        digest = hashlib.sha256(f"{paper.name} {told}".encode("utf-8", "surrogatepass")).hexdigest()
        doubts = (Doubt(paper.name, 1, "it jars"),) if int(digest, 16) % 3 == 0 else ()
        return Printout(f"%PDF {digest}".encode(), 1 + int(digest, 16) % 3, (), doubts)


@dataclass(frozen=True)
class Edit:
    """A line of a file of a library, otherwise."""

    path: str
    line: int
    old: str
    new: str

    def put(self, root: Path) -> None:
        self._swap(root, self.new)

    def undo(self, root: Path) -> None:
        self._swap(root, self.old)

    def _swap(self, root: Path, text: str) -> None:
        target = root / self.path
        lines = target.read_text("utf-8").split("\n")
        lines[self.line] = text
        target.write_text("\n".join(lines), "utf-8")

    def __str__(self) -> str:
        return f"{self.path}:{self.line + 1}: {self.new.strip()!r} for {self.old.strip()!r}"


def edits_of(root: Path, path: Path, dice: random.Random) -> Iterator[Edit]:
    """One edit for each field of a file: another number, another word, or nothing."""
    for number, line in enumerate(path.read_text("utf-8").split("\n")):
        found = FIELD.match(line)
        if found is None or line.lstrip().startswith("#"):
            continue
        yield Edit(str(path.relative_to(root)), number, line, found[1] + _otherwise(found[2], dice))


def _otherwise(value: str, dice: random.Random) -> str:
    numbers = list(NUMBER.finditer(value))
    way = dice.randrange(4)
    if numbers and way < 3:
        one = dice.choice(numbers)
        changed = f"{float(one[0]) * dice.choice((0.5, 0.9, 1.02, 1.1, 2)):.4g}"
        return f"{value[: one.start()]}{changed}{value[one.end() :]}"
    return {0: f"{value} so", 1: value.upper(), 2: value[: len(value) // 2] or "x", 3: ""}[way]


def files_of(build: Path) -> dict[str, bytes]:
    return {str(p.relative_to(build)): p.read_bytes() for p in build.rglob("*") if p.is_file() and p.name != RECORD}


def told(outcome: Outcome) -> list[str]:
    return [str(one) for one in outcome.troubles.gathered()]


def led_as(page: bytes, other: bytes) -> bytes:
    """A page that leads to the designs that another leads to."""
    block = neighbours_of(other)
    return page if block is None or neighbours_of(page) is None else with_neighbours(page, block)


def differences(root: Path, build: Path, edit: Edit) -> list[str]:
    """What an incremental publishing of an edit has otherwise than one of everything into an empty folder."""
    edit.put(root)
    with tempfile.TemporaryDirectory() as folder:
        copy, anew = Path(folder, "library"), Path(folder, "build")
        shutil.copytree(root, copy, ignore=shutil.ignore_patterns("build", ".*"))
        fresh, before = publishing.publish(copy, anew), files_of(build)
        known = publishing.publish(root, build)
        wanted, found = files_of(anew), files_of(build)
    edit.undo(root)
    failed, tells, ought = {*fresh.failed}, told(known), told(fresh)
    if not fresh.published:  # studio or stock stop all of them, and nothing is touched
        wanted = before
    for path in {*before, *wanted}:
        of_all = "/" not in path or path.startswith("library/")
        if path.split("/")[0] in failed or (failed and of_all):
            wanted[path] = found.get(path, b"") if of_all else before.get(path, b"")
    if failed:  # what leads to other designs is of all too: anew there is none that failed, nor a sheet of all
        tells, ought = ([line for line in lines if not OF_ALL.search(line)] for lines in (tells, ought))
        wanted = {path: led_as(content, found.get(path, b"")) for path, content in wanted.items()}
    out = [f"{path} is not as it is anew" for path in sorted({*wanted, *found}) if wanted.get(path) != found.get(path)]
    if (sorted(known.failed), sorted(known.published)) != (sorted(fresh.failed), sorted(fresh.published)):
        out.append(f"failed {known.failed}, anew {fresh.failed}")
    if tells != ought:
        more, less = [one for one in tells if one not in ought], [one for one in ought if one not in tells]
        out.append(f"told {more}, and not {less}" if more or less else "told in another order")
    return out


def main(asked: argparse.Namespace) -> None:
    """Every field in turn; of a number, that many by chance, each against everything anew."""
    with tempfile.TemporaryDirectory() as folder, mock.patch("sheetgen.render.pdf_pool.PdfPool", Digests):
        root = Path(folder, "library")
        for part in ("projects", "themes"):
            shutil.copytree(ROOT / part, root / part)
        for one in (root / "projects").iterdir():
            if asked.designs and (one / "project.yaml").is_file() and one.name not in asked.designs:
                shutil.rmtree(one)
        publishing.publish(root, root / "build")
        files = [path for path in sorted((root / "projects").rglob("*.yaml")) if "ledger" not in path.parts]
        every = [edit for path in files for edit in edits_of(root, path, _dice(path.relative_to(root)))]
        every = [edit for edit in every if edit.new != edit.old]
        numbered = list(enumerate(every, 1))
        if asked.number:
            numbered = sorted(_dice("").sample(numbered, min(asked.number, len(every))))
        with mock.patch("yaml.compose", _once(yaml.compose)), mock.patch("yaml.parse", _once(_parsed)):
            _gone_through(root, [one for one in numbered if asked.begin <= one[0] <= asked.end], asked)


def _gone_through(root: Path, numbered: Sequence[tuple[int, Edit]], asked: argparse.Namespace) -> None:
    base, began, counts = Base(root), time.monotonic(), Counter[str]()
    for done, (number, edit) in enumerate(numbered, 1):
        found, way = [], "whole"
        with tempfile.TemporaryDirectory() as folder:
            if not asked.number and number % asked.whole:
                found, way = doubts(base, edit, Path(folder), Digests.printout), "brief"
        for line in found[:5]:
            sys.stdout.write(f"{number} {edit}: in doubt: {line}"[:400] + "\n")
            if found or way == "whole":
                counts["in doubt"] += bool(found)
                copy = base.copy(Path(folder, "whole"))
                found, way = differences(copy, copy / "build", edit), "whole"
        counts[way] += 1
        counts["wrong"] += bool(found)
        sys.stdout.writelines(f"{number} {edit}: {line}"[:400] + "\n" for line in found[:5])
        left = (time.monotonic() - began) / done * (len(numbered) - done) / 60
        sys.stdout.flush()
        sys.stderr.write(f"\r{number}, {len(numbered) - done} to do, {left:.0f} min left  ")
    told = f"{len(numbered)} fields edited, {counts['wrong']} not published as all anew is"
    sys.stdout.write(
        f"\n{told}; {counts['whole']} held against everything anew, {counts['in doubt']} of them in doubt\n"
    )


def _once(read: Callable[..., object]) -> Callable[..., object]:
    """A text read once however often it is read: of a library of which one line is edited."""
    return functools.lru_cache(4000)(lambda text, Loader: read(text, Loader=Loader))  # noqa: N803 - yaml's name


def _parsed(text: str, parse: Callable[..., Iterable[object]] = yaml.parse, **more: object) -> list[object]:
    return list(parse(text, **more))


def _dice(what: object) -> random.Random:
    return random.Random(f"1 {what}")  # noqa: S311 - chance, not secrecy


if __name__ == "__main__":
    parser = argparse.ArgumentParser()
    parser.add_argument("number", nargs="?", type=int, default=0)
    parser.add_argument("--designs", nargs="*", default=[])
    parser.add_argument("--from", dest="begin", type=int, default=1)
    parser.add_argument("--to", dest="end", type=int, default=sys.maxsize)
    parser.add_argument("--whole", type=int, default=200)
    main(parser.parse_args())
