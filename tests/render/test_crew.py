"""A process that prints may die, hang or eat: it costs one sheet, never the run."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from contextlib import contextmanager
from pathlib import Path
from pickle import UnpicklingError
from typing import TYPE_CHECKING

import pytest

from sheetgen.base.trouble import CannotBe
from sheetgen.render.crew import Crew
from sheetgen.render.job import one_page
from sheetgen.render.pdf_pool import PdfPool
from sheetgen.render.worker import Ask, Limits

if TYPE_CHECKING:
    from collections.abc import Iterator

ROOT = Path(__file__).parents[2]
STAND_IN = """
import os, signal, tempfile, time
from pathlib import Path
from sheetgen.render.worker import serves
class Maker:
    def pieces(self, page):
        word, _, rest = page.partition(" ")
        if word == "hang":
            time.sleep(600)
        elif word == "turn":
            while True:
                pass
        elif word == "eat":
            return len(bytearray(3 * 2**30))
        elif word == "die":
            os.kill(os.getpid(), getattr(signal, rest))
        elif word == "once" and not Path(rest).exists():
            Path(rest).touch()
            os._exit(3)
        elif word == "wrong":
            raise ValueError("an odd page")
        elif word == "lay":
            return tempfile.mkdtemp()
        elif word == "who":
            return os.getpid()
        return page.upper()
serves(door, Maker)
"""
TIGHT = Limits(least=1, more=0, most=1, clock=60, memory=1024)


@contextmanager
def crew(many: int = 2, limits: Limits = TIGHT, program: str = STAND_IN) -> Iterator[Crew]:
    made = Crew(many, limits, program)
    try:
        yield made
    finally:
        made.end()


def page(words: str) -> Ask:
    return Ask("pieces", words, "drops/handout-a4.pdf")


def gone(pid: int) -> bool:
    """Whether a process has ended: it is not there, or its end only waits to be noticed."""
    try:
        return Path(f"/proc/{pid}/stat").read_text("utf-8").rpartition(")")[2].split()[0] == "Z"
    except OSError:
        return True


@pytest.mark.parametrize(
    ("does", "told", "clock"),
    [
        ("die SIGKILL", "was killed, as a machine does that runs out of memory", 60),
        ("die SIGSEGV", r"ended by itself \(SIGSEGV\)", 60),
        ("turn", "took more than 1 s of a processor", 60),
        ("hang", "was not done after 3 s", 3),
        ("eat", "wanted more than 1024 MiB of memory", 60),
    ],
)
def test_a_sheet_that_its_printer_dies_of_is_told_and_all_others_are_printed(does: str, told: str, clock: int) -> None:
    with crew(limits=TIGHT._replace(clock=clock)) as printers:
        came = [printers.ask(page(words)) for words in ("one", "two", does, "three", "four", "five")]
        assert [one.result(30) for one in (*came[:2], *came[3:])] == ["ONE", "TWO", "THREE", "FOUR", "FIVE"]
        with pytest.raises(
            CannotBe, match=rf"drops/handout-a4.pdf was tried twice and not printed: its printer {told}"
        ):
            came[2].result(30)


def test_a_sheet_whose_printer_was_killed_once_is_printed_by_the_next(tmp_path: Path) -> None:
    with crew(1) as printers:
        assert printers.ask(page(f"once {tmp_path / 'tried'}")).result(30).startswith("ONCE")
        assert printers.ask(page("after")).result(30) == "AFTER"


def test_a_printer_that_is_killed_while_nothing_is_printed_costs_nothing() -> None:
    with crew(1) as printers:
        pid = printers.ask(page("who")).result(30)
        os.kill(pid, signal.SIGKILL)
        assert printers.ask(page("who")).result(30) != pid


def test_what_goes_wrong_on_a_page_is_raised_to_who_asked_and_is_not_tried_again() -> None:
    with crew(1) as printers:
        pid = printers.ask(page("who")).result(30)
        with pytest.raises(ValueError, match="an odd page") as told:
            printers.ask(page("wrong")).result(30)
        assert "in pieces" in "".join(told.value.__notes__)
        assert printers.ask(page("who")).result(30) == pid


def test_a_printer_that_has_grown_is_renewed_and_one_that_has_not_stays() -> None:
    with crew(1) as printers:
        assert len({printers.ask(page("who")).result(30) for _ in range(3)}) == 1
    with crew(1, TIGHT._replace(kept=1)) as printers:
        assert len({printers.ask(page("who")).result(30) for _ in range(3)}) == 3


def test_of_what_is_asked_for_together_the_largest_is_printed_first_and_what_was_asked_before_goes_before_it() -> None:
    done: list[str] = []
    with crew(1) as printers:  # it takes its time to begin: until then all are asked
        rounds = [printers.ask_all([page(words) for words in each]) for each in (["a", "long", "mid"], ["the longest"])]
        for came in (one for each in rounds for one in each):
            came.add_done_callback(lambda one: done.append(one.result()))
        for came in rounds[-1]:
            came.result(30)
    assert done == ["LONG", "MID", "A", "THE LONGEST"]


def test_a_long_list_may_take_longer_than_a_card() -> None:
    limits = Limits()
    assert limits.seconds(1_000) < limits.seconds(1_000_000) < limits.seconds(10**9) == limits.most


def test_all_printers_end_at_once_with_the_run_whatever_they_do() -> None:
    with crew(2, Limits()) as printers:
        [first, second] = [printers.ask(page("who")) for _ in range(2)]
        pids = {first.result(30), second.result(30)}
        for _ in range(4):
            printers.ask(page("hang"))
        time.sleep(0.3)
        before = time.monotonic()
        printers.end()
        assert time.monotonic() - before < 3
    assert all(map(gone, pids))


def test_what_a_printer_lays_aside_goes_with_it_also_where_it_dies(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Type faces are laid aside as files, some megabytes a printer."""
    monkeypatch.setattr("tempfile.tempdir", str(tmp_path))
    with crew(1) as printers:
        for words in ("lay", "die SIGKILL", "lay"):
            came = printers.ask(page(words))
            assert came.exception(30) if words.startswith("die") else Path(came.result(30)).is_dir()
        assert list(tmp_path.rglob("*"))
    assert not list(tmp_path.rglob("*"))


