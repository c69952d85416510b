"""A correspondence: a spelling with the sounds it stands for.

A split vowel is written with a low line where other letters stand between its
two: ``a_e`` in *cake*. The weak vowel of unstressed syllables has the code
``ə`` here; in a pronunciation it is an unstressed ʌ or ɪ.
"""

from __future__ import annotations

from enum import StrEnum
from typing import NamedTuple

from phonodrill.sounds.inventory import BY_ARPABET, VOWELS
from phonodrill.sounds.normal import WEAK
from phonodrill.sounds.notation import Notation, symbols

WEAK_ARPABET = "AX"
"""How the table writes the weak vowel (extended ARPAbet)."""
SPLIT = "_"
VOWEL_LETTERS = frozenset("aeiouy")


class Kind(StrEnum):
    """What sort of spelling it is."""

    SINGLE = "single"
    DOUBLED = "doubled"
    DIGRAPH = "digraph"
    TRIGRAPH = "trigraph"
    FOUR_LETTER = "four-letter"
    SPLIT_VOWEL = "split vowel"
    R_VOWEL = "r-vowel"
    SILENT_LETTER = "silent-letter"
    ENDING = "ending"


class Correspondence(NamedTuple):
    """A spelling and the sounds it stands for.

    Attributes:
        spelling: letters; ``a_e`` for a split vowel.
        sounds: codes of the sounds, none for a silent letter; where two
            dictionaries' habits differ (EH R or AE R), the first is the main one.
        kind: sort of spelling.
        is_regular: whether it is taught as a pattern; the others are the odd
            part of a few words.
        example: a word that has it.
    """

    spelling: str
    sounds: tuple[str, ...]
    kind: Kind
    is_regular: bool
    example: str

    @property
    def sound(self) -> str:
        """Codes of its main sounds, possibly none."""
        return self.sounds[0]

    @property
    def is_weak(self) -> bool:
        """Whether it is a vowel spelling in an unstressed syllable."""
        return self.sound == WEAK

    @property
    def is_before_rr(self) -> bool:
        """Whether it is an r-vowel without r: the vowel of *carrot*, which stands before rr."""
        return self.kind is Kind.R_VOWEL and "r" not in self.spelling

    @property
    def is_vowel(self) -> bool:
        """Whether it spells a vowel, with or without other sounds."""
        return any(char == WEAK or char in VOWELS for char in self.sound)


def parse_sounds(arpabet: str) -> tuple[str, ...]:
    """Read the sounds of a correspondence as the table writes them.

    Args:
        arpabet: symbols without stress, ``AX`` the weak vowel; variants parted by ``/``.

    Raises:
        KeyError: if a symbol is not known.

    >>> parse_sounds("IH R / IY R")
    ('ɪr', 'ir')
    """
    known = {symbol: phoneme.code for symbol, phoneme in BY_ARPABET.items()}
    known[WEAK_ARPABET] = WEAK
    return tuple(
        "".join(known[symbol] for symbol in variant.split()) for variant in arpabet.split("/")
    )


def write_sounds(sounds: str, notation: Notation) -> str:
    """Write codes without stress, the weak vowel among them, parted by spaces.

    >>> write_sounds("ɑr", Notation.MARKS), write_sounds("əl", Notation.ARPABET)
    ('ä r', 'AX L')
    """
    weak = WEAK_ARPABET if notation is Notation.ARPABET else WEAK
    if WEAK in sounds:
        return " ".join(weak if c == WEAK else write_sounds(c, notation) for c in sounds)
    written = symbols(sounds, "1" * sum(c in VOWELS for c in sounds), notation)
    return " ".join(sign.rstrip("1") for sign in written)
