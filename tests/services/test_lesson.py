"""Lessons are remembered, and only as long as they would be made the same again."""

from __future__ import annotations

import pytest

from phonodrill import Lexicon, PhonodrillError
from phonodrill.lesson.request import Request
from phonodrill.overlay import NO_OVERLAY, Overlay, Rule
from phonodrill.remembered import Remembered
from phonodrill.services.lesson import Lessons, Swap, Wish
from phonodrill.services.lesson_words import places_of, why_it_fits, words_of

ASKED = Request("sh", seed=5)


@pytest.fixture(scope="module")
def lessons() -> Lessons:
    return Lessons()


def test_a_lesson_asked_for_again_is_not_made_again(lexicon: Lexicon, lessons: Lessons) -> None:
    first = lessons.make(lexicon, Wish(ASKED), NO_OVERLAY)
    assert lessons.make(lexicon, Wish(ASKED), NO_OVERLAY) is first
    other = lessons.make(lexicon, Wish(ASKED._replace(seed=6)), NO_OVERLAY)
    assert words_of(other.reads) != words_of(first.reads)


@pytest.mark.parametrize(
    "changed", [{"band": 1}, {"minutes": 40}, {"notation": "ipa"}, {"taught": ("s, h, sh, o, p",)}]
)
def test_what_was_asked_otherwise_is_made_anew(
    lexicon: Lexicon, lessons: Lessons, changed: dict[str, object]
) -> None:
    first = lessons.make(lexicon, Wish(ASKED), NO_OVERLAY).reads[0]
    try:
        other = lessons.make(lexicon, Wish(ASKED._replace(**changed)), NO_OVERLAY).reads[0]  # type: ignore[arg-type]
    except PhonodrillError as error:
        assert "too few" in error.message  # noqa: PT017
        return
    assert other.lesson != first.lesson
    assert other.lesson.request._asdict() | changed == other.lesson.request._asdict()


def test_a_word_that_a_teacher_blocks_is_gone_at_once(lexicon: Lexicon, lessons: Lessons) -> None:
    word = lessons.make(lexicon, Wish(ASKED), NO_OVERLAY).reads[0].choice.words.listed[0]
    blocked = Overlay({word: Rule("block", word)})
    assert word not in words_of(lessons.make(lexicon, Wish(ASKED), blocked).reads)


def test_swaps_are_done_in_their_order(lexicon: Lexicon, lessons: Lessons) -> None:
    plain = lessons.make(lexicon, Wish(ASKED), NO_OVERLAY)
    old = plain.reads[0].choice.words.listed[0]
    once = lessons.make(lexicon, Wish(ASKED, swaps=(Swap(old),)), NO_OVERLAY)
    (new,) = set(words_of(once.reads)) - set(words_of(plain.reads))
    assert once.notes == (f"{old} → {new}",)
    twice = lessons.make(lexicon, Wish(ASKED, swaps=(Swap(old), Swap(new, old))), NO_OVERLAY)
    assert words_of(twice.reads) == words_of(plain.reads)
    assert len(twice.notes) == 2


def test_every_word_has_its_reasons_and_a_place(lexicon: Lexicon, lessons: Lessons) -> None:
    read = lessons.make(lexicon, Wish(ASKED), NO_OVERLAY).reads[0]
    for word in words_of([read]):
        about = [reason.about for reason in why_it_fits(read, word)]
        assert about[:4] == ["Focus", "Sounds", "Known to", "Can be read"]
        assert list(places_of(read, word))
    assert why_it_fits(read, "lighthouse") == ()


def test_no_more_is_remembered_than_allowed() -> None:
    kept: Remembered[int, int] = Remembered(3)
    for number in range(10):
        kept.recall(number, lambda: 0)
    assert len(kept) == 3
    assert 9 in kept
    with pytest.raises(ZeroDivisionError):
        kept.recall(10, lambda: 1 // 0)
    assert 10 not in kept
