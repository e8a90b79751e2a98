"""Processes that print, and the queue that they are fed from: one that dies or takes too long loses one sheet."""

from __future__ import annotations

import itertools
import queue
import threading
from concurrent.futures import Future, InvalidStateError
from contextlib import suppress
from typing import TYPE_CHECKING, Any, NamedTuple

from sheetgen.base.trouble import CannotBe
from sheetgen.render.process import PROGRAM, Gone, Process
from sheetgen.render.worker import MEND, Limits

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.render.worker import Ask

TRIES = 3  # to begin a process, before it is given up


class _Asked(NamedTuple):
    """What is asked for, by its place in the queue: the round that it was asked in, the largest of a round first."""

    turn: int
    small: int
    number: int
    ask: Ask | None
    came: Future[Any]


AT_ONCE = -1  # the turn of what ends a hand


class Crew:
    """So many processes, each begun when there is work for it; the first one at once."""

    def __init__(self, many: int, limits: Limits | None = None, program: str = PROGRAM) -> None:
        self.many, self.limits, self.program = many, limits or Limits(), program
        self.asked: queue.PriorityQueue[_Asked] = queue.PriorityQueue()
        self.turns, self.numbers = itertools.count(), itertools.count()
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
        [came] = self.ask_all([ask])
        return came

    def ask_all(self, asks: Sequence[Ask]) -> list[Future[Any]]:
        """Put several into the queue, behind what was asked for before; of these the largest are done first."""
        turn = next(self.turns)
        return [self._put(_Asked(turn, -one.letters, next(self.numbers), one, Future())) for one in asks]

    def _put(self, asked: _Asked) -> Future[Any]:
        self.asked.put(asked)
        if self.asked.qsize() > self.free and len(self.hands) < self.many:
            self._another()
        return asked.came

    def end(self) -> None:
        """End all processes at once; what is still asked for never comes."""
        with self.lock:
            self.ended = True
            for process in self.processes:
                process.process.kill()
        for _ in self.hands:
            self.asked.put(_Asked(AT_ONCE, 0, next(self.numbers), None, Future()))
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
            if asked.ask is None:
                break
            if not asked.came.set_running_or_notify_cancel():
                continue
            if process is None:
                asked.came.set_exception(fault or RuntimeError("no process to print"))
                continue
            process = self._settled(asked.ask, asked.came, process)
        if process is not None:
            self._end(process)

    def _settled(self, ask: Ask, came: Future[Any], process: Process) -> Process | None:
        """Have it done, a second time by a fresh process if the first dies of it; the process that lives on, if any."""
        ends: list[str] = []
        while len(ends) < 2 and not self.ended:  # noqa: PLR2004 - once, and once more
            try:
                answer = process.answer(ask)
            except Gone as gone:
                ends.append(str(gone))
                self._end(process)
                try:
                    process = self._begun()
                except Exception as fault:  # noqa: BLE001 - told to whoever waits
                    came.set_exception(fault)
                    return None
                continue
            except Exception as fault:  # noqa: BLE001 - what cannot be sent or understood
                self._end(process)
                came.set_exception(fault)
                return None
            if answer.fault is not None:
                came.set_exception(answer.fault)
            else:
                came.set_result(answer.came)
            if answer.spent:
                self._end(process)
            return None if answer.spent else process
        told = " and then ".join(dict.fromkeys(ends))
        came.set_exception(CannotBe(f"{ask.called} was tried twice and not printed: its printer {told}", MEND))
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
