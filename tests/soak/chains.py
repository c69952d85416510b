"""Draw chains of words and check that each step changes one sound, for every listener."""

from __future__ import annotations

import random
import time
from collections.abc import Callable, Iterable, Iterator
from itertools import pairwise

from phonodrill import Lexicon, Query, select
from phonodrill.errors import PhonodrillError
from phonodrill.services.chain import HIGHEST_STEPS
from phonodrill.sounds.accents import parse_accents
from phonodrill.tasks.chain import Chain, Step, varied_chain
from tests.raw_cmudict import plain
from tests.soak.checker import Asked
from tests.soak.phones import Phones, heard, is_said_as, phones_of, stressed
from tests.soak.tables import band_of, is_unfit, listed_ways, ways
from tests.soak.tally import Tally

ACCENTS = ("", "", "dictionary", "cot-caught,pin-pen", "wh-w", "fill-feel,pull-pool")


def chains(lexicon: Lexicon, seed: int) -> Iterator[tuple[Asked, Chain]]:
    """Make chains without end, from words of the bands 1 to 3."""
    rng = random.Random(seed)
    words = sorted(lexicon.plain_words(3))
    while True:
        asked = Asked(rng.choice((1, 2, 3)), rng.choice(ACCENTS))
        query = Query(asked.band, accents=parse_accents(asked.accents))
        steps, start = rng.randint(3, HIGHEST_STEPS), rng.choice(words)
        try:
            made = varied_chain(
                select(lexicon, query), query, start, steps, seed=rng.randrange(10**6)
            )
        except PhonodrillError:
            continue  # A long word, or one without neighbors, as it says.
        yield asked, made


def chain_faults(steps: Iterable[Step], asked: Asked) -> Iterator[str]:
    """Say all that is wrong in a chain; the first word may be of any band."""
    steps = list(steps)
    for place, step in enumerate(steps):
        for word in (step.word, *step.also):
            if is_unfit(word):
                yield f"unfit: {word}"
            highest = asked.band if place and word == step.word else 3
            if not 1 <= band_of(word) <= highest:
                yield f"wrong: {word} is of band {band_of(word)}"
            if _phones(step) not in ways(word):
                yield f"wrong: {word} is not said {step.said.sounds}"
        if stressed(step.said.sounds, step.said.stress) not in listed_ways(step.word):
            yield f"wrong: {step.word} is not listed as {step.said.sounds}"
    words = [step.word for step in steps]
    if len(words) != len(set(words)):
        yield "wrong: a word is there twice"
    for before, after in pairwise(steps):
        yield from _step_faults(before, after, asked)


def _step_faults(before: Step, after: Step, asked: Asked) -> Iterator[str]:
    old, new = phones_of(after.old.sounds), phones_of(after.new.sounds)
    listeners = zip(
        heard(_phones(before), asked.accents), heard(_phones(after), asked.accents), strict=True
    )
    for one, two in {*listeners}:
        gone, come = _difference(one, two)
        if len(gone) > 1 or len(come) > 1 or not (is_said_as(gone, old) and is_said_as(come, new)):
            yield f"wrong: {before.word} to {after.word} is not /{old}/ to /{new}/"
            return


def _phones(step: Step) -> Phones:
    return plain(stressed(step.said.sounds, step.said.stress))


def _difference(one: Phones, two: Phones) -> tuple[Phones, Phones]:
    """Return what is left of two words without their common beginning and end."""
    start = 0
    while start < min(len(one), len(two)) and one[start] == two[start]:
        start += 1
    one, two = one[start:], two[start:]
    while one and two and one[-1] == two[-1]:
        one, two = one[:-1], two[:-1]
    return one, two


def soak_chains(lexicon: Lexicon, tally: Tally, wanted: int, report: Callable[[str], None]) -> None:
    """Make chains until they have so many steps, and check each."""
    wall, processor = time.perf_counter(), time.process_time()
    reported = 0
    for asked, chain in chains(lexicon, tally.seed):
        if tally.draws["all"] >= wanted:
            break
        for name in ("all", f"band {asked.band}", f"accents: {asked.accents or 'everybody'}"):
            tally.draws[name] += len(chain.steps) - 1
        for fault in chain_faults(chain.steps, asked):
            tally.note(fault, f"{asked} {' '.join(step.word for step in chain.steps)}")
        if tally.draws["all"] // 1000 > reported:
            reported = tally.draws["all"] // 1000
            report(f"{tally.draws['all']} steps, {dict(tally.faults)}")
    tally.wall += time.perf_counter() - wall
    tally.processor += time.process_time() - processor
