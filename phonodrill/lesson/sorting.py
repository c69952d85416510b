"""Sort words twice, by spelling and by sound, and find the bases of words."""

from __future__ import annotations

import random
from collections.abc import Callable, Iterable

from phonodrill.endings.sort import By, sort_words
from phonodrill.endings.sounds import written_sound
from phonodrill.endings.suffix import SUFFIX_OF
from phonodrill.endings.undo import find_bases
from phonodrill.graphemes.correspondence import write_sounds
from phonodrill.lesson.candidates import Candidate, Vocabulary
from phonodrill.lesson.focus import Kind
from phonodrill.lesson.plan import BASES, SORT
from phonodrill.lesson.request import Context
from phonodrill.lesson.tree import Bases, Found, Group, Sort, Sorting
from phonodrill.lesson.words import Words
from phonodrill.selection import may_be_printed

TWO = 2
SORT_SCRIPT = "Read each word, then lay it under its heading. Say why. Sort again the other way."
SORT_ONCE = "Read each word, then lay it under its heading. Say why."
BASES_SCRIPT = "Show the word. Which word did it come from? Write it."


def compose_sort(context: Context, vocabulary: Vocabulary, words: Words, minutes: int) -> Sort:
    """Sort the words in each way that gives two groups or more."""
    candidates = _candidates(vocabulary, words)
    if context.focus.kind is Kind.ENDINGS:
        ways = _sort_endings(context, words.sort)
    else:
        ways = _sort_by_labels(context, candidates)
    useful = _unlike(way for way in ways if len(way.groups) >= TWO)
    if not useful:
        # One spelling with one sound: what is left to tell apart is the condition.
        useful = (_sorting("condition", candidates, lambda c: c.condition),)
    script = SORT_SCRIPT if len(useful) > 1 else SORT_ONCE
    return Sort(SORT, minutes, "Sort", script, words.sort, useful)


def has_two_groups(vocabulary: Vocabulary, words: Words) -> bool:
    """Whether the words to sort go under two headings in some way."""
    found = {(c.spelling, c.sound, c.condition) for c in _candidates(vocabulary, words)}
    return len(found) >= TWO


def _candidates(vocabulary: Vocabulary, words: Words) -> list[Candidate]:
    known = {**vocabulary.rivals, **vocabulary.words}
    return [known[word] for word in words.sort]


def _unlike(ways: Iterable[Sorting]) -> tuple[Sorting, ...]:
    """Leave out a way whose piles are those of another: nothing is learned the second time."""
    by_piles: dict[frozenset[tuple[str, ...]], Sorting] = {}
    for way in ways:
        by_piles.setdefault(frozenset(tuple(sorted(g.words)) for g in way.groups), way)
    return tuple(by_piles.values())


def _sort_endings(context: Context, words: tuple[str, ...]) -> list[Sorting]:
    suffixes = tuple(dict.fromkeys(SUFFIX_OF[ending] for ending in context.focus.endings))
    ways = []
    for by in (By.SPELLING, By.RULE, By.SOUND):
        # The order of the mixed words is the lesson's own: chance is not used here.
        sorted_ = sort_words(context.lexicon, words, by, random.Random(0), suffixes)
        groups = tuple(
            Group(_heading(group.label, by, context), tuple(way.word for way in group.words))
            for group in sorted_.groups
        )
        ways.append(Sorting(str(by), groups))
    spelling, rule, sound = ways
    return [spelling if len(spelling.groups) >= TWO else rule, sound]


def _heading(label: str, by: By, context: Context) -> str:
    if by is By.SPELLING:
        return f"-{label}"
    return written_sound(label, context.style) if by is By.SOUND else label


def _sort_by_labels(context: Context, candidates: list[Candidate]) -> list[Sorting]:
    if context.focus.kind is Kind.TASK:
        return [_sorting("number of sounds", candidates, lambda c: c.sound)]
    ways = [
        _sorting("spelling", candidates, lambda c: c.spelling),
        _sorting("sound", candidates, lambda c: f"/{write_sounds(c.sound, context.style)}/"),
    ]
    return ways[::-1] if context.focus.kind is Kind.CONTRAST else ways


def _sorting(
    by: str, candidates: Iterable[Candidate], label: Callable[[Candidate], str]
) -> Sorting:
    groups: dict[str, list[str]] = {}
    for candidate in candidates:
        groups.setdefault(label(candidate), []).append(candidate.word)
    return Sorting(by, tuple(Group(name, tuple(sorted(groups[name]))) for name in sorted(groups)))


def compose_bases(context: Context, words: Words, minutes: int) -> Bases:
    """Find the bases of words, the likeliest first, or why there is none."""
    found = tuple(_found(word, context) for word in words.bases)
    return Bases(BASES, minutes, "Find the base", BASES_SCRIPT, found)


def _found(word: str, context: Context) -> Found:
    undone = find_bases(word, context.lexicon, context.gate)

    def is_fit(base: str) -> bool:
        # No word for a drill, as boo is none, may still be the base that is looked for.
        entry = context.lexicon.get(base)
        return entry is not None and may_be_printed(entry, context.gate)

    origins = [origin for origin in undone.origins if is_fit(origin.base)]
    bases = tuple(dict.fromkeys(origin.base for origin in origins))
    return Found(word, bases, origins[0].reason if origins else undone.note)
