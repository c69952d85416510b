"""What counts as one sound when sounds are counted or taken off.

Policy:

* ER (bird, butter) is one sound; affricates and diphthongs are one sound.
* A vowel followed by R in the same syllable (car, horn) is two sounds, or one
  with ``r_vowels=RVowels.ONE``: both countings are taught.
* The letter x is two sounds (/k s/), qu is two (/k w/): sounds are counted,
  never letters.
* A consonant and the /y/ of long u (cute, few) are two sounds, but are never
  parted, and such words are not counted.
* Behind /s/ a stop has no puff of air (stop, spin): phonemically *stop* without
  /s/ is *top*; the teacher is told to say it afresh.
* Words with a vowel + R are left out of counting unless a way is chosen.
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


def stop_after_s(sounds: str) -> bool:
    """Whether a word begins with /s/ and a voiceless stop.

    Behind /s/ the stop has no puff of air: cut off a recording, *stop* without
    /s/ is heard as *dop* (Lotz, Abramson, Gerstman, Ingemann & Nemser 1960). So
    the answer has to be said afresh.

    >>> stop_after_s("stɑp"), stop_after_s("slɪp")
    (True, False)
    """
    return sounds[:2] in ("st", "sp", "sk")


def hides_y(sounds: str) -> bool:
    """Whether a consonant is followed by the /y/ of long u, as in cute, few, music.

    The dictionary counts /k y u t/, a class often counts three: such words are
    kept out of counting, and the /y/ is never taken off or changed by itself.

    >>> hides_y("kjut"), hides_y("jɛs")
    (True, False)
    """
    return any(code == "j" and index for index, code in enumerate(sounds))


def has_r_vowel(sounds: str) -> bool:
    """Whether a vowel is colored by an R in its syllable: bird, car, horn.

    >>> has_r_vowel("kɑr"), has_r_vowel("bɝd"), has_r_vowel("ræt")
    (True, True, False)
    """
    return "ɝ" in sounds or any(len(unit) > 1 for unit in split_units(sounds, RVowels.ONE))
