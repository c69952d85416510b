"""Align every pronunciation with its spelling, and count correspondences (install time only)."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from phonodrill.graphemes.align import Job, align, lattice_of, set_ending_apart
from phonodrill.graphemes.chunk import Chunk, codes
from phonodrill.graphemes.correspondence import VOWEL_LETTERS, Correspondence
from phonodrill.graphemes.inventory import Inventory, arrange
from phonodrill.graphemes.train import train
from phonodrill.lexicon.familiarity import OLDER
from phonodrill.lexicon.pronunciations import PronunciationRow, Pronunciations
from phonodrill.sounds.suffixes import ed_suffix

_LETTERS_OF_ENDING = {"ies": "ies", "ed": "ed", "es": "es", "s": "s", "ves": "s"}
_SHORTEST_TAIL = 5


@dataclass(frozen=True, slots=True)
class WordFacts:
    """What aligning needs to know of a word.

    Attributes:
        base: its commonest base word, or itself.
        endings: spelled endings it has as an inflected form.
        band: familiarity, 0-4.
        uses: in a million words.
    """

    base: str
    endings: tuple[str, ...]
    band: int
    uses: float


@dataclass(frozen=True, slots=True)
class Alignment:
    """All pronunciations aligned.

    Attributes:
        chunks: ``(word, place) -> chunks``.
        code_of: the character that stands for each correspondence; the
            commonest have the shortest.
        words: in how many words of bands 1-3 each correspondence stands.
        uses: how often in a million words of text, from words of bands 1-3.
    """

    chunks: dict[tuple[str, int], tuple[Chunk, ...]]
    code_of: dict[Correspondence, str]
    words: dict[Correspondence, int]
    uses: dict[Correspondence, float]


def align_lexicon(
    pronunciations: Pronunciations,
    facts: Mapping[str, WordFacts],
    correspondences: Sequence[Correspondence],
) -> Alignment:
    """Train the aligner on the words children may meet, then align all.

    Args:
        pronunciations: word -> its rows.
        facts: of every word.
        correspondences: the inventory.
    """
    inventory = arrange(correspondences)
    jobs = {
        (word, row.place): _job(inventory, word, row, pronunciations, facts)
        for word, rows in pronunciations.items()
        for row in rows
    }
    training = {
        (word, row.place): lattice_of(inventory, jobs[word, row.place])
        for word, row in first_usable(pronunciations, facts, highest_band=OLDER)
    }
    prices = train(filter(None, training.values()), len(correspondences))
    chunks = {key: align(inventory, prices, job, training.get(key)) for key, job in jobs.items()}
    words: dict[Correspondence, int] = dict.fromkeys(correspondences, 0)
    uses: dict[Correspondence, float] = dict.fromkeys(correspondences, 0.0)
    for word, row in first_usable(pronunciations, facts, highest_band=OLDER - 1):
        for found in {chunk.correspondence for chunk in chunks[word, row.place]}:
            if found is not None:
                words[found] += 1
                uses[found] += facts[word].uses
    by_words = sorted(correspondences, key=lambda row: -words[row])
    return Alignment(chunks, dict(zip(by_words, codes(), strict=False)), words, uses)


def first_usable(
    pronunciations: Pronunciations, facts: Mapping[str, WordFacts], *, highest_band: int
) -> Iterable[tuple[str, PronunciationRow]]:
    """Yield each word of bands 1 to ``highest_band`` with its first usable pronunciation."""
    for word, rows in pronunciations.items():
        if 0 < facts[word].band <= highest_band:
            yield from ((word, row) for row in [r for r in rows if r.usable][:1])


def irregular_part(word: str, chunks: Sequence[Chunk]) -> str:
    """Return the letters of a word that do not spell regularly, parted by spaces."""
    return " ".join(chunk.written(word) for chunk in chunks if not chunk.is_regular)


def _job(
    inventory: Inventory,
    word: str,
    row: PronunciationRow,
    pronunciations: Pronunciations,
    facts: Mapping[str, WordFacts],
) -> Job:
    ending = _ending(word, facts) or _adjective_ending(word, row, pronunciations, facts)
    return set_ending_apart(inventory, word, row.sounds, row.stress, ending)


def _ending(word: str, facts: Mapping[str, WordFacts]) -> str:
    """The letters of its ending; *pies* is pie and s."""
    own = facts[word]
    if not own.endings:
        return ""
    if word == f"{own.base}s":
        return "s"
    return next((_LETTERS_OF_ENDING[e] for e in _LETTERS_OF_ENDING if e in own.endings), "")


def _adjective_ending(
    word: str,
    row: PronunciationRow,
    pronunciations: Pronunciations,
    facts: Mapping[str, WordFacts],
) -> str:
    """-ed where no dictionary lists it as an inflected form: *striped*, *unfinished*."""
    if not word.endswith("ed"):
        return ""
    # A base in silent e (striped), not one in ee (seed is not see and -ed).
    silent_e = "" if word[-3:-2] in VOWEL_LETTERS else word[:-1]
    for base in (silent_e, word[:-2]):
        if base in facts and facts[base].band:
            for said in pronunciations[base]:
                if row.sounds == said.sounds + ed_suffix(said.sounds):
                    return "ed"
    tails = (word[start:] for start in range(1, len(word) - _SHORTEST_TAIL + 1))
    for tail in tails:
        if tail in facts and "ed" in facts[tail].endings:
            heard = (said.sounds for said in pronunciations[tail])
            return "ed" if any(row.sounds.endswith(sounds) for sounds in heard) else ""
    return ""
