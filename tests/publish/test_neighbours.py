"""A design's page leads to the designs beside it and to others in its clay; for that no other is made anew."""

from __future__ import annotations

import html
import re
import shutil
from typing import TYPE_CHECKING, Any, NamedTuple

import pytest

from sheetgen import publishing
from sheetgen.pipeline import work_one
from sheetgen.publish.record import RECORD, stamp_of
from sheetgen.publishing import Wanted, published

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

pytestmark = pytest.mark.usefixtures("quick")

BLOCK = re.compile(r'<nav class="beside" aria-label="[^"]+">(.*)</nav>\n</body></html>\n\Z', re.DOTALL)
LINK = re.compile(r'<a href="([^"]*)"( rel="\w+")?><bdi>(.*?)</bdi></a>')
LONG = "Ringriegelverschlussösen" * 8 + "behälter"  # 200 letters without a gap


class Led(NamedTuple):
    """Where a page leads: what is before and after it, and others in its clays; each by its title, and its files."""

    before: str
    after: str
    also: dict[str, list[str]]
    more: list[str]
    files: list[str]


def led(build: Path, page: str) -> Led:
    """As it stands in a page; each link leads to a file that is there, and is the page of a design so called."""
    found = BLOCK.search((build / page).read_text("utf-8"))
    text = found[1] if found else ""
    links = [(path, rel.strip(), html.unescape(title)) for path, rel, title in LINK.findall(text)]
    for path, _, title in links:
        called = re.search("<h1>(.*?)</h1>", ((build / page).parent / path).read_text("utf-8"))
        assert called, path
        assert html.unescape(called[1]).startswith(title), path  # a version's page says which it is too
    lists = re.findall(r'<p class="note"><bdi>(.*?)</bdi></p>\n<ul class="listed">(.*?)</ul>', text, re.DOTALL)
    more = re.findall(r'<a class="file" href="([^"]*)">(All \d+ designs in .*?)</a>', text)
    assert all(((build / page).parent / path).is_file() for path, _ in more)
    rel = {rel: title for _, rel, title in links}
    return Led(
        rel.get('rel="prev"', ""),
        rel.get('rel="next"', ""),
        {html.unescape(clay): [html.unescape(one[2]) for one in LINK.findall(each)] for clay, each in lists},
        [html.unescape(words) for _, words in more],
        [path for path, _, _ in links],
    )


def files_of(root: Path) -> dict[str, bytes]:
    return {str(p.relative_to(root)): p.read_bytes() for p in root.rglob("*") if p.is_file() and p.name != RECORD}


def anew(library: Any, folder: Path) -> dict[str, bytes]:
    """All of a library published into an empty folder."""
    shutil.copytree(library.root, folder / "library", ignore=shutil.ignore_patterns("build", "build-studio"))
    publishing.publish(folder / "library", folder / "build")
    return files_of(folder / "build")


