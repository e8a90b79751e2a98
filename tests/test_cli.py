"""The command line: arguments in, exit code out."""

from __future__ import annotations

import json
import os
import re
import shutil
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

from sheetgen.cli import main

ROOT = Path(__file__).parents[1]
WELL, TROUBLES, USAGE = 0, 1, 2


def test_a_library_without_faults_is_well(run: Any, library: Any) -> None:
    result = run("check")
    assert result.exit_code == WELL
    assert result.stdout == f"3 projects well, 0 errors, 0 warnings, in {library.root}\n"
    assert result.stderr == ""


def test_troubles_go_to_the_error_stream_and_make_exit_code_1(run: Any, library: Any) -> None:
    library.change("drops/project.yaml", "    overlap: 4 mm", "    overlp: 4 mm")
    result = run("check")
    assert result.exit_code == TROUBLES
    assert result.stdout == f"2 projects well, 1 error, 0 warnings, in {library.root}\n"
    assert result.stderr == (
        "projects/drops/project.yaml:22:5: error: a tube has no field 'overlp'\n"
        "   22 |     overlp: 4 mm\n"
        "      |     ^^^^^^\n"
        "   help: did you mean 'overlap'?\n"
    )


def test_a_doubt_alone_is_no_failure(run: Any, library: Any) -> None:
    library.change("pendant/project.yaml", "    parts: [plate]\n", "")
    result = run("check", "pendant")
    assert result.exit_code == WELL
    assert result.stdout == f"1 project well, 0 errors, 1 warning, in {library.root}\n"
    assert "warning: no step makes 'plate'" in result.stderr


@pytest.mark.usefixtures("quick")
def test_publish_says_what_it_did(run: Any, library: Any) -> None:
    result = run("publish")
    assert result.exit_code == WELL
    assert result.stdout.startswith("published 3 projects, ")
    assert "\x1b" not in result.stdout + result.stderr  # plain where nobody watches
    assert (library.build / "index.html").is_file()
    assert run("publish").stdout.startswith("published 3 projects, 0 files changed")


@pytest.mark.usefixtures("quick")
def test_publish_goes_on_past_a_project_in_trouble_and_says_so(run: Any, library: Any) -> None:
    library.write("drops/project.yaml", "title: [")
    result = run("publish")
    assert result.exit_code == TROUBLES
    assert "published 2 projects" in result.stdout
    assert "1 project in trouble, last good sheets kept" in result.stdout


@pytest.mark.usefixtures("quick")
def test_publish_writes_where_it_is_told(run: Any, library: Any, tmp_path: Path) -> None:
    assert run("publish", "--into", str(tmp_path / "site")).exit_code == WELL
    assert (tmp_path / "site" / "index.html").is_file()
    assert not library.build.exists()


