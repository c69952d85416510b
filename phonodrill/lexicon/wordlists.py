"""Read our own word tables into dataclasses (install time only)."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from phonodrill.errors import PhonodrillError
from phonodrill.graphemes.correspondence import Correspondence, Kind, parse_sounds
from phonodrill.lexicon.high_frequency import COLUMNS
from phonodrill.lexicon.tables import Row, read_table
from phonodrill.sounds.notation import parse_arpabet

REASONS = (
    "abbreviation",
    "adult",
    "archaic",
    "bodily",
    "brand",
    "clipped",
    "foreign",
    "insult",
    "name",
    "violent",
)
PARTS = (
    "adjective",
    "adverb",
    "interjection",
    "noun",
    "other",
    "proper adjective",
    "proper noun",
    "verb",
)
BLOCKS = ("alone", "sound", "spelling")
SENTENCE_PARTS = ("adjective", "adverb", "noun", "plural noun", "verb")
FIXES = ("accept", "add", "drop", "say")


@dataclass(frozen=True, slots=True)
class Judgement:
    """Our judgement of one word: a row of vocabulary.tsv."""

    word: str
    band: int
    part_of_speech: str
    picturable: bool
    reason: str


@dataclass(frozen=True, slots=True)
class Fix:
    """One mended or accepted pronunciation: a row of pronunciation_fixes.tsv."""

    word: str
    action: str
    phones: str
    reason: str


@dataclass(frozen=True, slots=True)
class Unfit:
    """One word that children must not hear: a row of never_say.tsv."""

    word: str
    phones: tuple[str, ...]
    category: str
    blocks: str


@dataclass(frozen=True, slots=True)
class Reading:
    """One reading of a heteronym: a row of heteronyms.tsv."""

    word: str
    phones: str
    part_of_speech: str
    meaning: str


@dataclass(frozen=True, slots=True)
class EndingException:
    """A form whose ending does not say what the rule says: a row of ending_exceptions.tsv."""

    form: str
    base: str
    sound: str
    watch_out: str


@dataclass(frozen=True, slots=True)
class Spelling:
    """A base that takes an ending by no general rule: a row of ending_spellings.tsv."""

    base: str
    ending: str
    part_of_speech: str
    rule: str


@dataclass(frozen=True, slots=True)
class Derived:
    """A word in er, ly or y made from a base: a row of derived_words.tsv."""

    word: str
    base: str
    ending: str
    part_of_speech: str


@dataclass(frozen=True, slots=True)
class NotInflected:
    """A word that only looks like a base with an ending: a row of not_inflected.tsv."""

    word: str
    why: str


@dataclass(frozen=True, slots=True)
class Sentence:
    """A short sentence for a word: a row of sentences.tsv."""

    word: str
    part_of_speech: str
    topic: str
    text: str


@dataclass(frozen=True, slots=True)
class FrequentWord:
    """A much used word: a row of high_frequency.tsv."""

    word: str
    place: int
    is_dolch: bool


@dataclass(frozen=True, slots=True)
class Wordlists:
    """All our tables."""

    vocabulary: dict[str, Judgement]
    fixes: dict[str, list[Fix]]
    never_say: list[Unfit]
    heteronyms: list[Reading]
    ending_exceptions: list[EndingException]
    ending_spellings: list[Spelling]
    derived_words: list[Derived]
    not_inflected: list[NotInflected]
    names: frozenset[str]
    sentences: list[Sentence]
    high_frequency: list[FrequentWord]
    correspondences: list[Correspondence]


def read_wordlists(folder: Path) -> Wordlists:
    """Read every table in the folder.

    Raises:
        TableError: naming the file and line that cannot be used.
    """
    fixes: dict[str, list[Fix]] = {}
    for fix in _read_fixes(folder / "pronunciation_fixes.tsv"):
        fixes.setdefault(fix.word, []).append(fix)
    return Wordlists(
        vocabulary={j.word: j for j in _read_vocabulary(folder / "vocabulary.tsv")},
        fixes=fixes,
        never_say=_read_never_say(folder / "never_say.tsv"),
        heteronyms=_read_heteronyms(folder / "heteronyms.tsv"),
        ending_exceptions=_read_ending_exceptions(folder / "ending_exceptions.tsv"),
        ending_spellings=_read_ending_spellings(folder / "ending_spellings.tsv"),
        derived_words=_read_derived_words(folder / "derived_words.tsv"),
        not_inflected=[
            NotInflected(row["word"], row["why"])
            for row in read_table(folder / "not_inflected.tsv", ["word", "why"], key=["word"])
        ],
        names=frozenset(
            row["name"] for row in read_table(folder / "names.tsv", ["name"], key=["name"])
        ),
        sentences=_read_sentences(folder / "sentences.tsv"),
        high_frequency=_read_high_frequency(folder / "high_frequency.tsv"),
        correspondences=_read_correspondences(folder / "correspondences.tsv"),
    )


def _read_vocabulary(path: Path) -> list[Judgement]:
    columns = ("word", "band", "part_of_speech", "picturable", "reason", "note")
    judgements = []
    for row in read_table(path, columns, key=["word"]):
        band = _one_of(row, "band", ("0", "1", "2", "3", "4"))
        if band == "0":
            _one_of(row, "reason", REASONS)
        elif row["reason"]:
            raise row.error("only band 0 has a reason")
        judgements.append(
            Judgement(
                row["word"],
                int(band),
                _one_of(row, "part_of_speech", PARTS),
                _one_of(row, "picturable", ("yes", "no")) == "yes",
                row["reason"],
            )
        )
    return judgements


def _read_fixes(path: Path) -> list[Fix]:
    columns = ("word", "order", "action", "arpabet", "reason")
    fixes = []
    for row in read_table(path, columns, key=["word", "order"]):
        _phones(row, row["arpabet"])
        if not row["reason"]:
            raise row.error("every mended pronunciation needs a reason")
        fixes.append(Fix(row["word"], _one_of(row, "action", FIXES), row["arpabet"], row["reason"]))
    return fixes


def _read_never_say(path: Path) -> list[Unfit]:
    columns = ("word", "arpabet", "category", "blocks")
    unfit = []
    for row in read_table(path, columns, key=["word"]):
        phones = tuple(part.strip() for part in row["arpabet"].split("/") if part.strip())
        for variant in phones:
            _phones(row, variant)
        unfit.append(Unfit(row["word"], phones, row["category"], _one_of(row, "blocks", BLOCKS)))
    return unfit


def _read_heteronyms(path: Path) -> list[Reading]:
    columns = ("word", "arpabet", "part_of_speech", "meaning")
    readings = []
    for row in read_table(path, columns, key=["word", "arpabet"]):
        _phones(row, row["arpabet"])
        readings.append(Reading(row["word"], row["arpabet"], row["part_of_speech"], row["meaning"]))
    return readings


def _read_ending_exceptions(path: Path) -> list[EndingException]:
    columns = ("form", "base", "sound", "watch_out")
    return [
        EndingException(row["form"], row["base"], row["sound"], row["watch_out"])
        for row in read_table(path, columns, key=["form", "base"])
    ]


def _read_ending_spellings(path: Path) -> list[Spelling]:
    columns = ("base", "ending", "part_of_speech", "rule", "reason")
    return [
        Spelling(row["base"], row["ending"], row["part_of_speech"], row["rule"])
        for row in read_table(path, columns, key=columns[:4])
    ]


def _read_derived_words(path: Path) -> list[Derived]:
    columns = ("word", "base", "ending", "part_of_speech")
    return [
        Derived(row["word"], row["base"], row["ending"], _one_of(row, "part_of_speech", PARTS))
        for row in read_table(path, columns, key=["word", "base"])
    ]


def _read_sentences(path: Path) -> list[Sentence]:
    columns = ("word", "part_of_speech", "topic", "sentence")
    sentences = []
    for row in read_table(path, columns, key=["word", "part_of_speech", "sentence"]):
        _one_of(row, "part_of_speech", SENTENCE_PARTS)
        if not row["sentence"].endswith((".", "!", "?")):
            raise row.error("a sentence ends with . ! or ?")
        sentences.append(Sentence(*(row[column] for column in columns)))
    return sentences


def _read_high_frequency(path: Path) -> list[FrequentWord]:
    words = []
    for row in read_table(path, COLUMNS, key=["word"]):
        if not row["place"].isdecimal():
            raise row.error(f"place is {row['place']!r}; it must be a number")
        is_dolch = _one_of(row, "dolch", ("no", "yes")) == "yes"
        words.append(FrequentWord(row["word"], int(row["place"]), is_dolch))
    return words


def _read_correspondences(path: Path) -> list[Correspondence]:
    columns = ("spelling", "sounds", "kind", "regular", "example")
    found = []
    for row in read_table(path, columns, key=["spelling", "sounds", "kind"]):
        try:
            sounds = parse_sounds(row["sounds"])
        except KeyError as error:
            raise row.error(f"{error.args[0]!r} is no ARPAbet symbol") from error
        if len({len(variant) for variant in sounds}) > 1:
            raise row.error("all variants must have the same number of sounds")
        kind = Kind(_one_of(row, "kind", tuple(Kind)))
        is_regular = _one_of(row, "regular", ("no", "yes")) == "yes"
        found.append(Correspondence(row["spelling"], sounds, kind, is_regular, row["example"]))
    return found


def _one_of(row: Row, column: str, allowed: tuple[str, ...]) -> str:
    if row[column] not in allowed:
        raise row.error(f"{column} is {row[column]!r}; it must be one of {', '.join(allowed)}")
    return row[column]


def _phones(row: Row, phones: str) -> None:
    try:
        sounds, _ = parse_arpabet(phones)
    except PhonodrillError as error:
        raise row.error(error.message) from error
    if not sounds:
        raise row.error("the pronunciation is empty")
