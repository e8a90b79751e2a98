"""The rules themselves: each with its reason, its cases, and who may waive it."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest

from sheetgen.facts.rules import RULES
from sheetgen.parts.catalogue import kinds

HERE = Path(__file__).parent
NEVER_WAIVED = {
    # people, chemistry and flame, vents, carbon monoxide
    "caught", "child-neck", "child-swallows", "flame-and-vapour", "hot-into-pickle", "never-meet", "coating-heated",
    "lead-under-silver", "vent", "least-vent", "carbon-box", "opened-hot",
}  # fmt: skip
FINE = """\
title: Waiving
revision: 1
date: 2026-01-01
summary: A wire.
makes: 1
level: experienced
waive: {{{rule}: I know better}}
parts:
  ring: {{kind: jump ring, wire: copper-16awg, inside: 8 mm}}
steps:
  - {{title: Wind, parts: [ring], uses: [copper-16awg]}}
"""


def test_every_rule_has_a_reason_that_is_a_sentence_and_a_source() -> None:
    for name, rule in RULES.items():
        assert re.fullmatch(r"[A-Z].*[^.]\.", rule.reason), name
        assert rule.source, name
        assert rule.severity in {"error", "warning"}, name


def test_every_rule_has_a_project_that_breaks_it_and_one_that_keeps_it() -> None:
    broken = {
        found[1]
        for case in HERE.glob("wrong/*.yaml")
        if (found := re.search(r"^# rule: (\S+)", case.read_text("utf-8"), re.MULTILINE))
    }
    kept = {
        found[1]
        for case in HERE.glob("honest/*.yaml")
        if (found := re.search(r"^# keeps: (\S+)", case.read_text("utf-8"), re.MULTILINE))
    }
    assert set(RULES) - broken == set()
    assert set(RULES) - kept == set()


def test_what_hurts_a_person_is_never_waived() -> None:
    assert {name for name, rule in RULES.items() if not rule.waivable} == NEVER_WAIVED


def test_every_rule_of_a_kind_is_told_with_its_reason() -> None:
    specs = [spec for kind in kinds().values() for spec in kind.names.values()]
    named = {one.rule for spec in specs for one in getattr(spec, "needs", ())}
    named |= {one.rule for kind in kinds().values() for one in kind.needs}
    assert named - {""} <= set(RULES)


@pytest.mark.parametrize("rule", sorted(NEVER_WAIVED))
def test_a_rule_that_keeps_people_whole_cannot_be_waived(rule: str, library: Any) -> None:
    library.write("waiving/project.yaml", FINE.format(rule=rule))
    told = [trouble.message for trouble in library.check("waiving").troubles.errors]
    assert told == [f"the rule '{rule}' keeps people whole, and cannot be waived"]


def test_a_waived_rule_of_the_bench_is_not_told_and_its_reason_is_kept(library: Any) -> None:
    library.change("pendant/project.yaml", "  - title: Dry\n    wait: drying\n    does: [test]\n", "")
    rule, reason = "dry-before-fire", "dried for a week"
    assert [trouble.rule for trouble in library.check("pendant").troubles.errors] == [rule]
    library.change("pendant/project.yaml", "parts:\n  plate", f"waive: {{{rule}: {reason}}}\nparts:\n  plate")
    outcome = library.check("pendant")
    assert not outcome.troubles.errors
    assert [(one.rule, one.reason) for one in outcome.worked[0].waive] == [(rule, reason)]
