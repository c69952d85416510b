"""Normal form, units, accents, syllables and suffixes."""

from __future__ import annotations

import pytest

from phonodrill.sounds.accents import MERGERS, heard_alike
from phonodrill.sounds.normal import normal_form
from phonodrill.sounds.notation import parse_arpabet
from phonodrill.sounds.suffixes import ed_suffix, s_suffix
from phonodrill.sounds.syllables import count_syllables, syllable_starts
from phonodrill.sounds.units import RVowels, split_units, splits_heard_affricate


def sounds(phones: str) -> str:
    return parse_arpabet(phones)[0]


def normal(phones: str) -> str:
    return normal_form(*parse_arpabet(phones))


def test_weak_vowels_are_one_and_stress_is_dropped() -> None:
    assert normal("HH AO1 R S AH0 Z") == normal("HH AO1 R S IH0 Z")
    assert normal("AH0 B AW1 T") == normal("IH0 B AW2 T")
    assert normal("HH AH1 T") != normal("HH IH1 T")


@pytest.mark.source("Common Core, Appendix A, pp. 17-22, and common practice: see units.py")
@pytest.mark.parametrize(
    ("word", "phones", "count"),
    [
        ("ship", "SH IH1 P", 3),
        ("box", "B AA1 K S", 4),
        ("church", "CH ER1 CH", 3),
        ("judge", "JH AH1 JH", 3),
        ("cute", "K Y UW1 T", 4),
        ("think", "TH IH1 NG K", 4),
        ("school", "S K UW1 L", 4),
        ("straight", "S T R EY1 T", 5),
        ("eight", "EY1 T", 2),
        ("knee", "N IY1", 2),
        ("queen", "K W IY1 N", 4),
        ("bird", "B ER1 D", 3),
        ("car", "K AA1 R", 3),
    ],
)
def test_how_many_sounds_a_word_has(word: str, phones: str, count: int) -> None:
    assert len(split_units(sounds(phones))) == count, word


def test_a_vowel_keeps_its_r_when_asked() -> None:
    assert split_units(sounds("K AA1 R"), RVowels.ONE) == ["k", "ɑr"]
    assert len(split_units(sounds("HH AO1 R N"), RVowels.ONE)) == 3
    # The r of arrow begins a syllable, so it stays by itself.
    assert len(split_units(sounds("EH1 R OW0"), RVowels.ONE)) == 3


def test_tr_and_dr_are_known() -> None:
    assert splits_heard_affricate(sounds("T R EY1 N"), 0)
    assert splits_heard_affricate(sounds("D R EY1 N"), 1)
    assert not splits_heard_affricate(sounds("S T AA1 P"), 0)


@pytest.mark.source("Labov, Ash & Boberg (2006), The Atlas of North American English")
def test_mergers() -> None:
    assert heard_alike(normal("K AO1 T")) == {normal("K AO1 T"), normal("K AA1 T")}
    assert normal("P EH1 N") in heard_alike(normal("P IH1 N"))
    assert normal("P EH1 T") not in heard_alike(normal("P IH1 T"))
    # Before R the cot/caught vowels stay apart.
    assert heard_alike(normal("F AO1 R")) == {normal("F AO1 R")}


def test_merging_twice_changes_nothing_more() -> None:
    for merger in MERGERS:
        for phones in ("K AO1 T", "P EH1 N", "S AO1 NG", "M EH1 N Y UW0"):
            once = merger.merge(normal(phones))
            assert merger.merge(once) == once


@pytest.mark.source("maximal onset, Kahn (1976), Selkirk (1981); words from published examples")
@pytest.mark.parametrize(
    ("phones", "starts"),
    [
        ("D IH0 P L OW1 M AH0", [0, 2, 5]),
        ("EH1 K S T R AH0", [0, 2]),
        ("K AH0 N EH1 K T", [0, 2]),
        ("HH AE1 M ER0", [0, 2]),
        ("OY1 S T ER0", [0, 1]),
        ("AE1 TH L IY2 T", [0, 2]),
        ("B UW1 T L EH2 G", [0, 3]),
        ("S AH0 B M IH1 T", [0, 3]),
    ],
)
def test_syllables_begin_by_maximal_onset(phones: str, starts: list[int]) -> None:
    assert syllable_starts(sounds(phones)) == starts
    assert count_syllables(sounds(phones)) == len(starts)


@pytest.mark.source("Huddleston & Pullum (2005), A Student's Introduction, pp. 267-269")
@pytest.mark.parametrize(
    ("phones", "s", "ed"),
    [
        ("K AE1 T", "s", "ɪd"),
        ("B EH1 D", "z", "ɪd"),
        ("R OW1 P", "s", "t"),
        ("K AA1 F", "s", "t"),
        ("M AH1 N TH", "s", "t"),
        ("P L EY1", "z", "d"),
        ("D AH1 V", "z", "d"),
        ("B EH1 L", "z", "d"),
        ("K IH1 S", "ɪz", "t"),
        ("B AH1 Z", "ɪz", "d"),
        ("W AO1 SH", "ɪz", "t"),
        ("G ER0 AA1 ZH", "ɪz", "d"),
        ("W AA1 CH", "ɪz", "t"),
        ("JH AH1 JH", "ɪz", "d"),
    ],
)
def test_what_s_and_ed_say(phones: str, s: str, ed: str) -> None:
    assert s_suffix(sounds(phones)) == s
    assert ed_suffix(sounds(phones)) == ed
