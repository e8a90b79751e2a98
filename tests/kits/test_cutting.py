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
from sheetgen.kits import cut_plan, cut_stock
from sheetgen.kits.cutting import CuttingPlan, Spool, Wanted, cutting_plan

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence
    from types import ModuleType

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


def test_a_paper_mills_order_is_cut_from_73_rolls_and_none_can_do_with_fewer() -> None:
    # ★ Wikipedia, Cutting stock problem; total 407 160 mm
    plan = cutting_plan(wanted(PAPER), [Spool(Fraction(5600))])
    assert holds(plan, wanted(PAPER), [], Fraction(0))
    assert (plan.told(), plan.best) == ("73", True)
    waste = 1 - sum(length * many for length, many in PAPER.items()) / (73 * 5600)
    assert waste * 100 == pytest.approx(0.4012, abs=0.0005)


def test_a_textbook_order_is_cut_from_453_rolls_and_that_is_proved() -> None:
    # ★ Chvátal, Linear Programming, ch. 13: the programme of fractions comes to 452.25
    plan = cutting_plan(wanted(ROLLS), [Spool(Fraction(100))])
    assert holds(plan, wanted(ROLLS), [], Fraction(0))
    assert (plan.told(), plan.best) == ("453", True)


def test_twenty_one_bracelets_of_9_81_m_want_eleven_spools_of_a_metre_and_not_ten() -> None:
    # ten would be enough by length; but two pieces come out of each, and 21 are not 20
    sizes = {450: 5, 465: 8, 480: 8}
    order = [Wanted(Fraction(length), many, f"wrist {length - 305}") for length, many in sizes.items()]
    assert sum(one.length * one.many for one in order) == 9810
    plan = cutting_plan(order, [METRE], keep=Fraction(60))
    assert holds(plan, order, [], Fraction(0))
    assert (plan.told(), plan.best, plan.cost) == ("11", True, Decimal("46.20"))
    assert all(len(cut.pieces) <= 2 for cut in plan.cuts)


def test_a_cut_is_lost_between_two_pieces_and_none_at_the_end() -> None:
    # 499.8 + 0.4 + 499.8 = 1000; half a hair more each, and a second spool is opened
    two = cutting_plan([Wanted(Fraction("499.8"), 2)], [METRE], cut=Fraction("0.4"))
    assert (len(two.cuts), two.cuts[0].left) == (1, Fraction(0))
    assert len(cutting_plan([Wanted(Fraction("499.81"), 2)], [METRE], cut=Fraction("0.4")).cuts) == 2


def test_two_pieces_of_465_leave_an_end_of_70_which_is_kept() -> None:
    plan = cutting_plan([Wanted(Fraction(465), 2, "long")], [METRE], keep=Fraction(60))
    (cut,) = plan.cuts
    assert cut.pieces == ((Fraction(465), "long"), (Fraction(465), "long"))
    assert (int(cut.left), cut.kept, list(map(int, plan.ends))) == (70, True, [70])
    # with a cut of 5 mm after each it is 60; from 61 on nothing is kept
    shorter = cutting_plan([Wanted(Fraction(465), 2)], [METRE], cut=Fraction(5), keep=Fraction(61))
    assert (int(shorter.cuts[0].left), shorter.cuts[0].kept, shorter.ends) == (60, False, ())


def test_kept_ends_go_first_where_that_is_cheapest() -> None:
    # 465 out of the end of 470, the other end is too short and stays as it is
    plan = cutting_plan([Wanted(Fraction(465), 1)], [METRE], [Fraction(470), Fraction(300)], keep=Fraction(60))
    assert (plan.cost, plan.told(), list(map(int, plan.ends))) == (Decimal(0), "0", [300])
    assert plan.cuts[0].bought is None
    # two of 600 want two spools in any case, and the end of 500 stays as it is
    two = cutting_plan([Wanted(Fraction(600), 2)], [METRE], [Fraction(500)], keep=Fraction(60))
    assert (two.told(), two.untouched) == ("2", (Fraction(500),))


