"""Word chains: each step changes one sound and makes another familiar word.

Words are the nodes of a graph that is never written out: two words are
neighbors if they agree but for one place, so each word stands in a dictionary
under every form of itself with one sound left open or left out. Looking up the
neighbors of a word costs as much as it has sounds.
"""

from __future__ import annotations

import random
from collections import deque
from collections.abc import Iterator
from itertools import pairwise
from typing import NamedTuple

from phonodrill.errors import PhonodrillError
from phonodrill.lexicon.entry import Pronunciation
from phonodrill.selection import HIGHEST_KNOWN_BAND, Pool, Query, Spoken
from phonodrill.sounds.accents import DICTIONARY
from phonodrill.sounds.places import NUCLEI, UNKNOWN, count_nuclei
from phonodrill.sounds.units import hides_y
from phonodrill.tasks.change import Words, part_of
from phonodrill.tasks.item import NO_PART, Part

OPEN = "*"
"""Stands for the one sound that may differ."""
MOST_TRIES = 20_000
"""Words looked at for a varied chain before the best one so far is taken."""
MOST_SOUNDS = 6


class Step(NamedTuple):
    """One word of a chain and how it comes from the word before.

    Attributes:
        word: the spelling.
        said: how it is said.
        also: other familiar words that sound the same.
        place: start, first, inside, vowel or last.
        old: the sound that was changed or left off; empty for the start and an addition.
        new: the sound that is put in its place or added; empty for the start and a deletion.
    """

    word: str
    said: Pronunciation
    also: tuple[str, ...] = ()
    place: str = "start"
    old: Part = NO_PART
    new: Part = NO_PART


class Chain(NamedTuple):
    """A chain of words.

    Attributes:
        steps: the words, the first one being the start.
        query: what was asked for.
        seed: makes the same chain again; None for a shortest one.
        notes: one line each on what could not be met.
    """

    steps: tuple[Step, ...]
    query: Query
    seed: int | None = None
    notes: tuple[str, ...] = ()


class Graph:
    """The familiar words of a pool as a graph of one-sound changes.

    Args:
        pool: the words that may be used.
        query: band and accents.
        named: words that are asked for by name, in any band.
    """

    def __init__(self, pool: Pool, query: Query, named: tuple[str, ...]) -> None:
        self._words = Words(pool, query)
        self._pool = pool._replace(query=query._replace(words=named))
        self._named = named
        self._shelves: dict[str, list[str]] = {}
        self._neighbors: dict[str, tuple[str, ...]] = {}
        self._hint = "another word"
        if query.band < HIGHEST_KNOWN_BAND:
            self._hint = f"--band {HIGHEST_KNOWN_BAND}, or another word"
        known = {word: normals[0] for word, normals in pool.companions().items()}
        known |= {word: self.find(word).said.normal for word in named}
        for word, normal in known.items():
            if len(normal) <= MOST_SOUNDS and count_nuclei(normal) == 1:
                for key in _keys(normal):
                    self._shelves.setdefault(key, []).append(word)

    def no_way(self, message: str) -> PhonodrillError:
        """Make the error for a chain that is not there, saying what to loosen."""
        return PhonodrillError(message, f"{self._hint}, or --accent {DICTIONARY}")

    def find(self, word: str) -> Spoken:
        """Return a word to start from or to end with.

        Raises:
            PhonodrillError: if it cannot be in a chain, saying why.
        """
        found = self._pool.find(word)
        if found is None:
            raise PhonodrillError(
                f"{word!r} cannot be in a chain: not a word for class with one way to say it",
                "another word",
            )
        normal = found.said.normal
        if count_nuclei(normal) != 1 or len(normal) > MOST_SOUNDS or hides_y(normal):
            raise PhonodrillError(
                f"{word!r} cannot be in a chain: words of one syllable can, up to"
                f" {MOST_SOUNDS} sounds, without the /y/ of cute",
                "another word",
            )
        return found

    def neighbors(self, word: str) -> tuple[str, ...]:
        """Return the words one change away that are right for every listener."""
        if word not in self._neighbors:
            here = self._pool.find(word)
            near = dict.fromkeys(
                other
                for key in (_keys(here.said.normal) if here else ())
                for other in self._shelves.get(key, ())
            )
            self._neighbors[word] = tuple(
                other for other in near if here and self._is_step(here, other)
            )
        return self._neighbors[word]

    def step(self, before: Spoken, word: str) -> Step:
        """Describe the step from one word to a neighbor."""
        after = self._pool.find(word)
        if after is None:
            raise PhonodrillError(f"{word!r} is no neighbor of {before.entry.word!r}")
        start, end_before, end_after = _difference(before.said.normal, after.said.normal)
        old = part_of(before.said, start, end_before) if end_before > start else NO_PART
        new = part_of(after.said, start, end_after) if end_after > start else NO_PART
        also = (s.entry.word for s in self._words.answers(after.said.normal))
        return Step(
            after.entry.word,
            after.said,
            tuple(other for other in also if other != word),
            _place(old.sounds or new.sounds, start, end_after, after.said.normal),
            old,
            new,
        )

    def _is_step(self, here: Spoken, word: str) -> bool:
        there = self._pool.find(word)
        if there is None or there.said.normal == here.said.normal or hides_y(there.said.normal):
            return False
        if word in self._named:
            fits = self._pool.stands_alone(there.said.normal)
        else:
            # Of words that sound the same only the most familiar one is in the graph.
            answers = self._words.answers(there.said.normal)
            fits = bool(answers) and answers[0].entry.word == word and not there.entry.endings
        return (
            fits
            and self._words.holds(here, there, _is_one_change)
            and self._names_the_same(here, there)
        )

    def _names_the_same(self, here: Spoken, there: Spoken) -> bool:
        """Whether every listener has the sounds that are named, where the dictionary has them."""
        named = _named_sounds(here.said.normal, there.said.normal)
        pairs = zip(self._words.realizations(here), self._words.realizations(there), strict=True)
        return all(_named_sounds(one, two) == named for one, two in pairs)


