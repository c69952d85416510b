"""Every way to split a word by the inventory, and the best of them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from enum import IntEnum
from typing import NamedTuple

from phonodrill.graphemes.correspondence import VOWEL_LETTERS
from phonodrill.graphemes.inventory import (
    ALIGNED_VOWELS,
    CLOSING,
    BeforeR,
    Inventory,
    Reading,
    is_long,
    is_vowel,
)

CLOSES = -2
"""Stands for the silent e that closes a split vowel."""
ODD = -1
"""Stands for letters and sounds that the inventory does not tie."""
_ODD_PRICE = 25.0
_ODD_PRICE_PER_SYMBOL = 3.0
_MIXED_PRICE = 12.0
_ODD_LETTERS = 3
_ODD_SOUNDS = 2
_CONSONANTS_INSIDE = "st"
_SILENT_PRICE = 7.0
"""A silent letter is a last resort: *are* is one spelling, not ar and a silent e."""
_BEFORE_VOWEL_PRICE = 8.0
"""A silent e stands before a vowel letter only where words are joined (*someone*)."""


class Node(NamedTuple):
    """How far a path has come, and what it may do next.

    Attributes:
        letter, sound: how many were used.
        split: index of the split vowel that waits for its e, or -1.
        letters_inside, sounds_inside: what was used since that vowel.
        after_long: whether a long vowel of one letter was just used.
    """

    letter: int
    sound: int
    split: int = -1
    letters_inside: str = ""
    sounds_inside: str = ""
    after_long: bool = False


class Edge(NamedTuple):
    """One correspondence on a path.

    Attributes:
        start, end: where it begins and where it leads.
        row: index of the correspondence, or :data:`CLOSES` or :data:`ODD`.
        price: added to that of the correspondence.
    """

    start: Node
    end: Node
    row: int
    price: float = 0.0


class Lattice(NamedTuple):
    """Every way to split a word; the edges into a node come before those out of it."""

    edges: tuple[Edge, ...]
    start: Node
    end: Node


class Allow(IntEnum):
    """What may stand on a path."""

    PATTERNS = 0
    ODD_SILENCE = 1
    ANYTHING = 2


def build_lattice(
    inventory: Inventory, word: str, sounds: str, allow: Allow = Allow.PATTERNS
) -> Lattice | None:
    """Build the lattice of a word.

    Args:
        inventory: the correspondences.
        word: the letters.
        sounds: as :func:`~phonodrill.graphemes.inventory.aligned_form` gives them.
        allow: only what the inventory ties; also letters silent against every
            pattern; or also letters that stand for sounds the inventory does not tie.

    Returns:
        The lattice without dead ends, or None if there is no way through.
    """
    start = Node(0, 0)
    reached: list[dict[Node, None]] = [{} for _ in range(len(word) + 1)]
    reached[0][start] = None
    edges: list[Edge] = []
    for nodes in reached[:-1]:
        for node in nodes:
            steps = [*_steps(inventory, word, sounds, node)]
            if node.split < 0:
                if allow >= Allow.ODD_SILENCE:
                    steps += _odd_silence(inventory, word, node)
                if allow is Allow.ANYTHING:
                    steps += _odd_steps(word, sounds, node)
            for edge in steps:
                reached[edge.end.letter][edge.end] = None
            edges += steps
    ends = {node for node in reached[-1] if node.sound == len(sounds) and node.split < 0}
    return _without_dead_ends(edges, start, ends) if ends else None


def best_path(lattice: Lattice, prices: Sequence[float]) -> list[Edge]:
    """Return the cheapest path (Viterbi).

    Args:
        lattice: the ways to split a word.
        prices: negative log weight of each correspondence.
    """
    best: dict[Node, tuple[float, Edge | None]] = {lattice.start: (0.0, None)}
    for edge in lattice.edges:
        price = best[edge.start][0] + edge.price + (prices[edge.row] if edge.row >= 0 else 0.0)
        if edge.end not in best or price < best[edge.end][0]:
            best[edge.end] = (price, edge)
    path: list[Edge] = []
    last = best[lattice.end][1]
    while last:
        path.append(last)
        last = best[last.start][1]
    return path[::-1]


def _without_dead_ends(edges: list[Edge], start: Node, ends: set[Node]) -> Lattice:
    """Keep the edges that lead to an end, and make all ends one."""
    end = next(iter(ends))._replace(after_long=False)
    live = set(ends)
    kept: list[Edge] = []
    for edge in reversed(edges):
        if edge.end in live:
            live.add(edge.start)
            kept.append(edge._replace(end=end) if edge.end in ends else edge)
    return Lattice(tuple(reversed(kept)), start, end)


def _steps(inventory: Inventory, word: str, sounds: str, node: Node) -> Iterator[Edge]:
    at, heard = node.letter, node.sound
    if node.split >= 0 and word[at] == CLOSING and _may_close(inventory, node):
        yield Edge(node, Node(at + 1, heard), CLOSES, _price_of_e(word, at + 1))
    for past in range(at + 1, min(at + inventory.longest, len(word)) + 1):
        letters = word[at:past]
        for reading in inventory.plain.get(letters, ()):
            if sounds.startswith(reading.sounds, heard) and _fits(reading, node, word, past):
                end = _after(node, letters, reading)
                if end:
                    price = _price_of_e(word, past) if reading.has_silent_e else 0.0
                    yield Edge(node, end, reading.row, price if reading.sounds else _SILENT_PRICE)
    if node.split < 0 and CLOSING in word[at + 2 :]:
        for reading in inventory.split.get(word[at], ()):
            if sounds.startswith(reading.sounds, heard):
                end = Node(at + 1, heard + len(reading.sounds), reading.row)
                yield Edge(node, end, reading.row)


def _fits(reading: Reading, node: Node, word: str, past: int) -> bool:
    """Whether the conventions allow a reading where it stands."""
    if node.after_long and reading.has_silent_e:
        return False
    if reading.before_r is BeforeR.ANYWHERE:
        return True
    is_doubled = word.startswith("rr", past)
    if reading.before_r is BeforeR.NOT_SINGLE:
        return is_doubled or not word.startswith("r", past)
    return is_doubled is (reading.before_r is BeforeR.ONLY_DOUBLED)


def _price_of_e(word: str, past: int) -> float:
    return _BEFORE_VOWEL_PRICE if word[past : past + 1] in VOWEL_LETTERS else 0.0


def _after(node: Node, letters: str, reading: Reading) -> Node | None:
    said = reading.sounds
    at, heard = node.letter + len(letters), node.sound + len(said)
    if node.split < 0:
        return Node(at, heard, after_long=reading.is_long)
    inside = node.letters_inside + letters
    if said and not is_vowel(said[0]) and inside in (letters, _CONSONANTS_INSIDE):
        return Node(at, heard, node.split, inside, node.sounds_inside + said)
    return None


def _may_close(inventory: Inventory, node: Node) -> bool:
    """Whether the e belongs to the split vowel, not to the consonant before it (que, gue)."""
    if not node.letters_inside or node.letters_inside.endswith("u"):
        return False
    with_e = inventory.plain.get(node.letters_inside + CLOSING, ())
    return is_long(inventory.rows[node.split]) or all(
        reading.sounds != node.sounds_inside for reading in with_e
    )


def _odd_silence(inventory: Inventory, word: str, node: Node) -> Iterator[Edge]:
    for reading in inventory.odd_silent.get(word[node.letter], ()):
        yield Edge(node, Node(node.letter + 1, node.sound), reading.row, _SILENT_PRICE)


def _odd_steps(word: str, sounds: str, node: Node) -> Iterator[Edge]:
    for more in range(1, min(_ODD_LETTERS, len(word) - node.letter) + 1):
        letters = word[node.letter : node.letter + more]
        for heard in range(min(_ODD_SOUNDS, len(sounds) - node.sound) + 1):
            said = sounds[node.sound : node.sound + heard]
            price = _ODD_PRICE + _ODD_PRICE_PER_SYMBOL * (more + heard)
            if not _alike(letters, said):
                if more > 1:
                    continue
                price += _MIXED_PRICE
            yield Edge(node, Node(node.letter + more, node.sound + heard), ODD, price)


def _alike(letters: str, said: str) -> bool:
    """Whether vowel letters stand for vowels only, or consonant letters for consonants only."""
    if letters[0] in VOWEL_LETTERS:
        return VOWEL_LETTERS.issuperset(letters) and ALIGNED_VOWELS.issuperset(said)
    return VOWEL_LETTERS.isdisjoint(letters) and ALIGNED_VOWELS.isdisjoint(said)
