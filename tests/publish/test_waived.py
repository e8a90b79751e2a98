"""What is refused as common practice is published all the same when the project says why it may be."""

from __future__ import annotations

from typing import Any

import pytest

PROJECT = """\
title: Against the rule
revision: 1
date: 2026-01-10
summary: One part.
makes: 1
level: experienced
parts:
  it:
    clay: silver
    {fields}
steps:
  - title: Cut
    parts: [it]
  - title: Dry
    wait: drying
    does: [test]
  - title: Fire
    firing: silver
"""
STONES = ("stone: glass-2", "margin: 2 mm", "across: 24 mm")
RULES = {
    # rule, and a part that breaks it. A drill of 2.4 mm goes with the stone of 2 mm.
    "least-rim": ("kind: washer", "outside: 20 mm", "opening: 18.8 mm", "thickness: 1 mm"),
    "least-web": ("kind: stone ring", "stone: glass-2", "around: 20 mm", "gap: 0.5 mm"),
    "least-floor": ("kind: scatter", *STONES, "thickness: 2 mm"),
    "least-inside": ("kind: box", "across: 2.5 mm", "down: 22 mm", "wall height: 1 mm", "thickness: 1 mm"),
}
REASON = "six of them held for a year"


@pytest.mark.usefixtures("quick")
@pytest.mark.parametrize("rule", RULES)
def test_a_rule_of_common_practice_is_waived_with_a_reason_that_is_kept(rule: str, library: Any) -> None:
    library.write("stock/small.yaml", "tools:\n  small-drills: {name: Small, kind: drill, sizes: [0.55 mm]}\n")
    project = PROJECT.format(fields="\n    ".join(RULES[rule]))
    library.write("rule/project.yaml", project)
    told = library.publish("rule")
    assert told.published == []
    assert [f"waive: {{{rule}: your reason}}" in t.help for t in told.troubles.errors] == [True]
    library.write("rule/project.yaml", project.replace("parts:\n", f"waive:\n  {rule}: {REASON}\nparts:\n", 1))
    told = library.publish("rule")
    assert told.published == ["rule"]
    assert not told.troubles.errors
    assert (library.build / "rule" / "index.html").is_file()
    assert [(one.rule, one.reason, one.used) for one in library.worked("rule").waive] == [(rule, REASON, True)]


@pytest.mark.usefixtures("quick")
def test_a_rule_waived_without_a_reason_is_not_waived(library: Any) -> None:
    project = PROJECT.format(fields="\n    ".join(RULES["least-rim"]))
    library.write("rule/project.yaml", project.replace("parts:\n", 'waive:\n  least-rim: " "\nparts:\n', 1))
    told = library.publish("rule")
    assert told.published == []
    assert any(
        str(t.place).startswith("projects/rule/project.yaml:") and "nothing" in t.message for t in told.troubles.errors
    )


HOST = "  plate: {kind: cut shape, clay: silver, thickness: 2 mm, shape: SHAPE, across: 12 mm, down: 18 mm}\n"
DRILLED = {
    # 1.5 mm of metal under a pointed tip are 0.3 mm beside the hole; 2 mm of clay leave too little under stones of 1.5
    "least-edge": ("teardrop", ("kind: hole", "drill: 2 mm", "edge: 1.5 mm")),
    "least-floor": ("oval", ("kind: stone ring", "stone: glass-2", "around: 5 mm")),
}


@pytest.mark.usefixtures("quick")
@pytest.mark.parametrize("rule", DRILLED)
def test_what_is_refused_by_the_part_that_it_is_drilled_in_can_be_waived_too(rule: str, library: Any) -> None:
    shape, fields = DRILLED[rule]
    project = PROJECT.format(fields="\n    ".join((*fields, "drilled in: plate")))
    project = project.replace("parts:\n", "parts:\n" + HOST.replace("SHAPE", shape), 1)
    library.write("rule/project.yaml", project.replace("[it]", "[it, plate]"))
    assert [t.severity for t in library.publish("rule").troubles] == ["error"]
    waived = f"waive:\n  {rule}: {REASON}\n"
    library.write("rule/project.yaml", waived + project.replace("[it]", "[it, plate]"))
    assert library.publish("rule").published == ["rule"]
