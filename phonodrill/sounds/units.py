"""What counts as one sound when sounds are counted or taken off.

Policy:

* ER (bird, butter) is one sound; affricates and diphthongs are one sound.
* A vowel followed by R in the same syllable (car, horn) is two sounds, or one
  with ``r_vowels=RVowels.ONE``: both countings are taught.
* The letter x is two sounds (/k s/), qu is two (/k w/): sounds are counted,
  never letters.
* tr and dr are two sounds, but children hear *ch* and *j* in them (Read 1971;
  Treiman 2004), so early items do not split them.
"""

from __future__ import annotations

from enum import StrEnum

from phonodrill.sounds.inventory import VOWELS


class RVowels(StrEnum):
    """How a vowel with a following R is counted."""

    TWO = "two"
    ONE = "one"


def split_units(sounds: str, r_vowels: RVowels = RVowels.TWO) -> list[str]:
    """Split a pronunciation into the units that are counted as one sound each.

    Args:
        sounds: codes, one a phoneme.
        r_vowels: whether a vowel + R before a consonant or the end is one unit.

    Returns:
        Strings of one code, or two where a vowel keeps its R.

    >>> split_units("kɑr")
    ['k', 'ɑ', 'r']
    >>> split_units("kɑr", RVowels.ONE)
    ['k', 'ɑr']
    """
    units: list[str] = []
    for i, char in enumerate(sounds):
        closes = char == "r" and (i + 1 == len(sounds) or sounds[i + 1] not in VOWELS)
        if r_vowels is RVowels.ONE and closes and units and units[-1] in VOWELS:
            units[-1] += char
        else:
            units.append(char)
    return units


def splits_heard_affricate(sounds: str, index: int) -> bool:
    """Whether taking off sound ``index`` parts a tr or dr.

    >>> splits_heard_affricate("trɪp", 0)
    True
    """
    return any(sounds[start : start + 2] in ("tr", "dr") for start in {index, max(index - 1, 0)})