@pytest.mark.usefixtures("quick")
def test_a_place_that_cannot_be_written_is_wrong_usage(run: Any, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    result = run("publish", "--into", str(tmp_path / "file" / "build"))
    assert result.exit_code == USAGE
    assert "cannot be written" in result.stderr


@pytest.mark.parametrize("command", ["check", "publish", "figures"])
@pytest.mark.usefixtures("quick")
def test_a_project_that_there_is_not_is_wrong_usage_with_the_nearest_name(command: str, run: Any) -> None:
    result = run(command, "drop")
    assert result.exit_code == USAGE
    assert "there is no project 'drop'" in result.stderr
    assert "did you mean 'drops'?" in result.stderr


@pytest.mark.parametrize(
    "words",
    [
        ["figures"],
        ["figures", "drops", "--with", "height"],
        ["figures", "drops", "--with", "=3 mm"],
        ["figures", "drops", "--with", "height="],
        ["figures", "drops", "--version", "Lang"],
        ["figures", "drops", "--nonsense"],
        ["check", "--library", "/no/such/folder"],
        ["nonsense"],
    ],
)
def test_wrong_usage_is_exit_code_2_and_one_plain_sentence(words: list[str], library: Any) -> None:
    if "--library" not in words and words[0] != "nonsense":
        words = [words[0], "--library", str(library.root), *words[1:]]
    result = CliRunner().invoke(main, words)
    assert result.exit_code == USAGE
    assert result.stdout == ""
    assert "Traceback" not in result.stderr
    assert "rror" in result.stderr


def test_the_nearest_version_is_offered(run: Any) -> None:
    assert "did you mean 'Long'?" in run("figures", "drops", "--version", "Lang").stderr


def test_a_version_is_found_by_the_name_that_is_printed_the_main_one_too(run: Any, library: Any) -> None:
    library.change("drops/project.yaml", "title: Little drops\n", "title: Little drops\nmain version: Silver, short\n")
    short, long = (run("figures", "drops", "--version", name) for name in ("silver, short", "LONG"))
    assert short.exit_code == long.exit_code == WELL
    assert "Little drops, Long" in long.stdout
    assert "did you mean 'Silver, short'?" in run("figures", "drops", "--version", "Silver, shirt").stderr


def test_figures_prints_a_line_for_each_number(run: Any) -> None:
    result = run("figures", "drops")
    assert result.exit_code == WELL
    assert "Little drops" in result.stdout
    [line] = [line for line in result.stdout.splitlines() if line.startswith("body.wet_length ")]
    # 22 ÷ 0.91 = 24.18, cut at 24; 22 ÷ 0.92 and 22 ÷ 0.90
    assert " 24 mm" in line
    assert "23.91" in line
    assert "24.44" in line
    assert "÷" not in line


def test_figures_ends_with_the_bags_that_an_order_may_leave_out_also_where_the_design_names_none() -> None:
    """What is weighed out of a tub shares no bag."""
    told = CliRunner().invoke(main, ["figures", "limpet-buttons", "--library", str(ROOT)]).stdout
    assert told.endswith("bags, of the main version: A; B release balm\n")


def test_figures_tells_what_is_used_up_what_to_have_and_what_comes_back(run: Any) -> None:
    # 35.5 × 24 × 0.75 × 7 ÷ 1000 = 4.473 g a tube and two of them 8.95 g; a fifth more for waste is 10.74 g
    told = run("figures", "drops").stdout
    rows = [re.split(r" {2,}", line.strip()) for line in told[told.index("Materials") :].splitlines()]
    assert ["Item", "Name", "Used up", "Have", "Comes back"] in rows
    assert ["silver", "Test silver", "9 g", "11 g", "2 g"] in rows
    assert ["ear-wire", "Ear wire", "2", "2", "0"] in rows
    assert ["epoxy", "Test epoxy", "as needed"] in rows


def test_figures_shows_the_working_when_asked(run: Any) -> None:
    [line] = [
        line for line in run("figures", "drops", "--working").stdout.splitlines() if line.startswith("body.wet_length ")
    ]
    assert "22 ÷ (1 − 0.09)" in line


def test_figures_of_a_version(run: Any) -> None:
    [line] = [
        line for line in run("figures", "drops", "--version", "Long").stdout.splitlines()
        if line.startswith("body.wet_length ")
    ]  # fmt: skip
    assert " 33 mm" in line  # 30 ÷ 0.91 = 32.97


def test_figures_tries_a_choice(run: Any) -> None:
    [line] = [
        line for line in run("figures", "drops", "--with", "height=25 mm", "--with", "clay=copper").stdout.splitlines()
        if line.startswith("body.wet_length ")
    ]  # fmt: skip
    assert " 29 mm" in line  # 25 ÷ 0.86 = 29.07


def test_a_choice_that_cannot_be_is_told_as_a_trouble(run: Any) -> None:
    result = run("figures", "drops", "--with", "height=22")
    assert result.exit_code != WELL
    assert "a bare number" in result.stderr


def test_figures_as_json_is_of_the_documented_form(run: Any) -> None:
    # design, section 6
    told = json.loads(run("figures", "drops", "--json").stdout)
    assert told["project"] == "drops"
    assert list(told["versions"]) == ["main", "Long"]
    figure = told["versions"]["main"]["body.wet_length"]
    assert figure.keys() == {"label", "value", "low", "high", "unit", "working", "printed"}
    assert figure["value"] == pytest.approx(22 / 0.91)
    assert figure["printed"] == {"value": 24.0, "words": "24", "unit": "mm"}


@pytest.mark.usefixtures("quick")
def test_the_json_of_the_terminal_is_that_of_the_folder(run: Any, library: Any) -> None:
    library.publish("drops")
    assert json.loads(run("figures", "drops", "--json").stdout) == json.loads(
        (library.build / "drops/figures.json").read_text("utf-8")
    )


def test_every_command_says_which_library_it_read(run: Any, library: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(library.root)
    result = CliRunner().invoke(main, ["check"])
    assert result.stdout.endswith(f", in {library.root}\n")  # and not "in ."
    shown = run("figures", "drops", "--json")
    assert shown.stderr == f"read from {library.root}\n"
    assert json.loads(shown.stdout)


@pytest.mark.usefixtures("quick")
def test_publish_says_which_library_it_read(run: Any, library: Any) -> None:
    assert run("publish").stdout.endswith(f"; read from {library.root}\n")


def test_figures_without_a_name_offers_the_names_of_this_library(run: Any) -> None:
    assert "drops, link, pendant" in run("figures").stderr


def test_kinds_begins_with_their_names() -> None:
    first, _, rest = CliRunner().invoke(main, ["kinds"]).stdout.partition("\n")
    assert re.fullmatch(r"\d+ kinds of part: S-hook, adhesive mix, .*, wrapped-loop link", first)
    assert "\ntube\n" in rest
    assert CliRunner().invoke(main, ["kinds"]).stderr.startswith("read from ")
    one = CliRunner().invoke(main, ["kinds", "tube"]).stdout
    assert one.startswith("tube\n")
    assert "kinds of part" not in one


# Faults of the program


def broken(*_what: Any) -> None:
    raise RuntimeError("a screw is loose")


@pytest.mark.parametrize("words", [["check"], ["figures", "drops"], ["publish"]])
@pytest.mark.usefixtures("quick")
def test_what_nobody_thought_of_is_told_as_a_fault_of_the_program(
    words: list[str], run: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("sheetgen.work.project.work", broken)
    result = run(*words)
    assert result.exit_code == TROUBLES
    assert (
        "a fault of the program, not of this file, stops this project (RuntimeError: a screw is loose)" in result.stderr
    )
    assert "please report it; --traceback shows where" in result.stderr
    assert "Traceback" not in result.stderr
    shown = run(*words, "--traceback").stderr
    assert "Traceback (most recent call last)" in shown
    assert "in broken" in shown


def test_what_goes_wrong_before_any_project_is_told_too(run: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("sheetgen.read.library.read_shared", broken)
    result = run("check")
    assert result.exit_code == TROUBLES
    assert result.stderr.startswith("error: a fault of the program (RuntimeError: a screw is loose); please report it")
    assert "Traceback" not in result.stderr
    assert "in broken" in run("check", "--traceback").stderr


@pytest.mark.parametrize(
    ("says", "told"),
    [
        (
            'figure("Twice", "mm", "2 × lenght")',
            ["twice: 'lenght' is not known", "2 × lenght", "    ^^^^^^", "'length'?"],
        ),
        (
            'figure("Twice", "g", "2 × length")',
            ["twice: comes to a length, and a mass is wanted", "2 × length", "^^^^^^^^^^"],
        ),
    ],
)
def test_a_typo_in_a_kind_reaches_its_author_with_the_text_and_a_caret(
    says: str, told: list[str], library: Any, tmp_path: Path
) -> None:
    package = tmp_path / "program" / "sheetgen"
    shutil.copytree(ROOT / "sheetgen", package)
    shutil.copytree(ROOT / "themes", package.parent / "themes")
    (package / "parts" / "stick.py").write_text(
        '"""Stick."""\n\nfrom sheetgen.parts import field\nfrom sheetgen.parts.figure import figure\n'
        'from sheetgen.parts.kind import Part\n\n\nclass Stick(Part):\n    """Straight."""\n\n'
        f'    kind = "stick"\n    length = field.length("how long")\n    twice = {says}\n'
    )
    command = [sys.executable, "-m", "sheetgen", "check", "--library", str(library.root)]
    environment = os.environ | {"PYTHONPATH": str(package.parent)}
    done = subprocess.run(
        command, cwd=package.parent, env=environment, capture_output=True, text=True, timeout=60, check=False
    )
    assert done.returncode == USAGE
    assert done.stderr.startswith("sheetgen/parts/stick.py:8: error: Stick.")
    assert "Traceback" not in done.stderr
    for words in told:
        assert words in done.stderr, done.stderr


def without_pango(tmp_path: Path) -> dict[str, str]:
    """Surroundings in which weasyprint is there and its library is not."""
    (tmp_path / "stub" / "weasyprint").mkdir(parents=True)
    (tmp_path / "stub" / "weasyprint" / "__init__.py").write_text(
        "raise OSError(\"cannot load library 'libpango-1.0-0': cannot open shared object file\")\n"
    )
    return os.environ | {"PYTHONPATH": f"{tmp_path / 'stub'}{os.pathsep}{ROOT}"}


def sheetgen(*words: str, **environment: str) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-m", "sheetgen", *words]
    return subprocess.run(
        command, cwd=ROOT, env=environment or None, capture_output=True, text=True, timeout=60, check=False
    )


def test_without_pango_publish_says_in_one_sentence_what_to_install(library: Any, tmp_path: Path) -> None:
    done = sheetgen("publish", "--library", str(library.root), **without_pango(tmp_path))
    assert done.returncode == USAGE
    assert done.stdout == ""
    [line] = done.stderr.splitlines()
    assert line.startswith("error: ")
    assert "apt-get install libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0" in line
    assert not library.build.exists()


def test_without_pango_numbers_can_still_be_checked(library: Any, tmp_path: Path) -> None:
    surroundings = without_pango(tmp_path)
    assert sheetgen("check", "--library", str(library.root), **surroundings).returncode == WELL
    done = sheetgen("figures", "pendant", "--library", str(library.root), **surroundings)
    assert done.returncode == WELL
    assert " 22 mm" in done.stdout


def test_output_that_is_cut_off_is_no_traceback(library: Any) -> None:
    command = f"'{sys.executable}' -m sheetgen figures drops --library '{library.root}' | head -1"
    done = subprocess.run(["bash", "-c", command], cwd=ROOT, capture_output=True, text=True, timeout=60, check=False)
    assert "Traceback" not in done.stderr


def test_help_and_version_are_there() -> None:
    for words in (["--help"], ["-h"], ["publish", "--help"], ["figures", "-h"], ["--version"]):
        result = CliRunner().invoke(main, words)
        assert result.exit_code == WELL
        assert result.stdout


@pytest.mark.parametrize(
    ("written", "told"),
    [
        ("<p>{{ sheet.handout.head.title }}</p>\n{{ lenght }}\n", "'lenght' is undefined"),
        ("<p>{{ sheet.handout.head.title }}</p>\n{% if sheet %}\n", "Unexpected end of template"),
        ("<p>{{ sheet.handout.head.title }}</p>\n{{ 1 / 0 }}\n", "division by zero"),
    ],
)
@pytest.mark.usefixtures("quick")
def test_a_fault_in_the_studios_own_theme_is_told_at_its_line(run: Any, library: Any, written: str, told: str) -> None:
    before = run("publish")
    own = library.root / "themes" / "plain"
    own.mkdir(parents=True)
    (own / "project.html.j2").write_text(written, "utf-8")
    again = run("publish")
    assert (before.exit_code, again.exit_code) == (0, 1)
    assert again.stderr.count("themes/plain/project.html.j2:2:1: error: the theme cannot be used") == 1
    assert told in again.stderr
    assert "published 0 projects" in again.stderr + again.stdout


def test_the_house_steps_are_listed_with_what_each_takes(run: Any, library: Any) -> None:
    assert run("steps").stdout == "no house steps in projects/steps\n"
    library.write("steps/a.yaml", 'dry:\n  about: Dried.\n  takes:\n    it:\n    so: ""\n    on: [a, b]\n'
                  '  title: Dry {so}\n  parts: [it, on]\n')  # fmt: skip
    assert run("steps").stdout == "dry: Dried.\n  it: must be given\n  so: else nothing\n  on: else a, b\n"


def test_one_fault_of_a_house_step_counts_once_and_names_its_uses(run: Any, library: Any) -> None:
    library.write("steps/a.yaml", "dry:\n  title: Dry\n  wait: drying\n  uses: [rollr]\n")
    library.change("pendant/project.yaml", "  - title: Dry\n    wait: drying\n", "  - house: dry\n  - house: dry\n")
    result = run("check", "pendant")
    assert result.stdout == f"0 projects well, 1 error, 0 warnings, in {library.root}\n"
    assert result.stderr == (
        "projects/steps/a.yaml:4:10: error: 'rollr' is not in stock\n"
        "    4 |   uses: [rollr]\n"
        "      |          ^^^^^\n"
        "   used at projects/pendant/project.yaml:25:12\n"
        "   used at projects/pendant/project.yaml:26:12\n"
        "   help: did you mean 'roller'?\n"
    )
