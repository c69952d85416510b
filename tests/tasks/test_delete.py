from __future__ import annotations

import random

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from phonodrill import TASKS, Item, Lexicon, Position, Query, make_warmup, select
from phonodrill.sounds.notation import Notation
from phonodrill.sounds.units import RVowels
from phonodrill.tasks import script
from phonodrill.tasks.choose import choose
from phonodrill.tasks.delete import candidates
from tests.raw_cmudict import plain, raw_cmudict

ENDINGS = ["", "s", "es", "ies", "ed", "ing"]
ENDS = [Position.FIRST, Position.LAST]


def items(lexicon: Lexicon, at: Position, query: Query) -> list[Item]:
    return list(candidates(select(lexicon, query), query, at))


def answers(lexicon: Lexicon, at: Position, **query: object) -> dict[str, str]:
    found = items(lexicon, at, Query(**query))  # type: ignore[arg-type]
    return {item.stimulus: item.answer for item in found}


@pytest.mark.parametrize("at", ENDS)
@pytest.mark.parametrize("ending", ENDINGS)
def test_every_item_holds_in_raw_cmudict(lexicon: Lexicon, at: Position, ending: str) -> None:
    """Independent of the engine: some way to say the stimulus, less a phone, is the answer."""
    found = items(lexicon, at, Query(band=3, endings=frozenset(filter(None, [ending]))))
    ours = {  # mended entries are not CMUdict's
        entry.word
        for entry in lexicon.entries(highest_band=3)
        if any(said.origin == "mended" for said in entry.pronunciations)
    }
    for item in found:
        if {item.stimulus, item.answer} & ours:
            continue
        cut = slice(1, None) if at is Position.FIRST else slice(None, -1)
        left = {plain(phones)[cut] for phones in raw_cmudict()[item.stimulus]}
        for word in (item.answer, *item.also):
            assert left & {plain(phones) for phones in raw_cmudict()[word]}, item
        arpabet = item.stimulus_said.arpabet.split()
        assert plain(arpabet)[cut] == plain(item.answer_said.arpabet.split())
        taken = arpabet[0] if at is Position.FIRST else arpabet[-1]
        assert script.sound_of(item, Notation.ARPABET) == taken


@pytest.mark.source(
    "National Reading Panel (2000), ch. 2; Common Core, Appendix A; Texas TEKS guide, grade 1"
)
@pytest.mark.parametrize(
    ("stimulus", "at", "answer"),
    [
        ("smile", Position.FIRST, "mile"),
        ("park", Position.FIRST, "ark"),
        ("four", Position.FIRST, "or"),
        ("hand", Position.FIRST, "and"),
        ("bring", Position.FIRST, "ring"),
        ("rose", Position.LAST, "row"),
        ("part", Position.FIRST, "art"),
        ("stop", Position.FIRST, "top"),
        ("plate", Position.FIRST, "late"),
        ("cart", Position.LAST, "car"),
        ("think", Position.LAST, "thing"),
    ],
)
def test_published_examples(lexicon: Lexicon, stimulus: str, at: Position, answer: str) -> None:
    found = answers(lexicon, at, band=3, words=(stimulus,))
    # Either the item is there with that answer, or a stated rule leaves it out.
    if stimulus in found:
        assert found[stimulus] == answer
    else:
        entry = lexicon.get(answer)
        assert entry
        assert entry.is_heteronym or entry.band > 3, stimulus


@pytest.mark.parametrize("band", [1, 2, 3])
def test_stimulus_and_answer_are_within_the_band(lexicon: Lexicon, band: int) -> None:
    for at in ENDS:
        for item in items(lexicon, at, Query(band=band)):
            for word in (item.stimulus, item.answer):
                entry = lexicon.get(word)
                assert entry
                assert 1 <= entry.band <= band


