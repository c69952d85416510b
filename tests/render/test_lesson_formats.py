"""A lesson as HTML, Markdown, text and CSV, read by parsers that are not ours."""

from __future__ import annotations

import csv
import io
import re
from html.parser import HTMLParser
from itertools import pairwise

import pytest
from markdown_it import MarkdownIt
from markdown_it.token import Token

from phonodrill.lesson import tree
from phonodrill.lesson.tree import CAUTION, Lesson
from phonodrill.render import as_csv, as_docx, as_html, as_markdown, as_text
from phonodrill.render.document import Document, Marked, Questions, Section, Table, Words
from phonodrill.render.views import lesson as lesson_view
from tests.render.office_files import part

VOID = {"br", "meta"}
FETCHING = {"src", "href", "srcset", "data", "poster", "action", "style", "background"}


class Page(HTMLParser):
    """Reads a page; every tag that is opened must be closed, in order."""

    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []
        self.tags: list[str] = []
        self.attributes: list[tuple[str, str | None]] = []
        self.texts: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        self.attributes += attrs
        if tag not in VOID:
            self.open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        self.texts.append(data)


@pytest.fixture(scope="module", params=[False, True], ids=["teacher", "student"])
def documents(request: pytest.FixtureRequest, shown_lessons: list[Lesson]) -> list[Document]:
    return [lesson_view.document([lesson], student=request.param) for lesson in shown_lessons]


def texts_of(section: Section) -> list[str]:
    body = section.body
    if isinstance(body, Table):
        return [cell for row in (body.headings, *body.rows) for cell in row]
    if isinstance(body, Questions):
        return [text for line in body.lines for text in line]
    if isinstance(body, Words):
        return list(body.words)
    return body.plain().split("\n")


def squeezed(text: str) -> str:
    return re.sub(r"\s+", " ", text).strip()


@pytest.mark.source("Python's html.parser reads the page")
def test_html_needs_nothing_else_and_is_whole(documents: list[Document]) -> None:
    for document in documents:
        text = as_html.render(document)
        page = Page()
        page.feed(text)
        assert not page.open
        assert not {"script", "link", "img", "iframe", "object", "base"} & set(page.tags)
        assert not FETCHING & {name for name, _ in page.attributes}
        assert not re.search(r"https?:|//|url\(|@import|@font-face", text)
        assert ("lang", "en") in page.attributes
        assert page.tags.count("h1") == page.tags.count("main") == page.tags.count("title") == 1
        levels = [int(tag[1]) for tag in page.tags if re.fullmatch(r"h\d", tag)]
        assert all(below <= above + 1 for above, below in pairwise(levels))
        shown = squeezed(" ".join(page.texts))
        for section in document.sections:
            assert all(squeezed(line) in shown for line in [section.heading, *texts_of(section)])


@pytest.mark.source("CommonMark and tables, read by markdown-it-py")
def test_markdown_says_to_a_parser_what_was_meant(documents: list[Document]) -> None:
    parser = MarkdownIt("commonmark").enable("table")
    for document in documents:
        tokens = parser.parse(as_markdown.render(document))
        kinds = [token.type for token in tokens]
        bodies = [section.body for section in document.sections]
        tables = [body for body in bodies if isinstance(body, Table)]
        questions = [body for body in bodies if isinstance(body, Questions)]
        assert kinds.count("table_open") == len(tables)
        assert kinds.count("tr_open") == sum(len(table.rows) + 1 for table in tables)
        assert kinds.count("list_item_open") == sum(len(body.lines) for body in questions)
        assert kinds.count("bullet_list_open") == kinds.count("hr") == 0
        lines = [line for token in tokens for line in lines_of(token)]
        for section in document.sections:
            if isinstance(section.body, Marked):
                assert all(squeezed(line) in lines for line in texts_of(section) if line.strip())
        shown = " ".join(lines)
        for section in document.sections:
            assert all(squeezed(line) in shown for line in [section.heading, *texts_of(section)])


def lines_of(token: Token) -> list[str]:
    """Return the lines of a block, as a reader sees them."""
    text = "".join(
        "\n" if child.type == "hardbreak" else " " if child.type == "softbreak" else child.content
        for child in token.children or []
    )
    return [squeezed(line) for line in text.split("\n")]


def test_csv_has_every_word_of_the_lesson(shown_lessons: list[Lesson]) -> None:
    for lesson in shown_lessons:
        text = as_csv.render(lesson_view.document([lesson]))
        rows = list(csv.DictReader(io.StringIO(text)))
        assert list(rows[0]) == ["day", "section", "word", "detail", "answer"]
        assert all(row["word"] and row["day"] == "1" for row in rows)
        found = {(row["section"], row["word"]) for row in rows}
        for section in lesson.sections:
            if isinstance(section, tree.Sort):
                assert {(section.name, word) for word in section.words} <= found
            elif isinstance(section, tree.SoundOut | tree.Build | tree.Bases | tree.Dictation):
                assert {(section.name, row.word) for row in section.words} <= found
            elif isinstance(section, tree.Check):
                assert {(section.name, row.word) for row in section.questions} <= found


def test_the_cautions_stand_in_every_format(documents: list[Document]) -> None:
    for said in ("not a diagnosis", "curriculum and qualified staff decide", "Dialect differences"):
        assert said in CAUTION
    for document in documents:
        for renderer in (as_html, as_markdown, as_text):
            assert CAUTION in squeezed(renderer.render(document))
        content = as_docx.render(document)
        assert CAUTION in part(content, "word/document.xml")
        names = (f"word/footer{number}.xml" for number in (1, 2))
        assert any(CAUTION in part(content, name) for name in names if name.encode() in content)
