"""What stands before the first step: picture, sizes, sessions, what to have ready, what to beware of."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Annotated

if TYPE_CHECKING:
    from sheetgen.model.view.head import Html


@dataclass(frozen=True, slots=True)
class Picture:
    """A picture of the piece or of a step: a file, or a drawing of ours."""

    source: Annotated[str, "its address, on paper a data: address; or nothing"]
    svg: Annotated[Html, "a drawing, or nothing"]
    alternative: Annotated[str, "what it shows, for who cannot see it"]
    caption: Annotated[str, "the words under it, who made it among them, or nothing"]
    width: Annotated[int, "on a screen, of the file at `source`, so that its room is kept; else 0"] = 0
    height: Annotated[int, "the same"] = 0
    widths: Annotated[str, "on a screen its files by their widths, for srcset, or nothing"] = ""
    webp: Annotated[str, "the same as WebP, for a source before the img, or nothing"] = ""


@dataclass(frozen=True, slots=True)
class Size:
    """A finished size."""

    label: str
    told: Annotated[Html, "number and unit"]


@dataclass(frozen=True, slots=True)
class Session:
    """What is done in one go."""

    number: int
    steps: Annotated[str, "its steps: steps 1–6"]
    minutes: Annotated[str, "time at the bench, or nothing"]
    then: Annotated[str, "what it ends with: dry 12 – 24 h"]


@dataclass(frozen=True, slots=True)
class Sized:
    """One size of things that are called alike."""

    size: str
    amount: Annotated[Html, "what to have of this size"]
    own: Annotated[str, "as for a thing"] = ""


@dataclass(frozen=True, slots=True)
class Need:
    """Something that is taken from stock."""

    name: str
    detail: Annotated[str, "more of its name, and how much of it is used where that is less, or nothing"]
    amount: Annotated[Html, "what to have, or nothing where it is taken as needed or in sizes"]
    sizes: Annotated[tuple[Sized, ...], "of things that are called alike but for a size, each size"] = ()
    own: Annotated[str, "data-own: its name in the stock, by which a drawer has it; nothing where none is asked"] = ""


@dataclass(frozen=True, slots=True)
class Bag:
    """A bag of a posted kit, or the box round its bags, and what is in it; all of that is used."""

    name: Annotated[str, "as the studio calls it, or nothing where all is in one"]
    things: Annotated[tuple[Need, ...], "materials, and in the box tools, which have no amount"]


@dataclass(frozen=True, slots=True)
class Tools:
    """The tools of one place at the bench."""

    place: Annotated[
        str, "clay bench, wire, kiln, finishing, safety; without clay, bench and fire for the first and third"
    ]
    names: tuple[str, ...]
    own: Annotated[tuple[str, ...], "data-own: the name of each in the stock; nothing of what a caution tells"]


@dataclass(frozen=True, slots=True)
class Told:
    """A caution in full."""

    word: Annotated[Html, "its signal word"]
    text: Annotated[Html, "hazard, what it does, how to avoid it, what to wear"]
    sign: Annotated[Html, "its sign by ISO 7010, or nothing"]


@dataclass(frozen=True, slots=True)
class Wear:
    """What is worn, or had at hand."""

    sign: Annotated[Html, "its sign by ISO 7010, or nothing"]
    words: Html


@dataclass(frozen=True, slots=True)
class Pointer:
    """Hazards that are told in full at the step of their first action."""

    told: Annotated[Html, "the step and what is told there: step 9: adhesive"]


@dataclass(frozen=True, slots=True)
class Aid:
    """First aid for one kind of hurt."""

    hurt: str
    do: Html


@dataclass(frozen=True, slots=True)
class Safety:
    """What stands before the first step."""

    told: Annotated[tuple[Told, ...], "the hazards of the bench, in full"]
    wear: Annotated[tuple[Wear, ...], "what they ask to be worn or had"]
    pointers: Annotated[tuple[Pointer, ...], "those told in full at their first action"]
    aid: Annotated[tuple[tuple[Aid, ...], ...], "first aid, where a hazard is grave: the hurts of each line"]
    deference: Annotated[str, "whose directions come before the sheet"]
    emergency: Annotated[Html, "the emergency number, or nothing: then leave a line to write it on"]
