"""The 39 phonemes of the CMU Pronouncing Dictionary and their features.

Each phoneme has a one-character code, so a pronunciation is a short string:
dropping the first sound is ``sounds[1:]``. This module is the only place that
knows the codes. Stress is kept beside the sounds as one digit a vowel.

Sources: phones and stress digits, CMUdict (``cmudict.phones``). Features:
International Phonetic Association (1999), *Handbook of the IPA*, "American
English". Which sounds can be held: every sound whose airflow does not stop;
/h/ and the glides are left out because a child cannot stretch them without
making another sound (common practice, no source).
"""

from __future__ import annotations

from enum import StrEnum
from typing import NamedTuple


class Kind(StrEnum):
    """Manner of articulation."""

    VOWEL = "vowel"
    STOP = "stop"
    AFFRICATE = "affricate"
    FRICATIVE = "fricative"
    NASAL = "nasal"
    LIQUID = "liquid"
    GLIDE = "glide"


class Phoneme(NamedTuple):
    """One sound of US English.

    Attributes:
        arpabet: symbol in CMUdict, without a stress digit.
        code: the one character that stands for it in a stored pronunciation.
        ipa: symbol of the International Phonetic Alphabet (stressed, if a vowel).
        marks: sign of US dictionaries (macron, breve, digraph).
        kind: manner of articulation.
        voiced: whether the voice sounds.
        sibilant: whether it hisses (these take a whole syllable before -s).
        holdable: whether it can be held without adding another sound.
        ipa_weak, marks_weak: the signs in an unstressed syllable where they differ.
        marks_before_r: the mark before R where it differs (car is kär).
    """

    arpabet: str
    code: str
    ipa: str
    marks: str
    kind: Kind
    voiced: bool
    sibilant: bool = False
    holdable: bool = True
    ipa_weak: str = ""
    marks_weak: str = ""
    marks_before_r: str = ""

    @property
    def is_vowel(self) -> bool:
        """Whether it is the nucleus of a syllable."""
        return self.kind is Kind.VOWEL


def _vowel(
    arpabet: str,
    code: str,
    ipa: str,
    marks: str,
    *,
    ipa_weak: str = "",
    marks_weak: str = "",
    marks_before_r: str = "",
) -> Phoneme:
    return Phoneme(
        arpabet,
        code,
        ipa,
        marks,
        Kind.VOWEL,
        True,
        ipa_weak=ipa_weak,
        marks_weak=marks_weak,
        marks_before_r=marks_before_r,
    )


PHONEMES: tuple[Phoneme, ...] = (
    _vowel("AA", "ɑ", "ɑ", "ŏ", marks_before_r="ä"),
    _vowel("AE", "æ", "æ", "ă"),
    _vowel("AH", "ʌ", "ʌ", "ŭ", ipa_weak="ə", marks_weak="ə"),
    _vowel("AO", "ɔ", "ɔ", "ô"),
    _vowel("AW", "W", "aʊ", "ou"),
    _vowel("AY", "I", "aɪ", "ī"),
    _vowel("EH", "ɛ", "ɛ", "ĕ", marks_before_r="â"),
    _vowel("ER", "ɝ", "ɝ", "ûr", ipa_weak="ɚ", marks_weak="ər"),
    _vowel("EY", "E", "eɪ", "ā"),
    _vowel("IH", "ɪ", "ɪ", "ĭ", marks_before_r="î"),
    _vowel("IY", "i", "i", "ē", marks_before_r="î"),
    _vowel("OW", "O", "oʊ", "ō"),
    _vowel("OY", "Y", "ɔɪ", "oi"),
    _vowel("UH", "ʊ", "ʊ", "o͝o"),
    _vowel("UW", "u", "u", "o͞o"),
    Phoneme("B", "b", "b", "b", Kind.STOP, True, holdable=False),
    Phoneme("D", "d", "d", "d", Kind.STOP, True, holdable=False),
    Phoneme("G", "ɡ", "ɡ", "g", Kind.STOP, True, holdable=False),
    Phoneme("K", "k", "k", "k", Kind.STOP, False, holdable=False),
    Phoneme("P", "p", "p", "p", Kind.STOP, False, holdable=False),
    Phoneme("T", "t", "t", "t", Kind.STOP, False, holdable=False),
    Phoneme("CH", "ʧ", "tʃ", "ch", Kind.AFFRICATE, False, sibilant=True, holdable=False),
    Phoneme("JH", "ʤ", "dʒ", "j", Kind.AFFRICATE, True, sibilant=True, holdable=False),
    Phoneme("DH", "ð", "ð", "t͟h", Kind.FRICATIVE, True),
    Phoneme("F", "f", "f", "f", Kind.FRICATIVE, False),
    Phoneme("HH", "h", "h", "h", Kind.FRICATIVE, False, holdable=False),
    Phoneme("S", "s", "s", "s", Kind.FRICATIVE, False, sibilant=True),
    Phoneme("SH", "ʃ", "ʃ", "sh", Kind.FRICATIVE, False, sibilant=True),
    Phoneme("TH", "θ", "θ", "th", Kind.FRICATIVE, False),
    Phoneme("V", "v", "v", "v", Kind.FRICATIVE, True),
    Phoneme("Z", "z", "z", "z", Kind.FRICATIVE, True, sibilant=True),
    Phoneme("ZH", "ʒ", "ʒ", "zh", Kind.FRICATIVE, True, sibilant=True),
    Phoneme("M", "m", "m", "m", Kind.NASAL, True),
    Phoneme("N", "n", "n", "n", Kind.NASAL, True),
    Phoneme("NG", "ŋ", "ŋ", "ng", Kind.NASAL, True),
    Phoneme("L", "l", "l", "l", Kind.LIQUID, True),
    Phoneme("R", "r", "ɹ", "r", Kind.LIQUID, True),
    Phoneme("W", "w", "w", "w", Kind.GLIDE, True, holdable=False),
    Phoneme("Y", "j", "j", "y", Kind.GLIDE, True, holdable=False),
)

BY_CODE: dict[str, Phoneme] = {phoneme.code: phoneme for phoneme in PHONEMES}
BY_ARPABET: dict[str, Phoneme] = {phoneme.arpabet: phoneme for phoneme in PHONEMES}

VOWELS: frozenset[str] = frozenset(p.code for p in PHONEMES if p.is_vowel)
SIBILANTS: frozenset[str] = frozenset(p.code for p in PHONEMES if p.sibilant)
VOICELESS: frozenset[str] = frozenset(p.code for p in PHONEMES if not p.voiced)


def code(arpabet: str) -> str:
    """Return the one-character code of a CMUdict symbol without stress.

    Args:
        arpabet: for example ``"SH"``.

    Raises:
        KeyError: if it is not one of the 39.

    >>> code("SH")
    'ʃ'
    """
    return BY_ARPABET[arpabet].code
