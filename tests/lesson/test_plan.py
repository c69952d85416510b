from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from phonodrill import PhonodrillError
from phonodrill.lesson import plan
from phonodrill.lesson.focus import Kind
from phonodrill.lesson.plan import SLOTS, plan_lesson


@given(st.integers(plan.FEWEST_MINUTES, plan.MOST_MINUTES), st.sampled_from(list(Kind)))
def test_the_sections_fit_the_minutes(minutes: int, kind: Kind) -> None:
    parts = plan_lesson(minutes, kind)
    names = [part.name for part in parts]
    assert names == [name for name in plan.SECTIONS if name in names]
    most = sum(SLOTS[name].most for name in names if name in SLOTS)
    assert sum(part.minutes for part in parts) in (minutes, min(minutes, most))
    for part in parts[:-1]:
        slot = SLOTS[part.name]
        assert slot.fewest <= part.minutes <= slot.most
        assert part.items >= slot.fewest_items
    assert names[-1] == plan.NEXT
    assert (plan.BASES in names) <= (kind is Kind.ENDINGS)


def test_a_longer_lesson_has_no_section_less() -> None:
    for kind in Kind:
        before: set[str] = set()
        for minutes in range(plan.FEWEST_MINUTES, plan.MOST_MINUTES + 1):
            names = {part.name for part in plan_lesson(minutes, kind)}
            assert len(names) >= len(before) - 1
            before = names
        assert before == {*plan.SECTIONS} - ({plan.BASES} if kind is not Kind.ENDINGS else set())


@pytest.mark.parametrize("minutes", [-1, 0, 7, 61])
def test_minutes_that_no_lesson_has(minutes: int) -> None:
    with pytest.raises(PhonodrillError, match=f"--minutes is {minutes}"):
        plan_lesson(minutes, Kind.ENDINGS)
