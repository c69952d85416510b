"""Hide dictionary words from the reader, and measure how it reads them."""

from __future__ import annotations

import random
import sqlite3
from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import Any, NamedTuple

from phonodrill.graphemes.reader import PRICE_UNITS, Context, Reader
from phonodrill.graphemes.signs import Sign
from phonodrill.lexicon.alignment import Alignment, WordFacts
from phonodrill.lexicon.entry import Entry
from phonodrill.lexicon.pronunciations import PronunciationRow, Pronunciations
from phonodrill.lexicon.reading_model import ReadingModel, train_reading_model
from phonodrill.lexicon.schema import LEXICON_PATH
from phonodrill.lexicon.store import Lexicon


class Score(NamedTuple):
    """How well words were read.

    Attributes:
        errors: sounds put in, left out or wrong, over the sounds of the reference.
        whole: share of words without any.
    """

    errors: float
    whole: float


class WithoutWords(Lexicon):
    """The lexicon as if some words had never been in it.

    Args:
        hidden: the words.
        highest_band: train on bands 1 to this only; 0 for all words, names too.
    """

    def __init__(self, hidden: frozenset[str], *, highest_band: int = 0) -> None:
        super().__init__()
        self._hidden = hidden
        model = self._train(highest_band)
        known = {
            context: Context(
                {sign: price / PRICE_UNITS for sign, price in zip(signs, prices, strict=True)},
                back_off / PRICE_UNITS,
            )
            for context, back_off, signs, prices in model.contexts
        }

        def fetch(contexts: Sequence[str]) -> Mapping[str, Context]:
            return {context: known[context] for context in contexts if context in known}

        correspondences = {row.code: row.correspondence for row in self.correspondences()}
        signs = {char: Sign(code, said) for char, code, said in model.signs}
        self._trained = Reader(signs, correspondences, fetch)

    def get(self, word: str) -> Entry | None:
        return None if word.lower() in self._hidden else super().get(word)

    def reader(self) -> Reader:
        return self._trained

    def _train(self, highest_band: int) -> ReadingModel:
        pronunciations: Pronunciations = {}
        facts = {}
        chunks = {}
        for word, place, sounds, stress, stored, band in read_rows(
            "SELECT word, place, sounds, stress, chunks, band"
            " FROM pronunciation JOIN word USING (word) ORDER BY word, place"
        ):
            if word in self._hidden or (highest_band and not 0 < band <= highest_band):
                continue
            row = PronunciationRow(word, place, sounds, stress, "", 0, "", "")
            pronunciations.setdefault(word, []).append(row)
            facts[word] = WordFacts(word, (), band, 0.0)
            chunks[word, place] = self.chunks(stored)
        code_of = {row.correspondence: row.code for row in self.correspondences()}
        return train_reading_model(pronunciations, Alignment(chunks, code_of, {}, {}), facts)


def read_rows(query: str) -> list[Any]:
    connection = sqlite3.connect(LEXICON_PATH)
    rows = connection.execute(query).fetchall()
    connection.close()
    return rows


def choose(condition: str, count: int, seed: int) -> list[str]:
    """Choose words of letters only, by an SQL condition on table ``word``."""
    rows = read_rows(f"SELECT word FROM word WHERE {condition} ORDER BY word")
    words = [word for (word,) in rows if word.isalpha() and len(word) > 1]
    return random.Random(seed).sample(words, count)


def with_their_forms(words: Iterable[str]) -> frozenset[str]:
    """Add the inflected forms of words, their bases and those bases' forms, and all with 's."""
    family: dict[str, set[str]] = {}
    for form, base in read_rows("SELECT DISTINCT form, base FROM inflection"):
        family.setdefault(base, set()).add(form)
        family.setdefault(form, set()).add(base)
    found: set[str] = set()
    to_do = list(words)
    while to_do:
        word = to_do.pop()
        if word not in found:
            found.add(word)
            to_do += family.get(word, ())
    return frozenset(found | {f"{word}'s" for word in found})


def normal_forms(words: Iterable[str]) -> dict[str, list[str]]:
    """Return the normal form of every listed pronunciation of some words."""
    found: dict[str, list[str]] = {word: [] for word in words}
    for word, normal in read_rows("SELECT word, normal FROM pronunciation ORDER BY word, place"):
        if word in found:
            found[word].append(normal)
    return found


def score(
    references: Mapping[str, Sequence[str]],
    read: Callable[[str], str],
    fold: Callable[[str], str] = str,
) -> Score:
    """Compare readings with the dictionary: of several variants the nearest counts.

    Args:
        references: word -> normal forms of its variants.
        read: gives the normal form of a reading.
        fold: writes alike what is not to count as a difference.
    """
    wrong = sounds = whole = 0
    for word, variants in references.items():
        heard = fold(read(word))
        errors, length = min((distance(heard, fold(v)), len(fold(v))) for v in variants)
        wrong += errors
        sounds += length
        whole += errors == 0
    return Score(wrong / sounds, whole / len(references))


def distance(one: str, other: str) -> int:
    """Return how many sounds must be put in, taken out or changed (Levenshtein)."""
    row = list(range(len(other) + 1))
    for i, char in enumerate(one, 1):
        above, row[0] = row[0], i
        for j, against in enumerate(other, 1):
            least = min(row[j] + 1, row[j - 1] + 1, above + (char != against))
            above, row[j] = row[j], least
    return row[-1]
