from __future__ import annotations

import io
import re
import sys
from itertools import pairwise
from pathlib import Path
from typing import Any, NamedTuple

import pptx
import pytest

from phonodrill.errors import PhonodrillError
from phonodrill.lesson import tree
from phonodrill.lesson.tree import Lesson
from phonodrill.render import as_pptx
from phonodrill.render.document import Table
from phonodrill.render.slide import Shown, Size, Slide
from phonodrill.render.views import lesson as lesson_view
from tests.render.office_files import dates_in, needs_soffice, pages_of, part


class Read(NamedTuple):
    """A slide as it was found in the file."""

    title: str
    shown: str
    notes: str

    @property
    def is_answer(self) -> bool:
        return bool(re.search(r", (answer|step \d+)$", self.title))

    def has(self, word: str) -> bool:
        return bool(re.search(rf"(?<![\w]){re.escape(word)}(?![\w])", self.shown))


def read(content: bytes) -> list[Read]:
    return [
        Read(
            slide.shapes.title.text_frame.text,
            "\n".join(text for shape in slide.shapes for text in texts_in(shape, slide)),
            slide.notes_slide.notes_text_frame.text if slide.has_notes_slide else "",
        )
        for slide in pptx.Presentation(io.BytesIO(content)).slides
    ]


def texts_in(shape: Any, slide: Any) -> list[str]:
    if shape.has_table:
        return [cell.text for cell in shape.table.iter_cells()]
    return [] if shape.shape_id == slide.shapes.title.shape_id else [shape.text_frame.text]


def of_section(slides: list[Read], section: tree.Section) -> list[Read]:
    """Return the slides of a section but its opening one."""
    found = [
        s for s in slides if re.match(rf"\d+\. {re.escape(section.title)}(, .*)?: \d", s.title)
    ]
    assert found, section.title
    return found


@pytest.fixture(scope="module")
def shown(shown_lessons: list[Lesson]) -> list[tuple[Lesson, list[Read]]]:
    return [(lesson, read(as_pptx.render([lesson]))) for lesson in shown_lessons]


def sections(shown: list[tuple[Lesson, list[Read]]], name: str) -> list[tuple[Any, list[Read]]]:
    found = [
        (section, of_section(slides, section))
        for lesson, slides in shown
        for section in lesson.sections
        if section.name == name
    ]
    assert found
    return found


def test_every_text_of_the_lesson_is_shown_or_in_the_notes(
    shown: list[tuple[Lesson, list[Read]]],
) -> None:
    for lesson, slides in shown:
        everything = "\n".join(f"{s.title}\n{s.shown}\n{s.notes}" for s in slides)
        document = lesson_view.document([lesson])
        for record in document.records:
            assert record["word"] in everything
            assert record["answer"] in everything or record["section"] in ("list", "dictation")
        for section in lesson.sections:
            assert section.script in everything
        assert lesson.caution in everything
        assert document.about in slides[0].notes
        assert all(note in slides[0].notes for note in lesson.notes)


def test_no_two_slides_have_one_title(shown: list[tuple[Lesson, list[Read]]]) -> None:
    for _, slides in shown:
        titles = [slide.title for slide in slides]
        assert all(titles)
        assert len(set(titles)) == len(titles)


def test_an_answer_follows_its_question(shown: list[tuple[Lesson, list[Read]]]) -> None:
    for _, slides in shown:
        assert not slides[0].is_answer
        for before, after in pairwise(slides):
            if after.is_answer:
                asked = re.sub(r", (answer|step \d+)$", "", after.title)
                assert before.title == asked or before.title.startswith(f"{asked}, step ")
                assert before.shown != after.shown


def test_every_slide_has_notes_with_the_answer(shown: list[tuple[Lesson, list[Read]]]) -> None:
    for _, slides in shown:
        for slide in slides:
            assert slide.notes or slide.title == "The end", slide.title
        for before, after in pairwise(slides):
            if after.is_answer and "Sort" not in after.title:
                assert "Answer: " in before.notes
                assert before.notes == after.notes


def test_oral_work_shows_no_word(shown: list[tuple[Lesson, list[Read]]]) -> None:
    for section, slides in sections(shown, "warmup"):
        items = [item for activity in section.activities for item in activity.items]
        assert len(items) == len(slides)
        for item, slide in zip(items, slides, strict=True):
            assert slide.shown == "Listen."
            assert item.say in slide.notes
            assert item.answer_line in slide.notes


