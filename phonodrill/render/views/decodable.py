"""How a list of words to read is shown."""

from __future__ import annotations

from collections.abc import Sequence

from phonodrill.reading.decodable import Readable
from phonodrill.render.document import Document, Section, Words, counted

_OTHER = "other shapes"


def document(words: Sequence[Readable], all_words: int, seed: int) -> Document:
    """Show words by their shape, short ones first.

    Args:
        words: those chosen.
        all_words: how many fit.
        seed: makes the same choice again.
    """
    by_pattern: dict[str, list[str]] = {}
    for readable in sorted(words, key=lambda readable: readable.word.word):
        by_pattern.setdefault(readable.pattern, []).append(readable.word.word)
    order = sorted(by_pattern, key=lambda pattern: (not pattern, len(pattern), pattern))
    sections = tuple(
        Section(pattern or _OTHER, Words(tuple(by_pattern[pattern]))) for pattern in order
    )
    records = [_record(readable) for readable in words]
    about = f"{counted(len(words), 'word')} of {all_words:,} that fit, seed {seed}"
    data = {
        "seed": seed,
        "fit": all_words,
        "words": [
            record | {"chunks": [chunk.written(readable.word.word) for chunk in readable.chunks]}
            for readable, record in zip(words, records, strict=True)
        ],
    }
    return Document("Words to read", about, sections, data, records)


def _record(readable: Readable) -> dict[str, object]:
    word = readable.word
    return {
        "word": word.word,
        "pattern": readable.pattern,
        "band": word.band,
        "chunks": "-".join(chunk.written(word.word) for chunk in readable.chunks),
    }
