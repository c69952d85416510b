"""What was heard when items and lessons were read aloud, line by line, and mended."""

from __future__ import annotations

import re

import pytest

from phonodrill import TASKS, Lexicon, Position, Query, select
from phonodrill.lesson.as_data import as_data
from phonodrill.lesson.candidates import gather
from phonodrill.lesson.compose import make_lesson
from phonodrill.lesson.reasons import in_style
from phonodrill.lesson.request import Request, open_context
from phonodrill.lesson.rule_part import watch_outs_of
from phonodrill.overlay import NO_OVERLAY
from phonodrill.sounds.notation import Notation
from phonodrill.tasks import phrases

NOT_AS_US_TEACHERS_SAY_IT = re.compile(r"\bbehind\b|\bround\b|has it not|\bHas it\b")


@pytest.mark.source("usage of US classrooms: common practice, no source")
def test_what_the_teacher_says_is_us_english() -> None:
    said = [line for phrase in phrases.PHRASES.values() for line in phrase]
    said += [phrases.CLIP, phrases.UNPUFFED]
    assert [line for line in said if NOT_AS_US_TEACHERS_SAY_IT.search(line)] == []


def _answers(lexicon: Lexicon, task: str, at: Position, word: str) -> set[tuple[str, ...]]:
    query = Query(band=3, words=(word,))
    items = TASKS[task].candidates(select(lexicon, query), query, at)
    return {(item.answer, *item.also) for item in items}


@pytest.mark.source("CMUdict 0.7b: two ways to say aunt, one to say ant")
def test_the_homophone_that_all_say_alike_is_the_answer(lexicon: Lexicon) -> None:
    assert ("or", "ore", "oar") in _answers(lexicon, "delete", Position.FIRST, "four"), (
        "ore is rarer"
    )
    assert ("ant", "aunt") in _answers(lexicon, "substitute", Position.CODA1, "act")


def test_what_is_left_of_a_compound_is_spelled_as_it_is_there(lexicon: Lexicon) -> None:
    assert ("sea", "see") in _answers(lexicon, "delete", Position.SYLLABLE, "seacoast")


@pytest.mark.source("Labov, Ash & Boberg 2006: pin/pen fall together before nasals")
def test_no_word_of_a_contrast_is_said_with_its_other_sound(lexicon: Lexicon) -> None:
    found = gather(open_context(lexicon, Request("i:e"), NO_OVERLAY))
    assert {"lip", "sled"} <= found.words.keys()
    assert found.words.keys().isdisjoint({"when", "ten", "bent", "inch", "pink"})


def test_nothing_that_looks_like_the_focus_is_sorted_against_it(lexicon: Lexicon) -> None:
    found = gather(open_context(lexicon, Request("a_e"), NO_OVERLAY))
    assert {"grab", "trash"} <= found.rivals.keys()
    assert found.rivals.keys().isdisjoint({"have", "rang", "stank"})


def test_watch_outs_are_in_the_notation_of_the_lesson(lexicon: Lexicon) -> None:
    marks = watch_outs_of(open_context(lexicon, Request("s", notation=Notation.MARKS), NO_OVERLAY))
    ipa = watch_outs_of(open_context(lexicon, Request("s", notation=Notation.IPA), NO_OVERLAY))
    assert "said /dʌz/, not like do" in {watch.why for watch in ipa}
    assert "said /dŭz/, not like do" in {watch.why for watch in marks}
    assert in_style("n/a and and/or", Notation.MARKS) == "n/a and and/or"


def test_adverbs_with_ly(lexicon: Lexicon) -> None:
    lesson = as_data(make_lesson(lexicon, Request("ly", seed=206, minutes=20)))
    sections = {section["name"]: section for section in lesson["sections"]}
    used = {word["word"]: word["part_of_speech"] for word in sections["list"]["words"]}
    adverbs = {used[word] for word in used if word.endswith("ly") and word != "friendly"}
    assert adverbs <= {"adverb", "adverb, adjective"}
    assert adverbs
    assert "sort" not in sections, "nearly all are one pile"
    assert any(note.startswith("no sort") for note in lesson["notes"])
    assert "any other base, says /lē/" in {p["condition"] for p in sections["rule"]["points"]}


def test_what_may_be_written_is_what_the_dictation_takes(lexicon: Lexicon) -> None:
    lesson = as_data(make_lesson(lexicon, Request("er,est", seed=204, notation=Notation.IPA)))
    sections = {section["name"]: section for section in lesson["sections"]}
    rows = {row["letters"]: row for row in sections["review"]["letters"]}
    assert rows["er"]["sound"] == "/ɚ/", "healthier has the weak one"
    assert "k" in rows["ck"]["also"]
    assert "l" in rows["ll"]["also"]
    (sort,) = sections["sort"]["sortings"]
    assert {"-er", "-est"} == {group["heading"] for group in sort["groups"]}
