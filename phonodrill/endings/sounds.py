"""What an ending says in a word, and how the whole form is said."""

from __future__ import annotations

from phonodrill.endings.conditions import BaseWord
from phonodrill.endings.rule import Rule
from phonodrill.endings.suffix import SOUNDS_OF
from phonodrill.lexicon.entry import DERIVED, Entry, Pronunciation
from phonodrill.sounds.inventory import VOWELS
from phonodrill.sounds.normal import normal_form
from phonodrill.sounds.notation import Notation, joined, symbols
from phonodrill.sounds.suffixes import SUFFIXES, add_ly, add_suffix

SOUNDS = SOUNDS_OF["s"]
"""The labels of what -s says, in the order in which a sort shows them."""

_LABELS = {"ɝ": "ɚ"}
_CODES = {"aɪz": "Iz", "ɚ": "ɝ"}
_VOWELS_OF_IES = {"i": "iz", "I": "aɪz"}


def label_of(base: BaseWord, suffix: str, ending: str, rule: Rule | None = None) -> str:
    """Return what an ending says after a base, as one of the labels of ``SOUNDS_OF``.

    Words spelled -ies are ``iz`` or ``aɪz`` after those vowels; a base in f whose
    plural is spelled ves is voiced; a form that shows no ending says nothing more.

    Args:
        base: the base word.
        suffix: which ending.
        ending: what the eye sees: s, es, ies, ves, ed...
        rule: the spelling rule, where it is known.
    """
    if not ending:
        return ""
    if rule and rule.heard:
        return rule.heard
    return label_of_last(base.last, suffix, ending)


def label_of_last(last: str, suffix: str, ending: str) -> str:
    """Return what an ending says after a base that ends in this sound.

    >>> label_of_last("t", "ed", "ed"), label_of_last("I", "s", "ies")
    ('ɪd', 'aɪz')
    """
    if suffix == "s":
        return label_of_s(last, ending)
    sound = SUFFIXES[suffix](last)
    return _LABELS.get(sound, sound)


def codes_of(label: str) -> str:
    """Return the codes of a label, one a phoneme.

    >>> codes_of("aɪz"), codes_of("ɪd")
    ('Iz', 'ɪd')
    """
    return _CODES.get(label, label)


def label_of_s(last: str, ending: str) -> str:
    """Return the label of -s after a base that ends in this sound.

    >>> label_of_s("I", "ies"), label_of_s("f", "ves"), label_of_s("ʤ", "s")
    ('aɪz', 'z', 'ɪz')
    """
    if ending == "ves":
        return "z"
    if ending == "ies" and last in _VOWELS_OF_IES:
        return _VOWELS_OF_IES[last]
    return SUFFIXES["s"](last)


_TURNED = {"man to men": ("æn", "ɛn"), "us to i": ("ʌs", "I")}
"""Plurals without a heard ending -> the last sounds of the base and what they turn into."""


def say_form(
    base: BaseWord,
    suffix: str,
    entry: Entry | None,
    rule: Rule | None = None,
    heard: str = "",
) -> Pronunciation:
    """Say base + ending: as the dictionary does if that fits the rule, else built.

    Args:
        base: the base, with its pronunciation.
        suffix: which ending.
        entry: the form in the lexicon, or None.
        rule: the spelling rule, where it is known.
        heard: for a form irregular in sound, the codes it must end in.
    """
    built = build(base, suffix, rule)
    if entry is None:
        return built
    ways = [*entry.usable_pronunciations, *entry.pronunciations]
    if heard:
        return next((way for way in ways if way.shown.endswith(heard)), ways[0])
    # Where no ending is heard, only the dictionary knows what is: people of person.
    other = ways[0] if rule and not rule.ending else built
    return next((p for p in entry.pronunciations if p.normal == built.normal), other)


def heard_in(base: BaseWord, suffix: str, entry: Entry | None, rule: Rule | None) -> BaseWord:
    """Say a base as it is said inside a form: the verb *close* of *closed*, not the adjective.

    Args:
        base: the base, with all ways to say it.
        suffix: which ending.
        entry: the form in the lexicon, or None.
        rule: the spelling rule, where it is known.
    """
    if entry is None or len(base.ways) == 1:
        return base
    heard = {way.normal for way in entry.usable_pronunciations}
    for way in base.ways:
        spoken = base._replace(said=way, last=way.sounds[-1])
        if build(spoken, suffix, rule).normal in heard:
            return spoken
    return base


def build(base: BaseWord, suffix: str, rule: Rule | None = None) -> Pronunciation:
    """Join the sounds of an ending to those of a base whose sounds are known.

    Raises:
        ValueError: if they are not.
    """
    if base.said is None:
        raise ValueError(base.word)
    sounds, stress = base.said.sounds, base.said.stress
    if rule and not rule.ending:
        before, after = _TURNED.get(rule.name, ("", ""))
        joined = sounds.removesuffix(before) + after * sounds.endswith(before), stress
    elif rule and rule.heard:
        # The last sounds of the base turn too: f to v, and the is of crisis to /iz/.
        kept = sounds[:-1] + "v" if rule.heard == "z" else sounds[:-2]
        joined = kept + rule.heard, stress
    elif suffix == "ly":
        joined = add_ly(sounds, stress, drops_vowel=base.word.endswith("le"))
    else:
        joined = add_suffix(sounds, stress, SUFFIXES[suffix](sounds))
    return Pronunciation(*joined, normal_form(*joined), origin=DERIVED)


def written_sound(label: str, notation: Notation) -> str:
    """Write what an ending says between slashes; nothing if it says nothing of its own.

    Args:
        label: one of the labels of ``SOUNDS_OF``.
        notation: how sounds are written.
    """
    if not label or notation is Notation.IPA:
        return f"/{label}/" if label else ""
    codes = codes_of(label)
    # That of flies is the vowel of fly; the others are weak.
    digit = "1" if codes == "Iz" else "0"
    stress = digit * sum(char in VOWELS for char in codes)
    return f"/{joined(symbols(codes, stress, notation), notation)}/"
