"""What the endings say, from the last sounds of the base.

Sources: -s and -ed: Huddleston & Pullum (2005), *A Student's Introduction to
English Grammar*, pp. 267-269; Swan, *Basic English Usage*, section 302 (the
possessive as -s). The test for a sibilant comes before the test for voice.
-ing, -er, -est, -ly, -y: one sound each after any base (value from memory).
"""

from __future__ import annotations

from collections.abc import Callable

from phonodrill.sounds.inventory import SIBILANTS, VOICELESS, VOWELS


def s_suffix(sounds: str) -> str:
    """Return the sounds that -s or -es adds to a base: ``s``, ``z`` or ``ɪz``.

    >>> s_suffix("hɛʤ"), s_suffix("rOp"), s_suffix("ɡʌl")
    ('ɪz', 's', 'z')
    """
    last = sounds[-1]
    if last in SIBILANTS:
        return "ɪz"
    return "s" if last in VOICELESS else "z"


def ed_suffix(sounds: str) -> str:
    """Return the sounds that -ed adds to a base: ``t``, ``d`` or ``ɪd``.

    >>> ed_suffix("ʤʌmp"), ed_suffix("plE"), ed_suffix("wɑnt")
    ('t', 'd', 'ɪd')
    """
    last = sounds[-1]
    if last in "td":
        return "ɪd"
    return "t" if last in VOICELESS else "d"


SUFFIXES: dict[str, Callable[[str], str]] = {
    "s": s_suffix,
    "ed": ed_suffix,
    "ing": lambda _: "ɪŋ",
    "er": lambda _: "ɝ",
    "est": lambda _: "ɪst",
    "ly": lambda _: "li",
    "y": lambda _: "i",
    "'s": s_suffix,
}
"""Ending -> what it says, one code a phoneme, after a base with these sounds."""


def add_suffix(sounds: str, stress: str, suffix: str) -> tuple[str, str]:
    """Join a suffix to a base; a suffix with a vowel adds an unstressed syllable.

    >>> add_suffix("hɛʤ", "1", "ɪz")
    ('hɛʤɪz', '10')
    """
    return sounds + suffix, stress + "0" * sum(char in VOWELS for char in suffix)


def add_ly(sounds: str, stress: str, *, drops_vowel: bool) -> tuple[str, str]:
    """Join -ly to a base: two L are said as one.

    Args:
        sounds: the base, one code a phoneme.
        stress: one digit a vowel.
        drops_vowel: whether the weak vowel before a last L goes too (*simple*, but
            not *final*).

    >>> add_ly("sɪmpʌl", "10", drops_vowel=True), add_ly("fʊl", "1", drops_vowel=False)
    (('sɪmpli', '10'), ('fʊli', '10'))
    """
    if not sounds.endswith("l"):
        return add_suffix(sounds, stress, "li")
    if drops_vowel and sounds[-2:-1] in VOWELS and stress.endswith("0"):
        return add_suffix(sounds[:-2], stress[:-1], "li")
    return add_suffix(sounds[:-1], stress, "li")
