"""Draw items as users get them: warm-ups and whole banks, over all that can be asked for."""

from __future__ import annotations

import random
from collections.abc import Iterator
from itertools import chain, combinations, product
from typing import NamedTuple

from phonodrill import Item, Lexicon, Query, select
from phonodrill.errors import PhonodrillError
from phonodrill.services.bank import kinds_of
from phonodrill.services.warmup import Wish, warm_up
from phonodrill.sounds.accents import DICTIONARY, FEATURES, parse_accents
from phonodrill.sounds.inventory import BY_CODE
from phonodrill.sounds.units import RVowels
from phonodrill.tasks.difficulty import Level
from tests.soak.checker import Asked

BANDS = (1, 2, 3)
COMBINED = 8
"""Pairs and threes of accents, drawn by chance, beside each one alone and all together."""
WARM_UPS = 40
"""Warm-ups of a cell."""
ENDINGS = (frozenset({"s", "es", "ies", "ves"}), frozenset({"ed"}), frozenset({"ing"}))


class WarmLexicon(Lexicon):
    """The lexicon; it reads the plain words of a band once: a soak asks thousands of times."""

    def __init__(self) -> None:
        super().__init__()
        self._plain: dict[int, dict[str, list[str]]] = {}

    def plain_words(self, highest_band: int) -> dict[str, list[str]]:
        """Return what the lexicon returns."""
        if highest_band not in self._plain:
            self._plain[highest_band] = super().plain_words(highest_band)
        return self._plain[highest_band]


class Cell(NamedTuple):
    """What is asked for: one accent, one band, one way to count a vowel and its R."""

    accents: str
    band: int
    r_vowels: RVowels | None
    endings: frozenset[str]
    seed: int

    @property
    def query(self) -> Query:
        """The query of the engine."""
        accents = parse_accents(self.accents)
        return Query(self.band, self.endings, r_vowels=self.r_vowels, accents=accents)

    @property
    def asked(self) -> Asked:
        """What the checker has to know."""
        return Asked(self.band, self.accents, self.r_vowels is RVowels.ONE)


class Drawn(NamedTuple):
    """An item, and in what it was drawn: a bank or a warm-up."""

    source: str
    item: Item


def cells(seed: int) -> Iterator[Cell]:
    """Yield cells without end: first each accent with each band, then by chance."""
    rng = random.Random(seed)
    names = [feature.name for feature in FEATURES]
    groups = [",".join(g) for g in chain(combinations(names, 2), combinations(names, 3))]
    accents = ["", DICTIONARY, *names, *rng.sample(groups, COMBINED), ",".join(names)]
    counting = (None, RVowels.TWO, RVowels.ONE)
    grid = list(product(accents, BANDS))
    rng.shuffle(grid)
    for number, (accent, band) in enumerate(grid):
        endings = ENDINGS[number % 3] if number % 4 == 0 else frozenset[str]()
        yield Cell(accent, band, counting[number % 3], endings, rng.randrange(10**6))
    while True:
        accent, band = rng.choice(grid)
        yield Cell(accent, band, rng.choice(counting), frozenset(), rng.randrange(10**6))


def draw(lexicon: Lexicon, cell: Cell) -> Iterator[Drawn]:
    """Draw the items of a cell: warm-ups first, then the bank."""
    rng = random.Random(cell.seed)
    for _ in range(WARM_UPS):
        for item in _warm_up(lexicon, cell, rng):
            yield Drawn("warm-ups", item)
    for made_up in (False, True) if cell.band == 2 and not cell.endings else (False,):
        query = cell.query._replace(made_up=made_up)
        for task, at in kinds_of("", None, made_up=made_up):
            pool = select(lexicon, query, random.Random(cell.seed))
            for item in task.candidates(pool, query, at):
                yield Drawn("banks", item)


def _warm_up(lexicon: Lexicon, cell: Cell, rng: random.Random) -> tuple[Item, ...]:
    made_up = rng.random() < 0.05 and not cell.endings
    task, at = rng.choice(kinds_of("", None, made_up=made_up))
    sound = rng.choice([*BY_CODE]) if rng.random() < 0.2 else ""
    level = rng.choice([*Level]) if rng.random() < 0.3 else None
    query = cell.query._replace(made_up=made_up, sound=sound)
    wish = Wish(query, rng.randint(5, 60), rng.randrange(10**6), task.name, at, level)
    try:
        return warm_up(lexicon, wish).items
    except PhonodrillError:
        return ()  # Nothing fits, which is said in a line: no item, no mistake.
