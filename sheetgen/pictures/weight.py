"""What a drawing costs to print, walked as the printer walks it: each copy of a copy, tile and letter counts."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.trouble import CannotBe
from sheetgen.pictures import values
from sheetgen.pictures.allowed import SHAPES, TEXTS, UNSEEN
from sheetgen.pictures.reach import reach
from sheetgen.pictures.repeats import dashes, repeats, tiles

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sheetgen.pictures.element import Element
    from sheetgen.pictures.outline import Box, Reach

MOST = 15_000.0  # shapes; WeasyPrint draws some 10,000 in a second
DEEPEST = 60
MOST_LETTERS = 5000
SMALLEST, LARGEST = 1e-3, 1e5  # of letters, in the drawing's unit
MOST_REPEATS = 1000
MOST_TILES = 100_000
MOST_DASHES = 20_000
POINTS = 8  # of a path cost as much as a shape; so do stops
LONG = 300_000  # characters of a path: the printer copies what is left of it at every point
SEARCHED = 400  # elements that are looked through for what is pointed at, at each level, cost as much as a shape
GRADIENT, PATTERN, COPY, LETTERED, BITMAP = 4, 4, 1, 8, 100  # as many shapes
SIMPLER = "simplify it, or save it as a PNG"
MARKERS = ("marker-start", "marker-mid", "marker-end", "marker")


class Passed(NamedTuple):
    """What an element has from those round it: ids of paints and of markers, dashes, and what `context-` means."""

    fill: str = ""
    stroke: str = ""
    dash: str = ""
    markers: tuple[str, str, str, str] = ("", "", "", "")
    context: tuple[str, str] = ("", "")
    size: tuple[str, float] = ("1em", 16.0)

    def on(self, one: Element) -> Passed:
        """With what an element says itself."""
        paints = dict(zip(("fill", "stroke"), self[:2], strict=True))
        for name, outer in zip(("fill", "stroke"), self[:2], strict=True):
            own = one.own.get(name, "")
            if own.startswith("context-"):
                paints[name] = self.context[own == "context-stroke"]
            elif name in one.points_at or own not in {"", "inherit"}:
                paints[name] = one.points_at.get(name, "")
            else:
                paints[name] = outer
        dash = one.own.get("stroke-dasharray", "inherit")
        said = one.own.get("font-size", "inherit")
        size = values.length(self.size[0] if said == "inherit" else said)  # as it is said: the printer works it anew
        markers = tuple(
            one.points_at.get(name, outer if one.own.get(name, "inherit") == "inherit" else "")
            for name, outer in zip(MARKERS, self.markers, strict=True)
        )
        sized = self.size[0] if said == "inherit" else said, size.of_letters(self.size[1])
        dashed = self.dash if dash == "inherit" else dash
        return Passed(paints["fill"], paints["stroke"], dashed, markers, self.context, sized)  # type: ignore[arg-type]


def weigh(top: Element, known: Mapping[str, Element]) -> None:
    """Raises CannotBe for what would take too long, and for what copies itself."""
    elements = list(top.all())
    wanted = {name for one in elements for name in one.points_at.values()}
    scale = _Scale(top, known)
    scale.place(top, Passed(), 1)
    scale.add(len(wanted) * len(elements) * scale.deepest / SEARCHED, top)
    scale.draw(top, Passed(), 0, 1)


class _Scale:
    def __init__(self, top: Element, known: Mapping[str, Element]) -> None:
        self.known = known
        self.cost = 0.0
        self.letters = 0
        self.deepest = 1
        self.placed: dict[int, Passed] = {}
        self.reached: dict[int, Reach] = {}
        seen = values.numbers(top.own["viewBox"], (4,))[2:] if "viewBox" in top.own else (300.0, 150.0)
        self.view = max(*seen, *(values.length(top.own[n]).px(0) for n in ("width", "height") if n in top.own))

    def add(self, cost: float, one: Element) -> None:
        self.cost += cost
        if self.cost > MOST:
            raise CannotBe(f"is too intricate to print (line {one.line})", SIMPLER)

    def place(self, one: Element, outer: Passed, deep: int) -> None:
        """What each that is pointed at has from those round it where it is written."""
        passed = outer.on(one)
        if one.identity:
            self.placed.setdefault(id(one), outer)
            self.deepest = max(self.deepest, deep)
        for inner in one.elements():
            self.place(inner, passed, deep + 1)

    def draw(self, one: Element, outer: Passed, deep: int, times: int, *, copied: bool = False) -> None:
        """Add what drawing it costs; it is measured `times` besides, once for each group that must know its size."""
        if deep > DEEPEST:
            raise CannotBe(f"copies itself, or copies copies too often (line {one.line})", SIMPLER)
        self.add(times, one)
        passed = outer.on(one)
        if one.tag != "defs":
            self._cut_out(one, passed, deep, times)
        if one.tag in UNSEEN and not copied:
            self.add(len(one.inside) * times, one)
            return
        if one.own.get("opacity", "1") != "1" or (one.tag == "symbol" and copied):
            times += 1
        if one.tag in SHAPES:
            self._shape(one, passed, deep, times)
        elif one.tag in TEXTS:
            self._text(one, passed, times)
        elif one.tag == "use" and "href" in one.points_at:
            self.add(COPY * times, one)
            self.draw(self.known[one.points_at["href"]], passed, deep + 1, times, copied=True)
        elif one.tag == "image":
            self.add(BITMAP, one)
        for inner in one.elements():
            self.draw(inner, passed, deep + 1, times)

    def _cut_out(self, one: Element, passed: Passed, deep: int, times: int) -> None:
        for name in ("clip-path", "mask"):
            self._contents(one.points_at.get(name, ""), passed, deep, times)

    def _contents(self, name: str, user: Passed, deep: int, times: int) -> None:
        """What is in a mask, a pattern, a marker, drawn for one that uses it."""
        if name:
            found = self.known[name]
            passed = self.placed[id(found)].on(found)._replace(context=(user.fill, user.stroke))
            if deep > DEEPEST:
                raise CannotBe(f"copies itself, or copies copies too often (line {found.line})", SIMPLER)
            self.add(times, found)
            self._cut_out(found, passed, deep + 1, times)
            for inner in found.elements():
                self.draw(inner, passed, deep + 1, times)

    def _shape(self, one: Element, passed: Passed, deep: int, times: int) -> None:
        points, box = self.reached.get(id(one)) or self.reached.setdefault(id(one), reach(one, self.view))
        length = len(one.own.get("d", one.own.get("points", "")))
        ends = max(points, 2)
        pointed = points / POINTS * (1 + length / LONG)
        self.add(pointed * times, one)
        for name in (passed.fill, passed.stroke):
            if name:
                self.add(pointed, one)
                self._contents(self._painted(one, self.known[name], box), passed, deep, times)
        if passed.stroke or one.own.get("stroke") != "none":
            self._bounded(one, dashes(passed.dash, box), MOST_DASHES, "dashes")
        for name, many in zip(passed.markers, (1, ends, 1, ends), strict=True):
            before = self.cost
            self._contents(name, passed, deep, times)
            self.add((self.cost - before) * max(0, many - 1), one)

    def _painted(self, one: Element, by: Element, box: Box) -> str:
        """Which pattern is drawn for a shape; nothing for a gradient, whose colours are counted here."""
        chain = self._chain(by)
        own = {name: value for each in reversed(chain) for name, value in each.own.items()}
        inside = next((each for each in chain if each.inside), by)
        if by.tag == "pattern":
            self._bounded(one, tiles(own, box), MOST_TILES, "tiles of a pattern")
            self.add(PATTERN, one)
            return inside.identity
        often = repeats(by.tag, own, box) if own.get("spreadMethod", "pad") != "pad" else 1.0
        self._bounded(one, often, MOST_REPEATS, "repeats of a gradient")
        self.add(GRADIENT + len(inside.inside) * (1 + often) / POINTS, one)
        return ""

    def _chain(self, by: Element) -> list[Element]:
        """A gradient or pattern, and those that it takes from."""
        chain = [by]
        while "href" in chain[-1].points_at:
            chain.append(self.known[chain[-1].points_at["href"]])
            if len(chain) > DEEPEST // 6:
                raise CannotBe(f"has a gradient or pattern that takes from itself (line {by.line})", SIMPLER)
        return chain

    def _text(self, one: Element, passed: Passed, times: int) -> None:
        if not SMALLEST <= passed.size[1] <= LARGEST:
            raise CannotBe(f"has letters of a size that cannot be printed (line {one.line})", "write it in px")
        letters = sum(len(words) for words in one.inside if isinstance(words, str))
        self.letters += letters
        self._bounded(one, self.letters, MOST_LETTERS, "letters")
        self.add((LETTERED + letters / POINTS) * times, one)
        if passed.fill or passed.stroke:
            raise CannotBe(
                f"has letters in a gradient or pattern (line {one.line})",
                "give them a plain colour, or make them paths",
            )

    def _bounded(self, one: Element, many: float, most: int, what: str) -> None:
        if not many <= most:
            raise CannotBe(f"has too many {what} (line {one.line})", SIMPLER)
