"""Where words are cut, place by place."""

from __future__ import annotations

import pytest

from phonodrill import Position
from phonodrill.sounds.places import count_nuclei, cut_at
from phonodrill.sounds.suffixes import SUFFIXES, add_ly, add_suffix
from phonodrill.sounds.syllables import count_syllables, syllable_starts
from phonodrill.sounds.units import RVowels, has_r_vowel, split_units, splits_heard_affricate


@pytest.mark.parametrize(
    ("sounds", "at", "cut", "joined"),
    [
        ("kræb", Position.FIRST, "|k|ræb", "|k|ræb"),
        ("ɛɡ", Position.FIRST, "|ɛ|ɡ", "|ɛ|ɡ"),
        ("ɑrm", Position.FIRST, "", "|ɑr|m"),
        ("ɑrk", Position.FIRST, "", "|ɑr|k"),
        ("ɛri", Position.FIRST, "|ɛ|ri", "|ɛ|ri"),
        ("ɑr", Position.FIRST, "", ""),
        ("rOp", Position.FIRST, "|r|Op", "|r|Op"),
        ("O", Position.FIRST, "", ""),
        ("", Position.FIRST, "", ""),
        ("kræb", Position.LAST, "kræ|b|", "kræ|b|"),
        ("ɡO", Position.LAST, "ɡ|O|", "ɡ|O|"),
        ("kɑr", Position.LAST, "", "k|ɑr|"),
        ("ɑr", Position.LAST, "", ""),
        ("kɑrd", Position.LAST, "kɑr|d|", "kɑr|d|"),
        ("ɛri", Position.LAST, "ɛr|i|", "ɛr|i|"),
        ("kræb", Position.ONSET2, "k|r|æb", "k|r|æb"),
        ("kjut", Position.ONSET2, "", ""),
        ("strɪp", Position.ONSET2, "", ""),
        ("rOp", Position.ONSET2, "", ""),
        ("ɑps", Position.ONSET2, "", ""),
        ("æts", Position.ONSET2, "", ""),
        ("st", Position.ONSET2, "", ""),
        ("lIʌn", Position.ONSET2, "", ""),
        ("nɛst", Position.CODA1, "nɛ|s|t", "nɛ|s|t"),
        ("nɛkst", Position.CODA1, "nɛ|k|st", "nɛ|k|st"),
        ("ræbɪts", Position.CODA1, "ræbɪ|t|s", "ræbɪ|t|s"),
        ("kɑrd", Position.CODA1, "", ""),
        ("kræb", Position.CODA1, "", ""),
        ("ɡO", Position.CODA1, "", ""),
        ("stsp", Position.CODA1, "", ""),
        ("æsk", Position.CODA1, "æ|s|k", "æ|s|k"),
        ("kræb", Position.ONSET, "|kr|æb", "|kr|æb"),
        ("jɛs", Position.ONSET, "|j|ɛs", "|j|ɛs"),
        ("kjut", Position.ONSET, "", ""),
        ("skjud", Position.ONSET, "", ""),
        ("ɛɡ", Position.ONSET, "", ""),
        ("ræbɪt", Position.ONSET, "", ""),
        ("kɑr", Position.ONSET, "|k|ɑr", "|k|ɑr"),
        ("kræb", Position.RIME, "kr|æb|", "kr|æb|"),
        ("kɑr", Position.RIME, "k|ɑr|", "k|ɑr|"),
        ("ɛɡ", Position.RIME, "", ""),
        ("kjut", Position.RIME, "", ""),
        ("kræb", Position.VOWEL, "kr|æ|b", "kr|æ|b"),
        ("ɛɡ", Position.VOWEL, "|ɛ|ɡ", "|ɛ|ɡ"),
        ("fOrm", Position.VOWEL, "", "f|Or|m"),
        ("kɑr", Position.VOWEL, "", "k|ɑr|"),
        ("fɛri", Position.VOWEL, "", ""),
        ("st", Position.VOWEL, "", ""),
        ("kræb", Position.SYLLABLE, "", ""),
        ("kræb", Position.EACH, "", ""),
        # The signs that accents write for vowels are vowels.
        ("k?t", Position.VOWEL, "k|?|t", "k|?|t"),
        ("kɒst", Position.CODA1, "kɒ|s|t", "kɒ|s|t"),
    ],
)
@pytest.mark.source("common practice, no source: the policy of units.py and places.py")
def test_every_place(sounds: str, at: Position, cut: str, joined: str) -> None:
    for r_joins, expected in ((False, cut), (True, joined)):
        found = cut_at(sounds, at, r_joins=r_joins)
        assert ("|".join(found) if found else "") == expected


