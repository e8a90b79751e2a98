"""Six signs stand for the printed numbers of a version: the same for the same numbers, and others for others."""

from __future__ import annotations

import hashlib
import os
import re
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from sheetgen.model.fingerprint import SIGNS, Number, fingerprint
from sheetgen.model.printed import code_of

ROOT = Path(__file__).parents[2]


def code(library: Any, name: str = "pendant", **choices: str) -> str:
    worked = library.worked(name, **choices)
    return code_of(worked, worked.main)


def test_no_sign_is_taken_for_another() -> None:
    assert len(SIGNS) == len(set(SIGNS)) == 31
    assert not set("01OIL") & set(SIGNS)
    assert not re.search("[a-z]", SIGNS)


def test_the_signs_are_the_sha_256_of_the_numbers_to_base_31() -> None:
    written = '[["figures","a.b","24 mm"],["lists","silver","5.5 g"]]'
    number = int(hashlib.sha256(written.encode()).hexdigest(), 16)
    places = [number // 31**power % 31 for power in (5, 4, 3, 2, 1, 0)]
    rows = [Number("lists", "silver", "Silver", "5.5 g"), Number("figures", "a.b", "Length", "24 mm")]
    assert fingerprint(rows) == "".join("23456789ABCDEFGHJKMNPQRSTUVWXYZ"[n] for n in places)


def test_the_signs_are_the_same_in_every_run() -> None:
    program = (
        "from pathlib import Path; from sheetgen.pipeline import work_through; "
        "from sheetgen.model.printed import code_of; "
        "[one] = work_through(Path('.'), ['tideline-band']).worked; "
        "print(*(code_of(one, version) for version in one.versions.values()))"
    )
    told = set()
    for seed in ("1", "2"):
        environment = os.environ | {"PYTHONHASHSEED": seed, "PYTHONPATH": str(ROOT), "LC_ALL": "C"}
        done = subprocess.run(
            [sys.executable, "-c", program], capture_output=True, text=True, check=True, cwd=ROOT, env=environment
        )
        told.add(done.stdout)
    assert len(told) == 1
    assert len(set(told.pop().split())) == 8  # each size of the ring by itself


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("expect: It is round.", "expect: It is quite round."),
        ("    text: |\n      Cut a disc", "    text: |\n      Now cut a disc"),
        ("- title: Cut", "- title: Cut the disc"),
        ("title: Round pendant", "title: A pendant"),
        ("revision: 1", "revision: 2"),
        ("date: 2026-01-10", "date: 2026-02-10"),
    ],
)
def test_other_words_are_no_other_numbers(library: Any, old: str, new: str) -> None:
    before = code(library)
    library.change("pendant/project.yaml", old, new)
    assert code(library) == before


@pytest.mark.parametrize(
    ("file", "old", "new"),
    [
        ("pendant/project.yaml", "width: 20 mm", "width: 20.5 mm"),
        ("pendant/project.yaml", "minutes: 10-15 min", "minutes: 10-20 min"),
        ("pendant/project.yaml", "{{ plate.across }} wide", "{{ 2 * plate.across }} round"),
        ("stock/clays.yaml", "shrinkage: 8-10 %", "shrinkage: 9-11 %"),
        ("stock/clays.yaml", "drying: 12-24 h", "drying: 12-36 h"),
        ("stock/clays.yaml", "to: 650 °C", "to: 660 °C"),
        ("stock/clays.yaml", "allowance: 15 %", "allowance: 50 %"),
        ("studio.yaml", "units: mm", "units: in"),
        ("studio.yaml", "bench step: 0.5 mm", "bench step: 1 mm"),
    ],
)
def test_a_number_that_is_printed_otherwise_changes_the_signs(library: Any, file: str, old: str, new: str) -> None:
    before = code(library), code(library, "drops")
    library.change(file, old, new)
    assert (code(library), code(library, "drops")) != before


def test_a_price_that_no_sheet_prints_changes_nothing(library: Any) -> None:
    before = code(library)
    density = "    wet density: 7 g/cm³"
    library.change("stock/clays.yaml", density, f"    pack: 25 g\n    price: 40 EUR\n{density}")
    assert code(library) == before


def test_the_foot_of_every_sheet_and_of_the_page_has_the_signs(library: Any) -> None:
    signs = code(library)
    for sheet in (library.handout("pendant"), library.card("pendant"), library.teacher("pendant")):
        assert sheet.head.foot.startswith(f"Round pendant · revision 1, 2026-01-10 · {signs} · Test Bench · ")
        assert sheet.head.code == signs
