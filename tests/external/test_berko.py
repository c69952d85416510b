"""Berko, J. (1958). The child's learning of English morphology. Word 14, 150-177.

Adult answers were the key. The names of the items were seen; most of their
sounds are from memory. Every item is tried twice: from its sounds, and from its
letters alone, as a made-up word that nobody can look up.
"""

from __future__ import annotations

import pytest

from phonodrill import Lexicon, Pronunciation, add_ending
from phonodrill.endings.add import BY_LETTERS
from phonodrill.sounds.normal import normal_form
from phonodrill.sounds.notation import parse_arpabet

pytestmark = pytest.mark.source("Berko (1958), Word 14, 150-177")

ITEMS = [
    ("wug", "W AH1 G", "s", "wugs", "z"),
    ("lun", "L AH1 N", "s", "luns", "z"),
    ("tor", "T AO1 R", "s", "tors", "z"),
    ("cra", "K R AA1", "s", "cras", "z"),
    ("heaf", "HH IY1 F", "s", "heafs", "s"),
    ("tass", "T AE1 S", "s", "tasses", "ɪz"),
    ("gutch", "G AH1 CH", "s", "gutches", "ɪz"),
    ("kazh", "K AE1 ZH", "s", "kazhes", "ɪz"),
    ("niz", "N IH1 Z", "s", "nizzes", "ɪz"),
    ("naz", "N AE1 Z", "s", "nazzes", "ɪz"),
    ("loodge", "L UW1 JH", "s", "loodges", "ɪz"),
    ("rick", "R IH1 K", "ed", "ricked", "t"),
    ("spow", "S P OW1", "ed", "spowed", "d"),
    ("mot", "M AA1 T", "ed", "motted", "ɪd"),
    ("bod", "B AA1 D", "ed", "bodded", "ɪd"),
    ("bing", "B IH1 NG", "ed", "binged", "d"),
    ("gling", "G L IH1 NG", "ed", "glinged", "d"),
    ("zib", "Z IH1 B", "ing", "zibbing", "ɪŋ"),
    ("zib", "Z IH1 B", "er", "zibber", "ɚ"),
    ("quirk", "K W ER1 K", "y", "quirky", "i"),
    ("quirky", "K W ER1 K IY0", "er", "quirkier", "ɚ"),
    ("quirky", "K W ER1 K IY0", "est", "quirkiest", "ɪst"),
    ("bik", "B IH1 K", "'s", "bik's", "s"),
    ("wug", "W AH1 G", "'s", "wug's", "z"),
    ("niz", "N IH1 Z", "'s", "niz's", "ɪz"),
]


@pytest.mark.parametrize(("base", "phones", "ending", "form", "sound"), ITEMS)
def test_made_up_words_by_sound(
    lexicon: Lexicon, base: str, phones: str, ending: str, form: str, sound: str
) -> None:
    sounds, stress = parse_arpabet(phones)
    said = Pronunciation(sounds, stress, normal_form(sounds, stress))
    made = add_ending(base, ending, lexicon, said=said).forms[0]
    assert (made.form, made.sound) == (form, sound)
    assert made.said is not None
    assert made.syllables_after == made.said.syllables


@pytest.mark.parametrize(
    ("base", "ending", "form", "sound"),
    [(base, ending, form, sound) for base, _, ending, form, sound in ITEMS],
)
def test_made_up_words_by_letters_alone(
    lexicon: Lexicon, base: str, ending: str, form: str, sound: str
) -> None:
    made = add_ending(base, ending, lexicon).forms[0]
    assert (made.form, made.sound) == (form, sound)
    if lexicon.get(base) is None:
        assert made.based_on == BY_LETTERS
        assert made.said is None


@pytest.mark.source("Berko (1958): adults alike took the possessive of a plural for the plural")
def test_the_possessive_of_a_plural_says_nothing_more(lexicon: Lexicon) -> None:
    singular, plural = add_ending("wug", "'s", lexicon).forms
    assert (singular.form, plural.form) == ("wug's", "wugs'")
    assert plural.sound == ""


@pytest.mark.source("Berko (1958): melted, rang and glasses are real words")
def test_real_words(lexicon: Lexicon) -> None:
    assert [f.form for f in add_ending("melt", "ed", lexicon).forms] == ["melted"]
    assert add_ending("ring", "ed", lexicon).forms[0].form == "rang"
    assert add_ending("glass", "s", lexicon).forms[0].sound == "ɪz"
