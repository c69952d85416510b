"""Which words of a passage a class can read by what it has been taught."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Mapping
from enum import StrEnum
from typing import NamedTuple

from phonodrill.gate import Gate
from phonodrill.graphemes.chunk import ODD_CODE
from phonodrill.guess import Guess
from phonodrill.lexicon.entry import Entry, Pronunciation, Spelled
from phonodrill.lexicon.store import Lexicon
from phonodrill.reading.passage import Piece, Sort
from phonodrill.selection import HIGHEST_KNOWN_BAND, may_show_guess, spelled_of
from phonodrill.taught.known import Known

Guesser = Callable[[str], Guess | None]
"""Reads a word that the lexicon lacks, or None if it cannot be read."""
_POSSESSIVES = ("'s", "'")
POSSESSIVE_STEP = "-s"


class Status(StrEnum):
    """How a class can read a word."""

    DECODABLE = "decodable"
    WHOLE = "taught whole"
    NOT_YET = "not yet"
    UNFIT = "not for class"


class Verdict(NamedTuple):
    """What is known of one word of the passage.

    Attributes:
        word: lower case.
        status: how it can be read.
        lacks: codes of what is missing, ODD_CODE for an irregular part, ``-es``
            for an ending; empty unless not yet.
        band: familiarity, 0 if the lexicon does not know.
        is_name: whether the lexicon knows it only as a name.
        is_guess: whether the lexicon lacks it, so that its reading is guessed.
        said: the reading that was judged, or None.
    """

    word: str
    status: Status
    lacks: frozenset[str] = frozenset()
    band: int = 0
    is_name: bool = False
    is_guess: bool = False
    said: Pronunciation | None = None


class Report(NamedTuple):
    """A passage checked.

    Attributes:
        pieces: the passage.
        verdicts: of each different word, in the order of the passage.
        counts: how often each word stands there.
        numbers: how many numbers there are; they are no words here.
        next_step: the code or ending that would make most words readable, or empty.
        next_words: how many words of the passage it would make readable.
    """

    pieces: tuple[Piece, ...]
    verdicts: Mapping[str, Verdict]
    counts: Mapping[str, int]
    numbers: int
    next_step: str
    next_words: int

    def total(self, status: Status | None = None) -> int:
        """Count the words of the passage, or those of one status."""
        return sum(
            count
            for word, count in self.counts.items()
            if status is None or self.verdicts[word].status is status
        )

    @property
    def share(self) -> float:
        """Share of the words that can be read, 0 to 1."""
        words = self.total()
        can_read = self.total(Status.DECODABLE) + self.total(Status.WHOLE)
        return can_read / words if words else 0.0


def check_passage(
    pieces: Iterable[Piece], lexicon: Lexicon, gate: Gate, known: Known, guess: Guesser
) -> Report:
    """Judge every word of a passage.

    Args:
        pieces: from :func:`~phonodrill.reading.passage.split_passage`.
        lexicon: the open lexicon.
        gate: the never-say check.
        known: what has been taught.
        guess: reads words that the lexicon lacks.
    """
    listed = tuple(pieces)
    counts = Counter(piece.word for piece in listed if piece.sort is Sort.WORD)
    verdicts = {word: judge(word, lexicon, gate, known, guess) for word in counts}
    step, words = _next_step(verdicts, counts)
    numbers = sum(piece.sort is Sort.NUMBER for piece in listed)
    return Report(listed, verdicts, counts, numbers, step, words)


def judge(word: str, lexicon: Lexicon, gate: Gate, known: Known, guess: Guesser) -> Verdict:
    """Judge one word, lower case.

    Of several readings (*read*, the two of *the*) the one that lacks least is
    taken. A possessive asks for its owner and for -s.
    """
    entry = lexicon.get(word)
    owner = next((word.removesuffix(end) for end in _POSSESSIVES if word.endswith(end)), "")
    if owner and not (entry and 0 < entry.band <= HIGHEST_KNOWN_BAND):
        own = judge(owner, lexicon, gate, known, guess)
        lacks = frozenset({POSSESSIVE_STEP}) - known.things
        if lacks and own.status is not Status.UNFIT:
            return own._replace(word=word, lacks=own.lacks | lacks, status=Status.NOT_YET)
        return own._replace(word=word)
    if entry is None:
        return _judge_guess(word, guess(word), lexicon, gate, known)
    if not gate.allows(word, (said.normal for said in entry.pronunciations), alone=False):
        return Verdict(word, Status.UNFIT)
    readings = (
        (known.lacks(spelled_of(entry, said), lexicon.chunks_of), said) for said in _readings(entry)
    )
    lacks, said = min(readings, key=lambda reading: len(reading[0]))
    found = Verdict(word, Status.DECODABLE, lacks, entry.band, entry.is_name, False, said)
    return _with_status(found, known)


def _judge_guess(
    word: str, found: Guess | None, lexicon: Lexicon, gate: Gate, known: Known
) -> Verdict:
    """Judge a word that the lexicon lacks by a guessed reading, which the gate must allow."""
    if not gate.allows(word, (), alone=False):
        return Verdict(word, Status.UNFIT)
    if found is None:
        lacks, said = frozenset({ODD_CODE}), None
    elif may_show_guess(found, lexicon, gate):
        said = found.said
        spelled = Spelled(
            *(word, 0, 0.0, word, ()),
            *(said.sounds, said.stress, said.normal, said.chunks),
        )
        lacks = known.lacks(spelled, lexicon.chunks_of)
    else:
        return Verdict(word, Status.UNFIT)
    return _with_status(Verdict(word, Status.DECODABLE, lacks, is_guess=True, said=said), known)


def _with_status(verdict: Verdict, known: Known) -> Verdict:
    if known.knows_whole(verdict.word):
        return verdict._replace(status=Status.WHOLE, lacks=frozenset())
    return verdict._replace(status=Status.NOT_YET) if verdict.lacks else verdict


def _readings(entry: Entry) -> tuple[Pronunciation, ...]:
    """The usable ways to say a word, and its weak forms (*a*, *the*), which running text has."""
    ways = tuple(said for said in entry.pronunciations if said.usable or "1" not in said.stress)
    return ways or entry.pronunciations[:1]


def _next_step(verdicts: Mapping[str, Verdict], counts: Mapping[str, int]) -> tuple[str, int]:
    """Find the one thing that most words of the passage still lack, and only that."""
    opens: Counter[str] = Counter()
    for word, verdict in verdicts.items():
        if verdict.status is Status.NOT_YET and len(verdict.lacks) == 1:
            opens.update(dict.fromkeys(verdict.lacks - {ODD_CODE}, counts[word]))
    return max(opens.items(), key=lambda item: (item[1], item[0]), default=("", 0))
