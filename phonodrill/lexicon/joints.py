"""Where two words are joined, so that a syllable begins there: *bed-room*, not *be-droom*."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from collections.abc import Set as AbstractSet

from phonodrill.lexicon.pronunciations import Pronunciations
from phonodrill.sounds.syllables import syllable_starts

SHORTEST_PART = 2
PREFIXES = frozenset({"dis", "mis", "non", "sub", "un"})
"""Those that end in a consonant, which stays with them: *un-able*, *dis-like*."""
STOPS = "ptk"
"""An s goes with these even behind a prefix (as dictionaries have *mistake*; from memory)."""
WEAK_TAILS = {
    "ful": "fəl",
    "less": "ləs",
    "ly": "li",
    "man": "mən",
    "men": "mən",
    "ment": "mənt",
    "ments": "mənts",
    "ness": "nəs",
}
"""Second parts that are no words by themselves, or said otherwise there -> normal form."""


def find_joints(
    pronunciations: Pronunciations, known: AbstractSet[str]
) -> Iterator[tuple[str, int, int]]:
    """Yield a row for each way to say a word in which a joint is no syllable's start by rule.

    Args:
        pronunciations: every word in every way.
        known: the words that are looked at, and that may be parts.

    Yields:
        The word, the place of the pronunciation, the index of the second part's first sound.
    """
    ways = {word: {row.normal for row in pronunciations[word] if row.usable} for word in known}
    for tail, normal in WEAK_TAILS.items():
        ways[tail] = {normal, *ways.get(tail, ())}
    for word in sorted(known):
        for row in pronunciations[word]:
            joint = joint_of(word, row.normal, ways)
            if joint and joint not in syllable_starts(row.sounds):
                yield word, row.place, joint


def joint_of(word: str, normal: str, ways: Mapping[str, AbstractSet[str]]) -> int:
    """Return the index of the sound with which the second part of a word begins, or 0.

    Args:
        word: the spelling.
        normal: normal form of how it is said.
        ways: known word -> its normal forms; the first part may be a prefix instead.

    >>> joint_of("bedroom", "bɛdrum", {"bed": {"bɛd"}, "room": {"rum"}})
    3
    """
    for cut in range(SHORTEST_PART, len(word) - SHORTEST_PART + 1):
        first = word[:cut]
        for tail in sorted(ways.get(word[cut:], ())):
            head = normal.removesuffix(tail)
            if head == normal:
                continue
            is_behind_prefix = first in PREFIXES and not (head[-1] == "s" and tail[0] in STOPS)
            if is_behind_prefix or head in ways.get(first, ()):
                return len(head)
    return 0
