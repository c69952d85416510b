"""A lesson on paper: complete, inside the page, no answers where students look."""

from __future__ import annotations

import io
import re
import unicodedata
from functools import cache
from typing import Any

import pdfplumber
import pytest

from phonodrill import Lexicon, PhonodrillError
from phonodrill.lesson import tree
from phonodrill.lesson.compose import make_lesson
from phonodrill.lesson.request import Request
from phonodrill.lesson.tree import Lesson
from phonodrill.paper.pack_parts import FOR_STUDENTS, Part, parse_parts
from phonodrill.paper.page import Boxes, Cards, Paper, Script
from phonodrill.paper.runs import runs_of
from phonodrill.render import as_pdf
from phonodrill.render.views import lesson as lesson_view
from phonodrill.render.views.pack import MOST_STUDENTS, pages_of

FOCI = (("es,ies", 30), ("ed", 60), ("i:e", 30), ("segment", 30))
ARROW = "Liberti"
"""The font of the arrow alone, which the other two have not."""
EDGE = 4
"""Points of the page that no printer is asked to print on."""


@pytest.fixture(scope="module", params=FOCI, ids=str)
def lesson(lexicon: Lexicon, request: pytest.FixtureRequest) -> Lesson:
    focus, minutes = request.param
    return make_lesson(lexicon, Request(focus, minutes=minutes, seed=11))


@pytest.fixture(scope="module")
def endings(lexicon: Lexicon) -> Lesson:
    return make_lesson(lexicon, Request("es,ies", minutes=30, seed=11))


@cache
def opened(lesson: Lesson, parts: tuple[Part, ...], paper: Paper = Paper.LETTER) -> Any:
    pages = pages_of([lesson], parts)
    content = as_pdf.render(pages, title=lesson.title, paper=paper, footer=lesson.caution)
    return pdfplumber.open(io.BytesIO(content))


def text_of(lesson: Lesson, *parts: Part) -> str:
    return "\n".join(page.extract_text() for page in opened(lesson, parts).pages)


def words_in(text: str) -> set[str]:
    return set(re.findall(r"[a-z']+", text.lower()))


def section(lesson: Lesson, kind: type[Any]) -> Any:
    return next(found for found in lesson.sections if isinstance(found, kind))


@pytest.mark.parametrize("paper", Paper)
def test_nothing_is_outside_the_page_and_every_glyph_is_there(lesson: Lesson, paper: Paper) -> None:
    pdf = opened(lesson, tuple(Part), paper)
    assert len(pdf.pages) > 15
    for page in pdf.pages:
        for mark in (*page.chars, *page.lines, *page.rects, *page.curves):
            assert -0.1 <= mark["x0"] <= mark["x1"] <= page.width + 0.1
            assert -0.1 <= mark["top"] <= mark["bottom"] <= page.height + 0.1
        for char in page.chars:
            assert EDGE <= char["x0"] <= char["x1"] <= page.width - EDGE
            assert EDGE <= char["top"] <= char["bottom"] <= page.height - EDGE
            assert "cid:" not in char["text"]
            assert char["text"] != "\ufffd"


def test_no_text_is_set_over_another(lesson: Lesson) -> None:
    pdf = opened(lesson, tuple(Part))
    for page in pdf.pages:
        boxes = [
            (w["x0"], w["x1"], w["top"], w["bottom"]) for w in page.extract_words(x_tolerance=1)
        ]
        for i, (a0, a1, a2, a3) in enumerate(boxes):
            for b0, b1, b2, b3 in boxes[i + 1 :]:
                across = min(a1, b1) - max(a0, b0)
                down = min(a3, b3) - max(a2, b2)
                assert across < 1 or down < 0.35 * min(a3 - a2, b3 - b2), page.page_number


def test_the_script_has_every_line_the_teacher_says_and_its_answer(lesson: Lesson) -> None:
    shown = squeezed(text_of(lesson, Part.SCRIPT))
    for one in lesson.sections:
        assert squeezed(one.title) in shown
        assert squeezed(one.script) in shown
        for part in lesson_view.parts_of(one):
            assert squeezed(part.heading) in shown
    for activity in section(lesson, tree.WarmUp).activities:
        for item in activity.items:
            assert squeezed(item.say) in shown
            assert squeezed(item.answer_line) in shown
    for question in section(lesson, tree.Check).questions:
        assert squeezed(question.ask) in shown
        assert squeezed(question.shows) in shown
    assert squeezed(section(lesson, tree.Dictation).sentence) in shown
    assert {row.word for row in section(lesson, tree.SoundOut).words} <= words_in(
        text_of(lesson, Part.SCRIPT)
    )


