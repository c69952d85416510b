"""Compare CMUdict with a second, independent US dictionary (install time only).

The second dictionary is ``us_gold.json`` of the text-to-speech package
*misaki* (Apache 2.0), kept by hand in one-letter IPA. It writes flaps and
glottal stops where CMUdict writes T or D, and some syllabic consonants as one
sign. The comparison folds what no listener in a class is misled by:

* vowels that weaken (any of a short list without primary stress),
* cot/caught and wh/w,
* T and D where US speech has a flap,
* the weak vowel before a syllabic L or N,
* vowels before R that US English does not contrast (here, carry, tour, fire).
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from enum import StrEnum
from pathlib import Path

from phonodrill.lexicon.second_dictionary import read_listed
from phonodrill.sounds.accents import COT_CAUGHT
from phonodrill.sounds.inventory import VOWELS
from phonodrill.sounds.normal import WEAK


class Verdict(StrEnum):
    """What the second dictionary says of a pronunciation."""

    CONFIRMED = "confirmed"
    CONTRADICTED = "contradicted"
    NOT_LISTED = ""


SecondDictionary = Mapping[str, frozenset[str]]

# The second dictionary's signs that differ from our codes, one for one.
_SIGNS = str.maketrans({"A": "E", "ɹ": "r", "ᵊ": WEAK, "ᵻ": WEAK, "ʔ": "t", "ɾ": "t", "ɜ": "ɝ"})
_WEAKENING = frozenset("ʌɪʊɛæɑɔi" + WEAK)
_VOWELS = "".join(sorted(VOWELS | {WEAK}))
_FLAP = re.compile(f"(?<=[{_VOWELS}rn])[td](?=[{_VOWELS}])")
_BEFORE_R = str.maketrans({"i": "ɪ", "æ": "ɛ", "u": "ʊ"})
_R_VOWEL = re.compile("[iæu](?=r)")
_SYLLABIC = re.compile(f"{WEAK}(?=[ln])")


def read_second_dictionary(table: Path) -> dict[str, frozenset[str]]:
    """Read every listed pronunciation, folded for the comparison.

    Args:
        table: wordlists/second_dictionary.tsv.

    Returns:
        Lower-case word -> its folded pronunciations.

    Raises:
        TableError: naming the file and line that cannot be used.
    """
    return {
        word: frozenset(_fold_second(said) for said in variants)
        for word, variants in read_listed(table).items()
    }


def judge(sounds: str, stress: str, word: str, second: SecondDictionary) -> Verdict:
    """Judge one pronunciation of a word against the second dictionary.

    Args:
        sounds: codes, one a phoneme.
        stress: one digit a vowel.
        word: the spelling, lower case.
        second: what :func:`read_second_dictionary` returned.
    """
    listed = second.get(word)
    if not listed:
        return Verdict.NOT_LISTED
    digits = iter(stress)
    primary = [char in VOWELS and next(digits) == "1" for char in sounds]
    heard = _fold(list(zip(sounds, primary, strict=True)))
    return Verdict.CONFIRMED if heard in listed else Verdict.CONTRADICTED


def _fold_second(text: str) -> str:
    signs = re.sub("[ɜə]r", "ɝ", text.replace("ɹ", "r")).translate(_SIGNS)
    return _fold(list(_marked(signs)))


def _marked(signs: str) -> Iterator[tuple[str, bool]]:
    """Yield each sound with whether it carries the primary stress."""
    primary = False
    for sign in signs:
        if sign in "ˈˌ":
            primary = sign == "ˈ"
            continue
        yield sign, primary and sign in VOWELS
        primary = primary and sign not in VOWELS


def _fold(marked: list[tuple[str, bool]]) -> str:
    """Fold sounds; a word with one vowel counts as stressed on it."""
    one_vowel = sum(char in _VOWELS for char, _ in marked) == 1
    sounds = "".join(
        WEAK if char in _WEAKENING and not (primary or one_vowel) else char
        for char, primary in marked
    )
    sounds = _FLAP.sub("ɾ", COT_CAUGHT.merge(sounds).replace("hw", "w"))
    sounds = _R_VOWEL.sub(lambda found: found[0].translate(_BEFORE_R), sounds)
    sounds = re.sub("(?<=[IW])ɝ", "r", sounds)
    return re.sub("t(?=[ln])", "ɾ", _SYLLABIC.sub("", sounds))
