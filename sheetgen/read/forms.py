"""Words to a form (studio, stock file, project): every field that is unknown, missing or of the wrong shape."""

from __future__ import annotations

import functools
from typing import TYPE_CHECKING, Any, TypeVar, get_args, get_origin

from pydantic import BaseModel, ValidationError

from sheetgen.base.place import Place, Word
from sheetgen.base.spelling import suggest
from sheetgen.model.written import Written

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from sheetgen.base.trouble import Troubles
    from sheetgen.read.yaml_words import Mapping

Keys = dict[int, dict[Any, Any]]
"""The words that name the fields of each mapping that was asked for one: nine thousand faults look once, not each."""
FormT = TypeVar("FormT", bound=BaseModel)


def form(model: type[FormT], found: Mapping, troubles: Troubles) -> FormT | None:
    """The form filled from a mapping, or None with a trouble for every fault."""
    try:
        return model.model_validate(found)
    except ValidationError as faults:
        seen = set()
        keys: Keys = {}
        for fault in faults.errors():
            told = _said(model, found, fault, keys)
            if (told[0], told[1]) not in seen:
                seen.add((told[0], told[1]))
                troubles.add(*told)
        return None


def _said(model: type[BaseModel], found: Mapping, fault: Any, keys: Keys) -> tuple[str, Place, str]:  # noqa: ANN401
    """One of pydantic's faults in our words, at its place."""
    path = _steps(found, fault["loc"])
    kind = fault["type"]
    holder, key, value, owner = _walk(model, found, path, keys)
    if kind == "missing":
        return f"'{path[-1]}' is missing", next(_places(holder)), f"add {path[-1]}: …"
    if kind == "extra_forbidden":
        known = [f.alias or n for n, f in owner.model_fields.items()] if owner else []
        place = next(_places(key if isinstance(key, Word) else holder))
        return f"there is no field '{path[-1]}' here", place, suggest(str(path[-1]), known)
    place = next(_places(value, key, holder))
    name = str(key) if isinstance(key, str) else "this"
    if isinstance(value, str) and not value.strip():
        return (
            f"'{name}' has nothing after it",
            key.place if isinstance(key, Word) else place,
            "fill it in or take it out",
        )
    if kind == "list_type":
        return f"'{name}' wants a list", place, f"write {name}: [one, two], or a line with a dash for each"
    if kind in {"dict_type", "model_type", "model_attributes_type"}:
        return f"'{name}' wants fields of its own", place, "indent name: value lines below it"
    return f"'{name}' wants plain words or a number", place, "write it on one line, without dashes or fields below it"


def _steps(found: Any, loc: Iterable[Any]) -> list[Any]:  # noqa: ANN401
    """The steps of the file in a path: pydantic adds the names of union members and `[key]`, which are none.

    What stands in the file at that place is a step, however it is called.
    """
    steps, value = [], found
    for step in loc:
        if isinstance(value, dict) and step in value:
            value = value[step]
        elif isinstance(value, list) and isinstance(step, int):
            value = value[step] if step < len(value) else None
        elif isinstance(step, int) and isinstance(value, dict):
            continue  # the one thing of a list, written alone
        elif (
            str(step) == "[key]" or str(step).startswith(("is-instance[", "list[", "dict[")) or step in _forms(Written)
        ):
            continue
        steps.append(step)
    return steps


@functools.cache
def _forms(model: type[BaseModel]) -> frozenset[str]:
    """The names of all forms below one, which pydantic puts into a path where one of several may stand."""
    return frozenset(name for one in model.__subclasses__() for name in (one.__name__, *_forms(one)))


def _walk(
    model: type[BaseModel],
    found: Any,  # noqa: ANN401
    path: list[Any],
    keys: Keys,
) -> tuple[Any, Any, Any, type[BaseModel] | None]:
    """The holder, key and value at a path, and the form the holder is."""
    holder: Any = found
    key: Any = None
    value: Any = found
    form_here: Any = model
    owner: type[BaseModel] | None = model
    for step in path:
        if not isinstance(value, dict | list):
            break
        holder = value
        if isinstance(value, dict) and get_origin(form_here) is list:
            form_here = _below(form_here, 0)
        owner = form_here if isinstance(form_here, type) and issubclass(form_here, BaseModel) else None
        if isinstance(holder, dict):
            own = keys.get(id(holder)) or keys.setdefault(id(holder), {one: one for one in holder})
            key = own.get(step, step)
            value = holder.get(key)
        else:
            key = step
            value = holder[step] if isinstance(step, int) and step < len(holder) else None
        form_here = _below(form_here, step)
    return holder, key, value, owner


def _below(form_here: Any, step: object) -> Any:  # noqa: ANN401
    """The type of what stands below a form, a list of forms or a mapping of forms."""
    if isinstance(form_here, type) and issubclass(form_here, BaseModel):
        for name, info in form_here.model_fields.items():
            if (info.alias or name) == step:
                given = [one for one in get_args(info.annotation) if one is not type(None)]
                may_be_none = type(None) in get_args(info.annotation)
                return given[0] if may_be_none and len(given) == 1 else info.annotation
        return None
    forms = [a for a in get_args(form_here) if a is not type(None)]
    return forms[-1] if forms else None


def _places(*values: Any) -> Iterator[Place]:  # noqa: ANN401
    """Where these stand, the first that know it first."""
    for value in values:
        within = next(iter(value), None) if isinstance(value, list | dict) else None
        found = (getattr(one, "place", None) for one in (value, within))
        yield from (place for place in found if isinstance(place, Place))
