"""What the endings -s and -ed say, from the last sound of the base.

Sources: Huddleston & Pullum (2005), *A Student's Introduction to English
Grammar*, pp. 267-269; Swan, *Basic English Usage*, section 302. The test for a
sibilant comes before the test for voice.
"""

from __future__ import annotations

from phonodrill.sounds.inventory import SIBILANTS, VOICELESS


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


def add_suffix(sounds: str, stress: str, suffix: str) -> tuple[str, str]:
    """Join a suffix to a base; a suffix with a vowel adds an unstressed syllable.

    >>> add_suffix("hɛʤ", "1", "ɪz")
    ('hɛʤɪz', '10')
    """
    return sounds + suffix, stress + "0" * ("ɪ" in suffix)
