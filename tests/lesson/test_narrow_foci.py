"""Foci with few words: what is left out is left out whole, and one line says so."""

from __future__ import annotations

from collections import Counter

import pytest

from phonodrill import Lexicon, PhonodrillError
from phonodrill.lesson import tree
from phonodrill.lesson.compose import make_lesson
from phonodrill.lesson.days import make_days
from phonodrill.lesson.request import Request
from phonodrill.lesson.tree import Lesson

NARROW = ("est", "er", "ly", "ves", "y", "c=s", "kn", "igh", "oi", "/th/")


@pytest.fixture(scope="module")
def narrow(lexicon: Lexicon) -> list[Lesson]:
    return [make_lesson(lexicon, Request(focus, band=2, seed=5)) for focus in NARROW]


def section_of(lesson: Lesson, kind: type[tree.Section]) -> tree.Section | None:
    return next((part for part in lesson.sections if isinstance(part, kind)), None)


def size(section: tree.Section) -> int:
    if isinstance(section, tree.WarmUp):
        return sum(len(activity.items) for activity in section.activities)
    names = ("letters", "points", "words", "lines", "questions", "advice")
    return next(len(getattr(section, name)) for name in names if hasattr(section, name))


def test_no_section_is_empty(narrow: list[Lesson]) -> None:
    for lesson in narrow:
        for section in lesson.sections:
            assert size(section), (lesson.request.focus, section.name)


def test_what_is_missing_is_said(narrow: list[Lesson]) -> None:
    said = {"warmup": "oral warm-up", "sentences": "sentences", "sort": "no sort"}
    for lesson in narrow:
        names = {section.name for section in lesson.sections}
        for name, words in said.items():
            assert name in names or any(words in note for note in lesson.notes)


def test_notes_are_single_clear_lines(narrow: list[Lesson]) -> None:
    for lesson in narrow:
        assert len(set(lesson.notes)) == len(lesson.notes)
        starts = Counter(" ".join(note.split()[:3]) for note in lesson.notes)
        for note in lesson.notes:
            assert "\n" not in note
            assert len(note) < 160, note
        # Words that come again are told in one line, whatever sections share them.
        assert starts["few words fit,"] <= 1


def test_only_endings_have_bases_to_find(narrow: list[Lesson]) -> None:
    for lesson in narrow:
        has_bases = any(isinstance(section, tree.Bases) for section in lesson.sections)
        assert has_bases is (lesson.kind == "endings")
        assert not any("base" in note for note in lesson.notes if not has_bases)


def test_dictation_is_never_what_was_sorted(narrow: list[Lesson]) -> None:
    for lesson in narrow:
        sort, dictation = section_of(lesson, tree.Sort), section_of(lesson, tree.Dictation)
        assert isinstance(dictation, tree.Dictation)
        assert dictation.words
        if isinstance(sort, tree.Sort):
            assert {row.word for row in dictation.words}.isdisjoint(sort.words)


def test_an_ending_heard_in_two_ways_is_warmed_up_with_bases(lexicon: Lexicon) -> None:
    lesson = make_lesson(lexicon, Request("est", seed=5))
    warmup = section_of(lesson, tree.WarmUp)
    assert isinstance(warmup, tree.WarmUp)
    assert size(warmup) == 6
    said = {item.stimulus or item.answer for one in warmup.activities for item in one.items}
    assert not any(word.endswith("est") for word in said)
    assert any("with the bases" in note for note in lesson.notes)


def test_a_word_with_the_letters_twice_is_not_asked_about(lexicon: Lexicon) -> None:
    lesson = make_lesson(lexicon, Request("c=s", band=3, seed=5))
    check = section_of(lesson, tree.Check)
    assert isinstance(check, tree.Check)
    assert all(question.word.count("c") == 1 for question in check.questions)


def test_review_words_have_neither_the_letters_nor_the_sound(lexicon: Lexicon) -> None:
    lesson = make_lesson(lexicon, Request("c=s", band=2, seed=2))
    listed = section_of(lesson, tree.SoundOut)
    assert isinstance(listed, tree.SoundOut)
    for row in listed.words:
        if row.review:
            assert "c" not in {piece.letters for piece in row.pieces}
            assert "S" not in row.arpabet.split(), row.word


def test_too_few_words_for_a_lesson(lexicon: Lexicon) -> None:
    with pytest.raises(PhonodrillError, match="only 6 words fit the spelling ph") as caught:
        make_lesson(lexicon, Request("ph", band=2))
    assert caught.value.hint == "--band 3"
    assert make_lesson(lexicon, Request("ph", band=3, seed=5)).sections


def test_late_in_a_series_no_sort_has_one_group(lexicon: Lexicon) -> None:
    # Found by the soak: on a late day all words left could go under one heading.
    taught = (
        *("s, a, t, p, i, n", "m, d, g, o, c=k, k", "ck, e, u, r", "h, b, f, l", "ll, ss, ff"),
        *("sh, ch, th, ng, nk", "a_e, i_e, o_e", "ee, ea, ai, ay, oa"),
    )
    request = Request("i:e", band=3, minutes=55, seed=2, taught=taught)
    week = make_days(lexicon, request, 5)
    for lesson in week:
        sort = section_of(lesson, tree.Sort)
        assert not isinstance(sort, tree.Sort) or all(len(s.groups) > 1 for s in sort.sortings)
    assert any(note.startswith("no sort: the words left") for one in week for note in one.notes)


@pytest.mark.parametrize(
    ("focus", "expect"),
    [
        ("c=s", {"c before an e at the end", "c in the middle", "c at the beginning"}),
        ("sh", {"sh at the beginning", "sh in the middle", "sh at the end"}),
    ],
)
def test_where_the_letters_of_a_focus_are(lexicon: Lexicon, focus: str, expect: set[str]) -> None:
    rule = section_of(make_lesson(lexicon, Request(focus, band=3)), tree.Rule)
    assert isinstance(rule, tree.Rule)
    points = {point.condition: point.word for point in rule.points}
    assert {*points} == expect
    for when, word in points.items():
        letters = focus.partition("=")[0]
        if when.endswith("before an e at the end"):
            assert word.endswith(f"{letters}e")
        elif when.endswith("at the end"):
            assert word.endswith(letters)
