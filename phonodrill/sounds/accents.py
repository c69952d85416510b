"""Accents of US English: which sounds fall together, and for whom.

An item is safe when its answer is right for every listener. A *feature* is one
thing in which accents differ: some speakers merge two sounds, others keep them
apart. So each feature knows how a word sounds to those who merge and to those
who do not, starting from what the dictionary lists (which merges some, keeps
others, and at times does both at random).

Sources: Labov, Ash & Boberg (2006), *The Atlas of North American English*:
cot/caught in some 40 % of the US, pin/pen before nasals in the South,
Mary/marry/merry, father/bother, horse/hoarse, /hw/, /j/ after t d n, and the
vowels before L. Lexical sets of the low back vowels by spelling: Wells (1982),
*Accents of English* (from memory). Before R the cot/caught vowels stay apart
everywhere (*for* is not *far*).
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from functools import cache
from typing import NamedTuple

from phonodrill.errors import PhonodrillError
from phonodrill.sounds.normal import WEAK
from phonodrill.sounds.places import NUCLEI

DICTIONARY = "dictionary"
"""The name that asks for the dictionary's own pronunciations and no other accent."""
WEAK_VOWELS = "weak-vowels"


class Merger(NamedTuple):
    """Sounds that some speakers say alike.

    Attributes:
        name: the trade's name, from words that fall together.
        alike: codes of the sounds; merged, all are written as the first.
        before: codes one of which must follow; empty: any.
        not_before: codes that must not follow.
        only_inside: whether a vowel must follow what follows.
    """

    name: str
    alike: str
    before: str = ""
    not_before: str = ""
    only_inside: bool = False

    def places(self, normal: str) -> list[int]:
        """Return where in a form the merger is at work."""
        return [found.start() for found in _pattern(self).finditer(normal)]

    def merge(self, normal: str) -> str:
        """Write the sounds alike.

        >>> COT_CAUGHT.merge("kɔt"), COT_CAUGHT.merge("fɔr")
        ('kɑt', 'fɔr')
        """
        return _pattern(self).sub(self.alike[0], normal)

    def alternatives(self, normal: str) -> set[str]:
        """Return every form that the merger makes the same as this one, itself included.

        >>> sorted(PIN_PEN.alternatives("pɪn"))
        ['pɛn', 'pɪn']
        """
        found = {normal}
        for place in self.places(normal):
            found |= {
                form[:place] + code + form[place + 1 :] for form in found for code in self.alike
            }
        return found


@cache
def _pattern(merger: Merger) -> re.Pattern[str]:
    behind = f"(?=[{merger.before}])" if merger.before else ""
    behind += f"(?![{merger.not_before}])" if merger.not_before else ""
    behind += f"(?=.[{''.join(NUCLEI)}])" if merger.only_inside else ""
    return re.compile(f"[{merger.alike}]{behind}")


COT_CAUGHT = Merger("cot-caught", "ɑɔ", not_before="r")
PIN_PEN = Merger("pin-pen", "ɪɛ", before="mnŋ")
MARY_MERRY = Merger("mary-marry-merry", "ɛæE", before="r", only_inside=True)
HORSE_HOARSE = Merger("horse-hoarse", "ɔO", before="r")
FILL_FEEL = Merger("fill-feel", "ɪi", before="l")
PULL_POOL = Merger("pull-pool", "ʊu", before="l")
MERGERS: tuple[Merger, ...] = (COT_CAUGHT, PIN_PEN)
"""The mergers that the gate minds: common, and far-reaching for single words."""


def _same(_: str, normal: str) -> str:
    return normal


def _split_mary(spelling: str, normal: str) -> str:
    for place in MARY_MERRY.places(normal):
        kept = "æ" if "arr" in spelling else "E" if "ar" in spelling or "air" in spelling else "ɛ"
        normal = normal[:place] + kept + normal[place + 1 :]
    return normal


def _split_wh(spelling: str, normal: str) -> str:
    if "wh" not in spelling:
        return normal
    # Who and whole never had the sound; nor has a w in another place.
    return normal.replace("hw", "ʍ") if "hw" in normal else normal.replace("w", "ʍ", 1)


def _split_j(spelling: str, normal: str) -> str:
    if "u" not in normal:
        return normal
    letters = spelling.replace("ou", "")
    return _after_tongue(normal, "u", "ju") if "u" in letters or "ew" in letters else normal


def _after_tongue(normal: str, old: str, new: str) -> str:
    """Write ``old`` as ``new`` behind the consonants made with the tip of the tongue."""
    for consonant in "tdnszlθ":
        normal = normal.replace(consonant + old, consonant + new)
    return normal


def _split_cot(spelling: str, normal: str) -> str:
    return _split_low_back(spelling, normal, father_apart=False)


def _split_father(spelling: str, normal: str) -> str:
    return _split_low_back(spelling, normal, father_apart=True)


def _split_low_back(spelling: str, normal: str, *, father_apart: bool) -> str:
    if "ɑ" not in normal and "ɔ" not in normal:
        return normal
    from phonodrill.sounds.low_back import split_low_back

    return split_low_back(spelling, normal, father_apart=father_apart)


def _merge_wh(normal: str) -> str:
    return normal.replace("hw", "w")


def _merge_j(normal: str) -> str:
    return _after_tongue(normal, "ju", "u") if "j" in normal else normal


