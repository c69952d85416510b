"""How a list of words to read is shown."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, NamedTuple

from phonodrill.graphemes.chunk import Chunk
from phonodrill.lexicon.entry import Spelled
from phonodrill.render.document import Document, Section, Words, counted

if TYPE_CHECKING:
    from phonodrill.render.fields import reading

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
    flat = [{**record, "chunks": "-".join(record["chunks"])} for record in records]
    about = f"{counted(len(words), 'word')} of {all_words:,} that fit, seed {seed}"
    data: reading.Decodable = {"seed": seed, "fit": all_words, "words": records}
    return Document("Words to read", about, sections, data, flat)


def _record(shown: Shown) -> reading.DecodableWord:
    word = shown.word
    return {
        "word": word.word,
        "pattern": shown.pattern,
        "band": word.band,
        "chunks": [chunk.written(word.word) for chunk in shown.chunks],
    }
