"""How a list of words to read is shown."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from phonodrill.graphemes.chunk import Chunk
from phonodrill.lexicon.entry import Spelled
from phonodrill.render.document import Document, Section, Words, counted

_OTHER = "other shapes"


class Shown(NamedTuple):
    """A word to show.

    Attributes:
        word: the word.
        chunks: letters tied to sounds.
        pattern: its shape; empty if it has none.
    """

    word: Spelled
    chunks: tuple[Chunk, ...]
    pattern: str


def document(words: Sequence[Shown], all_words: int, seed: int) -> Document:
    """Show words by their shape, short ones first.

    Args:
        words: those chosen.
        all_words: how many fit.
        seed: makes the same choice again.
    """
    by_pattern: dict[str, list[str]] = {}
    for shown in sorted(words, key=lambda shown: shown.word.word):
        by_pattern.setdefault(shown.pattern, []).append(shown.word.word)
    order = sorted(by_pattern, key=lambda pattern: (not pattern, len(pattern), pattern))
    sections = tuple(
        Section(pattern or _OTHER, Words(tuple(by_pattern[pattern]))) for pattern in order
    )
    records = [_record(shown) for shown in words]
    about = f"{counted(len(words), 'word')} of {all_words:,} that fit, seed {seed}"
    data = {
        "seed": seed,
        "fit": all_words,
        "words": [
            record | {"chunks": [chunk.written(shown.word.word) for chunk in shown.chunks]}
            for shown, record in zip(words, records, strict=True)
        ],
    }
    return Document("Words to read", about, sections, data, records)


def _record(shown: Shown) -> dict[str, object]:
    word = shown.word
    return {
        "word": word.word,
        "pattern": shown.pattern,
        "band": word.band,
        "chunks": "-".join(chunk.written(word.word) for chunk in shown.chunks),
    }