def test_a_longer_spool_is_bought_where_that_is_cheaper() -> None:
    # five pieces of 900: five spools of 1 m are 21.00, one of 5 m is 17.50
    long = Spool(Fraction(5000), Decimal("17.50"))
    plan = cutting_plan([Wanted(Fraction(900), 5)], [METRE, long])
    assert ([cut.bought for cut in plan.cuts], plan.cost) == ([long], Decimal("17.50"))
    # four of them are 16.80 from spools of 1 m
    assert cutting_plan([Wanted(Fraction(900), 4)], [METRE, long]).cost == Decimal("16.80")


def test_of_plans_of_one_price_the_one_that_keeps_the_most_is_cut() -> None:
    # the longest first: 520 + 430 and 380 + 350 + 220, two ends of 50, lost; but 430 + 350 + 220 = 1000 and 520 + 380
    # leave one end of 100
    order = wanted({520: 1, 430: 1, 380: 1, 350: 1, 220: 1})
    plan = cutting_plan(order, [METRE], keep=Fraction(80))
    assert (plan.told(), list(map(int, plan.ends))) == ("2", [100])


def test_without_a_price_the_least_length_is_bought_and_the_cost_is_not_known() -> None:
    plan = cutting_plan([Wanted(Fraction(700), 2)], [Spool(Fraction(1000)), Spool(Fraction(1500))])
    assert (plan.cost, int(plan.bought), plan.best) == (None, 1500, True)


def test_where_the_best_is_not_proved_the_plan_tells_what_none_does_without() -> None:
    # of a hundred lengths the longest are laid first, and nothing more is tried
    order = [Wanted(Fraction(330 + n, 1), 1) for n in range(100)]
    plan = cutting_plan(order, [METRE])
    assert holds(plan, order, [], Fraction(0))
    assert plan.best or plan.told() == f"{len(plan.cuts)}; no plan does with under {plan.least_spools}"
    assert not plan.best


def test_ten_lengths_and_sixty_pieces_out_of_two_spools_and_twenty_ends_are_proved() -> None:
    dice = random.Random(60)  # noqa: S311 - lengths, no secret
    for _ in range(3):
        order = [Wanted(Fraction(dice.randint(150, 480)), 6) for _ in range(10)]
        ends = [Fraction(dice.randint(100, 900)) for _ in range(20)]
        plan = cutting_plan(
            order, [METRE, Spool(Fraction(5000), Decimal("17.50"))], ends, Fraction("0.4"), Fraction(60)
        )
        assert holds(plan, order, ends, Fraction("0.4"))
        assert plan.best


def test_ten_thousand_pieces_are_planned_in_good_time() -> None:
    # of ten lengths, and every one of another length
    for order in (
        [Wanted(Fraction(150 + 33 * n), 1000) for n in range(10)],
        [Wanted(Fraction(15000 + n, 100), 1) for n in range(10_000)],
    ):
        plan = cutting_plan(order, [METRE], [Fraction(620)], Fraction("0.4"), Fraction(60))
        assert holds(plan, order, [Fraction(620)], Fraction("0.4"))


@pytest.fixture(scope="module")
def hard_jobs() -> list[tuple[Job, Decimal]]:
    """Sixty pieces out of two spools of which now one and now the other is cheaper, and what they cost at least."""
    dice = random.Random(7)  # noqa: S311 - lengths, no secret
    jobs = []
    for _ in range(4):
        order = tuple(Wanted(Fraction(length), 10) for length in dice.sample(range(200, 480), 6))
        spools = tuple(
            Spool(Fraction(length), Decimal(dice.randint(length * 4, length * 5)) / 1000) for length in (1000, 1500)
        )
        jobs.append(Job(order, spools, (Fraction(620), Fraction(470)), Fraction(1), Fraction(60)))
    plans = [job.plan for job in jobs]
    assert all(plan.best for plan in plans)
    return [(job, plan.cost or Decimal(0)) for job, plan in zip(jobs, plans, strict=True)]


