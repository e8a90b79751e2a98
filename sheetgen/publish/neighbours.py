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
    wanted = (page.path for page in pages if neighbours_of(page.content) is not None)
    old = {path: neighbours_of(lies) for path in wanted if (lies := _lies(folder, path, before))}
    return [
        Page(one.path, with_neighbours(one.content, block)) if (block := old.get(one.path)) else one for one in pages
    ]


def put_neighbours(folder: Folder, of: Mapping[str, Mapping[str, Any]], block: Callable[[Any], bytes]) -> list[str]:
    """Put into each page of every design what leads to others, made by `block`. Returns the paths that changed.

    Which these were is remembered, so that of a thousand designs only those are looked at that have others now. A page
    that a hand has changed stays as it is until its design is made anew.
    """
    changed: list[str] = []
    for name, pages in of.items():
        record = folder.record["projects"].get(name, {})
        digest = digest_of(repr(sorted(pages.items())).encode("utf-8", "replace"))
        if not pages or record.get("neighbours") == digest:
            continue
        files = record["files"]
        old = {path: lies for path in pages if (lies := _lies(folder, path, files)) and neighbours_of(lies) is not None}
        now = [Page(path, with_neighbours(page, block(pages[path]))) for path, page in old.items()]
        changed += folder.write(now)
        files |= {page.path: stamp_of(folder.root / page.path, page.content) for page in now}
        record["neighbours"] = digest
        folder.keep_record(at_last=False)
    return changed


def _lies(folder: Folder, path: str, files: Mapping[str, Any]) -> bytes | None:
    """What a file holds that lies as it was put, by its stamp."""
    whole = path in files and stands(f"{folder.root}/{path}", files[path])
    return folder.read(path) if whole else None
