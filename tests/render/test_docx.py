from __future__ import annotations

import io
import sys
from pathlib import Path
from typing import Any

import docx
import pytest
from docx.oxml.ns import qn

from phonodrill.errors import PhonodrillError
from phonodrill.lesson.tree import CAUTION, Dictation, Lesson
from phonodrill.paper.page import Paper
from phonodrill.render import as_docx
from phonodrill.render.document import (
    Body,
    Document,
    Mark,
    Marked,
    Questions,
    Section,
    Table,
    Words,
)
from phonodrill.render.views import lesson as lesson_view
from tests.render.office_files import dates_in, needs_soffice, pages_of, part

HARBOR = Document(
    "Words of the harbor",
    "3 words, seed 1",
    (
        Section("Ferries", Table(("word", "it says"), (("ferries", "/ēz/"), ("ropes", "/s/")))),
        Section("Say", Questions((("Say “gulls”.", "gull", "/g ŭ l z/"),)), 2),
        Section("Again", Questions((("Say “crabs”.", "crab", ""), ("Say “clams”.", "clam", "")))),
        Section("Read", Words(("torches", "gulls", "crabs"))),
        Section(
            "",
            Marked(
                (
                    ("The ", Mark.NONE),
                    ("skates", Mark.MISSING),
                    (" of a ", Mark.HIDDEN),
                    ("snail", Mark.LEARNED),
                )
            ),
        ),
    ),
    {},
    (),
)


def reopened(document: Document) -> Any:
    return docx.Document(io.BytesIO(as_docx.render(document)))


def lines_of(file: Any) -> list[str]:
    """Return every paragraph and cell, in order."""
    return [
        line
        for part in file.iter_inner_content()
        for line in (
            [part.text]
            if hasattr(part, "text")
            else [cell.text for row in part.rows for cell in row.cells]
        )
    ]


def texts_in(body: Body) -> list[str]:
    if isinstance(body, Table):
        return [cell for row in (body.headings, *body.rows) for cell in row]
    if isinstance(body, Questions):
        return [text for line in body.lines for text in line]
    if isinstance(body, Words):
        return list(body.words)
    return [body.plain()]


def test_headings_and_styles_are_real_ones() -> None:
    file = reopened(HARBOR)
    styles = [(line.style.name, line.text) for line in file.paragraphs if line.text]
    assert styles[:2] == [("Title", "Words of the harbor"), ("Subtitle", "3 words, seed 1")]
    assert [entry for entry in styles if entry[0].startswith("Heading")] == [
        ("Heading 1", "Ferries"),
        ("Heading 2", "Say"),
        ("Heading 1", "Again"),
        ("Heading 1", "Read"),
    ]
    assert ("Word List", "torches   gulls   crabs") in styles
    assert styles[-1] == ("Normal", "The [skates]( of a ){snail}")


def test_a_table_is_one_with_a_heading_that_comes_again_on_the_next_page() -> None:
    (table,) = reopened(HARBOR).tables
    assert [[cell.text for cell in row.cells] for row in table.rows] == [
        ["word", "it says"],
        ["ferries", "/ēz/"],
        ["ropes", "/s/"],
    ]
    assert table.style.name == "Table Grid"
    repeated = [bool(row.xpath("w:trPr/w:tblHeader")) for row in table._tbl.tr_lst]  # noqa: SLF001
    assert repeated == [True, False, False]


@pytest.mark.source("ISO 216: A4 is 210 mm by 297 mm; letter is 8.5 by 11 inches")
def test_both_papers_with_the_cautions_at_the_foot_of_each_page() -> None:
    for paper, size in ((Paper.LETTER, (8.5 * 25.4, 11 * 25.4)), (Paper.A4, (210, 297))):
        file = docx.Document(io.BytesIO(as_docx.render(HARBOR, paper)))
        (page,) = file.sections
        assert (page.page_width.mm, page.page_height.mm) == pytest.approx(size, abs=0.1)
        (foot,) = page.footer.paragraphs
        assert foot.text.startswith(CAUTION)
        assert foot._p.xpath("w:fldSimple[@w:instr='PAGE']")  # noqa: SLF001
        (table,) = file.tables
        room = page.page_width - page.left_margin - page.right_margin
        assert sum(column.width for column in table.columns) == pytest.approx(room, rel=0.01)


def test_every_list_starts_at_one() -> None:
    file = reopened(HARBOR)
    lists = [line for line in file.paragraphs if line.style.name == "List Number"]
    numbers = [line._p.pPr.numPr.numId.val for line in lists]  # noqa: SLF001
    assert numbers[0] != numbers[1] == numbers[2]
    numbering = file.part.numbering_part.element
    for number in set(numbers):
        start = numbering.num_having_numId(number).xpath("w:lvlOverride/w:startOverride")
        assert [found.get(qn("w:val")) for found in start] == ["1"]
    assert lists[0].text == "Say “gulls”.\ngull   /g ŭ l z/"


