"""Ways to look at fewer words: none may change what is found."""

from __future__ import annotations

import random

import pytest

from phonodrill import Lexicon, Query
from phonodrill.endings.classify import classify
from phonodrill.endings.kinds import kind_of
from phonodrill.endings.listings import ReadAhead
from phonodrill.endings.lookalikes import Kind, find_lookalikes
from phonodrill.endings.vocabulary import known_endings, some_of_each_kind, words_with_endings
from phonodrill.lesson.candidates import ENOUGH
from phonodrill.selection import select


def test_what_is_read_ahead_is_what_is_looked_up(lexicon: Lexicon) -> None:
    ahead = ReadAhead(lexicon, ("s", "es", "ies", "ed"))
    forms = [form for form, *_ in lexicon.listed_forms()]
    words = random.Random(1).sample(forms, 400)
    words += ["bus", "hundred", "axes", "crab", "quickly", "blorf", *lexicon.not_inflected()]
    for word in words:
        assert ahead.bases_of(word) == lexicon.bases_of(word), word
        assert ahead.derived_words(word) == lexicon.derived_words(word), word
        assert ahead.only_looks_inflected(word) == lexicon.only_looks_inflected(word), word


@pytest.mark.parametrize(("endings", "most"), [(("s", "es", "ies"), 700), (("ed",), 300)])
def test_every_kind_keeps_words(lexicon: Lexicon, endings: tuple[str, ...], most: int) -> None:
    query = Query(2, frozenset(endings))
    words = words_with_endings(lexicon, query)
    some = some_of_each_kind(words, most, lexicon)
    assert len(some) == most < len(words)
    assert set(some) <= set(words)
    assert some == [word for word in words if word in set(some)]
    assert some_of_each_kind(words, len(words), lexicon) == words
    sizes: list[dict[tuple[str, str], int]] = []
    for looked_at in (words, some):
        found: dict[tuple[str, str], int] = {}
        for ending in known_endings(lexicon, query, words=looked_at):
            kind = (kind_of(ending), ending.sound)
            found[kind] = found.get(kind, 0) + 1
        sizes.append(found)
    every, kept = sizes
    assert kept.keys() == every.keys()
    for kind, number in every.items():
        assert kept[kind] >= min(number, ENOUGH), kind


def test_familiar_words_are_kept_first(lexicon: Lexicon) -> None:
    query = Query(3, frozenset({"s"}))
    some = set(some_of_each_kind(words_with_endings(lexicon, query), 700, lexicon))
    assert {"cats", "boats", "trees"} <= some


@pytest.mark.parametrize("ending", ["s", "es", "ed", "ing"])
def test_no_trap_is_passed_over(lexicon: Lexicon, ending: str) -> None:
    query = Query(2, frozenset({ending}))
    found = find_lookalikes(lexicon, query, count=5000, rng=random.Random(1))
    two_bases = {trap.word for trap in found if trap.kind is Kind.TWO_BASES}
    exceptions = lexicon.ending_exceptions()
    suffix = "s" if ending in ("s", "es") else ending
    for entry in select(lexicon, query).stimuli():
        ways = classify(entry.word, lexicon, exceptions)
        bases = [
            base
            for way in ways
            if way.suffix == suffix and (base := lexicon.get(way.base)) and 1 <= base.band <= 2
        ]
        assert (len(bases) > 1) is (entry.word in two_bases), entry.word
