"""Where letters stand in short words: counted by us, and again on raw CMUdict by other means."""

from __future__ import annotations

import re

import pytest

from phonodrill import Lexicon, Notation
from phonodrill.lesson.compose import make_lesson
from phonodrill.lesson.request import Request, open_context
from phonodrill.lesson.rule_part import watch_outs_of
from phonodrill.lesson.tree import Lesson
from phonodrill.lesson.tree import Rule as RulePart
from phonodrill.overlay import NO_OVERLAY, Overlay, Rule
from phonodrill.reading.letter_places import Place, Where, find_habit, habit_of
from tests.raw_cmudict import raw_cmudict

VOWEL = re.compile(r"[AEIOU]")
SHORT = {"a": {"AE"}, "e": {"EH"}, "i": {"IH"}, "o": {"AA", "AO"}, "u": {"AH"}, "y": {"IH"}}
CLOSING = {"ck": "K", "tch": "CH", "dge": "JH", "ff": "F", "ss": "S", "zz": "Z"}


def rule_of(lesson: Lesson) -> RulePart:
    return next(part for part in lesson.sections if isinstance(part, RulePart))


def watched(lexicon: Lexicon, focus: str, band: int = 3) -> dict[str, str]:
    found = watch_outs_of(open_context(lexicon, Request(focus, band=band), NO_OVERLAY))
    return {watch.word: watch.why for watch in found}


@pytest.mark.parametrize(("spelling", "phone"), CLOSING.items())
@pytest.mark.source("CMUdict 1.1.3, read without our code, by the letters of its words")
def test_what_closes_a_short_vowel_does_so_in_the_dictionary(
    lexicon: Lexicon, spelling: str, phone: str
) -> None:
    closing = others = 0
    for word in lexicon.words(highest_band=3):
        said = [phone.rstrip("012") for phone in raw_cmudict().get(word, [()])[0]]
        if spelling not in word or sum(bool(VOWEL.match(sign)) for sign in said) != 1:
            continue
        if phone not in said or (word.endswith(("s", "ed")) and not word.endswith(spelling)):
            continue
        match = re.fullmatch(rf"[^aeiouy]*(?:q?u)?([aeiouy]){spelling}", word)
        if match and said[-1] == phone and said[-2] in SHORT[match[1]]:
            closing += 1
        else:
            others += 1
    assert closing >= 3
    assert closing / (closing + others) >= 0.9
    habit = habit_of(spelling, {"CH": "ʧ", "JH": "ʤ"}.get(phone, phone.lower()), lexicon)
    assert habit is not None
    assert habit.where is Where.CLOSING


@pytest.mark.source("common practice, no source")
@pytest.mark.parametrize(
    ("spelling", "sound", "where"),
    [
        *(("ay", "E", Where.LAST), ("oy", "Y", Where.LAST), ("ll", "l", Where.LAST)),
        *(("ve", "v", Where.LAST), ("dge", "ʤ", Where.CLOSING), ("y", "I", Where.LAST)),
        *(("ai", "E", Where.HARDLY_LAST), ("oi", "Y", Where.HARDLY_LAST)),
        *(("ou", "W", Where.HARDLY_LAST), ("oa", "O", Where.HARDLY_LAST)),
        *(("wh", "w", Where.FIRST), ("kn", "n", Where.FIRST), ("wr", "r", Where.FIRST)),
        *(("j", "ʤ", Where.FIRST), ("v", "v", Where.HARDLY_LAST)),
        *(("c", "s", Where.BEFORE_FRONT), ("g", "ʤ", Where.BEFORE_FRONT)),
        *(("c", "k", Where.HARDLY_BEFORE_FRONT), ("g", "ɡ", None)),
        # These stand anywhere, or as every spelling of their sound does.
        *(("sh", "ʃ", None), ("ee", "i", None), ("th", "θ", None), ("a", "æ", None)),
        *(("a_e", "E", None), ("ow", "O", None), ("h", "h", None), ("b", "b", None)),
    ],
)
def test_where_letters_stand(
    lexicon: Lexicon, spelling: str, sound: str, where: Where | None
) -> None:
    habit = habit_of(spelling, sound, lexicon)
    assert (habit and habit.where) == where


@pytest.mark.source("common practice, no source: the usual exceptions")
@pytest.mark.parametrize(
    ("focus", "words", "why"),
    [
        ("tch", "much such rich which", "here /ch/ is spelled ch after a short vowel"),
        ("ss", "bus gas yes us plus this", "here /s/ is spelled s after a short vowel"),
        ("ss", "gross", "here o before ss says /ō/"),
        ("ff", "if chef", "here /f/ is spelled f after a short vowel"),
        ("zz", "quiz", "here /z/ is spelled z after a short vowel"),
        ("ng", "young", "here ou before ng says /ŭ/"),
        ("ng", "strength", "here ng is not at the end"),
        ("g=j", "get geese gear", "here g before e says /g/"),
        ("g=j", "give girl gift", "here g before i says /g/"),
    ],
)
def test_the_words_that_do_otherwise(lexicon: Lexicon, focus: str, words: str, why: str) -> None:
    found = watched(lexicon, focus)
    assert {word: found.get(word) for word in words.split()} == dict.fromkeys(words.split(), why)


