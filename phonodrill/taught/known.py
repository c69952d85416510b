"""What is known at a point of the teaching, and whether it is enough to read a word.

A word is decodable when every correspondence in it has been taught. A regular
inflected form is decodable when its ending has been taught and either its own
letters or its base word can be read: *hoping* asks for *hope* and -ing.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from phonodrill.graphemes.chunk import CLOSING_CODE, ODD_CODE
from phonodrill.lexicon.entry import Spelled

BaseOf = Callable[[str], str]
"""Gives the stored chunks of a base word, empty if it is not known."""


class Known(NamedTuple):
    """What has been taught.

    Attributes:
        codes: characters of the correspondences that are open.
        endings: spelled endings that are open.
        words: words taught whole.
    """

    codes: frozenset[str]
    endings: frozenset[str]
    words: frozenset[str]

    def reads(self, word: Spelled, chunks_of: BaseOf) -> bool:
        """Whether a word can be read.

        Args:
            word: with its stored chunks.
            chunks_of: gives the stored chunks of its base.
        """
        return word.word in self.words or not self.lacks(word, chunks_of)

    def lacks(self, word: Spelled, chunks_of: BaseOf) -> frozenset[str]:
        """Return what is missing: codes, ODD_CODE for an irregular part, ``-es`` for an ending.

        Where the form's own letters and its base lack different things, the fewer.
        """
        ways = [self._missing(word.chunks)]
        if not word.endings:
            return ways[0]
        if word.base in self.words:
            ways.append(frozenset())
        elif word.base != word.word:
            ways.append(self._missing(chunks_of(word.base)))
        lacking = frozenset[str]()
        if self.endings.isdisjoint(word.endings):
            lacking = frozenset({f"-{word.endings[0]}"})
        return min(ways, key=len) | lacking

    def _missing(self, chunks: str) -> frozenset[str]:
        if not chunks:
            return frozenset(ODD_CODE)
        return frozenset(chunks) - self.codes - _NO_CORRESPONDENCE


_NO_CORRESPONDENCE = frozenset(CLOSING_CODE + "0123456789")
