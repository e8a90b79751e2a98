"""Second opinions from outside: the program `units`."""

from __future__ import annotations

import shutil
import subprocess
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from collections.abc import Callable


@pytest.fixture(scope="session")
def gnu_units() -> Callable[[str, str], float]:
    """What GNU Units converts one expression to."""
    program = shutil.which("units")
    if not program:
        pytest.skip("GNU Units is not installed")

    def convert(have: str, want: str) -> float:
        done = subprocess.run(
            [program, "-t", "-o", "%.12g", have, want], capture_output=True, text=True, check=True, timeout=20
        )
        return float(done.stdout.strip())

    return convert
