"""Sets of a series: words rest, then come back for review."""

from __future__ import annotations

from phonodrill import TASKS, Lexicon, Position, Query, make_warmup
from phonodrill.tasks.history import FIRST_LINE, NO_HISTORY, parse_history


def test_words_rest_for_so_many_sets() -> None:
    text = "2026-11-23 delete first: stop top\n2026-11-24 add last: crab, crabs\ngull\n"
    assert parse_history(text, rest=1).resting == {"gull"}
    assert parse_history(text, rest=2).resting == {"gull", "crab", "crabs"}
    assert parse_history(text, rest=9).resting == {"gull", "crab", "crabs", "stop", "top"}
    assert parse_history(text, rest=0).resting == frozenset()
    assert parse_history(text).back(["top", "harbor"]) == ("top",)


def test_a_series_is_read_back_as_it_was_written() -> None:
    text = NO_HISTORY.with_set("2026-11-25 delete first", {"top", "stop"})
    assert text == f"{FIRST_LINE}\n2026-11-25 delete first: stop top\n"
    again = parse_history(text).with_set("2026-11-26 blend each", {"crab"})
    assert again.startswith(text)
    assert parse_history(again).sets == (frozenset({"stop", "top"}), frozenset({"crab"}))


def test_a_teachers_own_lines_are_kept() -> None:
    text = "# ours\n\nstop top\n"
    assert parse_history(text).with_set("day", {"crab"}) == "# ours\n\nstop top\nday: crab\n"


def test_no_word_comes_again_while_it_rests(lexicon: Lexicon) -> None:
    history = NO_HISTORY
    seen: list[frozenset[str]] = []
    for seed in range(8):
        made = make_warmup(
            lexicon,
            TASKS["delete"],
            Position.LAST,
            Query(band=1),
            count=8,
            seed=seed,
            history=history._replace(rest=3),
        )
        for earlier in seen[-3:]:
            assert not made.words & earlier
        before = frozenset().union(*seen) if seen else frozenset()
        assert set(made.review) == made.words & before
        seen.append(made.words)
        history = parse_history(history.with_set(f"set {seed}", made.words), rest=3)


def test_a_set_that_falls_short_says_why(lexicon: Lexicon) -> None:
    every = frozenset(entry.word for entry in lexicon.entries(highest_band=3))
    history = parse_history(" ".join(sorted(every)))
    made = make_warmup(
        lexicon, TASKS["delete"], Position.FIRST, Query(band=3), count=8, seed=1, history=history
    )
    assert not made.items
    assert "--rest" in made.notes[0]
