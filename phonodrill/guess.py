"""Guess how a word is said that the lexicon lacks: a name, a rare or made-up word.

An inflected form of a word that the lexicon has is read as that word and the
ending, a word made of two known words as the two; all else, and whatever of
this the letters speak against, is read by the model (see
:mod:`phonodrill.graphemes.reader`). A guess is marked as one by its origin and
is not usable in a drill without being asked for.
"""

from __future__ import annotations

import math
import re
import unicodedata
from collections.abc import Callable, Iterator
from typing import NamedTuple

from phonodrill.errors import UnknownWordError
from phonodrill.graphemes.align import align, set_ending_apart
from phonodrill.graphemes.chunk import Chunk, encode
from phonodrill.graphemes.inventory import arrange
from phonodrill.graphemes.reader import Reader, Way
from phonodrill.graphemes.signs import Sign, signs_of
from phonodrill.lexicon.entry import GUESSED, Entry, Pronunciation
from phonodrill.lexicon.store import Lexicon
from phonodrill.sounds.inventory import VOWELS
from phonodrill.sounds.normal import normal_form
from phonodrill.sounds.suffixes import add_suffix, ed_suffix, s_suffix

LONGEST = 45
"""Letters: more than the longest word in a dictionary has."""
OTHER_WAYS = 5
LIKELY = 3.0
"""Other readings up to so many nats behind the best are likely to be heard, too."""
_SHORTEST_PART = 3
_HIGHEST_PART_BAND = 3
_LETTERS_AGAINST_PARTS = 4.0
"""So many nats worse than the best reading of the letters, a reading from parts is not taken."""
_UNSEEN = 0.05
_MUST_DOUBLE = re.compile("[^aeiou]*(?:qu)?[aeiouy][^aeiouwxy]")
"""A base that doubles its last letter before a vowel: *pin* makes *pinned*, not *pined*."""
_SIGNS = {"’": "'", "ʼ": "'", "‐": "-", "‑": "-"}


class Guess(NamedTuple):
    """How a word may be said.

    Attributes:
        word: the spelling, lower case, without accents.
        said: the likeliest pronunciation; its origin is ``guess``.
        chunks: its letters tied to its sounds.
        parts: the base and the ending, or the two words, that it was read from; empty
            if it was read from its letters.
        also: normal forms of the other likely readings.
    """

    word: str
    said: Pronunciation
    chunks: tuple[Chunk, ...]
    parts: tuple[str, ...] = ()
    also: tuple[str, ...] = ()


class _FromParts(NamedTuple):
    """A pronunciation put together from what is known.

    Attributes:
        sounds, stress: of the whole.
        parts: what it was made from.
        ending: letters of the regular ending, as the aligner wants them, or empty.
        is_certain: whether it is taken whatever the letters say of it (-'s).
    """

    sounds: str
    stress: str
    parts: tuple[str, str]
    ending: str
    is_certain: bool = False


def guess_reading(word: str, lexicon: Lexicon) -> Guess:
    """Read a word that the lexicon lacks.

    Args:
        word: letters, with or without accents; apostrophes and hyphens too.
        lexicon: the open lexicon. Whether it has the word is not asked.

    Raises:
        UnknownWordError: if there is another sign in it, it is too long, or it
            cannot be said as a word (*hmpf*).

    >>> with Lexicon() as lexicon:
    ...     guess_reading("skalope", lexicon).said.origin
    'guess'
    """
    letters = plain_letters(word)
    reader = lexicon.reader()
    ways = reader.ways(letters, count=OTHER_WAYS)
    if not ways:
        raise UnknownWordError(f"{word!r} cannot be said as a word", "spell it out")
    also = [_pronounced(reader, way).normal for way in ways if way.price <= ways[0].price + LIKELY]
    for found in (*_inflected(letters, lexicon), *_compounds(letters, lexicon)):
        chunks = _aligned(letters, found, lexicon)
        if _letters_agree(reader, found, chunks, lexicon, ways[0]):
            codes = {row.correspondence: row.code for row in lexicon.correspondences()}
            said = _pronunciation(found.sounds, found.stress, encode(chunks, codes))
            return _guess(letters, said, chunks, also, found.parts)
    said = _pronounced(reader, ways[0])
    return _guess(letters, said, lexicon.chunks(said.chunks), also)


def plain_letters(word: str) -> str:
    """Return a word in lower case without accents, so that each letter is one of a to z.

    Args:
        word: as it was typed.

    Raises:
        UnknownWordError: if some other sign is in it, or it is empty or too long.

    >>> plain_letters("Zoë’s")
    "zoe's"
    """
    signs = (_SIGNS.get(char, char) for char in unicodedata.normalize("NFD", word.strip().lower()))
    letters = "".join(char for char in signs if not unicodedata.combining(char))
    odd = next((c for c in letters if c not in "'-" and not ("a" <= c <= "z")), "")
    if odd or not any(map(str.isalpha, letters)):
        raise UnknownWordError(f"{word!r} cannot be sounded out", "a word in letters")
    if len(letters) > LONGEST:
        raise UnknownWordError(f"that word has more than {LONGEST} letters", "a shorter word")
    return letters


def _guess(
    word: str,
    said: Pronunciation,
    chunks: tuple[Chunk, ...],
    also: list[str],
    parts: tuple[str, ...] = (),
) -> Guess:
    others = tuple(normal for normal in dict.fromkeys(also) if normal != said.normal)
    return Guess(word, said, chunks, parts, others)


