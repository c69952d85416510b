"""A lesson as pages for paper: the teacher's script, what students get, and the key."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from phonodrill.lesson import tree
from phonodrill.lesson.tree import Lesson
from phonodrill.paper.pack_parts import Part
from phonodrill.paper.page import (
    Block,
    Heading,
    Item,
    Items,
    Page,
    Paragraph,
    ScoreGrid,
    Sheet,
    Table,
    WordRows,
)
from phonodrill.paper.runs import runs_of
from phonodrill.render import document
from phonodrill.render.views import lesson as lesson_view
from phonodrill.render.views import lesson_cards, student_pages

MOST_STUDENTS = 30
"""Rows of the scoring grid: they fill one page."""
NARROW = 16
"""Letters of a column that needs no share of the page."""
WIDEST = 60
KEPT_IN_KEY = ("sort", "bases", "dictation", "check")
SCORE_NOTE = "A tick for right, a dot for not yet. A student who was away has no marks."


def pages_of(lessons: Sequence[Lesson], parts: Sequence[Part]) -> list[Page]:
    """Make the pages of one lesson, or of several days one after another.

    Args:
        lessons: one a day, in order.
        parts: those wanted; they come in the order of the pack.

    Returns:
        The pages; none for a part whose section the lesson has not.
    """
    pages: list[Page] = []
    for lesson in lessons:
        day = f"Day {lesson.request.day}: " if len(lessons) > 1 else ""
        for part in Part:
            if part in parts:
                pages += [page._replace(title=day + page.title) for page in _MAKERS[part](lesson)]
    return pages


def _script(lesson: Lesson) -> Iterator[Page]:
    blocks: list[Block] = []
    for number, section in enumerate(lesson.sections, 1):
        blocks.append(Heading(lesson_view.headed(number, section)))
        if section.script:
            blocks.append(Paragraph(runs_of(section.script), is_lead=True))
        blocks += blocks_of(section)
    if lesson.notes:
        blocks.append(Heading("Mind"))
        blocks += [Paragraph(runs_of(note)) for note in lesson.notes]
    yield Sheet(lesson.title, lesson_view.about(lesson), tuple(blocks))


def _check(lesson: Lesson) -> Iterator[Page]:
    for section in lesson.sections:
        if isinstance(section, tree.Check):
            yield Sheet(section.title, section.script, tuple(blocks_of(section)))
            yield from student_pages.shown_words(section)
            numbers = tuple(str(number) for number, _ in enumerate(section.questions, 1))
            grid = ScoreGrid((*numbers, "sum"), MOST_STUDENTS)
            yield Sheet(f"{section.title}: scores", SCORE_NOTE, (grid,))


def _key(lesson: Lesson) -> Iterator[Page]:
    blocks: list[Block] = []
    for section in lesson.sections:
        if section.name in KEPT_IN_KEY:
            blocks += [Heading(section.title), *blocks_of(section, with_lists=False)]
    if blocks:
        yield Sheet("Answer key", lesson.title, tuple(blocks))
    yield from lesson_cards.filled_boxes(lesson)


def blocks_of(section: tree.Section, *, with_lists: bool = True) -> Iterator[Block]:
    """Turn what the teacher sees of a section into blocks.

    Args:
        section: of a lesson.
        with_lists: also the words to sort, which the key has in groups.
    """
    for part in lesson_view.parts_of(section):
        if isinstance(section, tree.Sort) and not with_lists and _is_list(part):
            continue
        if part.heading:
            yield Heading(part.heading, level=3)
        yield from _block(part.body)


def _is_list(part: document.Section) -> bool:
    return isinstance(part.body, document.Words)


def _block(body: document.Body) -> Iterator[Block]:
    if isinstance(body, document.Table):
        yield _table(body)
    elif isinstance(body, document.Questions):
        yield Items(
            tuple(
                Item(number, *(runs_of(text) for text in line))
                for number, line in enumerate(body.lines, 1)
            )
        )
    elif isinstance(body, document.Words):
        longest = max(map(len, body.words), default=0)
        yield WordRows(body.words, columns=4 if longest <= NARROW else 2)
    else:
        yield from (Paragraph(runs_of(line)) for line in body.plain().split("\n"))


def _table(table: document.Table) -> Table:
    """Give long columns a share of the page by their longest cell."""
    columns = list(zip(table.headings, *table.rows, strict=True))
    longest = [max(map(len, column)) for column in columns]
    return Table(
        tuple(runs_of(heading) for heading in table.headings),
        tuple(0 if length <= NARROW else min(length, WIDEST) for length in longest),
        tuple(tuple(runs_of(cell) for cell in row) for row in table.rows),
    )


_MAKERS = {
    Part.SCRIPT: _script,
    Part.STUDENT: student_pages.pages,
    Part.CARDS: lesson_cards.cards,
    Part.MAT: lesson_cards.mats,
    Part.BOXES: lesson_cards.boxes,
    Part.DICTATION: student_pages.dictation,
    Part.CHECK: _check,
    Part.KEY: _key,
}
