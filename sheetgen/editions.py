"""What was printed of each design and when: its ledgers held against its numbers today, for the pipeline."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from sheetgen.base.frozen import Frozen
from sheetgen.base.program import program_version
from sheetgen.base.spelling import suggest
from sheetgen.base.trouble import CannotBe
from sheetgen.kits.coded import ledger_with_colours
from sheetgen.model.change import Change, Fault
from sheetgen.model.codes import codes
from sheetgen.model.ledger import last_before, ledger_of, paired
from sheetgen.model.moved import kits_moved
from sheetgen.publish.ledgers import keep
from sheetgen.read.ledgers import read_ledgers
from sheetgen.render.changes_told import moved_told
from sheetgen.render.news import news

if TYPE_CHECKING:
    from collections.abc import Sequence
    from pathlib import Path

    from sheetgen.base.place import Place
    from sheetgen.base.trouble import Troubles
    from sheetgen.model.codes import Code
    from sheetgen.model.ledger import Ledger
    from sheetgen.model.worked import Worked


@dataclass(slots=True)
class Editions:
    """The ledgers of a library while it is published.

    `kept` are those that were written, and `unkept` the designs of which none could be, by the reason; `news` says of a
    design what each revision changed.
    """

    root: Path
    kept: list[str] = field(default_factory=list)
    news: dict[str, list[list[str]]] = field(default_factory=dict)
    unkept: dict[str, list[str]] = field(default_factory=dict)

    def of(self, worked: Worked, troubles: Troubles) -> tuple[Worked, list[Code]]:
        """A design with its changed versions marked, which is told, and every fingerprint that it has borne."""
        ledgers = read_ledgers(self.root / "projects" / worked.name, troubles, worked.was)
        now = ledger_with_colours(worked, program_version())
        self.news[worked.name] = news(now, ledgers)
        was = next((one for one in ledgers if one.revision == now.revision), None)
        return _marked(worked, was, now, troubles) if was else worked, codes(now, ledgers)

    def in_units(self, other: Worked, troubles: Troubles) -> list[Code]:
        """Every fingerprint that the pages of a design in other units have borne."""
        ledgers = read_ledgers(self.root / "projects" / other.name, troubles, other.was, other.other_units)
        return codes(ledger_of(other, program_version()), ledgers)

    def keep(self, worked: Worked) -> None:
        """Write the ledger of a design's revision where there is none; nothing is lost where that cannot be done.

        In other units it has pages and no kits.
        """
        made = ledger_of if worked.other_units else ledger_with_colours
        try:
            ledger = made(worked, program_version())
            written = keep(self.root / "projects" / worked.name, ledger, worked.other_units)
        except OSError as fault:
            self.unkept.setdefault(fault.strerror or "no reason is given", []).append(worked.name)
        else:
            self.kept += [str(written.relative_to(self.root))] if written else []

    def tell_unkept(self, troubles: Troubles) -> None:
        """Say once of which designs the numbers could not be kept."""
        for reason, names in self.unkept.items():
            message = f"what is printed today cannot be kept in projects/ ({reason}): {', '.join(sorted(names))}"
            troubles.add(message, None, "later nobody can tell what has moved since", "warning")


def _marked(worked: Worked, was: Ledger, now: Ledger, troubles: Troubles) -> Worked:
    told = moved_told(was, now)
    if not told:
        return worked
    pairs = paired(was, now)
    same = {new.name: old for old, new in pairs if old is not None and new is not None and old.code == new.code}
    kits = {new.name: kits_moved(old, new) for old, new in pairs if old is not None and new is not None}
    marked = {
        name: replace(one, changed=name not in same, kits_changed=kits.get(name, frozenset()))
        for name, one in worked.versions.items()
    }
    message = f"revision {now.revision} was published with other numbers: {told}"
    said = f"its sheets say 'revision {now.revision}, changed'" if len(same) < len(pairs) else "no such kit is sent"
    troubles.add(message, worked.place, f"write the next revision; until then {said}", "warning")
    return replace(worked, versions=Frozen(marked))


def changes(
    root: Path, worked: Sequence[Worked], failed: Sequence[str], troubles: Troubles, since: str
) -> list[Change]:
    """What each design was at a revision and is now; if none is named, since what was printed last.

    `failed` are designs that do not pass. CannotBe for a revision of which no design has a ledger.
    """
    present = {one.name: ledger_with_colours(one, program_version()) for one in worked}
    old = {one.name: one.was for one in worked}
    found, known = [], set[str]()
    for name in sorted({*present, *failed}):
        ledgers = read_ledgers(root / "projects" / name, troubles, old.get(name, ()))
        known |= {one.revision for one in ledgers}
        now = present.get(name)
        if since:
            was = next((one for one in ledgers if one.revision == since), None)
        else:
            was = last_before(ledgers, now) if now else max(ledgers, key=lambda one: one.order, default=None)
        which = f"no ledger of revision {since}" if since else "no ledger of what was printed before"
        errors = () if now else _errors(name, troubles)
        found.append(Change(name, was, now, f"{which}: what moved cannot be known", errors))
    if since and found and since not in known:
        raise CannotBe(f"there is no ledger of revision '{since}'", suggest(since, known))
    return found


def _errors(design: str, troubles: Troubles) -> tuple[Fault, ...]:
    """Why a design does not pass: what is told of its own files, or that it stands with what is shared."""
    own = [one for one in troubles.errors if _is_of(design, one.place)]
    faults = (
        Fault(one.message, one.help, f"{one.place.source.name}:{one.place.line}" if one.place else "") for one in own
    )
    return tuple(dict.fromkeys(faults)) or (Fault("for what is told of studio, stock or steps"),)


def _is_of(design: str, place: Place | None) -> bool:
    return place is not None and place.where_used.source.name.startswith(f"projects/{design}/")
