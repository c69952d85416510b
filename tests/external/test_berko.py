"""Berko, J. (1958). The child's learning of English morphology. Word 14, 150-177.

Adult answers were the key. The names of the items were seen; most of their
sounds are from memory.
"""

from __future__ import annotations

import pytest

from phonodrill.endings.classify import sound_of_ending
from phonodrill.endings.spell import rule_of
from phonodrill.lexicon.entry import Pronunciation
from phonodrill.sounds.notation import parse_arpabet
from phonodrill.sounds.suffixes import ed_suffix

pytestmark = pytest.mark.source("Berko (1958), Word 14, 150-177")


@pytest.mark.parametrize(
    ("base", "phones", "form", "sound"),
    [
        ("wug", "W AH1 G", "wugs", "z"),
        ("lun", "L AH1 N", "luns", "z"),
        ("tor", "T AO1 R", "tors", "z"),
        ("cra", "K R AA1", "cras", "z"),
        ("heaf", "HH IY1 F", "heafs", "s"),
        ("tass", "T AE1 S", "tasses", "ɪz"),
        ("gutch", "G AH1 CH", "gutches", "ɪz"),
        ("kazh", "K AE1 ZH", "kazhes", "ɪz"),
        ("niz", "N IH1 Z", "nizzes", "ɪz"),
        ("naz", "N AE1 Z", "nazzes", "ɪz"),
        ("loodge", "L UW1 JH", "loodges", "ɪz"),
        ("bik", "B IH1 K", "biks", "s"),
    ],
)
def test_made_up_plurals_and_verbs(base: str, phones: str, form: str, sound: str) -> None:
    sounds, stress = parse_arpabet(phones)
    rule = rule_of(base, sounds, {})
    assert rule.spell(base) == form
    assert sound_of_ending(Pronunciation(sounds, stress, ""), rule.ending) == sound


@pytest.mark.parametrize(
    ("base", "phones", "sound"),
    [
        ("rick", "R IH1 K", "t"),
        ("spow", "S P OW1", "d"),
        ("mot", "M AA1 T", "ɪd"),
        ("bod", "B AA1 D", "ɪd"),
        ("bing", "B IH1 NG", "d"),
        ("gling", "G L IH1 NG", "d"),
    ],
)
def test_made_up_past_forms(base: str, phones: str, sound: str) -> None:
    assert ed_suffix(parse_arpabet(phones)[0]) == sound, base