def shortest_chain(pool: Pool, query: Query, start: str, end: str) -> Chain:
    """Find a shortest chain from one word to another.

    Args:
        pool: the words that may be used.
        query: band and accents.
        start: the first word.
        end: the last word.

    Raises:
        PhonodrillError: if one of them cannot be in a chain, or no chain joins them.
    """
    if start == end:
        raise PhonodrillError(f"the chain would begin and end with {start!r}", "two words")
    graph = Graph(pool, query, (start, end))
    first, last = graph.find(start), graph.find(end)
    came_from: dict[str, str] = {first.entry.word: ""}
    waiting = deque([first.entry.word])
    while waiting and last.entry.word not in came_from:
        here = waiting.popleft()
        for there in graph.neighbors(here):
            if there not in came_from:
                came_from[there] = here
                waiting.append(there)
    if last.entry.word not in came_from:
        raise graph.no_way(
            f"no chain leads from {start!r} to {end!r} in words of band {query.band} or lower"
        )
    words = [last.entry.word]
    while came_from[words[0]]:
        words.insert(0, came_from[words[0]])
    return Chain(_steps(graph, words), query)


def varied_chain(pool: Pool, query: Query, start: str, steps: int, *, seed: int) -> Chain:
    """Make a chain of so many steps whose place of change varies.

    Args:
        pool: the words that may be used.
        query: band and accents.
        start: the first word.
        steps: how many changes are wanted.
        seed: the same seed gives the same chain.

    Raises:
        PhonodrillError: if the start cannot be in a chain or has no neighbor.
    """
    graph = Graph(pool, query, (start,))
    first = graph.find(start)
    words = _walk(graph, first.entry.word, steps, random.Random(seed))
    if len(words) == 1:
        raise graph.no_way(
            f"no change of one sound makes {start!r} a word of band {query.band} or lower"
        )
    got = len(words) - 1
    notes = () if got == steps else (f"only {got} of {steps} steps found from {start!r}",)
    return Chain(_steps(graph, words), query, seed, notes)


def _walk(graph: Graph, start: str, steps: int, rng: random.Random) -> list[str]:
    """Walk without repeating a word, backwards out of dead ends; return the longest walk."""
    path = [start]
    best = [start]
    ways = [_next_words(graph, path, rng)]
    tries = 0
    while ways and len(best) <= steps and tries < MOST_TRIES:
        tries += 1
        word = next((word for word in ways[-1] if word not in path), None)
        if word is None:
            ways.pop()
            path.pop()
            continue
        path.append(word)
        if len(path) > len(best):
            best = path.copy()
        ways.append(_next_words(graph, path, rng))
    return best


def _next_words(graph: Graph, path: list[str], rng: random.Random) -> Iterator[str]:
    """Yield the next words, those first that change another place than the last two steps did."""
    here = graph.find(path[-1])
    places = [graph.step(graph.find(one), two).place for one, two in pairwise(path[-3:])]
    near = list(graph.neighbors(path[-1]))
    rng.shuffle(near)
    return iter(sorted(near, key=lambda word: places.count(graph.step(here, word).place)))


def _steps(graph: Graph, words: list[str]) -> tuple[Step, ...]:
    first = graph.find(words[0])
    steps = [Step(first.entry.word, first.said)]
    steps += [graph.step(graph.find(before), word) for before, word in pairwise(words)]
    return tuple(steps)


def _keys(normal: str) -> Iterator[str]:
    """Yield what a form shares with its neighbors: one sound open, one left out, one let in."""
    for index in range(len(normal)):
        yield normal[:index] + OPEN + normal[index + 1 :]
    for index in range(len(normal) + 1):
        yield normal[:index] + OPEN + normal[index:]


def _difference(before: str, after: str) -> tuple[int, int, int]:
    """Return where two forms differ: start, and end in each."""
    start = 0
    while start < min(len(before), len(after)) and before[start] == after[start]:
        start += 1
    end_before, end_after = len(before), len(after)
    while min(end_before, end_after) > start and before[end_before - 1] == after[end_after - 1]:
        end_before -= 1
        end_after -= 1
    return start, end_before, end_after


def _named_sounds(before: str, after: str) -> tuple[str, str, int]:
    start, end_before, end_after = _difference(before, after)
    return before[start:end_before], after[start:end_after], start


def _is_one_change(before: str, after: str) -> bool:
    """Whether one sound is changed, added or left off, and no vowel added or parted from its R."""
    start, end_before, end_after = _difference(before, after)
    old, new = before[start:end_before], after[start:end_after]
    if max(len(old), len(new)) != 1 or UNKNOWN in before + after:
        return False
    if "ɝ" in old + new:
        return False
    if len(old) == len(new):
        vowels = (old in NUCLEI) + (new in NUCLEI)
        by_r = vowels and after[end_after : end_after + 1] == "r"
        return vowels in (0, 2) and not by_r
    parts_r = old + new == "r" and start > 0 and before[start - 1] in NUCLEI
    return (old or new) not in NUCLEI and not parts_r


def _place(sound: str, start: int, end: int, after: str) -> str:
    if sound in NUCLEI:
        return "vowel"
    if start == 0:
        return "first"
    return "last" if end == len(after) else "inside"