@pytest.mark.parametrize(
    ("module", "name", "most"),
    [
        (cut_plan, "EFFORT", 3),
        (cut_plan, "EFFORT", 20_000),
        (cut_stock, "MOST_BASKETS", 0),
        (cut_stock, "MOST_LOOKED", 3),
    ],
)
def test_a_plan_that_had_no_time_claims_nothing_that_is_not_so(
    monkeypatch: pytest.MonkeyPatch,
    hard_jobs: list[tuple[Job, Decimal]],
    module: ModuleType,
    name: str,
    most: int,
) -> None:
    monkeypatch.setattr(module, name, most)
    hurried = [(job.plan, truth) for job, truth in hard_jobs]
    assert not all(plan.best for plan, _ in hurried)
    for plan, truth in hurried:
        assert plan.cost == truth or not plan.best
        assert plan.least <= truth


def test_the_same_pieces_give_the_same_plan() -> None:
    order = wanted({455: 6, 465: 9, 310: 6})
    assert len({cutting_plan(order, [METRE], [Fraction(620)], keep=Fraction(60)) for _ in range(3)}) == 1


def test_nothing_wanted_is_nothing_cut() -> None:
    plan = cutting_plan([], [METRE], [Fraction(470)], keep=Fraction(60))
    assert (plan.cuts, plan.cost, plan.ends) == ((), Decimal(0), (Fraction(470),))


def test_a_piece_longer_than_every_length_is_refused_by_its_name() -> None:
    with pytest.raises(CannotBe) as refused:
        cutting_plan([Wanted(Fraction(465), 1, "Sterling, wrist 160")], [Spool(Fraction(400))])
    assert refused.value.message == "465 mm of Sterling, wrist 160 is longer than any length there is (400 mm)"
    assert refused.value.help == "a spool of 465 mm or more, or a shorter piece"
    assert refused.value.field == "length"


def test_a_piece_that_only_an_end_is_long_enough_for_cannot_be_cut_twice() -> None:
    once = cutting_plan([Wanted(Fraction(465), 1)], [Spool(Fraction(400))], [Fraction(620)])
    assert once.told() == "0"
    with pytest.raises(CannotBe, match="do not come out of what there is"):
        cutting_plan([Wanted(Fraction(465), 2)], [Spool(Fraction(400))], [Fraction(620)])


@pytest.mark.parametrize(
    ("cut", "keep", "spool", "end", "field"),
    [
        (-1, 60, 1000, 300, "saw cut"),
        (0, -1, 1000, 300, "keep ends from"),
        (0, 1001, 1000, 300, "keep ends from"),
        (0, 60, 0, 300, "packs"),
        (0, 60, 1000, 0, "have"),
    ],
)
def test_what_cannot_be_cut_with_is_refused_at_its_field(cut: int, keep: int, spool: int, end: int, field: str) -> None:
    with pytest.raises(CannotBe) as refused:
        cutting_plan(wanted({100: 1}), [Spool(Fraction(spool))], [Fraction(end)], Fraction(cut), Fraction(keep))
    assert refused.value.field == field
    assert refused.value.help


@pytest.mark.parametrize(("many", "length", "field"), [(-1, 100, "many"), (1, 0, "length")])
def test_no_piece_is_less_than_nothing(many: int, length: int, field: str) -> None:
    with pytest.raises(CannotBe) as refused:
        cutting_plan([Wanted(Fraction(length), many)], [METRE])
    assert refused.value.field == field


def test_a_spool_that_costs_nothing_is_refused() -> None:
    with pytest.raises(CannotBe) as refused:
        cutting_plan(wanted({100: 1}), [Spool(Fraction(1000), Decimal(0))])
    assert refused.value.field == "price"
