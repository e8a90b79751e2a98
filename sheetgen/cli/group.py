"""The group of all commands; faults that nobody thought of, and signals that end a run."""

from __future__ import annotations

import gc
import io
import signal
import sys
import traceback
from contextlib import suppress
from typing import Any

import click

from sheetgen.base.program import program_version
from sheetgen.base.trouble import KindFault
from sheetgen.cli.terminal import STOPPED, TROUBLES, USAGE, say


def _version(context: click.Context, _option: click.Parameter, asked: bool) -> None:  # noqa: FBT001 - a flag, by click
    """Tell the version and end, if it is asked for."""
    if not asked:
        return
    click.echo(f"sheetgen {program_version()}")
    context.exit()


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
            say("stopped; what was written until now is whole", err=True)
            sys.exit(STOPPED + signal.SIGINT)
        except KindFault as fault:
            said, code, trace = str(fault), USAGE, traceback.format_exc()
        except Exception as fault:  # noqa: BLE001 - told, and with --traceback shown
            said = f"error: a fault of the program ({type(fault).__name__}: {fault}); please report it"
            code, trace = TROUBLES, traceback.format_exc()
        say(said, err=True)
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
