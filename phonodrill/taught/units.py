"""The steps that a teaching order is made of: one new correspondence or ending each."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple

from phonodrill.graphemes.correspondence import Kind
from phonodrill.lexicon.entry import Counted
from phonodrill.sounds.normal import WEAK
from phonodrill.taught.growth import Target
from phonodrill.taught.known import WHOLE, Way
from phonodrill.taught.steps import parse_step
from phonodrill.taught.tokens import SPELLED_ENDINGS, write_token

FEWEST_WORDS = 16
"""A correspondence is worth a step if so many words need it ..."""
FEWEST_USED_WORDS, FEWEST_USES = 3, 1500
"""... or so many, if words with it stand so often in a million words of text."""
TOGETHER = ("ff, ll, ss", "bb, dd, gg, mm, nn, pp, rr, tt")
"""Doubled letters bring one thought, not a new sound each: they close a short word, or
they stand inside a longer one."""


class Unit(NamedTuple):
    """One new thing to teach.

    Attributes:
        token: as the taught file names it.
        spelling: its letters, ``a_e`` for a split vowel.
        sound: codes of its sounds; empty for an ending and for doubled letters.
        kind: sort of spelling.
        things: what it opens.
        words: how many of the words need it.
    """

    token: str
    spelling: str
    sound: str
    kind: Kind
    things: Way
    words: int

    @property
    def is_first(self) -> bool:
        """Whether it is what its spelling means when no sound is written."""
        return "=" not in self.token

    @property
    def letters(self) -> frozenset[str]:
        """The letters it is made of."""
        return frozenset(filter(str.isalpha, self.spelling))


def find_units(inventory: Sequence[Counted], words: Iterable[Target]) -> list[Unit]:
    """Return what is worth a step of its own, what most words need first.

    Args:
        inventory: ``Lexicon.correspondences()``.
        words: the words that count.
    """
    needed = Counter(thing for word in words for thing in needed_by(word))
    by_code = {row.code: row for row in inventory}
    found: dict[Way, Unit] = {}
    for token, row in _tokens(inventory):
        things = parse_step(0, token, inventory).things
        # What comes with it (the weak vowel) comes with other sounds of the spelling too.
        own = [r for r in map(by_code.get, things) if r and (r is row or not _is_weak(r))]
        count = sum(needed[thing] for thing in (things if row is None else (r.code for r in own)))
        is_used = count >= FEWEST_USED_WORDS and sum(r.uses for r in own) >= FEWEST_USES
        if count >= FEWEST_WORDS or is_used:
            found.setdefault(things, _unit(token, row, things, count))
    whole = [u for u in found.values() if not any(u.things < other for other in found)]
    return sorted(_join_doubled(whole), key=lambda unit: (-unit.words, unit.token))


def needed_by(target: Target) -> frozenset[str]:
    """Return what a target cannot be read without, by its letters."""
    needed = frozenset[str]()
    for ways in target.words:
        spelled = [way for way in ways if not any(thing.startswith(WHOLE) for thing in way)]
        if spelled:
            needed |= frozenset.intersection(*spelled)
    return needed


def owners(units: Sequence[Unit]) -> Mapping[str, int]:
    """Return which unit, by index, teaches a thing: the usual one of a spelling, else the first."""
    owner: dict[str, int] = {}
    for is_first in (True, False):
        for index, unit in enumerate(units):
            if unit.is_first is is_first:
                for thing in sorted(unit.things):
                    owner.setdefault(thing, index)
    return owner


def _unit(token: str, row: Counted | None, things: Way, count: int) -> Unit:
    if row is None:
        return Unit(token, token[1:], "", Kind.ENDING, things, count)
    found = row.correspondence
    return Unit(token, found.spelling, found.sound, found.kind, things, count)


def _join_doubled(units: Iterable[Unit]) -> list[Unit]:
    joined: list[Unit] = []
    groups: dict[str, list[Unit]] = {}
    for unit in units:
        group = next((text for text in TOGETHER if unit.token in text.split(", ")), "")
        if group and unit.kind is Kind.DOUBLED:
            groups.setdefault(group, []).append(unit)
        else:
            joined.append(unit)
    for members in groups.values():
        token = ", ".join(sorted(unit.token for unit in members))
        things = frozenset[str]().union(*(unit.things for unit in members))
        count = sum(unit.words for unit in members)
        joined.append(Unit(token, token, "", Kind.DOUBLED, things, count))
    return joined


def _is_weak(row: Counted) -> bool:
    return row.correspondence.sound.startswith(WEAK)


def _tokens(inventory: Sequence[Counted]) -> list[tuple[str, Counted | None]]:
    plain = [
        (write_token(row, inventory), row)
        for row in inventory
        if row.correspondence.is_regular
        and row.correspondence.sound
        and not row.correspondence.is_weak
        and row.correspondence.kind is not Kind.ENDING
    ]
    return [*plain, *((f"-{ending}", None) for ending in SPELLED_ENDINGS)]
