"""Who hears what: features of accents, and the low back vowels by spelling."""

from __future__ import annotations

import pytest

from phonodrill import Lexicon, PhonodrillError
from phonodrill.sounds.accents import (
    DICTIONARY,
    EVERY_ACCENT,
    FEATURES,
    Accents,
    parse_accents,
)
from phonodrill.sounds.low_back import is_misfiled, split_low_back
from phonodrill.sounds.normal import normal_form
from phonodrill.sounds.notation import parse_arpabet

NAMES = [feature.name for feature in FEATURES]


def normal(phones: str) -> str:
    return normal_form(*parse_arpabet(phones))


def heard(word: str, phones: str, accents: Accents = EVERY_ACCENT) -> set[str]:
    return set(accents.realizations(word, normal(phones)))


@pytest.mark.source("Labov, Ash & Boberg (2006), The Atlas of North American English; from memory")
@pytest.mark.parametrize(
    ("one", "two", "feature"),
    [
        (("cot", "K AA1 T"), ("caught", "K AO1 T"), "cot-caught"),
        (("pin", "P IH1 N"), ("pen", "P EH1 N"), "pin-pen"),
        (("merry", "M EH1 R IY0"), ("marry", "M AE1 R IY0"), "mary-marry-merry"),
        (("horse", "HH AO1 R S"), ("hoarse", "HH OW1 R S"), "horse-hoarse"),
        (("fill", "F IH1 L"), ("feel", "F IY1 L"), "fill-feel"),
        (("pull", "P UH1 L"), ("pool", "P UW1 L"), "pull-pool"),
    ],
)
def test_a_merger_makes_two_words_one(
    one: tuple[str, str], two: tuple[str, str], feature: str
) -> None:
    assert heard(*one) & heard(*two)
    assert normal(two[1]) in EVERY_ACCENT.heard_alike(normal(one[1]))
    only = parse_accents(DICTIONARY)
    assert not heard(*one, only) & heard(*two, only)
    known = parse_accents(feature)
    merged = known.merge_known(normal(one[1]))
    assert merged == known.merge_known(normal(two[1]))
    # Of a class that is known to merge, no listener keeps the two apart.
    split = [
        pair
        for pair in zip(
            known.realizations(one[0], normal(one[1])),
            known.realizations(two[0], normal(two[1])),
            strict=True,
        )
        if pair[0] != pair[1]
    ]
    assert not split or feature in ("cot-caught", "mary-marry-merry")


@pytest.mark.parametrize(
    ("word", "phones", "other", "other_phones"),
    [
        ("whine", "W AY1 N", "wine", "W AY1 N"),
        ("awful", "AA1 F AH0 L", "waffle", "W AA1 F AH0 L"),
        ("calm", "K AA1 M", "mom", "M AA1 M"),
        ("tune", "T UW1 N", "toon", "T UW1 N"),
        ("carry", "K EH1 R IY0", "ferry", "F EH1 R IY0"),
    ],
)
def test_what_the_dictionary_merges_some_keep_apart(
    word: str, phones: str, other: str, other_phones: str
) -> None:
    assert heard(word, phones) != {normal(phones)}
    kept = heard(word, phones) - {normal(phones)}
    assert not kept & heard(other, other_phones)


def test_who_and_whole_never_had_the_sound() -> None:
    assert not any("ʍ" in form for form in heard("who", "HH UW1"))
    assert not any("ʍ" in form for form in heard("whole", "HH OW1 L"))
    assert any("ʍ" in form for form in heard("which", "W IH1 CH"))


@pytest.mark.source("lexical sets of Wells (1982), Accents of English; from memory")
@pytest.mark.parametrize(
    ("word", "phones", "set_"),
    [
        ("hot", "HH AA1 T", "ɑ"),
        ("wand", "W AA1 N D", "ɑ"),
        ("squash", "S K W AA1 SH", "ɑ"),
        ("knowledge", "N AA1 L AH0 JH", "ɑ"),
        ("dog", "D AO1 G", "ɒ"),
        ("cloth", "K L AO1 TH", "ɒ"),
        ("long", "L AO1 NG", "ɒ"),
        ("caught", "K AA1 T", "ɔ"),
        ("ball", "B AO1 L", "ɔ"),
        ("walk", "W AO1 K", "ɔ"),
        ("thought", "TH AO1 T", "ɔ"),
        ("awful", "AA1 F AH0 L", "ɔ"),
        ("father", "F AA1 DH ER0", "a"),
        ("calm", "K AA1 M", "a"),
        ("car", "K AA1 R", "ɑ"),
    ],
)
def test_spelling_tells_the_low_back_vowels_apart(word: str, phones: str, set_: str) -> None:
    assert set_ in split_low_back(word, normal(phones), father_apart=True)


def test_words_in_the_wrong_set_are_few_and_known(lexicon: Lexicon) -> None:
    misfiled = {
        entry.word
        for entry in lexicon.entries(highest_band=3)
        for said in entry.pronunciations[:1]
        if is_misfiled(entry.word, said.normal)
    }
    assert {"awful", "bought", "fallen"} <= misfiled
    assert len(misfiled) < 250
    assert not misfiled & {"hot", "top", "wand", "father", "calm", "drama"}


def test_names_are_read() -> None:
    assert parse_accents("") == EVERY_ACCENT
    assert parse_accents(" Pin-Pen, cot-caught").known == ("cot-caught", "pin-pen")
    assert parse_accents(DICTIONARY).only_dictionary
    for text, hint in (("pinpen", "pin-pen"), ("zzz", "any of"), ("dictionary,wh-w", "one of")):
        with pytest.raises(PhonodrillError) as error:
            parse_accents(text)
        assert hint in error.value.hint


def test_every_feature_says_what_it_is() -> None:
    assert len(set(NAMES)) == len(NAMES)
    assert all(feature.about for feature in FEATURES)


def test_listeners_keep_their_order() -> None:
    for word, phones in (("cat", "K AE1 T"), ("wherry", "HH W EH1 R IY0"), ("new", "N UW1")):
        forms = EVERY_ACCENT.realizations(word, normal(phones))
        assert len(forms) == len(EVERY_ACCENT.realizations("cat", "kæt"))
        assert forms[0] == normal(phones)
