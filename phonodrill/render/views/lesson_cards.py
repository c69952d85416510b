"""What is cut out, laid out or filled in for a lesson: cards, mats, sound boxes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from phonodrill.lesson import tree
from phonodrill.lesson.tree import Lesson
from phonodrill.paper.cards import GRIDS, Size, lay_out
from phonodrill.paper.mat import HIGHEST_COLUMNS
from phonodrill.paper.page import Boxes, Card, ChunkLines, Duplex, Mat, Page, Script, Split, Text
from phonodrill.paper.printed import Part, split_parts
from phonodrill.paper.runs import runs_of
from phonodrill.paper.sheets import FILL_IN, FILLED, SOUND_OUT

MAT_NOTE = "Read each card. Lay it in the column where it belongs."
GRID = GRIDS[Size.MEDIUM]
MOST_BOXED = 10
"""Words with boxes that stand on one page."""


def cards(lesson: Lesson) -> Iterator[Page]:
    """Make the cards of the words to sort and to sound out, answers on their backs."""
    for section in lesson.sections:
        if isinstance(section, tree.SoundOut):
            made = [_chunk_card(row) for row in section.words]
            yield lay_out("Words to sound out", made, GRID, Duplex.LONG)
        elif isinstance(section, tree.Sort):
            made = [_sort_card(word, section) for word in section.words]
            yield lay_out("Words to sort", made, GRID, Duplex.LONG)


def mats(lesson: Lesson) -> Iterator[Page]:
    """Make a mat for each way to sort, and blank cards for words of the class."""
    for section in lesson.sections:
        if not isinstance(section, tree.Sort):
            continue
        for sorting in section.sortings:
            headings = [(_heading(group.heading),) for group in sorting.groups]
            for some in _batches(headings, HIGHEST_COLUMNS):
                yield Mat(f"Sort by {sorting.by}", tuple(some), MAT_NOTE)
        yield lay_out("Blank cards", [Card()] * GRID.cards, GRID, Duplex.NONE)


def boxes(lesson: Lesson) -> Iterator[Page]:
    """Make the words in chunks, and empty boxes for some of them."""
    for section in lesson.sections:
        if isinstance(section, tree.SoundOut):
            yield ChunkLines("Words to sound out", SOUND_OUT, _splits(section.words))
            yield Boxes("Sound boxes", FILL_IN, _boxed(section), filled=False)


def filled_boxes(lesson: Lesson) -> Iterator[Page]:
    """Make the key of the sound boxes."""
    for section in lesson.sections:
        if isinstance(section, tree.SoundOut):
            yield Boxes("Key: sound boxes", FILLED, _boxed(section), filled=True)


def _boxed(section: tree.SoundOut) -> tuple[Split, ...]:
    new = [row for row in section.words if not row.review]
    return _splits((new or section.words)[:MOST_BOXED])


def _splits(rows: Sequence[tree.Listed]) -> tuple[Split, ...]:
    return tuple(
        split_parts(row.word, (Part(p.at, p.sounds, not p.irregular) for p in row.pieces))
        for row in rows
        if row.pieces
    )


def _chunk_card(row: tree.Listed) -> Card:
    chunks = Text(" · ".join(piece.letters for piece in row.pieces))
    signs = " ".join(sign for piece in row.pieces for sign in piece.sounds)
    return Card((Text(row.word),), (chunks, Text(f"/{signs}/", Script.SOUNDS)))


def _sort_card(word: str, section: tree.Sort) -> Card:
    headings = (
        group.heading
        for sorting in section.sortings
        for group in sorting.groups
        if word in group.words
    )
    return Card((Text(word),), tuple(_heading(heading) for heading in dict.fromkeys(headings)))


def _heading(text: str) -> Text:
    """Make a heading one text: sounds alone have their own font."""
    runs = runs_of(text)
    return runs[0] if len(runs) == 1 else Text(text)


def _batches(headings: Sequence[tuple[Text, ...]], most: int) -> Iterator[list[tuple[Text, ...]]]:
    for start in range(0, len(headings), most):
        yield list(headings[start : start + most])
