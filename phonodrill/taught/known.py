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
        ending_codes: characters of all endings, open or not.
    """

    codes: frozenset[str]
    endings: frozenset[str]
    words: frozenset[str]
    ending_codes: frozenset[str]

    def reads(self, word: Spelled, chunks_of: BaseOf) -> bool:
        """Whether a word can be read.

        Args:
            word: with its stored chunks.
            chunks_of: gives the stored chunks of its base.
        """
        return word.word in self.words or not self.lacks(word, chunks_of)

    def lacks(self, word: Spelled, chunks_of: BaseOf) -> frozenset[str]:
        """Return what is missing: codes, ODD_CODE for an irregular part, ``-ing`` for that ending.

        Where the form's own letters and its base lack different things, the fewer.
        """
        own = self._missing(word.chunks)
        if not word.endings:
            return own
        ending = self._missing_ending(word)
        if word.base in self.words:
            return ending
        base = self._missing(chunks_of(word.base)) if word.base != word.word else own
        return min(own, base | ending, key=len) | ending

    def _missing(self, chunks: str) -> frozenset[str]:
        if not chunks:
            return frozenset(ODD_CODE)
        return frozenset(chunks) - self.codes - _NO_CORRESPONDENCE

    def _missing_ending(self, word: Spelled) -> frozenset[str]:
        """An ending that is one chunk must be open in its sound, another by its spelling."""
        last = word.chunks[-1:]
        if last in self.ending_codes:
            return frozenset(last) - self.codes
        if self.endings.isdisjoint(word.endings):
            return frozenset({f"-{word.endings[0]}"})
        return frozenset()


_NO_CORRESPONDENCE = frozenset(CLOSING_CODE + "0123456789")
