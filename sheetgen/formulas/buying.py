"""What to buy: waste, pieces out of stock, pieces out of a slab."""

from __future__ import annotations

from sheetgen.base.interval import ceil, floor
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas import guard
from sheetgen.formulas.formula import formula, numeric

_GRID = "plane geometry: rows and columns, the piece either way round"


@numeric("need with waste = need × (1 + waste)", source="waste counted on what is used")
def with_waste(need: float, waste: float) -> float:
    """What to buy so that `need` is left, waste a share of the need. CannotBe for negative numbers."""
    guard.not_below_zero(need, "a need", "need", "")
    guard.not_below_zero(waste, "a waste", "waste", "")
    return need * (1 + waste)


@numeric("need with yield = need ÷ yield", source="yield counted on what is bought")
def with_yield(need: float, yielded: float) -> float:
    """What to buy so that `need` is left, when a share of what is bought can be used. CannotBe off 0 to 1."""
    guard.not_below_zero(need, "a need", "need", "")
    guard.share(yielded, "a yield", "yield", zero=False)
    return need / yielded


@numeric("pieces = (stock + kerf) ÷ (piece + kerf), whole ones", source="a cut between two pieces, none after the last")
def pieces_from_stock(stock: float, piece: float, kerf: float) -> float:
    """Pieces (mm) out of one length of stock (mm) with a cut (mm) between. CannotBe for a piece of 0 or less."""
    guard.not_below_zero(stock, "a length of stock", "stock")
    guard.above_zero(piece, "a piece", "length")
    guard.not_below_zero(kerf, "a saw cut", "kerf")
    return floor((stock + kerf) / (piece + kerf))


@numeric("stock = pieces × (piece + kerf) − kerf", source="a cut between two pieces, none after the last")
def stock_for_pieces(count: float, piece: float, kerf: float) -> float:
    """Length (mm) of stock for so many pieces (mm). CannotBe for a piece of 0 or less."""
    guard.above_zero(count, "a number of pieces", "count", "")
    guard.above_zero(piece, "a piece", "length")
    guard.not_below_zero(kerf, "a saw cut", "kerf")
    return count * (piece + kerf) - kerf


@numeric(
    "roll = up(pieces ÷ down(width ÷ across)) × along, or the other way round if that is less",
    source="plane geometry: rows across the roll, all pieces one way round",
)
def length_of_roll(count: float, along: float, across: float, width: float) -> float:
    """Length (mm) of a roll `width` mm wide for so many pieces (mm), side by side in rows; whichever way takes less.

    CannotBe for a piece that goes on the roll neither way.
    """
    guard.not_below_zero(count, "a number of pieces", "count", "")
    for value, what, field in (
        (along, "a piece's length", "amount"),
        (across, "its width", "wide"),
        (width, "a roll's width", "across"),
    ):
        guard.above_zero(value, what, field)
    ways = ((long, floor(width / wide)) for long, wide in ((along, across), (across, along)))
    rows = [ceil(count / abreast) * long for long, abreast in ways if abreast]
    if not rows:
        told = f"a piece of {guard.shown(along)} × {guard.shown(across)} is wider than the roll, {guard.shown(width)}"
        raise CannotBe(told, help="a wider roll, or a smaller piece", field="wide")
    return min(rows)


grid_count = formula(
    "grid(room_length, room_width, length, width, gap)",
    "max(down((room_length + gap) ÷ (length + gap)) × down((room_width + gap) ÷ (width + gap)), "
    "down((room_length + gap) ÷ (width + gap)) × down((room_width + gap) ÷ (length + gap)))",
    about="Rectangles or discs (mm) out of a slab inside its margins (mm), in rows: mixed ways round may fit more.",
    source=_GRID, valid="room_length > 0 and room_width > 0 and length > 0 and width > 0 and gap ≥ 0",
)  # fmt: skip


@numeric("pieces ≤ slab area ÷ piece area, whole ones", source="areas: a bound, not a layout")
def most_by_area(slab_area: float, piece_area: float) -> float:
    """No more pieces than this come out of a slab, whatever the layout; both mm². CannotBe for 0 or less."""
    guard.not_below_zero(slab_area, "a slab's area", "slab", "mm²")
    guard.above_zero(piece_area, "a piece's area", "length", "mm²")
    return floor(slab_area / piece_area)


@numeric("slabs ≥ area of all pieces ÷ slab area, rounded up", source="areas: a bound, not a layout")
def least_slabs(area_of_pieces: float, slab_area: float) -> float:
    """No fewer slabs than this are needed, both mm². CannotBe for 0 or less."""
    guard.not_below_zero(area_of_pieces, "the area of the pieces", "length", "mm²")
    guard.above_zero(slab_area, "a slab's area", "slab", "mm²")
    return ceil(area_of_pieces / slab_area)


@numeric("clay back = offcut × (1 − loss)", source="offcut clay is rolled again; the loss is common practice")
def clay_returned(offcut: float, loss: float) -> float:
    """Clay (g) that comes back from offcuts (g). CannotBe for a loss off 0 to 1."""
    guard.not_below_zero(offcut, "an offcut", "mass", "g")
    guard.share(loss, "a loss", "waste")
    return offcut * (1 - loss)