@pytest.fixture
def worked(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The designs that were worked since, by name."""
    names: list[str] = []

    def counted(filed: Any, *more: Any) -> Any:
        names.append(filed.name)
        return work_one(filed, *more)

    monkeypatch.setattr("sheetgen.publishing_one.work_one", counted)
    return names


def add(library: Any, name: str, title: str, clay: str = "silver") -> None:
    """A pendant of another title, in a clay."""
    text = library.path("pendant/project.yaml").read_text("utf-8")
    told = title.replace("'", "''")
    text = re.sub("title: .*", lambda _: f"title: '{told}'", text, count=1).replace("clay: silver", f"clay: {clay}")
    library.write(f"{name}/project.yaml", text)


def retitled(library: Any) -> None:
    library.change("drops/project.yaml", "title: Little drops", "title: Zinnia drops")


def renamed(library: Any) -> None:
    library.path("drops").rename(library.path("tubes"))
    library.change("tubes/project.yaml", "revision: 1\n", "revision: 1\nwas: drops\n")


def with_status(status: str) -> Callable[[Any], None]:
    return lambda library: library.change("drops/project.yaml", "revision: 1\n", f"revision: 1\nstatus: {status}\n")


EDITS: dict[str, tuple[Callable[[Any], None], list[str]]] = {
    "added": (lambda library: add(library, "moss", "Moss pin"), ["moss"]),
    "added the first": (lambda library: add(library, "alder", "Alder pin"), ["alder"]),
    "taken away": (lambda library: shutil.rmtree(library.path("drops")), []),
    "renamed": (renamed, ["tubes"]),
    "retitled": (retitled, ["drops"]),
    "retired": (with_status("retired"), ["drops"]),
    "a draft": (with_status("draft"), ["drops"]),
    "for classes only": (with_status("class only"), ["drops"]),
    "in another clay": (
        lambda library: library.change("drops/project.yaml", "clay: silver", "clay: copper"),
        ["drops"],
    ),
    "without a version": (
        lambda library: library.change("drops/project.yaml", "versions:\n  - name: Long\n    height: 30 mm\n", ""),
        ["drops"],
    ),
}


@pytest.mark.parametrize("edit", EDITS)
def test_where_designs_come_and_go_pages_lead_as_if_all_were_anew_and_no_other_design_is_worked(
    library: Any, worked: list[str], tmp_path_factory: Any, edit: str
) -> None:
    deed, again = EDITS[edit]
    library.publish()
    before = files_of(library.build)
    worked.clear()
    deed(library)
    library.publish()
    assert worked == again
    now = files_of(library.build)
    assert now == anew(library, tmp_path_factory.mktemp("anew"))
    assert all(now[path] == before[path] for path in before if re.match(r"(link|pendant)/.*(?<!/index\.html)$", path))
    assert library.publish().changed == []


@pytest.mark.parametrize("edit", EDITS)
def test_what_came_or_went_and_is_taken_back_leaves_every_page_as_it_was(library: Any, edit: str) -> None:
    library.publish()
    before = files_of(library.build)
    kept = library.root / "kept"
    shutil.copytree(library.root / "projects", kept)
    EDITS[edit][0](library)
    library.publish()
    shutil.rmtree(library.root / "projects")
    kept.rename(library.root / "projects")
    library.publish()
    assert files_of(library.build) == before


def test_designs_lead_on_in_the_order_of_the_cards_and_at_the_ends_no_further(library: Any) -> None:
    add(library, "b", "beryl pin")
    add(library, "a", "Zircon pin")
    library.publish()
    cards = re.findall(r'<h3><a href="([\w-]+)/', (library.build / "index.html").read_text("utf-8"))
    order = ["beryl pin", "Little drops", "Round pendant", "Wire link", "Zircon pin"]
    assert cards == ["b", "drops", "pendant", "link", "a"]
    way = [led(library.build, f"{name}/index.html") for name in cards]
    assert [one.before for one in way] == ["", *order[:-1]]
    assert [one.after for one in way] == [*order[1:], ""]
    assert led(library.build, "drops/long/index.html")[:2] == ("beryl pin", "Round pendant")


def test_of_many_in_a_clay_six_are_named_the_next_ones_first_and_the_list_has_all(library: Any) -> None:
    for letter in "CDEFGH":
        add(library, letter.lower(), f"{letter} pin")
    library.publish()
    silver = led(library.build, "f/index.html")
    assert silver.also == {"Test silver": ["G pin", "H pin", "Little drops", "Round pendant", "C pin", "D pin"]}
    assert silver.more == ["All 8 designs in Test silver"]
    shutil.rmtree(library.path("c"))
    library.publish()
    silver = led(library.build, "f/index.html")
    assert silver.also == {"Test silver": ["G pin", "H pin", "Little drops", "Round pendant", "D pin", "E pin"]}
    assert silver.more == []


def test_each_version_leads_to_others_in_its_own_clay_and_there_to_the_version_that_is_made_of_it(library: Any) -> None:
    library.change("drops/project.yaml", "    height: 30 mm\n", "    height: 30 mm\n    clay: copper\n")
    add(library, "coin", "Coin", "copper")
    library.publish()
    assert led(library.build, "drops/index.html").also == {"Test silver": ["Round pendant"]}
    assert led(library.build, "drops/long/index.html").also == {"Test copper": ["Coin"]}
    coin = led(library.build, "coin/index.html")
    assert coin.also == {"Test copper": ["Little drops"]}
    assert coin.files[-1] == "../drops/long/index.html"
    assert led(library.build, "link/index.html").also == {}


def test_a_design_alone_has_nothing_beside_it(library: Any) -> None:
    for name in ("link", "drops"):
        shutil.rmtree(library.path(name))
    library.publish()
    assert b'class="beside"' not in (library.build / "pendant/index.html").read_bytes()


@pytest.mark.parametrize("status", ["retired", "draft", "class only"])
def test_what_is_not_among_the_cards_is_nobodys_neighbour_and_has_none(library: Any, status: str) -> None:
    with_status(status)(library)
    library.publish()
    assert led(library.build, "pendant/index.html")[:3] == ("", "Wire link", {})
    every = [*library.build.rglob("*.html"), *(library.root / "build-studio").rglob("*.html")]
    assert [path for path in every if "drops" in path.parts and b'class="beside"' in path.read_bytes()] == []


def test_pages_in_inches_lead_to_pages_in_inches_and_where_there_is_none_to_the_one_that_there_is(library: Any) -> None:
    library.change("studio.yaml", "units: mm\n", "units: mm\npages in: [mm, in]\n")
    library.change("pendant/project.yaml", "Cut a disc of", "Cut with 3 mm to spare a disc of")
    library.publish()
    assert led(library.build, "link/in-inches.html").files == ["../pendant/index.html"]
    there = ["../../pendant/index.html", "../../pendant/index.html"]
    assert led(library.build, "drops/long/in-inches.html").files == there
    assert led(library.build, "drops/long/index.html").files == there
    library.change("pendant/project.yaml", "with 3 mm to spare ", "")
    library.publish()
    assert led(library.build, "link/in-inches.html").files == ["../pendant/in-inches.html"]
    assert led(library.build, "link/index.html").files == ["../pendant/index.html"]


@pytest.mark.parametrize(
    "title", ["<script>alert(1)</script>", "</bdi></nav><!-- neighbours -->", "\"><b a='", "טבעת הים", LONG]
)
def test_a_title_stands_in_a_link_as_it_is_written_whatever_it_is(library: Any, title: str, tmp_path: Path) -> None:
    add(library, "odd", title)
    library.publish()
    assert title in {*led(library.build, "pendant/index.html").also["Test silver"]}
    retitled(library)
    library.publish()
    assert files_of(library.build) == anew(library, tmp_path / "anew")


def test_a_page_in_trouble_leads_to_what_is_there_now(library: Any) -> None:
    library.publish()
    library.change("pendant/project.yaml", "kind: cut shape", "kind: cut shapes")
    retitled(library)
    assert library.publish().failed == ["pendant"]
    assert led(library.build, "pendant/index.html")[:2] == ("", "Wire link")


def test_a_page_that_a_hand_has_changed_is_not_taken_for_ours(library: Any, tmp_path: Path) -> None:
    library.publish()
    page = library.build / "pendant/index.html"
    library.change("pendant/project.yaml", "kind: cut shape", "kind: cut shapes")
    page.write_bytes(page.read_bytes().replace(b"20 mm", b"90 mm").replace(b">Wire link<", b">Wire lynx<"))
    spoilt = page.read_bytes()
    retitled(library)
    library.publish()
    assert page.read_bytes() == spoilt
    library.change("pendant/project.yaml", "kind: cut shapes", "kind: cut shape")
    library.publish()
    assert files_of(library.build) == anew(library, tmp_path / "anew")


def test_what_is_made_again_as_it_was_is_not_written_again(library: Any) -> None:
    library.publish()
    assert published(library.root, library.build, Wanted(every=True)).changed == []


@pytest.mark.parametrize("at", [0, 1, 2])
def test_a_disk_that_fails_in_the_middle_leaves_what_the_next_run_mends(
    library: Any, monkeypatch: pytest.MonkeyPatch, tmp_path: Path, at: int
) -> None:
    library.publish()
    add(library, "moss", "Moss pin")
    left = [at]

    def stamped(*asked: Any) -> Any:
        left[0] -= 1
        if left[0] < 0:
            raise OSError(28, "No space left on device")
        return stamp_of(*asked)

    with monkeypatch.context() as broken:
        broken.setattr("sheetgen.publish.neighbours.stamp_of", stamped)
        with pytest.raises(OSError, match="No space left"):
            library.publish()
    library.publish()
    assert files_of(library.build) == anew(library, tmp_path / "anew")
