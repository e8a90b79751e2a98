"""Lines of money: each with its working in words, rounded once; a total is the sum of its printed lines."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import TYPE_CHECKING

from sheetgen.base.exact import plain
from sheetgen.formulas.price import CENT, printed

if TYPE_CHECKING:
    from collections.abc import Iterable

    from sheetgen.base.exact import Exact


@dataclass(frozen=True, slots=True)
class Line:
    """What is paid for, how it was worked, and the amount as it is printed; None where a price is not known."""

    label: str
    working: str
    amount: Decimal | None


@dataclass(frozen=True, slots=True)
class Coin:
    """The one currency, its smallest coin, and the studio's decimal point."""

    currency: str = "EUR"
    least: Decimal = CENT
    point: str = "."

    def told(self, amount: Exact) -> str:
        """An amount with its currency, as a line prints it."""
        return f"{self.bare(amount)} {self.currency}"

    def bare(self, amount: Exact) -> str:
        """The same without the currency."""
        return f"{printed(amount, self.least):f}".replace("-", "−").replace(".", self.point)

    def number(self, amount: Exact) -> str:
        """A number in a working, as exact as it is written."""
        return plain(amount, self.point)

    def line(self, label: str, working: str, amount: Exact | None) -> Line:
        """A line, its amount rounded half away from zero: once, and here."""
        return Line(label, working, None if amount is None else printed(amount, self.least))

    def total(self, label: str, lines: Iterable[Line]) -> Line:
        """The sum of the printed lines, so that a reader who adds them up gets it too; it says what is not in it."""
        each = list(lines)
        unknown = [line.label for line in each if line.amount is None]
        working = " + ".join(self.bare(line.amount) for line in each if line.amount is not None)
        if unknown:
            items = "1 item" if len(unknown) == 1 else f"{len(unknown)} items"
            working = f"{working}, without {items}: {', '.join(unknown)}".removeprefix(", ")
        return self.line(label, working, known(each))


def known(lines: Iterable[Line]) -> Decimal:
    """What the lines come to whose amount is known."""
    return sum((line.amount for line in lines if line.amount is not None), Decimal(0))
