"""What a file may say, in words that keep their places: the ground for studio, stock and project."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Annotated, Any, get_origin

from pydantic import BaseModel, BeforeValidator, ConfigDict, GetPydanticSchema
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

LISTED = re.compile(r",\s")
"""Several words after each other, which want the brackets of a list."""


def _word_alone(found: Any) -> Any:  # noqa: ANN401 - whatever a file holds
    """One word where a list is wanted is a list of one; nothing at all, or several without brackets, is none."""
    return [found] if isinstance(found, Word) and found.strip() and not LISTED.search(found) else found


def _line_alone(found: Any) -> Any:  # noqa: ANN401
    return [found] if isinstance(found, Word) and found.strip() else found


def _fields_alone(found: Any) -> Any:  # noqa: ANN401
    return [found] if isinstance(found, dict) else _word_alone(found)


def _line_or_fields_alone(found: Any) -> Any:  # noqa: ANN401
    return [found] if isinstance(found, dict) else _line_alone(found)


Texts = Annotated[list[Text], BeforeValidator(_word_alone)]
"""A list of words, or one word alone."""
Lines = Annotated[list[Text], BeforeValidator(_line_alone)]
"""A list of texts in which commas stand, or one of them alone."""
LineOrMore = BeforeValidator(_line_or_fields_alone)
"""Before a list of texts in which commas stand, and of what has fields of its own: one of them alone will do."""
OneOrMore = BeforeValidator(_fields_alone)
"""Before a list of what has fields of its own: one of them alone will do."""


def lists(model: type[BaseModel]) -> frozenset[str]:
    """The fields of a form that are lists, as files write them."""
    return frozenset(str(i.alias) for i in model.model_fields.values() if get_origin(i.annotation) is list)


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
