"""Words that can be read with what has been taught, and other lists by spelling."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import NamedTuple

from phonodrill.gate import Gate
from phonodrill.lexicon.entry import Spelled
from phonodrill.lexicon.store import Lexicon
from phonodrill.reading.patterns import pattern_of, signs_of
from phonodrill.remembered import recall
from phonodrill.taught.known import Known


class Wanted(NamedTuple):
    """Which words are wanted.

    Attributes:
        known: what has been taught; None for any word.
        patterns: shapes, one of which a word must have; empty for any.
        codes: characters of correspondences, one of which a word must have;
            empty for any.
        endings: whether regular inflected forms are wanted.
    """

    known: Known | None = None
    patterns: frozenset[str] = frozenset()
    codes: frozenset[str] = frozenset()
    endings: bool = False


def find_words(lexicon: Lexicon, gate: Gate, wanted: Wanted, *, highest_band: int) -> list[Spelled]:
    """Return the words wanted, by spelling, past the gate.

    Args:
        lexicon: the open lexicon.
        gate: the never-say check.
        wanted: which words.
        highest_band: the least familiar band, 1-3.
    """
    words = spelled_words(lexicon, highest_band)
    signs = signs_of(lexicon.correspondences()) if wanted.patterns else {}
    return [
        word
        for word in readable(words, wanted.known, lexicon.chunks_of)
        if (wanted.endings or not word.endings)
        and not (wanted.codes and wanted.codes.isdisjoint(word.chunks))
        and (not wanted.patterns or pattern_of(word.chunks, signs) in wanted.patterns)
        and gate.allows(word.word, word.normals)
    ]


def spelled_words(lexicon: Lexicon, highest_band: int) -> Sequence[Spelled]:
    """Return all words of some bands with their letters and sounds; read only once.

    Args:
        lexicon: the open lexicon.
        highest_band: the least familiar band, 1-3.
    """
    return recall(
        lexicon,
        ("spelled words", highest_band),
        lambda: lexicon.spelled(highest_band=highest_band),
    )


def readable(
    words: Iterable[Spelled], known: Known | None, chunks_of: Callable[[str], str]
) -> Iterator[Spelled]:
    """Yield the words that can be read with what is known.

    Args:
        words: the vocabulary.
        known: what has been taught; None for any word.
        chunks_of: gives the stored chunks of a base that is not among the words.
    """
    if known is None:
        yield from words
        return
    listed = list(words)
    own = {word.word: word.chunks for word in listed}

    def look_up(base: str) -> str:
        return own[base] if base in own else chunks_of(base)

    yield from (word for word in listed if known.reads(word, look_up))
