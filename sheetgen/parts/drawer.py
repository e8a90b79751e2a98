"""The drawer of tools: the owned size nearest to a wanted one, or the smallest that is large enough."""

from __future__ import annotations

from typing import TYPE_CHECKING, Protocol

from sheetgen.base.spread import GRAIN, ceil
from sheetgen.base.trouble import CannotBe

if TYPE_CHECKING:
    from collections.abc import Sequence


class Owner(Protocol):
    """Whoever knows what is in the drawer."""

    def owned(self, kind: str) -> Sequence[float]:
        """The sizes, mm, of the tools of one kind; empty when the stock lists none."""

    def as_cut(self, size: float) -> float:
        """A size in mm as the bench cuts it: up to the studio's step."""


class Drawer:
    """What may choose a tool from the drawer of its bench."""

    bench: Owner

    def tool(self, kind: str, wanted: float, field: str, reach: float = 0.1) -> float:
        """The owned tool nearest to `wanted`, mm; `wanted` itself when the stock lists none of the kind.

        Raises CannotBe naming the two nearest when none is within `reach` (a share of the size, 0.5 mm at least).
        """
        sizes = sorted(self.bench.owned(kind))
        if not sizes or wanted in sizes:
            return wanted
        best = min(sizes, key=lambda size: abs(size - wanted))
        if abs(best - wanted) > max(0.5, reach * wanted) + 1e-9:
            near = " and ".join(f"{size:g} mm" for size in beside(sizes, wanted))
            message = f"no {kind} of {wanted:.2f} mm or near it is in the drawer"
            raise CannotBe(message, f"the nearest owned: {near}; change the size, or add the tool to stock", field)
        return best

    def tools_over(self, kind: str, wanted: float) -> list[float]:
        """The owned tools not under `wanted`, mm; a tenth of a millimetre up when the stock lists none of the kind."""
        owned = self.bench.owned(kind)
        return sorted(size for size in owned if size >= wanted - GRAIN) if owned else [ceil(wanted * 10) / 10]

    def tool_over(self, kind: str, wanted: float, field: str, reach: float = 0.5) -> float:
        """The smallest of them. Raises CannotBe naming the largest owned when none is within `reach`, mm."""
        enough = self.tools_over(kind, wanted)
        if not enough or enough[0] > wanted + reach + GRAIN:
            owned = " and ".join(f"{size:g} mm" for size in beside(self.bench.owned(kind), wanted))
            message = f"no {kind} from {wanted:.2f} mm to {reach:g} mm more is in the drawer"
            raise CannotBe(message, f"the nearest owned: {owned}; change the size, or add the tool to stock", field)
        return enough[0]


def neighbours(sizes: Sequence[float], wanted: float, most: int = 3) -> str:
    """The owned sizes round a wanted one, as a working shows them; the wanted one itself when none is owned."""
    near = sorted(sorted(sizes, key=lambda size: abs(size - wanted))[:most]) or [wanted]
    return ", ".join(f"{size:.6g}" for size in near)


def beside(sizes: Sequence[float], wanted: float) -> list[float]:
    """The owned size just under a wanted one and the one just over it, where there are such."""
    ordered = sorted(sizes)
    return [*[s for s in ordered if s < wanted][-1:], *[s for s in ordered if s > wanted][:1]]
