from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from phonodrill import TASKS, Lexicon, Position, Query, make_warmup, select
from phonodrill.overlay import Overlay, Rule, parse_rule, read_overlay, write_overlay


def test_a_file_that_is_not_there_holds_nothing(tmp_path: Path) -> None:
    assert read_overlay(tmp_path / "words.txt") == Overlay({})


def test_lines_that_cannot_be_read_are_named_and_passed_over(tmp_path: Path) -> None:
    path = tmp_path / "words.txt"
    path.write_bytes(b"\xef\xbb\xbfadd ferry 2\r\n# mine\nblock\nadd crab 9\nblock storm\n\xff\n")
    overlay = read_overlay(path)
    assert overlay.rules == {"ferry": Rule("add", "ferry", 2), "storm": Rule("block", "storm")}
    assert overlay.problems == (
        "words.txt, line 3: cannot be read, passed over",
        "words.txt, line 4: cannot be read, passed over",
        "words.txt, line 6: cannot be read, passed over",
    )


@given(st.text(max_size=40))
def test_any_line_is_read_or_refused(text: str) -> None:
    if text.split():
        rule = parse_rule(text)
        assert rule is None or parse_rule(rule.line()) == rule


def test_what_is_written_is_read_again(tmp_path: Path) -> None:
    overlay = Overlay({"ferry": Rule("add", "ferry", 2), "storm": Rule("block", "storm")})
    path = tmp_path / "words.txt"
    path.write_text(write_overlay(overlay))
    assert read_overlay(path) == overlay


def stimuli(lexicon: Lexicon, overlay: Overlay, **query: object) -> set[str]:
    pool = select(lexicon, Query(**query), overlay=overlay)  # type: ignore[arg-type]
    return {entry.word for entry in pool.stimuli()}


def test_an_added_word_is_used_at_once(lexicon: Lexicon) -> None:
    overlay = Overlay({"mortgage": Rule("add", "mortgage", 1), "fiona": Rule("add", "fiona", 1)})
    assert {"mortgage", "fiona"} <= stimuli(lexicon, overlay, band=1)
    assert not {"mortgage", "fiona"} & stimuli(lexicon, Overlay({}), band=3)


def test_an_added_word_may_be_an_answer(lexicon: Lexicon) -> None:
    overlay = Overlay({"lass": Rule("add", "lass", 1)})
    query = Query(words=("glass",))
    made = make_warmup(
        lexicon, TASKS["delete"], Position.FIRST, query, count=1, seed=1, overlay=overlay
    )
    assert [item.answer for item in made.items] == ["lass"]


def test_a_blocked_word_and_what_sounds_like_it_are_never_used(lexicon: Lexicon) -> None:
    overlay = Overlay({"see": Rule("block", "see")})
    assert not {"see", "sea"} & stimuli(lexicon, overlay)
    query = Query(band=3)
    pool = select(lexicon, query, overlay=overlay)
    for at in Position:
        for item in TASKS["delete"].candidates(pool, query, at):
            assert not {"see", "sea"} & {item.stimulus, item.answer, *item.also}


def test_the_gate_holds_for_added_words(lexicon: Lexicon) -> None:
    overlay = Overlay({"hell": Rule("add", "hell", 1)})
    assert "hell" not in stimuli(lexicon, overlay, band=1)


@pytest.mark.parametrize("text", ["add", "add ferry 9", "add two words", "keep ferry", "add 4"])
def test_lines_that_are_no_rule(text: str) -> None:
    assert parse_rule(text) is None