def squeezed(text: str) -> str:
    """Take out spaces, marks, and what stands between the pages.

    A mark over two letters is read out of a file with a letter more than it has.
    """
    text = re.sub(r"A teaching aid.*?\d+ / \d+", "", text)
    plain = "".join(c for c in unicodedata.normalize("NFD", text) if not unicodedata.combining(c))
    return re.sub(r"o+", "o", re.sub(r"\s+", "", plain))


def test_student_pages_have_what_is_read(lesson: Lesson) -> None:
    shown = text_of(lesson, Part.STUDENT)
    assert {row.word for row in section(lesson, tree.SoundOut).words} <= words_in(shown)
    assert set(section(lesson, tree.Sort).words) <= words_in(shown)
    for line in section(lesson, tree.Sentences).lines:
        assert squeezed(line.text) in squeezed(shown)


def test_student_pages_show_no_answer(endings: Lesson) -> None:
    shown = text_of(endings, *FOR_STUDENTS)
    for page in pages_of([endings], FOR_STUDENTS):
        # What is said to students may have any word (touch, boxes).
        shown = shown.replace(page.title, "").replace(getattr(page, "note", "-"), "")
    bases = section(endings, tree.Bases)
    with_answers = {base for row in bases.words for base in row.bases}
    assert with_answers
    assert not with_answers & words_in(shown)
    written = {row.word for row in section(endings, tree.Dictation).words}
    assert written
    assert not written & words_in(shown)
    checked = {row.word for row in section(endings, tree.Check).questions}
    assert not checked & words_in(shown)
    assert "→" not in shown
    assert not any(point.says in shown for point in section(endings, tree.Rule).points)


def test_a_sort_on_a_student_page_has_each_word_once_and_no_word_under_a_heading(
    lesson: Lesson,
) -> None:
    sort = section(lesson, tree.Sort)
    shown = text_of(lesson, Part.STUDENT)
    shown = re.sub(r"A teaching aid.*", "", shown[shown.index("Write each word under") :])
    listed, _, below = shown.partition("Find the base")[0].partition("\nSort by")
    assert sorted(re.findall(r"[a-z']+", listed.partition("\n")[2])) == sorted(sort.words)
    assert not set(sort.words) & words_in(below)
    assert all(squeezed(group.heading) in squeezed(below) for group in sort.sortings[-1].groups)


def test_the_dictation_sheet_has_a_line_for_each_and_none_of_it(lesson: Lesson) -> None:
    dictation = section(lesson, tree.Dictation)
    pdf = opened(lesson, (Part.DICTATION,))
    text = "\n".join(page.extract_text() for page in pdf.pages)
    solid = [line for page in pdf.pages for line in page.lines if line["linewidth"] in (0, 1)]
    sentence = 2 if dictation.sentence else 0
    assert len(solid) == len(dictation.sounds) + len(dictation.words) + sentence
    assert not {row.word for row in dictation.words} & words_in(
        text.replace("say it, write it", "")
    )
    assert "/" not in re.sub(r"\d+ / \d+", "", text)


def test_the_scoring_grid_has_thirty_rows_on_one_page(lesson: Lesson) -> None:
    count = len(section(lesson, tree.Check).questions)
    for paper in Paper:
        pdf = opened(lesson, (Part.CHECK,), paper)
        pages = [page for page in pdf.pages if "sum" in words_in(page.extract_text())]
        (page,) = pages
        (table,) = page.extract_tables()
        assert len(table) == MOST_STUDENTS + 1
        assert table[0] == ["", "student", *(str(n) for n in range(1, count + 1)), "sum"]
        assert [row[0] for row in table[1:]] == [str(n) for n in range(1, MOST_STUDENTS + 1)]
        assert all(not any(row[1:]) for row in table[1:])


def test_the_key_has_every_sorted_word_under_its_heading(endings: Lesson) -> None:
    shown = squeezed(text_of(endings, Part.KEY))
    for sorting in section(endings, tree.Sort).sortings:
        for group in sorting.groups:
            assert squeezed(group.heading + ", ".join(group.words)) in shown
    for row in section(endings, tree.Bases).words:
        assert squeezed(row.word + (" or ".join(row.bases) or "-")) in shown


def test_the_back_of_a_card_is_where_its_word_belongs(endings: Lesson) -> None:
    sort = section(endings, tree.Sort)
    _, cards = pages_of([endings], [Part.CARDS])
    assert isinstance(cards, Cards)
    front, back = cards.sides[0].faces, cards.sides[1].faces
    columns = cards.grid.columns
    for place, face in enumerate(front):
        if face:
            row, column = divmod(place, columns)
            behind = back[row * columns + columns - 1 - column]
            assert behind
            shown = [text.text for text in behind]
            expected = [
                g.heading for s in sort.sortings for g in s.groups if face[0].text in g.words
            ]
            assert shown == list(dict.fromkeys(expected))
            assert len(shown) >= 1


