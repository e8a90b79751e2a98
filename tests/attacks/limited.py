"""Tries pictures one by one as a page's, each in a process of its own that may not take long nor much: a command.

What became of each is printed as JSON, a line a picture: `refused` (why), `printed` (how many bytes), or `died`.
"""

from __future__ import annotations

import json
import os
import resource
import sys
from pathlib import Path

from sheetgen.base.trouble import CannotBe
from sheetgen.pictures import bitmap, drawing
from sheetgen.pictures.ready import ready
from sheetgen.render.pdf import Printer
from tests.hanging import SECONDS

MEMORY = 500_000_000  # bytes of address space
PAGE = "<html lang=en><head><title>x</title></head><body><img alt=x style='width:160mm' src='{}'></body></html>"
MODULES = (bitmap, drawing)  # read before the clock begins: a library reads them once


def tried(path: Path, printer: Printer) -> dict[str, object]:
    """What becomes of a picture."""
    try:
        made = ready(path.name, path.read_bytes())
    except CannotBe as fault:
        return {"refused": fault.message, "help": fault.help}
    return {"printed": len(printer.pdf(PAGE.format(made.uri), "x")), "data": made.data.decode("latin-1")}


def alone(path: Path, printer: Printer) -> dict[str, object]:
    """The same, in a process with limits."""
    reading, writing = os.pipe()
    child = os.fork()
    if not child:
        os.close(reading)
        resource.setrlimit(resource.RLIMIT_CPU, (SECONDS, SECONDS))
        resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
        try:
            said = tried(path, printer)
        except BaseException as fault:  # noqa: BLE001 - whatever gets out of it is what we are after
            said = {"died": f"{type(fault).__name__}: {fault}"[:200]}
        with os.fdopen(writing, "w") as out:
            json.dump(said, out)
        os._exit(0)
    os.close(writing)
    with os.fdopen(reading) as told:
        said = json.loads(told.read() or '{"died": "past its limits"}')
    _, _, used = os.wait4(child, 0)
    return {"name": path.name, "seconds": used.ru_utime + used.ru_stime, "memory": used.ru_maxrss * 1024, **said}


def main() -> None:
    printer = Printer()
    printer.pdf(PAGE.format(""), "x")  # its type faces are read once
    for path in map(Path, sys.argv[1:]):
        print(json.dumps(alone(path, printer)), flush=True)  # noqa: T201 - a command


if __name__ == "__main__":
    main()
