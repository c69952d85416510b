from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from phonodrill.gate import open_gate
from phonodrill.guess import guess_reading
from phonodrill.lexicon.store import Lexicon
from phonodrill.reading.passage import Sort, split_passage
from phonodrill.reading.passage_check import Report, Status, Verdict, check_passage
from phonodrill.taught.steps import parse_steps

STEPS = "s a t p i n; c=k h m d g o u l f b; ll ff; -s; word: said, was; th=/ð/; e; sh"
TEXT = """The gull's nest is on a cliff. "Look at that!" said A.
It's 10:30; 2 big ships and the well-fed crabs sat."""


def check(lexicon: Lexicon, text: str, steps: str = STEPS) -> Report:
    known = parse_steps(steps.split("; "), lexicon.correspondences()).known()
    pieces = split_passage(text)
    return check_passage(pieces, lexicon, open_gate(lexicon), known, lambda _: None)


@given(st.text(max_size=60))
def test_the_pieces_are_the_passage(text: str) -> None:
    pieces = list(split_passage(text))
    assert "".join(piece.text for piece in pieces) == text
    assert all(bool(piece.word) is (piece.sort is Sort.WORD) for piece in pieces)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("'Run!' Don’t stop", ["run", "don't", "stop"]),
        ("the gulls' nests", ["the", "gulls'", "nests"]),
        ("a well-known 3rd 1,000 ship", ["a", "well", "known", "ship"]),
        ("“Café” — naïve…", ["café", "naïve"]),
        ("", []),
    ],
)
def test_words_of_a_passage(text: str, words: list[str]) -> None:
    assert [piece.word for piece in split_passage(text) if piece.word] == words


def test_each_word_has_its_status(lexicon: Lexicon) -> None:
    report = check(lexicon, TEXT)
    status = {word: verdict.status for word, verdict in report.verdicts.items()}
    assert status["the"] is status["gull's"] is status["sat"] is Status.DECODABLE
    assert status["said"] is Status.WHOLE
    assert status["look"] is Status.NOT_YET
    assert status["is"] is Status.NOT_YET
    assert status["crabs"] is Status.NOT_YET
    assert report.numbers == 2
    assert report.total() == 21
    statuses = (Status.DECODABLE, Status.WHOLE, Status.NOT_YET)
    assert sum(map(report.total, statuses)) == report.total()
    assert report.share == pytest.approx(
        (report.total(Status.DECODABLE) + report.total(Status.WHOLE)) / 21
    )


def test_the_next_step_is_the_one_that_opens_most(lexicon: Lexicon) -> None:
    report = check(lexicon, "ran rat run is", "s a t i n u")
    by_code = {row.code: row.correspondence for row in lexicon.correspondences()}
    assert by_code[report.next_step].spelling == "r"
    assert report.next_words == 3
    after = check(lexicon, "ran rat run is", "s a t i n u r")
    assert after.total(Status.DECODABLE) == 3


def test_an_unfit_word_is_never_named(lexicon: Lexicon) -> None:
    unfit = next(word for word, _, _, blocks in lexicon.never_say() if blocks == "sound")
    report = check(lexicon, f"the {unfit} sat")
    assert report.verdicts[unfit].status is Status.UNFIT


def test_the_better_reading_of_a_heteronym_counts(lexicon: Lexicon) -> None:
    assert check(lexicon, "read", "r ea d").verdicts["read"].status is Status.DECODABLE
    assert check(lexicon, "read", "r ea=ĕ d").verdicts["read"].status is Status.DECODABLE


def test_a_possessive_needs_its_owner_and_s(lexicon: Lexicon) -> None:
    steps = "g u ll l c a t"
    assert check(lexicon, "cat's", steps).verdicts["cat's"].lacks == {"-s"}
    done = check(lexicon, "cat's", f"{steps}; -s")
    assert done.verdicts["cat's"].status is Status.DECODABLE


def test_an_unknown_word_is_a_guess(lexicon: Lexicon) -> None:
    known = parse_steps(STEPS.split("; "), lexicon.correspondences()).known()
    gate = open_gate(lexicon)

    def verdict(word: str) -> Verdict:
        pieces = split_passage(word)
        report = check_passage(pieces, lexicon, gate, known, lambda w: guess_reading(w, lexicon))
        return report.verdicts[word]

    snib = verdict("snib")
    assert (snib.is_guess, snib.status) == (True, Status.DECODABLE)
    assert snib.said
    assert snib.said.sounds == "snɪb"
    assert verdict("zorbin").status is Status.NOT_YET
    assert verdict("shitt").status is Status.UNFIT
    no_guess = check(lexicon, "zorbin").verdicts["zorbin"]
    assert no_guess.is_guess
    assert no_guess.lacks == {"?"}


@pytest.mark.parametrize("text", ["The gulls’ rope\tsee ", "gull", "12:30 ", "x"])
def test_a_long_passage_is_split_as_a_short_one(text: str) -> None:
    """It is split in blocks; none of them ends inside of a word that could be one."""
    times = 60_000 // len(text)
    pieces = list(split_passage(text * times))
    assert "".join(piece.text for piece in pieces) == text * times
    if " " in text:
        assert pieces == list(split_passage(text)) * times
