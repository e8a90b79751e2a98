"""The private folder: where it may not be, what a link in it leads to, and what a killed run leaves."""

from __future__ import annotations

import os
import stat
from typing import TYPE_CHECKING

import pytest

from sheetgen.base.trouble import CannotBe, Troubles
from sheetgen.publish.private import refuse_public, write_private
from sheetgen.runs.sent import sent_list

if TYPE_CHECKING:
    from pathlib import Path

LISTS = {"buy.csv": b"38 EUR"}


@pytest.fixture
def library(tmp_path: Path) -> Path:
    for name in ("projects", "themes", "build"):
        (tmp_path / "library" / name).mkdir(parents=True)
    return tmp_path / "library"


@pytest.mark.parametrize(
    "where", [".", "..", "projects", "projects/private", "themes/private", "build/private", "leads/to"]
)
def test_what_is_private_is_never_written_where_a_library_is_handed_on_or_published(library: Path, where: str) -> None:
    (library / "leads").symlink_to(library / "projects")
    with pytest.raises(CannotBe, match="cannot be written into"):
        refuse_public(library / where, library, library / "build")


def test_a_folder_elsewhere_is_named_itself_and_no_link_that_came_with_the_library_leads_there(
    library: Path, tmp_path: Path
) -> None:
    """Not even its rights are touched."""
    refuse_public(library / "private", library, library / "build")
    vault = tmp_path / "vault"
    vault.mkdir(mode=0o755)
    (library / "private").symlink_to(vault)
    for where in ("private", "private/apart"):
        with pytest.raises(CannotBe, match="private is a link to a folder outside the library"):
            refuse_public(library / where, library, library / "build")
    refuse_public(vault, library, library / "build")
    write_private(vault, "shop", LISTS)
    assert stat.S_IMODE(vault.stat().st_mode) == 0o700
    assert (vault / "shop" / "buy.csv").read_bytes() == b"38 EUR"


def test_a_link_to_another_folder_of_the_library_is_private(library: Path) -> None:
    (library / "vault").mkdir()
    (library / "private").symlink_to("vault")
    refuse_public(library / "private", library, library / "build")


def test_a_link_within_the_private_folder_leads_no_list_out_of_it(library: Path) -> None:
    """Not even the rights of what it leads to are touched."""
    (library / "private").mkdir()
    (library / "private" / "shop").symlink_to(library / "projects")
    (library / "projects").chmod(0o755)
    with pytest.raises(OSError, match="shop in it is a link to elsewhere"):
        write_private(library / "private", "shop", LISTS)
    assert not list((library / "projects").iterdir())
    assert stat.S_IMODE((library / "projects").stat().st_mode) == 0o755


def test_on_a_full_disk_the_lists_before_stay_and_no_crumb(library: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    private = library / "private"
    write_private(private, "shop", LISTS)
    synced: list[int] = []

    def full(handle: int) -> None:
        synced.append(handle)
        if len(synced) > 1:
            raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(OSError, match="No space left"):
        write_private(private, "shop", {"buy.csv": b"new", "left.csv": b"new"})
    assert {path.name: path.read_bytes() for path in (private / "shop").iterdir()} == LISTS


def test_what_a_killed_run_left_half_written_goes_with_the_next_one_that_is_not_of_its_day(library: Path) -> None:
    private = library / "private"
    write_private(private, "shop", LISTS)
    old, new = private / "shop" / ".laid-old", private / "shop" / ".laid-new"
    old.write_text("a name")
    new.write_text("a name")
    os.utime(old, (0, 0))
    write_private(private, "shop", LISTS)
    assert not old.exists()
    assert new.exists()


def test_nothing_is_added_to_a_list_of_what_was_sent_that_is_a_link(tmp_path: Path) -> None:
    """A file would take the place of the link, and the list that is kept elsewhere would be short of a run."""
    (tmp_path / "kept.csv").write_text("order,date,design,version,choices,colourway,fingerprint\n")
    (tmp_path / "sent.csv").symlink_to(tmp_path / "kept.csv")
    with pytest.raises(CannotBe, match=r"sent\.csv is a link"):
        sent_list(tmp_path, Troubles())
