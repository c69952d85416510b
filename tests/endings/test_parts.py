"""What the parts of the work with endings say of single words."""

from __future__ import annotations

import random

import pytest

from phonodrill import By, Lexicon, classify, sort_words
from phonodrill.endings.bulk import sounds_of_endings
from phonodrill.endings.conditions import (
    BaseWord,
    drops_e_before_y,
    ends_in_weak_sis,
    is_long_in_consonant_y,
)
from phonodrill.endings.kinds import kind_of, rough_kind
from phonodrill.endings.letters import count_syllables, from_letters
from phonodrill.endings.reasons import explain
from phonodrill.endings.sounds import codes_of, written_sound
from phonodrill.endings.suffix import SOUNDS_OF
from phonodrill.endings.table import make_card
from phonodrill.sounds.notation import Notation

LAST_SOUNDS = {
    "k": "blosque plaque tic kick tariq",
    "E": "weigh day eh",
    "f": "laugh graph leaf",
    "ɡ": "vague frog argh",
    "I": "high dye",
    "ʧ": "catch much",
    "ʃ": "cache fish",
    "ð": "bathe",
    "ʒ": "rezh",
    "θ": "moth",
    "ŋ": "ring",
    "m": "lamb hymn gum",
    "ɑ": "blah",
    "O": "oh toe low go",
    "ʌ": "huh a",
    "i": "tree key be she ski e",
    "u": "blue new flu",
    "ɔ": "saw",
    "Y": "toy",
    "s": "ice gas box",
    "ʤ": "age raj",
    "z": "nose maze jazz",
    "t": "skate net",
    "b": "crab",
    "d": "kid",
    "l": "gull",
    "n": "fan",
    "p": "hop rope",
    "r": "car",
    "v": "rev cave",
}


@pytest.mark.source("the commonest sound of English spellings at the end of a word; from memory")
def test_the_last_sound_by_letters() -> None:
    for sound, words in LAST_SOUNDS.items():
        for word in words.split():
            assert from_letters(word).last == sound, word


def test_syllables_by_letters() -> None:
    counts = {
        1: "skate quiz queen gutche rule owl nth zoo whale while e",
        2: "puzzle finches bottle table agree pickle robot",
        3: "volcano potato",
    }
    for count, words in counts.items():
        for word in words.split():
            assert count_syllables(word) == count, word
            base = from_letters(word, "noun", is_name=True)
            assert (base.syllables, base.stressed_end) == (count, count == 1)
            assert (base.word, base.part_of_speech, base.is_name) == (word, "noun", True)
    assert not from_letters("crab").is_name


@pytest.mark.source("IPA and the marks of US dictionaries for the endings; value from memory")
def test_what_an_ending_says_is_written_in_every_notation() -> None:
    written = {
        label: [written_sound(label, notation) for notation in Notation]
        for labels in SOUNDS_OF.values()
        for label in labels
    }
    assert written == {
        "s": ["/s/", "/s/", "/S/"],
        "z": ["/z/", "/z/", "/Z/"],
        "ɪz": ["/ɪz/", "/ĭz/", "/IH0 Z/"],
        "iz": ["/iz/", "/ēz/", "/IY0 Z/"],
        "aɪz": ["/aɪz/", "/īz/", "/AY1 Z/"],
        "t": ["/t/", "/t/", "/T/"],
        "d": ["/d/", "/d/", "/D/"],
        "ɪd": ["/ɪd/", "/ĭd/", "/IH0 D/"],
        "ɪŋ": ["/ɪŋ/", "/ĭng/", "/IH0 NG/"],
        "ɚ": ["/ɚ/", "/ər/", "/ER0/"],
        "ɪst": ["/ɪst/", "/ĭst/", "/IH0 S T/"],
        "li": ["/li/", "/lē/", "/L IY0/"],
        "i": ["/i/", "/ē/", "/IY0/"],
    }
    assert [written_sound("", notation) for notation in Notation] == [""] * 3
    assert [codes_of(label) for label in ("aɪz", "ɚ", "ɪz")] == ["Iz", "ɝ", "ɪz"]


