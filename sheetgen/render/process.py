"""One process that prints, seen from the run that began it: what it is asked, what it says, and how it ends."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import threading
from contextlib import suppress
from multiprocessing import Pipe
from tempfile import TemporaryDirectory
from typing import TYPE_CHECKING, Any

from sheetgen.render.worker import OUT_OF_MEMORY, Answer

if TYPE_CHECKING:
    from sheetgen.render.worker import Ask, Limits

PROGRAM = "from sheetgen.render.worker import prints; prints(door)"
"""What a process does, once it finds our modules."""
BEGIN = (
    "import sys; from multiprocessing.connection import Connection; door = Connection(int(sys.argv[1]));"
    " sys.path[:] = door.recv(); "
)
ENDING = 2.0  # s


class Gone(Exception):
    """A process ended where it should have answered; the message says how."""


class Process:
    """One process, and the door to it."""

    def __init__(self, program: str, limits: Limits) -> None:
        ours, theirs = Pipe()
        self.door, self.late, self.limits = ours, False, limits
        self.aside = TemporaryDirectory(prefix="sheetgen-", ignore_cleanup_errors=True)
        words = [sys.executable, "-P", "-c", BEGIN + program, str(theirs.fileno())]
        try:
            # In a session of its own: who presses Ctrl-C speaks to us alone, and we end it.
            self.process = subprocess.Popen(  # noqa: S603 - our own program
                words,
                stdin=subprocess.DEVNULL,
                stdout=subprocess.DEVNULL,
                pass_fds=[theirs.fileno()],
                start_new_session=True,
                env={**os.environ, "TMPDIR": self.aside.name},  # what it lays aside goes with it, however it ends
            )
        except OSError:
            self.aside.cleanup()
            raise
        finally:
            theirs.close()

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
        self.aside.cleanup()

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
