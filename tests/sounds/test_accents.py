"""Who hears what: features of accents, and the low back vowels by spelling."""

from __future__ import annotations

import pytest

from phonodrill import Lexicon, PhonodrillError
from phonodrill.sounds.accents import (
    DICTIONARY,
    EVERY_ACCENT,
    FEATURES,
    MARY_MERRY,
    PIN_PEN,
    Accents,
    heard_alike,
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


@pytest.mark.parametrize(
    ("word", "phones", "forms"),
    [
        ("whale", "W EY1 L", "wEl ʍEl"),
        ("wherry", "HH W EH1 R IY0", "hwɛri wɛri ʍɛri"),
        ("whirlwind", "W ER1 L W IH2 N D", "wɝlwɪnd ʍɝlwɪnd"),
        ("who", "HH UW1", "hu"),
        ("wave", "W EY1 V", "wEv"),
        ("tune", "T UW1 N", "tun tjun"),
        ("duke", "D UW1 K", "duk djuk"),
        ("new", "N UW1", "nu nju"),
        ("suit", "S UW1 T", "sut sjut"),
        ("lute", "L UW1 T", "lut ljut"),
        ("resume", "R IH0 Z UW1 M", "rəzum rəzjum"),
        ("enthuse", "EH0 N TH UW1 Z", "ɛnθuz ɛnθjuz ɪnθuz"),
        ("menu", "M EH1 N Y UW0", "mɛnju mɛnu mɪnju"),
        ("stew", "S T UW1", "stu stju"),
        ("soup", "S UW1 P", "sup"),
        ("moon", "M UW1 N", "mun"),
        ("few", "F Y UW1", "fju"),
        ("brute", "B R UW1 T", "brut"),
        ("marry", "M EH1 R IY0", "mɛri mæri"),
        ("mary", "M EH1 R IY0", "mɛri mEri"),
        ("fairy", "F EH1 R IY0", "fɛri fEri"),
        ("ferry", "F EH1 R IY0", "fɛri"),
        ("carry", "K AE1 R IY0", "kæri kɛri"),
        ("bear", "B EH1 R", "bɛr"),
        ("hoarse", "HH OW1 R S", "hOrs hɔrs"),
        ("four", "F AO1 R", "fɔr"),
        ("feel", "F IY1 L", "fil fɪl"),
        ("feet", "F IY1 T", "fit"),
        ("pool", "P UW1 L", "pul pʊl"),
        ("boot", "B UW1 T", "but"),
        ("pen", "P EH1 N", "pɛn pɪn"),
        ("gem", "JH EH1 M", "ʤɛm ʤɪm"),
        ("length", "L EH1 NG K TH", "lɛŋkθ lɪŋkθ"),
        ("pet", "P EH1 T", "pɛt"),
        ("caught", "K AO1 T", "kɔt kɑt"),
        ("law", "L AO1", "lɔ lɑ"),
        ("boss", "B AO1 S", "bɔs bɑs bɒs"),
        ("father", "F AA1 DH ER0", "fɑðɝ faðɝ"),
        ("cat", "K AE1 T", "kæt"),
    ],
)
@pytest.mark.source(
    "Labov, Ash & Boberg (2006); Wells (1982) for /j/ and the low back; from memory"
)
def test_every_way_a_word_is_heard(word: str, phones: str, forms: str) -> None:
    assert heard(word, phones) == set(forms.split())


def test_a_merger_works_in_each_of_its_places() -> None:
    assert PIN_PEN.places("pɛnpɛtmɪŋ") == [1, 7]
    assert PIN_PEN.merge("pɛnpɛtmɛŋ") == "pɪnpɛtmɪŋ"
    assert PIN_PEN.alternatives("mɛnɪm") == {"mɛnɪm", "mɪnɪm", "mɛnɛm", "mɪnɛm"}
    assert PIN_PEN.alternatives("pɛ") == {"pɛ"}
    assert MARY_MERRY.alternatives("fɛri") == {"fɛri", "færi", "fEri"}
    assert MARY_MERRY.alternatives("fɛr") == {"fɛr"}
    assert MARY_MERRY.places("fɛriz") == [1]
    assert heard_alike("kɔtpɛn") == {"kɔtpɛn", "kɑtpɛn", "kɔtpɪn", "kɑtpɪn"}
    assert EVERY_ACCENT.heard_alike("pɪl") == {"pɪl", "pil"}
    assert parse_accents(DICTIONARY).heard_alike("pɪn") == {"pɪn"}


def test_a_weak_vowel_is_steady_only_where_all_have_the_same() -> None:
    for accents, steady in (("", False), ("pin-pen", False), ("weak-vowels", True)):
        assert parse_accents(accents).is_steady("ræbət") is steady
        assert parse_accents(accents).is_steady("kæt")
    assert parse_accents(DICTIONARY).is_steady("ræbət")


def test_a_class_that_merges_hears_the_merged_form_and_no_other() -> None:
    assert parse_accents("wh-w").realizations("whale", "wEl") == ("wEl",) * 12
    assert parse_accents("j-dropping").merge_known("njutjub") == "nutub"
    assert parse_accents("cot-caught,pin-pen").merge_known("kɔtpɛn") == "kɑtpɪn"
    assert parse_accents("dictionary").realizations("pen", "pɛn") == ("pɛn",)


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
        ("what", "W AA1 T", "ɑ"),
        ("swan", "S W AA1 N", "ɑ"),
        ("quality", "K W AA1 L AH0 T IY0", "ɑ"),
        ("bottle", "B AA1 T AH0 L", "ɑ"),
        ("toggle", "T AA1 G AH0 L", "ɑ"),
        ("stopped", "S T AA1 P T", "ɑ"),
        ("spotted", "S P AA1 T AH0 D", "ɑ"),
        ("offer", "AO1 F ER0", "ɒ"),
        ("soft", "S AO1 F T", "ɒ"),
        ("lost", "L AO1 S T", "ɒ"),
        ("moths", "M AA1 TH S", "ɒ"),
        ("frogs", "F R AA1 G Z", "ɒ"),
        ("jaws", "JH AO1 Z", "ɔ"),
        ("taught", "T AA1 T", "ɔ"),
        ("salt", "S AO1 L T", "ɔ"),
        ("bald", "B AO1 L D", "ɔ"),
        ("also", "AO1 L S OW0", "ɔ"),
        ("almost", "AO1 L M OW2 S T", "ɔ"),
        ("already", "AO2 L R EH1 D IY0", "ɔ"),
        ("hurrah", "HH UH0 R AA1", "a"),
        ("yacht", "Y AA1 T", "a"),
        ("coral", "K AO1 R AH0 L", "ɔ"),
        # Its letters do not tell.
        ("colonel", "K AA1 N AH0 L", "?"),
    ],
)
def test_spelling_tells_the_low_back_vowels_apart(word: str, phones: str, set_: str) -> None:
    form = normal(phones)
    (vowel,) = [index for index, code in enumerate(form) if code in "ɑɔ"]
    expected = form[:vowel] + set_ + form[vowel + 1 :]
    assert split_low_back(word, form, father_apart=True) == expected
    together = expected.replace("a", "ɑ")
    assert split_low_back(word, form, father_apart=False) == together
    assert is_misfiled(word, form) is ("?" in expected or {form[vowel], together[vowel]} == {*"ɑɔ"})


