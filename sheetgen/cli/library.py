"""The commands on a library: publish, check, and project files into the newest format."""

from __future__ import annotations

from pathlib import Path

import click

from sheetgen import checking, pipeline, publishing
from sheetgen.base.paths import ours_of
from sheetgen.base.spelling import counted
from sheetgen.cli.group import main
from sheetgen.cli.terminal import (
    BUILD,
    end,
    library_option,
    looked_on,
    names_argument,
    say,
    tell,
    traceback_option,
    unwritten,
    wrong,
)


@main.command()
@names_argument
@library_option
@traceback_option
@click.option("--into", type=click.Path(path_type=Path, file_okay=False), default=None, help="Where to publish (default: build/ in the library).")  # fmt: skip # noqa: E501
@click.option("--version", "version_wanted", default="", help="Of a project, one version alone.")
@click.option("--sheet", default="", help="Of each version, one sheet alone, such as 'bench card'.")
@click.option("--all", "every", is_flag=True, help="Print also what is as it was.")
def publish(  # noqa: PLR0913, PLR0917 - what a person may ask for, by click
    projects: tuple[str, ...], library: Path, into: Path | None, version_wanted: str, sheet: str,
    every: bool,  # noqa: FBT001 - a flag, by click
) -> None:  # fmt: skip
    """Publish handouts and the index: all projects, or those named. What is as it was is left alone."""
    if version_wanted and len(projects) != 1:
        wrong("name the one project that the version is of")
    wanted = publishing.Wanted(projects, version_wanted, sheet, every)
    build = into or library / BUILD
    try:
        with looked_on() as progress:
            outcome = publishing.published(library, build, wanted, progress)
    except pipeline.NotReady as missing:
        wrong(str(missing))
    except OSError as fault:
        wrong(unwritten(build, fault))
    tell(outcome)
    done = f"published {counted(len(outcome.published), 'project')}, {counted(len(outcome.changed), 'file')} changed"
    in_trouble = len(set(outcome.failed))
    failed = f"; {counted(in_trouble, 'project')} in trouble, last good sheets kept" if in_trouble else ""
    if outcome.kept:
        say(f"kept what is printed, to be put under version control: {', '.join(outcome.kept)}", err=True)
    alone = f"; {counted(outcome.alone, 'sheet')} left alone" if outcome.alone else ""
    ours = f"; what is the studio's alone, in {ours_of(build)}" if outcome.ours else ""
    click.echo(f"{done}{alone}, in {build}{ours}{failed}; read from {library.resolve()}")
    end(outcome)


@main.command()
@names_argument
@library_option
@traceback_option
def check(projects: tuple[str, ...], library: Path) -> None:
    """Read, work and check everything; write nothing. What stands as it was published was checked then."""
    outcome = checking.checked(library, library / BUILD, projects)
    tell(outcome)
    said = [outcome.said[name] for name in sorted(outcome.said)]
    for line in (line for both in zip(*said, strict=True) for lines in both for line in lines):
        say(" ".join(line.split()))
    told = outcome.troubles.gathered()
    errors = sum(trouble.severity == "error" for trouble in told)
    warnings = len(told) - errors
    found = f"{counted(errors, 'error')}, {counted(warnings, 'warning')}"
    click.echo(f"{counted(len(said), 'project')} well, {found}, in {library.resolve()}")
    end(outcome)


@main.command()
@names_argument
@library_option
@traceback_option
@click.option("--show", is_flag=True, help="Show what would be otherwise, and write nothing.")
def upgrade(projects: tuple[str, ...], library: Path, show: bool) -> None:  # noqa: FBT001 - a flag, by click
    """Bring project files into the newest format: show what is otherwise, and keep each as it was beside it."""
    from sheetgen.upgrading import upgrade as upgraded  # noqa: PLC0415 - only where it is wanted

    try:
        outcome, lines = upgraded(library, projects, write=not show)
    except OSError as fault:
        wrong(f"{fault.filename2 or fault.filename} cannot be written: {fault.strerror}")
    tell(outcome)
    for line in lines:
        say(line)
    end(outcome)
