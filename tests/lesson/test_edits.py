"""An edited lesson is checked again; a swapped word is followed everywhere."""

from __future__ import annotations

import copy
from collections.abc import Callable
from typing import Any

import pytest

from phonodrill import Lexicon, PhonodrillError, Query
from phonodrill.endings.vocabulary import known_endings
from phonodrill.lesson.as_data import as_data
from phonodrill.lesson.compose import make_lesson
from phonodrill.lesson.from_data import read_lessons
from phonodrill.lesson.request import Request
from phonodrill.lesson.swap import swap_word
from phonodrill.lesson.used import words_of_lesson
from phonodrill.overlay import NO_OVERLAY, Overlay, Rule


@pytest.fixture(scope="module")
def written(lexicon: Lexicon) -> dict[str, Any]:
    made: dict[str, Any] = as_data(make_lesson(lexicon, Request("es,ies", band=3, seed=3)))
    return made


def section(data: dict[str, Any], name: str) -> Any:
    return next(part for part in data["sections"] if part["name"] == name)


def _unknown(data: dict[str, Any]) -> None:
    section(data, "build")["words"][0]["word"] = "blorfes"


def _not_for_class(data: dict[str, Any]) -> None:
    section(data, "list")["words"][0]["word"] = "bitches"


def _wrong_base(data: dict[str, Any]) -> None:
    section(data, "bases")["words"][0]["bases"] = ["xyz"]


def _wrong_key(data: dict[str, Any]) -> None:
    groups = section(data, "sort")["sortings"][1]["groups"]
    groups[0]["words"], groups[1]["words"] = groups[1]["words"], groups[0]["words"]


def _wrong_sound(data: dict[str, Any]) -> None:
    section(data, "dictation")["words"][0]["arpabet"] = "K AE1 T"


def _wrong_oral_answer(data: dict[str, Any]) -> None:
    section(data, "warmup")["activities"][0]["items"][0]["answer"] = "crabs"


def _dictated_after_sorting(data: dict[str, Any]) -> None:
    sorted_ = section(data, "sort")["words"][0]
    section(data, "dictation")["words"][0]["word"] = sorted_


def _twice(data: dict[str, Any]) -> None:
    rows = section(data, "build")["words"]
    rows[1] = copy.deepcopy(rows[0])


def _no_such_focus(data: dict[str, Any]) -> None:
    section(data, "build")["words"][0]["word"] = "crab"


def _unfit_wording(data: dict[str, Any]) -> None:
    section(data, "rule")["script"] = "Say it, you bastard."


def _sentence_without_its_word(data: dict[str, Any]) -> None:
    section(data, "sentences")["lines"][0]["text"] = "The gulls rest on the ropes."


def _section_unknown(data: dict[str, Any]) -> None:
    data["sections"][0]["name"] = "song"


def _no_request(data: dict[str, Any]) -> None:
    del data["request"]


def _answer_of_the_check(data: dict[str, Any]) -> None:
    section(data, "check")["questions"][0]["answer"] = "no"


def _watch_out_of_their_own(data: dict[str, Any]) -> None:
    section(data, "rule")["watch_outs"][0]["word"] = "ferries"


EDITS: dict[Callable[[dict[str, Any]], None], str] = {
    _unknown: "'blorfes' is not in the lexicon",
    _not_for_class: "not for class",
    _wrong_base: "bases",
    _wrong_key: "sortings",
    _wrong_sound: "arpabet is 'K AE1 T'",
    _wrong_oral_answer: "does not give 'crabs'",
    _dictated_after_sorting: "is among the words just sorted",
    _twice: "is there twice",
    _no_such_focus: "'crab' is no plain word for",
    _unfit_wording: "not for class",
    _sentence_without_its_word: "is not in the sentence",
    _section_unknown: "'song' is unknown",
    _no_request: "request is missing",
    _answer_of_the_check: "check",
    _watch_out_of_their_own: "ferries is not known to be one",
}


@pytest.mark.parametrize("edit", EDITS, ids=lambda edit: edit.__name__)
def test_a_wrong_edit_gets_one_line(
    lexicon: Lexicon, written: dict[str, Any], edit: Callable[[dict[str, Any]], None]
) -> None:
    data = copy.deepcopy(written)
    edit(data)
    with pytest.raises(PhonodrillError) as caught:
        read_lessons({"lesson": data}, lexicon)
    assert EDITS[edit] in caught.value.message
    assert "\n" not in caught.value.message
    # What is not for class is not repeated to the reader.
    assert "bitch" not in caught.value.message + caught.value.hint


@pytest.mark.parametrize("data", [None, [], {}, {"lesson": 3}, {"lessons": []}, {"lesson": {}}])
def test_what_is_no_lesson(lexicon: Lexicon, data: Any) -> None:
    with pytest.raises(PhonodrillError):
        read_lessons(data, lexicon)


