"""The page of what is behind every number."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Annotated

if TYPE_CHECKING:
    from sheetgen.model.view.head import Html, Studio


@dataclass(frozen=True, slots=True)
class FormulaRow:
    """A formula of the program."""

    about: Annotated[Html, "what it is"]
    says: Annotated[str, "the formula"]
    source: str
    valid: Annotated[str, "where it holds, or nothing"]


@dataclass(frozen=True, slots=True)
class RuleRow:
    """A rule of the bench."""

    name: str
    reason: str
    told: Annotated[str, "error or warning, and whether it is never waived"]
    source: str


@dataclass(frozen=True, slots=True)
class ConstantRow:
    """A constant behind the numbers."""

    name: str
    value: str
    unit: str
    source: str
    grade: Annotated[str, "how its source was seen"]


@dataclass(frozen=True, slots=True)
class Formulas:
    """The formulas of one subject."""

    subject: str
    rows: tuple[FormulaRow, ...]


@dataclass(frozen=True, slots=True)
class Rules:
    """The rules of one family, errors first."""

    subject: str
    rows: tuple[RuleRow, ...]


@dataclass(frozen=True, slots=True)
class Constants:
    """The constants of one subject."""

    subject: str
    rows: tuple[ConstantRow, ...]


@dataclass(frozen=True, slots=True)
class Facts:
    """What is behind every number: `facts.html.j2`."""

    studio: Studio
    language: str
    formulas: tuple[Formulas, ...]
    rules: tuple[Rules, ...]
    constants: tuple[Constants, ...]
