"""Lines of orders, or of a class, to their kinds of kit, each known once; what cannot be made is told where to mend."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from sheetgen.base.spelling import bare, plain, suggest
from sheetgen.base.trouble import PROJECT, CannotBe
from sheetgen.kits.apart import bagged
from sheetgen.kits.bought import bought
from sheetgen.kits.called import called
from sheetgen.kits.kit_lines import bags_are_empty, boxed, lines_of, where_it_is_made
from sheetgen.kits.run import taken
from sheetgen.kits.taken import Kits
from sheetgen.model.moved import IN_A_KIT
from sheetgen.model.printed import code_of
from sheetgen.runs.designs import differing, own_of

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from sheetgen.base.place import Place, Word
    from sheetgen.base.trouble import Severity, Trouble, Troubles
    from sheetgen.model.class_list import PupilLine
    from sheetgen.model.kit import Colourway
    from sheetgen.model.orders import OrderLine
    from sheetgen.model.worked import Worked, WorkedVersion
    from sheetgen.runs.designs import Designs

    Asked = OrderLine | PupilLine

Key = tuple[object, ...]
QUOTED = 60
"""Most letters of what is chosen in a message."""


@dataclass(slots=True)
class Kinds:
    """The kinds of kit that lines of orders ask for, by what makes them different.

    `misfits` is of each what does not come out of any length or sheet in stock: such a kind is no kit.
    """

    designs: Designs
    troubles: Troubles
    found: dict[Key, Kits] = field(default_factory=dict)
    out: set[str] = field(default_factory=set)  # designs of which no kit can be made, told at their first line
    misfits: dict[Key, list[Trouble]] = field(default_factory=dict)
    moved: set[tuple[str, ...]] = field(default_factory=set)  # the versions and kits told of that have moved
    short: set[Place | None] = field(default_factory=set)  # the items told of that are too short as they are stocked

    def key(self, line: Asked) -> Key | None:
        """The kind of a line; None with its trouble told at the word that is to be mended."""
        worked = self.designs.design(line.design)
        if worked is None:
            if line.design not in self.out and not self._lies_elsewhere(line.design):
                told = f"{line.design} does not pass, and no kit of it can be made"
                self._add(line, told, line.design, "mend it first; what is wrong with it is told besides")
            self.out.add(str(line.design))
            return None
        version = as_written = worked.version(line.version)
        if version.changed and line.posted:
            self._moved(line, worked, version)
            return None
        choices = differing(version, line.choices)
        if choices:
            chosen = self._chosen(line, worked, version, choices)
            if chosen is None:
                return None
            worked, version, choices = chosen
        way = self._colourway(line, version)
        called = way.name if way else ""
        if (line.colourway and way is None) or self._kit_moved(line, worked, (as_written, version), called):
            return None
        own = own_of(as_written, choices)
        kits = Kits(worked, bagged(version), 0, tuple(sorted(choices.items())), way, posted=line.posted, own=own)
        kits = kits if line.posted else where_it_is_made(kits)
        leave_out, only = self._called(line, kits, line.leave_out), self._called(line, kits, line.only)
        if leave_out is None or only is None:
            return None
        if line.posted and line.leave_out:
            self._not_sent_anyway(line, kits)
        key = (worked.name, version.name, kits.choices, called, leave_out, only)
        if key not in self.misfits:
            made = replace(kits, leave_out=leave_out, only=only)
            self.misfits[key] = _misfits(made)
            if not self.misfits[key]:
                self.found[key] = made
        if key in self.found and bags_are_empty(self.found[key]):
            told = "all that its bags hold is left out: nothing but its sheets is sent"
            self._add(line, told, line.leave_out[0], "leave out less, unless it is meant so", "warning")
        if self.misfits[key]:
            self._misfit(line, worked, self.misfits[key])
        return None if self.misfits[key] else key

    def _misfit(self, line: Asked, worked: Worked, misfits: Sequence[Trouble]) -> None:
        """What comes out of no length: at the choice that asks for it, or where no choice does at the item, once."""
        as_written = self.designs.design(line.design)
        own = as_written.version(line.version) if as_written and line.choices and as_written is not worked else None
        in_stock = {one.place for one in _misfits(Kits(worked, own, 0, posted=line.posted))} if own else ()
        for misfit in misfits:
            if line.choices and misfit.place not in in_stock:
                self._add(line, misfit.message, line.choices[0][1], misfit.help)
            elif misfit.place not in self.short:
                self.short.add(misfit.place)
                self.troubles.extend([misfit])

    def _lies_elsewhere(self, name: str) -> bool:
        """Whether a design fails for nothing of its own, but for what is told of the studio, its stock or its steps."""
        errors = (*self.designs.outcome.troubles.errors, *self.troubles.errors)
        files = {one.place.source.name for one in errors if one.place and not one.follows}
        shared = {file for file in files if file.startswith("projects/") and not file.endswith(PROJECT)}
        return bool(shared) and not any(file.startswith(f"projects/{name}/") for file in files)

    def _kit_moved(self, line: Asked, worked: Worked, versions: Sequence[WorkedVersion], way: str) -> bool:
        """Whether a kit in a colourway, or under no name in none, holds otherwise than its revision says: told once.

        `versions` are the one that was asked for and the one that it is.
        """
        moved = line.posted and any(bare(way) in map(bare, one.kits_changed) for one in versions)
        if moved:
            self._moved(line, worked, versions[-1], way or IN_A_KIT)
        return moved

    def _moved(self, line: Asked, worked: Worked, version: WorkedVersion, way: str = "") -> None:
        """Told of a version, or its kit in a colourway, whose numbers are not those of its revision: once."""
        if (worked.name, version.name, way) in self.moved:
            return
        self.moved.add((worked.name, version.name, way))
        named = ", ".join(filter(None, (worked.title, version.title, way)))
        told = f"{named}: its numbers are no longer those of revision {worked.revision}"
        helped = f"write its next revision, and publish; sheetgen changes {worked.name}"
        self._add(line, told, line.colourway if way and line.colourway else line.version, helped)

    def _chosen(
        self, line: Asked, worked: Worked, version: WorkedVersion, choices: Mapping[str, str]
    ) -> tuple[Worked, WorkedVersion, Mapping[str, str]] | None:
        """The version worked with what is chosen otherwise; another version where that is what was chosen."""
        found, errors = self.designs.chosen(worked, version, line.choices)
        if found is not None:
            chosen = found.versions[version.name]
            same = written_so(worked, found, chosen)
            if same is None:
                return found, chosen, choices
            if not (same.changed and line.posted):
                return worked, same, {}
            self._moved(line, worked, same)
            return None
        asked = ", ".join(f"{name} {value[:QUOTED]}{'…' * (len(value) > QUOTED)}" for name, value in line.choices)
        own = [one for one in errors if one.choice]  # what else there is follows from a choice that means nothing
        for error in own or [one for one in errors if not one.trouble.follows]:
            word = next((pair[error.word] for pair in line.choices if plain(pair[0]) == error.choice), None)
            told = error.trouble.message if word else f"with {asked} it does not pass: {error.trouble.message}"
            self._add(line, told, word or line.choices[0][1], error.trouble.help)
        return None

    def _colourway(self, line: Asked, version: WorkedVersion) -> Colourway | None:
        """The colourway by its name, however it is spaced."""
        if not line.colourway:
            return None
        found = next((way for way in version.colourways if bare(way.name) == bare(line.colourway)), None)
        if found is None:
            known = [way.name for way in version.colourways]
            helped = suggest(line.colourway, known) if known else "leave it empty: this version comes in one colour"
            self._add(line, f"there is no colourway '{line.colourway}' of {version.title}", line.colourway, helped)
        return found

    def _called(self, line: Asked, kits: Kits, words: Sequence[Word]) -> frozenset[str] | None:
        """The items that words name; None where one of them names nothing."""
        found: set[str] = set()
        for word in words:
            try:
                found |= called(kits, word)
            except CannotBe as fault:
                self._add(line, fault.message, word, fault.help)
                return None
        return frozenset(found)

    def _not_sent_anyway(self, line: Asked, kits: Kits) -> None:
        """Warn of a thing that is left out of a kit in which it never lies: another may be meant."""
        sent = {one.item.id for one in lines_of(kits, (kits,))} | {tool.id for tool in boxed(kits)}
        for word in line.leave_out:
            if sent.isdisjoint(called(kits, word)):
                helped = "leave it off the list, unless another thing is meant"
                self._add(line, f"'{word}' lies in no bag of this kit: it is not sent anyway", word, helped, "warning")

    def _add(self, line: Asked, message: str, word: Word, helped: str, severity: Severity = "error") -> None:
        self.troubles.add(f"{line.whose}{message}", (word or line).place, helped, severity)


def _misfits(kits: Kits) -> list[Trouble]:
    """What of one kit comes out of no length or sheet there is, each at its item."""
    return bought(taken([replace(kits, bags=1)]))[1]


def written_so(worked: Worked, chosen: Worked, version: WorkedVersion) -> WorkedVersion | None:
    """The version of a design that is what somebody chose: by all its choices, and by its printed numbers.

    A band of US 7 that is ordered in size US 8 is the band US 8: one kit, one name, one page. The hours of a class,
    which only its teacher reads, are those of the version.
    """
    same = (one for one in worked.versions.values() if dict(one.choices) == dict(version.choices))
    wanted = code_of(chosen, _timeless(version))
    return next((one for one in same if code_of(worked, _timeless(one)) == wanted), None)


def _timeless(version: WorkedVersion) -> WorkedVersion:
    return replace(version, plan=replace(version.plan, class_plan=None))
