"""Sort words by the sound or the spelling of their ending."""

from __future__ import annotations

import random
from collections.abc import Iterable
from enum import StrEnum
from typing import NamedTuple

from phonodrill.endings.classify import SOUNDS, Ending, classify
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import NO_OVERLAY, Overlay
from phonodrill.selection import Query, select

SPELLINGS = ("s", "es", "ies", "ves")


class By(StrEnum):
    """What words are sorted by."""

    SOUND = "sound"
    SPELLING = "spelling"


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


def label(ending: Ending, by: By) -> str:
    """Return the heading under which a word is sorted."""
    return ending.sound if by is By.SOUND else ending.ending


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
    there is room: /ɪz/ has both *torches* and *hedges*.

    Args:
        lexicon: the open lexicon.
        query: band and endings.
        by: sound or spelling.
        per_group: how many words a group has at most.
        rng: the only source of chance.
        overlay: a teacher's own words.
    """
    exceptions = lexicon.ending_exceptions()
    words = [entry.word for entry in select(lexicon, query, overlay=overlay).stimuli()]
    rng.shuffle(words)
    chosen: list[Ending] = []
    later: list[Ending] = []
    met: set[tuple[str, str]] = set()
    for word in words:
        ways = classify(word, lexicon, exceptions)
        if ways and len({way.sound for way in ways}) == 1 and not _is_watch_out(ways[0]):
            kind = (label(ways[0], by), ways[0].rule)
            (later if kind in met else chosen).append(ways[0])
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


def sort_words(lexicon: Lexicon, words: Iterable[str], by: By, rng: random.Random) -> Sort:
    """Sort a teacher's own words; those in no known way inflected are named.

    Args:
        lexicon: the open lexicon.
        words: lower-case words, also such as the lexicon lacks if it has the base.
        by: sound or spelling.
        rng: mixes the list to sort.
    """
    exceptions = lexicon.ending_exceptions()
    sorted_words: list[Ending] = []
    left_out: list[tuple[str, str]] = []
    for word in dict.fromkeys(words):
        ways = classify(word, lexicon, exceptions)
        if ways:
            sorted_words.append(ways[0])
        else:
            known = lexicon.get(word) is not None
            left_out.append((word, "no -s ending here" if known else "base word not known"))
    return _sort(by, sorted_words, rng, tuple(left_out))


def _is_watch_out(ending: Ending) -> bool:
    return ending.rule == "irregular" or (bool(ending.watch_out) and ending.ending != "ies")


def _sort(
    by: By,
    endings: list[Ending],
    rng: random.Random,
    left_out: tuple[tuple[str, str], ...] = (),
) -> Sort:
    headings = SOUNDS if by is By.SOUND else SPELLINGS
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
