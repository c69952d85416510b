"""Chains: each step changes one sound, holds in raw CMUdict, and is a shortest way if asked."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from phonodrill import Lexicon, PhonodrillError, Query, select
from phonodrill.sounds.accents import parse_accents
from phonodrill.sounds.notation import Notation
from phonodrill.tasks.chain import Chain, Graph, shortest_chain, varied_chain
from phonodrill.tasks.script import describe_step
from tests.raw_cmudict import plain, raw_cmudict

STARTS = ["crab", "rope", "snail", "boat", "gull", "clam", "ship", "skate", "hedge", "torch"]


def varied(lexicon: Lexicon, start: str, steps: int, seed: int, band: int = 2) -> Chain:
    query = Query(band=band)
    return varied_chain(select(lexicon, query), query, start, steps, seed=seed)


def shortest(lexicon: Lexicon, start: str, end: str, query: Query | None = None) -> Chain:
    asked = query or Query()
    return shortest_chain(select(lexicon, asked), asked, start, end)


def one_apart(before: str, after: str) -> bool:
    """In raw CMUdict, some way of each: one phone changed, added or left off."""
    for one in map(plain, raw_cmudict()[before]):
        for two in map(plain, raw_cmudict()[after]):
            short, long = sorted((one, two), key=len)
            if len(one) == len(two):
                if sum(a != b for a, b in zip(one, two, strict=True)) == 1:
                    return True
            elif any(long[:i] + long[i + 1 :] == short for i in range(len(long))):
                return True
    return False


@settings(
    max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(
    start=st.sampled_from(STARTS),
    steps=st.integers(1, 12),
    seed=st.integers(0, 999),
    band=st.integers(1, 3),
)
def test_a_varied_chain(lexicon: Lexicon, start: str, steps: int, seed: int, band: int) -> None:
    try:
        chain = varied(lexicon, start, steps, seed, band)
    except PhonodrillError as error:
        assert "no change of one sound" in error.message  # noqa: PT017
        return
    words = [step.word for step in chain.steps]
    assert words[0] == start
    assert len(words) == len(set(words))
    assert bool(chain.notes) == (len(words) < steps + 1)
    for before, after in pairwise(words):
        assert one_apart(before, after), (before, after)
        entry = lexicon.get(after)
        assert entry
        assert 1 <= entry.band <= band
        assert not entry.is_heteronym
    assert chain == varied(lexicon, start, steps, seed, band)


def test_the_place_of_change_varies(lexicon: Lexicon) -> None:
    same = total = 0
    for start in ("rope", "boat", "skate", "ship"):
        for seed in range(5):
            places = [step.place for step in varied(lexicon, start, 8, seed).steps[1:]]
            same += sum(a == b for a, b in pairwise(places))
            total += len(places) - 1
    # By chance about a third of the steps would change the place of the step before.
    assert same < total * 0.1


def test_a_shortest_chain_is_one(lexicon: Lexicon) -> None:
    query = Query(band=1)
    pool = select(lexicon, query)
    for start, end in (("ship", "boat"), ("rope", "ride"), ("cat", "pig")):
        words = [step.word for step in shortest(lexicon, start, end, query).steps]
        assert (words[0], words[-1]) == (start, end)
        assert all(one_apart(a, b) for a, b in pairwise(words))
        # Widen ring by ring from the start, without the search's own code.
        graph = Graph(pool, query, (start, end))
        ring, rings = {start}, 0
        while end not in ring:
            ring |= {there for here in ring for there in graph.neighbors(here)}
            rings += 1
        assert len(words) == rings + 1


def test_steps_say_what_changes(lexicon: Lexicon) -> None:
    chain = shortest(lexicon, "crab", "clam")
    lines = [describe_step(step, Notation.MARKS) for step in chain.steps]
    assert lines[0] == "Say “crab”."
    assert all(line.startswith(("Change /", "Add /", "Leave off /")) for line in lines[1:])
    for before, step in pairwise(chain.steps):
        sounds = before.said.sounds
        assert sounds.count(step.old.sounds) or not step.old.sounds
        assert step.new.sounds in step.said.sounds


def test_no_step_rests_on_an_accent(lexicon: Lexicon) -> None:
    query = Query()
    graph = Graph(select(lexicon, query), query, ())
    assert "caught" not in graph.neighbors("cat")
    assert "pan" not in graph.neighbors("pen")
    loose = query._replace(accents=parse_accents("dictionary"))
    assert "pan" in Graph(select(lexicon, loose), loose, ()).neighbors("pen")


@pytest.mark.parametrize(
    ("start", "end", "message"),
    [
        ("cat", "cat", "begin and end"),
        ("cute", "cat", "cannot be in a chain"),
        ("ponies", "cat", "one syllable"),
        ("read", "cat", "cannot be in a chain"),
        ("rope", "horse", "no chain leads"),
    ],
)
def test_what_cannot_be_a_chain(lexicon: Lexicon, start: str, end: str, message: str) -> None:
    with pytest.raises(PhonodrillError, match=message):
        shortest(lexicon, start, end)
