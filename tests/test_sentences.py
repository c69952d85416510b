"""Every sentence of the bank keeps the bank's rules."""

from __future__ import annotations

import re
from collections import Counter, defaultdict

import pytest

from phonodrill import Gate, Lexicon
from phonodrill.lexicon.entry import Sentence
from phonodrill.sentences import cloze, entry_of, find_sentences, passes, words_of
from tests.conftest import WORDLISTS

TOPICS = {
    "animals",
    "body",
    "clothes",
    "family",
    "feelings",
    "food",
    "games",
    "home",
    "music",
    "nature",
    "people",
    "play",
    "school",
    "sea",
    "stories",
    "things",
    "time",
    "town",
    "travel",
    "weather",
    "work",
}


@pytest.fixture(scope="module")
def bank(lexicon: Lexicon) -> list[Sentence]:
    return lexicon.all_sentences()


def test_the_bank_is_whole(bank: list[Sentence], lexicon: Lexicon) -> None:
    assert len(bank) >= 2000
    words = {sentence.word for sentence in bank}
    assert len(words) >= 1200
    kinds: Counter[str] = Counter()
    for word in words:
        entry = lexicon.get(word)
        assert entry
        kinds.update(entry.endings)
        kinds["comparison"] += any(
            row.inflection in ("comparative", "superlative") for row in lexicon.bases_of(word)
        )
    wanted = {"s": 250, "es": 150, "ies": 80, "ed": 150, "ing": 150, "comparison": 40}
    assert {kind: kinds[kind] for kind in wanted if kinds[kind] < wanted[kind]} == {}


def test_each_sentence_has_its_word_once_and_four_to_nine_words(bank: list[Sentence]) -> None:
    for sentence in bank:
        words = words_of(sentence.text)
        assert words.count(sentence.word) == 1, sentence
        assert 4 <= len(words) <= 9, sentence
        assert sentence.text[0].isupper(), sentence
        assert re.search(r"[.!?]$", sentence.text), sentence
        assert sentence.topic in TOPICS, sentence
        assert cloze(sentence).count("____") == 1, sentence


def test_every_other_word_is_known_early(bank: list[Sentence], lexicon: Lexicon) -> None:
    frequent = {frequent.word for frequent in lexicon.high_frequency()}
    for sentence in bank:
        for word in words_of(sentence.text):
            entry = lexicon.get(entry_of(lexicon, word))
            assert entry, (word, sentence)
            if word == sentence.word:
                assert 1 <= entry.band <= 3, sentence
            else:
                assert entry.band in (1, 2) or word in frequent, (word, sentence)


def test_every_sentence_passes_the_gate(bank: list[Sentence], lexicon: Lexicon, gate: Gate) -> None:
    assert [sentence for sentence in bank if not passes(sentence, lexicon, gate)] == []


def test_no_two_sentences_are_nearly_the_same(bank: list[Sentence]) -> None:
    by_word: dict[str, list[int]] = defaultdict(list)
    bags = [set(words_of(sentence.text)) for sentence in bank]
    for number, bag in enumerate(bags):
        for word in bag:
            by_word[word].append(number)
    near = set()
    for numbers in by_word.values():
        if len(numbers) < 120:  # Two sentences that share only very common words are not near.
            for i, first in enumerate(numbers):
                for second in numbers[i + 1 :]:
                    shared = len(bags[first] & bags[second]) / len(bags[first] | bags[second])
                    if shared >= 0.7:
                        near.add((bank[first].text, bank[second].text))
    assert near == set()


def test_he_she_and_they_are_balanced(bank: list[Sentence]) -> None:
    counts: Counter[str] = Counter()
    groups = {"he": {"he", "him", "his"}, "she": {"she", "her", "hers"}, "they": {"they", "their"}}
    for sentence in bank:
        words = set(words_of(sentence.text))
        counts.update(name for name, group in groups.items() if words & group)
    assert 0.8 < counts["he"] / counts["she"] < 1.25, counts
    assert counts["they"] > 0.25 * counts["he"], counts


def test_no_names_in_sentences(bank: list[Sentence]) -> None:
    names = set((WORDLISTS / "names.tsv").read_text("utf-8").splitlines()[5:])
    words = {word for sentence in bank for word in words_of(sentence.text)}
    assert words & names == set()


def test_a_blocked_word_takes_its_sentences_out(lexicon: Lexicon, gate: Gate) -> None:
    assert find_sentences(lexicon, gate, "Gulls")
    assert not find_sentences(lexicon, gate._replace(spellings=frozenset({"gulls"})), "gulls")


def test_two_words_that_run_into_an_unfit_one_are_caught(gate: Gate) -> None:
    assert not gate.allows_join(["bʊl"], ["ʃɪt"])
    assert gate.allows_join(["ɡʊd"], ["bʊk"])
