"""What is known at a point of the teaching, and whether it is enough to read a word.

A word is decodable when every correspondence in it has been taught. A regular
inflected form is decodable when its ending has been taught in the sound it has
there, and either its own letters or its base word can be read: *hoping* asks
for *hope* and -ing, *hedges* for *hedge* and -es.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import NamedTuple

from phonodrill.graphemes.chunk import ODD_CODE, correspondence_codes
from phonodrill.lexicon.entry import Spelled

WHOLE = "word:"
BaseOf = Callable[[str], str]
"""Gives the stored chunks of a base word, empty if it is not known."""

Way = frozenset[str]
"""Things that together are enough to read a word: codes, ``-ing``, ``word:said``; ODD_CODE
stands for an irregular part, which nothing opens."""


class Known(NamedTuple):
    """What has been taught.

    Attributes:
        things: codes of the correspondences that are open, ``-ing`` for a spelled
            ending, ``word:said`` for a word taught whole.
        ending_codes: characters of all endings that are one chunk, open or not.
    """

    things: frozenset[str]
    ending_codes: frozenset[str]

    def reads(self, word: Spelled, chunks_of: BaseOf) -> bool:
        """Whether a word can be read.

        Args:
            word: with its stored chunks.
            chunks_of: gives the stored chunks of its base.
        """
        return any(way <= self.things for way in ways_to_read(word, chunks_of, self.ending_codes))

    def lacks(self, word: Spelled, chunks_of: BaseOf) -> frozenset[str]:
        """Return what is missing by the letters: codes, ODD_CODE, ``-ing``.

        Of several ways to read the word, the one that lacks least.
        """
        ways = ways_to_read(word, chunks_of, self.ending_codes)
        missing = (way - self.things for way in ways)
        spelled = (way for way in missing if not any(t.startswith(WHOLE) for t in way))
        return min(spelled, key=len, default=frozenset({ODD_CODE}))

    def knows_whole(self, word: str) -> bool:
        """Whether a word was taught whole."""
        return WHOLE + word in self.things


def ways_to_read(word: Spelled, chunks_of: BaseOf, ending_codes: frozenset[str]) -> tuple[Way, ...]:
    """Return every set of things that is enough to read a word.

    Args:
        word: with its stored chunks.
        chunks_of: gives the stored chunks of its base.
        ending_codes: characters of all endings that are one chunk.
    """
    whole = frozenset({WHOLE + word.word})
    own = _by_letters(word.chunks)
    if not word.endings:
        return whole, own
    base = {frozenset({WHOLE + word.base}): None} if word.base != word.word else {}
    if base and (stored := chunks_of(word.base)):
        base[_by_letters(stored)] = None
    stems = (own, *base)
    return (whole, *(stem | end for end in _endings(word, ending_codes) for stem in stems))


def _by_letters(stored: str) -> Way:
    if not stored or ODD_CODE in stored:
        return frozenset({ODD_CODE, *correspondence_codes(stored)})
    return frozenset(correspondence_codes(stored))


def _endings(word: Spelled, ending_codes: frozenset[str]) -> Iterator[Way]:
    """An ending that is one chunk must be open in its sound, another by its spelling."""
    last = word.chunks[-1:]
    if last and last in ending_codes:
        yield frozenset({last})
    else:
        yield from (frozenset({f"-{ending}"}) for ending in word.endings)
