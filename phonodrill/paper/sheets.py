"""Sheets made of words: sound boxes, chunk lines, word lists and their keys."""

from __future__ import annotations

from collections.abc import Sequence

from phonodrill.paper.mat import Columns
from phonodrill.paper.page import Boxes, ChunkLines, Key, Script, Split, Text, WordList
from phonodrill.paper.printed import Printed

FILL_IN = "Say the word. Write one sound in each box, then the whole word on the line."
FILLED = "Letters that say nothing of their own stand outside the boxes."
SOUND_OUT = "Touch each line and say its sound. Then read the word."
TWO_COLUMNS_TO = 14
"""Letters in the longest word of a list that still stands in two columns."""


def boxes_of(words: Sequence[Printed], *, filled: bool, title: str = "Sound boxes") -> Boxes:
    """Make a page of sound boxes, empty for the class or filled as its key."""
    return Boxes(title, FILLED if filled else FILL_IN, splits_of(words), filled)


def chunk_lines_of(words: Sequence[Printed], title: str = "Words to sound out") -> ChunkLines:
    """Make a page of words to sound out chunk by chunk."""
    return ChunkLines(title, SOUND_OUT, splits_of(words))


def splits_of(words: Sequence[Printed]) -> tuple[Split, ...]:
    """Return the words tied to their sounds; abbreviations, which are not, are left out."""
    return tuple(word.split for word in words if word.split)


def word_list_of(words: Sequence[Printed], title: str, note: str = "") -> WordList:
    """Make a numbered list in large type."""
    spellings = tuple(word.word for word in words)
    longest = max(map(len, spellings), default=0)
    return WordList(title, note, spellings, 2 if longest <= TWO_COLUMNS_TO else 1)


def word_key(words: Sequence[Printed], title: str, note: str = "") -> Key:
    """Make the table of words with their sounds, syllables and chunks.

    Where some words have an ending, their bases and what it says are shown, too.
    """
    with_endings = any(word.ending for word in words)
    headings: tuple[str, ...] = ("", "word", "sounds", "syllables", "chunks")
    rows = []
    for number, word in enumerate(words, 1):
        sounds = tuple(Text(reading, Script.SOUNDS) for reading in word.readings)
        row = [
            (Text(f"{number}."),),
            (Text(word.word),),
            sounds,
            (Text(" · ".join(word.syllables)),),
            (Text(" · ".join(word.split.chunks) if word.split else ""),),
        ]
        if with_endings:
            row.append(_ending(word))
        rows.append(tuple(row))
    widths: tuple[int, ...] = (0, 0, 4, 4, 5)
    if with_endings:
        headings, widths = (*headings, "ending"), (*widths, 4)
    return Key(title, note, headings, widths, tuple(rows))


def mat_key(columns: Columns, title: str, note: str = "") -> Key:
    """Make the answer key of a mat: each heading with its words."""
    rows = [((column.heading,), _listed(column.words)) for column in columns.columns]
    if columns.in_several:
        rows.append(((Text("in several"),), _listed(columns.in_several)))
    if columns.in_none:
        rows.append(((Text("in none"),), _listed(columns.in_none)))
    return Key(title, note, ("heading", "words"), (0, 1), tuple(rows))


def _ending(word: Printed) -> tuple[Text, ...]:
    if word.ending is None:
        return ()
    parts = filter(None, (word.base, f"-{word.ending.ending}"))
    return Text(", ".join(parts)), Text(word.ending_signs, Script.SOUNDS)


def _listed(words: Sequence[str]) -> tuple[Text, ...]:
    return (Text(", ".join(words)),)
