"""One run at a time in a folder: who comes second waits a little, and else is told."""

from __future__ import annotations

import errno
import os
import time
from contextlib import contextmanager
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

LOCK = ".lock"
"""The empty file that a run locks in its folder, and takes out when it ends."""
WAIT, LOOK_AGAIN = 10.0, 0.1
"""How long a second run waits, and after what time it looks again, s."""


@contextmanager
def alone(folder: Path) -> Iterator[bool]:
    """Be the only run that holds a folder, which is there already, until the block ends.

    Yields whether no lock was there: no other run was at work just before, and none was killed.

    The system holds the lock for the open file (`flock`, on Linux and macOS) and lets it go with the process: a run
    that is killed leaves an empty file and keeps nobody out. It binds those alone that ask for it, which a spreadsheet
    program does not; what is replaced must still be held against what was read.

    OSError with a sentence for a person where another run holds the folder for longer than `WAIT`, where this Python
    has no `fcntl`, or where the disk has no locks; the block has not begun then.
    """
    until, free = time.monotonic() + WAIT, True
    while (held := _held(folder / LOCK)) is None:
        free = False
        if time.monotonic() >= until:
            raise OSError(errno.EBUSY, "another run is at work there; start this one again when it has ended")
        time.sleep(LOOK_AGAIN)
    opened, new = held
    try:
        yield free and new
    finally:
        (folder / LOCK).unlink(missing_ok=True)  # before it is let go: afterwards it may be another's
        os.close(opened)


def _held(path: Path) -> tuple[int, bool] | None:
    """The open lock, which is ours, and whether it was not there; None where it is another's."""
    try:
        import fcntl  # noqa: PLC0415 - not every system has it
    except ImportError:
        told = "this system has no file locks (fcntl), and of two runs at once one would write over the other"
        raise OSError(errno.ENOSYS, told) from None
    if path.is_symlink():
        raise OSError(errno.ELOOP, f"its {path.name} is a link, and it is locked itself or not at all: take it out")
    how, new = os.O_RDWR | os.O_CREAT | os.O_NOFOLLOW, True
    try:
        opened = os.open(path, how | os.O_EXCL, 0o600)
    except FileExistsError:
        opened, new = os.open(path, how, 0o600), False
    try:
        fcntl.flock(opened, fcntl.LOCK_EX | fcntl.LOCK_NB)
        if os.path.samestat(os.fstat(opened), path.lstat()):
            return opened, new
    except (BlockingIOError, FileNotFoundError):
        pass
    except OSError:
        os.close(opened)
        raise
    os.close(opened)  # another's; or ours, of a file that its last holder took out meanwhile
    return None
