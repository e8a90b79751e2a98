"""Arguments in, exit code out: 0 well, 1 troubles in the files, 2 wrong usage, 130 and 143 stopped by a signal."""

from __future__ import annotations

import errno
import gc
import io
import json
import re
import signal
import sys
import traceback
from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING, Any, NoReturn

import click

from sheetgen import checking, pipeline, publishing
from sheetgen.base.paths import ours_of
from sheetgen.base.program import program_version
from sheetgen.base.trouble import CannotBe, KindFault, Misplaced, cut, printable
from sheetgen.progress import Lines, Shown

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from rich.console import JustifyMethod

    from sheetgen.pipeline import Outcome

WELL, TROUBLES, USAGE = 0, 1, 2
STOPPED = 128
"""Added to the number of the signal that ended a run, as shells do."""
PRIVATE, BUILD = "private", "build"
FIGURES: Mapping[str, JustifyMethod] = {"Figure": "left", "Label": "left", "Printed": "right", "Range": "right"}
MATERIALS: Mapping[str, JustifyMethod] = {
    "Item": "left", "Name": "left", "Used up": "right", "Have": "right", "Comes back": "right",
}  # fmt: skip
MOVES = re.compile("[\x7f-\x9f\u200e\u200f\u2028-\u202e\u2066-\u2069]")  # a terminal about, and JSON lets it be

library_option = click.option(
    "--library", type=click.Path(path_type=Path, file_okay=False, exists=True), default=".",
    help="The folder that holds projects/ (default: this one).",
)  # fmt: skip
traceback_option = click.option(
    "--traceback", is_flag=True, expose_value=False, callback=lambda context, _option, on: _remember(context, on=on),
    help="Of a fault of the program, show where in it that comes from.",
)  # fmt: skip
private_option = click.option(
    "--private", type=click.Path(path_type=Path), default=None,
    help="The folder of what is nobody else's business (default: private/ in the library).",
)  # fmt: skip
names_argument = click.argument("projects", nargs=-1, metavar="[PROJECT]...")


def _version(context: click.Context, _option: click.Parameter, asked: bool) -> None:  # noqa: FBT001 - a flag, by click
    """Tell the version and end, if it is asked for."""
    if not asked:
        return
    click.echo(f"sheetgen {program_version()}")
    context.exit()


def _remember(context: click.Context, *, on: bool) -> None:
    context.meta["traceback"] = on


class Commands(click.Group):
    """The commands; what nobody thought of is told as a fault of the program."""

    def invoke(self, ctx: click.Context) -> Any:  # noqa: ANN401 - click's own
        """Run a command."""
        try:
            return super().invoke(ctx)
        except (click.ClickException, click.exceptions.Exit, click.Abort, OSError):
            raise
        except KeyboardInterrupt:
            signal.signal(signal.SIGINT, signal.SIG_IGN)  # once is enough
            _say("stopped; what was written until now is whole", err=True)
            sys.exit(STOPPED + signal.SIGINT)
        except KindFault as fault:
            said, code, trace = str(fault), USAGE, traceback.format_exc()
        except Exception as fault:  # noqa: BLE001 - told, and with --traceback shown
            said = f"error: a fault of the program ({type(fault).__name__}: {fault}); please report it"
            code, trace = TROUBLES, traceback.format_exc()
        _say(said, err=True)
        if ctx.meta.get("traceback"):
            click.echo(trace, err=True)
        elif code == TROUBLES:
            click.echo("   help: --traceback shows where in the program it comes from", err=True)
        sys.exit(code)


