"""Cutting plans, against integer programmes and published optima."""

from __future__ import annotations

import itertools
import random
from collections import Counter
from decimal import Decimal
from fractions import Fraction
from typing import TYPE_CHECKING, NamedTuple

import numpy as np
import pytest
from scipy.optimize import LinearConstraint, milp

from sheetgen.base.trouble import CannotBe
from sheetgen.kits.cutting import CuttingPlan, Spool, Wanted, cutting_plan

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

# ★ Wikipedia, Cutting stock problem: 13 widths out of 5600 mm, optimum 73
PAPER = {
    1380: 22, 1520: 25, 1560: 12, 1710: 14, 1820: 18, 1880: 18, 1930: 20,
    2000: 10, 2050: 12, 2100: 14, 2140: 16, 2150: 18, 2200: 20,
}  # fmt: skip
# ★ Chvátal, Linear Programming, ch. 13: widths out of 100, optimum 453
ROLLS = {45: 97, 36: 610, 31: 395, 14: 211}
METRE = Spool(Fraction(1000), Decimal("4.20"))


class Job(NamedTuple):
    wanted: tuple[Wanted, ...]
    spools: tuple[Spool, ...]
    ends: tuple[Fraction, ...]
    cut: Fraction
    keep: Fraction

    @property
    def plan(self) -> CuttingPlan:
        return cutting_plan(self.wanted, self.spools, self.ends, self.cut, self.keep)


def wanted(demand: dict[int, int]) -> list[Wanted]:
    return [Wanted(Fraction(length), many) for length, many in demand.items()]


def holds(plan: CuttingPlan, order: Iterable[Wanted], ends: Sequence[Fraction], cut: Fraction) -> bool:
    """Whether exactly the pieces are cut that are wanted, from ends that there are, and nothing is overfull."""
    asked = Counter[tuple[Fraction, str]]()
    for one in order:
        asked[one.length, one.label] += one.many
    got = Counter(piece for one in plan.cuts for piece in one.pieces)
    drawer = [one.length for one in plan.cuts if one.bought is None] + list(plan.untouched)
    fits = all(sum(length + cut for length, _ in one.pieces) <= one.length + cut for one in plan.cuts)
    return +asked == got and sorted(drawer) == sorted(ends) and fits


def kept(left: Fraction, keep: Fraction) -> Fraction:
    return left if left >= keep else Fraction(0)


def by_integer_programme(job: Job) -> tuple[Fraction, Fraction, int]:
    """Cost, length kept in the drawer and lengths opened of the best plan: all fillings, scipy's integer programme."""
    lengths = [one.length for one in job.wanted]
    stock = [(one.length, Fraction(one.price or 0), 99) for one in job.spools]
    stock += [(end, Fraction(0), many) for end, many in Counter(job.ends).items()]
    columns, costs, gains, rooms = [], [], [], []
    for room, (length, price, _) in enumerate(stock):
        most = [min(one.many, int((length + job.cut) / (one.length + job.cut))) for one in job.wanted]
        for counts in itertools.product(*(range(n + 1) for n in most)):
            used = sum((n * (one + job.cut) for n, one in zip(counts, lengths, strict=True)), Fraction(0))
            if used <= length + job.cut and any(counts):
                columns.append(counts)
                costs.append(price)
                there = kept(length, job.keep) if room >= len(job.spools) else Fraction(0)
                gains.append(kept(max(Fraction(0), length - used), job.keep) - there)
                rooms.append(room)
    table = np.array(columns, dtype=float).T
    asked = np.array([one.many for one in job.wanted], dtype=float)
    there_is = np.array([[float(r == room) for r in rooms] for room in range(len(stock))])
    rules = [
        LinearConstraint(table, lb=asked, ub=asked),
        LinearConstraint(there_is, ub=np.array([float(many) for _, _, many in stock])),
    ]
    before = sum((kept(end, job.keep) for end in job.ends), Fraction(0))
    found: list[Fraction] = []
    for aim in ([float(c) for c in costs], [-float(g) for g in gains], [1.0] * len(costs)):
        solved = milp(np.array(aim), constraints=rules, integrality=np.ones(len(aim)), options={"mip_rel_gap": 0})
        assert solved.success
        taken = [round(x) for x in solved.x]
        exact: Sequence[Fraction | int] = (costs, gains, [1] * len(costs))[len(found)]
        found.append(sum((n * Fraction(x) for n, x in zip(taken, exact, strict=True)), Fraction(0)))
        rules.append(LinearConstraint(np.array([aim]), ub=np.array([float(np.dot(aim, taken)) + 1e-6])))
    return found[0], before + found[1], int(found[2])


def random_job(dice: random.Random) -> Job:
    """A few lengths, one or two spools with their prices, ends, and a cut."""
    lengths = dice.sample(range(90, 420, 5), dice.randint(1, 4))
    order = tuple(Wanted(Fraction(length), dice.randint(1, 4)) for length in lengths)
    spools = [Spool(Fraction(dice.choice([450, 500, 620])), Decimal(dice.randint(150, 400)) / 100)]
    if dice.random() < 0.6:
        spools.append(Spool(Fraction(dice.choice([800, 1000])), Decimal(dice.randint(200, 800)) / 100))
    ends = tuple(Fraction(dice.randint(80, 700)) for _ in range(dice.choice([0, 1, 2, 4])))
    return Job(order, tuple(spools), ends, Fraction(dice.choice(["0", "0.4", "1.5"])), Fraction(dice.choice([60, 150])))


@pytest.mark.parametrize("seed", range(10))
def test_five_hundred_small_jobs_are_planned_as_well_as_by_an_integer_programme(seed: int) -> None:
    dice = random.Random(seed)  # noqa: S311 - lengths, no secret
    for _ in range(50):
        job = random_job(dice)
        plan = job.plan
        assert holds(plan, job.wanted, job.ends, job.cut)
        there = sum((kept(end, job.keep) for end in plan.ends), Fraction(0))
        assert (Fraction(plan.cost or 0), there, len(plan.cuts)) == by_integer_programme(job), job
        assert plan.best, job
        assert plan.least <= (plan.cost or 0)
