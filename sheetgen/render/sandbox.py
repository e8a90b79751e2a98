"""The sandbox of a theme: a template reaches plain data alone, and is stopped where it goes round without end."""

from __future__ import annotations

import functools
from collections.abc import Iterator
from numbers import Number
from typing import TYPE_CHECKING, Any, Protocol, runtime_checkable

import jinja2
from jinja2 import nodes
from jinja2.compiler import CodeGenerator
from jinja2.exceptions import SecurityError
from jinja2.runtime import LoopContext, markup_join
from jinja2.sandbox import ImmutableSandboxedEnvironment

from sheetgen.render.counting import MOST_BITS, MOST_HELD, MOST_LETTERS, Count, TooMuch
from sheetgen.render.words import kept

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Mapping

MOST_RANGE = 1_000
MOST_TOLD = 10_000
"""Of a number that a filter is told, such as how many to a batch."""
OF_WORDS = frozenset({
    "capitalize", "casefold", "count", "endswith", "find", "index", "isalnum", "isalpha", "isdigit", "islower",
    "isspace", "isupper", "lower", "lstrip", "partition", "removeprefix", "removesuffix", "rfind", "rindex",
    "rpartition", "rsplit", "rstrip", "split", "splitlines", "startswith", "strip", "striptags", "swapcase", "title",
    "upper",
})  # fmt: skip
METHODS: Mapping[type, frozenset[str]] = {
    str: OF_WORDS,
    dict: frozenset({"get", "items", "keys", "values"}),
    list: frozenset({"count", "index"}),
    tuple: frozenset({"count", "index"}),
    int: frozenset(),
    float: frozenset(),
}
"""What may be called of plain values: nothing that makes much out of little."""
NO_FILTER = frozenset({"center", "format", "indent", "pprint", "random", "urlize", "wordwrap"})


class Counting(CodeGenerator):
    """Compiles templates so that words count where they are printed or put together, and lists where they are made."""

    def _output_const_repr(self, group: Iterable[Any]) -> str:
        return f"environment.count.made({super()._output_const_repr(group)})"

    def visit_Concat(self, node: nodes.Concat, frame: Any) -> None:  # noqa: ANN401, N802 - jinja2's own
        """Words put together with ~."""
        self.write("environment.together((")
        for one in node.nodes:
            self.visit(one, frame)
            self.write(", ")
        self.write("))")

    def visit_List(self, node: nodes.List, frame: Any) -> None:  # noqa: ANN401, N802 - jinja2's own
        """A list written out."""
        self._made(super().visit_List, node, frame)

    def visit_Dict(self, node: nodes.Dict, frame: Any) -> None:  # noqa: ANN401, N802 - jinja2's own
        """A mapping written out."""
        self._made(super().visit_Dict, node, frame)

    def visit_Tuple(self, node: nodes.Tuple, frame: Any) -> None:  # noqa: ANN401, N802 - jinja2's own
        """Values with commas between them; names that are assigned to are none."""
        if node.ctx == "load":
            self._made(super().visit_Tuple, node, frame)
        else:
            super().visit_Tuple(node, frame)

    def _made(self, visit: Callable[[Any, Any], None], node: nodes.Node, frame: Any) -> None:  # noqa: ANN401
        self.write("environment.count.made(")
        visit(node, frame)
        self.write(")")