@click.group(cls=Commands, context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100})
@click.option("--version", is_flag=True, is_eager=True, expose_value=False, callback=_version, help="Tell the version.")
def main() -> None:
    """Works backwards from what a finished piece measures, and publishes sheets to follow at the bench."""
    gc.set_threshold(20_000)  # what is read lives to the end: looking for waste in it finds none
    with suppress(ValueError):  # where this is no process of its own
        signal.signal(signal.SIGTERM, lambda number, _frame: sys.exit(STOPPED + number))
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")  # a terminal without such a letter gets a question mark


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
        _wrong("name the one project that the version is of")
    wanted = publishing.Wanted(projects, version_wanted, sheet, every)
    from rich.console import Console  # noqa: PLC0415 - only where something is shown
    from rich.markup import escape  # noqa: PLC0415

    console = Console(stderr=True)
    build = into or library / "build"
    try:
        if console.is_terminal:
            with console.status("Reading") as status:
                shown = Shown(lambda said: status.update(escape(printable(said))))
                outcome = publishing.published(library, build, wanted, shown)
        else:
            outcome = publishing.published(library, build, wanted, Lines(lambda said: _say(said, err=True)))
    except pipeline.NotReady as missing:
        _wrong(str(missing))
    except OSError as fault:
        _wrong(_unwritten(build, fault))
    _tell(outcome)
    done = f"published {_count(len(outcome.published), 'project')}, {_count(len(outcome.changed), 'file')} changed"
    in_trouble = len(set(outcome.failed))
    failed = f"; {_count(in_trouble, 'project')} in trouble, last good sheets kept" if in_trouble else ""
    if outcome.kept:
        _say(f"kept what is printed, to be put under version control: {', '.join(outcome.kept)}", err=True)
    alone = f"; {_count(outcome.alone, 'sheet')} left alone" if outcome.alone else ""
    ours = f"; what is the studio's alone, in {ours_of(build)}" if outcome.ours else ""
    click.echo(f"{done}{alone}, in {build}{ours}{failed}; read from {library.resolve()}")
    _end(outcome)


@main.command()
@names_argument
@library_option
@traceback_option
def check(projects: tuple[str, ...], library: Path) -> None:
    """Read, work and check everything; write nothing. What stands as it was published was checked then."""
    outcome = checking.checked(library, library / BUILD, projects)
    _tell(outcome)
    said = [outcome.said[name] for name in sorted(outcome.said)]
    for line in (line for both in zip(*said, strict=True) for lines in both for line in lines):
        _say(" ".join(line.split()))
    told = outcome.troubles.gathered()
    errors = sum(trouble.severity == "error" for trouble in told)
    warnings = len(told) - errors
    found = f"{_count(errors, 'error')}, {_count(warnings, 'warning')}"
    click.echo(f"{_count(len(said), 'project')} well, {found}, in {library.resolve()}")
    _end(outcome)


@main.command()
@names_argument
@library_option
@traceback_option
@click.option(
    "--since", default="", metavar="REVISION", help="From which revision on (default: what was printed last)."
)
@private_option
def changes(projects: tuple[str, ...], library: Path, since: str, private: Path | None) -> None:
    """Show which printed numbers have moved since a revision, by which edit, what no longer passes, whom to write to.

    With --private, that is written into changes/ of this folder too, for a spreadsheet.
    """
    from sheetgen.runs.changes import changes as changes_told  # noqa: PLC0415 - only where it is wanted

    try:
        outcome, lines = changes_told(library, projects, since, private or library / PRIVATE, private)
    except pipeline.NotReady as missing:
        _wrong(str(missing))
    except CannotBe as fault:
        _wrong(f"{fault.message}; {fault.help}")
    for line in lines:  # whom to write to, and what moved; why a design does not pass any more is among it
        _say(line)
    _tell(outcome)
    _end(outcome)


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
        _wrong(f"name a project of {library.resolve()}: {known}")
    choices = {}
    for change in changes:
        name, sign, value = change.partition("=")
        if not sign or not name.strip() or not value.strip():
            _wrong(f"--with wants NAME=VALUE, not '{change}'")
        if not change.isprintable():
            _wrong(f"--with wants signs that can be printed, not {change!a}")
        choices[name.strip()] = value.strip()
    click.echo(f"read from {library.resolve()}", err=True)
    main = not (as_json or version_wanted or choices)  # what is tried must hold in each version
    outcome = pipeline.reckon_through(library, projects, choices, main=main)
    _tell(outcome)
    if as_json:
        told = pipeline.figures_as_data(outcome)
        data = json.dumps(told[0] if len(told) == 1 else told, ensure_ascii=False, indent=1)
        click.echo(MOVES.sub(lambda found: f"\\u{ord(found[0]):04x}", data))
    else:
        try:
            for title, rows, materials in pipeline.figures_told(outcome, version_wanted):
                _table(title, FIGURES, rows, working=working)
                if materials:
                    _table("Materials", MATERIALS, materials, working=working)
            for line in pipeline.notes_told(outcome, version_wanted, main=True):
                click.echo(line)
            for filed in outcome.library.projects if outcome.library and not working else ():
                for line in to_order(filed.project):
                    _say(line)
        except CannotBe as fault:
            _wrong(f"{fault.message}; {fault.help}")
    _end(outcome)


