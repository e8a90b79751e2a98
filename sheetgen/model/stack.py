"""What a run of orders prints: documents that are laid out once, and which of them goes to whom."""

from __future__ import annotations

from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Document:
    """A sheet of one kind of kit as a PDF. Each page of a `one_sided` one, such as templates, has a blank back."""

    key: str
    pdf: bytes = field(repr=False)
    one_sided: bool = False


@dataclass(frozen=True, slots=True)
class Stacked:
    """An order: its number, and the keys of its documents in their order, each with how many copies.

    `kits` says of each document which kit it is of, kit 2 of 3; it is empty where the order has only one.
    """

    number: str
    documents: tuple[tuple[str, int], ...]
    kits: tuple[str, ...] = ()
