"""A query for words and the one function that answers it.

Everything that says, shows or prints a word takes it from the pool built here,
so the gate, the bands and the rules about names, heteronyms and doubtful
pronunciations hold everywhere.
"""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from phonodrill.gate import Gate, open_gate
from phonodrill.lexicon.entry import UNFIT_REASONS, Entry, Pronunciation
from phonodrill.lexicon.store import Lexicon
from phonodrill.sounds.accents import heard_alike
from phonodrill.sounds.units import RVowels

HIGHEST_KNOWN_BAND = 3
"""Words beyond this band are taken as unknown to every class."""


@dataclass(frozen=True, slots=True)
class Query:
    """What a set of words or items is wanted for.

    Attributes:
        band: highest familiarity band used, 1-3.
        endings: spelled endings the words must have (s, es, ies, ves, ed, ing);
            empty for base words.
        sound: code of the phoneme an item must be about; empty for any.
        words: the teacher's own words, in any band; empty for the vocabulary's.
        r_vowels: whether a vowel + R counts as one sound.
    """

    band: int = 2
    endings: frozenset[str] = frozenset()
    sound: str = ""
    words: tuple[str, ...] = ()
    r_vowels: RVowels = RVowels.TWO


@dataclass(frozen=True, slots=True)
class Spoken:
    """A word in one of its pronunciations."""

    entry: Entry
    said: Pronunciation


@dataclass(frozen=True, slots=True)
class Pool:
    """The words that may be used for a query.

    Attributes:
        stimuli: entries to make items from, in order of spelling.
        by_sound: normal form -> known words that sound so, the most familiar first.
        gate: the never-say check.
    """

    stimuli: tuple[Entry, ...]
    by_sound: dict[str, tuple[Spoken, ...]]
    gate: Gate

    def heard_as(self, normal: str) -> tuple[Spoken, ...]:
        """Return the known words that sound like this, the most familiar first."""
        return self.by_sound.get(normal, ())

    def stands_alone(self, normal: str) -> bool:
        """Whether no accent makes this sound fall together with another known word."""
        return all(
            alike == normal or alike not in self.by_sound for alike in heard_alike(normal)
        )


def select(lexicon: Lexicon, query: Query) -> Pool:
    """Build the pool for a query.

    A word is used only if it is reviewed (bands 1-3), no name, no heteronym,
    passes the gate in every way it may be said, and has a pronunciation that no
    check contradicts. Words of the teacher's own list may be heteronyms and of
    any band above 0.

    Args:
        lexicon: the open lexicon.
        query: what is wanted.
    """
    gate = open_gate(lexicon)
    known = [
        entry
        for entry in lexicon.entries(highest_band=HIGHEST_KNOWN_BAND)
        if may_be_said(entry, gate)
    ]
    return Pool(
        stimuli=tuple(_stimuli(lexicon, query, known, gate)),
        by_sound=_by_sound(known),
        gate=gate,
    )


def may_be_said(entry: Entry, gate: Gate) -> bool:
    """Whether an entry may be said by itself at all: by band, evidence and gate.

    Letters (*a*, *i*) and interjections (*huh*, *shh*) are no words for a drill.
    """
    return (
        entry.band > 0
        and not entry.is_name
        and len(entry.word) > 1
        and entry.parts_of_speech[:1] != ("interjection",)
        and bool(entry.usable_pronunciations)
        and gate.allows(entry.word, (said.normal for said in entry.pronunciations))
    )


def may_be_shown(entry: Entry, gate: Gate) -> bool:
    """Whether an entry may be shown to an adult who looks it up."""
    return entry.reason not in UNFIT_REASONS and gate.allows(
        entry.word, (said.normal for said in entry.pronunciations), alone=False
    )


def nearest_words(lexicon: Lexicon, word: str, *, count: int = 3) -> list[str]:
    """Return known words spelled most like this one, all fit for class."""
    gate = open_gate(lexicon)
    known = lexicon.words(highest_band=HIGHEST_KNOWN_BAND)
    near = difflib.get_close_matches(word.lower(), known, n=2 * count)
    entries = filter(None, map(lexicon.get, near))
    return [entry.word for entry in entries if may_be_said(entry, gate)][:count]


def _stimuli(lexicon: Lexicon, query: Query, known: list[Entry], gate: Gate) -> Iterator[Entry]:
    if query.words:
        found = (lexicon.get(word) for word in dict.fromkeys(query.words))
        entries = [entry for entry in found if entry and may_be_said(entry, gate)]
    else:
        entries = [e for e in known if e.band <= query.band and not e.is_heteronym]
        if not query.endings:
            entries = [entry for entry in entries if not entry.endings]
    wanted = query.endings
    return (entry for entry in entries if not wanted or not wanted.isdisjoint(entry.endings))


def _by_sound(entries: Iterable[Entry]) -> dict[str, tuple[Spoken, ...]]:
    found: dict[str, list[Spoken]] = {}
    for entry in entries:
        for said in entry.usable_pronunciations:
            alike = found.setdefault(said.normal, [])
            if all(spoken.entry.word != entry.word for spoken in alike):
                alike.append(Spoken(entry, said))
    return {normal: tuple(sorted(alike, key=_familiarity)) for normal, alike in found.items()}


def _familiarity(spoken: Spoken) -> tuple[bool, int, float]:
    entry = spoken.entry
    return entry.is_heteronym, entry.band, -entry.zipf
