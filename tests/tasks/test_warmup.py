"""Sets that come out short, and what they say to loosen; words that rest."""

from __future__ import annotations

import pytest

from phonodrill import TASKS, Lexicon, Position, Query, make_warmup
from phonodrill.sounds.notation import Notation
from phonodrill.tasks import script
from phonodrill.tasks.difficulty import EASY_UP_TO, MIDDLE_UP_TO, Level, kind_score, level_of
from phonodrill.tasks.history import NO_HISTORY, History, parse_history
from phonodrill.tasks.warmup import WarmUp

TWO = ("stop", "train")


def made(
    lexicon: Lexicon,
    task: str,
    query: Query,
    *,
    count: int = 500,
    level: Level | None = None,
    history: History = NO_HISTORY,
) -> WarmUp:
    at = TASKS[task].positions[0]
    return make_warmup(
        lexicon, TASKS[task], at, query, count=count, seed=1, level=level, history=history
    )


@pytest.mark.parametrize(
    ("query", "level", "got", "loosen"),
    [
        (Query(2, words=("stop",)), None, 1, "; for more: no --words"),
        (Query(2, words=("crab",)), None, 0, "; for more: no --words"),
        (Query(3, words=TWO), Level.MIDDLE, 1, "; for more: no --level"),
        (Query(3, words=TWO), None, 2, "; for more: no --words"),
        (Query(3, sound="ʧ"), None, 11, "; for more: no --sound"),
        (Query(3, endings=frozenset({"ies"})), None, 5, "; for more: no --ending"),
        (Query(1, sound="ʧ"), None, 2, "; for more: --band 2"),
    ],
)
def test_a_short_set_names_the_first_thing_that_gives_more(
    lexicon: Lexicon, query: Query, level: Level | None, got: int, loosen: str
) -> None:
    found = made(lexicon, "delete", query, count=200, level=level)
    assert len(found.items) == got
    holds = "item holds" if got == 1 else "items hold"
    assert found.notes == (f"only {got} of 200 {holds} under these constraints{loosen}",)
    assert (found.task, found.at, found.query) == ("delete", Position.FIRST, query)
    assert (found.wanted, found.seed, found.review) == (200, 1, ())


def test_nothing_to_loosen_is_left_unsaid(lexicon: Lexicon) -> None:
    found = made(lexicon, "reverse", Query(3))
    count = len(found.items)
    assert 0 < count < 500
    assert found.notes == (f"only {count} of 500 items hold under these constraints",)


def test_words_rest_for_so_many_sets_and_come_back_for_review(lexicon: Lexicon) -> None:
    query = Query(3, words=TWO)
    resting = made(lexicon, "delete", query, count=2, history=parse_history("a: stop"))
    assert [item.stimulus for item in resting.items] == ["train"]
    assert resting.notes[0].endswith("; for more: a smaller --rest")
    rested = parse_history("a: train\nb: gull\nc: crab\n", rest=2)
    back = made(lexicon, "delete", query, count=2, history=rested)
    assert (len(back.items), back.notes, back.review) == (2, (), ("train",))
    assert back.words >= {"stop", "top", "train", "rain"}


def test_the_file_of_a_series_is_read_and_written() -> None:
    text = "# ours\na: b, C\n\nfoo bar # not this\n"
    history = parse_history(text, rest=1)
    assert history.sets == (frozenset({"b", "c"}), frozenset({"foo", "bar"}))
    assert history.resting == {"foo", "bar"}
    assert parse_history(text, rest=2).resting == {"b", "c", "foo", "bar"}
    assert parse_history(text, rest=0).resting == frozenset()
    assert parse_history("".join(f"d: w{day}\n" for day in range(9))).resting == {
        f"w{day}" for day in range(9 - NO_HISTORY.rest, 9)
    }
    assert history.back(["zz", "foo", "b"]) == ("b", "foo")
    assert history.with_set("x", ["r", "q"]) == text + "x: q r\n"
    first = "# phonodrill series: one line a set, the newest last\n"
    assert NO_HISTORY.with_set("d", ["b", "a"]) == first + "d: a b\n"


def test_levels_begin_where_they_are_said_to() -> None:
    start = kind_score("delete", Position.FIRST)
    assert level_of("delete", Position.FIRST, start + EASY_UP_TO) is Level.EASY
    assert level_of("delete", Position.FIRST, start + EASY_UP_TO + 0.01) is Level.MIDDLE
    assert level_of("delete", Position.FIRST, start + MIDDLE_UP_TO) is Level.MIDDLE
    assert level_of("delete", Position.FIRST, start + MIDDLE_UP_TO + 0.01) is Level.HARD


def test_which_sounds_are_held_and_which_are_short(lexicon: Lexicon) -> None:
    words = Query(3, words=("mat", "ship", "crab"))
    items = made(lexicon, "segment", words, count=3).items
    assert script.how_to_say(items, Notation.MARKS) == [
        "Hold /m/ /r/ /ă/ /ĭ/ /sh/.",
        "Say /b/ /k/ /p/ /t/ short, with no “uh” after.",
    ]
    assert script.how_to_say([], Notation.IPA) == []
    assert script.title("delete", Position.FIRST) == "Leave off the first sound"
    query = Query(3, words=("wait",))
    (wait,) = make_warmup(lexicon, TASKS["delete"], Position.LAST, query, count=1, seed=1).items
    assert script.answer(wait, Notation.MARKS) == "way (also weigh)"
    assert script.sound_of(wait, Notation.ARPABET) == "T"
    assert script.ask(wait, Notation.IPA) == "Say “wait”. Leave off the last sound, /t/."
