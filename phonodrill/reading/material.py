"""Gather from the lexicon what can be read: words, sentences, much-used words."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from phonodrill.gate import Gate
from phonodrill.lexicon.entry import Spelled
from phonodrill.lexicon.store import Lexicon
from phonodrill.selection import may_be_said, spelled_of
from phonodrill.sentences import entry_of, passes, words_of
from phonodrill.taught.growth import Target, word_target
from phonodrill.taught.known import BaseOf, Way, ways_to_read
from phonodrill.taught.tokens import ending_codes


def chunks_from(lexicon: Lexicon) -> BaseOf:
    """Return what gives the stored chunks of any word of the lexicon."""

    def chunks_of(word: str) -> str:
        entry = lexicon.get(word)
        return spelled_of(entry).chunks if entry else ""

    return chunks_of


def read_words(lexicon: Lexicon, gate: Gate, band: int) -> list[Spelled]:
    """Return the words of bands 1 to ``band`` for a drill, the most familiar first."""
    entries = lexicon.entries(highest_band=band)
    fit = (e for e in entries if not e.is_heteronym and may_be_said(e, gate))
    return sorted(map(spelled_of, fit), key=lambda word: (word.band, -word.zipf, word.word))


def word_targets(lexicon: Lexicon, words: Sequence[Spelled]) -> list[Target]:
    """Return words as targets, in the same order."""
    stored = {word.word: word.chunks for word in words}
    look_up = chunks_from(lexicon)

    def chunks_of(word: str) -> str:
        return stored[word] if word in stored else look_up(word)

    endings = ending_codes(lexicon.correspondences())
    return [word_target(word, chunks_of, endings) for word in words]


def sentence_targets(lexicon: Lexicon, gate: Gate) -> list[Target]:
    """Return the sentences of the bank that pass the gate."""
    chunks_of = chunks_from(lexicon)
    ways: dict[str, tuple[Way, ...]] = {}
    found = []
    for sentence in lexicon.all_sentences():
        if passes(sentence, lexicon, gate):
            words = words_of(sentence.text)
            for word in words:
                if word not in ways:
                    ways[word] = _ways(lexicon, word, chunks_of)
            found.append(Target(sentence.text, tuple(ways[word] for word in dict.fromkeys(words))))
    return found


def frequent_targets(lexicon: Lexicon, gate: Gate) -> list[Target]:
    """Return the words most used that may be said alone, the most used first."""
    chunks_of = chunks_from(lexicon)
    found = []
    for word in (frequent.word for frequent in lexicon.high_frequency()):
        entry = lexicon.get(word)
        normals = [said.normal for said in entry.pronunciations] if entry else []
        if word.isalpha() and gate.allows(word, normals):
            found.append(Target(word, (_ways(lexicon, word, chunks_of),)))
    return found


def whole_targets(lexicon: Lexicon, words: Iterable[str]) -> dict[str, Target]:
    """Return ``word -> target`` for those that the lexicon has, of any band."""
    chunks_of = chunks_from(lexicon)
    return {
        word: Target(word, (_ways(lexicon, word, chunks_of),))
        for word in words
        if lexicon.get(word)
    }


def _ways(lexicon: Lexicon, word: str, chunks_of: BaseOf) -> tuple[Way, ...]:
    """The ways to read a word of a sentence: a possessive is its owner with -s."""
    known = entry_of(lexicon, word)
    entry = lexicon.get(known)
    endings = ending_codes(lexicon.correspondences())
    ways = ways_to_read(spelled_of(entry), chunks_of, endings) if entry else ()
    return ways if known == word else tuple(way | {"-s"} for way in ways)
