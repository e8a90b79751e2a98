"""Processes that print, and the queue that they are fed from: one that dies or takes too long loses one sheet."""

from __future__ import annotations

import queue
import signal
import subprocess
import sys
import threading
from concurrent.futures import Future, InvalidStateError
from contextlib import suppress
from multiprocessing import Pipe
from typing import TYPE_CHECKING, Any, NamedTuple

from sheetgen.base.trouble import CannotBe
from sheetgen.render.worker import OUT_OF_MEMORY, Answer, Limits

if TYPE_CHECKING:
    from sheetgen.render.worker import Ask

PROGRAM = "from sheetgen.render.worker import prints; prints(door)"
"""What a process does, once it finds our modules."""
BEGIN = (
    "import sys; from multiprocessing.connection import Connection; door = Connection(int(sys.argv[1]));"
    " sys.path[:] = door.recv(); "
)
ENDING = 2.0  # s
TRIES = 3  # to begin a process, before it is given up
MEND = "a picture or a template that asks too much of the printer is the likely cause: leave them out one by one"


class Gone(Exception):
    """A process ended where it should have answered; the message says how."""


class _Process:
    """One process, and the door to it."""

    def __init__(self, program: str, limits: Limits) -> None:
        ours, theirs = Pipe()
        self.door, self.late, self.limits = ours, False, limits
        words = [sys.executable, "-P", "-c", BEGIN + program, str(theirs.fileno())]
        with theirs:
            # In a session of its own: who presses Ctrl-C speaks to us alone, and we end it.
            self.process = subprocess.Popen(  # noqa: S603 - our own program
                words,
                stdin=subprocess.DEVNULL,
                stdout=subprocess.DEVNULL,
                pass_fds=[theirs.fileno()],
                start_new_session=True,
            )

    def begun(self) -> Exception | None:
        """Wait until it is ready; the fault where it cannot be. Gone where it has died."""
        return self._said(self.limits.least, sys.path, self.limits).fault

    def answer(self, ask: Ask) -> Answer:
        """Wait for its answer. Gone where there is none in time."""
        return self._said(self.limits.seconds(ask.letters), ask)

    def _said(self, seconds: float, *told: Any) -> Answer:  # noqa: ANN401 - what can be pickled
        watchdog = threading.Timer(seconds * self.limits.clock, self._is_late)
        watchdog.daemon = True
        watchdog.start()
        try:
            for one in told:
                self.door.send(one)
            said: Answer = self.door.recv()
        except (EOFError, OSError):
            with suppress(subprocess.TimeoutExpired):
                self.process.wait(ENDING)  # who shuts the door is about to end, and has said how
            self.end()
            raise Gone(self._how_it_ended(seconds)) from None
        finally:
            watchdog.cancel()
        return said

    def _is_late(self) -> None:
        self.late = True
        self.process.kill()

    def end(self) -> None:
        """End it at once."""
        self.process.kill()
        self.process.wait()
        self.door.close()

    def _how_it_ended(self, seconds: float) -> str:
        code = self.process.returncode
        if self.late:
            return f"was not done after {seconds * self.limits.clock:.0f} s"
        if code == -signal.SIGXCPU:
            return f"took more than {seconds:.0f} s of a processor"
        if code == OUT_OF_MEMORY:
            return f"wanted more than {self.limits.memory} MiB of memory"
        if code == -signal.SIGKILL:
            return "was killed, as a machine does that runs out of memory"
        return f"ended by itself ({signal.Signals(-code).name if code < 0 else f'code {code}'})"


class _Asked(NamedTuple):
    ask: Ask
    came: Future[Any]


