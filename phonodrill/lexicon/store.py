"""Open the compiled lexicon and ask it for words: the only reader of the SQLite file."""

from __future__ import annotations

import random
import sqlite3
from collections.abc import Callable, Hashable, Iterable, Iterator, Mapping, Sequence
from itertools import groupby, islice
from operator import itemgetter
from pathlib import Path
from types import TracebackType
from typing import TYPE_CHECKING, Any, Self, TypeVar

from phonodrill.errors import LexiconMissingError
from phonodrill.graphemes.chunk import Chunk, decode
from phonodrill.graphemes.correspondence import Correspondence
from phonodrill.lexicon.entry import (
    Counted,
    Entry,
    FrequentWord,
    Inflection,
    Sentence,
    Spelled,
)
from phonodrill.lexicon.rows import counted_of, entry_of
from phonodrill.lexicon.schema import LEXICON_PATH, SCHEMA_VERSION
from phonodrill.remembered import Remembered

if TYPE_CHECKING:
    from phonodrill.graphemes.reader import Context, Reader

_FIRST_BATCH, _LARGEST_BATCH = 50, 400
_FEW_BY_SOUND = 2000
"""Look-ups by sound after which all known sounds are read at once: that is quicker by then."""
_MOST_RECALLED = 40
"""Results kept of one lexicon: those that a page's visitors ask for at about one time."""
T = TypeVar("T")
_REINSTALL = "install phonodrill again: python -m pip install ."
_ENTRY = """
    SELECT word.word, zipf, band, reason, parts_of_speech, picturable, is_name,
           is_heteronym, base, endings,
           sounds, stress, normal, substr(normal, -rhyme), origin, second_opinion, with_base,
           usable, meaning, chunks, COALESCE(joint.sound, 0),
           endings <> '' AND (word.word GLOB '*e[sd]' OR word.word GLOB '*est')
           OR word.word GLOB '*''s' AND word.word NOT GLOB '*a''s'
           AND word.word NOT GLOB '*ah''s'
    FROM word JOIN pronunciation USING (word) LEFT JOIN joint USING (word, place)
"""


