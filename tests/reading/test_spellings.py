from __future__ import annotations

import pytest

from phonodrill.lexicon.store import Lexicon
from phonodrill.reading.spellings import (
    Count,
    count_correspondences,
    share,
    sounds_of,
    spellings_of,
)
from phonodrill.taught.tokens import read_token


@pytest.fixture(scope="module")
def counts(lexicon: Lexicon) -> dict[str, Count]:
    return count_correspondences(lexicon.spelled(highest_band=3), lambda _: True)


def test_shares_add_up(lexicon: Lexicon, counts: dict[str, Count]) -> None:
    found = spellings_of("k", lexicon.correspondences(), counts)
    assert sum(share.of_words for share in found) == pytest.approx(1)
    assert sum(share.of_uses for share in found) == pytest.approx(1)
    assert [share.spelling for share in found[:3]] == ["c", "k", "ck"]
    assert all(share.examples for share in found)


def test_the_reverse(lexicon: Lexicon, counts: dict[str, Count]) -> None:
    found = sounds_of("ea", lexicon.correspondences(), counts)
    assert [share.sound for share in found[:2]] == ["i", "ɛ"]
    assert sounds_of("qqq", lexicon.correspondences(), counts) == []


@pytest.mark.source("common practice, no source: sh and tch are learned before ti")
def test_short_words_rank_otherwise(lexicon: Lexicon) -> None:
    words = lexicon.spelled(highest_band=3)
    short = count_correspondences(words, lambda _: True, one_syllable=True)
    found = [s.spelling for s in spellings_of("ʃ", lexicon.correspondences(), short)]
    assert found[0] == "sh"
    assert "ti" not in found


@pytest.mark.source("Johnston (2001), Reading Teacher 55: single teams are reliable")
@pytest.mark.parametrize("spelling", ["aw", "oy", "oi", "ay", "oa", "ee", "ai", "au"])
def test_teams_that_mostly_say_one_sound(
    lexicon: Lexicon, counts: dict[str, Count], spelling: str
) -> None:
    first = sounds_of(spelling, lexicon.correspondences(), counts)[0]
    # The vowels of cot and caught are one answer.
    assert first.of_words > 0.75, first


@pytest.mark.source("Johnston (2001): two sounds together cover at least 75 %")
@pytest.mark.parametrize("spelling", ["ow", "ew", "oo", "ea"])
def test_teams_with_two_sounds(lexicon: Lexicon, counts: dict[str, Count], spelling: str) -> None:
    found = sounds_of(spelling, lexicon.correspondences(), counts)
    assert sum(share.of_words for share in found[:2]) >= 0.75


def test_the_share_of_one_correspondence(lexicon: Lexicon) -> None:
    inventory = lexicon.correspondences()
    (igh,) = read_token("igh", inventory)
    assert share(inventory, igh.correspondence, of="spelling") == pytest.approx(1, abs=0.02)
    assert 0.02 < share(inventory, igh.correspondence, of="sound") < 0.3
