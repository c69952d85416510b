"""Compile the outside data and our tables into one SQLite file (install time only)."""

from __future__ import annotations

import hashlib
import sqlite3
from collections.abc import Callable, Iterable, Iterator
from contextlib import closing
from dataclasses import asdict, dataclass, fields, replace
from functools import cache
from operator import attrgetter
from pathlib import Path
from typing import Any

from phonodrill.errors import LexiconMissingError, PhonodrillError, TableError
from phonodrill.graphemes.chunk import encode
from phonodrill.lexicon import sources
from phonodrill.lexicon.alignment import Alignment, WordFacts, align_lexicon, irregular_part
from phonodrill.lexicon.entry import DERIVED, NAME
from phonodrill.lexicon.familiarity import OLDER, band_of, is_familiar
from phonodrill.lexicon.inflected import expected_forms, find_disagreements, spelled_ending
from phonodrill.lexicon.joints import find_joints
from phonodrill.lexicon.pronunciations import (
    Pronunciations,
    checked_against_bases,
    derive_missing,
    read_pronunciations,
    trusted,
)
from phonodrill.lexicon.reading_model import train_reading_model
from phonodrill.lexicon.schema import LEXICON_PATH, SCHEMA, SCHEMA_VERSION
from phonodrill.lexicon.second_dictionary import TABLE as SECOND_DICTIONARY
from phonodrill.lexicon.second_opinion import read_second_dictionary
from phonodrill.lexicon.sources import Inflection
from phonodrill.lexicon.store import Lexicon
from phonodrill.lexicon.wordlists import Unfit, Wordlists, read_wordlists
from phonodrill.sounds.accents import heard_alike
from phonodrill.sounds.normal import normal_form
from phonodrill.sounds.notation import parse_arpabet

ROOMS = ("graphemes", "lexicon", "sounds")
"""The rooms whose code decides what is compiled."""


@dataclass(frozen=True, slots=True)
class WordRow:
    """A row of table ``word``; columns in the schema's order."""

    word: str
    zipf: int
    band: int
    reason: str
    parts_of_speech: str
    picturable: bool
    is_name: bool
    is_heteronym: bool
    base: str
    endings: str


def compile_lexicon(wordlists_folder: Path, target: Path = LEXICON_PATH) -> None:
    """Write the lexicon, replacing ``target`` only when it is complete.

    Two runs over the same data give the same content.

    Args:
        wordlists_folder: the folder with our tables.
        target: where the SQLite file goes.

    Raises:
        TableError: naming the file and line of a table that cannot be used.
    """
    tables = read_wordlists(wordlists_folder)
    cmudict = sources.read_cmudict()
    second = read_second_dictionary(wordlists_folder / SECOND_DICTIONARY)
    pronunciations = read_pronunciations(cmudict, tables, second)
    listed = sorted(set(sources.read_inflections(pronunciations)))
    derive_missing(pronunciations, listed, tables)
    inflections = [row for row in listed if row.form in pronunciations]
    exceptions = frozenset(exception.form for exception in tables.ending_exceptions)
    expected = expected_forms(
        inflections,
        {
            word: [(row.sounds, row.stress) for row in trusted(rows)]
            for word, rows in pronunciations.items()
        },
    )
    disagreements = find_disagreements(
        expected,
        {word: [r.normal for r in rows] for word, rows in pronunciations.items()},
        exceptions,
    )
    irregular = {row.word for row in disagreements}
    _refuse_unknown_words(tables, {*pronunciations, *(row.form for row in listed)})
    words = list(_words(pronunciations, tables, inflections, irregular))
    checked = checked_against_bases(pronunciations, expected, exceptions)
    facts = _facts(words)
    alignment = align_lexicon(checked, facts, tables.correspondences)
    reading = train_reading_model(checked, alignment, facts)
    partial = target.with_suffix(".partial")
    partial.unlink(missing_ok=True)
    with closing(sqlite3.connect(partial)) as connection, connection:
        connection.executescript(SCHEMA)
        _insert(connection, "meta", _meta(wordlists_folder))
        _insert(connection, "source", map(_row, sources.list_credits()))
        _insert(connection, "word", map(_row, words))
        _insert(connection, "pronunciation", _pronunciation_rows(checked, alignment))
        known = {row.word for row in words if 0 < row.band < OLDER}
        _insert(connection, "joint", find_joints(checked, known))
        connection.execute(
            "INSERT INTO heard SELECT DISTINCT normal, word, band, endings <> '' FROM pronunciation"
            " JOIN word USING (word)"
            " WHERE usable AND origin <> ? AND band > 0 AND band < ? AND NOT is_name",
            [DERIVED, OLDER],
        )
        # The first usable pronunciation: SQLite takes the other columns from MIN's row.
        connection.execute(
            "INSERT INTO spelled SELECT band, word, zipf, base, endings, sounds, stress, normal,"
            " chunks, (SELECT group_concat(normal) FROM pronunciation AS every"
            " WHERE every.word = word.word) FROM"
            " (SELECT *, MIN(place) FROM word JOIN pronunciation USING (word)"
            " WHERE band > 0 AND band < ? AND usable AND NOT is_name AND NOT is_heteronym"
            " AND parts_of_speech NOT LIKE 'interjection%' AND parts_of_speech NOT LIKE 'proper%'"
            " AND length(word) > 1"
            " AND word NOT GLOB '*[^a-z]*' GROUP BY word) AS word",
            [OLDER],
        )
        _insert(connection, "inflection", map(_inflection_row, inflections))
        unlisted = pronunciations.keys() - {row.form for row in inflections}
        others = sources.read_other_bases(sorted(unlisted), pronunciations)
        _insert(connection, "inflection", map(_inflection_row, sorted(set(others))))
        connection.execute(
            "INSERT INTO word_ending SELECT DISTINCT ending, band, form FROM inflection"
            " JOIN word ON word = form WHERE ending <> '' AND endings <> ''"
        )
        _insert(connection, "never_say", _never_say(tables, pronunciations, inflections))
        _insert(connection, "ending_exception", map(_row, tables.ending_exceptions))
        _insert(connection, "ending_spelling", map(_row, tables.ending_spellings))
        _insert(connection, "derived_word", map(_row, tables.derived_words))
        _insert(connection, "not_inflected", map(_row, tables.not_inflected))
        _insert(connection, "sentence", map(_row, tables.sentences))
        _insert(connection, "high_frequency", _frequent_words(tables, checked, alignment))
        _insert(connection, "correspondence", _correspondence_rows(alignment))
        _insert(connection, "reading_sign", reading.signs)
        _insert(connection, "reading_context", reading.contexts)
        _insert(connection, "disagreement", map(_row, disagreements))
    with closing(sqlite3.connect(partial)) as connection:
        connection.execute("VACUUM")
    partial.replace(target)


