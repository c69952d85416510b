"""Read letters aloud by a model of which signs follow each other.

A joint n-gram model over letters and sounds (Bisani & Ney 2008, *Speech
Communication* 50(5)), here over the signs of our own inventory. A word is read
from its end: what an English vowel says, and where the stress lies, hangs on
the letters behind it. The best reading is found by a beam search; two readings
that the model cannot tell apart from here on are kept as one.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import NamedTuple

from phonodrill.graphemes.chunk import CLOSING_CODE
from phonodrill.graphemes.correspondence import SPLIT, Correspondence, Kind
from phonodrill.graphemes.inventory import CLOSING
from phonodrill.graphemes.signs import EDGE, Sign

ORDER = 4
"""How many signs the model looks at together: one, and up to three behind it."""
PRICE_UNITS = 16
"""Prices are stored in sixteenths of a nat (a negative natural log)."""
_UNKNOWN_PRICE = 16.0
_BEAM = 24
_SLACK = 9.0
_NARROWEST_SPLIT = 2
"""The two letters of a split vowel have at least one between them."""


class Context(NamedTuple):
    """What the model knows of the signs before one context.

    Attributes:
        prices: sign -> its price here, in nats.
        back_off: added to the price that a shorter context gives.
    """

    prices: dict[str, float]
    back_off: float


class Way(NamedTuple):
    """One way to read a word.

    Attributes:
        price: in nats; the lower, the likelier.
        signs: characters of its signs, in the order of the letters.
    """

    price: float
    signs: str


class _Step(NamedTuple):
    """A sign that some letters may be read as.

    Attributes:
        sign: its character.
        closes, opens: whether it is the silent e, or the vowel, of a split vowel.
        is_ending: whether it stands only at the end of a word.
        has_vowel, is_stressed: whether it says a vowel, one with primary stress.
    """

    sign: str
    closes: bool
    opens: bool
    is_ending: bool
    has_vowel: bool
    is_stressed: bool


class _State(NamedTuple):
    """All that matters of the letters read so far.

    Attributes:
        context: the last signs read, in the order of the letters.
        closed_at: where the silent e of an open split vowel is, or -1.
        is_stressed: whether the primary stress was given.
    """

    context: str
    closed_at: int = -1
    is_stressed: bool = False


Reached = dict[_State, tuple[float, str]]


class Reader:
    """Reads spellings by a stored model.

    Args:
        signs: the signs by their characters.
        correspondences: by their codes.
        fetch: returns those of some contexts that the model has.
    """

    def __init__(
        self,
        signs: Mapping[str, Sign],
        correspondences: Mapping[str, Correspondence],
        fetch: Callable[[Sequence[str]], Mapping[str, Context]],
    ) -> None:
        self.signs = signs
        self._fetch = fetch
        self._contexts: dict[str, Context | None] = {"": fetch([""])[""]}
        self._steps: dict[str, list[_Step]] = {}
        for char, sign in signs.items():
            letters, step = _step(char, sign, correspondences.get(sign.code))
            self._steps.setdefault(letters, []).append(step)
        self._longest = max(map(len, self._steps))

    def ways(self, word: str, *, count: int = 1) -> list[Way]:
        """Return the best ways to read a word, each with one primary stress.

        Args:
            word: letters a to z, apostrophes and hyphens.
            count: how many at most; the second best may be missed where it differs
                from the best near the end of a long word only.

        Returns:
            The best first; none if the letters cannot be said as a word.
        """
        reached: list[Reached] = [{} for _ in range(len(word) + 1)]
        reached[-1][_State(EDGE)] = (0.0, "")
        for at in range(len(word), 0, -1):
            self._step_back(word, at, reached)
        self._load([state.context for state in reached[0]])
        ends = [
            Way(price + self._price(state.context, EDGE), signs)
            for state, (price, signs) in reached[0].items()
            if state.closed_at < 0 and state.is_stressed
        ]
        return sorted(ends)[:count]

    def price(self, signs: str) -> float:
        """Return the price of a given reading, in nats.

        Args:
            signs: characters of its signs, in the order of the letters.
        """
        total, context = 0.0, EDGE
        for sign in (*reversed(signs), EDGE):
            self._load([context])
            total += self._price(context, sign)
            context = (sign + context)[: ORDER - 1]
        return total

    def _step_back(self, word: str, at: int, reached: list[Reached]) -> None:
        """Go from every likely state before the letter ``at`` to those one sign farther on."""
        states = sorted(reached[at].items(), key=lambda item: (item[1][0], item[1][1]))[:_BEAM]
        self._load([state.context for state, _ in states])
        for state, (price, signs) in states:
            if price > states[0][1][0] + _SLACK:
                return
            for start in range(max(0, at - self._longest), at):
                for step in self._steps.get(word[start:at], ()):
                    after = _after(state, step, start, is_last=at == len(word))
                    if after:
                        total = price + self._price(state.context, step.sign)
                        old = reached[start].get(after)
                        if old is None or total < old[0]:
                            reached[start][after] = (total, step.sign + signs)

    def _price(self, context: str, sign: str) -> float:
        total = 0.0
        for known in self._known(context):
            price = known.prices.get(sign)
            if price is not None:
                return total + price
            total += known.back_off
        return total + _UNKNOWN_PRICE

    def _known(self, context: str) -> Iterator[Context]:
        """Yield what the model has of a context, from the longest part of it to none."""
        for length in range(len(context), -1, -1):
            found = self._contexts[context[:length]]
            if found:
                yield found

    def _load(self, contexts: Sequence[str]) -> None:
        parts = dict.fromkeys(c[:n] for c in contexts for n in range(1, len(c) + 1))
        missing = [part for part in parts if part not in self._contexts]
        if missing:
            self._contexts |= dict.fromkeys(missing) | dict(self._fetch(missing))


def _after(state: _State, step: _Step, start: int, *, is_last: bool) -> _State | None:
    """Return the state after a step, or None if the step may not be taken there."""
    if (step.is_ending and not is_last) or (step.is_stressed and state.is_stressed):
        return None
    closed_at = state.closed_at
    if step.closes:
        if closed_at >= 0:
            return None
        closed_at = start
    elif step.opens:
        if closed_at - start < _NARROWEST_SPLIT:
            return None
        closed_at = -1
    elif step.has_vowel and closed_at >= 0:
        return None
    context = (step.sign + state.context)[: ORDER - 1]
    return _State(context, closed_at, state.is_stressed or step.is_stressed)


def _step(char: str, sign: Sign, row: Correspondence | None) -> tuple[str, _Step]:
    """Return the letters a sign is read from, and the step."""
    closes = sign.code == CLOSING_CODE
    spelling = CLOSING if closes or row is None else row.spelling
    opens = SPLIT in spelling
    return spelling[0] if opens else spelling, _Step(
        char,
        closes,
        opens,
        row is not None and row.kind is Kind.ENDING,
        bool(sign.stress),
        "1" in sign.stress,
    )
