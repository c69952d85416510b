"""What the lexicon lists about forms and bases, asked for one by one or read at once."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Protocol

from phonodrill.lexicon.entry import Inflection
from phonodrill.lexicon.store import Lexicon

Derived = tuple[str, str, str, str]
"""(word, base, ending, part of speech) of a word in er, ly or y."""


class Listings(Protocol):
    """What is asked about a form before its base is known; a :class:`Lexicon` answers it, too."""

    def bases_of(self, form: str) -> list[Inflection]:
        """Return the bases a form is listed under."""

    def derived_words(self, word: str) -> list[Derived]:
        """Return the bases a word in er, ly or y is made from."""

    def only_looks_inflected(self, word: str) -> str:
        """Return why a word has no base although it looks so, or an empty string."""


class ReadAhead:
    """The listings of all forms with some endings, read at once: for thousands of look-ups.

    What ends in other letters is looked up singly.

    Args:
        lexicon: the open lexicon.
        endings: spelled endings.
    """

    def __init__(self, lexicon: Lexicon, endings: Iterable[str]) -> None:
        self._lexicon = lexicon
        # Forms in -es end in s, too: the shortest letters cover the others.
        self._read = tuple(
            letters
            for letters in dict.fromkeys(endings)
            if not any(letters != other and letters.endswith(other) for other in endings)
        )
        self._bases: dict[str, list[Inflection]] = {}
        for letters in self._read:
            for row in lexicon.forms_ending_in(letters):
                self._bases.setdefault(row.form, []).append(row)
        self._derived: dict[str, list[Derived]] = {}
        for derived in lexicon.derived_words():
            self._derived.setdefault(derived[0], []).append(derived)
        self._judged = frozenset(lexicon.not_inflected())

    def bases_of(self, form: str) -> list[Inflection]:
        """Return the bases a form is listed under."""
        if form.endswith(self._read):
            return sorted(self._bases.get(form, []), key=lambda row: row.base)
        return self._lexicon.bases_of(form)

    def derived_words(self, word: str) -> list[Derived]:
        """Return the bases a word in er, ly or y is made from."""
        return self._derived.get(word, [])

    def only_looks_inflected(self, word: str) -> str:
        """Return why a word has no base although it looks so, or an empty string."""
        return self._lexicon.only_looks_inflected(word) if word in self._judged else ""
