"""All that is known of a word."""

from __future__ import annotations

from phonodrill.errors import PhonodrillError, UnknownWordError
from phonodrill.gate import Gate, open_gate
from phonodrill.lexicon.entry import Entry, Pronunciation
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import NO_OVERLAY, Overlay
from phonodrill.reading.spellings import share
from phonodrill.reading.syllables import written_syllables
from phonodrill.render.document import Document
from phonodrill.render.views import word as view
from phonodrill.selection import (
    HIGHEST_KNOWN_BAND,
    may_be_said,
    may_be_shown,
    may_show_guess,
    nearest_words,
)
from phonodrill.services.made import Made
from phonodrill.services.word_list import NOT_FOR_CLASS
from phonodrill.sounds.notation import Notation

SHOWN_RHYMES = 12


def word(
    lexicon: Lexicon,
    word: str,
    *,
    band: int,
    guess: bool = False,
    overlay: Overlay = NO_OVERLAY,
    notation: Notation | None = None,
) -> Made:
    """Look a word up.

    Args:
        lexicon: the open lexicon.
        word: the word.
        band: highest familiarity band of the rhymes.
        guess: whether the sounds of a word that the lexicon lacks are guessed.
        overlay: a teacher's own words.
        notation: how sounds are written.

    Raises:
        PhonodrillError: if it is not known, or not for class.
    """
    gate = open_gate(lexicon)
    entry = lexicon.get(word.strip())
    if entry is None and guess:
        return Made(_guessed(lexicon, gate, word, notation))
    if entry is None:
        raise UnknownWordError(f"{word!r} is not in the lexicon", _hint(lexicon, word.strip()))
    if not may_be_shown(entry, gate):
        raise PhonodrillError(NOT_FOR_CLASS, "another word")
    ways = [_way(lexicon, gate, entry, said) for said in entry.pronunciations]
    document = view.document(
        entry,
        ways,
        _regularity(lexicon, entry, ways),
        notation,
        forms=_shown(lexicon, gate, [row.form for row in lexicon.forms_of(entry.word)]),
        bases=_shown(lexicon, gate, [row.base for row in lexicon.bases_of(entry.word)]),
        homophones=_homophones(lexicon, gate, entry),
        rhymes=_rhymes(lexicon, gate, entry, band),
        fit=_fit(entry, open_gate(lexicon, overlay.words("block"))),
    )
    return Made(document)


def _way(lexicon: Lexicon, gate: Gate, entry: Entry, said: Pronunciation) -> view.Way:
    chunks = lexicon.chunks(said.chunks)
    parts = written_syllables(entry.word, said.sounds, chunks, said.joint)
    # A good word may fall into a part that is none for class.
    is_fit = all(gate.allows(part, ()) for part in parts)
    return view.Way(said, chunks, tuple(parts) if is_fit else ())


def _regularity(lexicon: Lexicon, entry: Entry, ways: list[view.Way]) -> list[view.Regularity]:
    """Rank the chunks of the first usable pronunciation, the least regular first."""
    first = next((way for way in ways if way.said.usable), ways[0])
    rows = {
        chunk.correspondence: chunk.written(entry.word) for chunk in first.chunks if chunk.sounds
    }
    inventory = lexicon.correspondences()
    ranked = [
        view.Regularity(
            written,
            found.sound,
            found.is_regular,
            share(inventory, found, of="spelling"),
            share(inventory, found, of="sound"),
        )
        for found, written in rows.items()
        if found
    ]
    return sorted(ranked, key=lambda row: (row.is_regular, row.of_spelling))


def _hint(lexicon: Lexicon, word: str) -> str:
    tries = [f"phonodrill word {near}" for near in nearest_words(lexicon, word)]
    if word.isalpha():
        tries.append(f"phonodrill word {word} --guess")
    return " or ".join(tries) or "check the spelling"


def _guessed(lexicon: Lexicon, gate: Gate, word: str, notation: Notation | None) -> Document:
    from phonodrill.guess import guess_reading, plain_letters
    from phonodrill.render.views import guess as view_of_guess

    known = lexicon.get(plain_letters(word))
    if known:
        raise UnknownWordError(
            f"{word!r} needs no guess: the lexicon has it without accents",
            f"phonodrill word {known.word}",
        )
    found = guess_reading(word, lexicon)
    if not may_show_guess(found, lexicon, gate):
        raise PhonodrillError(NOT_FOR_CLASS, "another word")
    return view_of_guess.document(found, notation)


def _shown(lexicon: Lexicon, gate: Gate, words: list[str]) -> list[str]:
    entries = filter(None, map(lexicon.get, dict.fromkeys(words)))
    return [entry.word for entry in entries if may_be_shown(entry, gate)]


def _homophones(lexicon: Lexicon, gate: Gate, entry: Entry) -> list[str]:
    found: dict[str, None] = {}
    for way in entry.usable_pronunciations:
        for other in lexicon.sounding_like(way.normal):
            if other.word != entry.word and other.band and may_be_shown(other, gate):
                found[other.word] = None
    return list(found)


def _rhymes(lexicon: Lexicon, gate: Gate, entry: Entry, band: int) -> list[str]:
    way = next(iter(entry.usable_pronunciations), entry.pronunciations[0])
    words = lexicon.rhyming_with(way.rhyme, highest_band=min(band, HIGHEST_KNOWN_BAND))
    entries = filter(None, map(lexicon.get, words))
    fit = [other.word for other in entries if other != entry and may_be_said(other, gate)]
    return fit[:SHOWN_RHYMES]


def _fit(entry: Entry, gate: Gate) -> str:
    if entry.needs_capital:
        return "only in what is read: words are shown without a capital"
    if not may_be_said(entry, gate):
        return "no"
    return "only when asked for, with its reading" if entry.is_heteronym else "yes"