def test_wording_and_minutes_may_be_changed(lexicon: Lexicon, written: dict[str, Any]) -> None:
    data = copy.deepcopy(written)
    section(data, "rule")["script"] = "Today we look at boats and ferries."
    section(data, "build")["minutes"] = 9
    data["sections"] = [part for part in data["sections"] if part["name"] != "bases"]
    (read,) = read_lessons({"lesson": data}, lexicon)
    assert as_data(read.lesson) == data


@pytest.mark.parametrize(
    ("word", "stored", "added"),
    [
        ("kai", "a word that is not for class", "'kai' is no plain word for"),
        ("monday", "would stand without its capital", "'monday' is no plain word for"),
    ],
)
def test_why_an_added_word_does_not_fit(
    lexicon: Lexicon, written: dict[str, Any], word: str, stored: str, added: str
) -> None:
    old = section(written, "list")["words"][0]["word"]
    for overlay, why in (
        (NO_OVERLAY, stored),
        (Overlay({word: Rule("add", word, 1)}), added),
    ):
        (read,) = read_lessons({"lesson": written}, lexicon, overlay)
        with pytest.raises(PhonodrillError, match=why):
            swap_word(read, old, word)


def test_a_swapped_word_is_followed_everywhere(lexicon: Lexicon, written: dict[str, Any]) -> None:
    (read,) = read_lessons({"lesson": written}, lexicon)
    for name in ("rule", "build", "list", "sort", "bases", "dictation", "check"):
        rows = section(written, name).get("points") or section(written, name).get(
            "words", section(written, name).get("questions")
        )
        old = rows[0]["word"] if isinstance(rows[0], dict) else rows[0]
        lesson, new = swap_word(read, old)
        used = words_of_lesson(lesson)
        assert old not in used, (name, old)
        assert new in used
        assert not {*words_of_lesson(read.lesson)} - used - {old} - _oral(read.lesson)
        known = read.ready.vocabulary.words
        free = {c.condition for w, c in known.items() if w not in words_of_lesson(read.lesson)}
        assert known[new].condition == known[old].condition or known[old].condition not in free
        (again,) = read_lessons({"lesson": as_data(lesson)}, lexicon)
        assert again.lesson == lesson


def _oral(lesson: Any) -> set[str]:
    items = (item for activity in lesson.sections[0].activities for item in activity.items)
    return {word for item in items for word in item.words}


def test_a_word_of_an_oral_item_is_swapped(lexicon: Lexicon, written: dict[str, Any]) -> None:
    (read,) = read_lessons({"lesson": written}, lexicon)
    item = read.lesson.sections[0].activities[0].items[0]  # type: ignore[union-attr]
    lesson, _ = swap_word(read, item.stimulus)
    assert item.stimulus not in _oral(lesson)
    (again,) = read_lessons({"lesson": as_data(lesson)}, lexicon)
    assert again.lesson == lesson


def test_a_named_word_is_put_in(lexicon: Lexicon, written: dict[str, Any]) -> None:
    (read,) = read_lessons({"lesson": written}, lexicon)
    old = section(written, "list")["words"][0]["word"]
    used = words_of_lesson(read.lesson)
    wanted = next(w for w in ("finches", "torches", "stitches", "clutches") if w not in used)
    lesson, new = swap_word(read, old, wanted.capitalize())
    assert new == wanted
    assert wanted in words_of_lesson(lesson)


@pytest.mark.parametrize(
    ("new", "says"),
    [
        ("blorfes", "is not in the lexicon"),
        ("crab", "is no plain word"),
        ("bitches", "not for class"),
        ("abbesses", "abbesses"),
    ],
)
def test_a_word_that_does_not_fit(
    lexicon: Lexicon, written: dict[str, Any], new: str, says: str
) -> None:
    (read,) = read_lessons({"lesson": written}, lexicon)
    old = section(written, "list")["words"][0]["word"]
    with pytest.raises(PhonodrillError, match=says):
        swap_word(read, old, new)


def test_a_word_that_is_not_there(lexicon: Lexicon, written: dict[str, Any]) -> None:
    (read,) = read_lessons({"lesson": written}, lexicon)
    with pytest.raises(PhonodrillError, match="'zebra' is not in the lesson"):
        swap_word(read, "zebra")
    one, other = (section(written, "list")["words"][n]["word"] for n in (0, 1))
    with pytest.raises(PhonodrillError, match="is in the lesson already"):
        swap_word(read, one, other)


def test_a_named_word_need_not_be_among_the_first_of_its_kind(lexicon: Lexicon) -> None:
    made = make_lesson(lexicon, Request("s", band=3, seed=3))
    (read,) = read_lessons({"lesson": as_data(made)}, lexicon)
    known = read.ready.vocabulary.words
    query = Query(3, frozenset({"s"}))
    rare = next(
        ending.word
        for ending in known_endings(lexicon, query)
        if ending.word not in known
        and ending.said.syllables == 1
        and (base := lexicon.get(ending.base))
        and base.band == 3
    )
    old = section(as_data(made), "list")["words"][0]["word"]
    lesson, new = swap_word(read, old, rare)
    assert new == rare
    assert rare in words_of_lesson(lesson)
    (again,) = read_lessons({"lesson": as_data(lesson)}, lexicon)
    assert again.lesson == lesson
