"""python -m sheetgen."""

from sheetgen.cli import main

if __name__ == "__main__":  # the printing processes read this file again
    main()
