"""What a browser loads of our pages: our own files and nothing else, from a folder and from a host."""

from __future__ import annotations

import functools
import http.server
import threading
from typing import TYPE_CHECKING, Any

import pytest

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from playwright.sync_api import Browser, Request

IN_USE = "getComputedStyle(document.querySelector('h1')).fontFamily"
FACES = "document.fonts.ready.then(faces => [...faces].map(face => face.status))"

PICTURES = """Promise.all([...document.images].filter(one => !one.complete).map(one => new Promise(come => {
    one.onload = one.onerror = come
    one.loading = 'eager'
})))"""


class Quiet(http.server.SimpleHTTPRequestHandler):
    """A plain server of files."""

    def log_message(self, *_said: Any) -> None:
        pass


@pytest.fixture(scope="session")
def host(site: Path) -> Iterator[str]:
    """The address at which the site is served as a host would."""
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), functools.partial(Quiet, directory=str(site)))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}"
    server.shutdown()
    server.server_close()


@pytest.fixture(params=["folder", "host"])
def root(request: pytest.FixtureRequest, site: Path, host: str) -> str:
    return host if request.param == "host" else site.as_uri()


def test_every_page_loads_its_own_files_and_breaks_no_rule_of_its_policy(
    browser: Browser, site: Path, root: str
) -> None:
    page = browser.new_page()
    said: list[str] = []
    asked: list[str] = []
    page.on("console", lambda one: said.append(f"{page.url}: {one.text}"))
    page.on("pageerror", lambda one: said.append(f"{page.url}: {one}"))
    left: set[str] = set()  # pages that go on by themselves, and may leave their faces half loaded

    def failed(one: Request) -> None:
        if not (one.failure == "net::ERR_ABORTED" and one.resource_type == "font" and page.url in left):
            said.append(f"{page.url}: {one.url} {one.failure}")

    page.on("requestfailed", failed)
    page.on("request", lambda one: asked.append(one.url))
    every = sorted(path.relative_to(site) for path in site.rglob("*.html"))
    assert len(every) >= 10
    for path in every:
        goes_on = 'http-equiv="refresh"' in (site / path).read_text("utf-8")
        left |= {f"{root}/{path}"} if goes_on else set()
        # Of any page all has come with its faces and pictures, and what comes later is noted too; one that goes on is
        # waited for.
        page.goto(f"{root}/{path}")
        if goes_on:
            page.wait_for_url(lambda url, own=f"{root}/{path}": url.partition("#")[0] != own)  # type: ignore[misc]
        else:
            page.evaluate(PICTURES)
            assert "Source Sans Pro" in page.evaluate(IN_USE), path
            assert path.name == "404.html" or "loaded" in page.evaluate(FACES), path
    page.close()
    assert not said, "\n".join(said)
    assert not [url for url in asked if not url.startswith((f"{root}/", "data:"))]


@pytest.mark.parametrize(
    "strange",
    [
        "<img src=x onerror='document.title = 1'>",
        "<script>document.title = 1</script>",
        "<script src='data:text/javascript,document.title=1'></script>",
        "<script src='http://127.0.0.1:9/x.js'></script>",
        "<iframe srcdoc='<script>parent.document.title = 1</script>'></iframe>",
        "<style>h1 { display: none }</style>",
        "<h1 style='color: red'>x</h1>",
        "<base href='http://127.0.0.1:9/'>",
        "<link rel=stylesheet href='data:text/css,h1{display:none}'>",
        "<img src='http://127.0.0.1:9/x.png'>",
    ],
)
def test_what_a_stranger_puts_into_a_page_is_not_run_and_not_loaded(
    browser: Browser, site: Path, root: str, strange: str
) -> None:
    text = (site / "buoy-drops" / "index.html").read_text("utf-8")
    (site / "buoy-drops" / "strange.html").write_text(text.replace("<main>", f"<main>{strange}", 1), "utf-8")
    page = browser.new_page()
    refused: list[str] = []
    asked: list[str] = []
    page.on("console", lambda one: refused.append(one.text) if "Content Security Policy" in one.text else None)
    page.on("request", lambda one: asked.append(one.url))
    page.goto(f"{root}/buoy-drops/strange.html", wait_until="networkidle")
    (site / "buoy-drops" / "strange.html").unlink()
    assert page.title() == "Buoy drops, Silver, short"
    assert page.locator("h1").last.is_visible()
    assert refused
    loaded = [url for url in asked if not url.startswith((f"{root}/", "data:", "http://127.0.0.1:9/"))]
    page.close()
    assert not loaded


def test_the_link_of_the_bar_unfolds_its_list_from_a_folder_and_from_a_host(browser: Browser, root: str) -> None:
    page = browser.new_page(viewport={"width": 390, "height": 844})
    page.goto(f"{root}/buoy-drops/index.html")
    page.locator(".bar a", has_text="Need").click()
    assert page.locator("#need").get_by_text("Masking tape").is_visible()
    page.close()
