"""One arithmetic for every number that a person writes, in a project's file and in a kind of part alike: the reader.

What binds tighter is read first. Nothing of Python runs underneath, and length and depth are bounded, so a hostile text
gets a message and not a hang. Trade sizes (US 7, 16 awg) and formulas are registered by the formulas' modules.
"""

from __future__ import annotations

import functools
import re
from dataclasses import replace
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.dimension import UNITS
from sheetgen.base.literals import amount, named_size
from sheetgen.base.spelling import suggest
from sheetgen.base.tree import CALLED, FUNCTIONS, Node, Wrong, not_too_much

if TYPE_CHECKING:
    from collections.abc import Callable

LONGEST = 400
DEEPEST = 25
WORDS = frozenset({"if", "else", "or", "and", "is", "not", "in"})
RESERVED = frozenset({*WORDS, *CALLED, "drawer", "pi", "π", "to"}) - {"√"}

FORMULAS: dict[str, Callable[[list[Node], int, int], Node]] = {}
"""Formulas of the trade by name: the arguments put in place of the letters, and where the call stands."""

_PER = r"(?:h|min|cm³|cm3|mL|ml|mm³|mm²|mm|g|ct|in)"
_UNIT = rf"/(?:mm|min|g)(?![\w.])|[°ºµμ]?[A-Za-z]+[²³23]?(?:/{_PER}(?![\w.²³]))?|[°º]|%|\"|″"
TOKEN = re.compile(
    rf"""
    [ \t\r\n\u00a0\u202f]*(?:
      (?P<scale>(?:US|UK|ISO|JP|PP|SS)[ ]*[0-9A-Z]+(?:[.,][0-9]+|[ ]?1/2|½)?(?![\w.]))
    | (?P<number>[0-9.,]*[0-9.](?:[ ]*–[ ]*|-|[ ]to[ ]|[ ]*±[ ]*)[0-9.,]*[0-9.](?:/[0-9]+)?
        | [0-9]+[ ]+[0-9]+/[0-9]+ | [0-9]+/[0-9]+ | [0-9]*[ ]?[½¼¾⅓⅔⅛⅜⅝⅞] | [0-9.,]*[0-9][0-9.]*)
      (?:[ \u00a0\u202f]*(?P<unit>(?!(?:if|else|or|and|is|not|to)\b)(?:{_UNIT})))?
    | (?P<name>[^\W\d²³](?:(?![²³])\w)*(?:[.-][^\W\d²³](?:(?![²³])\w)*)*)
    | (?P<sign>\*\*|>=|<=|.)
    )""",
    re.VERBOSE,
)
_ALIKE = {"*": "×", "·": "×", "/": "÷", "-": "−", ">=": "≥", "<=": "≤"}
ITEM = re.compile(r"\w+(?:[.-]\w+)*")
_BINDS = {"+": 1, "−": 1, "×": 2, "÷": 2, "²": 4}
_PLAIN = "arithmetic is + - * / ( ), min, max, round, up, down, names and measures such as 38 mm"


class _Token(NamedTuple):
    kind: str
    word: str
    at: int
    unit: str = ""
    unit_at: int = 0


@functools.lru_cache(4096)
def read(text: str) -> Node:
    """Read an expression. Raises Wrong with the character to blame."""
    reader = _begun(text)
    node = reader.value()
    if reader.sees("in"):
        node = reader.unit_wanted(node)
    reader.end()
    if reader.expanded:
        not_too_much(node)
    return node


@functools.lru_cache(1024)
def read_condition(text: str) -> Node:
    """Read what holds or does not: a comparison, `clay is silver`, a name that is given. Raises Wrong."""
    reader = _begun(text)
    node = reader.condition()
    reader.end()
    if reader.expanded:
        not_too_much(node)
    return node


