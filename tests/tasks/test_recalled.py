"""What a lexicon keeps from one set of items to the next changes none of them."""

from __future__ import annotations

import random

from phonodrill import TASKS, Lexicon
from phonodrill.overlay import NO_OVERLAY, Overlay, parse_rule
from phonodrill.selection import Query
from phonodrill.sounds.units import RVowels
from phonodrill.tasks.warmup import WarmUp, make_warmup
from phonodrill.web.long_open import LongOpenLexicon

RULES = [rule for line in ("block crab", "add harbor 2") if (rule := parse_rule(line))]
OWN = Overlay({rule.word: rule for rule in RULES}, ())
QUERIES = (
    Query(band=1),
    Query(band=2, r_vowels=RVowels.ONE),
    Query(band=3, endings=frozenset({"es"})),
    Query(band=2, words=("crab", "torches", "gull", "skate", "stitch", "clam")),
)


def asked(seed: int) -> tuple[str, Query, Overlay]:
    chance = random.Random(seed)
    return chance.choice(list(TASKS)), chance.choice(QUERIES), chance.choice([OWN, NO_OVERLAY])


def make(lexicon: Lexicon, seed: int) -> WarmUp:
    name, query, overlay = asked(seed)
    task = TASKS[name]
    return make_warmup(lexicon, task, task.positions[0], query, count=4, seed=seed, overlay=overlay)


def test_a_set_does_not_depend_on_those_before() -> None:
    with LongOpenLexicon() as one:
        together = {seed: make(one, seed) for seed in range(14)}
    for seed, made in together.items():
        with Lexicon() as alone:
            assert make(alone, seed) == made, asked(seed)