def test_heteronyms_are_left_out_unless_asked_for(lexicon: Lexicon) -> None:
    for at in ENDS:
        for item in items(lexicon, at, Query(band=3)):
            for word in (item.stimulus, item.answer):
                entry = lexicon.get(word)
                assert entry
                assert not entry.is_heteronym
    asked = items(lexicon, Position.FIRST, Query(band=3, words=("wind", "bow")))
    assert all(item.stimulus_said.meaning for item in asked)
    for item in asked:
        assert item.stimulus_said.meaning in script.ask(item, Notation.MARKS)


def test_a_vowel_is_not_parted_from_its_r(lexicon: Lexicon) -> None:
    assert not answers(lexicon, Position.LAST, words=("hear", "pour", "store", "bear"))


def test_the_stressed_vowel_is_not_taken_off(lexicon: Lexicon) -> None:
    assert not answers(lexicon, Position.FIRST, band=3, words=("easter", "any", "icy"))
    assert answers(lexicon, Position.FIRST, band=3, words=("apart",)) == {"apart": "part"}


def test_band_one_does_not_split_tr_or_dr(lexicon: Lexicon) -> None:
    for at in ENDS:
        for item in items(lexicon, at, Query(band=1)):
            assert item.stimulus_said.sounds[:2] not in ("tr", "dr") or at is Position.LAST


def test_a_vowel_with_its_r_is_one_sound_when_asked(lexicon: Lexicon) -> None:
    two = {i.stimulus: i for i in items(lexicon, Position.FIRST, Query(band=3))}
    query = Query(band=3, r_vowels=RVowels.ONE)
    one = {i.stimulus: i for i in items(lexicon, Position.FIRST, query)}
    assert not any(len(item.sound.sounds) == 2 for item in two.values())
    for item in one.values():
        if len(item.sound.sounds) == 2:
            assert item.sound.sounds[1] == "r"


@settings(
    max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(
    seed=st.integers(0, 10**6),
    count=st.integers(1, 30),
    band=st.integers(1, 3),
    ending=st.sampled_from(ENDINGS),
    at=st.sampled_from(ENDS),
)
def test_a_set_is_varied_ordered_and_repeatable(
    lexicon: Lexicon, seed: int, count: int, band: int, ending: str, at: Position
) -> None:
    query = Query(band=band, endings=frozenset(filter(None, [ending])))
    made = make_warmup(lexicon, TASKS["delete"], at, query, count=count, seed=seed)
    again = make_warmup(lexicon, TASKS["delete"], at, query, count=count, seed=seed)
    assert made == again
    assert len(made.items) <= count
    assert bool(made.notes) == (len(made.items) < count)
    words = [w for i in made.items for w in i.words]
    assert len(words) == len(set(words))
    assert [i.difficulty for i in made.items] == sorted(i.difficulty for i in made.items)


def test_sounds_take_turns(lexicon: Lexicon) -> None:
    made = make_warmup(lexicon, TASKS["delete"], Position.FIRST, Query(), count=12, seed=5)
    assert len({item.sound.sounds for item in made.items}) == 12


def test_without_a_seed_sets_differ(lexicon: Lexicon) -> None:
    sets = {
        make_warmup(lexicon, TASKS["delete"], Position.FIRST, Query(), count=8, seed=s).items
        for s in range(5)
    }
    assert len(sets) == 5


def test_a_short_set_says_what_to_loosen(lexicon: Lexicon) -> None:
    query = Query(band=1, endings=frozenset({"ies"}))
    made = make_warmup(lexicon, TASKS["delete"], Position.FIRST, query, count=200, seed=1)
    assert len(made.items) < 200
    assert "only" in made.notes[0]
    assert "--band 2" in made.notes[0] or "no --ending" in made.notes[0]


def test_only_one_sound_when_asked(lexicon: Lexicon) -> None:
    found = items(lexicon, Position.FIRST, Query(sound="s"))
    assert found
    assert {item.sound.sounds for item in found} == {"s"}


def test_choose_takes_no_more_than_there_are() -> None:
    assert choose([], 5, random.Random(1)) == []
