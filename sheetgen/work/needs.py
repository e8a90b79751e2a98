"""The project's own comparisons, and the conditions of its steps."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from sheetgen.base.arithmetic import read_condition
from sheetgen.base.binding import bind, bind_condition
from sheetgen.base.dimension import ANY, spelled
from sheetgen.base.reckoning import always
from sheetgen.base.reckoning import holds as does_hold
from sheetgen.base.tree import Wrong
from sheetgen.work.stopped import Stopped

if TYPE_CHECKING:
    from sheetgen.base.place import Word
    from sheetgen.base.tree import Node
    from sheetgen.work.evaluator import Evaluator

NAMED, ITEM = re.compile(r"[\w .-]+"), re.compile(r"[^\W\d][\w.-]*")


def check_needs(evaluator: Evaluator) -> None:
    """Every comparison of the project, in every case; what does not hold is told in the project's words."""
    for check in evaluator.project.checks:
        try:
            tree = _read(check.need, evaluator)
            if tree.op != "cmp":
                evaluator.troubles.add("this is no comparison", check.need.place, "write body.inside < 12 mm")
                continue
            worst = always(tree, evaluator)
        except Stopped:
            continue
        except (ArithmeticError, ValueError) as fault:
            evaluator.troubles.add(f"'{check.need}' cannot be worked ({fault})", check.need.place)
            continue
        if worst is not None:
            unit = bind(tree.args[0], evaluator.names)[1]
            told = "" if unit == ANY else spelled(unit)
            found = f"here {worst[0]:.4g} {told} and {worst[1]:.4g} {told}".replace("  ", " ").rstrip()
            evaluator.troubles.add(str(check.say), check.need.place, found)


def holds(when: Word, evaluator: Evaluator) -> bool:
    """Whether a step's `when` holds: a choice is an item of stock, or is not; or a comparison of numbers."""
    try:
        return does_hold(_read(when, evaluator), evaluator)
    except Stopped:
        return True
    except (ArithmeticError, ValueError) as fault:
        evaluator.troubles.add(f"'{when}' cannot be worked ({fault})", when.place)
        return True


def _read(written: Word, evaluator: Evaluator) -> Node:
    try:
        _equals_no_item(written, evaluator)
        return bind_condition(read_condition(written), evaluator.names)
    except Wrong as wrong:
        evaluator.troubles.add(wrong.message, written.place_of(max(0, wrong.at), wrong.width), wrong.help)
        raise Stopped from None


def _equals_no_item(written: Word, evaluator: Evaluator) -> None:
    """Raises Wrong for `clay = silver`."""
    left, equals, right = written.partition("=")
    name, item = left.strip(), right.strip()
    if equals and NAMED.fullmatch(name) and ITEM.fullmatch(item) and evaluator.stocked(item):
        told = f"'{item}' is an item and no number"
        raise Wrong(told, written.index(item, len(left)), len(item), f"write {name} is {item}")