def test_printers_do_not_outlive_a_run_that_is_killed() -> None:
    program = (
        "from sheetgen.render.crew import Crew; from sheetgen.render.worker import Ask\n"
        f"crew = Crew(1, program={STAND_IN!r})\n"
        "print(crew.ask(Ask('pieces', 'who', 'x')).result(), flush=True)\n"
        "crew.ask(Ask('pieces', 'hang', 'x')).result()"
    )
    with subprocess.Popen([sys.executable, "-c", program], cwd=ROOT, stdout=subprocess.PIPE, text=True) as run:
        assert run.stdout is not None
        pid = int(run.stdout.readline())
        time.sleep(0.2)
        run.kill()
    until = time.monotonic() + 10
    while not gone(pid) and time.monotonic() < until:
        time.sleep(0.1)
    assert gone(pid)


@pytest.mark.parametrize(
    ("program", "told"),
    [
        ("import a_module_that_there_is_not", "cannot be begun"),
        ("\nraise SystemExit(3)", "code 3"),
        ("door.send_bytes(b'no answer'); door.recv(); door.recv()", "invalid load key"),
    ],
)
def test_where_no_printer_can_be_begun_it_is_said_and_nobody_waits_for_ever(program: str, told: str) -> None:
    with crew(2, program=program) as printers:
        with pytest.raises((RuntimeError, UnpicklingError), match=told):
            printers.ready()
        for asked in [printers.ask(page("one")) for _ in range(3)]:
            with pytest.raises((RuntimeError, UnpicklingError), match=told):
                asked.result(30)


def test_a_page_that_is_nested_without_end_is_told_of_its_sheet() -> None:
    html = f"<!doctype html><html lang='en'><head><title>x</title></head><body>{'<div>' * 3000}x"
    with PdfPool(1) as pool, pytest.raises(CannotBe, match="card cannot be laid out: its elements lie too deep"):
        list(pool.printed([one_page(html, "card")]))


def test_real_printers_that_are_killed_at_work_leave_the_same_bytes() -> None:
    html = "<!doctype html><html lang='en'><head><meta charset='utf-8'><title>x</title></head><body>{}</body></html>"
    jobs = [one_page(html.format(f"<p>Ring {n}, bent.</p>" * 100), f"ring-{n}") for n in range(6)]
    with PdfPool(2) as pool:
        undisturbed = list(pool.printed(jobs))
    with PdfPool(2) as pool:
        came = pool.printed(jobs)
        pool.ready()
        for process in [*pool.crew.processes]:
            process.process.kill()
        assert list(came) == undisturbed
