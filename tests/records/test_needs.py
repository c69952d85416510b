"""What comes next, for whom; who works together; when a word comes back."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from phonodrill import Lexicon
from phonodrill.endings.rules import RULES
from phonodrill.endings.suffix import SOUNDS_OF
from phonodrill.errors import PhonodrillError
from phonodrill.lesson.focus import parse_focus
from phonodrill.records.answer import Kind, Skill
from phonodrill.records.estimate import estimate, weakest
from phonodrill.records.next_focus import choose_next
from phonodrill.records.review import GAPS, next_day, review_words
from phonodrill.records.sharing import share_needs
from phonodrill.records.standing import Standing, Verdict, stand
from phonodrill.records.teachable import focus_of
from phonodrill.tasks.registry import TASKS
from tests.benchmarks.simulate_next import run, run_groups
from tests.records.makers import ADD_S, DELETE, ES, FIRST, IES, SEGMENT, answer, answers


def standings(*rows: tuple[str, Skill, int, int]) -> tuple[Standing, ...]:
    return stand(one for row in rows for one in answers(*row))


def test_the_skill_most_are_short_of_comes_next() -> None:
    (first, *_) = choose_next(
        standings(("A", ES, 2, 10), ("B", ES, 3, 10), ("A", IES, 9, 10), ("B", IES, 6, 10))
    )
    assert (first.focus, first.skill) == ("es", ES)
    assert [one.student for one in first.students] == ["A", "B"]
    assert (first.right, first.asked) == (5, 20)
    assert first.interval.low < 0.25 < first.interval.high


def test_what_comes_before_is_taught_first() -> None:
    (first, *_) = choose_next(standings(("A", DELETE, 1, 10), ("A", SEGMENT, 4, 10)))
    assert (first.focus, first.before) == ("segment", DELETE)
    (first, *_) = choose_next(standings(("A", IES, 1, 10), ("A", ADD_S, 4, 10)))
    assert (first.focus, first.before) == ("s", IES)
    (first, *_) = choose_next(standings(("A", DELETE, 1, 10), ("A", SEGMENT, 20, 20)))
    assert (first.focus, first.before) == ("delete", None)


def test_the_order_of_the_class_is_kept() -> None:
    a_e, sh = Skill(Kind.CORRESPONDENCE, "a_e=ā"), Skill(Kind.CORRESPONDENCE, "sh=sh")
    found = standings(("A", a_e, 1, 10), ("A", sh, 3, 10))
    assert choose_next(found)[0].skill == a_e
    assert choose_next(found, order=("sh=sh", "a_e=ā"))[0].skill == sh


def test_a_handful_of_answers_is_no_need_of_anybody() -> None:
    (only,) = choose_next(standings(("A", ES, 0, 3)))
    assert not only.is_sure
    assert only.unsure == ("A",)


def test_what_is_sure_of_the_group_is_next_though_not_of_each_student() -> None:
    (first,) = choose_next(standings(*((student, ES, 1, 4) for student in "ABCD")))
    assert first.is_sure
    assert (first.verdict, first.students) == (Verdict.NOT_YET, ())
    assert first.likely == ("A", "B", "C", "D")


def test_who_had_all_right_needs_nothing() -> None:
    found = standings(("A", ES, 6, 6), ("B", ES, 1, 8), ("C", ES, 2, 2))
    (first,) = choose_next(found)
    assert [one.student for one in first.students] == ["B"]
    assert first.likely == ()
    assert share_needs(found).free == ("A", "C")


def test_what_is_sure_goes_before_what_is_not() -> None:
    first, second = choose_next(standings(("A", ES, 0, 5), ("A", IES, 5, 12)))
    assert (first.skill, first.is_sure) == (IES, True)
    assert (second.skill, second.is_sure) == (ES, False)


def test_nothing_is_next_where_all_is_there() -> None:
    assert choose_next(standings(("A", ES, 20, 20))) == ()
    assert choose_next(()) == ()
    assert choose_next(standings(("A", FIRST, 0, 20))) == ()


def test_every_teachable_skill_is_a_focus_that_a_lesson_takes(lexicon: Lexicon) -> None:
    skills = [Skill(Kind.TASK, name) for name in TASKS]
    skills += [Skill(Kind.CONDITION, rule.name) for rule in RULES if rule.suffix != "'s"]
    skills += [Skill(Kind.ENDING_SOUND, s) for sounds in SOUNDS_OF.values() for s in sounds]
    foci = {focus_of(skill) for skill in skills} - {""}
    assert foci >= {"s", "es", "ies", "ves", "ed", "ing", "er", "est", "ly", "y", "s,es"}
    for focus in foci:
        assert parse_focus(focus, lexicon).text == focus


def test_few_answers_are_drawn_to_what_is_expected() -> None:
    found = estimate(
        standings(("A", ES, 0, 1), ("B", ES, 9, 10), ("A", IES, 4, 12), ("B", IES, 5, 10))
    )
    # One wrong answer to what all others can is no weakest skill.
    assert weakest(found, "A") == IES
    assert 0 < found["A", ES] < found["B", ES] < 1
    assert weakest(found, "nobody") is None


@settings(max_examples=50, deadline=None)
@given(st.integers(0, 9), st.integers(0, 10))
def test_one_more_right_answer_never_lowers_the_estimate(right: int, other: int) -> None:
    def of(right: int) -> float:
        return estimate(standings(("A", ES, right, 10), ("B", ES, other, 10)))["A", ES]

    assert of(right) < of(right + 1)


def test_students_share_their_needs() -> None:
    found = share_needs(
        standings(
            *((student, ES, 2, 10) for student in "ABC"),
            *((student, IES, 2, 10) for student in "DE"),
            ("F", DELETE, 2, 10),
            ("G", ES, 20, 20),
        )
    )
    assert [(team.focus, team.students) for team in found.teams] == [
        ("es", ("A", "B", "C")),
        ("ies", ("D", "E")),
    ]
    assert [(team.focus, team.students) for team in found.alone] == [("delete", ("F",))]
    assert found.free == ("G",)


@settings(max_examples=50, deadline=None)
@given(st.lists(st.tuples(st.integers(0, 10), st.integers(0, 10)), max_size=20))
def test_everybody_is_in_one_team_of_bounded_size(shares: list[tuple[int, int]]) -> None:
    rows = [
        (f"{number:02}", skill, right, 10)
        for number, pair in enumerate(shares)
        for skill, right in zip((ES, IES), pair, strict=True)
    ]
    found = share_needs(standings(*rows), fewest=2, most=4)
    assert all(2 <= len(team.students) <= 4 for team in found.teams)
    placed = [s for team in (*found.teams, *found.alone) for s in team.students] + [*found.free]
    assert sorted(placed) == sorted({row[0] for row in rows})
    again = share_needs(reversed(standings(*rows)), fewest=2, most=4)
    assert again == found


def test_sizes_that_make_no_team_are_refused() -> None:
    with pytest.raises(PhonodrillError):
        share_needs((), fewest=4, most=3)


@settings(max_examples=50, deadline=None)
@given(st.lists(st.booleans(), min_size=1, max_size=12))
def test_gaps_grow_after_success_and_shrink_after_a_miss(results: list[bool]) -> None:
    start = date(2026, 9, 1)
    days = {(start + timedelta(days=n)).isoformat(): r for n, r in enumerate(results)}
    last = start + timedelta(days=len(results) - 1)

    def gap(after: dict[str, bool], day: date) -> int:
        return (date.fromisoformat(next_day(after)) - day).days

    tomorrow = last + timedelta(days=1)
    now = gap(days, last)
    assert now in GAPS
    assert gap(days | {tomorrow.isoformat(): True}, tomorrow) >= now
    assert gap(days | {tomorrow.isoformat(): False}, tomorrow) == GAPS[0]


def test_missed_words_come_back_the_most_needed_first() -> None:
    listed = [
        answer("A", ES, right=False, date="2026-11-02", word="torches"),
        answer("B", ES, right=False, date="2026-11-02", word="torches"),
        answer("A", ES, right=False, date="2026-11-02", word="patches"),
        answer("A", ES, right=True, date="2026-11-03", word="patches"),
        answer("A", ES, right=True, date="2026-11-02", word="ropes"),
    ]
    assert [due.word for due in review_words(listed, "2026-11-03")] == ["torches"]
    later = review_words(listed, "2026-11-06")
    assert [(due.word, due.students) for due in later] == [("torches", 2), ("patches", 1)]
    assert review_words(listed, "2026-11-02") == ()


@pytest.mark.source("Rasch (1960): the one-parameter logistic model, fitted to what it made itself")
def test_the_estimate_sees_who_was_asked() -> None:
    # Both skills are equally hard; the one was asked of a strong student, the other of a weak
    # one, and all four of what tells the students apart.
    rows = [("A", IES, 18, 20), ("B", IES, 6, 20), ("A", ES, 18, 20), ("B", ADD_S, 6, 20)]
    found = estimate(standings(*rows))
    assert abs(found["A", ES] - found["A", ADD_S]) < 0.12
    assert abs(found["B", ES] - found["B", ADD_S]) < 0.12
    assert found["A", ES] > found["B", ES] + 0.3


SIMULATED = pytest.mark.source("two-parameter logistic model (Birnbaum 1968), simulated")


@SIMULATED
def test_next_finds_a_weakest_skill_oftener_than_the_lowest_share() -> None:
    few, many = run(24, 6, seed=7), run(24, 16, seed=7)
    for hits in (few, many):
        assert hits["ours"].weakest > hits["raw"].weakest > hits["chance"].weakest
        assert hits["ours"].among > hits["raw"].among > hits["chance"].among
    assert many["ours"].weakest > few["ours"].weakest


@SIMULATED
def test_next_is_right_oftener_where_small_groups_were_asked_different_things() -> None:
    hits = run_groups(60, 8, seed=7, parts=3)
    assert hits["ours"].weakest > hits["raw"].weakest > hits["chance"].weakest
    assert hits["ours"].among > hits["raw"].among
