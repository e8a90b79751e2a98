"""Arguments in, exit code out: 0 well, 1 troubles in the files, 2 wrong usage."""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

import click

from sheetgen import pipeline

if TYPE_CHECKING:
    from sheetgen.model.worked import Worked
    from sheetgen.pipeline import Outcome

WELL, TROUBLES, USAGE = 0, 1, 2

library_option = click.option(
    "--library", type=click.Path(path_type=Path, file_okay=False, exists=True), default=".",
    help="The folder that holds projects/ (default: this one).",
)  # fmt: skip
names_argument = click.argument("projects", nargs=-1, metavar="[PROJECT]...")


@click.group(context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100})
@click.version_option(package_name="sheetgen", message="%(prog)s %(version)s")
def main() -> None:
    """Works backwards from what a finished piece measures, and publishes sheets to follow at the bench."""


@main.command()
@names_argument
@library_option
@click.option("--into", type=click.Path(path_type=Path, file_okay=False), default=None, help="Where to publish (default: build/ in the library).")  # fmt: skip # noqa: E501
def publish(projects: tuple[str, ...], library: Path, into: Path | None) -> None:
    """Publish handouts and the index: all projects, or those named."""
    from rich.console import Console  # noqa: PLC0415 - only where something is shown

    from sheetgen.render.pdf import NoPango  # noqa: PLC0415

    console = Console(stderr=True)
    build = into or library / "build"
    try:
        if console.is_terminal:
            with console.status("Reading") as status:
                outcome = pipeline.publish(library, build, projects, lambda said: status.update(f"Printing {said}"))
        else:
            outcome = pipeline.publish(library, build, projects, lambda said: click.echo(f"printing {said}", err=True))
    except NoPango as missing:
        click.echo(f"error: {missing}", err=True)
        sys.exit(USAGE)
    except OSError as fault:
        click.echo(f"error: {build} cannot be written: {fault.strerror}", err=True)
        sys.exit(USAGE)
    _tell(outcome)
    done = f"published {_count(len(outcome.published), 'project')}, {_count(len(outcome.changed), 'file')} changed"
    in_trouble = len(set(outcome.failed))
    failed = f"; {_count(in_trouble, 'project')} in trouble, last good sheets kept" if in_trouble else ""
    click.echo(f"{done}, in {build}{failed}")
    _end(outcome)


@main.command()
@names_argument
@library_option
def check(projects: tuple[str, ...], library: Path) -> None:
    """Read, work and check everything; write nothing."""
    outcome = pipeline.work_through(library, projects)
    _tell(outcome)
    errors, warnings = len(outcome.troubles.errors), len(outcome.troubles) - len(outcome.troubles.errors)
    click.echo(
        f"{_count(len(outcome.worked), 'project')} well, {_count(errors, 'error')}, {_count(warnings, 'warning')}"
    )
    _end(outcome)


@main.command()
@names_argument
@library_option
@click.option("--version", "version_wanted", default=None, help="One version (default: the main one).")
@click.option("--with", "changes", multiple=True, metavar="NAME=VALUE", help="Try another value for a choice.")
@click.option("--working", is_flag=True, help="Show how each number was worked.")
@click.option("--json", "as_json", is_flag=True, help="All versions as JSON, unrounded.")
def figures(  # noqa: PLR0913, PLR0917 - what a person may ask for, by click
    projects: tuple[str, ...], library: Path, version_wanted: str | None, changes: tuple[str, ...],
    working: bool, as_json: bool,  # noqa: FBT001 - flags, by click
) -> None:  # fmt: skip
    """Show a project's numbers."""
    if not projects:
        _wrong("name a project, such as: sheetgen figures buoy-drops")
    choices = {}
    for change in changes:
        name, sign, value = change.partition("=")
        if not sign or not name.strip() or not value.strip():
            _wrong(f"--with wants NAME=VALUE, not '{change}'")
        choices[name.strip()] = value.strip()
    outcome = pipeline.work_through(library, projects, choices)
    _tell(outcome)
    told = []
    for worked in outcome.worked:
        if as_json:
            from sheetgen.render.pages import figures_json  # noqa: PLC0415 - heavy

            told.append(json.loads(figures_json(worked)))
        else:
            _table(worked, version_wanted, working=working)
    if as_json:
        click.echo(json.dumps(told[0] if len(told) == 1 else told, ensure_ascii=False, indent=1))
    _end(outcome)


@main.command()
@click.argument("names", nargs=-1, metavar="[KIND]...")
def kinds(names: tuple[str, ...]) -> None:
    """Show what kinds of part there are, with their fields and figures; made from the code."""
    from sheetgen.base.spelling import suggest  # noqa: PLC0415
    from sheetgen.parts import described  # noqa: PLC0415
    from sheetgen.parts.catalogue import kinds as all_kinds  # noqa: PLC0415

    known = all_kinds()
    wanted = [" ".join(names)] if " ".join(names) in known else list(names)
    for name in wanted:
        if name not in known:
            _wrong(f"there is no kind '{name}'; {suggest(name, known)}")
    for name, kind in known.items():
        if wanted and name not in wanted:
            continue
        click.echo(f"{name}\n  {described.summary(kind)}\n  {described.model(kind)}\n  fields")
        for line in described.fields(kind):
            default = f" [{line.default}]" if line.default else " [must be given]"
            click.echo(f"    {line.name}: {line.about} ({line.takes}){default}")
        click.echo("  figures")
        for line in described.figures(kind):
            click.echo(f"    {line.name}: {line.default}, {line.takes}")
        click.echo("")


def _table(worked: Worked, version_wanted: str | None, *, working: bool) -> None:
    from rich.console import Console  # noqa: PLC0415
    from rich.table import Table  # noqa: PLC0415

    from sheetgen.base.spelling import suggest  # noqa: PLC0415
    from sheetgen.render.numbers import Numbers  # noqa: PLC0415

    name = version_wanted or worked.main.name
    if name not in worked.versions:
        _wrong(f"there is no version '{name}' of {worked.filed.name}; {suggest(name, worked.versions)}")
    numbers = Numbers(worked.rounder)
    title = f"{worked.filed.project.title}" + ("" if name == worked.main.name else f", {name}")
    table = Table(title=title, title_justify="left", box=None, pad_edge=False)
    for column, justify in (("Figure", "left"), ("Label", "left"), ("Printed", "right"), ("Range", "right")):
        table.add_column(column, justify=justify, overflow="fold")  # type: ignore[arg-type]
    if working:
        table.add_column("Working", overflow="fold")
    for key, figure in worked.versions[name].figures.items():
        value = figure.value
        span = "" if value.exact else f"{value.low:.4g} – {value.high:.4g}"
        printed = str(numbers.words(figure).striptags()).replace("\u00a0", " ").replace("\u202f", "")
        row = [key, figure.label, printed, span]
        table.add_row(*row, *([figure.working] if working else []))
    console = Console(highlight=False)
    if not console.is_terminal:
        console = Console(highlight=False, width=200 if working else 140)
    console.print(table)


def _tell(outcome: Outcome) -> None:
    for trouble in outcome.troubles:
        click.echo(str(trouble), err=True)


def _end(outcome: Outcome) -> NoReturn:
    sys.exit(TROUBLES if outcome.troubles.errors else WELL)


def _wrong(said: str) -> NoReturn:
    click.echo(f"error: {said}", err=True)
    sys.exit(USAGE)


def _count(n: int, what: str) -> str:
    return f"{n} {what}{'' if n == 1 else 's'}"
