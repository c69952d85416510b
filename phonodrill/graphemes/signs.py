"""Signs: what reading a word aloud is made of.

A sign is a correspondence together with the very sounds and stress it has in a
word; the e that closes a split vowel is a sign of its own. A word is read sign
by sign, so a model of which signs follow each other is a model of reading.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from phonodrill.graphemes.chunk import CLOSING_CODE, Chunk
from phonodrill.graphemes.correspondence import SPLIT, Correspondence
from phonodrill.sounds.inventory import VOWELS

EDGE = "0"
"""Stands for both ends of a word; no correspondence has a digit as its code."""


class Sign(NamedTuple):
    """A correspondence as it is said in a word.

    Attributes:
        code: the character of the correspondence, or the one that closes a split vowel.
        said: codes of its sounds, each vowel with its stress digit behind it.
    """

    code: str
    said: str

    @property
    def sounds(self) -> str:
        """Its sounds without stress."""
        return "".join(char for char in self.said if not char.isdigit())

    @property
    def stress(self) -> str:
        """One digit a vowel."""
        return "".join(filter(str.isdigit, self.said))


def signs_of(
    chunks: Sequence[Chunk], sounds: str, stress: str, code_of: Mapping[Correspondence, str]
) -> list[Sign]:
    """Write a word's pronunciation as signs, in the order of its letters.

    Args:
        chunks: the word's letters tied to its sounds.
        sounds: codes, one a phoneme.
        stress: one digit a vowel.
        code_of: the character of each correspondence.

    Returns:
        The signs; none if some letters stand for no correspondence.
    """
    digits = iter(stress)
    said = [char + next(digits) if char in VOWELS else char for char in sounds]
    found: dict[int, Sign] = {}
    for chunk in chunks:
        row = chunk.correspondence
        if row is None:
            return []
        found[chunk.letters[0]] = Sign(code_of[row], "".join(said[i] for i in chunk.sounds))
        if SPLIT in row.spelling:
            found[chunk.letters[-1]] = Sign(CLOSING_CODE, "")
    return [found[place] for place in sorted(found)]
