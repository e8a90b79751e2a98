"""What a file holds that anybody may have laid there: of a plain one its bytes, of anything else nothing."""

from __future__ import annotations

import os
import stat
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from pathlib import Path

_HOW = os.O_RDONLY | os.O_NOFOLLOW | os.O_NONBLOCK  # a pipe that nobody writes into would be waited for without end


def held_in(path: str | Path, most: int) -> bytes | None:
    """What a plain file of so many bytes at most holds; None of a link, a pipe, a device, and where none can be read.

    It is looked at once it is open: nobody can lay another in its place between the look and the reading.
    """
    try:
        with os.fdopen(os.open(path, _HOW), "rb") as file:
            told = os.fstat(file.fileno())
            whole = stat.S_ISREG(told.st_mode) and told.st_size <= most
            return file.read(told.st_size) if whole else None  # room is made for what is asked for
    except (OSError, ValueError):  # ValueError: a name that no file can have
        return None
