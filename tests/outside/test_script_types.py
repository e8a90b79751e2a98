"""The types of the script, as its remarks say them, by the TypeScript compiler."""

from __future__ import annotations

import shutil
import subprocess

import pytest

from sheetgen.render.script import FINDS, ORDER, SOURCES, WORKER

STRICT = ["--checkJs", "--allowJs", "--noEmit", "--strict", "--target", "es2019"]


@pytest.mark.parametrize(
    ("names", "runs"), [(ORDER, "dom,dom.iterable"), (FINDS, "dom,dom.iterable"), ((WORKER,), "webworker")]
)
def test_the_compiler_has_nothing_to_say(names: tuple[str, ...], runs: str) -> None:
    compiler = shutil.which("tsc")
    assert compiler, "install the TypeScript compiler: apt-get install node-typescript"
    command = [compiler, *STRICT, "--lib", f"es2019,{runs}", *(str(SOURCES / name) for name in names)]
    done = subprocess.run(command, capture_output=True, text=True, check=False, timeout=60)
    assert (done.stdout, done.returncode) == ("", 0), done.stdout


def test_every_source_is_part_of_the_script_or_is_the_worker() -> None:
    assert {path.name for path in SOURCES.glob("*.js")} == {*ORDER, *FINDS, WORKER}
