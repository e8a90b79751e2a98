"""What a terminal is told: lines, tables, troubles and exit codes; and the options that several commands have."""

from __future__ import annotations

import errno
import sys
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

import click

from sheetgen import pipeline
from sheetgen.base.trouble import Misplaced, cut, printable
from sheetgen.progress import Lines, Shown

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Mapping

    from rich.console import JustifyMethod

    from sheetgen.pipeline import Outcome
    from sheetgen.progress import Progress

WELL, TROUBLES, USAGE = 0, 1, 2
STOPPED = 128
"""Added to the number of the signal that ended a run, as shells do."""
PRIVATE, BUILD = "private", "build"
"""The folders of a library where none is named: what is nobody else's business, and what is published."""

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


def paper_option(otherwise: str) -> Callable[[Callable[..., None]], Callable[..., None]]:
    """The one paper that a command prints on."""
    papers = click.Choice(["A4", "Letter"], case_sensitive=False)
    return click.option("--paper", type=papers, default=None, help=f"What it is printed on (default: {otherwise}).")


names_argument = click.argument("projects", nargs=-1, metavar="[PROJECT]...")


def _remember(context: click.Context, *, on: bool) -> None:
    context.meta["traceback"] = on


def table(title: str, columns: Mapping[str, JustifyMethod], rows: list[tuple[str, ...]], *, working: bool) -> None:
    """A table, the last column of its rows, which is the working, only if it is wanted."""
    from rich.console import Console  # noqa: PLC0415
    from rich.table import Table  # noqa: PLC0415
    from rich.text import Text  # noqa: PLC0415 - what stands in brackets in a word is no style

    shown = Table(title=Text(printable(title), style="table.title"), title_justify="left", box=None, pad_edge=False)
    for column, justify in columns.items():
        shown.add_column(column, justify=justify, overflow="fold")
    if working:
        shown.add_column("Working", overflow="fold")
    for row in rows:
        shown.add_row(*(Text(printable(cell)) for cell in (row if working else row[:-1])))
    console = Console(highlight=False)
    if not console.is_terminal:
        console = Console(highlight=False, width=200 if working else 140)
    console.print(shown)


@contextmanager
def looked_on() -> Iterator[Progress]:
    """What is told while something is printed: a line that changes where somebody looks on, else a line for each."""
    from rich.console import Console  # noqa: PLC0415 - only where something is shown
    from rich.markup import escape  # noqa: PLC0415

    console = Console(stderr=True)
    if console.is_terminal:
        with console.status("Reading") as status:
            yield Shown(lambda said: status.update(escape(printable(said))))
    else:
        yield Lines(lambda said: say(said, err=True))


def told(run: Callable[[], tuple[Outcome, list[str]]]) -> NoReturn:
    """Run what writes into the private folder, tell its troubles and then its lines, and end."""
    try:
        outcome, told = run()
    except pipeline.NotReady as missing:
        wrong(str(missing))
    except Misplaced as fault:
        click.echo(str(fault.trouble), err=True)
        sys.exit(TROUBLES)
    tell(outcome)
    for line in told:
        say(line)
    end(outcome)


def tell(outcome: Outcome) -> None:
    """Every trouble with its place and mend, and with --traceback where in the program a fault comes from."""
    for trouble in cut(outcome.troubles.gathered()):
        click.echo(str(trouble), err=True)
    if click.get_current_context().meta.get("traceback"):
        for fault in outcome.faults:
            click.echo(fault, err=True)


def end(outcome: Outcome) -> NoReturn:
    """What stands in no file was typed on the command line: a project, a choice or a folder that there is not."""
    if any(trouble.place is None for trouble in outcome.troubles.errors):
        sys.exit(USAGE)
    sys.exit(TROUBLES if outcome.troubles.errors else WELL)


def unwritten(build: Path, fault: OSError) -> str:
    """Why a run has ended early, in one sentence; what was published until then stands, and the next run goes on."""
    if fault.filename and not Path(fault.filename).resolve().is_relative_to(build.resolve()):
        return f"{fault.filename} cannot be read: {fault.strerror}"
    mend = "; make room on the disk and publish again" if fault.errno in {errno.ENOSPC, errno.EDQUOT} else ""
    return f"{build} cannot be written: {fault.strerror}{mend}"


def wrong(said: str) -> NoReturn:
    """End with what is wrong with what was typed."""
    say(f"error: {said}", err=True)
    sys.exit(USAGE)


def say(text: str, *, err: bool = False, nl: bool = True) -> None:
    """Lines that words of files stand in."""
    click.echo("\n".join(map(printable, text.split("\n"))), err=err, nl=nl)
