"""Whatever is in a picture's file: it is printed, or refused by `check` with a word of help, and nothing else."""

from __future__ import annotations

import importlib.util
import sys
from pathlib import Path
from typing import Any

import pytest

from sheetgen.base.trouble import CannotBe
from sheetgen.pictures.ready import ready

HERE = Path(__file__).parent
HONEST = sorted((HERE.parent / "honest" / "pictures").iterdir())
DRAWINGS, MUTANTS = 300, 500
PAGE = "<html lang=en><head><title>x</title></head><body><img alt=x style='width:100mm' src='{}'></body></html>"


@pytest.fixture(scope="module")
def invented() -> Any:
    """The module invented.py beside this file."""
    spec = importlib.util.spec_from_file_location("tests_pictures_invented", HERE / "invented.py")
    assert spec
    assert spec.loader
    module = importlib.util.module_from_spec(spec)
    sys.modules["tests_pictures_invented"] = module
    spec.loader.exec_module(module)
    return module


def tried(name: str, raw: bytes, printer: Any) -> bool:
    """Whether it is printed; if not, it says why and what helps."""
    try:
        made = ready(name, raw)
    except CannotBe as found:
        fault = found
    else:
        printer.pdf(PAGE.format(made.uri), "x")
        return True
    assert fault.message.startswith(f"'{name}' "), fault.message
    assert fault.help, fault.message
    return False


def test_what_may_stand_in_a_drawing_is_printed_without_a_murmur(
    invented: Any, printer: Any, capsys: pytest.CaptureFixture[str]
) -> None:
    printed = sum(tried("a.svg", invented.drawing(seed), printer) for seed in range(DRAWINGS))
    with capsys.disabled():
        print(f"\n{printed} of {DRAWINGS} invented drawings printed, the others refused")  # noqa: T201 - the figures
    assert printed > DRAWINGS * 0.7


def test_a_broken_picture_is_printed_or_refused(
    invented: Any, attacks: Any, printer: Any, capsys: pytest.CaptureFixture[str]
) -> None:
    whole = {path.name: path.read_bytes() for path in HONEST} | {
        "a.png": attacks.PNG, "b.jpg": attacks.JPEG, "c.png": attacks.commented(), "d.jpg": attacks.told_where(),
    }  # fmt: skip
    names = sorted(whole)
    printed = 0
    for seed in range(MUTANTS):
        name = names[seed % len(names)]
        printed += tried(name, invented.mutant(whole[name], seed), printer)
    with capsys.disabled():
        print(f"\n{printed} of {MUTANTS} broken pictures printed, the others refused")  # noqa: T201 - the figures
    assert 0 < printed < MUTANTS