def test_words_without_a_low_back_vowel_stay_as_they_are() -> None:
    assert split_low_back("gull", "ɡʌl", father_apart=True) == "ɡʌl"
    assert split_low_back("seesaw", "sisɔ", father_apart=True) == "sisɔ"
    assert split_low_back("sawdog", "sɑdɔɡ", father_apart=False) == "sɔdɒɡ"


def test_words_in_the_wrong_set_are_few_and_known(lexicon: Lexicon) -> None:
    misfiled = {
        entry.word
        for entry in lexicon.entries(highest_band=3)
        for said in entry.pronunciations[:1]
        if is_misfiled(entry.word, said.normal)
    }
    assert {"chocolate", "ostriches", "water"} <= misfiled
    assert len(misfiled) < 175
    assert not misfiled & {"hot", "top", "wand", "father", "calm", "drama"}


def test_names_are_read() -> None:
    assert parse_accents("") == EVERY_ACCENT
    assert parse_accents(" Pin-Pen, cot-caught").known == ("cot-caught", "pin-pen")
    assert parse_accents(DICTIONARY).only_dictionary
    for text, hint in (("pinpen", "pin-pen"), ("zzz", "any of"), ("dictionary,wh-w", "one of")):
        with pytest.raises(PhonodrillError) as error:
            parse_accents(text)
        assert hint in error.value.hint


@pytest.mark.parametrize(
    ("text", "message", "hint"),
    [
        ("pinpen", "unknown accent 'pinpen'", "--accent pin-pen"),
        ("pin-pen,Dictionery", "unknown accent 'dictionery'", "--accent dictionary"),
        (
            "zzz",
            "unknown accent 'zzz'",
            "--accent with any of " + ",".join(NAMES),
        ),
        (
            "dictionary,wh-w",
            "--accent dictionary stands alone: it means no other accent",
            "one of the two",
        ),
    ],
)
def test_what_is_wrong_with_a_name_is_said(text: str, message: str, hint: str) -> None:
    with pytest.raises(PhonodrillError) as error:
        parse_accents(text)
    assert (str(error.value), error.value.hint) == (message, hint)


def test_every_feature_says_what_it_is() -> None:
    assert len(set(NAMES)) == len(NAMES)
    assert all(feature.about for feature in FEATURES)


def test_listeners_keep_their_order() -> None:
    for word, phones in (("cat", "K AE1 T"), ("wherry", "HH W EH1 R IY0"), ("new", "N UW1")):
        forms = EVERY_ACCENT.realizations(word, normal(phones))
        assert len(forms) == len(EVERY_ACCENT.realizations("cat", "kæt"))
        assert forms[0] == normal(phones)
