"""How modules of tests are shared out over processes: the longest first, and by one process what it makes once."""

from __future__ import annotations

from typing import TYPE_CHECKING

from xdist.scheduler import LoadScopeScheduling

if TYPE_CHECKING:
    from collections.abc import Iterable

TOGETHER = {
    "tests/outside/": "the site, and the browser",
    "tests/publish/test_apart.py": "the sheets of two designs",
    "tests/publish/test_stack.py": "the sheets of two designs",
}
"""By how a path begins, what is shared beyond one module: one process makes it, for all who ask for it."""
LONGEST = (
    "tests/render/test_demonstration.py",
    "tests/classes/test_class.py",
    "tests/outside/",
    "tests/attacks/",
    "tests/publish/test_edits.py",
    "tests/publish/test_killed.py",
    "tests/runs/",
    "tests/publish/",
    "tests/ledgers/",
    "tests/read/",
    "tests/kits/",
    "tests/render/",
    "tests/sent/",
)
"""What takes longer than all that is not named here, longest first: what is begun last must not be waited for."""


class LongestFirst(LoadScopeScheduling):  # type: ignore[misc]  # its package says no types
    """A module, or what is taken together, is one piece of work; whoever is free takes the next."""

    def _split_scope(self, nodeid: str) -> str:
        module = nodeid.split("::", 1)[0]
        return next((what for begins, what in TOGETHER.items() if module.startswith(begins)), module)


def in_turn(paths: Iterable[str]) -> list[int]:
    """The places of tests, by their paths, in the order in which they are to be run."""
    return [at for _, at in sorted((_turn(path), at) for at, path in enumerate(paths))]


def _turn(path: str) -> int:
    return next((turn for turn, begins in enumerate(LONGEST) if path.startswith(begins)), len(LONGEST))
