"""The commands into the private folder: lists, classes, orders, costs, and what has changed since it was sent."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from sheetgen import pipeline
from sheetgen.base.trouble import CannotBe
from sheetgen.cli.group import main
from sheetgen.cli.terminal import (
    BUILD,
    PRIVATE,
    end,
    library_option,
    looked_on,
    names_argument,
    paper_option,
    private_option,
    say,
    tell,
    told,
    traceback_option,
    wrong,
)

if TYPE_CHECKING:
    from sheetgen.pipeline import Outcome


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
        wrong(str(missing))
    except CannotBe as fault:
        wrong(f"{fault.message}; {fault.help}")
    for line in lines:  # whom to write to, and what moved; why a design does not pass any more is among it
        say(line)
    tell(outcome)
    end(outcome)


@main.command()
@click.argument("wanted", nargs=-1, required=True, metavar="DESIGN[:VERSION]=COUNT...")
@library_option
@traceback_option
@private_option
def shop(wanted: tuple[str, ...], library: Path, private: Path | None) -> None:
    """What so many kits take, without orders: the lists pick, cut, buy and left, in shop/ of the private folder."""
    from sheetgen.runs.shop import shop as shop_lists  # noqa: PLC0415 - only where lists are made

    told(lambda: shop_lists(library, wanted, private or library / PRIVATE, library / BUILD))


@main.command("class")
@click.argument("table", type=click.Path(path_type=Path), metavar="LIST")
@library_option
@traceback_option
@private_option
@paper_option("those of the studio")
def class_(table: Path, library: Path, private: Path | None, paper: str | None) -> None:
    """What a class takes, by its LIST of pupils: lists, tables, teacher’s sheets, in class/ of the private folder."""
    from sheetgen.runs.class_list import class_list  # noqa: PLC0415 - only where a class is made up

    told(lambda: class_list(library, table, private or library / PRIVATE, library / BUILD, paper or ""))


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
    told(lambda: costings(library, wanted, into, library / BUILD, a_class=a_class))


@main.command()
@click.argument("table", type=click.Path(path_type=Path, dir_okay=False, exists=True), metavar="TABLE")
@library_option
@traceback_option
@private_option
@paper_option("the first paper of the studio")
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

    def run() -> tuple[Outcome, list[str]]:
        with looked_on() as progress:
            return made(library, table, private or library / PRIVATE, library / BUILD, wanted, day, progress)

    told(run)
