"""How long the demonstration library takes, stage by stage: .ci/with --tests python tests/benchmark.py.

Figures to compare on one machine before and after a change. No test asserts them.
"""

from __future__ import annotations

import random
import sys
import tempfile
import time
from pathlib import Path
from typing import TYPE_CHECKING

from sheetgen import pipeline
from sheetgen.base.packing import pack
from sheetgen.draw.templates import draw

if TYPE_CHECKING:
    from collections.abc import Callable

ROOT = Path(__file__).parents[1]
ONE = "towline-bracelet"


def publish_one() -> None:
    """Every sheet of one project, into a folder that is thrown away."""
    with tempfile.TemporaryDirectory() as folder:
        pipeline.publish(ROOT, Path(folder), [ONE])


def best(work: Callable[[], object], times: int = 3) -> float:
    """Seconds of the quickest of a few runs."""
    found = []
    for _ in range(times):
        start = time.perf_counter()
        work()
        found.append(time.perf_counter() - start)
    return min(found)


def main() -> None:
    """Print a table of stages and seconds."""
    outcome = pipeline.work_through(ROOT)
    sheets = [(worked, version) for worked in outcome.worked for version in worked.versions.values()]
    chance = random.Random(1)  # noqa: S311 - the same pieces every time
    pieces = [(chance.uniform(5, 60), chance.uniform(5, 60)) for _ in range(200)]
    rows = [
        ("read, work and check the library", best(lambda: pipeline.work_through(ROOT))),
        (
            f"draw {len(sheets)} versions for two papers",
            best(lambda: [draw(w, v, ["A4", "Letter"]) for w, v in sheets]),
        ),
        ("pack 200 pieces", best(lambda: pack(pieces, (180, 221)))),
        (f"publish {ONE}, all versions", best(publish_one, times=1)),
    ]
    for label, seconds in rows:
        sys.stdout.write(f"{label:45} {seconds:8.3f} s\n")


if __name__ == "__main__":
    main()
