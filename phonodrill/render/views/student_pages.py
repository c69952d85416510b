"""What students get of a lesson on paper: big type, lines to write on, no answers."""

from __future__ import annotations

import re
from collections.abc import Iterator

from phonodrill.lesson import tree
from phonodrill.lesson.tree import Lesson
from phonodrill.paper.page import (
    Block,
    Heading,
    Item,
    Items,
    OpenColumns,
    Page,
    Paragraph,
    Sheet,
    WordList,
    WordRows,
    WriteLines,
)
from phonodrill.paper.runs import runs_of
from phonodrill.paper.sheets import TWO_COLUMNS_TO

LARGE = 20
LARGER = 24
SHORT_WORD = 10
"""Letters of words that stand three in a row."""
SPARE_ROWS = 1
"""Rows of a sort beyond its longest column, so that their number tells nothing."""
MANY = 12
"""More words than these stand side by side, or they would need another page."""
LANES, LONG_COLUMN = 2, 8
"""Of two columns, the words of which stand side by side where there are more than these."""
SHOWN = re.compile(r"(?:Show|Here is) “([^”]+)”")
READ_NOTE = "Point to each part and say its sound. Then read the word."
SENTENCES_NOTE = "Read each sentence aloud."
SORT_NOTE = "Write each word under its heading."
BASES_NOTE = "Write the word it came from. Write a dash if there is none."


def pages(lesson: Lesson) -> Iterator[Page]:
    """Make the pages to read, sort and find bases on."""
    for section in lesson.sections:
        if isinstance(section, tree.SoundOut):
            yield _list(section)
        elif isinstance(section, tree.Sentences) and section.lines:
            yield _sentences(section)
        elif isinstance(section, tree.Sort):
            yield _sort(section)
        elif isinstance(section, tree.Bases):
            yield _bases(section)


def dictation(lesson: Lesson) -> Iterator[Page]:
    """Make the sheet to write on what is said."""
    for section in lesson.sections:
        if isinstance(section, tree.Dictation):
            yield _dictation(section)


def shown_words(section: tree.Check) -> Iterator[Page]:
    """Make the page of the words that the teacher shows one after another."""
    items = tuple(
        Item(number, runs_of(found[1]))
        for number, question in enumerate(section.questions, 1)
        if (found := SHOWN.match(question.ask))
    )
    if items:
        note = "Cover the words; show one at a time."
        yield Sheet(f"{section.title}: words to show", note, (Items(items, size=30),))


def _list(section: tree.SoundOut) -> WordList:
    words = tuple(row.word for row in section.words)
    columns = 2 if max(map(len, words)) <= TWO_COLUMNS_TO else 1
    return WordList("Words to read", READ_NOTE, words, columns)


def _sentences(section: tree.Sentences) -> Sheet:
    items = (Item(number, runs_of(line.text)) for number, line in enumerate(section.lines, 1))
    return Sheet("Sentences to read", SENTENCES_NOTE, (Items(tuple(items), size=LARGER),))


def _sort(section: tree.Sort) -> Sheet:
    longest = max(map(len, section.words), default=0)
    columns = 4 if longest <= SHORT_WORD else 3
    blocks: list[Block] = [WordRows(section.words, columns, LARGE)]
    for sorting in section.sortings:
        headings = tuple(runs_of(group.heading) for group in sorting.groups)
        most = max(len(group.words) for group in sorting.groups)
        blocks.append(Heading(f"Sort by {sorting.by}"))
        lanes = LANES if len(headings) == LANES and most > LONG_COLUMN else 1
        blocks.append(OpenColumns(headings, -(-most // lanes) + SPARE_ROWS, lanes))
    return Sheet("Words to sort", SORT_NOTE, tuple(blocks), is_named=True)


def _bases(section: tree.Bases) -> Sheet:
    words = tuple(row.word for row in section.words)
    lines = WriteLines(words, columns=2 if len(words) > MANY else 1, share=60)
    return Sheet("Find the base", BASES_NOTE, (lines,), is_named=True)


def _dictation(section: tree.Dictation) -> Sheet:
    blocks: list[Block] = []
    if section.sounds:
        blocks += [Heading("Sounds"), _numbered(len(section.sounds), columns=3)]
    if section.words:
        blocks += [Heading("Words"), _numbered(len(section.words), columns=2)]
    if section.sentence:
        blocks += [Heading("Sentence"), WriteLines(("", ""), share=100)]
    if not blocks:
        blocks.append(Paragraph(()))
    return Sheet("Dictation", "Listen, say it, write it.", tuple(blocks), is_named=True)


def _numbered(count: int, columns: int) -> WriteLines:
    return WriteLines(tuple(f"{n}." for n in range(1, count + 1)), columns, share=80)
