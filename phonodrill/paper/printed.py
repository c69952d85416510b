"""A word with all that any page prints of it, taken from the lexicon once."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from phonodrill.endings.classify import Ending, classify
from phonodrill.endings.sounds import codes_of
from phonodrill.gate import Gate
from phonodrill.graphemes.chunk import Chunk
from phonodrill.lexicon.entry import Entry, Pronunciation
from phonodrill.lexicon.store import Lexicon
from phonodrill.paper.page import Piece, Split
from phonodrill.reading.syllables import written_syllables
from phonodrill.selection import fit_to_say
from phonodrill.sounds.notation import Notation
from phonodrill.sounds.units import RVowels, split_units


class Printed(NamedTuple):
    """A word to print.

    Attributes:
        word: the spelling.
        readings: each way to say it that may be used, sounds parted by spaces;
            more than one only for a heteronym.
        arpabet: the first reading as CMUdict writes it.
        syllables: its letters in syllables; none if one of them is no word for class.
        split: its letters tied to its sounds; None for an abbreviation.
        ending: its ending taken apart, or None if it has none.
        ending_signs: what the ending says, between slashes; else empty.
        base: its base word if that may be shown; else empty.
    """

    word: str
    readings: tuple[str, ...]
    arpabet: str
    syllables: tuple[str, ...]
    split: Split | None
    ending: Ending | None = None
    ending_signs: str = ""
    base: str = ""


def print_words(
    lexicon: Lexicon,
    gate: Gate,
    entries: Sequence[Entry],
    notation: Notation,
    r_vowels: RVowels = RVowels.TWO,
) -> tuple[Printed, ...]:
    """Take from the lexicon what pages print of some words.

    Args:
        lexicon: the open lexicon.
        gate: the never-say check, here for bases and syllables.
        entries: words that passed the gate.
        notation: how sounds are written.
        r_vowels: whether a vowel + R has one box or two.
    """
    exceptions = lexicon.ending_exceptions()
    is_fit = fit_to_say(lexicon, gate)
    found = []
    for entry in entries:
        # Those of some words (the, was) depend on the sentence: none may be used unasked.
        said = entry.usable_pronunciations or entry.pronunciations
        word = _written(entry.word)
        first = said[0]
        chunks = lexicon.chunks(first.chunks)
        syllables = tuple(written_syllables(word, first.sounds, chunks, first.joint))
        ending = next(iter(classify(entry.word, lexicon, exceptions)), None)
        found.append(
            Printed(
                word,
                _readings(said if entry.is_heteronym else said[:1], notation),
                first.arpabet,
                syllables if all(gate.allows(part.lower(), ()) for part in syllables) else (),
                split_word(word, first, chunks, notation, r_vowels) if chunks else None,
                ending,
                _ending_signs(ending, notation) if ending else "",
                ending.base if ending and is_fit(ending.base) else "",
            )
        )
    return tuple(found)


def _written(word: str) -> str:
    """Return a word as it is written within a sentence: I, I'm.

    >>> _written("i'm"), _written("it")
    ("I'm", 'it')
    """
    return word.capitalize() if re.match(r"i($|')", word) else word


def _ending_signs(ending: Ending, notation: Notation) -> str:
    heard = ending.said.spaced(notation).split(" ")
    signs = heard[len(heard) - len(codes_of(ending.sound)) :]
    return f"/{(' ' if notation is Notation.ARPABET else '').join(signs)}/"


def _readings(said: Sequence[Pronunciation], notation: Notation) -> tuple[str, ...]:
    return tuple(dict.fromkeys(f"/{way.spaced(notation)}/" for way in said))


def split_word(
    word: str,
    said: Pronunciation,
    chunks: Sequence[Chunk],
    notation: Notation,
    r_vowels: RVowels = RVowels.TWO,
) -> Split:
    """Split a word into pieces, each with its sounds.

    Letters that stand apart (a_e) become two pieces, of which the second says
    nothing. With ``RVowels.ONE`` an R in a piece of its own joins its vowel's.

    Args:
        word: the spelling.
        said: how it is said.
        chunks: its letters tied to its sounds.
        notation: how the sounds are written.
        r_vowels: whether a vowel + R counts as one sound.
    """
    signs = _signs(said, notation, r_vowels)
    return split_parts(
        word,
        (
            Part(
                chunk.letters,
                tuple(signs[i] for i in chunk.sounds if i in signs),
                chunk.is_regular,
                bool(chunk.sounds) and not any(i in signs for i in chunk.sounds),
            )
            for chunk in chunks
        ),
    )


class Part(NamedTuple):
    """Some letters of a word and what they say.

    Attributes:
        at: the places of the letters.
        sounds: signs of the sounds; none where silent.
        is_regular: whether it is a taught pattern.
        joins_vowel: whether its sound is written with the vowel before it.
    """

    at: tuple[int, ...]
    sounds: tuple[str, ...]
    is_regular: bool
    joins_vowel: bool = False


def split_parts(word: str, parts: Iterable[Part]) -> Split:
    """Lay the parts of a word out in the order of their letters."""
    pieces: dict[int, Piece] = {}
    closing: dict[int, int] = {}
    for part in parts:
        first, last = part.at[0], part.at[-1]
        is_split = last - first >= len(part.at)
        letters = word[first] if is_split else "".join(word[i] for i in part.at)
        pieces[first] = Piece(letters, part.sounds, part.is_regular)
        if is_split:
            closing[last] = first
        elif part.joins_vowel:
            vowel = max(place for place in pieces if pieces[place].sounds and place < first)
            merged = [pieces.pop(place) for place in sorted(pieces) if place >= vowel]
            pieces[vowel] = Piece(
                "".join(piece.letters for piece in merged),
                merged[0].sounds,
                all(piece.is_regular for piece in merged),
            )
    order = sorted([*pieces, *closing])
    return Split(
        word,
        tuple(
            pieces[place]
            if place in pieces
            else Piece(word[place], (), closes=order.index(closing[place]))
            for place in order
        ),
    )


def _signs(said: Pronunciation, notation: Notation, r_vowels: RVowels) -> dict[int, str]:
    """Return the sign of each counted sound, by the place of its first phoneme."""
    written = said.spaced(notation).split(" ")
    signs: dict[int, str] = {}
    place = 0
    for unit in split_units(said.shown, r_vowels):
        signs[place] = "".join(written[place : place + len(unit)])
        place += len(unit)
    return signs
