"""What has moved since a revision, and to whom to write of it: the list of what was sent held against today."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen import editions
from sheetgen.base.program import program_version
from sheetgen.base.spelling import bare, slug
from sheetgen.base.trouble import CannotBe, Troubles
from sheetgen.kits.coded import kept_in_each_pack, ledger_with_colours
from sheetgen.kits.taken import Kits
from sheetgen.model.another import Another, Mail, Present
from sheetgen.model.ledger import kept_of, paired
from sheetgen.model.sent import FILE, FOLDER, holdings
from sheetgen.pipeline import NotReady, Outcome, work_one, work_through
from sheetgen.publish.private import refuse_public, write_private
from sheetgen.publish.tables import csv_bytes
from sheetgen.read.ledgers import read_kept, read_ledgers
from sheetgen.read.sent import read_sent
from sheetgen.render.changes_lists import changes_lists
from sheetgen.render.changes_told import changes_told
from sheetgen.render.next_told import next_told
from sheetgen.render.pages import sheet_path
from sheetgen.render.write_to import write_to
from sheetgen.runs.published import published
from sheetgen.runs.sent import numbers_file

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence
    from pathlib import Path

    from sheetgen.model.change import Change
    from sheetgen.model.ledger import Kept, Ledger
    from sheetgen.model.sent import Holding, Sent, SentKit
    from sheetgen.model.worked import Worked
    from sheetgen.runs.published import Published

CHANGES = "changes"
"""The folder of the lists, within the private one."""


def changes(
    root: Path, only: Sequence[str], since: str, private: Path, into: Path | None = None
) -> tuple[Outcome, list[str]]:
    """What moved since a revision, in lines, and on top the orders that hold another sheet by the list in `private`.

    Where `into` is given, the private folder again, it is written there as lists too, of designs that are named each
    into a folder of its own. CannotBe for a revision of which
    no design has a ledger; NotReady for a folder that is public, or cannot be written.
    """
    if into is not None:
        try:
            refuse_public(into, root, root / "build")
        except CannotBe as fault:
            raise NotReady(f"{fault.message}; {fault.help}") from None
    outcome = work_through(root, only)
    found = editions.changes(root, outcome.worked, outcome.failed, outcome.troubles, since)
    try:
        there = (private / FILE).exists()
        listed = read_sent(private / FILE, str(private / FILE), outcome.troubles)
    except OSError as fault:
        raise NotReady(f"{private} cannot be read: {fault.strerror}") from None
    asked = set(map(bare, only))
    sent = [one for one in (listed.lines if listed else ()) if not asked or bare(one.kit.design) in asked]
    others = Others(root, private, outcome).of(sent)
    lines = [*write_to(others, found, len({one.order for one in sent})), *changes_told(found)]
    if todo := list(next_told(found, others)):
        lines += ["next:", *todo]
    if not there and (into is not None or any(one.errors or one.pairs for one in found)):
        told = "which orders hold another sheet than is printed now cannot be known"
        lines.append(f"{told}: there is no list of what was sent ({private / FILE})")
    if into is not None:
        lines += _written(into, found, others, asked)
    return outcome, lines


def _written(into: Path, found: Sequence[Change], others: Sequence[Another], asked: set[str]) -> Iterator[str]:
    """The lists of all designs; of those that are asked for, each in a folder of its own.

    So the lists of all are never replaced by those of a few, and no list mixes what was found on several days.
    """
    if not asked:
        yield _lists_written(into, CHANGES, found, others)
        return
    designs = {bare(one.design): one.design for one in found} | {bare(one.design): one.design for one in others}
    for key, design in designs.items():
        own = [one for one in found if bare(one.design) == key], [one for one in others if bare(one.design) == key]
        yield _lists_written(into, f"{CHANGES}/{slug(design)}", *own)


def _lists_written(into: Path, within: str, found: Sequence[Change], others: Sequence[Another]) -> str:
    from sheetgen.publish.workbook import xlsx_bytes  # noqa: PLC0415 - it takes a while to import

    lists = changes_lists(found, others)
    files = {f"{sheet.name.replace(' ', '-')}.csv": csv_bytes(sheet) for sheet in lists}
    try:
        names = write_private(into, within, files | {"changes.xlsx": xlsx_bytes(lists)})
    except OSError as fault:
        raise NotReady(f"{into} cannot be written: {fault.strerror}") from None
    return f"wrote {', '.join(names)} into {into / within}"


class Others:
    """The orders that hold another sheet: each kind of kit is worked again, with its choices, once."""

    def __init__(self, root: Path, private: Path, outcome: Outcome) -> None:
        self.root, self.private, self.outcome = root, private, outcome
        self.worked = {bare(one.name): one for one in outcome.worked}
        self.names = {bare(name): name for name in (*outcome.failed, *(one.name for one in outcome.worked))}
        self.ledgers: dict[str, list[Ledger]] = {}
        self.present: dict[tuple[object, ...], Present] = {}
        self.published: dict[str, Published] = {}

    def of(self, sent: Sequence[Sent]) -> list[Another]:
        """What is held and is not printed so any more, in the order of the list."""
        found = []
        for holding in map(self._named, holdings(sent)):
            now = self.present.get(holding.kit.key)
            if now is None:
                now = self.present[holding.kit.key] = self._present(holding.kit)
            if not now.bears(holding.code):
                found.append(Another(holding, self._was(holding.kit, holding.code), now))
        return [one for one in found if one.wrong]

    def _named(self, holding: Holding) -> Holding:
        """With its design called as its folder is, however the list has it."""
        kit = holding.kit
        return holding._replace(kit=kit._replace(design=self.names.get(bare(kit.design), kit.design)))

    def _present(self, kit: SentKit) -> Present:
        worked = self.worked.get(bare(kit.design))
        if worked is None:
            gone = f"there is no design '{kit.design}' any more"
            return Present(why="the design no longer passes" if bare(kit.design) in self.names else gone)
        title = self._title(worked, kit.version)
        if not title:
            return Present(why="this version is no longer made")
        again, troubles = self._again(worked, title, kit) if kit.choices else (worked, Troubles())
        if again is None:
            return Present(
                why=f"no longer passes with these choices: {'; '.join(one.message for one in troubles.errors)}"
            )
        version = again.version(title)
        way = next((one for one in version.colourways if bare(one.name) == bare(kit.colourway)), None)
        if kit.colourway and way is None:
            return Present(why="this colourway is no longer made")
        kits = Kits(again, version, 1, kit.choices, way, frozenset(kit.leave_out), posted=True)
        return Present(
            tuple(kept_in_each_pack(kits, program_version())),
            kept_of(again, version, program_version()),
            mail=None if kit.choices or way or kit.leave_out else self._mail(kits),
        )

    def _mail(self, kits: Kits) -> Mail | None:
        """The published sheets of a version, which whoever has it by itself is sent; None where it has none."""
        library, worked, sheets = self.outcome.library, kits.worked, kits.sheets
        if library is None or not sheets:
            return None
        if worked.name not in self.published:
            build = self.root / "build"
            self.published[worked.name] = published(self.root, build, [worked.name], library.stock)
        there = self.published[worked.name]
        files = (tuple(sheet_path(sheet, paper) for sheet in sheets) for paper in worked.studio.paper)
        folder = there.folder(worked, kits.version)
        return Mail(str(folder), tuple(files), there.stand(worked, kits.version, sheets))

    def _again(self, worked: Worked, title: str, kit: SentKit) -> tuple[Worked | None, Troubles]:
        """The version of a kit with what was chosen otherwise, as the run that sent it worked it."""
        library = self.outcome.library
        filed = next(one for one in library.projects if one.name == worked.name) if library else None
        if library is None or filed is None:
            return None, Troubles()
        return work_one(filed, library, self.outcome.faults, dict(kit.choices), worked.version(title).name)

    def _title(self, worked: Worked, called: str) -> str:
        """What a version is called now that was called so once; empty where it is no longer made."""
        titles = {bare(one.title): one.title for one in worked.versions.values()}
        if bare(called) in titles:
            return titles[bare(called)]
        now = ledger_with_colours(worked, program_version())
        pairs = (pair for ledger in reversed(self._ledgers(worked.name)) for pair in paired(ledger, now))
        same = (now for was, now in pairs if was is not None and now is not None and bare(was.title) == bare(called))
        return next((one.title for one in same), "")

    def _was(self, kit: SentKit, code: str) -> Kept | None:
        """The numbers of a fingerprint, from a ledger of its design or from what was kept when it was sent."""
        design = self.names.get(bare(kit.design))
        if design is None:
            return None
        versions = (version for ledger in self._ledgers(design) for version in ledger.versions)
        found = next((one for version in versions for one in version.each if one.code == code), None)
        if found is not None:
            return found
        path = self.private / FOLDER / numbers_file(design, code)
        kept = read_kept(path, str(path), design, self.outcome.troubles)
        return replace(kept, a_kit=True) if kept is not None else None

    def _ledgers(self, design: str) -> list[Ledger]:
        if design not in self.ledgers:
            self.ledgers[design] = read_ledgers(self.root / "projects" / design, Troubles())
        return self.ledgers[design]