@pytest.mark.parametrize(
    ("word", "kind", "rough"),
    [
        ("torches", "ch", ("ch", "", "es")),
        ("patches", "tch", ("tch", "", "es")),
        ("boxes", "x", ("x", "", "es")),
        ("buzzes", "zz", ("zz", "", "es")),
        ("quizzes", "z", ("z", "", "doubled")),
        ("heroes", "o", ("o", "", "es")),
        ("hedges", "silent e: dge", ("dge", "", "s")),
        ("races", "silent e: ce", ("ce", "", "s")),
        ("caches", "silent e: che", ("che", "", "s")),
        ("boys", "a vowel sound", ("", "", "s")),
        ("boats", "t or d", ("", "", "s")),
        ("gulls", "a voiced consonant", ("", "", "s")),
        ("ropes", "an unvoiced sound", ("", "", "s")),
        ("ferries", "consonant + y (and quy)", ("", "y", "ies")),
        ("skated", "a final e", ("", "", "d")),
        ("hopped", "one vowel and one consonant letter, the last syllable stressed", None),
        ("melted", "t or d", ("", "", "ed")),
        ("slowly", "any other base", ("", "", "ly")),
        ("gently", "consonant + le", ("", "e", "y")),
        ("teacher", "a hissing sound", ("ch", "", "er")),
        ("hoping", "a silent e", ("", "e", "ing")),
    ],
)
def test_what_a_base_ends_in(
    lexicon: Lexicon, word: str, kind: str, rough: tuple[str, str, str] | None
) -> None:
    (way,) = classify(word, lexicon, lexicon.ending_exceptions())
    assert kind_of(way) == kind
    assert rough_kind(word, way.base, way.said.normal)[:3] == (rough or ("", "", "doubled"))
    last = way.said.normal[-1]
    assert rough_kind(word, way.base, way.said.normal)[-1] == last


def test_rough_kinds_tell_what_is_heard_before_the_ending() -> None:
    heard = {
        form: rough_kind(form, form[:-1], sounds)[3]
        for form, sounds in (
            ("boats", "bOts"),
            ("gulls", "ɡʌlz"),
            ("ropes", "rOps"),
            ("boys", "bYz"),
            ("fishs", "fɪʃz"),
        )
    }
    assert heard == {
        "boats": "t or d",
        "gulls": "a voiced consonant",
        "ropes": "an unvoiced sound",
        "boys": "a vowel sound",
        "fishs": "a hissing sound",
    }


def test_each_word_of_a_sort_has_its_reason(lexicon: Lexicon) -> None:
    words = ["ropes", "torches", "ferries", "leaves", "says", "bus", "blorfs", "skated"]
    words += ["hedges", "cries", "wishing"]
    made = sort_words(lexicon, words, By.SOUND, random.Random(1), ("s", "ed"))
    assert made.left_out == (
        ("bus", "no such ending here"),
        ("blorfs", "base word not known"),
        ("wishing", "no such ending here"),
    )
    assert {group.label: [e.word for e in group.words] for group in made.groups} == {
        "s": ["ropes"],
        "z": ["leaves", "says"],
        "ɪz": ["hedges", "torches"],
        "iz": ["ferries"],
        "aɪz": ["cries"],
        "ɪd": ["skated"],
    }
    explained = explain(lexicon, made)
    hissing = "After a hissing sound add es. It makes a new syllable."
    silent = "The e is there already: add only s. It still makes a new syllable."
    to_i = "After a consonant, y turns to i; then add es."
    assert [(r.ending.word, r.before, r.spelled) for r in explained.reasons] == [
        ("ropes", "p", "Add s."),
        ("leaves", "v", "In some nouns f turns to v; then add es."),
        ("says", "", "Add s."),
        ("hedges", "ʤ", silent),
        ("torches", "ʧ", hissing),
        ("ferries", "i", to_i),
        ("cries", "I", to_i),
        ("skated", "t", "Drop the e; then add ed."),
    ]
    assert explained.left_out == (
        ("bus", "a word of its own: without s only bu is left, which is no word"),
        ("blorfs", "base word not known"),
        ("wishing", "from wish: Add ing."),
    )