def test_only_words_of_the_band_are_shown(lexicon: Lexicon) -> None:
    for band in (1, 2, 3):
        shown = {
            word for focus in ("ss", "ng", "ff", "tch") for word in watched(lexicon, focus, band)
        }
        entries = [entry for word in shown if (entry := lexicon.get(word))]
        assert {entry.band for entry in entries} == {*range(1, band + 1)}


def test_a_lesson_shows_them_in_its_notation(lexicon: Lexicon) -> None:
    request = Request("ss", band=3, notation=Notation.ARPABET)
    shown = {watch.word: watch.why for watch in rule_of(make_lesson(lexicon, request)).watch_outs}
    assert "here /S/ is spelled s after a short vowel" in shown.values()


def test_a_blocked_word_is_not_shown(lexicon: Lexicon) -> None:
    assert "bus" in watched(lexicon, "ss")
    blocked = Overlay({"bus": Rule("block", "bus", 0)})
    found = watch_outs_of(open_context(lexicon, Request("ss", band=3), blocked))
    assert "bus" not in {watch.word for watch in found}


def test_it_is_said_with_the_letters(lexicon: Lexicon) -> None:
    said = {point.says for point in rule_of(make_lesson(lexicon, Request("ai,ay"))).points}
    assert said == {
        "The letters ai say /ā/. In words of one syllable they are hardly ever at the end.",
        "The letters ay say /ā/. In words of one syllable they are at the end.",
    }
    said = {point.says for point in rule_of(make_lesson(lexicon, Request("/k/"))).points}
    assert said == {
        f"The letter c says /k/. In words of one syllable it is {Where.HARDLY_BEFORE_FRONT}.",
        "The letter k says /k/.",
        f"The letters ck say /k/. In words of one syllable they are {Where.CLOSING}.",
    }


def _closing(word: str, spelling: str, vowel: str, said: str, *, last: bool = True) -> Place:
    return Place(word, spelling, "k", not last, last, vowel, said)


ELSEWHERE = [_closing(word, "k", "ea", "i") for word in ("leak", "peak", "beak")]
TEN = [_closing(f"w{number}", "ck", "a", "æ") for number in range(9)]


@pytest.mark.parametrize(
    ("places", "where"),
    [
        ([*TEN, *ELSEWHERE], Where.CLOSING),
        ([*TEN, _closing("odd", "ck", "oa", "O"), *ELSEWHERE], Where.CLOSING),
        # Two of eleven are more than one in ten; they are still at the end.
        ([*TEN, *2 * [_closing("odd", "ck", "oa", "O")], *ELSEWHERE], None),
        ([*TEN[:3], *ELSEWHERE], Where.CLOSING),
        ([*TEN[:2], *ELSEWHERE], None),
        ([*TEN, *ELSEWHERE[:2]], None),
        # Every spelling of the sound is at the end: that is the sound, not the spelling.
        ([*TEN, *(_closing(w, "k", "e", "ɛ") for w in ("trek", "fek", "mek"))], None),
    ],
)
def test_when_there_is_a_habit(places: list[Place], where: Where | None) -> None:
    habit = find_habit("ck", "k", places)
    assert (habit and habit.where) == where


@pytest.mark.source("CMUdict 1.1.3, read without our code, by the letters of its words")
@pytest.mark.parametrize(("letter", "soft", "hard"), [("c", "S", "K"), ("g", "JH", "G")])
def test_before_which_letters_c_and_g_are_soft(
    lexicon: Lexicon, letter: str, soft: str, hard: str
) -> None:
    said_before = {True: [], False: []}  # type: dict[bool, list[str]]
    for word in lexicon.words(highest_band=3):
        signs = {sign.rstrip("012") for sign in raw_cmudict().get(word, [()])[0]}
        # Where both sounds, or another letter for one, are in the word, it tells nothing.
        others = word.replace(letter, "", 1)
        if (
            word.count(letter) == 1
            and len(signs & {soft, hard}) == 1
            and not {*"skxzjcg"} & {*others}
        ):
            is_front = word.partition(letter)[2][:1] in [*"eiy"]
            said_before[is_front] += signs & {soft, hard}
    assert said_before[True].count(soft) >= 30
    assert said_before[False].count(soft) <= 0.02 * len(said_before[False])
    # Before e and i g may be hard all the same; c is not.
    assert said_before[True].count(hard) > 5 or letter == "c"
    assert said_before[True].count(hard) < (0.02 if letter == "c" else 0.5) * len(said_before[True])


def test_what_breaks_a_habit_and_what_stands_instead() -> None:
    odd, trek = _closing("odd", "ck", "oa", "O"), _closing("trek", "k", "e", "ɛ")
    habit = find_habit("ck", "k", [*TEN, odd, *ELSEWHERE, trek])
    assert habit is not None
    assert (habit.breaking, habit.instead) == ((odd,), (trek,))
    first = [Place(f"k{n}", "kn", "n", True, False) for n in range(4)]
    last = [Place(f"n{n}", "n", "n", False, True) for n in range(3)]
    habit = find_habit("kn", "n", [*first, *last])
    assert habit is not None
    assert (habit.where, habit.instead) == (Where.FIRST, ())
