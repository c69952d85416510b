"""How each sound is spelled and each spelling said, counted over the vocabulary.

Counted over base words in their first usable pronunciation, every occurrence
once (by word) and weighted by how often the word is used (by use): the two
rank differently (*th* is rare in the dictionary and everywhere in text).
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import Literal, NamedTuple

from phonodrill.graphemes.chunk import correspondence_codes
from phonodrill.graphemes.correspondence import Correspondence, Kind
from phonodrill.lexicon.entry import Counted, Spelled

SHOWN_EXAMPLES = 3


class Count(NamedTuple):
    """How common one correspondence is in the words counted.

    Attributes:
        words: occurrences by word.
        uses: occurrences in a million words of text.
        examples: the most used words that have it.
    """

    words: int
    uses: float
    examples: tuple[str, ...]


class Share(NamedTuple):
    """One spelling of a sound, or one sound of a spelling.

    Attributes:
        spelling: the letters.
        sound: codes of the sounds.
        words, uses: as in :class:`Count`.
        of_words, of_uses: share of all in the list, 0 to 1.
        examples: words that have it.
        is_regular: whether it is a taught pattern.
    """

    spelling: str
    sound: str
    words: int
    uses: float
    of_words: float
    of_uses: float
    examples: tuple[str, ...]
    is_regular: bool


def count_correspondences(
    words: Iterable[Spelled], is_fit: Callable[[str], bool], *, one_syllable: bool = False
) -> dict[str, Count]:
    """Count every correspondence in base words.

    Args:
        words: the vocabulary.
        is_fit: says of a word whether it may be shown as an example.
        one_syllable: count only words of one syllable.

    Returns:
        Code -> its count.
    """
    found: dict[str, list[tuple[float, str]]] = {}
    for word in words:
        if word.endings or (one_syllable and len(word.stress) > 1):
            continue
        for code in correspondence_codes(word.chunks):
            found.setdefault(code, []).append((word.zipf, word.word))
    return {
        code: Count(
            len(uses),
            # Zipf is log10 of the uses in a billion words.
            sum(10 ** (zipf - 3) for zipf, _ in uses if zipf),
            tuple(_first_fit(sorted(uses, reverse=True), is_fit)),
        )
        for code, uses in found.items()
    }


def spellings_of(
    sound: str, inventory: Sequence[Counted], counts: Mapping[str, Count]
) -> list[Share]:
    """Return the spellings of a sound, the commonest by word first.

    Args:
        sound: codes, mostly one.
        inventory: ``Lexicon.correspondences()``.
        counts: from :func:`count_correspondences`.
    """
    return _shares([row for row in inventory if sound in row.correspondence.sounds], counts)


def sounds_of(
    spelling: str, inventory: Sequence[Counted], counts: Mapping[str, Count]
) -> list[Share]:
    """Return the sounds of a spelling, the commonest by word first.

    Args:
        spelling: the letters, ``a_e`` for a split vowel.
        inventory: ``Lexicon.correspondences()``.
        counts: from :func:`count_correspondences`.
    """
    return _shares([row for row in inventory if row.correspondence.spelling == spelling], counts)


def share(
    inventory: Sequence[Counted], wanted: Correspondence, of: Literal["spelling", "sound"]
) -> float:
    """Return the share of a correspondence among all with its spelling, or its sound.

    Counted by word over bands 1-3, inflected forms among them.

    Args:
        inventory: ``Lexicon.correspondences()``.
        wanted: the correspondence.
        of: whether to compare it with the same letters or the same sounds.
    """
    is_ending = wanted.kind is Kind.ENDING
    alike = [
        row
        for row in inventory
        if (row.correspondence.kind is Kind.ENDING) == is_ending
        and (
            row.correspondence.spelling == wanted.spelling
            if of == "spelling"
            else row.correspondence.sound == wanted.sound
        )
    ]
    total = sum(row.words for row in alike)
    own = sum(row.words for row in alike if row.correspondence == wanted)
    return own / total if total else 0.0


def _shares(rows: Iterable[Counted], counts: Mapping[str, Count]) -> list[Share]:
    counted = [(row.correspondence, counts[row.code]) for row in rows if row.code in counts]
    all_words = sum(count.words for _, count in counted)
    all_uses = sum(count.uses for _, count in counted)
    shares = [
        Share(
            found.spelling,
            found.sound,
            count.words,
            count.uses,
            count.words / all_words,
            count.uses / all_uses if all_uses else 0.0,
            count.examples,
            found.is_regular,
        )
        for found, count in counted
    ]
    return sorted(shares, key=lambda share: (-share.words, share.spelling, share.sound))


def _first_fit(uses: list[tuple[float, str]], is_fit: Callable[[str], bool]) -> Iterable[str]:
    shown = 0
    for _, word in uses:
        if shown == SHOWN_EXAMPLES:
            return
        if is_fit(word):
            shown += 1
            yield word
