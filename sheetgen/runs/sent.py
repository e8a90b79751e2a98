"""What a run of orders sends, into the private list, with the numbers of what no ledger of a design has."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.program import program_version
from sheetgen.base.trouble import CannotBe, Troubles
from sheetgen.kits.coded import kept_of_kit
from sheetgen.kits.contents import contents
from sheetgen.kits.run import taken
from sheetgen.kits.sent import sent_of
from sheetgen.model.ledger import Ledger
from sheetgen.model.sent import FILE, FOLDER, not_there, sent_again
from sheetgen.publish.ledgers import ledger_text
from sheetgen.publish.private import write_private
from sheetgen.publish.sent import added_to
from sheetgen.read.ledgers import read_ledgers
from sheetgen.read.sent import read_sent

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Iterator, Sequence
    from pathlib import Path

    from sheetgen.kits.ordered import Run
    from sheetgen.kits.taken import Taken
    from sheetgen.model.sent import SentList


def sent_list(private: Path, troubles: Troubles) -> SentList:
    """The list as it is, before anything is printed. CannotBe for one that cannot be added to, its faults told."""
    if (private / FILE).is_symlink():
        helped = "put the list itself there: what is added would stay here, and the list that it leads to would lack it"
        raise CannotBe(f"{FILE} is a link", help=helped)
    there = read_sent(private / FILE, FILE, troubles)
    if there is None:
        raise CannotBe(f"{FILE} is no list of what was sent", help="mend what is told of it, or put it elsewhere")
    added_to(there, ())
    return there


class Kept(NamedTuple):
    """How many lines a run adds to the list, and the orders of which something had been sent before."""

    added: int
    again: frozenset[str]


def keep_sent(root: Path, private: Path, there: SentList, run: Run, day: dt.date) -> Kept:
    """Add what a run sends on a day to the list, each line that is not there already.

    CannotBe where a line cannot be added, OSError where nothing can be written: then the list is as it was.
    """
    took = taken(run.kinds)
    sent = sent_of(run, took, day)
    new, again = not_there(sent, there.lines), frozenset(sent_again(sent, there.lines))
    if not new:
        return Kept(0, again)
    path = private / FILE
    if (path.read_bytes() if path.exists() else b"") != there.there:
        raise CannotBe(f"{FILE} was changed while the run was made", help="run the orders once more")
    content = added_to(there, new)
    if numbers := dict(_numbers(root, run, took, {one.code for one in new})):
        write_private(private, FOLDER, numbers)
    write_private(private, "", {FILE: content})
    return Kept(len(new), again)


def numbers_file(design: str, code: str) -> str:
    """Where the numbers of a fingerprint lie, below the folder of what was sent."""
    return f"{design}-{code.lower()}.json"


def _numbers(root: Path, run: Run, took: Sequence[Taken], codes: set[str]) -> Iterator[tuple[str, bytes]]:
    """The printed numbers of each kit of which no ledger of its design has the fingerprint, each as a ledger."""
    known: dict[str, set[str]] = {}
    for kits in (one for one in run.kinds if not one.only):
        worked = kits.worked
        if worked.name not in known:
            ledgers = read_ledgers(root / "projects" / worked.name, Troubles())
            known[worked.name] = {kept.code for one in ledgers for version in one.versions for kept in version.each}
        kept = kept_of_kit(kits, program_version(), contents(kits, took))
        if kept.code in codes and kept.code not in known[worked.name]:
            alone = Ledger(worked.name, worked.revision, worked.date, (kept,))
            yield numbers_file(worked.name, kept.code), ledger_text(alone).encode()