class Sandbox(ImmutableSandboxedEnvironment):
    """Jinja's own sandbox, with bounds: `count` is what the page that is being filled has made so far."""

    code_generator_class = Counting
    intercepted_binops = frozenset({"+", "-", "*", "/", "//", "%", "**"})

    def __init__(self, loader: jinja2.BaseLoader) -> None:
        super().__init__(
            loader=loader,
            autoescape=True,
            undefined=jinja2.StrictUndefined,
            trim_blocks=True,
            lstrip_blocks=True,
            finalize=self.printed,
        )
        self.count = Count()
        self.filters = {name: self._bounded(name, one) for name, one in self.filters.items() if name not in NO_FILTER}
        self.filters["gone_through"] = self._gone_through
        self.globals["range"] = _row
        del self.globals["lipsum"]

    def _gone_through(self, things: Iterable[Any]) -> Iterator[Any]:
        return self.count.gone_through(things)

    def printed(self, value: Any) -> Any:  # noqa: ANN401 - whatever a theme prints
        """What is printed, as it is set: words and numbers. SecurityError for anything else."""
        if isinstance(value, str):
            self.count.text(len(value))
            return kept(value)
        if value is not None and not isinstance(value, Number | jinja2.Undefined):
            raise SecurityError(f"a page prints words and numbers, and no {type(value).__name__}")
        return value

    def together(self, pieces: tuple[Any, ...]) -> str:
        """Words put together, counted before they are."""
        self.count.text(sum(len(one) if isinstance(one, str) else len(str(self.printed(one))) for one in pieces))
        return markup_join(pieces)

    def call_binop(self, context: Any, operator: str, left: Any, right: Any) -> Any:  # noqa: ANN401
        """Arithmetic, and what words and lists make of its signs."""
        if operator == "%" and isinstance(left, str):
            raise SecurityError("words are put together with ~")
        if operator == "**" and isinstance(left, int) and isinstance(right, int):
            _few(left.bit_length() * abs(right), MOST_BITS)
        if operator == "*":
            for many, times in ((left, right), (right, left)):
                if isinstance(many, str | list | tuple) and isinstance(times, int):
                    _few(len(many) * times, MOST_HELD)
        if operator == "+" and isinstance(left, str) and isinstance(right, str):
            _few(len(left) + len(right), MOST_LETTERS)
        return self.count.made(super().call_binop(context, operator, left, right))

    def is_safe_attribute(self, obj: Any, attr: str, value: Any) -> bool:  # noqa: ANN401
        """Whether a template may reach it."""
        plain = next((kind for kind in METHODS if isinstance(obj, kind)), None)
        if plain is not None and callable(value) and attr not in METHODS[plain]:
            return False
        return super().is_safe_attribute(obj, attr, value)

    def call(self, context: Any, obj: Any, /, *args: Any, **kwargs: Any) -> Any:  # noqa: ANN401
        """A call, counted with what it is given."""
        self.count.tick()
        self.count.made((args, kwargs))
        if isinstance(obj, LoopContext) and args:
            args = (self.count.gone_through(args[0]), *args[1:])
        return super().call(context, obj, *args, **kwargs)

    def _load_template(self, name: str, globals: Any) -> jinja2.Template:  # noqa: A002, ANN401 - jinja2's own
        self.count.tick()
        try:
            return super()._load_template(name, globals)
        except jinja2.TemplateSyntaxError as fault:
            if fault.filename is not None:
                raise
            told, line = str(fault.message), fault.lineno  # of a comment that is not closed jinja2 says no file
        except (RecursionError, MemoryError, OverflowError, SyntaxError, ValueError) as fault:
            told, line = f"{type(fault).__name__}: something in it is too deep or too large", 1
        path = self.loader.path_of(name) if isinstance(self.loader, Known) else None
        raise jinja2.TemplateSyntaxError(told, line, name, path)

    def _parse(self, source: str, name: str | None, filename: str | None) -> nodes.Template:
        """The tree of a template, in which each round of a loop counts."""
        tree = super()._parse(source, name, filename)
        for loop in tree.find_all(nodes.For):
            loop.iter = nodes.Filter(loop.iter, "gone_through", [], [], None, None, lineno=loop.lineno)
        return tree

    def _bounded(self, name: str, one: Callable[..., Any]) -> Callable[..., Any]:
        """A filter, counted with what it is given and what it makes."""
        own = int(hasattr(one, "jinja_pass_arg"))  # before what it is given stands what jinja2 gives it

        @functools.wraps(one)
        def bounded(*args: Any, **kwargs: Any) -> Any:  # noqa: ANN401
            self.count.tick()
            given = args[own:]
            self.count.made((given, kwargs))
            for number in (*given[1:], *kwargs.values()):
                if isinstance(number, int):
                    _few(abs(number), MOST_TOLD)
            if name == "replace" and all(isinstance(word, str) for word in given[:3]):
                _few(given[0].count(given[1]) * len(given[2]), MOST_LETTERS)
            made = one(*args, **kwargs)
            return self.count.gone_through(made) if isinstance(made, Iterator) else self.count.made(made)

        return bounded


@runtime_checkable
class Known(Protocol):
    """A loader that knows in which file a template stands."""

    def path_of(self, name: str) -> str | None:
        """The file, or None where there is none of that name."""


def _few(number: int, most: int) -> None:
    if number > most:
        raise TooMuch(f"{number} of a thing, and a page has room for {most}" if number < 10**12 else "far too much")


def _row(*numbers: int) -> range:
    """Whole numbers in a row."""
    row = range(*numbers)
    _few(len(row), MOST_RANGE)
    return row