def _pronounced(reader: Reader, way: Way) -> Pronunciation:
    signs = [reader.signs[char] for char in way.signs]
    return _pronunciation(
        "".join(sign.sounds for sign in signs),
        "".join(sign.stress for sign in signs),
        "".join(sign.code for sign in signs),
    )


def _pronunciation(sounds: str, stress: str, chunks: str) -> Pronunciation:
    normal = normal_form(sounds, stress)
    vowels = [place for place, char in enumerate(sounds) if char in VOWELS]
    stressed = [place for place, digit in zip(vowels, stress, strict=True) if digit != "0"]
    rhyme = normal[stressed[-1] :] if stressed else normal
    return Pronunciation(sounds, stress, normal, rhyme, origin=GUESSED, usable=False, chunks=chunks)


def _inflected(word: str, lexicon: Lexicon) -> Iterator[_FromParts]:
    """Yield the ways to read a word as a known word and a regular ending."""
    for stem, ending, letters in _stems(word):
        entry = lexicon.get(stem) if len(stem) > 1 else None
        for said in entry.usable_pronunciations[:1] if entry else ():
            suffix = _SAID[ending](said.sounds)
            sounds, stress = add_suffix(said.sounds, said.stress, suffix)
            shown = ending if "'" in ending else f"-{ending}"
            yield _FromParts(sounds, stress, (stem, shown), letters, "'" in ending)


_SAID: dict[str, Callable[[str], str]] = {
    "'s": s_suffix,
    "s'": lambda _: "",
    "s": s_suffix,
    "ed": ed_suffix,
    "ing": lambda _: "ɪŋ",
}


def _stems(word: str) -> Iterator[tuple[str, str, str]]:
    """Yield what may be the base of a word, with the ending and its letters for the aligner."""
    if word.endswith("'s"):
        yield word[:-2], "'s", ""
    elif word.endswith("s'"):
        yield word[:-1], "s'", ""
    elif word.endswith("ies"):
        yield f"{word[:-3]}y", "s", "ies"
        yield word[:-1], "s", "s"
    elif word.endswith("s") and not word.endswith("ss"):
        yield word[:-1], "s", "s"
        if word.endswith(("ses", "xes", "zes", "ches", "shes", "oes")):
            yield word[:-2], "s", "s"
    elif word.endswith("ied"):
        yield f"{word[:-3]}y", "ed", "ed"
    elif word.endswith("ed"):
        yield from ((stem, "ed", "ed") for stem in (word[:-1], *_before_vowel(word[:-2])))
    elif word.endswith("ing"):
        yield from ((stem, "ing", "") for stem in (f"{word[:-3]}e", *_before_vowel(word[:-3])))


def _before_vowel(stem: str) -> Iterator[str]:
    if not _MUST_DOUBLE.fullmatch(stem):
        yield stem
    if len(stem) > _SHORTEST_PART and stem[-1] == stem[-2]:
        yield stem[:-1]


def _compounds(word: str, lexicon: Lexicon) -> Iterator[_FromParts]:
    """Yield the ways to read a word as two known words, those with commoner words first."""
    found = []
    for cut in range(_SHORTEST_PART, len(word) - _SHORTEST_PART + 1):
        first, second = lexicon.get(word[:cut]), lexicon.get(word[cut:].removeprefix("-"))
        if first and second and _may_join(first) and _may_join(second):
            found.append((min(first.zipf, second.zipf), first, second))
    for _, first, second in sorted(found, key=lambda pair: -pair[0]):
        head, tail = first.usable_pronunciations[0], second.usable_pronunciations[0]
        # The first word of a compound has the stress (BLACKbird).
        stress = head.stress + tail.stress.replace("1", "2")
        parts = (first.word, second.word)
        yield _FromParts(head.sounds + tail.sounds, stress, parts, "")


def _may_join(entry: Entry) -> bool:
    return (
        0 < entry.band <= _HIGHEST_PART_BAND
        and not entry.is_heteronym
        and len(entry.word) >= _SHORTEST_PART
        and bool(entry.usable_pronunciations)
    )


def _aligned(word: str, found: _FromParts, lexicon: Lexicon) -> tuple[Chunk, ...]:
    counted = lexicon.correspondences()
    inventory = arrange(row.correspondence for row in counted)
    total = sum(row.words + _UNSEEN for row in counted)
    prices = [-math.log((row.words + _UNSEEN) / total) for row in counted]
    job = set_ending_apart(inventory, word, found.sounds, found.stress, found.ending)
    return align(inventory, prices, job)


def _letters_agree(
    reader: Reader,
    found: _FromParts,
    chunks: tuple[Chunk, ...],
    lexicon: Lexicon,
    best: Way,
) -> bool:
    """Whether the letters may be read so; *pageant* is not page and ant."""
    if not chunks or found.is_certain:
        return bool(chunks)
    codes = {row.correspondence: row.code for row in lexicon.correspondences()}
    characters: dict[Sign, str] = {sign: char for char, sign in reader.signs.items()}
    signs = [characters.get(s, "") for s in signs_of(chunks, found.sounds, found.stress, codes)]
    worst = best.price + _LETTERS_AGAINST_PARTS
    return bool(signs) and all(signs) and reader.price("".join(signs)) <= worst
