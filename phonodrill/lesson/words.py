"""Choose the words of a lesson: one selection for all its sections.

Every condition of the focus is covered, nouns and verbs take turns, no word is
used in two sections where it should be new, and what is dictated or checked was
not sorted. What cannot be met is relaxed in a fixed order, and said.
"""

from __future__ import annotations

import random
from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import NamedTuple

from phonodrill.lesson import plan
from phonodrill.lesson.candidates import (
    Candidate,
    Vocabulary,
    builds_cleanly,
    is_plain_to_hear,
    readings_of,
)
from phonodrill.lesson.focus import Kind
from phonodrill.lesson.plan import Part
from phonodrill.lesson.request import Context
from phonodrill.sentences import every_sentence_word

MOST_POINTS = 9
HALF = 0.5
READINGS_LOOKED_AT = 2
"""Ways to use a word, a condition, that are looked for before one is taken."""


class Words(NamedTuple):
    """The words of each section.

    Attributes:
        rule: one a condition.
        build, listed, sort, bases, dictation, check: in the order of use.
        review: those of ``listed`` that have not the focus.
        notes: one line each on what was relaxed.
    """

    rule: tuple[str, ...] = ()
    build: tuple[str, ...] = ()
    listed: tuple[str, ...] = ()
    review: tuple[str, ...] = ()
    sort: tuple[str, ...] = ()
    bases: tuple[str, ...] = ()
    dictation: tuple[str, ...] = ()
    check: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()

    @property
    def every(self) -> frozenset[str]:
        """All words of the lesson."""
        return frozenset(word for field in self[:8] for word in field)


