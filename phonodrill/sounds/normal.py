"""The normal form in which two pronunciations are compared.

CMUdict writes the weak vowel of *-es*, *-ed* and many first syllables now as
AH0, now as IH0. So equality is decided on a form where

* stress digits are dropped,
* unstressed AH, IH and UH are one weak vowel, written ``ə``,
* a syllabic consonant is that weak vowel and the consonant (as CMUdict has it).

Everything else stays. Accents that merge more sounds are maps on top of this
(see :mod:`phonodrill.sounds.accents`).
"""

from __future__ import annotations

from phonodrill.sounds.inventory import VOWELS

WEAK = "ə"
_REDUCED = frozenset("ʌɪʊ")


def normal_form(sounds: str, stress: str) -> str:
    """Return the comparison form, one character a phoneme.

    Args:
        sounds: codes, one a phoneme.
        stress: one digit a vowel.

    >>> normal_form("hɔrsɪz", "10") == normal_form("hɔrsʌz", "10")
    True
    """
    digits = iter(stress)
    return "".join(
        WEAK if char in VOWELS and next(digits) == "0" and char in _REDUCED else char
        for char in sounds
    )
