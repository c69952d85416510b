"""Items printed in published documents are items of ours, or a stated rule leaves them out."""

from __future__ import annotations

import pytest

from phonodrill import TASKS, Item, Lexicon, Position, Query, select
from phonodrill.sounds.accents import FEATURES, Accents
from phonodrill.sounds.inventory import BY_CODE
from phonodrill.sounds.units import RVowels
from tests.case_files import cases


def phones(sounds: str) -> str:
    return " ".join(BY_CODE[code].arpabet for code in sounds)


def answer_of(item: Item) -> str:
    if item.task == "segment":
        return " | ".join(phones(part.sounds) for part in item.parts)
    return item.answer or phones(item.answer_said.sounds)


def matches(item: Item, words: list[str], sound: str, new: str, answer: str) -> bool:
    if phones(item.sound.sounds) != sound or (new and phones(item.new.sounds) != new):
        return False
    if item.choices:
        return {choice.word for choice in item.choices} == set(words)
    said = {item.stimulus or item.answer}
    # The page's spelling may not be the one we show first: eight, ate.
    return said == set(words) and answer in (answer_of(item), *item.also)


def found(lexicon: Lexicon, row: tuple[str, ...], query: Query) -> bool:
    task, at, words, sound, new, answer = row
    pool = select(lexicon, query)
    items = TASKS[task].candidates(pool, query, Position(at))
    return any(matches(item, words.split(), sound, new, answer) for item in items)


@pytest.mark.source(
    "National Reading Panel (2000); Common Core, Appendix A (2010); Texas TEKS guide, grade 1; "
    "Put Reading First (2001), from memory: see tests/cases/published_items.tsv"
)
@pytest.mark.parametrize(
    ("task", "at", "words", "sound", "new", "answer", "source", "left_out"),
    [
        row
        for row in cases("published_items.tsv")
        if row.values[0] not in ("identify", "categorize")
    ],
)
def test_a_published_item_is_ours(
    lexicon: Lexicon,
    task: str,
    at: str,
    words: str,
    sound: str,
    new: str,
    answer: str,
    source: str,
    left_out: str,
) -> None:
    assert source
    row = (task, at, words, sound, new, answer)
    query = Query(band=3, words=tuple(words.split()), r_vowels=RVowels.TWO)
    plain = query._replace(accents=Accents(only_dictionary=True))
    if left_out == "band":
        entry = lexicon.get(answer)
        assert entry
        assert entry.band > 3
        assert not found(lexicon, row, plain)
        return
    assert found(lexicon, row, plain)
    assert found(lexicon, row, query) is (not left_out)
    if left_out:
        assert left_out in {feature.name for feature in FEATURES}


FOILS = {"M": "crab", "TH": "crab", "AA": "crabs", "B": "map"}


@pytest.mark.source("National Reading Panel (2000); Common Core, Appendix A (2010)")
@pytest.mark.parametrize(
    ("task", "at", "words", "sound", "new", "answer", "source", "left_out"),
    [row for row in cases("published_items.tsv") if row.values[0] in ("identify", "categorize")],
)
def test_published_words_to_compare(
    lexicon: Lexicon,
    task: str,
    at: str,
    words: str,
    sound: str,
    new: str,
    answer: str,
    source: str,
    left_out: str,
) -> None:
    assert source
    row = (task, at, words, sound, new, answer)
    said = tuple(words.split())
    foil = () if task == "categorize" else (FOILS[sound],)
    query = Query(band=3, words=(*said, *foil))
    # Nothing but the sound may group words of ours: not their length, not their kind.
    assert found(lexicon, row, query) is (left_out != "give-away")
    alike = said if task == "identify" else said[:2]
    isolated = TASKS["isolate"].candidates(
        select(lexicon, query), query._replace(words=alike), Position.FIRST
    )
    sounds = {item.stimulus: phones(item.sound.sounds) for item in isolated}
    assert {sounds[word] for word in alike} == {sound}
