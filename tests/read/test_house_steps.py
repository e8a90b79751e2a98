"""A step written once: what it becomes in a project, where its faults are told, and what a studio may get wrong."""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sheetgen.base.place import Place
from sheetgen.base.trouble import Troubles
from sheetgen.model.project import Step
from sheetgen.read.library import read_library

STEPS = "steps/bench.yaml"
PENDANT = "pendant/project.yaml"
DRIED = "  - title: Dry\n    wait: drying\n    does: [test]\n"

# One house step with a parameter at every sort of place. What stands in ‹ › is a parameter: in the house step it is
# named (in words, in single braces), and in the step written out its value stands in its place.
SHARED = """\
title: Trim ‹which:words›
parts: [‹pieces›]
uses: [‹clay›, ‹tools›, roller]
minutes: 2 * ‹time›
when: ‹clay› is ‹metal›
show: [‹piece›.wet_disc, ‹figures›]
caution: [blade]
does: [‹deeds›, refine]
diagram: [pin on its bridge of ‹piece›]
text: |
  It is {{ ‹piece›.thickness in cards }} thick, and {{ ‹piece›.wet_disc }} across.
  ‹how:words›

  {{ 2 * ‹size› }} are cut ‹where:words›, of {{ ‹clay› }}.
expect: It is {{ ‹size:alone› }} wide, ‹where:words›.
"""
# A value as a project gives it, and as it stands written out in a list, in arithmetic, or in words.
VALUES: dict[str, list[tuple[str, str]]] = {
    "which": [("the disc", "the disc"), ('"it: all"', "it, all")],
    "pieces": [("[plate]", "plate"), ("plate", "plate"), ("[plate, rim]", "plate, rim")],
    "piece": [("plate", "plate"), ("rim", "rim")],
    "clay": [("clay", "clay")],
    "metal": [("silver", "silver"), ("copper", "copper")],
    "tools": [("[]", ""), ("[knife]", "knife"), ("[knife, drills]", "knife, drills"), ('""', "")],
    "time": [("4 min", "4 min"), ("5 min + 3 min", "(5 min + 3 min)"), ("2-3 min", "2-3 min")],
    "size": [("width", "width"), ("width - 2 mm", "(width - 2 mm)"), ("3 cards", "3 cards")],
    "figures": [("[]", ""), ("[plate.clay_mass, rim.wet_disc]", "plate.clay_mass, rim.wet_disc"),
                ("[{what: rim.count, label: Rims}]", "{what: rim.count, label: Rims}")],
    "deeds": [("[]", ""), ("test", "test"), ("[drill, test]", "drill, test")],
    "how": [("Mind {{ rim.across }}.", "Mind {{ rim.across }}."), ("Slowly.", "Slowly.")],
    "where": [("upright", "upright"), ('"in {{ rim.count }} places"', "in {{ rim.count }} places")],
}  # fmt: skip
RIM = "  rim: {kind: cut shape, clay: clay, shape: disc, across: 12 mm, thickness: 5 cards, count: 3}\n"
REPLACED = [
    "minutes: 7 min",
    "expect: It is {{ plate.across }} wide.",
    "uses: [knife]",
    "parts: [rim]",
    "caution: [pin]",
]


def indented(text: str, by: str) -> str:
    return "".join(f"{by}{line}\n" if line else "\n" for line in text.splitlines())


def entry(defaults: dict[str, str], name: str = "trim") -> str:
    """The house step: its parameters, some with a default, and its fields."""
    text = SHARED
    for key in VALUES:
        text = text.replace(f"‹{key}:words›", f"{{{key}}}").replace(f"‹{key}:alone›", key).replace(f"‹{key}›", key)
    takes = "".join(f"  {key}: {defaults.get(key, '')}".rstrip() + "\n" for key in VALUES)
    return f"{name}:\n  about: For the tests.\n  takes:\n{indented(takes, '  ')}{indented(text, '  ')}"


def out(chosen: dict[str, tuple[str, str]], replaced: list[str]) -> str:
    """The same step as a project writes it."""
    text = SHARED
    for key, (_, written) in chosen.items():
        text = text.replace(f"‹{key}:words›", written).replace(f"‹{key}:alone›", written.strip("()"))
        text = text.replace(f"‹{key}›", written)
    text = text.replace(", , ", ", ").replace(", ]", "]").replace("[, ", "[").replace("it, all", "it: all")
    text = text.replace("title: Trim it: all", 'title: "Trim it: all"')
    for field in replaced:
        key = field.partition(":")[0]
        if key == "caution":  # added to the house step's own
            field = field.replace("[", "[blade, ")  # noqa: PLW2901
        lines = [field if line.startswith(f"{key}:") else line for line in text.splitlines()]
        text = "\n".join(lines)
    return "  - " + indented(text, "    ").lstrip()


def use(chosen: dict[str, tuple[str, str]], left: set[str], replaced: list[str]) -> str:
    """The use of the house step; what is `left` to its default is not given."""
    lines = [f"{key}: {value[0]}" for key, value in chosen.items() if key not in left]
    return "  - house: trim\n" + "".join(f"    {line}\n" for line in [*lines, *replaced])


choices = st.fixed_dictionaries({key: st.sampled_from(values) for key, values in VALUES.items()})


