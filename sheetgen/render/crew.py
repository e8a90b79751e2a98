"""Processes that print, and the queue that they are fed from: one that dies or takes too long loses one sheet."""

from __future__ import annotations

import queue
import threading
from concurrent.futures import Future, InvalidStateError
from contextlib import suppress
from typing import TYPE_CHECKING, Any, NamedTuple

from sheetgen.base.trouble import CannotBe
from sheetgen.render.process import PROGRAM, Gone, Process
from sheetgen.render.worker import MEND, Limits

if TYPE_CHECKING:
    from sheetgen.render.worker import Ask

TRIES = 3  # to begin a process, before it is given up


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
        self.processes: set[Process] = set()
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
        process: Process | None = None
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

    def _settled(self, asked: _Asked, process: Process) -> Process | None:
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

    def _begun(self) -> Process:
        """A process that is ready. Raises what keeps it from work."""
        fault: Exception = Gone("the run has ended")
        tries = 0
        while tries < TRIES and not self.ended:
            tries += 1
            try:
                process = Process(self.program, self.limits)
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
                self._end(process)
                fault = RuntimeError(f"a process that prints cannot be begun: it {gone}")
                continue
            except Exception as odd:  # noqa: BLE001 - what cannot be understood
                unable = odd
            if unable is None:
                with suppress(InvalidStateError):
                    self.first.set_result(None)
                return process
            self._end(process)
            fault = unable
            break
        with suppress(InvalidStateError):
            self.first.set_exception(fault)
        raise fault

    def _end(self, process: Process) -> None:
        with self.lock:
            self.processes.discard(process)
        process.end()
