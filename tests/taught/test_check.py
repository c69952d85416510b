from __future__ import annotations

from phonodrill import Lexicon
from phonodrill.reading.material import whole_targets
from phonodrill.taught.check import Checked, check_steps, leave_out_unfit
from phonodrill.taught.steps import parse_steps
from phonodrill.taught.suggest import Material


def check(lexicon: Lexicon, material: Material, *lines: str) -> list[Checked]:
    taught = parse_steps(lines, material.inventory)
    whole = whole_targets(lexicon, [word for step in taught.steps for word in step.words])
    return check_steps(taught, material.words, whole, material.inventory)


def test_steps_say_what_they_open(lexicon: Lexicon, material: Material) -> None:
    first, second, third = check(lexicon, material, "a", "t, p", "c = k".replace(" ", ""))
    assert (first.understood, first.opens, first.total) == (("a /ă/",), (), 0)
    assert second.understood == ("t /t/", "p /p/")
    assert set(second.opens) >= {"at", "tap", "pat"}
    assert set(third.opens) >= {"cat", "cap", "act"}
    assert third.total == len(second.opens) + len(third.opens)


def test_sounds_are_named_as_they_were_understood(lexicon: Lexicon, material: Material) -> None:
    steps = check(lexicon, material, "c=s", "y", "y=ē", "-ed", "-ing", "word: said")
    assert [step.understood for step in steps] == [
        ("c /s/",),
        ("y /y/",),
        ("y /ē/",),
        ("-ed /d/", "-ed /t/", "-ed /ə d/"),
        ("-ing",),
        ("said, taught whole",),
    ]


def test_what_is_used_before_it_is_taught(lexicon: Lexicon, material: Material) -> None:
    steps = check(lexicon, material, "s", "sh", "a_e", "h", "-es", "ss", "mm", "s", "qu")
    notes = [step.notes for step in steps]
    assert notes[1] == ("sh before its letters: h (step 4)",)
    assert notes[2] == ("a_e before its letters: a (not taught), e (not taught)",)
    assert notes[4] == ("-es before its letters: e (not taught)",)
    assert notes[5] == ()
    assert notes[6] == ("mm before its letters: m (not taught)",)
    assert notes[7] == ("taught already in step 1",)
    assert notes[8] == ("qu before its letters: u (not taught)",)


def test_whole_words_that_letters_would_open(lexicon: Lexicon, material: Material) -> None:
    steps = check(lexicon, material, "a", "word: at said blorf", "t", "word: at")
    assert steps[1].notes == (
        "at could be read by its letters from step 3 on",
        "blorf is not in the lexicon",
    )
    assert "at can be read already" in steps[3].notes


def test_unfit_words_are_left_out_with_their_lines(material: Material) -> None:
    taught = parse_steps(["s", "word: was bad", "word: bad"], material.inventory)
    left = leave_out_unfit(taught, lambda word: word != "bad")
    assert [step.text for step in left.steps] == ["s", "word: was"]
    assert [problem.partition(":")[0] for problem in left.problems] == ["line 2", "line 3"]
