"""A teaching order as the lines of a taught file, with a reason for each."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from enum import StrEnum
from typing import NamedTuple

from phonodrill.graphemes.correspondence import Kind
from phonodrill.lexicon.entry import Counted
from phonodrill.taught.growth import Target, first_taught, growth
from phonodrill.taught.known import WHOLE
from phonodrill.taught.order import PASSES, breakers, pose, solve, take_best
from phonodrill.taught.steps import Taught, parse_steps
from phonodrill.taught.units import Unit, find_units

WORDS_AFTER, WORDS_EVERY, WORDS_AT_ONCE = 5, 10, 4
"""Words are taught whole after so many steps, then every so many, so many a line."""
FAR = 15
"""A word is taught whole if its correspondences are not taught within so many steps."""
FREQUENT_COUNTS = 5
"""So many times the search counts a word that is among the most used."""
EXAMPLES = 3
WIDEST = 20
"""Longer steps may push their comments out of the column."""
OURS = "this order"


class Goal(StrEnum):
    """What the order is to open soonest."""

    DECODABLE = "decodable"
    SENTENCES = "sentences"


class Material(NamedTuple):
    """What an order is worked out from.

    Attributes:
        inventory: ``Lexicon.correspondences()``.
        words: words of the bands wanted, the most familiar first.
        sentences: sentences, each of their words.
        frequent: the words most used, in order, with the ways to read them.
    """

    inventory: Sequence[Counted]
    words: Sequence[Target]
    sentences: Sequence[Target]
    frequent: Sequence[Target]

    def targets(self, goal: Goal) -> Sequence[Target]:
        """Return what is counted for a goal."""
        return self.words if goal is Goal.DECODABLE else self.sentences

    def weighted(self, goal: Goal) -> Sequence[Target]:
        """Return what the search counts: a much-used word several times."""
        if goal is Goal.SENTENCES:
            return self.sentences
        frequent = {target.text for target in self.frequent}
        return [
            word
            for word in self.words
            for _ in range(FREQUENT_COUNTS if word.text in frequent else 1)
        ]


class Line(NamedTuple):
    """One line of a taught file.

    Attributes:
        text: the step.
        reason: why it stands there.
    """

    text: str
    reason: str


class Suggestion(NamedTuple):
    """A teaching order and how it compares.

    Attributes:
        goal: what it was made for.
        seed: of the search.
        lines: the steps, those taught already first.
        started: how many of them were taught already.
        curves: name of an order -> how many targets can be read after 0, 1 ... lines.
        broken: name of an order -> how many constraints it breaks.
    """

    goal: Goal
    seed: int
    lines: tuple[Line, ...]
    started: int
    curves: Mapping[str, Sequence[int]]
    broken: Mapping[str, int]


def suggest(
    material: Material,
    goal: Goal,
    seed: int,
    start: Taught,
    steps: int | None = None,
    passes: int = PASSES,
) -> Suggestion:
    """Work out an order that opens the most words or sentences soonest.

    Args:
        material: words and sentences to be read.
        goal: which of the two count.
        seed: of the search.
        start: what is taught already; no steps if nothing is.
        steps: how many steps to add at most; all if None.
        passes: of the search; 0 for a quick one.
    """
    taught = {thing: number - len(start.steps) for thing, number in first_taught(start).items()}
    units = find_units(material.inventory, material.words)
    targets = material.targets(goal)
    puzzle = pose(
        units, material.weighted(goal), {**taught, **_surely_whole(material.frequent, goal)}
    )
    order = solve(puzzle, seed, passes)
    counts = [unit.words for unit in units]
    orders = {
        OURS: order,
        "by frequency, constraints kept": take_best(puzzle, counts, by_score=False),
        "by frequency": sorted(order, key=lambda unit: (-units[unit].words, units[unit].token)),
        "by alphabet": sorted(order, key=lambda unit: _alphabetical(units[unit])),
    }
    before = [step.text for step in start.steps]
    texts = _with_words(material, [units[unit].token for unit in order], start)[:steps]
    curves = {}
    for name, other in orders.items():
        placed = _in_places(texts, [units[unit].token for unit in other])
        curves[name] = growth(targets, parse_steps(before + placed, material.inventory))
    lines = _explain(material, before, texts, {units[unit].token: units[unit] for unit in order})
    faults = {name: len(breakers(puzzle, other)) for name, other in orders.items()}
    return Suggestion(goal, seed, tuple(lines), len(before), curves, faults)


def write_lines(lines: Iterable[Line]) -> str:
    """Write lines as the text of a taught file, the reasons as comments."""
    listed = list(lines)
    sizes = [len(line.text) for line in listed if len(line.text) <= WIDEST]
    width = max(sizes, default=0)
    return "".join(f"{line.text:<{width}}  # {line.reason}\n" for line in listed)


def _with_words(material: Material, tokens: Sequence[str], start: Taught) -> list[str]:
    """The tokens of an order, with lines of words taught whole between them."""
    before = [step.text for step in start.steps]
    first = first_taught(parse_steps([*before, *tokens], material.inventory))
    opens = {target.text: target.opens_at(first) for target in material.frequent}
    waiting = list(opens)
    texts: list[str] = []
    for number, token in enumerate(tokens, 1):
        texts.append(token)
        if number % WORDS_EVERY == WORDS_AFTER:
            far = [word for word in waiting if opens[word] > len(before) + number + FAR]
            now = far[:WORDS_AT_ONCE]
            waiting = [word for word in waiting if word not in now]
            texts += [f"{WHOLE} {' '.join(now)}"] * bool(now)
    return texts


def _surely_whole(frequent: Sequence[Target], goal: Goal) -> dict[str, int]:
    """Words that the search for sentences takes as taught: odd ones and the most used."""
    if goal is Goal.DECODABLE:
        return {}
    is_odd = [len(target.words[0]) == 1 for target in frequent]
    return {
        WHOLE + target.text: 0
        for place, target in enumerate(frequent)
        if is_odd[place] or place < WORDS_EVERY * WORDS_AT_ONCE
    }


def _in_places(texts: Sequence[str], tokens: Sequence[str]) -> list[str]:
    """The tokens of another order in the same lines, the words taught whole where they were."""
    following = iter(tokens)
    return [text if text.startswith(WHOLE) else next(following) for text in texts]


def _alphabetical(unit: Unit) -> tuple[bool, str, str]:
    """Letters from a to z, then all else from a to z."""
    is_letter = len(unit.spelling) == 1 and unit.is_first
    return not is_letter, unit.spelling, unit.token


def _explain(
    material: Material, before: Sequence[str], texts: Sequence[str], units: Mapping[str, Unit]
) -> Iterable[Line]:
    first = first_taught(parse_steps([*before, *texts], material.inventory))
    opened: dict[int, list[str]] = {}
    for word in material.words:
        opened.setdefault(word.opens_at(first), []).append(word.text)
    for number, text in enumerate([*before, *texts], 1):
        if number <= len(before):
            yield Line(text, "taught already")
        elif text.startswith(WHOLE):
            yield Line(text, "much used, and not to be sounded out for a while")
        else:
            yield Line(text, _reason(units[text], opened.get(number, [])))


def _reason(unit: Unit, opened: Sequence[str]) -> str:
    what = ""
    if unit.kind is Kind.ENDING:
        what = "an ending on known words; "
    elif not unit.is_first:
        what = f"a further sound of {unit.spelling}; "
    elif unit.kind is not Kind.SINGLE:
        what = f"{unit.kind}; "
    if not opened:
        return f"{what}{unit.words:,} words need it"
    few = ", ".join(opened[:EXAMPLES])
    return f"{what}opens {len(opened)}: {few}"