def _refuse_unknown_words(tables: Wordlists, known: set[str]) -> None:
    """Raise if a table has a word that neither the dictionary nor our fixes can say."""
    listed = {
        "vocabulary.tsv": tables.vocabulary,
        "sentences.tsv": [sentence.word for sentence in tables.sentences],
        "high_frequency.tsv": [frequent.word for frequent in tables.high_frequency],
        "names.tsv": tables.names,
        "ending_exceptions.tsv": [exception.base for exception in tables.ending_exceptions],
        "ending_spellings.tsv": [spelling.base for spelling in tables.ending_spellings],
        "not_inflected.tsv": [row.word for row in tables.not_inflected],
        "derived_words.tsv": [
            word for row in tables.derived_words for word in (row.word, row.base)
        ],
    }
    for table, words in listed.items():
        for word in words:
            if word not in known:
                raise TableError(
                    f"{table}: no pronunciation is known for {word!r}",
                    "add one to pronunciation_fixes.tsv, or take the word out",
                )


def fingerprint(wordlists_folder: Path) -> str:
    """Return a digest of everything the compiled content depends on."""
    digest = hashlib.sha256()
    package = Path(__file__).parents[1]
    code = [path for room in ROOMS for path in (package / room).glob("*.py")]
    for path in sorted([*code, *wordlists_folder.glob("*.tsv")], key=lambda path: path.name):
        digest.update(path.name.encode() + b"\0" + path.read_bytes())
    for source in sources.list_credits():
        digest.update(repr(sorted(asdict(source).items())).encode())
    return digest.hexdigest()


def stored_fingerprint(path: Path) -> str:
    """Return what a compiled lexicon was made from, or an empty string if there is none."""
    try:
        with Lexicon(path) as lexicon:
            return lexicon.meta("fingerprint")
    except LexiconMissingError:
        return ""


def _meta(wordlists_folder: Path) -> list[tuple[str, str]]:
    return [
        ("fingerprint", fingerprint(wordlists_folder)),
        ("schema", str(SCHEMA_VERSION)),
    ]


def _row(record: Any) -> tuple[object, ...]:
    """Return the fields of a dataclass; ``astuple`` copies each, for a tenth of the time of all."""
    kind: Any = type(record)
    return _fields_of(kind)(record)


@cache
def _fields_of(kind: Any) -> Callable[[object], tuple[object, ...]]:
    return attrgetter(*(field.name for field in fields(kind)))


def _insert(connection: sqlite3.Connection, table: str, rows: Iterable[tuple[object, ...]]) -> None:
    listed = list(rows)
    if listed:
        places = ", ".join("?" * len(listed[0]))
        connection.executemany(f"INSERT INTO {table} VALUES ({places})", listed)  # noqa: S608


