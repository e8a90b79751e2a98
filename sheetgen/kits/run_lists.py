"""All lists of a run in one place, from which a spreadsheet and paper take the same figures."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.kits import lists
from sheetgen.kits.buy_list import buy
from sheetgen.kits.check_list import check
from sheetgen.kits.cut_list import cut

if TYPE_CHECKING:
    from sheetgen.kits.bought import Got
    from sheetgen.kits.buy_list import Shopping
    from sheetgen.kits.check_list import Checked
    from sheetgen.kits.cut_list import Cutting
    from sheetgen.kits.taken import Kits
    from sheetgen.model.sheets import Sheet


@dataclass(frozen=True, slots=True)
class Lists:
    """A run of kits, what is got for it, what is cut and bought; `checked` are its orders, none where it has none."""

    run: tuple[Kits, ...]
    got: tuple[Got, ...]
    cuttings: tuple[Cutting, ...]
    shopping: Shopping
    checked: tuple[Checked, ...] = ()

    @property
    def sheets(self) -> tuple[Sheet, ...]:
        """Each list as a spreadsheet takes it, in the order in which a person works."""
        taken = [one.taken for one in self.got]
        orders = (check(self.checked),) if self.checked else ()
        return (
            lists.pick(taken, self.run), cut(self.cuttings), *orders, buy(self.shopping), lists.left(self.got),
        )  # fmt: skip