@main.command()
@click.argument("wanted", nargs=-1, required=True, metavar="DESIGN[:VERSION]=COUNT...")
@library_option
@traceback_option
@private_option
def shop(wanted: tuple[str, ...], library: Path, private: Path | None) -> None:
    """What so many kits take, without orders: the lists pick, cut, buy and left, in shop/ of the private folder."""
    from sheetgen.runs.shop import shop as shop_lists  # noqa: PLC0415 - only where lists are made

    _told(lambda: shop_lists(library, wanted, private or library / PRIVATE, library / "build"))


@main.command("class")
@click.argument("table", type=click.Path(path_type=Path), metavar="LIST")
@library_option
@traceback_option
@private_option
def class_(table: Path, library: Path, private: Path | None) -> None:
    """What a class takes, by its LIST of pupils: lists, tables, teacher’s sheets, in class/ of the private folder."""
    from sheetgen.runs.class_list import class_list  # noqa: PLC0415 - only where a class is made up

    _told(lambda: class_list(library, table, private or library / PRIVATE, library / "build"))


@main.command()
@click.argument("wanted", nargs=-1, required=True, metavar="TABLE | DESIGN[:VERSION][=COUNT]...")
@click.option("--class", "a_class", is_flag=True, help="As a class makes it: its people, evenings and loads.")
@library_option
@traceback_option
@private_option
def cost(wanted: tuple[str, ...], library: Path, private: Path | None, a_class: bool) -> None:  # noqa: FBT001 - a flag, by click # noqa: E501
    """What a piece costs, a run of kits (each with its COUNT), or a class; and lists, in cost/ of the private folder.

    A TABLE of orders is costed as the run that 'orders' makes of it, one of pupils as the class that 'class' makes of
    it. What the studio reckons with stands in till.yaml of that folder.
    """
    from sheetgen.runs.cost import cost as costings  # noqa: PLC0415 - only where lists are made

    into = private or library / PRIVATE
    _told(lambda: costings(library, wanted, into, library / "build", a_class=a_class))


@main.command()
@click.argument("table", type=click.Path(path_type=Path, dir_okay=False, exists=True), metavar="TABLE")
@library_option
@traceback_option
@private_option
@click.option("--paper", type=click.Choice(["A4", "Letter"], case_sensitive=False), default=None, help="What it is printed on (default: the first paper of the studio).")  # fmt: skip # noqa: E501
@click.option("--labels-gone", type=click.IntRange(0), default=0, metavar="NUMBER", help="So many labels of the first sheet are gone already.")  # fmt: skip # noqa: E501
@click.option("--apart", is_flag=True, help="A PDF for each order besides, to be mailed.")
@click.option("--lists-alone", is_flag=True, help="Only the lists; nothing is printed for anybody, and nothing counts as sent.")  # fmt: skip # noqa: E501
def orders(  # noqa: PLR0913, PLR0917 - what a person may ask for, by click
    table: Path, library: Path, private: Path | None, paper: str | None, labels_gone: int,
    apart: bool, lists_alone: bool,  # noqa: FBT001 - flags, by click
) -> None:  # fmt: skip
    """From a spreadsheet of orders to what is packed from: the stack of sheets, kit cards, labels and lists."""
    from datetime import datetime  # noqa: PLC0415 - only here is it today

    from sheetgen.runs.order_files import Wanted  # noqa: PLC0415 - only where a run is made
    from sheetgen.runs.orders import orders as made  # noqa: PLC0415

    wanted = Wanted(paper or "", labels_gone, apart, lists_alone)
    day = datetime.now().astimezone().date()
    _told(lambda: made(library, table, private or library / PRIVATE, library / "build", wanted, day))


