"""Each number worked once, whatever leans on whatever and in which order it stands in the file; circles are told."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, NoReturn

from sheetgen.base.place import Word
from sheetgen.work.stopped import Stopped

if TYPE_CHECKING:
    from collections.abc import Callable

    from sheetgen.base.place import Place
    from sheetgen.base.trouble import Troubles

DEEPEST = 60  # names that lean on each other in a row


class Memo:
    """What is known of one version so far, and what is being worked just now."""

    def __init__(self, troubles: Troubles) -> None:
        self.troubles = troubles
        self._known: dict[str, Any] = {}
        self._open: list[str] = []

    def get(self, key: str, where: Word | Place, work: Callable[[], Any]) -> Any:  # noqa: ANN401 - whatever it works
        """What `key` comes to: worked now or known already. Raises Stopped with its trouble noted at `where`."""
        if key in self._known:
            if isinstance(self._known[key], Stopped):
                raise Stopped
            return self._known[key]
        place = where.place if isinstance(where, Word) else where
        if key in self._open:
            circle = " → ".join((*self._open[self._open.index(key) :], key))
            self._stop(f"these depend on each other in a circle: {circle}", place)
        if len(self._open) >= DEEPEST:
            self._stop(f"'{key}' leans on others through more than {DEEPEST} steps", place)
        self._open.append(key)
        try:
            found = work()
            self._known[key] = found
        except RecursionError:  # long sums inside a long chain
            self.troubles.add(f"'{key}' leans on too much at once", place, "give one of the names in it a number")
            self._known[key] = Stopped()
            raise Stopped from None
        except Stopped as stopped:
            self._known[key] = stopped
            raise
        finally:
            self._open.pop()
        return found

    def known(self, key: str, value: Any) -> None:  # noqa: ANN401 - whatever was worked
        """What a key comes to, told before its work has ended: what must hold of it may ask for it."""
        self._known[key] = value

    def _stop(self, message: str, place: Place) -> NoReturn:
        self.troubles.add(message, place, "give one of them a number")
        raise Stopped