def test_vowels_are_counted() -> None:
    for sounds, count in (("ræbət", 2), ("k?tɒa", 3), ("spr", 0), ("", 0)):
        assert count_nuclei(sounds) == count


@pytest.mark.source(
    "maximal onset, Kahn (1976), Selkirk (1981); /j/ only before /u/: Hammond (1999)"
)
def test_more_syllables_begin_by_maximal_onset() -> None:
    cases = {
        "plɛʒɝ": [0, 3],
        "lidɝ": [0, 2],
        "pʌblɪsɪti": [0, 2, 5, 7],
        "mɝʧʌndIz": [0, 2, 5],
        "mɛnju": [0, 3],
        "ɛmjulEt": [0, 1, 4],
        "ɛmjʌlEt": [0, 2, 4],
        "kænjʌn": [0, 3],
        "lIʌn": [0, 2],
        "kræb": [0],
        "spr": [],
        "ɑkjʊpɑɪ": [0, 1, 4, 6],
        "sɪŋɝ": [0, 3],
    }
    for sounds, starts in cases.items():
        assert syllable_starts(sounds) == starts, sounds
        assert count_syllables(sounds) == len(starts)


@pytest.mark.source("Read (1971); Treiman (2004): children hear ch and j in tr and dr")
def test_where_an_affricate_is_heard() -> None:
    parted = {
        word: [splits_heard_affricate(word, index) for index in range(len(word))]
        for word in ("trɪp", "drɪp", "strɪp", "ætrɪk", "trOdr")
    }
    assert parted == {
        "trɪp": [True, True, False, False],
        "drɪp": [True, True, False, False],
        "strɪp": [False, True, True, False, False],
        "ætrɪk": [False, True, True, False, False],
        "trOdr": [True, True, False, True, True],
    }
    assert not splits_heard_affricate("rtOp", 0)


def test_r_joins_the_vowel_whose_syllable_it_closes() -> None:
    assert split_units("kɑrd", RVowels.ONE) == ["k", "ɑr", "d"]
    assert split_units("kɑrd") == ["k", "ɑ", "r", "d"]
    assert split_units("ɑrrOr", RVowels.ONE) == ["ɑr", "r", "Or"]
    assert split_units("fɛri", RVowels.ONE) == ["f", "ɛ", "r", "i"]
    assert split_units("rkræb", RVowels.ONE) == ["r", "k", "r", "æ", "b"]
    assert split_units("br", RVowels.ONE) == ["b", "r"]
    assert [has_r_vowel(w) for w in ("kɑrd", "bɝd", "fɛri", "rOp", "")] == [
        *(True, True, False, False, False)
    ]


@pytest.mark.source("two L in -ly said as one: simply, fully, finally; value from memory")
def test_ly_and_other_endings_are_joined() -> None:
    assert add_ly("slO", "1", drops_vowel=False) == ("slOli", "10")
    assert add_ly("slO", "1", drops_vowel=True) == ("slOli", "10")
    assert add_ly("fInʌl", "10", drops_vowel=False) == ("fInʌli", "100")
    assert add_ly("ʤɛntʌl", "10", drops_vowel=True) == ("ʤɛntli", "10")
    assert add_ly("hOl", "1", drops_vowel=True) == ("hOli", "10")
    assert add_ly("ɡɝl", "0", drops_vowel=True) == ("ɡli", "0")
    assert add_ly("wɝld", "1", drops_vowel=True) == ("wɝldli", "10")
    assert add_ly("krrl", "0", drops_vowel=True) == ("krrli", "00")
    assert add_suffix("ræft", "1", "ɪd") == ("ræftɪd", "10")
    assert add_suffix("ræft", "1", "s") == ("ræfts", "1")
    heard = {"ing": "ɪŋ", "er": "ɝ", "est": "ɪst", "ly": "li", "y": "i"}
    assert {ending: SUFFIXES[ending]("kOld") for ending in heard} == heard
    assert [SUFFIXES["'s"](word) for word in ("kæt", "ɡʌl", "hɔrs")] == ["s", "z", "ɪz"]