@main.command()
@click.argument("names", nargs=-1, metavar="[KIND]...")
@library_option
@traceback_option
@click.option("--words", is_flag=True, help="What a kind of your own may say: formulas, roundings, roles.")
def kinds(names: tuple[str, ...], library: Path, words: bool) -> None:  # noqa: FBT001 - a flag, by click
    """Show what kinds of part there are, the library's own too, with their fields and figures."""
    if words:
        _say(pipeline.words_told(), nl=False)
        return
    click.echo(f"read from {library.resolve()}", err=True)
    try:
        _say(pipeline.kinds_told(library, " ".join(names)), nl=False)
    except CannotBe as fault:
        _wrong(f"{fault.message}; {fault.help}")


@main.command()
@library_option
@traceback_option
def steps(library: Path) -> None:
    """Show the house steps that projects may use, with what each takes."""
    click.echo(f"read from {library.resolve()}", err=True)
    _say(pipeline.house_steps_told(library), nl=False)


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
        _wrong(f"{fault.filename2 or fault.filename} cannot be written: {fault.strerror}")
    _tell(outcome)
    for line in lines:
        _say(line)
    _end(outcome)


@main.command()
@traceback_option
def theme() -> None:
    """Show what a theme gets for each sheet, what it may load, and what it must print."""
    _say(pipeline.theme_told(), nl=False)


def _table(title: str, columns: Mapping[str, JustifyMethod], rows: list[tuple[str, ...]], *, working: bool) -> None:
    """A table, the last column of its rows, which is the working, only if it is wanted."""
    from rich.console import Console  # noqa: PLC0415
    from rich.table import Table  # noqa: PLC0415
    from rich.text import Text  # noqa: PLC0415 - what stands in brackets in a word is no style

    table = Table(title=Text(printable(title), style="table.title"), title_justify="left", box=None, pad_edge=False)
    for column, justify in columns.items():
        table.add_column(column, justify=justify, overflow="fold")
    if working:
        table.add_column("Working", overflow="fold")
    for row in rows:
        table.add_row(*(Text(printable(cell)) for cell in (row if working else row[:-1])))
    console = Console(highlight=False)
    if not console.is_terminal:
        console = Console(highlight=False, width=200 if working else 140)
    console.print(table)


def _told(run: Callable[[], tuple[Outcome, list[str]]]) -> NoReturn:
    """Run what writes into the private folder, tell its troubles and then its lines, and end."""
    try:
        outcome, told = run()
    except pipeline.NotReady as missing:
        _wrong(str(missing))
    except Misplaced as fault:
        click.echo(str(fault.trouble), err=True)
        sys.exit(TROUBLES)
    _tell(outcome)
    for line in told:
        _say(line)
    _end(outcome)


def _tell(outcome: Outcome) -> None:
    for trouble in cut(outcome.troubles.gathered()):
        click.echo(str(trouble), err=True)
    if click.get_current_context().meta.get("traceback"):
        for fault in outcome.faults:
            click.echo(fault, err=True)


def _end(outcome: Outcome) -> NoReturn:
    """What stands in no file was typed on the command line: a project, a choice or a folder that there is not."""
    if any(trouble.place is None for trouble in outcome.troubles.errors):
        sys.exit(USAGE)
    sys.exit(TROUBLES if outcome.troubles.errors else WELL)


def _unwritten(build: Path, fault: OSError) -> str:
    """Why a run has ended early, in one sentence; what was published until then stands, and the next run goes on."""
    if fault.filename and not Path(fault.filename).resolve().is_relative_to(build.resolve()):
        return f"{fault.filename} cannot be read: {fault.strerror}"
    mend = "; make room on the disk and publish again" if fault.errno in {errno.ENOSPC, errno.EDQUOT} else ""
    return f"{build} cannot be written: {fault.strerror}{mend}"


def _wrong(said: str) -> NoReturn:
    _say(f"error: {said}", err=True)
    sys.exit(USAGE)


def _say(text: str, *, err: bool = False, nl: bool = True) -> None:
    """Lines that words of files stand in."""
    click.echo("\n".join(map(printable, text.split("\n"))), err=err, nl=nl)


def _count(n: int, what: str) -> str:
    return f"{n} {what}{'' if n == 1 else 's'}"
