"""How the press keeps up: .ci/with --tests python tests/benchmark_press.py [DESIGNS...], such as 10 100.

Makes libraries of so many designs from the demonstration, by seed, and measures each command as a person runs it, from
its start to its end: wall and processor seconds, and the memory of its largest process. Then, on the same pages in one
process each, a PDF page by WeasyPrint as it is, by our printer, and by warm Chromium printing tagged PDF. Of libraries
of more than 20 designs no sheet is laid out when they are published first: a stand-in writes a digest of each; and of
more than 200 one design of each model is published, and its files are copied for all others (`laid_down`).
"""

from __future__ import annotations

import json
import os
import random
import re
import shutil
import subprocess
import sys
import tempfile
import time
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from playwright.sync_api import sync_playwright

from sheetgen import pipeline
from sheetgen.base.paths import ours_of
from sheetgen.base.turns import through
from sheetgen.publish.inputs import joined, ledger_key, own_key, printer_key, shared_key
from sheetgen.publish.record import RECORD, read_record, record_text, stamp_of
from sheetgen.render.theme import Theme

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence

    from sheetgen.model.page import Page
    from sheetgen.render.job import Job, Printout

ROOT = Path(__file__).parents[1]
LAID_OUT, PUBLISHED, TIMES = 20, 200, 3
TITLE = re.compile(r"(?<=^title: ).+", re.MULTILINE)
STAND_IN = (
    "import sys; sys.path[:0] = ['tests', '.']; from edits import Digests; import sheetgen.render.pdf_pool as pool;"
    "pool.PdfPool = Digests; from sheetgen.cli import main; main()"
)
DESIGNS = ("tideline-band", "buoy-drops")
"""Of which the pages are printed by each."""
PLAIN = "from sheetgen.render import quick; quick.WEASYPRINT = 'another'; "
WARM = (
    "import pickle, sys, time; from sheetgen.render.pdf import Printer\n"
    "jobs = pickle.load(sys.stdin.buffer); printer = Printer()\n"
    "import gc; gc.disable() if {quick} else None\n"
    "for turn in range(2):\n"
    "    begin, pages = time.perf_counter(), 0\n"
    "    for job in jobs:\n"
    "        printed = printer.printed(job); pages += sum(one.pages for one in printed)\n"
    "        gc.collect() if {quick} else None\n"
    "    took = time.perf_counter() - begin\n"
    "print(1000 * took / pages)"
)


class Cost(NamedTuple):
    """What a command took: seconds on the clock and of processors, MB of its largest process."""

    wall: float
    cpu: float
    memory: float


def ran(words: Sequence[str], **more: str) -> Cost:
    """Run to its end, with the exit code of troubles allowed; what Python makes of its files it keeps, as installed."""
    kept = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    begin, before = time.perf_counter(), os.times()
    run = subprocess.Popen([sys.executable, *words], cwd=ROOT, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, env=kept | more)  # fmt: skip # noqa: E501
    _, _, used = os.wait4(run.pid, 0)
    after = os.times()
    cpu = after.children_user + after.children_system - before.children_user - before.children_system
    return Cost(time.perf_counter() - begin, cpu, used.ru_maxrss / 1024)


def library(root: Path, many: int) -> None:
    """So many designs: those of the demonstration by turns, with a name and title of their own, by seed."""
    shutil.copytree(ROOT / "themes", root / "themes")
    projects = root / "projects"
    shutil.copytree(ROOT / "projects", projects)
    models = [path.parent for path in sorted(projects.glob("*/project.yaml"))]
    texts = {path: (path / "project.yaml").read_text("utf-8") for path in models}
    dice = random.Random(1)  # noqa: S311 - the same library every time
    for nth in range(many):
        model = models[nth % len(models)]
        folder = projects / f"{model.name}-{nth + 1}"
        shutil.copytree(model, folder, ignore=shutil.ignore_patterns("ledger"))
        word = "".join(dice.choices("abdefghiklmnoprstu", k=7))
        text = TITLE.sub(rf"\g<0> {word} {nth + 1}", texts[model], count=1)
        (folder / "project.yaml").write_text(text, "utf-8")
    for path in models:
        shutil.rmtree(path)


