"""What the spelling rules ask of a base: its last letters, last sound and stress.

Sources: GPO Style Manual (2008), chapter 5, "Doubled consonants" (doubling; qu
counts as a consonant; w, x and y are never doubled; c takes k); Carter & McCarthy
(2006), *Cambridge Grammar of English*, 508c (es where a syllable is added).
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import NamedTuple

from phonodrill.lexicon.entry import Pronunciation
from phonodrill.sounds.inventory import SIBILANTS, VOWELS

VOWEL_LETTERS = frozenset("aeiou")
NEVER_DOUBLED = frozenset("hjqwxyaeiou")
HISSING_LETTERS = ("s", "x", "z", "ch", "sh", "zh", "j")
KEEPS_E = ("ee", "oe", "ye")
_ONE_VOWEL_THEN_Z = re.compile(r"[^aeiou]*(?:qu)?[aeiou]z")
_SOUNDED_E = frozenset("iE")


class BaseWord(NamedTuple):
    """A base word, as far as a spelling rule looks at it.

    Attributes:
        word: the spelling, lower case.
        last: code of its last sound.
        syllables: how many it has.
        stressed_end: whether the last syllable carries stress.
        part_of_speech: the reading asked for: noun, verb, adjective, or empty.
        is_name: whether it is a name, which keeps its y.
        said: how it is said; None if only its letters are known.
        ways: every way to say it.
        listed_as: the known word at its end whose exceptions it shares, or empty.
    """

    word: str
    last: str
    syllables: int
    stressed_end: bool
    part_of_speech: str = ""
    is_name: bool = False
    said: Pronunciation | None = None
    ways: tuple[Pronunciation, ...] = ()
    listed_as: str = ""


Condition = Callable[[BaseWord], bool]


def always(_: BaseWord) -> bool:
    """Whether any base will do."""
    return True


def is_listed_only(_: BaseWord) -> bool:
    """Whether the rule holds for more than the bases listed in our table: never."""
    return False


def hisses(base: BaseWord) -> bool:
    """Whether the base ends in one of s z ʃ ʒ tʃ dʒ (by sound: not *stomach*)."""
    return base.last in SIBILANTS


def hisses_before_e(base: BaseWord) -> bool:
    """Whether it hisses and a silent e is there already (*hedge*)."""
    return base.last in SIBILANTS and base.word.endswith("e")


def ends_in_consonant_y(base: BaseWord) -> bool:
    """Whether y stands behind a consonant letter or qu, and it is no name."""
    word = base.word
    if base.is_name or not word.endswith("y") or len(word) == 1:
        return False
    return word[-2] not in VOWEL_LETTERS or word.endswith("quy")


def is_long_in_consonant_y(base: BaseWord) -> bool:
    """Whether y stands behind a consonant letter and is not the only vowel (not *shy*)."""
    return ends_in_consonant_y(base) and base.syllables > 1


def ends_in_one_vowel_and_z(base: BaseWord) -> bool:
    """Whether it is one short vowel and one z (*quiz*)."""
    return hisses(base) and _ONE_VOWEL_THEN_Z.fullmatch(base.word) is not None


def ends_in_weak_sis(base: BaseWord) -> bool:
    """Whether it is a noun of the kind of *crisis* and *oasis*."""
    return base.part_of_speech != "verb" and base.syllables > 1 and not base.is_name


def ends_in_man(base: BaseWord) -> bool:
    """Whether it is a person's trade or kind, in sman or woman (*kinsman*)."""
    return base.part_of_speech != "verb" and not base.is_name and base.syllables > 1


def doubles(base: BaseWord) -> bool:
    """Whether one consonant letter behind one vowel letter ends a stressed syllable."""
    word = base.word
    if len(word) < 2 or word[-1] in NEVER_DOUBLED or not base.stressed_end:  # noqa: PLR2004
        return False
    vowel, before = word[-2], word[-3:-2]
    if vowel not in VOWEL_LETTERS and vowel != "y":
        return False
    if before in VOWEL_LETTERS and word[-4:-2] != "qu":
        return False
    # The letter must be heard as a consonant: not the t of ballet.
    return base.last not in VOWELS or (word[-1] == "r" and base.last == "ɝ")


def takes_k(base: BaseWord) -> bool:
    """Whether a vowel letter and c end it, said /k/ (*picnic*; not *arc*)."""
    word = base.word
    return word.endswith("c") and base.last == "k" and word[-2:-1] in VOWEL_LETTERS


def drops_e(base: BaseWord) -> bool:
    """Whether its last e is silent and stands alone (not *see*, *shoe*, *be*)."""
    if not base.word.endswith("e") or base.word.endswith(KEEPS_E):
        return False
    return base.last not in _SOUNDED_E


def ends_in_weak_ey(base: BaseWord) -> bool:
    """Whether it ends in a second, weak syllable spelled ey (*pricey*; not *grey*)."""
    return base.syllables > 1


def drops_e_before_y(base: BaseWord) -> bool:
    """Whether a silent e stands behind a consonant letter (*ice*; not *glue*)."""
    return drops_e(base) and base.word[-2:-1] not in VOWEL_LETTERS


def is_plural_in_s(base: BaseWord) -> bool:
    """Whether the word is itself a plural that ends in s."""
    return base.part_of_speech == "plural noun" and base.word.endswith("s")
