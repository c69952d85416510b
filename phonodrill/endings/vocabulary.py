"""Words of the vocabulary that carry an ending, taken apart and past the gate."""

from __future__ import annotations

import random
from collections.abc import Iterable, Iterator, Sequence
from itertools import islice, zip_longest

from phonodrill.endings.classify import Ending, WaysOf, classify
from phonodrill.endings.kinds import rough_kind
from phonodrill.endings.suffix import DERIVED, INFLECTED, POSSESSIVE
from phonodrill.lexicon.entry import Entry
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import NO_OVERLAY, Overlay
from phonodrill.selection import Pool, Query, may_be_said, select

_AFTER_IE = "add s after ie"


def known_endings(
    lexicon: Lexicon,
    query: Query,
    rng: random.Random | None = None,
    overlay: Overlay = NO_OVERLAY,
    ways_of: WaysOf | None = None,
    words: Iterable[str] | None = None,
) -> Iterator[Ending]:
    """Yield words that carry one of the query's endings, each taken apart.

    Words with more than one possible sound of the ending are left out, and so are
    exceptions to warn of.

    Args:
        lexicon: the open lexicon.
        query: band and spelled endings (see ``suffix.SPELLINGS``).
        rng: mixes the order; None leaves it as stored.
        overlay: a teacher's own words.
        ways_of: takes a form apart; :func:`classify` by default.
        words: those to look at, of :func:`words_with_endings`; all of these by default.
    """
    exceptions = lexicon.ending_exceptions()
    listed = words_with_endings(lexicon, query, overlay) if words is None else list(words)
    if rng:
        rng.shuffle(listed)
    for word in listed:
        ways = ways_of(word) if ways_of else classify(word, lexicon, exceptions)
        if not ways or len({way.sound for way in ways}) > 1 or is_watch_out(ways[0]):
            continue
        if ways[0].ending in query.endings:
            yield ways[0]


def words_with_endings(lexicon: Lexicon, query: Query, overlay: Overlay = NO_OVERLAY) -> list[str]:
    """Return the words that are listed with one of the query's endings, each once."""
    return list(dict.fromkeys(_words(lexicon, query, overlay)))


def some_of_each_kind(words: Sequence[str], most: int, lexicon: Lexicon) -> list[str]:
    """Keep some of many words with endings, in the order given.

    Kinds take turns, the most familiar words of each first.

    Args:
        words: of :func:`words_with_endings`.
        most: how many are kept.
        lexicon: the open lexicon.
    """
    if len(words) <= most:
        return list(words)
    kinds: dict[tuple[str, ...], list[Entry]] = {}
    for entry in filter(None, map(lexicon.get, words)):
        normal = entry.usable_pronunciations[0].normal
        kind = rough_kind(entry.word, entry.base, normal)
        kinds.setdefault((*kind, *entry.endings), []).append(entry)
    for pile in kinds.values():
        pile.sort(key=lambda entry: (entry.band, -entry.zipf))
    turns = (entry.word for turn in zip_longest(*kinds.values()) for entry in turn if entry)
    kept = frozenset(islice(turns, most))
    return [word for word in words if word in kept]


def is_watch_out(ending: Ending) -> bool:
    """Whether a word is an exception to warn of; *pies* and *movies* are none."""
    return ending.rule == "irregular" or (bool(ending.watch_out) and ending.rule != _AFTER_IE)


def _words(lexicon: Lexicon, query: Query, overlay: Overlay) -> Iterator[str]:
    inflected = query.endings & INFLECTED
    if inflected:
        pool = select(lexicon, query._replace(endings=inflected), overlay=overlay)
        yield from (entry.word for entry in pool.stimuli())
    pool = select(lexicon, query._replace(endings=frozenset()), overlay=overlay)
    if query.endings & DERIVED:
        for word, _, ending, _ in lexicon.derived_words():
            entry = lexicon.get(word)
            if ending in query.endings and entry and _fits(entry, pool):
                yield word
    if POSSESSIVE in query.endings:
        yield from (f"{entry.word}'s" for entry in pool.stimuli() if _can_own(entry))


def _fits(entry: Entry, pool: Pool) -> bool:
    return (
        entry.band <= pool.query.band
        and not entry.is_heteronym
        and may_be_said(entry, pool.gate)
        and pool.can_read(entry)
    )


def _can_own(entry: Entry) -> bool:
    """Whether a possessive of it is plain: a thing or animal that can be pictured."""
    is_plural = entry.word.endswith("s") and not entry.word.endswith("ss")
    return entry.picturable and entry.parts_of_speech[:1] == ("noun",) and not is_plural
