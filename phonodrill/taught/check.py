"""What each step of a taught file opens, and what is used before it is taught."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from itertools import accumulate
from typing import NamedTuple

from phonodrill.graphemes.correspondence import Kind, write_sounds
from phonodrill.lexicon.entry import Counted
from phonodrill.sounds.notation import SCRIPT
from phonodrill.taught.growth import NEVER, Target, first_taught
from phonodrill.taught.known import WHOLE
from phonodrill.taught.steps import Step, Taught
from phonodrill.taught.tokens import SPELLED_ENDINGS

EXAMPLES = 4


class Checked(NamedTuple):
    """One step of a taught file.

    Attributes:
        number: place in the order, from 1.
        step: the line.
        understood: its correspondences, each with the sounds it was taken for.
        opens: words that can be read from here on, the most familiar first.
        total: how many can be read by now.
        notes: what is used before it is taught, or taught to no purpose.
    """

    number: int
    step: Step
    understood: tuple[str, ...]
    opens: tuple[str, ...]
    total: int
    notes: tuple[str, ...]


def check_steps(
    taught: Taught,
    words: Sequence[Target],
    whole: Mapping[str, Target],
    inventory: Sequence[Counted],
) -> list[Checked]:
    """Check a taught file step by step.

    Args:
        taught: the file.
        words: words that count, the most familiar first.
        whole: word -> the ways to read it, for the words it teaches whole; a word
            that is not there is not in the lexicon.
        inventory: ``Lexicon.correspondences()``.
    """
    first = first_taught(taught)
    letters = first_letters(taught)
    single = {
        row.correspondence.spelling
        for row in inventory
        if row.correspondence.kind is Kind.SINGLE and row.correspondence.is_regular
    }
    opened: dict[int, list[str]] = {}
    for word in words:
        opened.setdefault(word.opens_at(first), []).append(word.text)
    numbers = range(1, len(taught.steps) + 1)
    totals = accumulate((len(opened.get(n, ())) for n in numbers), initial=len(opened.get(0, ())))
    return [
        Checked(
            number,
            step,
            tuple(dict.fromkeys(_understood(step))),
            tuple(opened.get(number, ())),
            total,
            (
                *_letters_missing(step, number, letters, single),
                *_needless(step, number, first),
                *_whole_words(step, number, first, whole),
            ),
        )
        for number, step, total in zip(numbers, taught.steps, list(totals)[1:], strict=True)
    ]


def leave_out_unfit(taught: Taught, is_fit: Callable[[str], bool]) -> Taught:
    """Take words that are not for class out of the steps; the problems say in which lines.

    Args:
        taught: the file.
        is_fit: says of a word whether it may be shown.
    """
    steps: list[Step] = []
    problems = list(taught.problems)
    for step in taught.steps:
        fit = tuple(filter(is_fit, step.words))
        if fit != step.words:
            problems.append(f"line {step.number}: a word that is not for class was left out")
            steps += [step._replace(text=f"{WHOLE} {' '.join(fit)}", words=fit)] * bool(fit)
        else:
            steps.append(step)
    return taught._replace(steps=tuple(steps), problems=tuple(problems))


def first_letters(taught: Taught) -> dict[str, int]:
    """Return the step, from 1, at which each letter is first taught by itself."""
    first: dict[str, int] = {}
    for number, step in enumerate(taught.steps, 1):
        for row in step.named:
            if len(row.correspondence.spelling) == 1 and row.correspondence.kind is Kind.SINGLE:
                first.setdefault(row.correspondence.spelling, number)
    return first


def _understood(step: Step) -> list[str]:
    named = [
        f"{'-' * (row.correspondence.kind is Kind.ENDING)}{row.correspondence.spelling}"
        f" /{write_sounds(row.correspondence.sound, SCRIPT)}/"
        for row in step.named
    ]
    spelled = {row.correspondence.spelling for row in step.named}
    return [
        *named,
        *(f"-{ending}" for ending in SPELLED_ENDINGS if ending in step.endings - spelled),
        *(f"{word}, taught whole" for word in step.words),
    ]


def _letters_missing(
    step: Step, number: int, letters: Mapping[str, int], single: set[str]
) -> list[str]:
    """Name spellings of several letters that come before their letters."""
    spellings = {row.correspondence.spelling: "" for row in step.named} | dict.fromkeys(
        sorted(step.endings), "-"
    )
    notes = []
    for spelling, sign in spellings.items():
        parts = dict.fromkeys(filter(str.isalpha, spelling))
        if len(spelling) == 1 and not sign:
            continue
        late = [part for part in parts if part in single and letters.get(part, NEVER) > number]
        when = [f"{part} ({_when(letters.get(part, NEVER))})" for part in late]
        if when:
            notes.append(f"{sign}{spelling} before its letters: {', '.join(when)}")
    return notes


def _needless(step: Step, number: int, first: Mapping[str, int]) -> list[str]:
    things = step.things
    if things and all(first[thing] < number for thing in things):
        return [f"taught already in step {max(first[thing] for thing in things)}"]
    return []


def _whole_words(
    step: Step, number: int, first: Mapping[str, int], whole: Mapping[str, Target]
) -> list[str]:
    """Say of words taught whole from which step they could be read anyway."""
    notes = []
    for word in step.words:
        if word not in whole:
            notes.append(f"{word} is not in the lexicon")
            continue
        by_letters = {thing: at for thing, at in first.items() if thing != WHOLE + word}
        opens = whole[word].opens_at(by_letters)
        if opens < number:
            notes.append(f"{word} can be read already")
        elif opens < NEVER:
            notes.append(f"{word} could be read by its letters from step {opens} on")
    return notes


def _when(number: int) -> str:
    return "not taught" if number == NEVER else f"step {number}"
