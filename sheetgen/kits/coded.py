"""The fingerprint of a kit, and a design with its kits as a ledger keeps them."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.frozen import Frozen
from sheetgen.kits.contents import contents
from sheetgen.kits.packed import packed
from sheetgen.kits.run import taken
from sheetgen.kits.sealed import in_each_pack
from sheetgen.kits.taken import Kits
from sheetgen.model.codes import page_of
from sheetgen.model.ledger import kept_of, ledger_of

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.kits.contents import Contents
    from sheetgen.model.fingerprint import Number
    from sheetgen.model.ledger import Kept, Ledger
    from sheetgen.model.worked import Worked, WorkedVersion


def code_of_kit(kits: Kits, held: Contents | None = None) -> str:
    """The fingerprint that the sheets, the card and the label of a kit bear.

    `held` is what lies in it as its run gives it out; left out, it is packed by itself. Of a part that is sent alone it
    is that of the whole kit, for it goes where that has gone.
    """
    whole = replace(kits, only=frozenset()) if kits.only else kits
    return packed(whole, held if held is not None and whole is kits else contents(whole, taken([whole]))).code


def page_of_kit(published: Worked, kits: Kits, code: str) -> str:
    """The address of the page of a kit's fingerprint; empty where the site has none.

    `published` is the design as its site has it. Of a version with choices of an order no page tells, for that would
    tell what was ordered; nor of a kit that prints other numbers because a part of it was left out.
    """
    if kits.choices:
        return ""
    version = published.version(kits.version.title)
    as_is = replace(kits, worked=published, version=version, leave_out=frozenset(), only=frozenset())
    known = {packed(as_is, contents(as_is, run)).code for run in in_each_pack(as_is, taken([as_is]))}
    return page_of(published, version, code) if code in known else ""


def kept_of_kit(kits: Kits, program: str, held: Contents) -> Kept:
    """A kit as its run gives it out, as a ledger keeps it."""
    plain = kept_of(kits.worked, kits.version, program)
    return plain.kit_with(packed(kits, held).lists, kits.colourway.name if kits.colourway is not None else "")


def kept_in_each_pack(kits: Kits, program: str) -> list[Kept]:
    """A kit by itself as it is worked now, and the same in whatever packs there are of what is given out sealed."""
    plain = kept_of(kits.worked, kits.version, program)
    way = kits.colourway.name if kits.colourway is not None else ""
    return [plain.kit_with(lists, way) for lists in _lists(kits)]


def kept_with_colours(worked: Worked, version: WorkedVersion, program: str) -> Kept:
    """A version as it is worked now, with its kits in each colourway and in none."""
    plain = Kits(worked, version, 1, posted=True)
    each = (plain, *(replace(plain, colourway=way) for way in version.colourways))
    found = {one.colourway.name if one.colourway else "": tuple(_lists(one)) for one in each}
    return replace(kept_of(worked, version, program), kits=Frozen(found))


def ledger_with_colours(worked: Worked, program: str) -> Ledger:
    """A design as it is worked now, by a version of the program."""
    versions = tuple(kept_with_colours(worked, version, program) for version in worked.versions.values())
    return replace(ledger_of(worked, program), versions=versions)


def _lists(kits: Kits) -> Iterator[tuple[Number, ...]]:
    """The lists of a kit by itself, then those in other packs."""
    return (packed(kits, contents(kits, run)).lists for run in in_each_pack(kits, taken([kits])))
