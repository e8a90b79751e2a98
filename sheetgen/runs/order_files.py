"""What a run of orders is packed from, as files: the stack, cards, labels, lists, and a file an order to be mailed."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from sheetgen.base.spelling import counted
from sheetgen.kits.bag_labels import bag_labels, label_rows
from sheetgen.kits.check_list import checked
from sheetgen.kits.coded import page_of_kit
from sheetgen.kits.kit_cards import card_rows, kit_cards
from sheetgen.kits.money import Coin
from sheetgen.kits.run import taken
from sheetgen.kits.taken import held_told
from sheetgen.kits.without_orders import lists_of
from sheetgen.render.kit_cards import kit_cards_pdf
from sheetgen.render.labels import labels_pdf
from sheetgen.runs.documents import Binder, Documents
from sheetgen.runs.press import list_files

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.base.place import Place
    from sheetgen.base.trouble import Troubles
    from sheetgen.kits.ordered import Run
    from sheetgen.kits.taken import Taken
    from sheetgen.model.worked import Publisher
    from sheetgen.runs.press import Press

ON_PAPER = ("pick-", "cut-", "check-", "buy-", "left-")
TO_GO = ("stack-", "kit-cards-", "labels-")
"""How the names begin of the lists on paper, and of what is printed to go into parcels."""


NAMED = 12  # numbers of orders in one line of a terminal


def named(numbers: Sequence[str]) -> str:
    """Numbers of orders, as many as one reads."""
    more = f" and {len(numbers) - NAMED} more" if len(numbers) > NAMED else ""
    return f"{', '.join(numbers[:NAMED])}{more}"


@dataclass(frozen=True, slots=True)
class Wanted:
    """What is wanted of a run: the paper that the studio prints on (empty: its first), and how many labels are gone.

    `apart`: a file for each order besides, to be mailed. `lists_alone`: nothing but the lists, and nothing is sent.
    """

    paper: str = ""
    labels_gone: int = 0
    apart: bool = False
    lists_alone: bool = False


@dataclass(slots=True)
class OrderFiles:
    """The files of a run; `told` is said of them in a terminal, `mailed` are those for each order."""

    run: Run
    wanted: Wanted
    by: Press
    place: Place
    troubles: Troubles
    told: list[str] = field(default_factory=list)
    mailed: dict[str, bytes] = field(default_factory=dict)

    @property
    def begin(self) -> tuple[str, ...]:
        """How the names of those begin that are printed: what an earlier run printed under others does not stay."""
        return (*ON_PAPER, "check.") if self.wanted.lists_alone else (*ON_PAPER, *TO_GO)

    @property
    def studio(self) -> Publisher:
        """Whose run it is."""
        return self.run.kinds[0].worked.studio

    @property
    def paper(self) -> str:
        """What it is printed on."""
        return self.wanted.paper or self.studio.paper[0]

    def files(self) -> dict[str, bytes]:
        """All of them by their names; none where something that is wanted comes out of no length in stock.

        Misplaced at a theme's file that cannot be used, CannotBe for what cannot be printed.
        """
        needs = taken(self.run.kinds)
        documents = Documents(self.paper)
        if not self.wanted.lists_alone:
            documents.lay_out(self.run, needs, self.by, self.troubles)
        leaves = {order.number: documents.sheets(order) for order in self.run.orders}
        orders = () if self.wanted.lists_alone else checked(self.run, leaves)  # nothing to check is printed yet
        coin = Coin(self.studio.currency, point=self.run.kinds[0].rounder.point)
        lists, told, troubles = lists_of(self.run.kinds, coin, orders)
        self.troubles.extend(troubles)
        if troubles:
            return {}
        self.told += [f"{counted(len(self.run.orders), 'order')}: {held_told(self.run.kinds)}", *told]
        more = [card_rows(self.run, needs), label_rows(self.run, needs)]
        printing = list_files(lists, self.by, more, [self.paper])  # beside the cards and labels
        to_go, said = ({}, []) if self.wanted.lists_alone else self._to_go(documents, needs, sum(leaves.values()))
        files, pages = printing(self.troubles)
        self.told += [*pages, *said]
        return files | to_go

    def _to_go(self, documents: Documents, needs: Sequence[Taken], leaves: int) -> tuple[dict[str, bytes], list[str]]:
        """What goes into parcels, on so many leaves of paper in the stack, and what is said of it."""
        binder = Binder(documents, self.by.pool, self.place, self.troubles)
        stack = binder.stack(self.run.orders)
        said = [f"{name}: {counted(leaves, 'sheet')} of paper, both sides" for name in stack]
        self.mailed = binder.apart(self.run.orders) if self.wanted.apart else {}
        return stack | self._cards(needs, said) | self._labels(needs, said), said

    def _cards(self, needs: Sequence[Taken], said: list[str]) -> dict[str, bytes]:
        cards = kit_cards(self.run, needs)
        made = kit_cards_pdf(cards, [self.paper], self.by.theme, self.by.pool, self.studio.language)
        self.troubles.extend(made.troubles)
        said.append(f"kit cards and slips: {len(cards)}")
        return {f"kit-cards-{paper.lower()}.pdf": pdf for paper, pdf in made.pdfs.items()}

    def _labels(self, needs: Sequence[Taken], said: list[str]) -> dict[str, bytes]:
        """The labels, where the studio states on what; a warning where no code can be printed on them."""
        grid = self.studio.labels
        if grid is None:
            said.append("no labels: the studio does not say on which sheet (labels: in projects/studio.yaml)")
            return {}
        labels = bag_labels(self.run, needs, lambda kits, code: page_of_kit(kits.worked, kits, code))
        if not self.studio.address:
            told = "no code is printed on the labels: the studio has no address"
            self.troubles.add(told, None, "address: https://… in projects/studio.yaml", "warning")
        elif bare := [one.head.order for one in labels if not one.url and not one.label.slip]:
            why = "a choice of their own, or a part of the sheet left out; no page tells what somebody ordered"
            said.append(f"no code on the labels of kits of {named(list(dict.fromkeys(bare)))}: {why}")
        made = labels_pdf(labels, grid, self.by.theme, self.by.pool, self.studio.language, self.wanted.labels_gone)
        self.troubles.extend(made.troubles)
        said.append(f"labels: {len(labels)}")
        name = f"labels-{grid.paper.lower()}.pdf"
        if grid.paper != self.paper:
            said.append(
                f"{name}: put in the studio's sheets of labels, which are {grid.paper}; all else is {self.paper}"
            )
        return {name: made.pdf}
