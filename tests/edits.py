"""Edits a library in every field, and holds what is published of the change against everything published anew.

`.ci/with --tests python tests/edits.py [NUMBER] [DESIGN...]` edits every field of the demonstration in turn, or of the
designs named and of what they share, which takes hours; or so many of them by chance. Sheets are not laid out: a digest
of all that a sheet's bytes hang on stands in for its bytes.
"""

from __future__ import annotations

import hashlib
import json
import random
import re
import shutil
import sys
import tempfile
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import TYPE_CHECKING
from unittest import mock

from sheetgen import publishing
from sheetgen.publish.record import RECORD
from sheetgen.render.job import Doubt, Printout
from tests.library import QuickPool

if TYPE_CHECKING:
    from collections.abc import Collection, Iterator

    from sheetgen.pipeline import Outcome
    from sheetgen.render.job import Job, Paper

ROOT = Path(__file__).parents[1]
FIELD = re.compile(r"^(\s*(?:- )?[\w' -]+:\s+|\s*- )(\S.*)$")
"""A line with a value of its own, and the value."""
NUMBER = re.compile(r"\d+(?:\.\d+)?")


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
    failed = {*fresh.failed}
    if not fresh.published:  # studio or stock stop all of them, and nothing is touched
        wanted = before
    for path in {*before, *wanted}:
        if path.split("/")[0] in failed or (failed and "/" not in path):
            wanted[path] = found.get(path, b"") if "/" not in path else before.get(path, b"")
    out = [f"{path} is not as it is anew" for path in sorted({*wanted, *found}) if wanted.get(path) != found.get(path)]
    if (sorted(known.failed), sorted(known.published)) != (sorted(fresh.failed), sorted(fresh.published)):
        out.append(f"failed {known.failed}, anew {fresh.failed}")
    if told(known) != told(fresh):
        out.append(f"told {told(known)}, anew {told(fresh)}")
    return out


def main(many: int, names: Collection[str]) -> None:
    """Every field in turn; of more than so many, that many by chance."""
    dice = random.Random(1)  # noqa: S311 - chance, not secrecy
    with tempfile.TemporaryDirectory() as folder, mock.patch("sheetgen.render.pdf_pool.PdfPool", Digests):
        root = Path(folder, "library")
        for part in ("projects", "themes"):
            shutil.copytree(ROOT / part, root / part)
        for one in (root / "projects").iterdir():
            if names and (one / "project.yaml").is_file() and one.name not in names:
                shutil.rmtree(one)
        build = root / "build"
        publishing.publish(root, build)
        files = sorted((root / "projects").rglob("*.yaml"))
        every = [edit for path in files for edit in edits_of(root, path, dice)]
        wrong = 0
        for edit in dice.sample(every, min(many, len(every))) if many else every:
            found = differences(root, build, edit)
            wrong += bool(found)
            sys.stdout.writelines(f"{edit}: {line}"[:300] + "\n" for line in found[:5])
            sys.stdout.flush()
        sys.stdout.write(f"{many or len(every)} of {len(every)} fields edited, {wrong} not published as all anew is\n")


if __name__ == "__main__":
    asked = sys.argv[1:]
    chance = int(asked.pop(0)) if asked and asked[0].isdigit() else 0
    main(chance, asked)
