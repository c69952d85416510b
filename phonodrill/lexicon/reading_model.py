"""Train the model that reads words outside the dictionary (install time only).

Counts of signs behind one another in the aligned words, smoothed by
interpolation with shorter contexts (Witten & Bell 1991, *IEEE Transactions on
Information Theory* 37(4), with a weight on the number of different signs), then
pruned: what a shorter context foretells almost as well is not stored
(Seymore & Rosenfeld 1996, *ICSLP*).
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from phonodrill.graphemes.chunk import codes
from phonodrill.graphemes.reader import ORDER, PRICE_UNITS
from phonodrill.graphemes.signs import EDGE, Sign, signs_of
from phonodrill.lexicon.alignment import Alignment, WordFacts
from phonodrill.lexicon.pronunciations import Pronunciations

KNOWN_WORD_WEIGHT = 4
"""A word of bands 1-4 counts as four names or foreign words."""
BACK_OFF_WEIGHT = 8.0
"""What each different sign seen in a context gives to shorter contexts, in counts."""
LEAST_GAIN = 0.5
"""Nats saved over all training words by what a stored sign tells."""
_SIGNS_A_CONTEXT_COSTS = 6
"""A context takes as much room in the file as this many signs in it."""
_HIGHEST_PRICE = 255
_LEAST = 1e-4

Successors = dict[str, float]
Table = dict[str, Successors]
"""Context -> sign before it -> count or probability; contexts in the order of the letters."""


@dataclass(frozen=True, slots=True)
class ReadingModel:
    """The trained model as it is stored.

    Attributes:
        signs: rows ``(character, code, said)``.
        contexts: rows ``(context, back-off, characters of the signs, their prices)``.
    """

    signs: list[tuple[str, str, str]]
    contexts: list[tuple[str, int, str, bytes]]


def train_reading_model(
    pronunciations: Pronunciations, alignment: Alignment, facts: Mapping[str, WordFacts]
) -> ReadingModel:
    """Train on every aligned pronunciation.

    Args:
        pronunciations: word -> its rows.
        alignment: of those.
        facts: of every word.
    """
    words = [
        (found, KNOWN_WORD_WEIGHT if facts[word].band else 1)
        for word, rows in pronunciations.items()
        for row in rows
        if len(word) > 1
        and (
            found := signs_of(
                alignment.chunks[word, row.place], row.sounds, row.stress, alignment.code_of
            )
        )
    ]
    frequency: dict[Sign, int] = {}
    for found, _ in words:
        for sign in found:
            frequency[sign] = frequency.get(sign, 0) + 1
    # Ties go by the sign itself, so that two builds agree.
    ordered = sorted(frequency, key=lambda sign: (-frequency[sign], sign))
    character = dict(zip(ordered, codes(), strict=False))
    counts = count_signs(("".join(character[sign] for sign in found), w) for found, w in words)
    kept = prune(counts, interpolate(counts))
    return ReadingModel(
        [(character[sign], *sign) for sign in ordered], list(_stored(kept, _back_offs(kept)))
    )


def count_signs(words: Iterable[tuple[str, int]]) -> list[Table]:
    """Count each sign before each context.

    Args:
        words: characters of a word's signs, with the weight of the word.

    Returns:
        A table for each length of context, from none to three signs.

    >>> count_signs([("ab", 1)])[1]
    {'a': {'0': 1}, 'b': {'a': 1}, '0': {'b': 1}}
    """
    windows: dict[str, float] = {}
    for signs, weight in words:
        framed = f"{EDGE}{signs}{EDGE}"
        for at in range(len(framed) - 1):
            window = framed[at : at + ORDER]
            windows[window] = windows.get(window, 0) + weight
    counts: list[Table] = [{} for _ in range(ORDER)]
    for window, count in windows.items():
        first = window[0]
        for length, table in enumerate(counts[: len(window)]):
            successors = table.setdefault(window[1 : 1 + length], {})
            successors[first] = successors.get(first, 0) + count
    return counts


def interpolate(counts: list[Table]) -> list[Table]:
    """Turn counts into probabilities, each mixed with that of the shorter context."""
    tables: list[Table] = []
    uniform = 1 / len(counts[0][""])
    for length, table in enumerate(counts):
        mixed: Table = {}
        for context, successors in table.items():
            shorter = tables[length - 1][context[:-1]] if length else {}
            given = BACK_OFF_WEIGHT * len(successors)
            total = math.fsum(successors.values()) + given
            mixed[context] = {
                sign: (count + given * shorter.get(sign, uniform)) / total
                for sign, count in successors.items()
            }
        tables.append(mixed)
    return tables


def prune(counts: list[Table], mixed: list[Table]) -> list[Table]:
    """Keep what is worth its room: what a shorter context does not foretell.

    Args:
        counts: how often each sign stands before each context.
        mixed: its probability there.

    Returns:
        The probabilities kept; with a context, the shorter ones in it are kept too.
    """
    kept: list[Table] = [{} for _ in mixed]
    kept[0] = mixed[0]
    for length in range(len(mixed) - 1, 0, -1):
        for context, successors in mixed[length].items():
            shorter = mixed[length - 1][context[:-1]]
            unseen = max(1 - math.fsum(successors.values()), _LEAST)
            elsewhere = max(1 - math.fsum(shorter[sign] for sign in successors), _LEAST)
            back_off = min(unseen / elsewhere, 1.0)
            gains = {
                sign: counts[length][context][sign]
                * math.log(probability / (back_off * shorter[sign]))
                for sign, probability in successors.items()
            }
            told = {s: successors[s] for s, gain in gains.items() if gain > LEAST_GAIN}
            room = LEAST_GAIN * (len(told) + _SIGNS_A_CONTEXT_COSTS)
            is_worth_it = math.fsum(gains[sign] for sign in told) > room
            if is_worth_it or context in kept[length]:
                kept[length][context] = told
                if length > 1:
                    kept[length - 1].setdefault(context[:-1], {})
    return kept


def _back_offs(kept: list[Table]) -> dict[str, float]:
    """Say for each context how much of the shorter one's probability is left to it, as a log."""
    back_offs = {"": 0.0}

    def log_probability(context: str, sign: str) -> float:
        total = 0.0
        while sign not in kept[len(context)][context]:
            if not context:
                return math.log(_LEAST)
            total += back_offs[context]
            context = context[:-1]
        return total + math.log(kept[len(context)][context][sign])

    for table in kept[1:]:
        for context, successors in table.items():
            left = 1 - math.fsum(successors.values())
            shorter = 1 - math.fsum(math.exp(log_probability(context[:-1], s)) for s in successors)
            back_offs[context] = math.log(max(left, _LEAST) / max(shorter, _LEAST))
    return back_offs


def _stored(
    kept: list[Table], back_offs: Mapping[str, float]
) -> Iterator[tuple[str, int, str, bytes]]:
    for context, successors in sorted((c, s) for table in kept for c, s in table.items()):
        prices = [
            min(round(-math.log(probability) * PRICE_UNITS), _HIGHEST_PRICE)
            for probability in successors.values()
        ]
        price = round(-back_offs[context] * PRICE_UNITS)
        yield context, price, "".join(successors), bytes(prices)
