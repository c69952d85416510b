"""Traps of an ending: words that look inflected, odd sounds, one spelling for two rules."""

from __future__ import annotations

import random
from collections.abc import Iterator
from enum import StrEnum
from itertools import zip_longest
from typing import NamedTuple

from phonodrill.endings.classify import Ending, WaysOf, classify
from phonodrill.endings.listings import Listings
from phonodrill.endings.rules import possible_bases
from phonodrill.endings.suffix import INFLECTED, SPELLED, SUFFIX_OF
from phonodrill.endings.table import watch_outs_of
from phonodrill.endings.together import ending_of
from phonodrill.endings.undo import find_bases
from phonodrill.lexicon.entry import Entry
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import NO_OVERLAY, Overlay
from phonodrill.selection import Pool, Query, may_be_said, select


class Kind(StrEnum):
    """Why a word is a trap."""

    NO_ENDING = "only looks inflected"
    ODD_SOUND = "odd sound"
    TWO_BASES = "one form, two bases"
    AFTER_IE = "ies without a y"
    NEAR = "easily taken for each other"


class Trap(NamedTuple):
    """A word to be ready for.

    Attributes:
        word: the word.
        kind: why it is a trap.
        why: in a teacher's words.
    """

    word: str
    kind: Kind
    why: str


def find_lookalikes(
    lexicon: Lexicon,
    query: Query,
    *,
    count: int,
    rng: random.Random,
    overlay: Overlay = NO_OVERLAY,
    ways_of: WaysOf | None = None,
    listings: Listings | None = None,
) -> tuple[Trap, ...]:
    """Find the traps among the words of a band for the endings of a lesson.

    Args:
        lexicon: the open lexicon.
        query: band and spelled endings, the focus of the lesson.
        count: how many of each kind at most.
        rng: the only source of chance.
        overlay: a teacher's own words.
        ways_of: takes a form apart; :func:`classify` by default.
        listings: what the lexicon lists, if it was read ahead.

    Raises:
        PhonodrillError: if the query names an ending that there is not.
    """
    exceptions = lexicon.ending_exceptions()

    def classified(form: str) -> list[Ending]:
        return classify(form, lexicon, exceptions)

    found: dict[Kind, list[Trap]] = {kind: [] for kind in Kind}
    apart = _Apart(ways_of or classified, listings or lexicon, frozenset(f for f, _ in exceptions))
    for trap in _all(lexicon, query, rng, overlay, apart):
        if len(found[trap.kind]) < count:
            found[trap.kind].append(trap)
    return tuple(trap for kind in Kind for trap in sorted(found[kind], key=lambda trap: trap.word))


class _Apart(NamedTuple):
    """How forms are taken apart, and what tells beforehand that it need not be done."""

    ways_of: WaysOf
    listings: Listings
    irregular: frozenset[str]


def _all(
    lexicon: Lexicon, query: Query, rng: random.Random, overlay: Overlay, apart: _Apart
) -> Iterator[Trap]:
    suffixes = dict.fromkeys(map(ending_of, sorted(query.endings)))
    plain = select(lexicon, query._replace(endings=frozenset()), rng, overlay)
    yield from _without_ending(plain, query)
    for suffix in suffixes:
        for way in watch_outs_of(lexicon, suffix, query.band, overlay):
            yield Trap(way.word, Kind.ODD_SOUND, way.watch_out)
        inflected = query._replace(endings=query.endings & {*SPELLED[suffix]} & INFLECTED)
        if inflected.endings:
            yield from _ambiguous(select(lexicon, inflected, rng, overlay), suffix, apart)


def _without_ending(pool: Pool, query: Query) -> Iterator[Trap]:
    """Yield words that end in the letters but carry no ending; the worst traps first."""
    worst: list[Trap] = []
    rest: list[Trap] = []
    for entry in pool.ending_in(tuple(query.endings)):
        spelled = _letters_at_end(entry.word, query.endings)
        if not spelled:
            continue
        undone = find_bases(entry.word, pool.lexicon, pool.gate)
        left = [pool.lexicon.get(base) for base in possible_bases(entry.word, SUFFIX_OF[spelled])]
        of_a_name = any(base is not None and not base.parts_of_speech for base in left)
        if not undone.origins and not of_a_name:
            trap = Trap(entry.word, Kind.NO_ENDING, undone.note)
            is_word = any(_is_known(base, query.band) for base in left)
            (worst if is_word else rest).append(trap)
    for pair in zip_longest(worst, rest):
        yield from filter(None, pair)


def _letters_at_end(word: str, endings: frozenset[str]) -> str:
    fitting = [spelled for spelled in endings if word.endswith(spelled)]
    return "" if word.endswith("ss") else max(fitting, key=len, default="")


def _is_known(entry: Entry | None, band: int) -> bool:
    return entry is not None and 1 <= entry.band <= band


def _may_be_named(base: str, pool: Pool) -> bool:
    entry = pool.lexicon.get(base)
    known = entry is not None and 1 <= entry.band <= pool.query.band
    return entry is not None and known and may_be_said(entry, pool.gate)


def _may_be_ambiguous(pool: Pool, suffix: str, apart: _Apart) -> Iterator[Entry]:
    """Pass over forms of one plain base: most of thousands need not be taken apart."""
    listed = apart.listings
    entries = list(pool.stimuli())
    bases = {entry.word: {row.base for row in listed.bases_of(entry.word)} for entry in entries}
    known = frozenset[str]().union(*bases.values())
    for entry in entries:
        base = next(iter(bases[entry.word]), "")
        others = {f"{base}e", base.removesuffix("e")} - {base}
        is_plain = (
            len(bases[entry.word]) == 1
            and not base.endswith("ie")
            and (suffix == "s" or known.isdisjoint(others))
            and entry.word not in apart.irregular
            and not listed.derived_words(entry.word)
        )
        if not is_plain:
            yield entry


def _ambiguous(pool: Pool, suffix: str, apart: _Apart) -> Iterator[Trap]:
    """Yield forms of two bases, of bases in ie, and of bases told apart by an e alone."""
    forms: dict[str, str] = {}
    for entry in _may_be_ambiguous(pool, suffix, apart):
        ways = [way for way in apart.ways_of(entry.word) if way.suffix == suffix]
        bases = [way.base for way in ways if _may_be_named(way.base, pool)]
        if len(bases) > 1:
            yield Trap(entry.word, Kind.TWO_BASES, f"from {' or from '.join(bases)}")
        elif bases and ways[0].rule == "add s after ie":
            yield Trap(entry.word, Kind.AFTER_IE, f"from {ways[0].base}: {ways[0].watch_out}")
        if bases:
            forms[bases[0]] = entry.word
    if suffix != "s":
        for base, form in forms.items():
            other = forms.get(f"{base}e")
            if other:
                why = f"{form} is from {base}, {other} from {base}e"
                yield Trap(f"{form}, {other}", Kind.NEAR, why)
