"""What a file may say, in words that keep their places: the ground for studio, stock and project."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated, Any

from pydantic import BaseModel, ConfigDict, GetPydanticSchema
from pydantic_core import core_schema

from sheetgen.base.place import Place, Source, Word

if TYPE_CHECKING:
    from sheetgen.base.outline import Outline


def _a_word(_source: Any, _handler: Any) -> core_schema.CoreSchema:  # noqa: ANN401 - pydantic's own signature
    return core_schema.is_instance_schema(
        Word,
        cls_repr="a word",
        metadata={"pydantic_js_functions": [lambda _core, _json: {"type": "string"}]},
    )


Text = Annotated[Word, GetPydanticSchema(_a_word)]
"""Any scalar of a file. Numbers stay words until they are worked, so that a trouble can point into them."""


class Traced(Word):
    """A word that draws an outline, with the outline that reading made of it."""

    __slots__ = ("outline",)
    outline: Outline


LONGEST = 6000  # characters of a text
MOST_LISTED = 500  # of anything in a list: nobody makes a piece in more steps, nor owns more drills
NOWHERE = Place(Source("(default)"))


def default(text: str) -> Word:
    """A default that no file holds."""
    return Word(text, NOWHERE)


class Written(BaseModel):
    """A mapping of a file: fields with spaces, no others than these."""

    model_config = ConfigDict(
        extra="forbid",
        frozen=True,
        arbitrary_types_allowed=True,
        populate_by_name=False,
        alias_generator=lambda name: name.rstrip("_").replace("_", " "),
    )