def test_marks_are_lines_as_well_as_brackets() -> None:
    runs = reopened(HARBOR).paragraphs[-1].runs
    lines = [run.underline for run in runs]
    assert lines[0] is None
    assert len(set(map(str, lines))) == 4


def test_every_text_of_a_lesson_is_there(shown_lessons: list[Lesson]) -> None:
    for lesson in shown_lessons:
        for student in (False, True):
            document = lesson_view.document([lesson], student=student)
            lines = "\n".join(lines_of(reopened(document)))
            for section in document.sections:
                assert section.heading in lines
                assert all(text.strip() in lines for text in texts_in(section.body))


def test_a_row_to_write_in_is_high_enough(shown_lessons: list[Lesson]) -> None:
    file = reopened(lesson_view.document(shown_lessons[:1], student=True))
    rows = [row for table in file.tables for row in table.rows]
    to_fill = [row for row in rows if any("___" in cell.text for cell in row.cells)]
    assert len(to_fill) > 10
    assert all(row.height.mm >= 9.9 for row in to_fill)
    assert all(row.height is None for row in rows if row not in to_fill)


def test_the_students_part_has_no_answers(shown_lessons: list[Lesson]) -> None:
    for lesson in shown_lessons:
        lines = "\n".join(lines_of(reopened(lesson_view.document([lesson], student=True))))
        if "Dictation" in lines:
            _, dictation = lines.split("Dictation: sounds, then words")
            dictated = [s for s in lesson.sections if isinstance(s, Dictation)]
            assert dictated
            assert not any(row.word in dictation.split() for row in dictated[0].words)
        assert "→" not in lines


def test_the_columns_fill_the_page_and_hold_their_longest_word(
    shown_lessons: list[Lesson],
) -> None:
    for lesson in shown_lessons:
        file = reopened(lesson_view.document([lesson]))
        page = file.sections[0]
        room = page.page_width - page.left_margin - page.right_margin
        for table in file.tables:
            widths = [column.width for column in table.columns]
            assert sum(widths) == pytest.approx(room, rel=0.001)
            for row in table.rows:
                for cell, width in zip(row.cells, widths, strict=True):
                    longest = max(map(len, cell.text.split()), default=0)
                    assert longest * 6.6 < width.pt, cell.text  # letters of 11 points


def test_the_same_document_is_the_same_file() -> None:
    first = as_docx.render(HARBOR)
    assert first == as_docx.render(HARBOR)
    assert first != as_docx.render(HARBOR._replace(title="Words of the village"))
    assert dates_in(first) == {(2026, 1, 1, 0, 0, 0)}
    properties = reopened(HARBOR).core_properties
    assert (properties.title, properties.author, properties.language) == (
        "Words of the harbor",
        "phonodrill",
        "en-US",
    )
    assert properties.created == properties.modified


def test_all_is_black() -> None:
    file = reopened(HARBOR)
    assert "w:color" not in part(as_docx.render(HARBOR), "word/document.xml")
    for name in ("Title", "Heading 1", "Heading 2", "Normal"):
        assert str(file.styles[name].font.color.rgb) == "000000"


def test_signs_that_such_files_cannot_hold() -> None:
    odd = Document("a\x00b & <c>", "\x0c", (Section("\x1b", Words(("\ud800", "“é”"))),), {}, ())
    lines = lines_of(reopened(odd))
    assert lines[0] == "a b & <c>"
    assert lines[-1].endswith("“é”")


def test_an_empty_table_and_a_long_word() -> None:
    table = Table(("", "word"), (("", "c" * 300),))
    odd = HARBOR._replace(sections=(Section("", Table(("word",), ())), Section("", table)))
    assert "c" * 300 in lines_of(reopened(odd))


def test_a_missing_package_is_named(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "docx", None)
    with pytest.raises(PhonodrillError, match="DOCX needs the package python-docx") as raised:
        as_docx.render(HARBOR)
    assert raised.value.hint == 'in the folder of phonodrill: python -m pip install ".[print]"'


@needs_soffice
@pytest.mark.source("LibreOffice Writer reads the file")
def test_a_word_processor_opens_it(shown_lessons: list[Lesson], tmp_path: Path) -> None:
    document = lesson_view.document(shown_lessons[:1])
    pages = "\n".join(pages_of(as_docx.render(document), "lesson.docx", tmp_path))
    for section in document.sections:
        assert section.heading in pages
    for record in document.records:
        assert record["word"] in pages
