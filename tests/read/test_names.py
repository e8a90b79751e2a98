"""One thing has one name, however its words are parted: `top-hole`, `top hole` and `top_hole` are the same."""

from __future__ import annotations

import itertools
import re
from typing import Any

import pytest

# Each name stands in angle brackets wherever the project writes it.
PROJECT = """\
title: Drilled disc
revision: 1
date: 2026-01-10
summary: A disc cut <big disc>.<wet disc>, drilled {{ <top hole>.<drill used> }} and {{ <class clay> }} for a class.
makes: 1 disc
level: first piece
choices:
  <my clay>: silver
  <how wide>: 20 mm
  <the stone>: <glass 2>
parts:
  <big disc>:
    kind: cut shape
    clay: <my clay>
    shape: disc
    across: <how wide>
    thickness: <thin sheet>
  <top hole>:
    kind: hole
    clay: <my clay>
    opening: <how wide> ÷ 10
    edge: 0.8 mm
    <drilled in>: <big disc>
waive:
  <least edge>: nothing hangs from it
materials:
  - item: <ear wire>
    amount: 2
allowance:
  <my clay>: 20 %
figures:
  <thin sheet>: <how wide> ÷ 20
  <class clay>:
    value: 12 × <big disc>.<clay mass>
    label: For a class
checks:
  - need: <class clay> > 1 g
    say: Too little.
versions:
  - name: Wide
    <how wide>: 22 mm
steps:
  - title: Cut
    parts: [<big disc>, <top hole>]
    uses: [<my clay>, roller]
    show: [<big disc>.<wet disc>, <class clay>]
    minutes: 10 min
    when: <my clay> is silver
    text: "Cut {{ <big disc>.<wet disc> }}, {{ <how wide> }}; weigh {{ <class clay> }}."
  - title: Dry
    wait: drying
    does: [test]
  - title: Fire
    firing: <my clay>
  - title: Set
    parts: [<big disc>]
    uses: [<the stone>, <ear wire>]
    minutes: 10 min
""".replace("A disc cut <big disc>.<wet disc>,", "A disc cut {{ <big disc>.<wet disc> }},")
NAMES = sorted(set(re.findall(r"<([a-z0-9 ]+)>", PROJECT)))
PARTED = [" ", "-", "_"]


def parted(text: str, how: dict[str, str]) -> str:
    """The project with each name parted as `how` says."""
    for name in NAMES:
        text = text.replace(f"<{name}>", name.replace(" ", how.get(name, "_")))
    return text


@pytest.fixture
def written(library: Any) -> Any:
    """The project, each name in the spelling asked for, to its figures and lists. It must be well."""

    def work(text: str) -> tuple[Any, ...]:
        library.write("disc/project.yaml", text)
        outcome = library.check("disc")
        assert not list(outcome.troubles), "\n".join(map(str, outcome.troubles))
        found = []
        for version in outcome.worked[0].versions.values():
            figures = {key: (f.value, f.working, f.printed.told) for key, f in version.figures.items()}
            lists = [(line.item.id, line.net) for line in version.materials]
            steps = [(s.parts, [i.id for i in s.uses], s.show, s.text) for s in version.steps]
            found.append(
                (
                    figures,
                    lists,
                    steps,
                    [(one.reason, one.used) for one in outcome.worked[0].waive],
                    len(version.parts["top_hole"].drilled),
                )
            )
        return tuple(found)

    return work


def test_any_spelling_of_every_name_finds_the_same_thing(written: Any) -> None:
    first, *others = (written(parted(PROJECT, dict.fromkeys(NAMES, sign))) for sign in PARTED)
    assert len(first) == 2  # both versions
    assert first[0][0]["big_disc.clay_mass"][0].usual > 0
    assert first[0][3] == [("nothing hangs from it", True)]
    assert first[0][4] == 1
    for other in others:
        assert other == first


@pytest.mark.parametrize("name", NAMES)
def test_a_name_may_be_spelled_in_two_ways_in_one_file(name: str, written: Any) -> None:
    usual = written(parted(PROJECT, {}))
    for signs in itertools.permutations(PARTED, 2):
        # where it stands first in one way, and wherever else in the other
        first, rest = (name.replace(" ", sign) for sign in signs)
        text = PROJECT.replace(f"<{name}>", first, 1).replace(f"<{name}>", rest)
        found = written(parted(text, {}))
        assert found == usual, signs


@pytest.mark.parametrize("sign", PARTED)
def test_a_choice_is_tried_by_any_spelling_of_its_name(sign: str, library: Any) -> None:
    library.write("disc/project.yaml", parted(PROJECT, {}))
    outcome = library.check("disc", **{f"how{sign}wide": "22 mm"})
    assert not outcome.troubles.errors, "\n".join(map(str, outcome.troubles))
    assert outcome.worked[0].main.parts["big_disc"].numbers["across"].usual == 22


@pytest.mark.parametrize("group", ["parts", "choices", "figures"])
def test_two_spellings_of_one_name_are_one_name_given_twice(group: str, library: Any) -> None:
    more = {
        "parts": ("parts:\n", "parts:\n  top hole:\n    kind: hole\n    clay: my_clay\n    opening: 2 mm\n"),
        "choices": ("choices:\n", "choices:\n  how wide: 3 mm\n"),
        "figures": ("figures:\n", "figures:\n  class-clay: 3 g\n"),
    }
    library.write("disc/project.yaml", parted(PROJECT, {}).replace(*more[group]))
    [trouble] = library.check("disc").troubles.errors
    assert "is named twice; first at projects/disc/project.yaml" in trouble.message


def test_an_unknown_name_is_told_with_all_that_are_known(library: Any) -> None:
    names = [f"{letter}{letter}{letter}" for letter in "bcdfghjkmnpq"]
    text = parted(PROJECT, {}).replace("figures:\n", "figures:\n" + "".join(f"  {n}: 1 mm\n" for n in names))
    library.write("disc/project.yaml", text.replace("minutes: 10 min\n", "minutes: 10 min\n    diagram: [xyzzy]\n", 1))
    [trouble] = library.check("disc").troubles.errors
    assert trouble.help == "known here: big_disc, top_hole"
    library.write("disc/project.yaml", text.replace("need: class_clay", "need: xyzzy"))
    [trouble] = library.check("disc").troubles.errors
    assert trouble.message == "'xyzzy' is not known"
    assert all(name in trouble.help for name in names)
