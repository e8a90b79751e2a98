"""The commands that only show: a design's numbers, kinds of part, house steps, what a theme gets."""

from __future__ import annotations

import json
import re
from typing import TYPE_CHECKING

import click

from sheetgen import pipeline, telling
from sheetgen.base.trouble import CannotBe
from sheetgen.cli.group import main
from sheetgen.cli.terminal import end, library_option, names_argument, say, table, tell, traceback_option, wrong

if TYPE_CHECKING:
    from collections.abc import Mapping
    from pathlib import Path

    from rich.console import JustifyMethod

FIGURES: Mapping[str, JustifyMethod] = {"Figure": "left", "Label": "left", "Printed": "right", "Range": "right"}
MATERIALS: Mapping[str, JustifyMethod] = {
    "Item": "left", "Name": "left", "Used up": "right", "Have": "right", "Comes back": "right",
}  # fmt: skip
MOVES = re.compile("[\x7f-\x9f\u200e\u200f\u2028-\u202e\u2066-\u2069]")  # a terminal about, and JSON lets it be


@main.command()
@names_argument
@library_option
@traceback_option
@click.option("--version", "version_wanted", default=None, help="One version (default: the main one).")
@click.option("--with", "changes", multiple=True, metavar="NAME=VALUE", help="Try another value for a choice.")
@click.option("--working", is_flag=True, help="Show how each number was worked.")
@click.option("--json", "as_json", is_flag=True, help="All versions as JSON, unrounded.")
def figures(  # noqa: PLR0913, PLR0917 - what a person may ask for, by click
    projects: tuple[str, ...], library: Path, version_wanted: str | None, changes: tuple[str, ...],
    working: bool, as_json: bool,  # noqa: FBT001 - flags, by click
) -> None:  # fmt: skip
    """Show a project's numbers, and what orders may say of it."""
    from sheetgen.runs.to_order import to_order  # noqa: PLC0415 - heavy, as all of `runs`

    if not projects:
        known = ", ".join(pipeline.projects_of(library)) or "there is none"
        wrong(f"name a project of {library.resolve()}: {known}")
    choices = {}
    for change in changes:
        name, sign, value = change.partition("=")
        if not sign or not name.strip() or not value.strip():
            wrong(f"--with wants NAME=VALUE, not '{change}'")
        if not change.isprintable():
            wrong(f"--with wants signs that can be printed, not {change!a}")
        choices[name.strip()] = value.strip()
    click.echo(f"read from {library.resolve()}", err=True)
    main = not (as_json or version_wanted or choices)  # what is tried must hold in each version
    outcome = pipeline.reckon_through(library, projects, choices, main=main)
    tell(outcome)
    if as_json:
        told = telling.figures_as_data(outcome)
        data = json.dumps(told[0] if len(told) == 1 else told, ensure_ascii=False, indent=1)
        click.echo(MOVES.sub(lambda found: f"\\u{ord(found[0]):04x}", data))
    else:
        try:
            for title, rows, materials in telling.figures_told(outcome, version_wanted):
                table(title, FIGURES, rows, working=working)
                if materials:
                    table("Materials", MATERIALS, materials, working=working)
            for line in pipeline.notes_told(outcome, version_wanted, main=True):
                click.echo(line)
            mains = {worked.name: worked.main for worked in outcome.worked}
            for filed in outcome.library.projects if outcome.library and not working else ():
                for line in to_order(filed.project, mains.get(filed.name)):
                    say(line)
        except CannotBe as fault:
            wrong(f"{fault.message}; {fault.help}")
    end(outcome)


@main.command()
@click.argument("names", nargs=-1, metavar="[KIND]...")
@library_option
@traceback_option
@click.option("--words", is_flag=True, help="What a kind of your own may say: formulas, roundings, roles.")
def kinds(names: tuple[str, ...], library: Path, words: bool) -> None:  # noqa: FBT001 - a flag, by click
    """Show what kinds of part there are, the library's own too, with their fields and figures."""
    if words:
        say(telling.words_told(), nl=False)
        return
    click.echo(f"read from {library.resolve()}", err=True)
    try:
        say(telling.kinds_told(library, " ".join(names)), nl=False)
    except CannotBe as fault:
        wrong(f"{fault.message}; {fault.help}")


@main.command()
@library_option
@traceback_option
def steps(library: Path) -> None:
    """Show the house steps that projects may use, with what each takes."""
    click.echo(f"read from {library.resolve()}", err=True)
    say(telling.house_steps_told(library), nl=False)


@main.command()
@traceback_option
def theme() -> None:
    """Show what a theme gets for each sheet, what it may load, and what it must print."""
    say(telling.theme_told(), nl=False)