@pytest.fixture(scope="module")
def bench(libraries: Any, tmp_path_factory: pytest.TempPathFactory) -> Any:
    library = libraries.make(tmp_path_factory.mktemp("house"))
    library.write("drops/project.yaml", (library.path("link/project.yaml")).read_text().replace("Wire link", "Links"))
    return library


def pendant(libraries: Any, step: str) -> str:
    return str(libraries.PENDANT).replace("steps:\n", RIM + "steps:\n").replace(DRIED, step + DRIED)


def bare(thing: Any) -> Any:
    """A worked thing without the places in it."""
    if isinstance(thing, Place):
        return None
    if dataclasses.is_dataclass(thing) and not isinstance(thing, type):
        return type(thing), [bare(getattr(thing, f.name)) for f in dataclasses.fields(thing) if f.compare]
    if isinstance(thing, Mapping):
        return [(key, bare(value)) for key, value in thing.items()]
    if isinstance(thing, tuple | list | set | frozenset):
        return [bare(one) for one in thing]
    return thing


@settings(max_examples=60)
@given(choices, st.sets(st.sampled_from(sorted(VALUES))), st.lists(st.sampled_from(REPLACED), unique=True, max_size=2))
def test_a_house_step_and_a_step_written_out_are_worked_to_the_same(
    bench: Any, libraries: Any, chosen: dict[str, tuple[str, str]], left: set[str], replaced: list[str]
) -> None:
    bench.write(STEPS, entry({key: chosen[key][0] for key in left}))
    found = []
    for step in (use(chosen, left, replaced), out(chosen, replaced)):
        bench.write(PENDANT, pendant(libraries, step))
        read = read_library(bench.root, Troubles(), ["pendant"])
        assert read is not None
        worked = bench.worked("pendant")
        found.append((read.projects[0].project, bare(worked)))
    for shared, written in zip(*(one[0].steps for one in found), strict=True):
        assert shared.model_dump() == written.model_dump()
    assert found[0] == found[1]
    assert all(type(step) is Step for step in found[0][0].steps)


@pytest.mark.usefixtures("quick")
def test_a_project_with_house_steps_and_one_written_out_publish_the_same_bytes(bench: Any, libraries: Any) -> None:
    chosen = {key: values[-1] for key, values in VALUES.items()} | {"metal": VALUES["metal"][0]}
    bench.write(STEPS, entry({}))
    sheets = []
    for step in (use(chosen, set(), []), out(chosen, [])):
        bench.write(PENDANT, pendant(libraries, step))
        assert not bench.publish("pendant").troubles.errors
        sheets.append(bench.sheets("pendant"))
    assert sheets[0] == sheets[1]
    assert "Trim the disc" not in out(chosen, [])  # the title is the one that is given


SAMPLES = {"title": "{it}", "text": "{it}", "expect": "{it}", "faces": "it", "firing": "it", "show": "[it]"} | {
    "short": "{it}", "meanwhile": "{it}",
}  # fmt: skip


@pytest.mark.parametrize("field", [info.alias for info in Step.model_fields.values() if info.alias != "picture"])
def test_a_parameter_is_put_in_place_in_every_field_of_a_step(field: str, library: Any) -> None:
    listed = "list" in str(Step.model_fields[field.replace(" ", "_")].annotation)
    title = "" if field == "title" else "  title: X\n"
    written = SAMPLES.get(field, "[it]" if listed else "it")
    library.write(STEPS, f'one:\n  takes:\n    it:\n{title}  {field}: "{written}"\n'.replace('"[it]"', "[it]"))
    library.change(PENDANT, DRIED, "  - house: one\n    it: wanted\n" + DRIED)
    read = read_library(library.root, Troubles(), ["pendant"])
    assert read is not None
    step = read.projects[0].project.steps[1]
    found = getattr(step, field.replace(" ", "_"))
    assert found == (["wanted"] if listed else "wanted")


TWO = """\
fire:
  about: Fired once or twice.
  takes:
    pieces:
    clay: clay
    once: silver
    how: ""
  steps:
    - title: Fire
      when: clay is once
      firing: clay
      parts: [pieces]
      text: In air. {how}
    - title: Fire twice
      when: clay is not once
      firing: clay
      parts: [pieces]
      uses: [firing-box, carbon]
      text: "{how}"
"""


def test_one_name_may_stand_for_several_steps_of_which_a_version_takes_what_holds(library: Any) -> None:
    library.write(STEPS, TWO)
    library.change(
        PENDANT,
        "  - title: Fire\n    firing: clay\n    uses: [firing-box, carbon]\n",
        "  - house: fire\n    pieces: [plate]\n",
    )
    library.change(PENDANT, "steps:\n", "versions:\n  - {name: Copper, clay: copper}\nsteps:\n")
    silver, copper = library.worked("pendant").versions.values()
    assert [step.title for step in silver.steps] == ["Cut", "Dry", "Fire"]
    assert [step.title for step in copper.steps] == ["Cut", "Dry", "Fire twice"]
    # nothing given takes the space before it along, and leaves out the text that it alone would fill
    assert silver.steps[2].text == ("In air.",)
    assert copper.steps[2].text == ()


def test_a_parameter_that_only_a_replaced_field_wants_need_not_be_given(library: Any) -> None:
    library.write(STEPS, 'dry:\n  takes:\n    how:\n  title: Dry\n  wait: drying\n  text: "{how}"\n')
    library.change(PENDANT, DRIED, "  - house: dry\n    text: On a rack.\n")
    assert library.main("pendant").steps[1].text == ("On a rack.",)
