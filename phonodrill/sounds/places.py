"""Where in a word a sound is: cut a pronunciation at a named place.

Works on codes and on normal forms alike, also on the forms that an accent
makes of them. What may not be parted stays whole: a vowel and the R behind it
(*hear* without its last sound is not quite *he*), a consonant and the /y/ of
long u (*cute*, *few*).
"""

from __future__ import annotations

from enum import StrEnum
from typing import NamedTuple

UNKNOWN = "?"
"""Stands for a vowel that nobody can tell; it is like no other."""
NUCLEI: frozenset[str] = frozenset("ɑæʌɔWIɛɝEɪiOYʊuəɒa" + UNKNOWN)
"""Codes of vowels, and the signs that normal forms and accents use for vowels."""


class Position(StrEnum):
    """Where in the word the sound is that a task is about, or how finely it is taken apart."""

    FIRST = "first"
    LAST = "last"
    VOWEL = "vowel"
    ONSET2 = "onset2"
    CODA1 = "coda1"
    SYLLABLE = "syllable"
    ONSET = "onset"
    RIME = "rime"
    EACH = "each"


class Cut(NamedTuple):
    """A pronunciation in three parts, the middle one the part meant."""

    left: str
    middle: str
    right: str


def count_nuclei(sounds: str) -> int:
    """Count the vowels of a form.

    >>> count_nuclei("ræbət")
    2
    """
    return sum(code in NUCLEI for code in sounds)


def cut_at(sounds: str, at: Position, *, r_joins: bool = False) -> Cut | None:
    """Cut a form at a place.

    Args:
        sounds: codes or a normal form.
        at: first, last, vowel, onset2, coda1, onset or rime. Vowel, onset and
            rime are those of words of one syllable.
        r_joins: whether a vowel and the R that closes its syllable are one sound.

    Returns:
        The three parts, or None where the word has no such place.

    >>> cut_at("slɪp", Position.ONSET2)
    Cut(left='s', middle='l', right='ɪp')
    >>> cut_at("nɛst", Position.CODA1)
    Cut(left='nɛ', middle='s', right='t')
    >>> cut_at("kɑr", Position.LAST)
    >>> cut_at("kɑr", Position.LAST, r_joins=True)
    Cut(left='k', middle='ɑr', right='')
    """
    if len(sounds) < 2:  # noqa: PLR2004
        return None
    if at is Position.FIRST:
        closes = _r_closes(sounds, 1)
        end = 1 + closes
        fits = end < len(sounds) and (r_joins or not closes)
        return Cut("", sounds[:end], sounds[end:]) if fits else None
    if at is Position.LAST:
        return _cut_last(sounds, r_joins=r_joins)
    if at is Position.ONSET2:
        fits = _is_cluster(sounds[:2]) and sounds[2:3] in NUCLEI and sounds[1] != "j"
        return Cut(sounds[0], sounds[1], sounds[2:]) if fits else None
    vowel = max(index for index, code in enumerate(sounds) if code in NUCLEI or index == 0)
    if at is Position.CODA1:
        coda = sounds[vowel + 1 :]
        fits = len(coda) > 1 and sounds[vowel] in NUCLEI and coda[0] != "r"
        return Cut(sounds[: vowel + 1], coda[0], coda[1:]) if fits else None
    return _cut_syllable(sounds, vowel, at, r_joins=r_joins)


def _cut_last(sounds: str, *, r_joins: bool) -> Cut | None:
    if sounds[-1] != "r" or sounds[-2] not in NUCLEI:
        return Cut(sounds[:-1], sounds[-1], "")
    return Cut(sounds[:-2], sounds[-2:], "") if r_joins and len(sounds) > 2 else None  # noqa: PLR2004


def _cut_syllable(sounds: str, vowel: int, at: Position, *, r_joins: bool) -> Cut | None:
    """Cut a word of one syllable at its vowel, onset or rime."""
    if count_nuclei(sounds) != 1 or sounds[vowel] not in NUCLEI:
        return None
    onset = sounds[:vowel]
    if len(onset) > 1 and onset[-1] == "j":
        return None
    closes = _r_closes(sounds, vowel + 1)
    end = vowel + 1 + closes
    cuts = {
        Position.ONSET: Cut("", onset, sounds[vowel:]) if onset else None,
        Position.RIME: Cut(onset, sounds[vowel:], "") if onset else None,
        Position.VOWEL: Cut(onset, sounds[vowel:end], sounds[end:])
        if r_joins or not closes
        else None,
    }
    return cuts.get(at)


def _r_closes(sounds: str, index: int) -> bool:
    """Whether an R at ``index`` follows a vowel and closes its syllable."""
    return (
        sounds[index - 1] in NUCLEI
        and sounds.startswith("r", index)
        and (index + 1 == len(sounds) or sounds[index + 1] not in NUCLEI)
    )


def _is_cluster(pair: str) -> bool:
    return len(pair) == 2 and NUCLEI.isdisjoint(pair)  # noqa: PLR2004
