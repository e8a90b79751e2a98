"""What leads from pages of designs to other designs, put into pages that stand: nothing else of them is made anew.

A page is written with a place for it; which designs stand beside it is known once all of them are there.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from sheetgen.model.page import Page, neighbours_of, with_neighbours
from sheetgen.publish.record import digest_of, stamp_of, stands

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

    from sheetgen.publish.folder import Folder


def carried_over(folder: Folder, pages: Sequence[Page], before: Mapping[str, Any]) -> list[Page]:
    """Pages with the neighbours that each has where it lies; `before` are the stamps of files, as they were put.

    So a page is not written twice where its design is made anew and its neighbours are as they were.
    """
    found = []
    for page in pages:
        old = (
            folder.read(page.path)
            if neighbours_of(page.content) is not None and _ours(folder, page.path, before)
            else None
        )
        block = neighbours_of(old) if old else None
        found.append(Page(page.path, with_neighbours(page.content, block)) if block else page)
    return found


def put_neighbours(folder: Folder, of: Mapping[str, Mapping[str, Any]], block: Callable[[Any], bytes]) -> list[str]:
    """Put into each page of every design what leads to others, made by `block`. Returns the paths that changed.

    Which these were is remembered, so that of a thousand designs only those are looked at that have others now. A page
    that a hand has changed stays as it is until its design is made anew.
    """
    changed: list[str] = []
    for name, pages in ((name, pages) for name, pages in of.items() if pages):
        record, digest = (
            folder.record["projects"][name],
            digest_of(repr(sorted(pages.items())).encode("utf-8", "replace")),
        )
        if record.get("neighbours") == digest:
            continue
        files = record["files"]
        now = [
            Page(path, with_neighbours(old, block(pages[path]))) for path in pages if (old := _old(folder, path, files))
        ]
        changed += folder.write(now)
        files |= {page.path: stamp_of(folder.root / page.path, page.content) for page in now}
        record["neighbours"] = digest
        folder.keep_record(at_last=False)
    return changed


def _old(folder: Folder, path: str, files: Mapping[str, Any]) -> bytes | None:
    old = folder.read(path) if _ours(folder, path, files) else None
    return old if old is not None and neighbours_of(old) is not None else None


def _ours(folder: Folder, path: str, files: Mapping[str, Any]) -> bool:
    """Whether a file lies there as we have put it."""
    return path in files and stands(f"{folder.root}/{path}", files[path])