def draw_words(
    context: Context,
    vocabulary: Vocabulary,
    parts: tuple[Part, ...],
    resting: frozenset[str],
    rng: random.Random,
    watch_outs: tuple[str, ...] = (),
    traps: int = 0,
) -> Words:
    """Choose the words.

    Args:
        context: what is asked for.
        vocabulary: the words there are.
        parts: the plan.
        resting: words not to be used again yet.
        rng: the only source of chance.
        watch_outs: words that are shown beside the rule: not dictated, not checked.
        traps: items of the quick check that need no word of the focus.
    """
    wants = {part.name: part.items for part in parts}
    if context.focus.kind is Kind.TASK:
        # These sections have oral items instead.
        del wants[plan.RULE]
        wants.pop(plan.CHECK, None)
    deck = _Deck(context, vocabulary, resting, rng)
    back = words_to_bring_back(context)
    deck.set_aside(back)
    points = min(MOST_POINTS, len(vocabulary.conditions)) if plan.RULE in wants else 0
    # Each way to spell has an example, then as many of the other conditions as there is room for.
    rule = deck.draw(points, once=_way_to_spell) if context.focus.endings else []
    rule += deck.draw(points - len(rule), once=_condition, besides=rule)
    order = vocabulary.conditions.index
    rule.sort(key=lambda word: order(vocabulary.words[word].condition))

    def is_clean(word: str) -> bool:
        return builds_cleanly(word, context)

    def is_plain(word: str) -> bool:
        return word not in watch_outs and is_plain_to_hear(word, context)

    build = deck.draw(wants.get(plan.BUILD, 0), only=is_clean)
    asked_back = resting | {*back}
    sort, rivals = _draw_sort(deck, vocabulary, wants.get(plan.SORT, 0), asked_back, rng)
    heard_back = [word for word in back if is_plain(word)][: wants.get(plan.DICTATION, 0) // 2]
    dictation = deck.draw(wants.get(plan.DICTATION, 0) - len(heard_back), only=is_plain)
    dictation = [*heard_back, *dictation]
    wanted = max(0, wants.get(plan.CHECK, 0) - traps)
    check = deck.draw(wanted, only=is_plain)
    listed_wanted = wants.get(plan.LIST, 0)
    review = back[: listed_wanted // 2]
    others = _draw_review(vocabulary, listed_wanted // 3 - len(review), asked_back, rng)
    # What only looks as if it had the ending (bring) may be asked in the check.
    review += [word for word in others if word not in watch_outs]
    listed = deck.draw(listed_wanted - len(review))
    bases = deck.draw(wants.get(plan.BASES, 0)) if plan.BASES in wants else []
    # Where words are scarce, sections share them: never a sorted word dictated or checked.
    fill = _Filler()
    taken = [*rule, *build]
    build = fill(build, filter(is_clean, rule), wants.get(plan.BUILD, 0), "build words")
    listed = fill(listed, [*taken, *sort], listed_wanted - len(review), "sound out")
    kept = min(wants.get(plan.DICTATION, 0), (len(taken) + 1) // 2)
    sort = fill(
        sort, taken[: max(0, len(taken) - kept)], wants.get(plan.SORT, 0) - len(rivals), "sort"
    )
    free = [word for word in [*taken, *listed] if word not in sort and is_plain(word)]
    dictation = fill(dictation, free, wants.get(plan.DICTATION, 0), "dictation")
    free = [word for word in free if word not in dictation]
    check = fill(check, [*free, *dictation], wanted, "quick check")
    bases = fill(bases, [*listed, *taken], wants.get(plan.BASES, 0), "find the base")
    mixed = [*sort, *rivals]
    rng.shuffle(mixed)
    drawn = (rule, build, _mix(listed, review), review, mixed, bases, dictation, check)
    notes = (*_said_of(context, back), *deck.notes(), *fill.notes())
    words = Words._make((*map(tuple, drawn), notes))
    return words._replace(notes=(*gaps(words, vocabulary), *notes))


def words_to_bring_back(context: Context) -> list[str]:
    """Return the words asked for review that the class may read, other ones first each day."""
    fit = [word for word in dict.fromkeys(context.request.review) if context.pool.find(word)]
    turn = (context.request.day - 1) % len(fit) if fit else 0
    return [*fit[turn:], *fit[:turn]]


def _said_of(context: Context, back: list[str]) -> list[str]:
    """Say that some words asked for review do not come; not which, as the gate may bar them."""
    missing = len({*context.request.review}) - len(back)
    return [f"not brought back, as the class may not read it: {_count(missing)}"] if missing else []


_Piles = dict[str, list[tuple[int, Candidate]]]
"""Condition -> its words with their places in the order of the deck."""


class _Deck:
    """The candidates that are left, the best first, and what was drawn so far."""

    def __init__(
        self,
        context: Context,
        vocabulary: Vocabulary,
        resting: frozenset[str],
        rng: random.Random,
    ) -> None:
        self._context = context
        listed = [c for c in vocabulary.words.values() if c.condition in vocabulary.conditions]
        rng.shuffle(listed)
        written = every_sentence_word(context.lexicon)
        # Half of the words without a sentence go behind, so that there are some to read.
        late = {c.word for c in listed if c.word not in written and rng.random() < HALF}
        listed.sort(key=lambda c: (c.syllables > _short(c), c.word in late))
        readings: dict[str, set[tuple[str, ...]]] = {c: set() for c in vocabulary.conditions}
        self._fresh: _Piles = {condition: [] for condition in vocabulary.conditions}
        self._rested: _Piles = {condition: [] for condition in vocabulary.conditions}
        for place, candidate in enumerate(listed):
            readings[candidate.condition].add(candidate.parts_of_speech[:1])
            is_fresh = resting.isdisjoint((candidate.word, candidate.base))
            piles = self._fresh if is_fresh else self._rested
            piles[candidate.condition].append((place, candidate))
        # Of words whose use is not yet looked up, two ways a condition are enough.
        self._kinds = {
            condition: READINGS_LOOKED_AT if found == {()} else len(found)
            for condition, found in readings.items()
        }
        self._met: dict[str, int] = dict.fromkeys(vocabulary.conditions, 0)
        self._readings: dict[str, int] = {}
        self._bases: set[str] = set()
        self._came_back: list[str] = []
        self._by_word = vocabulary.words

    def set_aside(self, words: Iterable[str]) -> None:
        """Keep words and their bases for another use."""
        for word in words:
            found = self._by_word.get(word)
            self._bases.add(found.base if found else word)

    def draw(
        self,
        count: int,
        *,
        once: Callable[[Candidate], str] | None = None,
        besides: Sequence[str] = (),
        only: Callable[[str], bool] = lambda _: True,
        by_label: bool = False,
    ) -> list[str]:
        """Take words, of the condition and reading that are behind; no base twice.

        Args:
            count: how many.
            once: one word of each of these labels.
            besides: words drawn before, whose labels are met.
            only: says of a word whether it may be taken.
            by_label: headings of a sort take turns, instead of conditions.
        """
        drawn: list[str] = []
        own: dict[str, int] = {}
        label = once or (_heading if by_label else _condition)
        met = {label(self._by_word[word]) for word in besides}
        while len(drawn) < count:
            barred = met | own.keys() if once else set()
            for piles in (self._fresh, self._rested):
                picked = self._pick(piles, own, label, barred, only)
                if picked:
                    break
            else:
                break
            if piles is self._rested:
                self._came_back.append(picked.word)
            own[label(picked)] = own.get(label(picked), 0) + 1
            self._note(picked)
            drawn.append(picked.word)
        return drawn

    def notes(self) -> list[str]:
        """Say which words came back too soon."""
        if not self._came_back:
            return []
        back = ", ".join(self._came_back[:6]) + (", ..." if len(self._came_back) > 6 else "")  # noqa: PLR2004
        return [f"{_count(len(self._came_back))} of recent lessons again: {back}"]

    def _pick(
        self,
        piles: _Piles,
        own: dict[str, int],
        label: Callable[[Candidate], str],
        barred: set[str],
        only: Callable[[str], bool],
    ) -> Candidate | None:
        """Take the first word of the label, condition and reading that are furthest behind."""
        best: tuple[tuple[int, int, int, int], Candidate] | None = None
        for place, candidate in self._firsts(piles, label, barred, only):
            behind = (
                own.get(label(candidate), 0),
                self._met[candidate.condition],
                self._readings.get(_reading(candidate, self._context), 0),
                place,
            )
            if best is None or behind < best[0]:
                best = (behind, candidate)
        return best[1] if best else None

    def _firsts(
        self,
        piles: _Piles,
        label: Callable[[Candidate], str],
        barred: set[str],
        only: Callable[[str], bool],
    ) -> Iterator[tuple[int, Candidate]]:
        """Yield the first word of each condition and reading that may be taken."""
        for condition, pile in piles.items():
            seen: set[str] = set()
            for place, candidate in pile:
                if candidate.base in self._bases or label(candidate) in barred:
                    continue
                reading = _reading(candidate, self._context)
                if reading not in seen and only(candidate.word):
                    seen.add(reading)
                    yield place, candidate
                    if len(seen) >= self._kinds[condition]:
                        break

    def _note(self, candidate: Candidate) -> None:
        self._bases.add(candidate.base)
        self._met[candidate.condition] += 1
        reading = _reading(candidate, self._context)
        self._readings[reading] = self._readings.get(reading, 0) + 1


def _reading(candidate: Candidate, context: Context) -> str:
    return next(iter(readings_of(candidate, context)), "")


def _way_to_spell(candidate: Candidate) -> str:
    """Name the rule; nouns in o and i have a line of their own among those that add s or es."""
    if not candidate.ending:
        return ""
    ending = candidate.ending
    return f"{ending.rule} {ending.suffix == 's' and ending.base[-1] in 'oi'}"


def _condition(candidate: Candidate) -> str:
    return candidate.condition


def _heading(candidate: Candidate) -> str:
    return f"{candidate.spelling} {candidate.sound}"


def _short(candidate: Candidate) -> int:
    """Syllables of a short word: one, or two with an ending that may be one."""
    return 2 if candidate.ending else 1


def _draw_sort(
    deck: _Deck, vocabulary: Vocabulary, count: int, resting: frozenset[str], rng: random.Random
) -> tuple[list[str], list[str]]:
    """Draw the words to sort: two of three have the focus, the others compete with it."""
    by_kind: dict[tuple[str, str], list[str]] = {}
    for rival in vocabulary.rivals.values():
        if rival.word not in resting and rival.syllables == 1:
            by_kind.setdefault((rival.spelling, rival.sound), []).append(rival.word)
    share = min(count // 4, count // (len(by_kind) + 1)) if by_kind else 0
    rivals = [
        word
        for kind in sorted(by_kind)
        for word in rng.sample(by_kind[kind], min(share, len(by_kind[kind])))
    ]
    # Where all have one heading the conditions make the piles.
    has_headings = len({_heading(found) for found in vocabulary.words.values()}) > 1
    return deck.draw(count - len(rivals), by_label=has_headings or bool(rivals)), rivals


def _mix(new: list[str], review: list[str]) -> list[str]:
    """Put a review word behind every second new one."""
    mixed: list[str] = []
    rest = list(review)
    for number, word in enumerate(new, 1):
        mixed.append(word)
        if number % 2 == 0 and rest:
            mixed.append(rest.pop(0))
    return mixed + rest


def _draw_review(
    vocabulary: Vocabulary, count: int, resting: frozenset[str], rng: random.Random
) -> list[str]:
    free = [word for word in vocabulary.review if word not in resting]
    return rng.sample(free, min(max(0, count), len(free)))


class _Filler:
    """Fills sections with words of other sections, and tells where."""

    def __init__(self) -> None:
        self._shared: list[str] = []
        self._short: list[str] = []

    def __call__(
        self, drawn: list[str], others: Iterable[str], count: int, section: str
    ) -> list[str]:
        """Add words that other sections have until there are ``count``."""
        missing = count - len(drawn)
        if missing <= 0:
            return drawn
        more = [word for word in dict.fromkeys(others) if word not in drawn][:missing]
        if more:
            self._shared.append(f"{section} {len(more)}")
        if len(more) < missing:
            self._short.append(f"{section} {len(drawn) + len(more)} of {count}")
        return [*drawn, *more]

    def notes(self) -> list[str]:
        """Say where words come again, and where there are too few."""
        shared = ", ".join(self._shared)
        short = ", ".join(self._short)
        lines = {
            f"few words fit, so some come a second time: {shared}": shared,
            f"too few words for {short}": short,
        }
        return [line for line, has in lines.items() if has]


def gaps(words: Words, vocabulary: Vocabulary) -> list[str]:
    """Name the conditions that no word of the lesson has."""
    met = {vocabulary.words[w].condition for w in words.every if w in vocabulary.words}
    missing = [condition for condition in vocabulary.conditions if condition not in met]
    notes = [f"not in this lesson: {condition}" for condition in missing]
    if vocabulary.rare:
        notes.append(f"too few words to practice: {'; '.join(vocabulary.rare)}")
    return notes


def _count(number: int) -> str:
    return f"{number} word" + "s" * (number != 1)