def _begun(text: str) -> _Reader:
    if len(text) > LONGEST:
        raise Wrong(f"an expression of {len(text)} characters is too long", 0, 1, f"at most {LONGEST}; name the parts")
    if text.count("(") > DEEPEST:
        deep = 0
        for at, c in enumerate(text):
            deep += (c == "(") - (c == ")")
            if deep > DEEPEST:
                raise Wrong("brackets inside brackets too deep", at, 1, f"at most {DEEPEST} deep")
    if re.search(r"[-−]{3}|([-−]\s*){9}", text):
        raise Wrong("a row of minus signs", 0, len(text), "one is enough")
    if not text.strip():
        raise Wrong("a number is missing", 0, 1, "write a measure such as 38 mm")
    return _Reader(text)


class _Reader:
    def __init__(self, text: str) -> None:
        self.text, self.at = text, 0
        self.tokens: list[_Token] = []
        self.expanded = False  # by a formula: what is written out has no more steps than characters
        for m in TOKEN.finditer(text):
            kind = m.lastgroup or ""
            if kind == "name":
                word = m["name"]
                self.tokens.append(_Token("word" if word in WORDS else "name", word, m.start("name")))
            elif kind == "sign":
                if (sign := m["sign"]).strip():
                    self.tokens.append(_Token("sign", _ALIKE.get(sign, sign), m.start("sign")))
            elif kind == "scale":
                self.tokens.append(_Token("scale", m["scale"], m.start("scale")))
            else:
                self.tokens.append(_Token("number", m["number"], m.start("number"), m["unit"] or "", m.start("unit")))
        self.tokens.append(_Token("end", "", len(text)))

    def now(self) -> _Token:
        return self.tokens[self.at]

    def sees(self, word: str) -> bool:
        token = self.now()
        if token.word == word and token.kind in {"sign", "word"}:
            self.at += 1
            return True
        return False

    def want(self, word: str) -> None:
        if not self.sees(word):
            self.fail()

    def end(self) -> None:
        if self.now().kind != "end":
            self.fail()

    def fail(self) -> None:
        """What was found, where, and the likely slip."""
        token = self.now()
        if token.kind == "end":
            at = max(0, len(self.text) - 1)
            raise Wrong("the expression ends too soon", at, 1, "something is missing after this")
        if token.word == "**" or (token.word == "×" and self.text[token.at - 1 : token.at + 1] == "**"):
            raise Wrong("'**' is not known here", token.at, 1, "there are no powers; write a product, or ²")
        found, helped = self.text[token.at : token.at + max(1, len(token.word))], _PLAIN
        if found in {"'", '"', "″"}:
            helped = 'an inch is written in, 1 1/2 in or 1½"'
        raise Wrong(f"'{found}' cannot stand here", token.at, len(found), helped)

    def spanned(self, op: str, args: tuple[Node, ...], it: object = None) -> Node:
        """A node as wide as what it is made of."""
        at, last = min(a.at for a in args), max(a.at + a.width for a in args)
        return Node(op, args, it, at, last - at)

    def value(self) -> Node:
        node = self.first()
        if self.sees("if"):
            args = (node, self.condition(), *((self.value(),) if self.sees("else") else ()))
            node = self.spanned("if", args)
        return node

    def first(self) -> Node:
        """The first of several that is given."""
        node = self.sum()
        return self.spanned("or", (node, self.first())) if self.sees("or") else node

    def condition(self) -> Node:
        node = self.both()
        while self.sees("or"):
            node = self.spanned("any", (node, self.both()))
        return node

    def both(self) -> Node:
        node = self.test()
        while self.sees("and"):
            node = self.spanned("and", (node, self.test()))
        return node

    def test(self) -> Node:
        start = self.now().at
        if self.sees("not"):
            inner = self.test()
            return Node("not", (inner,), None, start, inner.at + inner.width - start)
        node = self.sum()
        if self.sees("is"):
            other = self.sees("not")
            token = self._item()
            same = Node("is", (node,), self._joined(token), token.at, len(token.word))
            return Node("not", (same,), None, node.at, token.at + len(token.word) - node.at) if other else same
        for sign in "≥≤<>=":
            if self.sees(sign):
                return self.spanned("cmp", (node, self.sum()), sign)
        return node

    def _item(self) -> _Token:
        """What follows `is`: a word, or an item of stock, in whose name a number may stand as in copper-16awg."""
        token, found = self.now(), ITEM.match(self.text, self.now().at)
        if token.kind not in {"name", "word"} or found is None:
            self.fail()
            raise AssertionError
        while self.now().kind != "end" and self.now().at < found.end():
            self.at += 1
        return token._replace(word=found[0])

    def sum(self, least: int = 0) -> Node:
        node = self.atom()
        while True:
            token = self.now()
            binds = _BINDS.get(token.word, 0) if token.kind == "sign" else 0
            if binds <= least:
                return node
            self.at += 1
            if token.word == "²":
                if self.sees("²"):
                    raise Wrong("one ² after another", self.tokens[self.at - 1].at, 1, "write a product")
                node = Node("²", (node,), None, node.at, token.at + 1 - node.at)
            else:
                node = self.spanned(token.word, (node, self.sum(binds)))

    def atom(self) -> Node:  # noqa: PLR0911 - one a sort of token
        token = self.now()
        self.at += 1
        if token.kind == "number":
            return self._number(token)
        if token.kind == "scale":
            found = named_size(token.word[:3].rstrip("0123456789 ") if token.word[:3] == "ISO" else token.word[:2],
                               token.word, token.at)  # fmt: skip
            return Node("number", (), found, token.at, len(token.word))
        if token.kind == "sign":
            if token.word == "(":
                node = self.value()
                self.want(")")
                return node
            if token.word == "−":
                inner = self.sum(3)
                return Node("neg", (inner,), None, token.at, inner.at + inner.width - token.at)
            if token.word == "√":
                return self._call("√", token)
        if token.kind == "name":
            if token.word in {"π", "pi"}:
                return Node("π", (), None, token.at, 1)
            if self.now().word == "(" and self.now().kind == "sign":
                return self._call(token.word, token)
            name = self._joined(token)
            last = self.tokens[self.at - 1]
            return Node("name", (), name, token.at, last.at + len(last.word) - token.at)
        self.at -= 1
        self.fail()
        raise AssertionError

    def _joined(self, first: _Token) -> str:
        """A name of several words, however they are parted, as arithmetic keeps it."""
        words = [first.word]
        while self.now().kind == "name" and self.tokens[self.at + 1].word != "(":
            words.append(self.now().word)
            self.at += 1
        return "_".join(words)

    def _number(self, token: _Token) -> Node:
        width = len(token.word) + (token.unit_at + len(token.unit) - token.at - len(token.word) if token.unit else 0)
        found = amount(token.word, token.at, token.unit, token.unit_at)
        return Node("number", (), replace(found, within=self.text), token.at, width)

    def _call(self, word: str, token: _Token) -> Node:
        self.want("(")
        if word == "sum" and self.tokens[self.at].kind == "name" and self.tokens[self.at + 1].word == ":":
            each = self.tokens[self.at].word
            self.at += 2
            node = Node("each", (self.value(),), each, token.at, len(word))
            self.want(")")
            return node
        args = [self.value()]
        while self.sees(","):
            args.append(self.value())
        self.want(")")
        width = self.tokens[self.at - 1].at + 1 - token.at
        if formula := FORMULAS.get(word):
            self.expanded = True
            return formula(args, token.at, len(word))
        if word not in CALLED and word not in FUNCTIONS:
            helped = suggest(word, [*(w for w in CALLED if w.isalpha()), *FUNCTIONS, *FORMULAS], 12)
            raise Wrong(f"the function '{word}' is not known", token.at, len(word), helped)
        return Node(word, tuple(args), None, token.at, width)

    def unit_wanted(self, node: Node) -> Node:
        """`… in cards`: the same number, told in another unit."""
        token = self.now()
        if token.kind == "end":
            self.fail()
        known = token.word in UNITS or token.word.rstrip("s") == "card"
        if not known or (token.kind not in {"name", "word"} and token.word != "%"):
            helped = suggest(token.word, [*UNITS, "cards"], 40)
            raise Wrong(f"'{token.word}' is no unit to tell it in", token.at, max(1, len(token.word)), helped)
        self.at += 1
        return Node("in", (node,), token.word, token.at, len(token.word))
