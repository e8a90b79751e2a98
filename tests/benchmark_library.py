"""What a library of so many designs weighs and takes: its own pages, its index, and the time from a key to results.

`.ci/with --tests python tests/benchmark_library.py 2000`. The designs are made up of words by a seed; none is worked.
With folders of what was published, `… 2000 build/limpet-buttons build/lantern-pull`, also what a first visit asks for:
of the library's first page, of each design's page and of its bench view, by a device that has kept nothing.
"""

from __future__ import annotations

import contextlib
import functools
import http.server
import random
import shutil
import sys
import tempfile
import threading
import time
from pathlib import Path
from typing import TYPE_CHECKING

from playwright.sync_api import sync_playwright

from sheetgen.model.page import Entry
from sheetgen.model.worked import Publisher
from sheetgen.render.library import Had, library
from sheetgen.render.theme import Theme

if TYPE_CHECKING:
    from collections.abc import Iterator

    from playwright.sync_api import Browser, Page, Response

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
        wires = some("metal", 3, 3)
        found.append(
            Entry(
                name, title, " ".join(dice.choices(WORDS, k=18)), dice.choice(("first piece", "experienced")),
                "3 h – 4 h", "1", f"2026-{dice.randint(1, 12):02}-{dice.randint(1, 28):02}",
                techniques=some("work", 30, 6), heat=dice.choice(("kiln", "torch")), minutes=dice.randint(30, 600),
                whole="27 h – 71 h", whole_minutes=4260, sessions=4,
                clays=[clay], tools=own, materials=[clay, *some("wire", 60, 8)], parts=some("part", 90, 6),
                places=["wire" if "3" in tool else "clay bench" for tool in own], metals=[[one, one] for one in wires],
                needs=[[clay, *wires, *own], [clay, wires[0], *own[2:]]],
                chips=[["Short", "index.html", "handout-a4.pdf"], ["Long", "long/index.html", "long/handout-a4.pdf"]],
                picture={"path": f"{name}/view.svg", "width": dice.randint(8, 90), "height": dice.randint(8, 60),
                         "alternative": "a view", "webp": "", "drawn": True},
            )
        )  # fmt: skip
    return sorted(found, key=lambda one: one.title.lower())


@contextlib.contextmanager
def host(folder: Path) -> Iterator[str]:
    """A plain host of a folder; it packs nothing, so that bytes are those of the files."""

    class Quiet(http.server.SimpleHTTPRequestHandler):
        def log_message(self, *_said: object) -> None:
            pass

    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), functools.partial(Quiet, directory=str(folder)))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}"
    server.shutdown()
    server.server_close()


def _asked(page: Page) -> list[Response]:
    """What comes to a page from now on."""
    came: list[Response] = []
    page.on("response", functools.partial(list.append, came))
    return came


def _weighed(told_as: str, came: list[Response]) -> None:
    kinds: dict[str, list[int]] = {}
    for one in came:
        kinds.setdefault(one.request.resource_type, []).append(len(one.body()) if one.ok else 0)
    each = ", ".join(f"{len(all_)} {kind} {sum(all_) / 1000:.1f} kB" for kind, all_ in sorted(kinds.items()))
    total = sum(sum(all_) for all_ in kinds.values())
    _say(f"{told_as}: {len(came)} requests, {total / 1000:.1f} kB ({each or 'nothing'})")
    came.clear()


def visits(browser: Browser, build: Path, designs: list[str]) -> None:
    """A first visit of the first page and of each design, each on a device of its own."""
    with host(build) as at:
        for path in ("index.html", *(f"{name}/index.html" for name in designs)):
            context = browser.new_context(viewport={"width": 390, "height": 844}, service_workers="block")
            page = context.new_page()
            came = _asked(page)
            began = time.perf_counter()
            page.goto(f"{at}/{path}", wait_until="networkidle")
            took = time.perf_counter() - began
            _weighed(f"first visit of {path}", came)
            drawn = page.evaluate("performance.getEntriesByType('paint').map(one => Math.round(one.startTime)).at(-1)")
            _say(f"  first words drawn after {drawn} ms; nothing more is asked for after {took - 0.5:.2f} s")
            start = page.get_by_text("Start at the bench")
            if start.count():
                start.click()
                while page.locator(".read").is_visible():
                    page.locator(".read").click()
                page.wait_for_load_state("networkidle")
                _weighed("  its bench view", came)
            context.close()


def finding(browser: Browser, folder: Path) -> None:
    """The time to the first results on a device that has kept nothing, and from each key to results."""
    with host(folder) as at:
        shown = browser.new_page(viewport={"width": 390, "height": 844})
        came = _asked(shown)
        shown.goto(f"{at}/index.html", wait_until="networkidle")
        _weighed("first visit of that library", came)
        began = time.perf_counter()
        shown.get_by_label("Find", exact=True).press_sequentially("ring")
        shown.locator(".found").get_by_text("designs").wait_for()
        _say(f"first results, from the first key of 'ring': {(time.perf_counter() - began) * 1000:.0f} ms")
        _weighed("  for which came", came)
        taken = {key: shown.evaluate(AFTER, key) for key in KEYS}
        _say("results after a key, ms: " + ", ".join(f"{key!r} {value:.0f}" for key, value in taken.items()))
        shown.close()


def main(many: int, published: list[Path]) -> None:
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
        finding(browser, Path(folder))
        for build in dict.fromkeys(one.parent for one in published):
            visits(browser, build, [one.name for one in published if one.parent == build])
        browser.close()


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 2000, [Path(one).resolve() for one in sys.argv[2:]])
