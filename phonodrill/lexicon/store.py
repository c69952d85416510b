"""Open the compiled lexicon and ask it for words: the only reader of the SQLite file."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable, Iterator
from pathlib import Path
from types import TracebackType
from typing import Any

from phonodrill.errors import LexiconMissingError
from phonodrill.lexicon.entry import Entry, Inflection, Pronunciation
from phonodrill.lexicon.schema import LEXICON_PATH, SCHEMA_VERSION

_REINSTALL = "install phonodrill again: python -m pip install ."
_ENTRY = """
    SELECT word.word, zipf, band, reason, word.parts_of_speech, picturable, is_name,
           is_heteronym, base, endings,
           sounds, stress, normal, substr(normal, -rhyme), origin, second_opinion, with_base,
           usable, COALESCE(meaning, '')
    FROM word JOIN pronunciation USING (word)
    LEFT JOIN reading ON reading.word = word.word AND reading.place = pronunciation.place
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
        self._connection = sqlite3.connect(f"{path.as_uri()}?mode=ro&immutable=1", uri=True)
        try:
            version = self.meta("schema")
        except sqlite3.DatabaseError as error:
            self.close()
            raise LexiconMissingError(f"{path.name} is not a lexicon", _REINSTALL) from error
        if version != str(SCHEMA_VERSION):
            self.close()
            raise LexiconMissingError(f"{path.name} has schema {version}", _REINSTALL)

    def __enter__(self) -> Lexicon:
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

    def get(self, word: str) -> Entry | None:
        """Look one word up by its spelling, in any case.

        Returns:
            The entry, or None if the lexicon lacks it.
        """
        return next(self._entries("WHERE word.word = ?", [word.lower()]), None)

    def entries(self, *, highest_band: int) -> Iterator[Entry]:
        """Yield every entry of bands 1 to ``highest_band``, in order of spelling."""
        return self._entries("WHERE band > 0 AND band <= ?", [highest_band])

    def sounding_like(self, normal: str) -> list[Entry]:
        """Return every entry with this normal form among its pronunciations."""
        condition = "WHERE word.word IN (SELECT word FROM pronunciation WHERE normal = ?)"
        return list(self._entries(condition, [normal]))

    def rhyming_with(self, rhyme: str, *, highest_band: int) -> list[str]:
        """Return words of bands 1 to ``highest_band`` whose first usable pronunciation rhymes."""
        rows = self._connection.execute(
            "SELECT word FROM word JOIN pronunciation USING (word)"
            " WHERE band > 0 AND band <= ? AND usable GROUP BY word"
            " HAVING MIN(place) = place AND substr(normal, -rhyme) = ? ORDER BY word",
            [highest_band, rhyme],
        )
        return [word for (word,) in rows]

    def bases_of(self, form: str) -> list[Inflection]:
        """Return the bases a form is listed under."""
        return self._inflections("form", form)

    def forms_of(self, base: str) -> list[Inflection]:
        """Return the inflected forms listed under a base."""
        return self._inflections("base", base)

    def never_say(self) -> Iterator[tuple[str, str, str, str]]:
        """Yield ``(word, normal form, category, what it blocks)``."""
        yield from self._connection.execute("SELECT * FROM never_say")

    def ending_exceptions(self) -> dict[tuple[str, str], tuple[str, str]]:
        """Return ``(form, base) -> (sound of the ending, watch-out)``."""
        rows = self._connection.execute("SELECT * FROM ending_exception")
        return {(form, base): (sound, watch_out) for form, base, sound, watch_out in rows}

    def disagreements(self) -> list[tuple[str, str, str, str]]:
        """Return forms that are not base + ending: ``(word, base, expected, found)``."""
        rows = self._connection.execute("SELECT * FROM disagreement ORDER BY word, base")
        return list(rows)

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

    def _inflections(self, column: str, word: str) -> list[Inflection]:
        rows = self._connection.execute(
            f"SELECT * FROM inflection WHERE {column} = ? ORDER BY form, base",  # noqa: S608
            [word],
        )
        return [Inflection(*row) for row in rows]

    def _entries(self, condition: str, values: Iterable[object]) -> Iterator[Entry]:
        query = f"{_ENTRY} {condition} ORDER BY word.word, pronunciation.place"
        word: tuple[Any, ...] = ()
        said: list[Pronunciation] = []
        for row in self._connection.execute(query, list(values)):
            if said and row[0] != word[0]:
                yield _entry(word, said)
                said = []
            word = row[:10]
            said.append(Pronunciation(*row[10:]))
        if said:
            yield _entry(word, said)


def stored_fingerprint(path: Path) -> str:
    """Return what a compiled lexicon was made from, or an empty string if there is none."""
    try:
        with Lexicon(path) as lexicon:
            return lexicon.meta("fingerprint")
    except LexiconMissingError:
        return ""


def _entry(word: tuple[Any, ...], said: list[Pronunciation]) -> Entry:
    spelling, zipf, band, reason, parts, picturable, is_name, is_heteronym, base, endings = word
    return Entry(
        spelling,
        zipf,
        band,
        reason,
        tuple(parts.split(",")) if parts else (),
        bool(picturable),
        bool(is_name),
        bool(is_heteronym),
        base,
        tuple(endings.split(",")) if endings else (),
        tuple(said),
    )
