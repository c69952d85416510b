"""Read and write pronunciations: ARPAbet, IPA and US dictionary marks.

A pronunciation is two strings: ``sounds``, one code a phoneme, and ``stress``,
one digit a vowel (1 primary, 2 secondary, 0 none), as in CMUdict.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable
from enum import StrEnum

from phonodrill.errors import UnknownSoundError
from phonodrill.sounds.inventory import BY_ARPABET, BY_CODE, PHONEMES, VOWELS
from phonodrill.sounds.syllables import syllable_starts

_STRESS_SIGNS = {"1": "ˈ", "2": "ˌ", "0": ""}


class Notation(StrEnum):
    """How sounds are written for the reader."""

    IPA = "ipa"
    MARKS = "marks"
    ARPABET = "arpabet"


_SHORT_VOWELS = {"a": "æ", "e": "ɛ", "i": "ɪ", "o": "ɑ", "u": "ʌ"}
SCRIPT = Notation.MARKS
"""How sounds are written in what a teacher says, unless asked otherwise."""


def parse_arpabet(text: str) -> tuple[str, str]:
    """Turn CMUdict phones into ``(sounds, stress)``.

    Args:
        text: phones parted by spaces; a vowel carries a stress digit.

    Raises:
        UnknownSoundError: for a symbol that CMUdict does not have, a vowel
            without its digit, or a consonant with one.

    >>> parse_arpabet("T AO1 R CH IH0 Z")
    ('tɔrʧɪz', '10')
    """
    sounds = []
    stress = []
    for symbol in text.split():
        bare = symbol.rstrip("012")
        digit = symbol[len(bare) :]
        phoneme = BY_ARPABET.get(bare)
        if phoneme is None or len(digit) != int(phoneme.is_vowel):
            raise UnknownSoundError(
                f"{symbol!r} is not a CMUdict phone",
                "write phones as in CMUdict, each vowel with a stress digit: K AE1 T",
            )
        sounds.append(phoneme.code)
        stress.append(digit)
    return "".join(sounds), "".join(stress)


def symbols(sounds: str, stress: str, notation: Notation) -> list[str]:
    """Write each sound in a notation, without stress signs except in ARPAbet.

    Args:
        sounds: codes, one a phoneme.
        stress: one digit a vowel of ``sounds``.
        notation: IPA, dictionary marks or ARPAbet.

    Returns:
        One string a phoneme.

    >>> symbols("tɔrʧɪz", "10", Notation.MARKS)
    ['t', 'ô', 'r', 'ch', 'ĭ', 'z']
    """
    digits = iter(stress)
    return [
        _symbol(
            char,
            next(digits) if char in VOWELS else "",
            notation,
            before_r=sounds.startswith("r", place + 1),
        )
        for place, char in enumerate(sounds)
    ]


def joined(signs: Iterable[str], notation: Notation) -> str:
    """Join signs of sounds as the notation has them: those of ARPAbet stand apart.

    >>> joined(["IH0", "Z"], Notation.ARPABET), joined(["ɪ", "z"], Notation.IPA)
    ('IH0 Z', 'ɪz')
    """
    return (" " if notation is Notation.ARPABET else "").join(signs)


def arpabet(sounds: str, stress: str) -> str:
    """Write a pronunciation as CMUdict does.

    >>> arpabet("kæt", "1")
    'K AE1 T'
    """
    return " ".join(symbols(sounds, stress, Notation.ARPABET))


def ipa(sounds: str, stress: str, joint: int = 0) -> str:
    """Write a pronunciation in IPA, the stress sign before its syllable.

    One-syllable words carry no sign. Syllables are divided by maximal onset, but never
    across the joint of two words.

    >>> ipa("tɔrʧɪz", "10")
    'ˈtɔɹtʃɪz'
    """
    written = symbols(sounds, stress, Notation.IPA)
    if len(stress) > 1:
        for start, digit in zip(syllable_starts(sounds, joint), stress, strict=True):
            written[start] = _STRESS_SIGNS[digit] + written[start]
    return "".join(written)


def marks(sounds: str, stress: str) -> str:
    """Write a pronunciation in US dictionary marks, without stress.

    >>> marks("slOps", "1")
    'slōps'
    """
    return "".join(symbols(sounds, stress, Notation.MARKS))


def write(sounds: str, stress: str, notation: Notation, joint: int = 0) -> str:
    """Write a whole pronunciation in the notation asked for."""
    if notation is Notation.ARPABET:
        return arpabet(sounds, stress)
    if notation is Notation.IPA:
        return ipa(sounds, stress, joint)
    return marks(sounds, stress)


def parse_sound(text: str) -> str:
    """Find the phoneme a person means, in any of the three notations.

    Slashes around it are allowed. Dictionary marks and letters go before IPA
    and ARPAbet where a sign means two things: ``j`` is the first sound of
    *jelly*, ``y`` that of *yes*. A vowel letter without slashes is its short
    sound: ``i`` that of *pin*, ``/i/`` that of *me*.

    Args:
        text: one sound: ``sh``, ``/ʃ/``, ``SH``, ``ā``.

    Returns:
        The phoneme's code.

    Raises:
        UnknownSoundError: naming the nearest signs.

    >>> parse_sound("/sh/")
    'ʃ'
    """
    bare = unicodedata.normalize("NFC", text.strip().strip("/").strip())
    if bare in _SHORT_VOWELS and "/" not in text:
        return _SHORT_VOWELS[bare]
    for table in _readings():
        if bare in table:
            return table[bare]
    known = sorted({sign for table in _readings() for sign in table})
    import difflib

    near = difflib.get_close_matches(bare.lower(), known, n=3, cutoff=0.4)
    raise UnknownSoundError(
        f"unknown sound {text!r}",
        f"did you mean {', '.join(near)}?" if near else "write it like s, sh, ā, /ʃ/ or SH",
    )


def _readings() -> tuple[dict[str, str], ...]:
    nfc = unicodedata.normalize
    by_marks = {nfc("NFC", p.marks): p.code for p in PHONEMES} | {"ä": "ɑ", "â": "ɛ", "î": "ɪ"}
    by_ipa = {nfc("NFC", p.ipa): p.code for p in PHONEMES} | {"r": "r", "g": "ɡ"}
    by_arpabet = {p.arpabet: p.code for p in PHONEMES}
    return by_marks, by_ipa, by_arpabet


def _symbol(char: str, digit: str, notation: Notation, *, before_r: bool) -> str:
    phoneme = BY_CODE[char]
    if notation is Notation.ARPABET:
        return phoneme.arpabet + digit
    weak = digit == "0"
    if notation is Notation.IPA:
        return phoneme.ipa_weak if weak and phoneme.ipa_weak else phoneme.ipa
    if before_r and not weak and phoneme.marks_before_r:
        return phoneme.marks_before_r
    return phoneme.marks_weak if weak and phoneme.marks_weak else phoneme.marks