def _words(
    pronunciations: Pronunciations,
    tables: Wordlists,
    inflections: list[Inflection],
    irregular: set[str],
) -> Iterator[WordRow]:
    """Yield a row a word; a form that is not its base + ending shows no ending (*evening*)."""
    zipf = sources.read_zipf(pronunciations)
    parts = sources.read_parts_of_speech(pronunciations)
    heteronyms = {reading.word for reading in tables.heteronyms}
    forms: dict[str, list[Inflection]] = {}
    best: dict[tuple[str, str], float] = {}
    for row in inflections:
        forms.setdefault(row.form, []).append(row)
        slot = (row.base, row.inflection)
        best[slot] = max(best.get(slot, 0.0), zipf[row.form])
    for word in sorted(pronunciations):
        rows = forms.get(word, [])
        familiar = [row for row in rows if is_familiar(row, tables, zipf, best)]
        band, reason = band_of(word, rows, familiar, tables, known=word in parts)
        judged = tables.vocabulary.get(word)
        listed = ([judged.part_of_speech] if judged else []) + list(parts.get(word, ()))
        yield WordRow(
            word=word,
            zipf=round(100 * zipf[word]),
            band=band,
            # Nearly all of the dictionary is names: is_name says it shorter.
            reason="" if reason == NAME else reason,
            parts_of_speech=",".join(dict.fromkeys(listed)),
            picturable=bool(judged and judged.picturable),
            is_name=reason == NAME or (word in tables.names and judged is None),
            is_heteronym=word in heteronyms,
            base=max((row.base for row in rows), key=lambda base: (zipf[base], base), default=""),
            endings=",".join(
                sorted({_ending(row) for row in rows if word not in irregular} - {""})
            ),
        )


def _facts(words: Iterable[WordRow]) -> dict[str, WordFacts]:
    return {
        row.word: WordFacts(
            row.base or row.word,
            tuple(filter(None, row.endings.split(","))),
            row.band,
            # Zipf is log10 of the uses in a billion words.
            10 ** (row.zipf / 100 - 3) if row.zipf else 0.0,
        )
        for row in words
    }


def _pronunciation_rows(
    pronunciations: Pronunciations, alignment: Alignment
) -> Iterator[tuple[object, ...]]:
    for word, rows in pronunciations.items():
        for row in rows:
            chunks = alignment.chunks[word, row.place]
            yield (*_row(row), encode(chunks, alignment.code_of))


def _correspondence_rows(alignment: Alignment) -> Iterator[tuple[object, ...]]:
    for row, code in alignment.code_of.items():
        yield (
            code,
            row.spelling,
            "/".join(row.sounds),
            row.kind,
            row.is_regular,
            row.example,
            alignment.words[row],
            round(alignment.uses[row], 1),
        )


def _frequent_words(
    tables: Wordlists, pronunciations: Pronunciations, alignment: Alignment
) -> Iterator[tuple[object, ...]]:
    for frequent in tables.high_frequency:
        rows = pronunciations[frequent.word]
        first = next((row for row in rows if row.usable), rows[0])
        odd = irregular_part(frequent.word, alignment.chunks[frequent.word, first.place])
        yield (*_row(frequent), odd)


def _inflection_row(row: Inflection) -> tuple[object, ...]:
    return (*_row(row), _ending(row))


def _ending(row: Inflection) -> str:
    return spelled_ending(row.form, row.base, row.inflection)


def _never_say(
    tables: Wordlists, pronunciations: Pronunciations, inflections: list[Inflection]
) -> Iterator[tuple[str, str, str, str]]:
    """Yield the rows of the table and the inflected forms of its words.

    Each in every form that some accent makes the same.
    """
    forms: dict[str, set[str]] = {}
    for inflection in inflections:
        forms.setdefault(inflection.base, set()).add(inflection.form)
    listed = {unfit.word for unfit in tables.never_say}
    derived: dict[str, Unfit] = {}
    for unfit in tables.never_say:
        for form in sorted(forms.get(unfit.word, set()) - listed):
            derived[form] = replace(unfit, word=form, phones=())
    for unfit in [*tables.never_say, *derived.values()]:
        normals = {normal_form(*parse_arpabet(phones)) for phones in unfit.phones}
        if not normals:
            normals = {row.normal for row in pronunciations.get(unfit.word, [])}
        if not normals and unfit.blocks != "spelling":
            raise PhonodrillError(
                f"never_say.tsv: no pronunciation is known for {unfit.word}",
                "write it in the arpabet column",
            )
        alike = {form for normal in normals for form in heard_alike(normal)}
        for normal in sorted(alike) or [""]:
            yield unfit.word, normal, unfit.category, unfit.blocks
