"""What a library of so many designs weighs and takes: its own pages, its index, and the time from a key to results.

`.ci/with --tests python tests/benchmark_library.py 2000`. The designs are made up of words by a seed; none is worked.
"""

from __future__ import annotations

import random
import shutil
import sys
import tempfile
import time
from pathlib import Path

from playwright.sync_api import sync_playwright

from sheetgen.model.page import Entry
from sheetgen.model.worked import Publisher
from sheetgen.render.library import Had, library
from sheetgen.render.theme import Theme

WORDS = (
    "drop", "ring", "band", "link", "pearl", "tide", "marsh", "buoy", "lantern", "shell", "keel", "knot", "reed",
    "heron", "salt", "creek", "ebb", "sedge", "pebble", "oar",
)  # fmt: skip
KEYS = ("r", "ri", "rin", "ring", "ring t", "ring ti", "ring tid", "ring tide")
AFTER = """words => new Promise(done => {
  const search = document.querySelector('input[type=search]')
  const begun = performance.now()
  search.value = words
  search.dispatchEvent(new Event('input', { bubbles: true }))
  requestAnimationFrame(() => setTimeout(() => done(performance.now() - begun)))
})"""


def _say(words: str) -> None:
    sys.stdout.write(f"{words}\n")


def entries(many: int, seed: int = 1) -> list[Entry]:
    """Designs with invented words, of the size that those of the demonstration have."""
    dice = random.Random(seed)  # noqa: S311 - words by chance, no secret

    def some(stem: str, out_of: int, most: int) -> list[str]:
        return [f"{dice.choice(WORDS)} {stem} {n}" for n in dice.sample(range(out_of), dice.randint(2, most))]

    tools = [f"Tool of the {word} {n}" for word in WORDS for n in range(6)]
    found = []
    for n in range(many):
        title = f"{dice.choice(WORDS).capitalize()} {dice.choice(WORDS)} {n}"
        own = dice.sample(tools, 18)
        clay = f"Clay {dice.randint(1, 8)}"
        name = f"design-{n}"
        found.append(
            Entry(
                name, title, " ".join(dice.choices(WORDS, k=18)), dice.choice(("first piece", "experienced")),
                "3 h – 4 h", "1", f"2026-{dice.randint(1, 12):02}-{dice.randint(1, 28):02}",
                techniques=some("work", 30, 6), heat=dice.choice(("kiln", "torch")), minutes=dice.randint(30, 600),
                clays=[clay], tools=own, materials=[clay, *some("wire", 60, 8)], parts=some("part", 90, 6),
                needs=[[clay, *own], [clay, *own[2:]]],
                chips=[["Short", "index.html", "handout-a4.pdf"], ["Long", "long/index.html", "long/handout-a4.pdf"]],
                picture={"path": f"{name}/view.svg", "width": dice.randint(8, 90), "height": dice.randint(8, 60),
                         "alternative": "a view", "webp": "", "drawn": True},
            )
        )  # fmt: skip
    return sorted(found, key=lambda one: one.title.lower())


def main(many: int) -> None:
    """Make the pages, and measure."""
    made_of = entries(many)
    began = time.process_time()
    pages = library(Publisher("Test Bench"), made_of, Theme("plain", []), Had({}, {}))
    sizes = {page.path: len(page.content) for page in pages}
    _say(f"{many} designs: {len(pages)} files made in {time.process_time() - began:.2f} s of the processor")
    for path in ("index.html", "library/designs.js", "library/index.html", "find.js", "script.js", "style.css"):
        _say(f"{path}: {sizes[path] / 1000:.1f} kB")
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as started:
        for page in pages:
            file = Path(folder) / page.path
            file.parent.mkdir(parents=True, exist_ok=True)
            file.write_bytes(page.content)
        browser = started.chromium.launch(executable_path=shutil.which("chromium"), args=["--no-sandbox"])
        shown = browser.new_page(viewport={"width": 390, "height": 844})
        shown.goto((Path(folder) / "index.html").as_uri())
        began = time.perf_counter()
        shown.get_by_label("Find").focus()
        shown.wait_for_function("document.querySelector('.find select')")
        _say(f"index read, from the first touch: {(time.perf_counter() - began) * 1000:.0f} ms")
        taken = {key: shown.evaluate(AFTER, key) for key in KEYS}
        _say("results after a key, ms: " + ", ".join(f"{key!r} {value:.0f}" for key, value in taken.items()))
        browser.close()


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 2000)
