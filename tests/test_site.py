"""The documentation as a site: it builds without a warning, is whole, and asks for nothing else."""

from __future__ import annotations

import doctest
import html
import importlib
import os
import re
import shlex
import subprocess
import sys
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urlsplit

import pytest

import phonodrill
from docs.made import checked, commands
from phonodrill.errors import PhonodrillError
from phonodrill.render.json_schema import KINDS
from tests.conftest import ROOT

DOCS = ROOT / "docs"
FETCHED = {"script": "src", "img": "src", "link": "href", "iframe": "src", "source": "src"}
HEADINGS = ("h1", "h2", "h3", "h4", "h5", "h6")
MODULES = ("checked", "commands", "docstrings", "json_fields", "links", "python", "tables")


class Page(HTMLParser):
    """What a test asks of a page.

    Attributes:
        ids: anchors.
        links: what a reader may follow.
        fetched: what the browser loads by itself.
        headings: levels of the headings of the text, in order.
        text: all of the text.
    """

    def __init__(self, path: Path) -> None:
        super().__init__()
        self.ids: set[str] = set()
        self.links: list[str] = []
        self.fetched: list[str] = []
        self.headings: list[int] = []
        self.in_article = False
        self.source = path.read_text("utf-8")
        self.feed(self.source)
        self.text = html.unescape(re.sub(r"<[^>]+>", "", self.source))

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {name: value or "" for name, value in attrs}
        self.ids |= {given[name] for name in ("id", "name") if name in given}
        self.in_article |= tag == "article"
        if tag == "a" and "href" in given:
            self.links.append(given["href"])
        if FETCHED.get(tag) in given:
            self.fetched.append(given[FETCHED[tag]])
        if tag in HEADINGS and self.in_article:
            self.headings.append(int(tag[1]))

    def handle_endtag(self, tag: str) -> None:
        self.in_article &= tag != "article"


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("site")
    asked = ("build", "--strict", "-f", ".mkdocs.yml", "-d", str(folder))
    done = subprocess.run(
        [sys.executable, "-m", "mkdocs", *asked],
        check=False,
        cwd=ROOT,
        env={**os.environ, "NO_MKDOCS_2_WARNING": "1"},
        capture_output=True,
        encoding="utf-8",
    )
    said = done.stdout + done.stderr
    assert done.returncode == 0, said
    assert all(line.startswith("INFO ") for line in said.splitlines()), said
    return folder


@pytest.fixture(scope="module")
def pages(site: Path) -> dict[Path, Page]:
    return {path: Page(path) for path in site.rglob("*.html") if path.name != "404.html"}


def test_every_page_is_there(site: Path, pages: dict[Path, Page]) -> None:
    written = {site / path.relative_to(DOCS).with_suffix(".html") for path in DOCS.glob("*.md")}
    made = {
        site / "reference" / f"{name}.html"
        for name in ("checked", "commands", "json", "python", "rooms", "tables")
    }
    assert written | made == set(pages)
    assert site / "index.html" in pages


def test_no_page_asks_for_anything_elsewhere(site: Path, pages: dict[Path, Page]) -> None:
    for path, page in pages.items():
        for address in page.fetched:
            assert not re.match(r"\w+:|//", address), (path, address)
        # The theme would fetch a program for these.
        assert 'class="mermaid' not in page.source
    for style in site.rglob("*.css"):
        assert not re.search(r"(@import|url\()\s*[\"']?(https?:)?//", style.read_text("utf-8"))


def test_every_link_and_anchor_leads_somewhere(pages: dict[Path, Page]) -> None:
    for path, page in pages.items():
        for link in page.links:
            parts = urlsplit(link)
            if parts.scheme:
                assert parts.scheme == "https", (path, link)
                continue
            target = (path.parent / unquote(parts.path)).resolve() if parts.path else path
            assert target.exists(), (path, link)
            if parts.fragment and target in pages:
                assert unquote(parts.fragment) in pages[target].ids, (path, link)


def test_headings_are_in_order(pages: dict[Path, Page]) -> None:
    for path, page in pages.items():
        assert page.headings.count(1) == 1, path
        assert page.headings[0] == 1, path
        for before, level in zip(page.headings, page.headings[1:], strict=False):
            assert level <= before + 1, (path, page.headings)


def test_each_command_and_option_of_the_help_is_on_its_page(site: Path) -> None:
    source = (site / "reference" / "commands.html").read_text("utf-8")
    parts = re.split(r'<h2 id="([^"]+)">', source)
    sections = dict(zip(parts[1::2], parts[2::2], strict=True))
    told = list(_helps())
    assert len(told) > 40
    for name, help_ in told:
        text = html.unescape(re.sub(r"<[^>]+>", "", sections[name.replace(" ", "-")]))
        for option in set(re.findall(r"--[a-z][a-z-]+", help_)) - {"--help"}:
            assert option in text, (name, option)


def _helps() -> Iterator[tuple[str, str]]:
    """Yield each command with its own help, as the command line prints it."""
    for name, command in commands.walk():
        context = command.make_context(f"phonodrill {name}", [], resilient_parsing=True)
        yield name, command.get_help(context)


def test_each_environment_variable_is_told(pages: dict[Path, Page], site: Path) -> None:
    text = pages[site / "reference" / "commands.html"].text
    code = "".join(path.read_text("utf-8") for path in (ROOT / "phonodrill").rglob("*.py"))
    names = set(re.findall(r'"([A-Z]+_[A-Z_]+)"', code)) & {*re.findall(r"PHONODRILL_[A-Z]+", code)}
    assert names == {"PHONODRILL_DATABASE"}
    assert names <= set(text.split())


def test_each_example_is_a_command_with_these_options() -> None:
    known = dict(commands.walk())
    examples = commands.find_examples()
    assert sum(map(len, examples.values())) > 60
    for name, lines in examples.items():
        for line in lines:
            words = shlex.split(re.split(r" [>|]|&&", line)[0], comments=True)
            known[name].make_context(name, words[1 + len(name.split()) :])


def test_an_example_that_is_no_command_is_found() -> None:
    endings = dict(commands.walk())["endings sort"]
    with pytest.raises(Exception, match="--colour"):
        endings.make_context("endings sort", ["--colour", "red"])
    with pytest.raises(PhonodrillError):
        commands.root().make_context("phonodrill", ["sing"]).command.get_command(None, "sing")


def test_each_public_name_is_on_its_page(pages: dict[Path, Page], site: Path) -> None:
    page = pages[site / "reference" / "python.html"]
    for name in set(phonodrill.__all__) - {"__version__"}:
        assert f"phonodrill.{name}" in page.ids, name


def test_each_kind_of_json_has_its_fields_and_its_schema(
    pages: dict[Path, Page], site: Path
) -> None:
    page = pages[site / "reference" / "json.html"]
    for kind in KINDS:
        assert kind in page.ids
        assert f"../schema/{kind}.json" in page.links


def test_each_source_of_a_test_is_named(pages: dict[Path, Page], site: Path) -> None:
    text = " ".join(pages[site / "reference" / "checked.html"].text.split())
    found = list(checked.find_checked())
    marks = sum(
        path.read_text("utf-8").count("pytest.mark.source(")
        for path in (ROOT / "tests").rglob("test_*.py")
        if path != Path(__file__)
    )
    assert len(found) >= marks
    for test in found:
        assert test.source in text, test
        assert test.what in text, test


@pytest.mark.parametrize("name", MODULES)
def test_what_makes_pages_does_what_it_says(name: str) -> None:
    assert doctest.testmod(importlib.import_module(f"docs.made.{name}")).failed == 0
