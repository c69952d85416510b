"""Words made of two words, found by computation: letters and sounds both join."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from phonodrill.selection import Spoken
from phonodrill.sounds.places import count_nuclei
from phonodrill.sounds.syllables import clear_syllables
from phonodrill.tasks.change import Words, part_of
from phonodrill.tasks.item import Part

SHORTEST_PART = 2
"""Letters and sounds a part must have: *a* and *i* are no parts."""


class Halves(NamedTuple):
    """A word and its two parts: words themselves, or at least syllables.

    Attributes:
        whole: the word.
        first, second: its parts; their ``word`` is empty where they are none.
    """

    whole: Spoken
    first: Part
    second: Part


def has_two_beats(normal: str) -> bool:
    """Whether a form has two syllables or more.

    >>> has_two_beats("kWbY")
    True
    """
    return count_nuclei(normal) > 1


def halves_of(words: Words, whole: Spoken) -> Halves | None:
    """Part a word in two: at the joint of a compound, else between two clear syllables."""
    found = _at_joint(words, whole)
    if found:
        return found
    said = whole.said
    syllables = clear_syllables(said.sounds, said.stress)
    if len(syllables) != 2:  # noqa: PLR2004
        return None
    cut = len(syllables[0])
    if _parts_a_stem(words, whole, cut):
        return None
    first, second = part_of(said, 0, cut), part_of(said, cut, len(said.sounds))
    # By itself a weak vowel is said in full, so both forms are judged.
    alone = (said.normal[:cut], said.normal[cut:], first.sounds, second.sounds)
    if not all(map(words.may_be_said, alone)):
        return None
    return Halves(whole, first, second)


def _parts_a_stem(words: Words, whole: Spoken, cut: int) -> bool:
    """Whether the cut goes through a word inside the word: keep-er is no kee-per."""
    spelling, normal = whole.entry.word, whole.said.normal
    heard = words.pool.lexicon.every_sound()
    stems = (stem for end in range(cut + 1, len(normal)) for stem in heard.get(normal[:end], ()))
    return any(spelling.startswith(stem.rstrip("ey")) for stem in stems)


def compounds(words: Words) -> Iterator[Halves]:
    """Yield every compound among the stimuli."""
    for whole in words.stimuli(has_two_beats):
        found = _at_joint(words, whole)
        if found:
            yield found


def _at_joint(words: Words, whole: Spoken) -> Halves | None:
    spelling, said = whole.entry.word, whole.said
    if not has_two_beats(said.normal):
        return None
    heard = words.pool.lexicon.every_sound()
    for sounds in range(SHORTEST_PART, len(said.normal) - SHORTEST_PART + 1):
        left, right = said.normal[:sounds], said.normal[sounds:]
        if left not in heard or right not in heard:
            continue
        for letters in range(SHORTEST_PART, len(spelling) - SHORTEST_PART + 1):
            first, second = spelling[:letters], spelling[letters:]
            if first in heard[left] and second in heard[right]:
                parts = _checked(words, whole, sounds, first, second)
                if parts:
                    return parts
    return None


def _checked(words: Words, whole: Spoken, sounds: int, first: str, second: str) -> Halves | None:
    """Both parts have to be plain, familiar words, whatever the accent."""
    said = whole.said
    for word, normal in ((first, said.normal[:sounds]), (second, said.normal[sounds:])):
        found = words.pool.find(word)
        if not found or found.said.normal != normal:
            return None
    return Halves(
        whole,
        part_of(said, 0, sounds)._replace(word=first),
        part_of(said, sounds, len(said.sounds))._replace(word=second),
    )
