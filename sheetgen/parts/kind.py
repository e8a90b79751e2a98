"""What a kind of part is: fields given in the file, and figures, needs, sizes and takings as texts worked from them.

A kind is a class that is never made into an object. Its texts are read, and its names, units and roles checked, when
the class is made, so that a slip reaches its author and not a studio.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, ClassVar

from sheetgen.formulas import known
from sheetgen.parts import field
from sheetgen.parts.checking import read_kind
from sheetgen.parts.field import Field
from sheetgen.parts.figure import Aside, FigureSpec, Flag, Inline

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from sheetgen.base.flat import Flat, Oval
    from sheetgen.base.pen import Extent
    from sheetgen.parts.figure import Need, SizeSpec, StandSpec, TakeSpec, ToolSpec
    from sheetgen.parts.piece import Piece
    from sheetgen.parts.reading import Slip, Texts

FORMULAS = known.FORMULAS  # registered by their import, which a text needs


class Part:
    """A piece of a project. A kind subclasses it in a file of its own, or stands in a library's kinds/ as YAML."""

    kind: ClassVar[str] = ""
    about: ClassVar[str] = ""
    """What a kind without a file of its own says of itself."""
    reshaped: ClassVar[bool] = False  # bent or domed after it is cut
    hazards: ClassVar[tuple[str, ...]] = ()  # cautions that working the part always calls for
    closes: ClassVar[bool] = False  # a clasp
    last: ClassVar[bool] = False  # of what several kinds share: its figures stand after the kind's own
    either: ClassVar[tuple[tuple[str, str], ...]] = ()  # of two fields one is given, and not both
    dries: ClassVar[str] = ""  # how thick the clay is where it is thickest; left out, what it is rolled to
    on_shelf: ClassVar[tuple[StandSpec, ...]] = ()  # room in the kiln; left out, that of the template if it stays flat
    needs: ClassVar[tuple[Need, ...]] = ()
    sizes: ClassVar[tuple[SizeSpec, ...]] = ()
    takes: ClassVar[tuple[TakeSpec, ...]] = ()
    tools: ClassVar[tuple[ToolSpec, ...]] = ()
    flat: ClassVar[Callable[[Piece], Iterable[Flat]] | None] = None  # its template
    drilled: ClassVar[Callable[[Piece, Extent], Iterable[Oval]] | None] = None  # on a template that reaches so far

    names: ClassVar[dict[str, Any]] = {}
    """Fields, figures, asides, inlines and flags by name."""
    texts: ClassVar[Texts]
    """Every text of the kind, read and bound."""

    count = field.count("how many of these the project needs", default="1")
    at = field.spot("where the middle of its top stands in the finished view, as 5 mm, 12 mm: right and down")
    hangs_from = field.neighbour("the part it hangs from in the finished view", role="hangs from")

    def __init_subclass__(cls) -> None:
        """Read and check the kind; what several kinds share is checked in each of them. TypeError for its author."""
        if vars(cls).get("kind"):
            cls.declared()

    @classmethod
    def declared(cls, slips: list[Slip] | None = None) -> None:
        """Read and check what is declared: raises the first slip, or gathers all of them."""
        cls.names = _gathered(cls)
        cls.texts = read_kind(cls, slips)

    @classmethod
    def fields(cls) -> dict[str, Field[Any]]:
        """Every field by its written name, in the order of the file."""
        return {v.name: v for v in cls.names.values() if isinstance(v, Field)}

    @classmethod
    def figures(cls) -> dict[str, FigureSpec]:
        """Every figure by its name in arithmetic, in the order of the file."""
        return {k: v for k, v in cls.names.items() if isinstance(v, FigureSpec)}

    @classmethod
    def with_role(cls, role: str) -> Field[Any] | FigureSpec | None:
        """The field or figure that plays a role."""
        return next((v for v in cls.names.values() if isinstance(v, Field | FigureSpec) and v.role == role), None)


def _gathered(kind: type[Part]) -> dict[str, Any]:
    """What a class and what it stands on declare, those that are `last` after the others; its own word goes first."""
    owners = [Part, *(c for c in reversed(kind.__mro__) if c is not Part)]
    found: dict[str, Any] = {}
    fields: dict[str, Any] = {}
    for owner in owners:
        fields |= {k: v for k, v in vars(owner).items() if isinstance(v, Field)}
    for owner in sorted(owners, key=lambda c: bool(vars(c).get("last"))):
        found |= {k: v for k, v in vars(owner).items() if isinstance(v, FigureSpec | Aside | Inline | Flag)}
    return fields | {name: getattr(kind, name) for name in found}
