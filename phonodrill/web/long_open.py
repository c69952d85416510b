"""A lexicon that stays open for days and is asked by many."""

from __future__ import annotations

from pathlib import Path

from phonodrill.lexicon.entry import Entry, Sentence, Spelled
from phonodrill.lexicon.schema import LEXICON_PATH
from phonodrill.lexicon.store import Lexicon

MOST_LOOKED_UP = 20_000
"""Words kept once looked up: more than are in bands 1 to 3, few beside what may be typed."""


class LongOpenLexicon(Lexicon):
    """Keeps the known words, which every page asks for, and no more than so many others.

    Args:
        path: the SQLite file.
    """

    def __init__(self, path: Path = LEXICON_PATH) -> None:
        super().__init__(path)
        self._plain: dict[int, dict[str, list[str]]] = {}
        self._spelled: dict[int, list[Spelled]] = {}
        self._bank: list[Sentence] = []
        self._given_forms: dict[tuple[int, frozenset[str]], dict[str, list[str]]] = {}

    def get(self, word: str) -> Entry | None:
        """Look a word up; forget the others when they are too many."""
        if len(self._looked_up) >= MOST_LOOKED_UP:
            self._looked_up.clear()
        return super().get(word)

    def plain_words(self, highest_band: int) -> dict[str, list[str]]:
        """Return ``word -> its normal forms``, the same lists each time."""
        if highest_band not in self._plain:
            self._plain[highest_band] = super().plain_words(highest_band)
        return self._plain[highest_band]

    def spelled(self, *, highest_band: int, one_syllable: bool = False) -> list[Spelled]:
        """Return the words that a drill may use; each time a list of its own."""
        if one_syllable:
            return super().spelled(highest_band=highest_band, one_syllable=True)
        if highest_band not in self._spelled:
            self._spelled[highest_band] = super().spelled(highest_band=highest_band)
        return [*self._spelled[highest_band]]

    def all_sentences(self) -> list[Sentence]:
        """Return the whole bank of sentences; each time a list of its own."""
        self._bank = self._bank or super().all_sentences()
        return [*self._bank]

    def _forms(self, highest_band: int, endings: frozenset[str]) -> dict[str, list[str]]:
        key = (highest_band, endings)
        if key not in self._given_forms:
            self._given_forms[key] = super()._forms(highest_band, endings)
        return self._given_forms[key]
