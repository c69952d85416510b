"""Sort words by the sound, the spelling, the rule or the base of their ending."""

from __future__ import annotations

import random
from collections.abc import Iterable
from enum import StrEnum
from typing import NamedTuple

from phonodrill.endings.classify import Ending, classify
from phonodrill.endings.rule import IRREGULAR
from phonodrill.endings.rules import RULES
from phonodrill.endings.suffix import SOUNDS_OF, SPELLINGS
from phonodrill.endings.vocabulary import known_endings
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import NO_OVERLAY, Overlay
from phonodrill.selection import Query


class By(StrEnum):
    """What words are sorted by."""

    SOUND = "sound"
    SPELLING = "spelling"
    RULE = "rule"
    BASE = "base"


class Group(NamedTuple):
    """Words that share a label."""

    label: str
    words: tuple[Ending, ...]


class Sort(NamedTuple):
    """Words sorted into groups; the groups are the answer key.

    Attributes:
        by: what they are sorted by.
        groups: in the order in which they are taught; empty ones are left out.
        to_sort: all words, mixed, as a class gets them.
        left_out: words that could not be sorted, with the reason.
    """

    by: By
    groups: tuple[Group, ...]
    to_sort: tuple[str, ...]
    left_out: tuple[tuple[str, str], ...] = ()


HEADINGS: dict[By, tuple[str, ...]] = {
    By.SOUND: tuple(dict.fromkeys(sound for sounds in SOUNDS_OF.values() for sound in sounds)),
    By.SPELLING: (*SPELLINGS, "s'"),
    By.RULE: (*dict.fromkeys(rule.name for rule in RULES), IRREGULAR),
}
"""The labels in the order in which a sort shows them; bases go by the alphabet."""


def label(ending: Ending, by: By) -> str:
    """Return the heading under which a word is sorted."""
    labels = {
        By.SOUND: ending.sound,
        By.SPELLING: ending.ending,
        By.RULE: ending.rule,
        By.BASE: ending.base,
    }
    return labels[by]


def sort_vocabulary(
    lexicon: Lexicon,
    query: Query,
    by: By,
    per_group: int,
    rng: random.Random,
    overlay: Overlay = NO_OVERLAY,
) -> Sort:
    """Sort words of the vocabulary, as many a group as asked for.

    Words with more than one possible ending sound are left out, and no base
    word comes twice. Each spelling rule is met at least once in a group where
    there is room: /ɪz/ has both *torches* and *hedges*. By base, there are as
    many bases as asked for, each with every form it has.

    Args:
        lexicon: the open lexicon.
        query: band and endings.
        by: sound, spelling, rule or base.
        per_group: how many words a group has at most; by base, how many bases.
        rng: the only source of chance.
        overlay: a teacher's own words.
    """
    found = known_endings(lexicon, query, rng, overlay)
    if by is By.BASE:
        return _sort(by, _families(per_group, found), rng)
    chosen: list[Ending] = []
    later: list[Ending] = []
    met: set[tuple[str, str]] = set()
    for ending in found:
        kind = (label(ending, by), ending.rule)
        (later if kind in met else chosen).append(ending)
        met.add(kind)
    return _sort(by, _up_to(per_group, [*chosen, *later], by), rng)


def _up_to(per_group: int, endings: Iterable[Ending], by: By) -> list[Ending]:
    """Keep the first words of each group, no base twice."""
    kept: list[Ending] = []
    bases: set[str] = set()
    sizes: dict[str, int] = {}
    for ending in endings:
        heading = label(ending, by)
        if sizes.get(heading, 0) < per_group and ending.base not in bases:
            kept.append(ending)
            bases.add(ending.base)
            sizes[heading] = sizes.get(heading, 0) + 1
    return kept


def _families(count: int, endings: Iterable[Ending]) -> list[Ending]:
    """Keep every form of the first bases that have the most different endings."""
    families: dict[str, list[Ending]] = {}
    for ending in endings:
        families.setdefault(ending.base, []).append(ending)
    largest = sorted(families.values(), key=lambda family: -len({e.suffix for e in family}))
    return [ending for family in largest[:count] for ending in family]


def sort_words(
    lexicon: Lexicon,
    words: Iterable[str],
    by: By,
    rng: random.Random,
    suffixes: Iterable[str] = ("s",),
) -> Sort:
    """Sort a teacher's own words; those in no known way inflected are named.

    Args:
        lexicon: the open lexicon.
        words: lower-case words, also such as the lexicon lacks if it has the base.
        by: sound, spelling, rule or base.
        rng: mixes the list to sort.
        suffixes: which endings are looked for: s, ed, ing, er, est, ly, y, 's.
    """
    exceptions = lexicon.ending_exceptions()
    wanted = list(suffixes)
    sorted_words: list[Ending] = []
    left_out: list[tuple[str, str]] = []
    for word in dict.fromkeys(words):
        ways = [way for way in classify(word, lexicon, exceptions) if way.suffix in wanted]
        if ways:
            sorted_words.append(ways[0])
        else:
            known = lexicon.get(word) is not None
            asked = f"no -{wanted[0]} ending here" if len(wanted) == 1 else "no such ending here"
            left_out.append((word, asked if known else "base word not known"))
    return _sort(by, sorted_words, rng, tuple(left_out))


def _sort(
    by: By,
    endings: list[Ending],
    rng: random.Random,
    left_out: tuple[tuple[str, str], ...] = (),
) -> Sort:
    headings = HEADINGS.get(by) or sorted({ending.base for ending in endings})
    groups = [
        Group(
            heading,
            tuple(
                sorted(
                    (ending for ending in endings if label(ending, by) == heading),
                    key=lambda ending: ending.word,
                )
            ),
        )
        for heading in headings
    ]
    mixed = [ending.word for ending in endings]
    rng.shuffle(mixed)
    return Sort(by, tuple(group for group in groups if group.words), tuple(mixed), left_out)
