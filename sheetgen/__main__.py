"""python -m sheetgen."""

from sheetgen.cli import main

main()
