"""A mapping that stays as it was made, and can be sent to another process."""

from __future__ import annotations

from typing import Any, NoReturn, TypeVar

K = TypeVar("K")
V = TypeVar("V")


class Frozen(dict[K, V]):
    """A dict that refuses every change."""

    __slots__ = ()

    def _no(self, *_args: Any, **_more: Any) -> NoReturn:  # noqa: ANN401 - whatever a dict takes
        raise TypeError("this mapping does not change")

    __setitem__ = __delitem__ = clear = pop = popitem = setdefault = update = __ior__ = _no

    def __reduce__(self) -> tuple[type, tuple[dict[K, V]]]:
        """What a copy is made from."""
        return type(self), (dict(self),)

    def __hash__(self) -> int:  # type: ignore[override]
        return hash(frozenset(self))