class Lexicon:
    """The compiled lexicon, read-only.

    Use it as a context manager, or call :meth:`close`.

    Args:
        path: the SQLite file; the one that came with the package by default.

    Raises:
        LexiconMissingError: if it is not there, not a lexicon, or of another version.

    >>> with Lexicon() as lexicon:
    ...     lexicon.get("torches").pronunciations[0].arpabet
    'T AO1 R CH IH0 Z'
    """

    def __init__(self, path: Path = LEXICON_PATH) -> None:
        if not path.is_file():
            raise LexiconMissingError(f"the lexicon is not there: {path.name}", _REINSTALL)
        self._heard: dict[str, list[str]] = {}
        self._asked_by_sound = 0
        self._looked_up: dict[str, Entry | None] = {}
        self._correspondences: tuple[Counted, ...] = ()
        self._by_code: dict[str, Correspondence] = {}
        self._reader: Reader | None = None
        self._exceptions: dict[tuple[str, str], tuple[str, str]] = {}
        self._spellings: dict[tuple[str, str], list[tuple[str, str]]] = {}
        self._recalled: Remembered[Hashable, Any] = Remembered(_MOST_RECALLED)
        self._connection = sqlite3.connect(f"{path.as_uri()}?mode=ro&immutable=1", uri=True)
        try:
            version = self.meta("schema")
        except sqlite3.DatabaseError as error:
            self.close()
            raise LexiconMissingError(f"{path.name} is not a lexicon", _REINSTALL) from error
        if version != str(SCHEMA_VERSION):
            self.close()
            raise LexiconMissingError(f"{path.name} has schema {version}", _REINSTALL)

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.close()

    def close(self) -> None:
        """Close the file."""
        self._connection.close()

    def recall(self, key: Hashable, make: Callable[[], T]) -> T:
        """Return what was worked out from this lexicon before, or work it out and keep it.

        Args:
            key: a name for what it is, and all else that it depends on.
            make: works it out.
        """
        found: T = self._recalled.recall(key, make)
        return found

    def get(self, word: str) -> Entry | None:
        """Look one word up by its spelling, in any case.

        Returns:
            The entry, or None if the lexicon lacks it.
        """
        spelling = word.lower()
        if spelling not in self._looked_up:
            found = next(self._entries("WHERE word.word = ?", [spelling]), None)
            self._looked_up[spelling] = found
        return self._looked_up[spelling]

    def entries(self, *, highest_band: int) -> Iterator[Entry]:
        """Yield every entry of bands 1 to ``highest_band``, by spelling."""
        return self._entries("WHERE band > 0 AND band <= ?", [highest_band])

    def matching(
        self,
        *,
        highest_band: int,
        endings: frozenset[str],
        keep: Callable[[str], bool],
        rng: random.Random | None = None,
    ) -> Iterator[Entry]:
        """Yield the entries of bands 1 to ``highest_band`` that a drill may start from.

        Args:
            highest_band: the least familiar band, 1-3.
            endings: spelled endings, one of which they must have as inflected
                forms; empty for words that are no regular form.
            keep: says of a normal form whether a word said so is wanted.
            rng: mixes the order, so that the first few are a fair choice.
        """
        words = self._forms(highest_band, endings) if endings else self.plain_words(highest_band)
        order = list(words)
        if rng:
            rng.shuffle(order)
        # A few items need few of them: so they are asked as they are drawn, and fetched in
        # batches that grow.
        wanted = (word for word in order if any(map(keep, words[word])))
        batch = _FIRST_BATCH
        while fetched := list(islice(wanted, batch)):
            yield from self._fetch(fetched)
            batch = min(2 * batch, _LARGEST_BATCH)

    def heard_as(self, normal: str) -> list[str]:
        """Return the known words (bands 1-3) that a dictionary lists with this normal form."""
        self._asked_by_sound += 1
        if self._heard or self._asked_by_sound > _FEW_BY_SOUND:
            return self.every_sound().get(normal, [])
        rows = self._connection.execute("SELECT word FROM heard WHERE normal = ?", [normal])
        return [word for (word,) in rows]

    def plain_words(self, highest_band: int) -> dict[str, list[str]]:
        """Return ``word -> its normal forms`` for words of bands 1 to ``highest_band``.

        Regular inflected forms are not among them.
        """
        rows = self._connection.execute(
            "SELECT word, normal FROM heard WHERE band <= ? AND NOT is_form", [highest_band]
        )
        return _listed(rows)

    def every_sound(self) -> Mapping[str, list[str]]:
        """Return ``normal form -> known words (bands 1-3)`` as :meth:`heard_as` does for one."""
        if not self._heard:
            self._heard = _listed(self._connection.execute("SELECT normal, word FROM heard"))
        return self._heard

    def is_listed(self, normal: str) -> bool:
        """Whether a word of the dictionary, of any band or none, may be said like this."""
        rows = self._connection.execute(
            "SELECT 1 FROM pronunciation WHERE normal = ? LIMIT 1", [normal]
        )
        return rows.fetchone() is not None

    def sounding_like(self, normal: str) -> list[Entry]:
        """Return every entry, of any band, that may be said like this."""
        words = self._connection.execute(
            "SELECT DISTINCT word FROM pronunciation WHERE normal = ? AND usable", [normal]
        ).fetchall()
        return [entry for (word,) in words if (entry := self.get(word))]

    def rhyming_with(self, rhyme: str, *, highest_band: int) -> list[str]:
        """Return words of bands 1 to ``highest_band`` whose first usable pronunciation rhymes."""
        rows = self._connection.execute(
            "SELECT word FROM pronunciation AS way JOIN word USING (word)"
            " WHERE substr(way.normal, -way.rhyme) = ? AND way.usable"
            " AND band > 0 AND band <= ? AND way.place = (SELECT MIN(place) FROM pronunciation"
            " AS other WHERE other.word = way.word AND other.usable) ORDER BY word",
            [rhyme, highest_band],
        )
        return [word for (word,) in rows]

    def bases_of(self, form: str) -> list[Inflection]:
        """Return the bases a form is listed under."""
        return self._inflections("form", form)

    def forms_of(self, base: str) -> list[Inflection]:
        """Return the inflected forms listed under a base."""
        return self._inflections("base", base)

    def forms_ending_in(self, letters: str) -> list[Inflection]:
        """Return the inflected forms that end in these letters."""
        rows = self._connection.execute(
            "SELECT * FROM inflection WHERE substr(form, ?) = ?", [-len(letters), letters]
        )
        return [Inflection(*row) for row in rows]

    def listed_forms(self) -> Iterator[tuple[str, str, str, str]]:
        """Yield ``(form, inflection, ending, last sound of the base)``, once a way to say it."""
        yield from self._connection.execute(
            "SELECT DISTINCT form, inflection, ending, substr(sounds, -1)"
            " FROM inflection JOIN pronunciation ON word = base WHERE usable"
        )

    def never_say(self) -> Iterator[tuple[str, str, str, str]]:
        """Yield ``(word, normal form, category, what it blocks)``."""
        yield from self._connection.execute("SELECT * FROM never_say")

    def not_inflected(self) -> list[str]:
        """Return the words judged to have no base although they look so."""
        return [word for (word,) in self._connection.execute("SELECT word FROM not_inflected")]

    def only_looks_inflected(self, word: str) -> str:
        """Return why a word has no base although it looks so, or an empty string."""
        row = self._connection.execute(
            "SELECT why FROM not_inflected WHERE word = ?", [word]
        ).fetchone()
        return row[0] if row else ""

    def ending_exceptions(self) -> dict[tuple[str, str], tuple[str, str]]:
        """Return ``(form, base) -> (sound of the ending, watch-out)``."""
        if not self._exceptions:
            rows = self._connection.execute("SELECT * FROM ending_exception")
            for form, base, sound, watch_out in rows:
                self._exceptions[form, base] = (sound, watch_out)
        return self._exceptions

    def ending_spellings(self) -> dict[tuple[str, str], list[tuple[str, str]]]:
        """Return ``(base, ending) -> [(part of speech, rule)]`` that no rule foretells."""
        if not self._spellings:
            rows = self._connection.execute("SELECT * FROM ending_spelling")
            for base, ending, part, rule in rows:
                self._spellings.setdefault((base, ending), []).append((part, rule))
        return self._spellings

    def derived_words(self, word: str = "") -> list[tuple[str, str, str, str]]:
        """Return ``(word, base, ending, part of speech)`` of words in er, ly and y.

        Args:
            word: only of this word; empty for all.
        """
        asked = ("WHERE word = ?", [word]) if word else ("", [])
        rows = self._connection.execute(
            f"SELECT * FROM derived_word {asked[0]} ORDER BY word, base",  # noqa: S608
            asked[1],
        )
        return list(rows)

    def sentences(self, word: str) -> list[Sentence]:
        """Return the sentences of the bank for a word in this very form."""
        rows = self._connection.execute(
            "SELECT * FROM sentence WHERE word = ? ORDER BY part_of_speech, text", [word.lower()]
        )
        return [Sentence(*row) for row in rows]

    def all_sentences(self) -> list[Sentence]:
        """Return the whole bank, by word."""
        rows = self._connection.execute(
            "SELECT * FROM sentence ORDER BY word, part_of_speech, text"
        )
        return [Sentence(*row) for row in rows]

    def high_frequency(self) -> list[FrequentWord]:
        """Return the words most used in text for children, the most used first."""
        rows = self._connection.execute("SELECT * FROM high_frequency ORDER BY place")
        return [FrequentWord(word, place, bool(dolch), odd) for word, place, dolch, odd in rows]

    def disagreements(self) -> list[tuple[str, str, str, str]]:
        """Return forms that are not base + ending: ``(word, base, expected, found)``."""
        rows = self._connection.execute("SELECT * FROM disagreement ORDER BY word, base")
        return list(rows)

    def correspondences(self) -> tuple[Counted, ...]:
        """Return the inventory of correspondences, the commonest first."""
        if not self._correspondences:
            rows = self._connection.execute(
                "SELECT code, spelling, sounds, kind, is_regular, example, words, uses"
                " FROM correspondence ORDER BY words DESC, code"
            )
            self._correspondences = tuple(counted_of(row) for row in rows)
        return self._correspondences

    def chunks(self, stored: str) -> tuple[Chunk, ...]:
        """Return the chunks of a pronunciation: letters tied to sounds.

        Args:
            stored: ``Pronunciation.chunks``; empty for an abbreviation.
        """
        return decode(stored, self._correspondence_by_code())

    def reader(self) -> Reader:
        """Return the reader of spellings that the lexicon lacks; it works while this is open."""
        if self._reader is None:
            from phonodrill.graphemes.reader import Reader
            from phonodrill.graphemes.signs import Sign

            rows = self._connection.execute("SELECT sign, code, said FROM reading_sign")
            signs = {sign: Sign(code, said) for sign, code, said in rows}
            self._reader = Reader(signs, self._correspondence_by_code(), self._contexts)
        return self._reader

    def chunks_of(self, word: str) -> str:
        """Return the stored chunks of a word's first usable pronunciation, or an empty string."""
        entry = self.get(word)
        return next((said.chunks for said in entry.usable_pronunciations), "") if entry else ""

    def spelled(self, *, highest_band: int, one_syllable: bool = False) -> list[Spelled]:
        """Return the words of bands 1 to ``highest_band`` that a drill may use, by spelling.

        Names, heteronyms, letters, contractions, interjections and words that need a capital
        are left out.
        The gate is not asked.

        Args:
            highest_band: the least familiar band, 1-3.
            one_syllable: whether longer words are left out, too.
        """
        rows = self._connection.execute(
            "SELECT word, band, zipf, base, endings, sounds, stress, normal, chunks, normals"
            " FROM spelled WHERE band <= ? AND (length(stress) = 1 OR ?) ORDER BY word",
            [highest_band, not one_syllable],
        )
        # Thousands of rows in a short command: no call for each.
        return [
            Spelled(
                *(word, band, zipf / 100, base or word),
                tuple(endings.split(",")) if endings else (),
                *(sounds, stress, normal, chunks),
                (normal,) if normals == normal else tuple(normals.split(",")),
            )
            for word, band, zipf, base, endings, sounds, stress, normal, chunks, normals in rows
        ]

    def sources(self) -> list[tuple[str, str, str, str, str]]:
        """Return ``(name, version, license, credit, used for)`` of every source."""
        return list(self._connection.execute("SELECT * FROM source ORDER BY name"))

    def words(self, *, highest_band: int) -> list[str]:
        """Return the spellings of bands 1 to ``highest_band``."""
        rows = self._connection.execute(
            "SELECT word FROM word WHERE band > 0 AND band <= ?", [highest_band]
        )
        return [word for (word,) in rows]

    def count(self, table: str, condition: str = "1") -> int:
        """Count the rows of a table that fulfil an SQL condition of ours."""
        row = self._connection.execute(f"SELECT COUNT(*) FROM {table} WHERE {condition}")  # noqa: S608
        return int(row.fetchone()[0])

    def meta(self, key: str) -> str:
        """Return one value of the ``meta`` table, or an empty string."""
        row = self._connection.execute("SELECT value FROM meta WHERE key = ?", [key]).fetchone()
        return row[0] if row else ""

    def _correspondence_by_code(self) -> Mapping[str, Correspondence]:
        if not self._by_code:
            self._by_code = {row.code: row.correspondence for row in self.correspondences()}
        return self._by_code

    def _contexts(self, contexts: Sequence[str]) -> dict[str, Context]:
        from phonodrill.graphemes.reader import PRICE_UNITS, Context

        places = ", ".join("?" * len(contexts))
        rows = self._connection.execute(
            f"SELECT * FROM reading_context WHERE context IN ({places})",  # noqa: S608
            contexts,
        )
        return {
            context: Context(
                {sign: price / PRICE_UNITS for sign, price in zip(signs, prices, strict=True)},
                back_off / PRICE_UNITS,
            )
            for context, back_off, signs, prices in rows
        }

    def _inflections(self, column: str, word: str) -> list[Inflection]:
        rows = self._connection.execute(
            f"SELECT * FROM inflection WHERE {column} = ? ORDER BY form, base",  # noqa: S608
            [word],
        )
        return [Inflection(*row) for row in rows]

    def _fetch(self, words: list[str]) -> list[Entry]:
        """Look up many words at once, in the order given."""
        missing = [word for word in words if word not in self._looked_up]
        places = ", ".join("?" * len(missing))
        for entry in self._entries(f"WHERE word.word IN ({places})", missing):
            self._looked_up[entry.word] = entry
        return [found for word in words if (found := self.get(word))]

    def _forms(self, highest_band: int, endings: frozenset[str]) -> dict[str, list[str]]:
        places = ", ".join("?" * len(endings))
        rows = self._connection.execute(
            "SELECT word, normal FROM word_ending JOIN pronunciation USING (word)"  # noqa: S608
            f" WHERE ending IN ({places}) AND band BETWEEN 1 AND ? AND usable"
            " ORDER BY word",
            [*sorted(endings), highest_band],
        )
        return _listed(rows)

    def _entries(self, condition: str, values: Sequence[object]) -> Iterator[Entry]:
        rows = self._connection.execute(
            f"{_ENTRY} {condition} ORDER BY word.word, pronunciation.place", values
        )
        for _, variants in groupby(rows, key=itemgetter(0)):
            yield entry_of(list(variants))


def _listed(pairs: Iterable[tuple[str, str]]) -> dict[str, list[str]]:
    listed: dict[str, list[str]] = {}
    for key, value in pairs:
        # Thousands of rows in a short command: no list is made in vain.
        if key in listed:
            listed[key].append(value)
        else:
            listed[key] = [value]
    return listed
