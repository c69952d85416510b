"""The words of a lesson, and why each of them fits."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from phonodrill.lesson import plan
from phonodrill.lesson.building import pieces_of
from phonodrill.lesson.from_data import Read
from phonodrill.lesson.rule_part import sound_in
from phonodrill.lexicon.entry import Entry
from phonodrill.sentences import words_of as words_of_text
from phonodrill.taught.known import Known

AGES = {1: "5 to 6", 2: "6 to 7", 3: "8 to 9"}
"""Band -> ages of the children who know its words."""
_SECTION_OF = {
    "rule": plan.RULE,
    "build": plan.BUILD,
    "listed": plan.LIST,
    "sort": plan.SORT,
    "bases": plan.BASES,
    "dictation": plan.DICTATION,
    "check": plan.CHECK,
}


class Reason(NamedTuple):
    """One thing that makes a word fit, in a teacher's words."""

    about: str
    says: str


class Place(NamedTuple):
    """A section in which a word stands."""

    number: int
    title: str


def words_of(reads: Sequence[Read]) -> tuple[str, ...]:
    """Return the words chosen for lessons, each once, by spelling."""
    return tuple(sorted({word for read in reads for word in read.choice.words.every}))


def why_it_fits(read: Read, word: str) -> tuple[Reason, ...]:
    """Say why a word is in a lesson.

    Args:
        read: the lesson, and what it was composed from.
        word: one of its words.

    Returns:
        Reasons, the focus first; none if the lesson does not have the word.
    """
    if word not in read.choice.words.every:
        return ()
    context = read.ready.context
    entry = context.pool.entry_of(word)
    if entry is None:
        return ()
    return tuple(
        reason
        for reason in (
            Reason("Focus", _focus(read, word)),
            Reason("Sounds", _sounds(read, entry)),
            Reason("Known to", f"children of {AGES[entry.band]} (band {entry.band})"),
            Reason("Can be read", _readable(entry, context.known)),
            Reason("Used as", ", ".join(entry.parts_of_speech)),
            Reason("Stands in", "; ".join(f"{p.number}. {p.title}" for p in places_of(read, word))),
            Reason("Sentences", " ".join(_sentences(read, word))),
        )
        if reason.says
    )


def places_of(read: Read, word: str) -> Iterator[Place]:
    """Yield the sections in which a word was put."""
    lists = read.choice.words._asdict()
    names = {name for field, name in _SECTION_OF.items() if word in lists[field]}
    for number, section in enumerate(read.lesson.sections, 1):
        if section.name in names:
            yield Place(number, section.title)


def _focus(read: Read, word: str) -> str:
    context, vocabulary, _ = read.ready
    title = context.focus.title
    if word in vocabulary.words:
        candidate = vocabulary.words[word]
        heard = sound_in(candidate, context)
        base = f"{candidate.base} + -{candidate.spelling}: " if candidate.ending else ""
        says = f"; it says {heard}" if heard and heard not in candidate.condition else ""
        return f"{title}; {base}{candidate.condition}{says}"
    if word in vocabulary.rivals:
        rival = vocabulary.rivals[word]
        heard = sound_in(rival, context)
        return f"not {title}, but {rival.spelling} that says {heard}: to be sorted against it"
    return f"not {title}: a short word mixed in for review"


def _sounds(read: Read, entry: Entry) -> str:
    said = entry.usable_pronunciations[0]
    pieces = pieces_of(entry.word, said, read.ready.context)
    parts = (
        f"{piece.letters} /{' '.join(piece.sounds)}/" if piece.sounds else f"{piece.letters} silent"
        for piece in pieces
    )
    return ", ".join(parts) or f"/{said.spaced(read.ready.context.style)}/"


def _readable(entry: Entry, known: Known | None) -> str:
    if known is None:
        return "no steps taught were given, so any word may stand here"
    if known.knows_whole(entry.word):
        return "it was taught as a whole word"
    return "every part of it was taught, or is taught in this lesson"


def _sentences(read: Read, word: str) -> Iterator[str]:
    for text in (*(s.text for s in read.choice.sentences), read.choice.dictated):
        if word in words_of_text(text):
            yield text
