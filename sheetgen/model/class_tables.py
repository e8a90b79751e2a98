"""A class in words, as its tables and its teacher's sheets print it; names are private, and no repr shows them."""

from __future__ import annotations

from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Lot:
    """A material that is laid out: its name, more of it where that is wanted, and how much, or nothing if as needed."""

    name: str
    detail: str
    amount: str


@dataclass(frozen=True, slots=True)
class Sits:
    """A pupil at a table, what he makes, how much clay he weighs out, and in which colours."""

    name: str = field(repr=False)
    makes: str
    clay: str
    colours: str


@dataclass(frozen=True, slots=True)
class Lies:
    """What lies at each of some places: `where` says at which."""

    where: str
    lots: tuple[Lot, ...]
    tools: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class TableTold:
    """A table: who sits there, what lies at the places, and what stands on it for all."""

    name: str = field(repr=False)
    sits: tuple[Sits, ...]
    places: tuple[Lies, ...]
    shared: tuple[Lot, ...]
    tools: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class TablesTold:
    """All tables, the teacher's, tools that stand by themselves, and what stands by kiln and torch."""

    counted: str
    tables: tuple[TableTold, ...]
    teacher: TableTold
    alone: tuple[str, ...]
    kiln: tuple[Lot, ...]
    kiln_tools: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Share:
    """What one version has of a class: its sets in words, how many of the class they are, what they take.

    `called` is the version in words where something is chosen otherwise.
    """

    counted: str
    part: str
    called: str
    lots: tuple[Lot, ...]