def commands(many: int) -> Iterator[tuple[str, Cost]]:
    """Each command on a library of so many designs; of what is short the best of three."""
    with tempfile.TemporaryDirectory() as folder:
        root = Path(folder)
        library(root, many)
        here = ["--library", str(root)]
        run = ["-m", "sheetgen"] if many <= LAID_OUT else ["-c", STAND_IN]
        first, stock = min((root / "projects").glob("*/project.yaml")), root / "projects/stock/clays.yaml"
        if many > PUBLISHED:
            laid_down(root, run, here)
        else:
            cold = "cold publish" if many <= LAID_OUT else "cold publish, no sheet laid out"
            yield cold, ran([*run, "publish", *here])
        yield "nothing has changed", best(["-m", "sheetgen", "publish", *here])
        yield "check, all as published", best(["-m", "sheetgen", "check", *here])
        in_a_step(first)
        yield "check, one word of one step", ran(["-m", "sheetgen", "check", *here])
        yield "one word of one step", ran([*run, "publish", *here])
        edited(first, "summary: ", "summary: Now ")
        yield "one word of a card", ran([*run, "publish", *here])
        edited(stock, "clays:", "# looked over\nclays:")
        yield "a remark in the stock", ran([*run, "publish", *here])
        edited(stock, "price: ", "price: 1")
        yield "the price of a clay", ran([*run, "publish", *here])
        yield "figures of one design", best(["-m", "sheetgen", "figures", first.parent.name, *here])
        shutil.rmtree(root / "build")
        yield "check, never published", ran(["-m", "sheetgen", "check", *here])


def in_a_step(path: Path) -> None:
    """Another word in the first step that has it."""
    head, begins, steps = path.read_text("utf-8").partition("\nsteps:\n")
    path.write_text(head + begins + steps.replace(" the ", " that ", 1), "utf-8")


def edited(path: Path, old: str, new: str) -> None:
    path.write_text(path.read_text("utf-8").replace(old, new, 1), "utf-8")


def laid_down(root: Path, run: Sequence[str], here: Sequence[str]) -> None:
    """Let a large library stand as if it had been published: the first design of each model is, the others are copies.

    What is in their pages is the first one's; how much is hashed, compared and read is as if it were theirs.
    """
    projects, build = root / "projects", root / "build"
    names = [path.parent.name for path in sorted(projects.glob("*/project.yaml"))]
    first: dict[str, str] = {}
    for name in names:
        first.setdefault(name.rpartition("-")[0], name)
    ran([*run, "publish", *first.values(), *here])
    record = read_record(build)
    printer, shared = printer_key(), shared_key(root)
    for name in names:
        source = first[name.rpartition("-")[0]]
        if name == source:
            continue
        for place in (build, ours_of(build)):
            if (place / source).is_dir():
                shutil.copytree(place / source, place / name)
        of_source = f'"{source}/'
        told = json.loads(json.dumps(record["projects"][source]).replace(of_source, f'"{name}/'))
        [title] = TITLE.findall((projects / name / "project.yaml").read_text("utf-8"))
        told["entry"] |= {"name": name, "title": title}
        told["key"] = joined(printer, shared, own_key(projects / name), ledger_key(projects / name))
        for whose, place in (("files", build), ("ours", ours_of(build))):
            told[whose] = {path: stamp_of(place / path, (place / path).read_bytes()) for path in told[whose]}
        record["projects"][name] = told
    record["index"] = {}
    (build / RECORD).write_bytes(record_text(record))
    ran([*run, "publish", *here])  # the library's own pages


def best(words: Sequence[str]) -> Cost:
    return min(ran(words) for _ in range(TIMES))