def test_why_own_words_are_left_out(lexicon: Lexicon) -> None:
    words = ["crab", "taken", "has", "crab"]
    made = sort_words(lexicon, words, By.RULE, random.Random(1))
    assert [(g.label, [e.word for e in g.words]) for g in made.groups] == [("irregular", ["has"])]
    assert made.left_out == (("crab", "no -s ending here"), ("taken", "no -s ending here"))
    explained = explain(lexicon, made)
    assert explained.left_out == (
        ("crab", "a word of its own: it has no ending"),
        ("taken", "from take: an irregular form: learned by heart"),
    )
    assert [(r.before, r.spelled) for r in explained.reasons] == [("", "Learned by heart.")]


def test_families_stay_together_the_largest_first(lexicon: Lexicon) -> None:
    words = ["skates", "skated", "skating", "ropes", "roped", "gulls"]
    made = sort_words(lexicon, words, By.BASE, random.Random(3), ("s", "ed", "ing"))
    assert [(g.label, [e.word for e in g.words]) for g in made.groups] == [
        ("gull", ["gulls"]),
        ("rope", ["roped", "ropes"]),
        ("skate", ["skated", "skates", "skating"]),
    ]
    assert sorted(made.to_sort) == sorted(words)
    assert list(made.to_sort) != words


@pytest.mark.source("Huddleston & Pullum (2005), pp. 267-269, for what is heard")
def test_what_many_endings_say(lexicon: Lexicon) -> None:
    heard = {
        "s": "ropes",
        "z": "says leaves",
        "ɪz": "torches axes closes houses",
        "iz": "ferries",
        "aɪz": "cries",
        "ɪd": "skated melted",
        "ɪŋ": "hoping",
        "": "bus blorf feet read",
    }
    expected = [(word, label) for label, words in heard.items() for word in words.split()]
    assert list(sounds_of_endings([word for word, _ in expected], lexicon)) == expected


def test_conditions_at_their_edges() -> None:
    sis = BaseWord("sis", "s", 1, True, "noun")
    assert not ends_in_weak_sis(sis)
    assert ends_in_weak_sis(sis._replace(word="oasis", syllables=3))
    assert not ends_in_weak_sis(sis._replace(word="oasis", syllables=3, part_of_speech="verb"))
    assert not ends_in_weak_sis(sis._replace(word="oasis", syllables=3, is_name=True))
    dry = BaseWord("dry", "I", 1, True)
    assert not is_long_in_consonant_y(dry)
    assert is_long_in_consonant_y(dry._replace(word="happy", syllables=2))
    assert not is_long_in_consonant_y(dry._replace(word="monkey", syllables=2))
    assert not drops_e_before_y(BaseWord("be", "i", 1, True))
    assert drops_e_before_y(BaseWord("ice", "s", 1, True))
    assert not drops_e_before_y(BaseWord("glue", "u", 1, True))
    assert not drops_e_before_y(BaseWord("crab", "b", 1, True))


def test_a_plural_owns_with_an_apostrophe_alone(lexicon: Lexicon) -> None:
    cards = [
        make_card(lexicon, "'s", band=1, per_kind=2, rng=random.Random(seed)) for seed in (1, 2)
    ]
    shown = []
    for card in cards:
        rows = {row.rule.name: [e.ending for e in row.examples] for row in card.rows}
        plurals = rows["add ' after s"]
        assert len(plurals) == 2
        for ending in plurals:
            assert ending.word == f"{ending.base}'"
            assert (ending.suffix, ending.ending, ending.sound) == ("'s", "s'", "")
            plural = lexicon.bases_of(ending.base)[0]
            base = lexicon.get(plural.base)
            assert base
            assert base.picturable
        assert not any(
            ending.base.endswith("s") and not ending.base.endswith("ss")
            for ending in rows["add 's"]
        )
        shown.append([ending.word for ending in plurals])
    assert shown[0] != shown[1]
