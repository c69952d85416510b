"""Made-up words are English in sound and spelling, and no word at all."""

from __future__ import annotations

import re
from collections import Counter

import pytest

from phonodrill import TASKS, Gate, Lexicon, Position, Query, select
from phonodrill.sounds.accents import EVERY_ACCENT
from phonodrill.sounds.inventory import VOWELS
from phonodrill.sounds.syllables import ONSETS
from phonodrill.tasks.made_up import CODAS, SHORT_VOWELS, MadeUp, made_up_words
from phonodrill.tasks.made_up import ONSETS as SPELLED_ONSETS
from tests.raw_cmudict import plain, raw_cmudict

QUERY = Query(made_up=True)


@pytest.fixture(scope="module")
def made(lexicon: Lexicon) -> list[MadeUp]:
    return list(made_up_words(select(lexicon, QUERY)))


def test_there_are_many_and_each_is_one_word(made: list[MadeUp]) -> None:
    assert len(made) > 1_000
    assert len({m.word for m in made}) == len({m.said.sounds for m in made}) == len(made)


def test_none_is_a_word_or_sounds_like_one(made: list[MadeUp]) -> None:
    spoken = {plain(phones) for ways in raw_cmudict().values() for phones in ways}
    for word in made:
        assert word.word not in raw_cmudict()
        assert plain(word.said.arpabet.split()) not in spoken, word.word
        for form in EVERY_ACCENT.heard_alike(word.said.sounds):
            same = word.said._replace(sounds=form)
            assert plain(same.arpabet.split()) not in spoken, word.word


@pytest.mark.source("wordfreq 3.1.1: words that CMUdict lacks")
def test_none_is_in_use(made: list[MadeUp]) -> None:
    import wordfreq

    assert not {m.word for m in made if wordfreq.zipf_frequency(m.word, "en") >= 1.5}


@pytest.mark.source("better-profanity 0.7.0, a general filter from PyPI")
def test_none_is_unfit(made: list[MadeUp], gate: Gate) -> None:
    from better_profanity import profanity

    profanity.load_censor_words()
    assert not {m.word for m in made if profanity.contains_profanity(m.word)}
    for word in made:
        assert gate.allows(word.word, [word.said.sounds])
        assert not any(form in word.said.sounds for form in gate.sounds if len(form) > 2)
    assert not {m.word for m in made} & {"fuck", "vuck", "shid", "fug", "lezz", "spazz", "jizz"}


@pytest.mark.source("Hammond (1999), The Phonology of English; Roach, onsets; Yavas, codas")
def test_they_are_english(made: list[MadeUp]) -> None:
    banned = ("tl", "dl", "θl", "sr", "pw", "bw", "kn", "ɡn", "pn", "ps", "ks", "sf", "ʃm", "ʃn")
    for word in made:
        sounds = word.said.sounds
        vowel = next(index for index, code in enumerate(sounds) if code in VOWELS)
        onset, coda = sounds[:vowel], sounds[vowel + 1 :]
        assert onset in ONSETS
        assert onset not in banned
        assert coda in CODAS.values()
        assert coda[0] not in "hwj"
        if onset[:1] == "s" and len(onset) > 1:
            assert onset[1] not in coda, word.word
    assert set(SPELLED_ONSETS.values()) <= set(ONSETS)


def test_each_spelling_is_read_back_in_one_way(made: list[MadeUp]) -> None:
    """Spelling to sounds by the tables alone, the longest onset first."""
    onsets = {**SPELLED_ONSETS, "c": "k", "k": "k", "cl": "kl", "cr": "kr"}
    for word in made:
        letters = next(i for i, letter in enumerate(word.word) if letter in SHORT_VOWELS)
        onset, vowel, coda = word.word[:letters], word.word[letters], word.word[letters + 1 :]
        assert onsets[onset] + SHORT_VOWELS[vowel] + CODAS[coda] == word.said.sounds
        assert not (onset == "c" and vowel in "ei")


@pytest.mark.source("letters that are read in two ways: common practice, no source")
def test_letters_that_are_read_in_two_ways_are_left_out(made: list[MadeUp]) -> None:
    words = {word.word for word in made}
    two_ways = {
        "swan, walk, ball": "w?wa|al",
        "wolf, roll, gross, both, soft, front": "^wo|o(l|ss|st|ff|ft|sk|sp|th|nt)",
        "put, push, butcher, puss": "^[bp]u(t$|sh|tch|ss)",
        "gem, ginger": "^g[ei]",
        "pen or pin": "[ei](m|n)",
        "bong, lonk": "[eo]n[gk]",
    }
    for why, letters in two_ways.items():
        assert not [word for word in words if re.search(letters, word)], why
    # What only looks so is there: after another consonant, or before another one.
    assert {"bamp", "flelf", "swod", "buft", "pulf", "fruss", "grib", "nank", "lelp"} <= words
    by_vowel = Counter(next(c for c in word if c in SHORT_VOWELS) for word in words)
    assert min(by_vowel.values()) > 100


@pytest.mark.parametrize(
    ("task", "at"),
    [
        (task.name, at)
        for task in TASKS.values()
        if task.made_up
        for at in task.positions
        if at is not Position.SYLLABLE
    ],
)
def test_items_of_made_up_words(
    lexicon: Lexicon, made: list[MadeUp], gate: Gate, task: str, at: Position
) -> None:
    known = {m.word: m.said.sounds for m in made}
    items = list(TASKS[task].candidates(select(lexicon, QUERY), QUERY, at))
    assert len(items) > 300
    for item in items:
        assert item.made_up
        if item.parts:
            word = item.answer or item.stimulus
            assert "".join(part.sounds for part in item.parts) == known[word]
        else:
            assert known[item.stimulus] != known[item.answer]
        for part in (item.sound, item.new, *item.parts):
            assert not part.stress or gate.allows("", [part.sounds])


def test_one_sound_can_be_asked_for(lexicon: Lexicon) -> None:
    query = QUERY._replace(sound="ʃ")
    for task in ("blend", "substitute"):
        at = TASKS[task].positions[0]
        items = list(TASKS[task].candidates(select(lexicon, query), query, at))
        assert items
        for item in items:
            assert "ʃ" in {item.sound.sounds, item.new.sounds, *(p.sounds for p in item.parts)}
