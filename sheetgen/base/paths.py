"""Names of files and links: what a folder of ours may not be called, and whether a path leads out of a folder."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from pathlib import Path

DEVICES = frozenset({"con", "prn", "aux", "nul", *(f"{of}{n}" for of in ("com", "lpt") for n in range(1, 10))})
"""What Windows takes for a device, whatever folder it stands in (Microsoft, Naming Files, Paths, and Namespaces)."""
OF_THE_OUTPUT = frozenset(
    {"404", "facts", "feed", "fonts", "find", "index", "library", "offline-worker", "script", "sitemap", "style"}
)
"""What stands beside the designs' folders; a server may leave out the .html of a page."""
OF_A_DESIGN = frozenset({"index", "figures", "pictures", "preview", "templates"})
"""What stands beside the folders of a design's versions."""
LONGEST_NAME = 100
OUTSIDE, COPIED = "is a link to one outside the library", "copy it here"


def leads_out(path: Path, root: Path) -> bool:
    """Whether a path, by any link on its way, leads out of a folder; links in a circle do."""
    try:
        return not path.resolve().is_relative_to(root.resolve())
    except (OSError, RuntimeError):
        return True


def link_out(path: Path, library: Path) -> Path | None:
    """The link in a library by which a path leads out of it: it may have come with one that was handed on."""
    inside = library.resolve()
    links = (one for one in (path, *path.parents) if one.is_symlink())
    own = next((one for one in links if one.absolute().parent.resolve().is_relative_to(inside)), None)
    return own if own is not None and leads_out(own, library) else None


def ours_of(build: Path) -> Path:
    """The folder beside what is published, for what is the studio's alone: build-studio for build."""
    whole = build.absolute()
    return whole.parent / f"{whole.name}-studio"