def a_page() -> list[tuple[str, float]]:
    """Milliseconds of the clock a page: the library's own printing, ours, Chromium's."""
    jobs = jobs_of(DESIGNS)
    return [
        ("WeasyPrint as it is, a paper a layout", plainly(jobs)),
        (
            "our printer, both papers of one layout",
            warm([replace(job, htmls=job.htmls[:1]) for job in jobs], quick=True),
        ),
        ("our printer, every way of setting a sheet tried", warm(jobs, quick=True)),
        ("warm Chromium, tagged", chromium(jobs)),
    ]


def jobs_of(designs: Sequence[str]) -> list[Job]:
    """The handouts, cards and teacher's sheets of the main versions."""
    kept: list[Job] = []

    class Keeps:
        def printed(self, jobs: Sequence[Job]) -> list[list[Printout]]:
            if any(job.pixels for job in jobs):  # a preview comes before the sheets, and is none
                return []
            kept.extend(jobs)
            raise StopIteration

        @staticmethod
        def made(_name: str, _of: str, _make: Callable[[], Sequence[Page]]) -> list[Page]:
            return []

    for worked in pipeline.work_through(ROOT, designs).worked:
        try:
            through(pipeline.pages_of(worked, Theme(pipeline.THEME, [ROOT / "themes"]), Keeps()))
        except (StopIteration, RuntimeError):
            continue
    return kept


def plainly(jobs: Sequence[Job]) -> float:
    """The first way of each sheet, laid out and written for each paper by itself, in a warm loop."""
    import weasyprint  # noqa: PLC0415 - heavy

    from sheetgen.render.pdf import FONTS, Printer  # noqa: PLC0415

    printer = Printer()
    took = []
    for _ in range(2):
        begin, pages = time.perf_counter(), 0
        for job in jobs:
            for paper in job.papers:
                html = job.htmls[0].replace("</head>", f"<style>{paper.css}</style></head>", 1)
                page = weasyprint.HTML(string=html, base_url=FONTS, url_fetcher=printer.fetcher)
                document = page.render(printer.fonts, stylesheets=[printer.faces], pdf_variant="pdf/ua-1")
                document.write_pdf(pdf_variant="pdf/ua-1")
                pages += len(document.pages)
        took.append(1000 * (time.perf_counter() - begin) / pages)
    return took[-1]


def warm(jobs: Sequence[Job], *, quick: bool) -> float:
    import pickle  # noqa: PLC0415

    told = ("" if quick else PLAIN) + WARM.format(quick=quick)
    run = subprocess.run([sys.executable, "-c", told], input=pickle.dumps(jobs), capture_output=True, check=True, cwd=ROOT)  # fmt: skip # noqa: E501
    return float(run.stdout)


def chromium(jobs: Sequence[Job]) -> float:
    """The first way of each sheet, for each paper, in one page of a browser that is there already."""
    with sync_playwright() as started:
        browser = started.chromium.launch(executable_path=shutil.which("chromium"), args=["--no-sandbox"])
        page = browser.new_page()
        took = []
        for _ in range(2):
            begin, pages = time.perf_counter(), 0
            for job in jobs:
                for paper in job.papers:
                    page.set_content(job.htmls[0].replace("</head>", f"<style>{paper.css}</style></head>", 1))
                    pages += page.pdf(prefer_css_page_size=True, tagged=True).count(b"/Type /Page\n")
            took.append(1000 * (time.perf_counter() - begin) / pages)
        browser.close()
    return took[-1]


def main(sizes: Sequence[int]) -> None:
    """Print both tables."""
    for label, each in a_page():
        sys.stdout.write(f"{label:48} {each:8.1f} ms a page\n")
    for many in sizes:
        sys.stdout.write(f"\n{many} designs {'':34} wall s    CPU s       MB\n")
        for label, cost in commands(many):
            sys.stdout.write(f"  {label:40} {cost.wall:8.2f} {cost.cpu:8.2f} {cost.memory:8.0f}\n")
            sys.stdout.flush()


if __name__ == "__main__":
    main([int(one) for one in sys.argv[1:]] or [10])
