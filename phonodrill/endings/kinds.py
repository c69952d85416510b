"""What a base ends in, as a teacher groups the words of a lesson."""

from __future__ import annotations

from phonodrill.endings.classify import Ending
from phonodrill.endings.rules import RULES_OF
from phonodrill.sounds.inventory import SIBILANTS, VOICELESS, VOWELS
from phonodrill.sounds.normal import WEAK

TAILS = ("tch", "ch", "sh", "ss", "zz", "s", "x", "z", "o")
"""Last letters of bases that take es, each a kind of its own."""
_ING = ("ɪŋ", f"{WEAK}ŋ")
_SILENT_E_TAILS = ("ce", "dge", "ge", "se", "ze", "che", "gue", "xe")


def kind_of(ending: Ending) -> str:
    """Name what the base of a word ends in.

    Bases that take es are told apart by their letters, other bases by the condition
    of their rule; where that is any other base, by the kind of their last sound.

    Args:
        ending: the word, taken apart.
    """
    if ending.ending == "es" and ending.suffix == "s":
        return next((tail for tail in TAILS if ending.base.endswith(tail)), "other")
    if ending.sound == "ɪz" and ending.base.endswith("e"):
        tail = next((tail for tail in _SILENT_E_TAILS if ending.base.endswith(tail)), "e")
        return f"silent e: {tail}"
    rule = next((rule for rule in RULES_OF[ending.suffix] if rule.name == ending.rule), None)
    if rule and (rule.name != f"add {ending.suffix}" or ending.suffix == "ly"):
        return rule.when
    return _by_sound(ending.said.sounds[: -len(ending.sound.replace("aɪ", "I")) or None])


def rough_kind(form: str, base: str, normal: str) -> tuple[str, ...]:
    """Tell forms apart about as :func:`kind_of` does, before they are taken apart.

    Args:
        form: with its ending.
        base: its base word.
        normal: normal form of how the form is said.

    Returns:
        Letters of the base that count, the letters that change, and what is heard.

    >>> rough_kind("hopping", "hop", "hɑpəŋ"), rough_kind("cries", "cry", "krIz")
    (('', '', 'doubled', 'an unvoiced sound', 'ŋ'), ('', 'y', 'ies', 'a vowel sound', 'z'))
    """
    tails = (*TAILS, *_SILENT_E_TAILS)
    tail = next((tail for tail in tails if base.endswith(tail)), "")
    pairs = enumerate(zip(form, base, strict=False))
    kept = next((place for place, (a, b) in pairs if a != b), min(len(form), len(base)))
    off, on = base[kept:], form[kept:]
    is_doubled = not off and on[:1] == base[-1:]
    sounds = normal[:-2] if normal.endswith(_ING) else normal[:-1]
    return tail, off, "doubled" if is_doubled else on, _by_sound(sounds), normal[-1:]


def _by_sound(sounds: str) -> str:
    last = sounds[-1:]
    if last in VOWELS:
        return "a vowel sound"
    if last in "td":
        return "t or d"
    if last in SIBILANTS:
        return "a hissing sound"
    return "an unvoiced sound" if last in VOICELESS else "a voiced consonant"
