"""Pictures that would do harm: each is tried with few seconds and 500 MB, while somebody listens whether it calls."""

from __future__ import annotations

import json
import socket
import subprocess
import sys
from pathlib import Path
from typing import Any, NamedTuple

import pytest

TESTS = Path(__file__).parents[1]
ATTACKS = TESTS / "attacks" / "pictures"
SECONDS, MEMORY = 2, 500_000_000


class Tried(NamedTuple):
    """What became of each picture, by its name; whether anything called."""

    refused: dict[str, dict[str, Any]]
    harmless: dict[str, dict[str, Any]]
    heard: bool


def written(folder: Path, kind: str, made: dict[str, Any], address: str) -> list[str]:
    raws = {path.name: path.read_bytes() for path in (ATTACKS / kind).iterdir()}
    raws |= {name: make() for name, make in made.items()}
    (folder / kind).mkdir()
    for name, raw in raws.items():
        (folder / kind / name).write_bytes(raw.replace(b"CANARY", address.encode()))
    return [str(folder / kind / name) for name in sorted(raws)]


@pytest.fixture(scope="module")
def tried(tmp_path_factory: pytest.TempPathFactory, attacks: Any) -> Tried:
    folder = tmp_path_factory.mktemp("attacks")
    with socket.create_server(("127.0.0.1", 0)) as canary:
        address = f"127.0.0.1:{canary.getsockname()[1]}"
        made = {"refused": attacks.REFUSED, "harmless": attacks.HARMLESS}
        paths = {kind: written(folder, kind, making, address) for kind, making in made.items()}
        done = subprocess.run(
            [sys.executable, TESTS / "attacks" / "limited.py", *paths["refused"], *paths["harmless"]],
            capture_output=True, text=True, check=False, cwd=TESTS.parent, env={"PYTHONPATH": str(TESTS.parent)},
        )  # fmt: skip
        assert not done.returncode, done.stderr[-2000:]
        told = [json.loads(line) for line in done.stdout.splitlines()]
        canary.settimeout(0.2)
        try:
            canary.accept()
            heard = True
        except TimeoutError:
            heard = False
    many = len(paths["refused"])
    return Tried({one["name"]: one for one in told[:many]}, {one["name"]: one for one in told[many:]}, heard)


def test_every_picture_that_would_do_harm_is_refused_and_told_how_to_mend(
    tried: Tried, capsys: pytest.CaptureFixture[str]
) -> None:
    assert {name: one for name, one in tried.refused.items() if not one.get("refused") or not one["help"]} == {}
    for name, one in tried.refused.items():
        assert one["refused"].startswith(("'" + name, "the picture '" + name)), one
        assert len(one["refused"]) < 250, one
    everything = (*tried.refused.values(), *tried.harmless.values())
    slowest, largest = (max(one[what] for one in everything) for what in ("seconds", "memory"))
    with capsys.disabled():
        print(  # noqa: T201 - the figures of the attacks
            f"\n{len(tried.refused)} attacks by pictures refused, {len(tried.harmless)} made harmless: "
            f"{slowest:.2f} s and {largest / 1e6:.0f} MB at most"
        )
    assert len(tried.refused) + len(tried.harmless) >= 120


def test_no_picture_takes_two_seconds_or_half_a_gigabyte(tried: Tried) -> None:
    everything = (*tried.refused.values(), *tried.harmless.values())
    assert [one for one in everything if "died" in one] == []
    assert [one for one in everything if one["seconds"] > SECONDS or one["memory"] > MEMORY] == []


def test_no_picture_calls_anybody(tried: Tried) -> None:
    assert not tried.heard


def test_what_does_no_harm_is_printed_without_what_does_not_show(tried: Tried) -> None:
    for name, one in tried.harmless.items():
        assert one.get("printed"), (name, one)
        for word in ("PRIVATE", "127.0.0.1", "script", "onload", "alert", "http:"):
            assert word not in one["data"].replace("http://www.w3.org/2000/svg", ""), (name, word)


def test_check_tells_each_at_the_word_that_names_it(library: Any, attacks: Any) -> None:
    small = {path.name: path.read_bytes() for path in sorted((ATTACKS / "refused").iterdir())}
    names = [name for name in attacks.REFUSED if name.startswith(("half-", "the-head", "a-picture-", "utf-", "a-png"))]
    small |= {name: attacks.REFUSED[name]() for name in names}
    for name, raw in small.items():
        library.write(f"drops/{name}", raw)
    line = f"pictures: [finished.svg, {', '.join(small)}]"
    library.change("drops/project.yaml", "pictures: [finished.svg]", line)
    told = {(t.place.line, t.place.column): t.message for t in library.check("drops").troubles.errors}
    for name in small:
        assert name in told.pop((8, line.index(f" {name}") + 2)), name
    assert told == {}


def test_a_picture_of_a_step_is_told_at_the_step(library: Any, attacks: Any) -> None:
    library.write("drops/seam.jpg", attacks.REFUSED["half-a-photograph.jpg"]())
    said = '    expect: "The ends meet."\n'
    picture = "    picture: {file: seam.jpg, caption: The seam., shows: Two edges.}\n"
    library.change("drops/project.yaml", said, said + picture)
    [trouble] = library.check("drops").troubles.errors
    assert trouble.message == "'seam.jpg' is cut short: the end of it is missing"
    assert trouble.place.source.line(trouble.place.line)[trouble.place.column - 1 :].startswith("seam.jpg")


def test_the_files_that_a_maker_keeps_stay_as_they_are(library: Any, attacks: Any) -> None:
    kept = {
        "drops/where.jpg": attacks.HARMLESS["a-photograph-that-tells-where.jpg"](),
        "drops/maker.svg": (ATTACKS / "harmless" / "what-is-known-of-the-maker.svg").read_bytes(),
    }
    for name, raw in kept.items():
        library.write(name, raw)
    for name in ("where.jpg", "maker.svg"):
        library.change("drops/project.yaml", "pictures: [finished.svg]", f"pictures: [{name}]")
        assert not library.check("drops").troubles.errors
        assert library.handout("drops").picture.source.startswith("data:image/")
        library.change("drops/project.yaml", f"pictures: [{name}]", "pictures: [finished.svg]")
    assert {name: library.path(name).read_bytes() for name in kept} == kept
