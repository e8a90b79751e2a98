"""Arguments in, exit code out: 0 well, 1 troubles in the files, 2 wrong usage, 130 and 143 stopped by a signal."""

from sheetgen.cli import library, look, private
from sheetgen.cli.group import main
from sheetgen.cli.terminal import TROUBLES, USAGE, WELL

__all__ = ("TROUBLES", "USAGE", "WELL", "library", "look", "main", "private")