def _unchanged(normal: str) -> str:
    return normal


class Feature(NamedTuple):
    """One thing in which accents differ.

    Attributes:
        name: how it is called in ``--accent``.
        about: who and what, in a line.
        merge: how those who merge say a form.
        split: how those who keep apart say a word: from its spelling and form.
        merger: the sounds concerned, where that is one sound for one.
    """

    name: str
    about: str
    merge: Callable[[str], str] = _unchanged
    split: Callable[[str, str], str] = _same
    merger: Merger | None = None


FEATURES: tuple[Feature, ...] = (
    Feature(
        "cot-caught",
        "the vowels of cot and caught are one",
        COT_CAUGHT.merge,
        _split_cot,
        COT_CAUGHT,
    ),
    Feature("father-bother", "the vowels of father and bother are one", split=_split_father),
    Feature("pin-pen", "pin and pen sound the same", PIN_PEN.merge, merger=PIN_PEN),
    Feature(
        "mary-marry-merry",
        "Mary, marry and merry sound the same",
        MARY_MERRY.merge,
        _split_mary,
        MARY_MERRY,
    ),
    Feature(
        "horse-hoarse",
        "horse and hoarse sound the same",
        HORSE_HOARSE.merge,
        merger=HORSE_HOARSE,
    ),
    Feature("wh-w", "whine begins like wine", _merge_wh, _split_wh),
    Feature("j-dropping", "new and tune have no /y/", _merge_j, _split_j),
    Feature("fill-feel", "fill and feel sound the same", FILL_FEEL.merge, merger=FILL_FEEL),
    Feature("pull-pool", "pull and pool sound the same", PULL_POOL.merge, merger=PULL_POOL),
    Feature(WEAK_VOWELS, "the weak vowels of rabbit and about are one"),
)


class Accents(NamedTuple):
    """For whom an item must be right.

    Attributes:
        known: features the class is known to merge. The others may be either
            way, and an item must hold for both.
        only_dictionary: whether the dictionary's pronunciations are all that counts.
    """

    known: tuple[str, ...] = ()
    only_dictionary: bool = False

    def merge_known(self, normal: str) -> str:
        """Write a form as a class says it that merges what is known to be merged."""
        for feature in FEATURES:
            if feature.name in self.known:
                normal = feature.merge(normal)
        return normal

    def realizations(self, spelling: str, normal: str) -> tuple[str, ...]:
        """Return how every listener has a word, always in the same order of listeners.

        Args:
            spelling: how it is written: what a merger hides, spelling often shows.
            normal: the normal form that the dictionary lists.

        >>> EVERY_ACCENT.realizations("cat", "kæt") == ("kæt",) * 14
        True
        >>> "ʍɛn" in EVERY_ACCENT.realizations("when", "wɛn")
        True
        """
        base = self.merge_known(normal)
        if self.only_dictionary:
            return (base,)
        merges, splits = _ways_of_others(self.known)
        merged = [merge(base) for merge in merges]
        split = [split(spelling, base) for split in splits]
        return (base, *merged, *split)

    def heard_alike(self, normal: str) -> set[str]:
        """Return every form that some listener may hear as this one."""
        if self.only_dictionary:
            return {normal}
        return heard_alike(normal, [f.merger for f in FEATURES if f.merger])

    def is_steady(self, sounds: str) -> bool:
        """Whether no weak vowel is among sounds that are to be named."""
        return WEAK not in sounds or self.only_dictionary or WEAK_VOWELS in self.known


@cache
def _ways_of_others(
    known: tuple[str, ...],
) -> tuple[list[Callable[[str], str]], list[Callable[[str, str], str]]]:
    """Return how those say a form who merge, or keep apart, what is not known of a class."""
    unknown = [feature for feature in FEATURES if feature.name not in known]
    merges = [f.merge for f in unknown if f.merge is not _unchanged]
    return merges, [f.split for f in unknown if f.split is not _same]


EVERY_ACCENT = Accents()


def parse_accents(text: str) -> Accents:
    """Read a comma-separated list of features.

    Args:
        text: for example ``"cot-caught,pin-pen"``; empty: right in every accent;
            ``"dictionary"``: no accent but the dictionary's.

    Raises:
        PhonodrillError: naming the one that is not known and the nearest.

    >>> parse_accents("pin-pen").known
    ('pin-pen',)
    """
    names = [part.strip().lower() for part in text.split(",") if part.strip()]
    known = [feature.name for feature in FEATURES]
    for name in names:
        if name not in known and name != DICTIONARY:
            import difflib

            near = difflib.get_close_matches(name, [*known, DICTIONARY], n=1, cutoff=0.3)
            raise PhonodrillError(
                f"unknown accent {name!r}",
                f"--accent {near[0]}" if near else f"--accent with any of {','.join(known)}",
            )
    if DICTIONARY in names and len(names) > 1:
        raise PhonodrillError(
            f"--accent {DICTIONARY} stands alone: it means no other accent", "one of the two"
        )
    return Accents(tuple(n for n in known if n in names), DICTIONARY in names)


def heard_alike(normal: str, mergers: Iterable[Merger] = MERGERS) -> set[str]:
    """Return every form that some listener may hear as this one, under all mergers at once."""
    alike = {normal}
    for merger in mergers:
        alike = {form for each in alike for form in merger.alternatives(each)}
    return alike
