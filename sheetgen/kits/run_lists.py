"""All lists of a run in one place, from which a spreadsheet and paper take the same figures."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.kits import lists
from sheetgen.kits.buy_list import buy
from sheetgen.kits.check_list import check
from sheetgen.kits.cut_list import cut
from sheetgen.kits.tags import tags

if TYPE_CHECKING:
    from sheetgen.base.rounding import Rounder
    from sheetgen.kits.bought import Got
    from sheetgen.kits.buy_list import Shopping
    from sheetgen.kits.check_list import Checked
    from sheetgen.kits.cut_list import Cutting
    from sheetgen.kits.taken import Kits
    from sheetgen.model.sheets import Sheet
    from sheetgen.model.worked import Publisher


@dataclass(frozen=True, slots=True)
class Lists:
    """A run of one kind of kit or more, what is got, cut and bought for it; `checked` are its orders, if it has any."""

    run: tuple[Kits, ...]
    got: tuple[Got, ...]
    cuttings: tuple[Cutting, ...]
    shopping: Shopping
    checked: tuple[Checked, ...] = ()

    @property
    def studio(self) -> Publisher:
        """Whose run it is."""
        return self.run[0].worked.studio

    @property
    def rounder(self) -> Rounder:
        """How the studio prints its numbers."""
        return self.run[0].rounder

    @property
    def sheets(self) -> tuple[Sheet, ...]:
        """Each list as a spreadsheet takes it, in the order in which a person works."""
        taken, marks = [one.taken for one in self.got], tags(self.cuttings)
        orders = (check(self.checked),) if self.checked else ()
        return (
            lists.pick(taken, self.run, marks), cut(self.cuttings), *orders, buy(self.shopping), lists.left(self.got),
        )  # fmt: skip
