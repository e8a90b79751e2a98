"""Words as people mistype them and as web addresses take them."""

from __future__ import annotations

import functools
import heapq
import re
import unicodedata
from difflib import get_close_matches
from typing import TYPE_CHECKING, TypeVar, cast

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

Spelled = TypeVar("Spelled", bound=str)

_EMPTY = frozenset("\u034f\u115f\u1160\u17b4\u17b5\u2800\u3164\uffa0") | {chr(n) for n in range(0xFE00, 0xFE10)}
"""Signs that a face leaves empty: fillers, a pattern without dots, what only says how the sign before it looks."""
_UNSEEN = frozenset({"Zs", "Zl", "Zp", "Cc", "Cf"})
"""Categories of Unicode of which nothing is seen: spaces, commands, joiners."""
MOST_COMPARED = 100
_INSIDE = re.compile(r"(?<=[^\W\d_])'(?=[^\W\d_])")
_AFTER_S = re.compile(r"(?<!\w)'[^']*'(?!\w)|(?<=s)'(?=\s)")  # or what stands in single quotes, which is passed over


def slug(name: str) -> str:
    """A name as it stands in a web address; of a script without Latin letters, the letters' numbers."""
    plain = unicodedata.normalize("NFKD", name.lower().replace("½", " half")).encode("ascii", "ignore").decode()
    letters = re.findall(r"[a-z0-9]+", plain) or [f"{ord(c):x}" for c in name if c.isalnum()]
    return "-".join(letters) or "version"


def blank(words: str) -> bool:
    """Whether nothing of it is seen: spaces of any width, signs without one, letters that are left empty."""
    return all(c in _EMPTY or unicodedata.category(c) in _UNSEEN for c in words)


@functools.lru_cache(4096)
def plain(name: str) -> str:
    """A name as arithmetic keeps it: `top hole`, `top-hole` and `top_hole` are one."""
    return str(name).strip().replace(" ", "_").replace("-", "_")


def in_a_sentence(words: Spelled) -> Spelled:
    """Words that begin with a capital, as in the middle of a sentence; AWG, S hook, US 7 and PP18 stay as they are."""
    first = re.split(r"[\s,;:]", words, maxsplit=1)[0]
    small = first == "A" or (first[1:].islower() and not re.search(r"\d", first))
    return cast("Spelled", words[:1].lower() + words[1:]) if small else words


def begun(words: Spelled) -> Spelled:
    """Words as they begin a sentence or a cell of a table."""
    return cast("Spelled", words[:1].upper() + words[1:])


def stopped(words: Spelled) -> Spelled:
    """Words with the stop that ends a sentence."""
    return words if words.endswith((".", "!", "?")) else cast("Spelled", words + ".")


def apostrophes(words: str) -> str:
    """Words with their apostrophes as they are set in print, however they were typed; quotes stay as they are."""
    if "'" not in words:
        return words
    return _AFTER_S.sub(lambda found: "’" if found[0] == "'" else found[0], _INSIDE.sub("’", words))


def counted(many: float | str, noun: str) -> str:
    """So many of something, one or several: 1 ring, 2 rings. The noun is one whose several take an s."""
    said = str(many) if isinstance(many, str) else f"{many:g}"
    return f"{said} {noun}{'s' * (said != '1')}"


@functools.lru_cache(4096)
def bare(name: str) -> str:
    """A name without what people write differently in a table: case, spaces, underscores, hyphens."""
    return re.sub(r"[\s_-]+", "", str(name).casefold())


def nearest(word: str, known: Iterable[str]) -> str:
    """The known word most like `word`, or an empty string when none is near."""
    names = {name.lower().replace("_", " ").replace("-", " "): name for name in known}
    wanted = word[:80].lower().replace("_", " ").replace("-", " ")
    if wanted in names:
        return names[wanted]
    # Of very many those that begin alike and are as long: to compare each with each takes longer than to work them.
    like = heapq.nsmallest(MOST_COMPARED, names, key=lambda one: (one[:1] != wanted[:1], abs(len(one) - len(wanted))))
    found = get_close_matches(wanted, like, n=1, cutoff=0.6)
    return names[found[0]] if found else ""


def in_a_row(names: Iterable[str]) -> str:
    """Names with commas between them; one that has a comma itself in quotes, so that it is read as one."""
    return ", ".join(f"'{name}'" if "," in name else name for name in names)


def suggest(word: str, known: Iterable[str], most: int = 60) -> str:
    """What to say under `help:` of an unknown word."""
    known = sorted(set(known))
    near = nearest(word, known)
    if near:
        return f"did you mean '{near}'?"
    if not known:
        return "there is none to name here"
    return f"known here: {in_a_row(known[:most])}{', …' if len(known) > most else ''}"


def told_apart(names: Sequence[str]) -> list[str]:
    """Of each name its first words, and so many more, from comma to comma, as tell it from those that begin alike.

    Never by what all of these have: copper wire; copper wire 20 AWG; of a stone and a smoky one, both glass, stone;
    stone smoke.
    """
    parts = [name.split(", ") for name in names]
    told = []
    for own in parts:
        alike = [other for other in parts if other[0] == own[0]]
        shared = set.intersection(*map(set, alike))
        more = [[word for word in one if word not in shared] for one in alike]
        mine = [word for word in own if word not in shared]
        least = next((n for n in range(1, len(mine)) if sum(one[:n] == mine[:n] for one in more) == 1), len(mine))
        told.append(" ".join((own[0], *mine[:least])))
    return told


def in_turn(words: str) -> tuple[tuple[bool, int, str], ...]:
    """What puts names and numbers one after the other as a person counts: Q-9 before Q-10, PP 18 after PP 9."""
    parts = re.findall(r"[0-9]{1,18}|[^0-9]+|[0-9]+", words)
    return tuple((not part.isdecimal(), int(part) if part.isdecimal() else 0, part) for part in parts)
