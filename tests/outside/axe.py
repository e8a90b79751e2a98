"""axe-core in a browser: what it finds on a page as it stands, in words that name the page."""

from __future__ import annotations

from typing import TYPE_CHECKING

from axe_playwright_python.sync_playwright import Axe

if TYPE_CHECKING:
    from playwright.sync_api import Page

RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
# Of what passes one place a rule is told, not all: to hand them over takes longer than to look.
OPTIONS = {"runOnly": RULES, "resultTypes": ["violations", "incomplete"]}
DRAWN = ("<text", "<tspan")


def axe_finds(page: Page, told_as: str) -> list[str]:
    """What is wrong, and what it is not sure of.

    It cannot tell what a drawing's letters stand on; `tests/render/test_colours.py` tells of them.
    """
    told = Axe().run(page, options=OPTIONS).response
    assert len(told["passes"]) >= 15, told_as
    return [
        f"{told_as}: {one['id']}, {kind}: {node['html'][:150]}"
        for kind in ("violations", "incomplete")
        for one in told[kind]
        for node in one["nodes"]
        if not (kind == "incomplete" and one["id"] == "color-contrast" and node["html"].startswith(DRAWN))
    ]
