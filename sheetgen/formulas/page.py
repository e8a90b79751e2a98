"""What a printed page is true to: scale, fit, pixels and points, codes."""

from __future__ import annotations

from sheetgen.base.trouble import CannotBe
from sheetgen.facts import paper as facts
from sheetgen.facts.rings import US_STEP
from sheetgen.facts.units import MM_PER_INCH
from sheetgen.formulas import guard
from sheetgen.formulas.formula import numeric

_CSS = "CSS Values as in pint 0.24.4"
_QR = "ISO/IEC 18004 as in segno 1.6.6"
_BAR = "definition of a scale"


@numeric("scale = measured ÷ meant", source=_BAR)
def print_scale(measured: float, meant: float) -> float:
    """How large a page was printed, from a bar (mm). CannotBe for 0 or less."""
    guard.above_zero(measured, "a measured bar", "measured")
    guard.above_zero(meant, "a bar", "meant")
    return measured / meant


def scale_passes(scale: float) -> bool:
    """Whether a printed template may be used: 99.5 to 100.5 %. Common practice."""
    return facts.SCALE_LEAST - 1e-9 <= scale <= facts.SCALE_MOST + 1e-9


@numeric("print again at = 1 ÷ scale", source=_BAR)
def print_again_at(scale: float) -> float:
    """Enlargement that mends a wrong print scale. CannotBe for 0 or less."""
    guard.above_zero(scale, "a print scale", unit="")
    return 1 / scale


@numeric("fit = the smaller of paper ÷ page, in width and in height", source=_BAR)
def fit_factor(page_width: float, page_height: float, paper_width: float, paper_height: float) -> float:
    """How far 'fit to page' shrinks or enlarges a page (mm) on another paper (mm). CannotBe for 0 or less."""
    guard.above_zero(page_width, "a page", "paper")
    guard.above_zero(page_height, "a page", "paper")
    guard.above_zero(paper_width, "a paper", "paper")
    guard.above_zero(paper_height, "a paper", "paper")
    return min(paper_width / page_width, paper_height / page_height)


@numeric("sizes small = diameter × (1 − scale) ÷ 0.032 in", source="Wikipedia, Ring size")
def ring_sizes_lost(inside_diameter: float, scale: float) -> float:
    """US sizes by which a ring gauge of an inside diameter (mm) prints too small. CannotBe for 0 or less."""
    guard.above_zero(inside_diameter, "an inside diameter", "inside")
    guard.above_zero(scale, "a print scale", unit="")
    return inside_diameter * (1 - scale) / MM_PER_INCH / US_STEP


@numeric("px = mm ÷ 25.4 × 96", source=_CSS)
def css_pixels(mm: float) -> float:
    """CSS pixels in a length (mm)."""
    return mm / MM_PER_INCH * facts.PX_PER_INCH


@numeric("pt = mm ÷ 25.4 × 72", source=_CSS)
def points(mm: float) -> float:
    """Points in a length (mm)."""
    return mm / MM_PER_INCH * facts.PT_PER_INCH


@numeric("modules = 17 + 4 × version", source=_QR, valid="versions 1 to 40")
def qr_modules(version: float) -> float:
    """Modules a side of a QR code. CannotBe off versions 1 to 40."""
    if not 1 <= version <= facts.QR_LAST or version % 1:
        raise CannotBe(f"there is no QR version {version:g}", help="a whole number, 1 to 40", field="version")
    return facts.QR_BASE + facts.QR_STEP * version


@numeric("side = (17 + 4 × version + 8) × module", source=_QR)
def qr_side(version: float, module: float) -> float:
    """Side (mm) of a QR code with its quiet edge, for a module (mm). CannotBe for 0 or less."""
    guard.above_zero(module, "a module", "module")
    return (qr_modules.pure(version) + 2 * facts.QR_QUIET) * module