def test_dictated_words_are_shown_only_as_answers(shown: list[tuple[Lesson, list[Read]]]) -> None:
    for section, slides in sections(shown, "dictation"):
        asked = [slide for slide in slides if not slide.is_answer]
        answers = [slide for slide in slides if slide.is_answer]
        assert {slide.shown for slide in asked} == {"Listen. Write."}
        written = [", ".join(row.spellings) for row in section.sounds]
        written += [row.word for row in section.words]
        written += [section.sentence] if section.sentence else []
        assert [slide.shown.splitlines()[0] for slide in answers] == written


def test_built_words_bases_and_examples_are_not_given_away(
    shown: list[tuple[Lesson, list[Read]]],
) -> None:
    for section, slides in sections(shown, "build"):
        for word in section.words:
            asked = [s for s in slides if f"Answer: {word.word}" in s.notes and not s.is_answer]
            assert len(asked) == 1
            assert not asked[0].has(word.word)
    for section, slides in sections(shown, "bases"):
        asked = [slide for slide in slides if not slide.is_answer]
        for row, slide in zip(section.words, asked, strict=True):
            assert slide.shown == row.word
    for section, slides in sections(shown, "rule"):
        for point in section.points:
            if point.base:
                asked = [s for s in slides if s.has(point.base) and not s.is_answer]
                assert asked
                assert not any(s.has(point.word) and "example" in s.title for s in asked)


def test_letters_and_lists_are_shown_without_their_sounds(
    shown: list[tuple[Lesson, list[Read]]],
) -> None:
    for name in ("review", "list"):
        for _, slides in sections(shown, name):
            asked = [slide for slide in slides if not slide.is_answer]
            assert not any("/" in slide.shown or "·" in slide.shown for slide in asked)
            assert all("/" in slide.shown for slide in slides if slide.is_answer)


def test_the_headings_of_a_table_are_bold_and_nothing_else_of_it(
    shown_lessons: list[Lesson],
) -> None:
    file = pptx.Presentation(io.BytesIO(as_pptx.render(shown_lessons[:1])))
    tables = [shape.table for slide in file.slides for shape in slide.shapes if shape.has_table]
    assert len(tables) >= 4
    for table in tables:
        for number, row in enumerate(table.rows):
            runs = [run for cell in row.cells for p in cell.text_frame.paragraphs for run in p.runs]
            assert all(bool(run.font.bold) == (number == 0) for run in runs)


def test_one_idea_a_slide(shown: list[tuple[Lesson, list[Read]]]) -> None:
    for _, slides in shown:
        for slide in slides:
            lines = [line for line in slide.shown.split("\n") if line.strip()]
            assert len(lines) <= 4 or "Sort" in slide.title, slide
    for section, slides in sections(shown, "list"):
        words = {word.word for word in section.words}
        shown_words = [slide.shown.split() for slide in slides if not slide.is_answer]
        assert [set(found) <= words and len(found) for found in shown_words] == [1] * len(words)


def test_the_key_of_a_sort_is_on_the_next_slide(shown: list[tuple[Lesson, list[Read]]]) -> None:
    for section, slides in sections(shown, "sort"):
        words, *others = slides
        assert words.shown.split() == list(section.words)
        for sorting, asked, key in zip(section.sortings, others[::2], others[1::2], strict=True):
            mixed, *cells = asked.shown.split("\n")
            assert mixed.split() == list(section.words)
            headings = [group.heading for group in sorting.groups]
            assert cells == [sorting.by, "words", *(c for head in headings for c in (head, ""))]
            for group in sorting.groups:
                assert f"{group.heading}\n{', '.join(group.words)}" in key.shown


def test_the_quick_check_shows_no_answer_but_a_word_to_read(
    shown: list[tuple[Lesson, list[Read]]],
) -> None:
    for section, slides in sections(shown, "check"):
        for row, slide in zip(section.questions, slides, strict=True):
            assert row.ask in slide.notes
            assert f"Answer: {row.answer}" in slide.notes
            if row.ask.startswith("Show"):
                assert slide.shown == row.word
            else:
                assert slide.shown.startswith("Listen.")


