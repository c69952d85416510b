from __future__ import annotations

from phonodrill.lexicon.store import Lexicon
from phonodrill.records.report import see_progress
from phonodrill.render.views.progress import progress
from tests.records.makers import DELETE, ES, answers

FIRST, SECOND, THIRD = "2026-11-02", "2026-11-09", "2026-11-16"


def test_what_was_not_asked_yet_is_not_drawn_as_nothing_right(lexicon: Lexicon) -> None:
    found = see_progress(
        [
            *answers("A", ES, 6, 8, FIRST),
            *answers("A", DELETE, 2, 4, THIRD),
            *answers("B", DELETE, 0, 8, SECOND),
        ],
        lexicon,
        group="harbor-2",
        student="A",
        today=THIRD,
    )
    assert found.growth.dates == (FIRST, THIRD)
    assert found.growth.curves == {"rule: add es": (75, 75), "task: delete": (None, 50)}
    document = progress(found)
    (drawn,) = (part.body for part in document.sections if part.heading == "Growth")
    assert "task: delete 50 → 50" in drawn.plain()  # type: ignore[union-attr]
    assert "<circle" in drawn.svg  # type: ignore[union-attr]
    assert document.data["growth"]["task: delete"] == [None, 50]


def test_the_growth_of_a_group_is_that_of_each_day_by_itself(lexicon: Lexicon) -> None:
    """Counted once for all days, it is the same as looking back from each day."""
    all_days = [
        *answers("A", ES, 8, 8, FIRST),
        *answers("B", ES, 1, 8, FIRST),
        *answers("B", ES, 20, 20, SECOND),
        *answers("A", DELETE, 0, 8, THIRD),
    ]
    found = see_progress(all_days, lexicon, group="harbor-2", today=THIRD)
    for place, day in enumerate(found.growth.dates):
        known = [one for one in all_days if one.date <= day]
        then = see_progress(known, lexicon, group="harbor-2", today=day)
        for verdict, counts in found.growth.curves.items():
            standings = [str(one.verdict) for one in then.standings]
            assert counts[place] == standings.count(verdict), (day, verdict)
