"""The page that a theme's author reads: what each template gets, made from the data itself."""

from __future__ import annotations

import dataclasses
import re
import types
from typing import TYPE_CHECKING, Annotated, Any, get_args, get_origin, get_type_hints

from sheetgen.model import kit_cards_view, lists_view, view
from sheetgen.render.ordered import HOW
from sheetgen.render.theme import shipped

if TYPE_CHECKING:
    from collections.abc import Iterator

TEMPLATE = re.compile(r"`([\w.-]+\.j2)`")
BASES = {
    "sheet.html.j2": "Every printed sheet",
    "list.html.j2": "Every list of a run, which stays in the studio,",
}
BLOCK = re.compile(r"{% block (\w+) %}")
WORDS = {str: "text", view.Html: "HTML", int: "a number", bool: "yes or no"}

INTRODUCTION = """\
# A theme

A theme is a folder of templates (Jinja) and style sheets. Put a file of the same name into themes/plain/ of your
library, and it goes before ours; whatever you leave out is ours.

- A template gets `sheet`, which is plain data: words, numbers and lists, as they stand below. `styles` has the style
  sheets of the theme by their names: `{{ styles['paper.css'] }}`.
- What is HTML is printed as it is; every other text is escaped. No number is parted from its unit at the end of a line.
- A theme loads bare names from its own folder, such as `{% include 'mine.html.j2' %}`; nothing above it or elsewhere,
  and no link that leads out.
- A printed sheet also gets `density`: it is laid out with the first of these, and where it is too full with the next.
- A template of a page on a screen writes what stands in its body. Its head is the program's; its style is screen.css,
  which is published beside the pages. Scripts, styles within a page and files from elsewhere have no effect: the
  page's policy forbids them.
- Cautions, reminders, where a caution is told in full, what is worn, first aid, the emergency number, the times of
  waits, numbers and the units beside a step bear marks of ours (`data-told`, `data-n`). Print each whole, where it can
  be read: one that is missing, hidden or altered is an error, whatever the theme. So is a row of the bench that is left
  out, or stands before what is done first.
- A drawing of the templates (`data-drawn`) is cut out as it is printed. Print each as it comes, at its own size: move
  it, frame it, set it beside another; one that is left out, scaled, turned, mirrored, covered or altered is an error.
- A theme may add words of its own. A number that it adds to a row, and that was not in the row's words, is an error,
  and so is a line or a picture so near to a number that it reads as a digit.
- Marks that a template gives: `data-step="{{ r.id }}"` round a row, on one element. Its figures, cautions and reminders
  must stand in it, these before its text; the cautions of the bench stand before the first row. `data-list` stands
  round a list that is not to be split before page 2; `data-may-be-short="why"` on what may leave a page short. What
  jars in the layout is a warning, with its sheet and page.
- Kit cards, slips and labels are made of pieces, each on a page of its own size (`data-piece`), which are then put
  where they belong. Where a piece does not fit, its last words are shortened; the order's number bears `data-n`.
"""


def theme_told() -> str:
    """All of it, as Markdown."""
    return "\n".join([INTRODUCTION, *_templates(), *_blocks(), *_data()])


def classes() -> list[type]:
    """What a theme gets, in the order of model/view, and then of model/lists_view.py and model/kit_cards_view.py."""
    named = [getattr(view, name) for name in view.__all__]
    every = [*named, *vars(lists_view).values(), *vars(kit_cards_view).values()]
    return list(dict.fromkeys(one for one in every if isinstance(one, type) and dataclasses.is_dataclass(one)))


def _templates() -> Iterator[str]:
    yield "## Templates\n"
    given = {name: one for one in classes() for name in TEMPLATE.findall(one.__doc__ or "")}
    for path in sorted(shipped("themes").joinpath("plain").iterdir()):
        if path.name in given:
            ways = next((how.ways for how in HOW.values() if how.template == path.name), ())
            density = f"; `density` is one of {', '.join(repr(way) for way in ways)}" if len(ways) > 1 else ""
            yield f"- {path.name}: `sheet` is {given[path.name].__name__}{density}"
        else:
            what = "a style sheet" if path.suffix == ".css" else "used by the others"
            yield f"- {path.name}: {what}"
    yield ""


def _blocks() -> Iterator[str]:
    for base, what in BASES.items():
        yield f"## Blocks of {base}\n"
        text = shipped("themes").joinpath("plain", base).read_text("utf-8")
        yield f"{what} extends it, and fills or overrides its blocks:\n"
        yield from (f"- {name}" for name in BLOCK.findall(text))
        yield ""


def _data() -> Iterator[str]:
    yield "## Data\n"
    for one in classes():
        yield f"### {one.__name__}\n"
        yield f"{one.__doc__}\n"
        hints = get_type_hints(one, localns=vars(view), include_extras=True)
        yield from (f"- {field.name}: {_field(hints[field.name])}" for field in dataclasses.fields(one))
        yield ""


def _field(hint: Any) -> str:  # noqa: ANN401 - whatever stands there as a type
    """A type in words, and the sentence beside it."""
    if get_origin(hint) is Annotated:
        of, sentence = get_args(hint)
        return f"{_worded(of)}; {sentence}"
    return _worded(hint)


def _worded(hint: Any) -> str:  # noqa: ANN401
    """A type in words. TypeError for one that a theme must not get."""
    each = get_args(hint)
    if hint in WORDS:
        return WORDS[hint]
    if isinstance(hint, type) and hint in classes():
        return hint.__name__
    if isinstance(hint, types.UnionType):
        return " or ".join("nothing" if one is type(None) else _worded(one) for one in each)
    if get_origin(hint) is tuple and each[-1] is Ellipsis:
        return f"a list of {_worded(each[0])}"
    if get_origin(hint) is tuple:
        return f"a pair ({', '.join(map(_worded, each))})"
    raise TypeError(f"{hint} is no plain data")