def test_students_get_neither_answers_nor_notes(shown_lessons: list[Lesson]) -> None:
    for lesson in shown_lessons[:2]:
        whole = read(as_pptx.render([lesson]))
        slides = read(as_pptx.render([lesson], student=True))
        assert not any(slide.is_answer or slide.notes for slide in slides)
        assert [s.shown for s in slides] == [s.shown for s in whole if not s.is_answer]


def test_days_are_told_apart(shown_lessons: list[Lesson]) -> None:
    first = shown_lessons[0]
    first = first._replace(sections=first.sections[:2])
    second = first._replace(request=first.request._replace(day=2))
    titles = [slide.title for slide in read(as_pptx.render([first, second]))]
    assert len(set(titles)) == len(titles)
    assert {title[:7] for title in titles} == {"Day 1: ", "Day 2: "}


def test_sixteen_to_nine_black_on_white_and_nothing_outside(shown_lessons: list[Lesson]) -> None:
    content = as_pptx.render(shown_lessons[1:2])
    file = pptx.Presentation(io.BytesIO(content))
    width, height = file.slide_width, file.slide_height
    assert width
    assert height
    assert round(width / height, 3) == round(16 / 9, 3)
    for number, slide in enumerate(file.slides, 1):
        xml = part(content, f"ppt/slides/slide{number}.xml")
        assert "srgbClr" not in xml
        assert "schemeClr" not in xml
        assert "<p:timing" not in xml
        for shape in slide.shapes:
            assert 0 <= shape.left < shape.left + shape.width <= width
            assert 0 <= shape.top < shape.top + shape.height <= height
            assert shape.has_table or shape.text_frame.text.strip()


def test_the_same_lesson_is_the_same_file(shown_lessons: list[Lesson]) -> None:
    first = as_pptx.render(shown_lessons[:1])
    assert first == as_pptx.render(shown_lessons[:1])
    assert first != as_pptx.render(shown_lessons[1:2])
    assert dates_in(first) == {(2026, 1, 1, 0, 0, 0)}
    properties = pptx.Presentation(io.BytesIO(first)).core_properties
    assert properties.title == shown_lessons[0].title
    assert properties.author == "phonodrill"


def test_signs_that_such_files_cannot_hold() -> None:
    odd = [
        Slide("a\x00 & <b>", (Shown("gull\x0c\ud800"),), Table(("x",), (("\x1b",),)), "\x02note")
    ]
    (slide,) = read(as_pptx.draw(odd, title="\x00"))
    assert slide.title == "a  & <b>"
    assert slide.notes == " note"


@pytest.mark.parametrize(
    ("text", "most", "size"),
    [("crab", 96, 96), ("lighthouses", 96, 96), ("m · o · s · qu · i · t · o · es", 96, 41)],
)
def test_a_word_stays_on_one_line(text: str, most: int, size: int) -> None:
    found = as_pptx.fit(text, most, (11.9, 5), on_one_line=True)
    assert found == size
    assert found * as_pptx.SIGN_WIDTH * len(text) <= 11.9 * 72


def test_what_is_too_long_is_set_smaller_but_never_tiny() -> None:
    sentence = "The gulls sat on the ropes of the ferries. "
    sizes = [as_pptx.fit(sentence * times, Size.TEXT.value, (11.9, 5)) for times in (1, 6, 20, 900)]
    assert sizes == sorted(sizes, reverse=True)
    assert sizes[0] == Size.TEXT.value
    assert sizes[-1] == as_pptx.SMALLEST_POINTS


def test_a_missing_package_is_named(
    shown_lessons: list[Lesson], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, "pptx", None)
    with pytest.raises(PhonodrillError, match="PPTX needs the package python-pptx") as raised:
        as_pptx.render(shown_lessons)
    assert raised.value.hint == 'in the folder of phonodrill: python -m pip install ".[print]"'


@needs_soffice
@pytest.mark.source("LibreOffice Impress reads the file")
def test_a_slide_program_opens_it(shown_lessons: list[Lesson], tmp_path: Path) -> None:
    content = as_pptx.render(shown_lessons[:1])
    slides = read(content)
    pages = pages_of(content, "lesson.pptx", tmp_path)
    assert len(pages) == len(slides)
    for page, slide in zip(pages, slides, strict=True):
        flat = " ".join(page.split())
        assert " ".join(slide.title.split()) in flat
        assert all(word in flat for word in slide.shown.split())
