"""A QR code of a page's address, as a drawing of squares; the one module that knows segno."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from sheetgen.facts.paper import LABEL_CODE, QR_MODULE, QR_QUIET


class Code(NamedTuple):
    """A code: so many modules a side, and its dark ones as a path, a unit each. Sides in mm."""

    modules: int
    path: str

    @property
    def quiet(self) -> float:
        """The blank edge that it wants all round."""
        return float(QR_QUIET) * self.side / self.modules

    @property
    def side(self) -> float:
        """Of the code itself."""
        return float(LABEL_CODE)

    @property
    def svg(self) -> str:
        """The drawing, at its size; one path, so that no renderer leaves a hair between two squares."""
        box = f'width="{self.side:g}mm" height="{self.side:g}mm" viewBox="0 0 {self.modules} {self.modules}"'
        return f'<svg xmlns="http://www.w3.org/2000/svg" {box}><path d="{self.path}"/></svg>'


@lru_cache(4096)
def code(url: str) -> Code | None:
    """The code of an address; None where its modules would be too small for a phone.

    It takes four milliseconds, and of a large library catalogue and programme want the same ones.
    """
    import segno  # noqa: PLC0415 - only where labels are printed

    made = segno.make_qr(url, error="m")
    rows = [[bool(dark) for dark in row] for row in made.matrix]
    if float(LABEL_CODE) / len(rows) < float(QR_MODULE):
        return None
    runs = []
    for down, row in enumerate(rows):
        at = 0
        while at < len(row):
            long = next((n for n, dark in enumerate(row[at:]) if dark is not row[at]), len(row) - at)
            if row[at]:
                runs.append(f"M{at} {down}h{long}v1h-{long}z")
            at += long
    return Code(len(rows), "".join(runs))