class Crew:
    """So many processes, each begun when there is work for it; the first one at once."""

    def __init__(self, many: int, limits: Limits | None = None, program: str = PROGRAM) -> None:
        self.many, self.limits, self.program = many, limits or Limits(), program
        self.asked: queue.SimpleQueue[_Asked | None] = queue.SimpleQueue()
        self.first: Future[None] = Future()  # the first process is ready
        self.hands: list[threading.Thread] = []
        self.processes: set[_Process] = set()
        self.lock, self.ended, self.free = threading.Lock(), False, 0
        self._another()

    def ready(self) -> None:
        """Wait for the first process. Raises what keeps it from work."""
        self.first.result()

    def ask(self, ask: Ask) -> Future[Any]:
        """Put it into the queue. What comes raises CannotBe where it cannot be printed, and what it met else."""
        came: Future[Any] = Future()
        self.asked.put(_Asked(ask, came))
        if self.asked.qsize() > self.free and len(self.hands) < self.many:
            self._another()
        return came

    def end(self) -> None:
        """End all processes at once; what is still asked for never comes."""
        with self.lock:
            self.ended = True
            for process in self.processes:
                process.process.kill()
        for _ in self.hands:
            self.asked.put(None)
        for hand in self.hands:
            hand.join()

    def _another(self) -> None:
        hand = threading.Thread(target=self._hand, daemon=True)
        self.hands.append(hand)
        hand.start()

    def _hand(self) -> None:
        """Feed one process after the other until there is no more."""
        process: _Process | None = None
        fault: Exception | None = None
        while not self.ended:
            try:
                process = process or self._begun()
            except Exception as wrong:  # noqa: BLE001 - told to whoever waits
                fault = wrong
                if self.processes:  # others go on
                    return
            with self.lock:
                self.free += 1
            asked = self.asked.get()
            with self.lock:
                self.free -= 1
            if asked is None:
                break
            if not asked.came.set_running_or_notify_cancel():
                continue
            if process is None:
                asked.came.set_exception(fault or RuntimeError("no process to print"))
                continue
            process = self._settled(asked, process)
        if process is not None:
            self._end(process)

    def _settled(self, asked: _Asked, process: _Process) -> _Process | None:
        """Have it done, a second time by a fresh process if the first dies of it; the process that lives on, if any."""
        ends: list[str] = []
        while len(ends) < 2 and not self.ended:  # noqa: PLR2004 - once, and once more
            try:
                answer = process.answer(asked.ask)
            except Gone as gone:
                ends.append(str(gone))
                self._end(process)
                try:
                    process = self._begun()
                except Exception as fault:  # noqa: BLE001 - told to whoever waits
                    asked.came.set_exception(fault)
                    return None
                continue
            except Exception as fault:  # noqa: BLE001 - what cannot be sent or understood
                self._end(process)
                asked.came.set_exception(fault)
                return None
            if answer.fault is not None:
                asked.came.set_exception(answer.fault)
            else:
                asked.came.set_result(answer.came)
            if answer.spent:
                self._end(process)
            return None if answer.spent else process
        told = " and then ".join(dict.fromkeys(ends))
        asked.came.set_exception(
            CannotBe(f"{asked.ask.called} was tried twice and not printed: its printer {told}", MEND)
        )
        return process

    def _begun(self) -> _Process:
        """A process that is ready. Raises what keeps it from work."""
        fault: Exception = Gone("the run has ended")
        tries = 0
        while tries < TRIES and not self.ended:
            tries += 1
            try:
                process = _Process(self.program, self.limits)
            except OSError as wrong:
                fault = RuntimeError(f"no process that prints can be begun: {wrong}")
                continue
            with self.lock:
                self.processes.add(process)
                if self.ended:
                    process.process.kill()
            try:
                unable = process.begun()
            except Gone as gone:
                unable, fault = None, RuntimeError(f"a process that prints cannot be begun: it {gone}")
            else:
                if unable is None:
                    with suppress(InvalidStateError):
                        self.first.set_result(None)
                    return process
            self._end(process)
            if unable is not None:
                fault = unable
                break
        with suppress(InvalidStateError):
            self.first.set_exception(fault)
        raise fault

    def _end(self, process: _Process) -> None:
        with self.lock:
            self.processes.discard(process)
        process.end()