def test_boxes_are_as_many_as_the_sounds_of_the_dictionary(
    lexicon: Lexicon, lesson: Lesson
) -> None:
    pages = pages_of([lesson], [Part.BOXES])
    (boxes,) = [page for page in pages if isinstance(page, Boxes)]
    assert boxes.rows
    for row in boxes.rows:
        entry = lexicon.get(row.word)
        assert entry
        assert row.sounds == len(entry.usable_pronunciations[0].arpabet.split())
        assert "".join(piece.letters for piece in row.pieces) == row.word


@cache
def texts_of(lesson: Lesson) -> list[str]:
    """Return the text of each page of a whole pack on the narrower paper."""
    return [page.extract_text() for page in opened(lesson, tuple(Part), Paper.A4).pages]


def test_every_page_but_the_backs_of_cards_has_the_caution_on_one_line(lesson: Lesson) -> None:
    texts = texts_of(lesson)
    for text, below in zip(texts, [*texts[1:], ""], strict=True):
        if text:
            assert lesson.caution in text or ", back (" in text
        else:
            assert ", front" in below


def test_a_front_of_cards_begins_a_sheet_and_its_back_is_behind_it(lesson: Lesson) -> None:
    labels = [text.split("\n")[0] for text in texts_of(lesson)]
    fronts = [number for number, label in enumerate(labels, 1) if label.endswith(", front")]
    assert fronts
    for number in fronts:
        assert number % 2 == 1
        name = labels[number - 1].removesuffix(", front")
        assert labels[number] == f"{name}, back (turn at the long edge)"


@pytest.mark.parametrize("paper", Paper)
@pytest.mark.parametrize("focus", ["es,ies", "a_e", "ed"])
def test_an_hour_leaves_no_sheet_nearly_empty(lexicon: Lexicon, focus: str, paper: Paper) -> None:
    lesson = make_lesson(lexicon, Request(focus, minutes=60, seed=3))
    assert len(section(lesson, tree.SoundOut).words) >= 28
    titles = {"Words to read": 1, "Sentences to read": 1, "Words to sort": 2, "Find the base": 1}
    for page in pages_of([lesson], [Part.STUDENT]):
        content = as_pdf.render([page], title="Harbor", paper=paper)
        with pdfplumber.open(io.BytesIO(content)) as pdf:
            assert len(pdf.pages) <= titles[page.title], page.title
    chunks, _ = pages_of([lesson], [Part.BOXES])
    with pdfplumber.open(io.BytesIO(as_pdf.render([chunks], title="Harbor", paper=paper))) as pdf:
        assert len(pdf.pages) == 2


@pytest.mark.source("ISO 14289-1:2014 (PDF/UA-1), 5, 7.1 and 7.2: identification, title, language")
def test_a_pack_is_accessible_black_and_white_and_the_same_each_time(endings: Lesson) -> None:
    pages = pages_of([endings], tuple(Part))
    content = as_pdf.render(pages, title=endings.title, footer=endings.caution)
    assert content == as_pdf.render(pages, title=endings.title, footer=endings.caution)
    with pdfplumber.open(io.BytesIO(content)) as pdf:
        assert b"<pdfuaid:part>1</pdfuaid:part>" in pdf.doc.catalog["Metadata"].resolve().get_data()
        assert pdf.metadata["Title"] == endings.title
        chars = [char for page in pdf.pages for char in page.chars]
    assert {char["non_stroking_color"] for char in chars} <= {(0,), (0.0,), 0, (0, 0, 0)}
    assert {char["fontname"].partition("+")[2][:7] for char in chars} == {
        "ABeeZee",
        "NotoSan",
        ARROW,
    }


def test_days_come_one_after_another(lexicon: Lexicon) -> None:
    lessons = [make_lesson(lexicon, Request("sh", seed=4, day=day)) for day in (1, 2)]
    titles = [page.title for page in pages_of(lessons, [Part.DICTATION, Part.SCRIPT])]
    assert [title.partition(":")[0] for title in titles] == ["Day 1", "Day 1", "Day 2", "Day 2"]


def test_parts_come_in_the_order_of_the_pack(endings: Lesson) -> None:
    one = pages_of([endings], [Part.KEY, Part.SCRIPT])
    assert one == pages_of([endings], parse_parts("script, key"))
    assert one[0].title == endings.title


def test_an_unknown_part_is_one_clear_line() -> None:
    with pytest.raises(PhonodrillError, match="no part 'poster'"):
        parse_parts("script,poster")


@pytest.mark.parametrize(
    ("text", "sounds"),
    [("says /ĭz/ here", ["/ĭz/"]), ("/r/ /k s/", ["/r/", "/k s/"]), ("a word", []), ("a/b", [])],
)
def test_sounds_are_told_from_letters(text: str, sounds: list[str]) -> None:
    runs = runs_of(text)
    assert [run.text for run in runs if run.script is Script.SOUNDS] == sounds
    assert "".join(run.text for run in runs) == text
