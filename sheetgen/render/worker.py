"""A process that prints: a sheet in, its bytes or what went wrong out, within limits of memory and time.

What passes between is plain and can be pickled, and a process asks nothing of whoever began it: what hands sheets out
need not be on the same machine.
"""

from __future__ import annotations

import gc
import math
import os
import pickle
import threading
import time
import traceback
from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING, Any, Literal, NamedTuple

from sheetgen.base.trouble import CannotBe
from sheetgen.facts.press import CLOCK, LETTERS_SECONDS, MEMORY_KEPT, MEMORY_MOST, MOST_SECONDS, SHEET_SECONDS

if TYPE_CHECKING:
    from collections.abc import Callable
    from multiprocessing.connection import Connection

    from sheetgen.render.job import Job

MEND = "a picture or a template that asks too much of the printer is the likely cause: leave them out one by one"
OUT_OF_MEMORY = 71
"""How a process ends that may not have more memory: none of Python's own codes."""
MIB = 2**20


class Ask(NamedTuple):
    """What is to be printed: a `Job`, or a page of pieces; `called` is how whoever waits for it is told of it."""

    how: Literal["printed", "pieces"]
    of: Job | str
    called: str

    @property
    def letters(self) -> int:
        """How much there is to be laid out."""
        return len(self.of) if isinstance(self.of, str) else sum(map(len, self.of.htmls))


class Answer(NamedTuple):
    """What came of it, or the fault that came instead; `spent`: the process has grown large, and has ended."""

    came: Any = None
    fault: Exception | None = None
    spent: bool = False


class Limits(NamedTuple):
    """What one sheet may take: seconds of a processor, by the clock so many times that, MiB of memory.

    A process that has grown beyond `kept` MiB ends after its sheet, and another goes on.
    """

    least: float = float(SHEET_SECONDS)
    more: float = float(LETTERS_SECONDS)
    most: float = float(MOST_SECONDS)
    clock: float = float(CLOCK)
    memory: int = int(MEMORY_MOST)
    kept: int = int(MEMORY_KEPT)

    def seconds(self, letters: int) -> float:
        """Of a processor, for a sheet of so many letters."""
        return min(self.most, self.least + self.more * letters / 100_000)


def prints(door: Connection) -> None:
    """What a process does that prints sheets."""
    from sheetgen.render.pdf import Printer  # noqa: PLC0415 - heavy, and nowhere else than in such a process

    serves(door, Printer)


def serves(door: Connection, made: Callable[[], Any]) -> None:
    """Answer what comes through the door with what is `made` first, until it is shut; then end, whatever goes on."""
    limits: Limits = door.recv()
    _watch_who_began_it()
    _bound(limits)
    try:
        maker = made()
    except Exception as fault:  # noqa: BLE001 - told to who waits for this process
        door.send(Answer(fault=_portable(fault)))
        return
    gc.disable()  # a layout is made of rings that all live until it is printed: to look through them is in vain
    gc.freeze()
    try:
        door.send(answer := Answer())
        while not answer.spent:
            answer = _answer(maker, door.recv(), limits)
            door.send(answer)
    except MemoryError:
        os._exit(OUT_OF_MEMORY)
    except (EOFError, BrokenPipeError, ConnectionResetError):  # the door is shut
        pass
    os._exit(0)  # not by and by: what frees its fonts would be gone before them


def _answer(maker: Any, ask: Ask, limits: Limits) -> Answer:  # noqa: ANN401 - a Printer, or what stands in for one
    _bound_time(limits.seconds(ask.letters))
    came: Any = None
    fault: Exception | None = None
    try:
        came = getattr(maker, ask.how)(ask.of)
    except MemoryError:
        raise
    except RecursionError:
        fault = CannotBe(f"{ask.called} cannot be laid out: its elements lie too deep in each other", MEND)
    except Exception as wrong:  # noqa: BLE001 - raised again where it is waited for
        fault = _portable(wrong)
    gc.collect()
    return Answer(came, fault, _memory() > limits.kept * MIB)


def _portable(fault: Exception) -> Exception:
    """A fault that can be sent, with where it comes from."""
    fault.add_note(traceback.format_exc())
    try:
        pickle.loads(pickle.dumps(fault))  # noqa: S301 - our own
    except Exception:  # noqa: BLE001 - whatever it is made of
        return RuntimeError(f"{type(fault).__name__}: {fault}")
    return fault


def _watch_who_began_it() -> None:
    """End when who began it has ended, however that was, also in the midst of a sheet."""
    began = os.getppid()

    def watch() -> None:
        while os.getppid() == began:
            time.sleep(1)
        os._exit(1)

    threading.Thread(target=watch, daemon=True).start()


def _bound(limits: Limits) -> None:
    """No more memory than that, and no picture of it on the disk when it dies; where the system has such limits."""
    with suppress(ImportError, ValueError, OSError):
        import resource  # noqa: PLC0415 - not every system has it

        resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
        _, hard = resource.getrlimit(resource.RLIMIT_AS)
        most = limits.memory * MIB
        resource.setrlimit(resource.RLIMIT_AS, (most if hard == resource.RLIM_INFINITY else min(most, hard), hard))


def _bound_time(seconds: float) -> None:
    """From now on so many seconds of a processor, and then the system ends it."""
    with suppress(ImportError, ValueError, OSError):
        import resource  # noqa: PLC0415 - as above

        _, hard = resource.getrlimit(resource.RLIMIT_CPU)
        until = math.ceil(time.process_time() + seconds)
        resource.setrlimit(resource.RLIMIT_CPU, (until if hard == resource.RLIM_INFINITY else min(until, hard), hard))


def _memory() -> int:
    """Bytes that this process keeps; none where the system does not say so."""
    try:
        pages = int(Path("/proc/self/statm").read_text("ascii").split()[1])
        return pages * os.sysconf("SC_PAGE_SIZE")
    except (OSError, ValueError, IndexError):
        return 0
