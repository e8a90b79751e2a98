"""A blank of sheet metal: how many come out of the sheet as it is sold, and so how much of it one takes."""

from __future__ import annotations

from sheetgen.parts.figure import FigureSpec, Need, TakeSpec, figure, need, take

ABOUT = "Of a sheet cut up in rows; where stock does not say how the sheet is sold, {} itself."


def share(  # noqa: PLR0913 - what a blank is, most of it by name
    label: str, sheet: str, long: str, wide: str, *, gap: str, at: str, edges: str = "", when: str = "",
    piece: str = "the strip",
) -> FigureSpec:  # fmt: skip
    """Sheet (mm²) that one blank `long` by `wide` takes, `gap` left between two. TypeError as of any figure.

    `edges` is what is kept at two sides together, 0 or the name of a number; `at` the field to mend if the blank does
    not come out of the sheet.
    """
    says = share_text(sheet, long, wide, gap, edges)
    fits = comes_out(sheet, long, wide, at=at, edges=edges, when=when)
    return figure(label, "mm²", says, about=ABOUT.format(piece), when=when, needs=(fits,))


def share_text(sheet: str, long: str, wide: str, gap: str, edges: str = "") -> str:
    """The text of that share: the sheet over the blanks that it gives in rows, since what is left beside is no use."""
    between, less = f"({gap} if {gap})", f" − ({edges} if {edges})" if edges else ""
    rows = f"grid({sheet}.long{less}, {sheet}.wide{less}, {long}, {wide}, {between})"
    alone = f"({long} + {between}) × ({wide} + {between})"
    return f"{sheet}.long × {sheet}.wide ÷ {rows} if {sheet}.long and {sheet}.wide else {alone}"


def comes_out(  # noqa: PLR0913 - what a blank is
    sheet: str, long: str, wide: str, *, at: str, edges: str = "", when: str = ""
) -> Need:
    """The blank is no larger than the sheet, either way round, where stock says how the sheet is sold."""
    a, b = _with(long, edges), _with(wide, edges)
    s = sheet
    return need(
        f"{a} ≤ {s}.long and {b} ≤ {s}.wide or {b} ≤ {s}.long and {a} ≤ {s}.wide",
        f"wants a piece of {{{a}}} × {{{b}}}, and {{{s}.name}} is sold {{{s}.long}} × {{{s}.wide}}", at=at,
        help="a smaller piece, or a larger sheet", when=f"{f'{when} and ' if when else ''}{s}.long and {s}.wide",
    )  # fmt: skip


def take_sheet(  # noqa: PLR0913 - what a blank is
    sheet: str, each: str, long: str, wide: str, *, edges: str = "", when: str = ""
) -> TakeSpec:
    """What all pieces take of a sheet, `each` the figure of one; one blank is cut from a piece with its edges."""
    return take(sheet, f"count × {each}", each=each, blank=(_with(long, edges), _with(wide, edges)), when=when)


def _with(side: str, edges: str) -> str:
    return f"{side} + {edges}" if edges else side
