from __future__ import annotations

import random

import pytest

from phonodrill.gate import open_gate
from phonodrill.lexicon.entry import Spelled
from phonodrill.lexicon.store import Lexicon
from phonodrill.reading.decodable import Wanted, find_words
from phonodrill.reading.pairs import (
    Place,
    choose_pairs,
    deletion_pairs,
    minimal_pairs,
    said_with_either_vowel,
    spelling_pairs,
)
from phonodrill.sounds.accents import heard_alike
from phonodrill.sounds.inventory import VOWELS
from tests.raw_cmudict import plain
from tests.soak.tables import listed_ways


@pytest.fixture(scope="module")
def words(lexicon: Lexicon) -> list[Spelled]:
    return find_words(lexicon, open_gate(lexicon), Wanted(), highest_band=3)


@pytest.fixture(scope="module")
def either_vowel(lexicon: Lexicon) -> frozenset[str]:
    return said_with_either_vowel(lexicon.correspondences())


def test_minimal_pairs_differ_in_one_sound(
    words: list[Spelled], either_vowel: frozenset[str]
) -> None:
    pairs = list(minimal_pairs(words, either_vowel))
    assert len(pairs) > 5000
    for a, b, place in pairs:
        assert len(a.normal) == len(b.normal)
        assert [i for i in range(len(a.normal)) if a.normal[i] != b.normal[i]] == [place]
        assert b.normal not in heard_alike(a.normal)


def test_the_sounds_asked_for_are_in_the_order_asked(
    words: list[Spelled], either_vowel: frozenset[str]
) -> None:
    pairs = list(minimal_pairs(words, either_vowel, Place.VOWEL, ("ɪ", "ɛ")))
    found = {(pair.a.word, pair.b.word) for pair in pairs}
    assert {("pit", "pet"), ("sit", "set"), ("lift", "left")} <= found
    assert not any({"pin", "pen"} & {a, b} for a, b in found)
    assert not any("deer" in pair for pair in found)
    assert all(pair.sounds == ("ɪ", "ɛ") for pair in pairs)


@pytest.mark.source("Labov, Ash & Boberg (2006): cot/caught merged for some 40 % of the US")
def test_no_pair_rests_on_a_merged_vowel(
    words: list[Spelled], either_vowel: frozenset[str]
) -> None:
    found = {
        frozenset((pair.a.word, pair.b.word))
        for pair in minimal_pairs(words, either_vowel, Place.FIRST)
    }
    assert frozenset(("saw", "law")) in found
    assert not {frozenset(("pot", "bought")), frozenset(("taught", "not"))} & found


@pytest.mark.source("CMUdict 1.1.3, read without our code")
def test_deletion_pairs_hold_in_the_dictionary(
    words: list[Spelled], either_vowel: frozenset[str]
) -> None:
    pairs = list(deletion_pairs(words, either_vowel))
    assert {("stop", "top"), ("hand", "and")} <= {(p.a.word, p.b.word) for p in pairs}

    checked = 0
    for pair in pairs:
        longer, shorter = listed_ways(pair.a.word), listed_ways(pair.b.word)
        left = {plain(p[1:] if pair.at == "first" else p[:-1]) for p in longer}
        if left and shorter:
            assert left & set(map(plain, shorter)), pair
            checked += 1
        assert pair.a.sounds[pair.place] not in VOWELS
    assert checked > 500


def test_spelling_pairs_sound_the_same(words: list[Spelled]) -> None:
    pairs = list(spelling_pairs(words))
    assert {frozenset(("tail", "tale")), frozenset(("sea", "see"))} <= {
        frozenset((pair.a.word, pair.b.word)) for pair in pairs
    }
    assert all(pair.a.normal == pair.b.normal and pair.at == "" for pair in pairs)


def test_no_word_is_chosen_twice_and_the_seed_decides(
    words: list[Spelled], either_vowel: frozenset[str]
) -> None:
    pairs = list(minimal_pairs(words, either_vowel, Place.FIRST))
    first = choose_pairs(pairs, 30, random.Random(4))
    assert first == choose_pairs(pairs, 30, random.Random(4))
    assert first != choose_pairs(pairs, 30, random.Random(5))
    used = [word.word for pair in first for word in (pair.a, pair.b)]
    assert len(set(used)) == 60
