from __future__ import annotations

from collections.abc import Callable

import pytest

from phonodrill.lexicon.entry import Spelled
from phonodrill.lexicon.store import Lexicon
from phonodrill.selection import spelled_of
from phonodrill.taught.steps import Taught, parse_steps

Read = Callable[[str, str], bool]


def taught(lexicon: Lexicon, text: str) -> Taught:
    return parse_steps(text.replace("; ", "\n").splitlines(), lexicon.correspondences())


def spelled(lexicon: Lexicon, word: str) -> Spelled:
    entry = lexicon.get(word)
    assert entry
    return spelled_of(entry)


@pytest.mark.parametrize(
    ("word", "steps", "can_read"),
    [
        # Every correspondence must be taught, not every letter.
        ("ship", "s h i p", False),
        ("ship", "sh i p", True),
        ("cape", "c a p e", False),
        ("cape", "c a_e p", True),
        ("city", "c i t y=ē", False),
        ("city", "c=s i t y=ē", True),
        # Words that look like a pattern and are not.
        ("have", "h a_e v", False),
        ("have", "h a ve", True),
        ("has", "h a s", False),
        ("has", "h a s=z", True),
        ("of", "o f", False),
        ("said", "s ai d", False),
        ("said", "word: said", True),
        ("come", "c o_e m", False),
        # The ending must be taught as an ending.
        ("cats", "c a t s", False),
        ("cats", "c a t -s", True),
        ("bus", "b u s", True),
        ("dishes", "d i sh -s", False),
        ("dishes", "d i sh -es", True),
        ("jumped", "j u m p -ed", True),
        ("jumped", "j u m p -ed=d", False),
        ("jumping", "j u m p i ng", False),
        ("jumping", "j u m p i ng -ing", True),
        # Base and ending are enough.
        ("hoping", "h o_e p i ng -ing", True),
        ("hopped", "h o p -ed", True),
        ("berries", "b e rr y=ē -ies", True),
        ("friends", "word: friend; -s", True),
        ("friends", "word: friend", False),
        # A weak vowel comes with its spelling; an r-vowel does not come with its letters.
        ("lemon", "l e m o n", True),
        ("carrot", "c a rr o t", True),
        ("torch", "t o r ch", False),
        ("torch", "t or ch", True),
    ],
)
def test_what_can_be_read(lexicon: Lexicon, word: str, steps: str, can_read: bool) -> None:
    found = taught(lexicon, steps)
    assert not found.problems
    known = found.known()
    assert known.reads(spelled(lexicon, word), lexicon.chunks_of) is can_read


def test_lines_that_cannot_be_read_are_named(lexicon: Lexicon) -> None:
    found = taught(lexicon, "s\n\n# note\nzz q9\nword:\nsh  # a digraph\nword: said, was")
    assert [step.number for step in found.steps] == [1, 6, 7]
    assert found.steps[-1].words == ("said", "was")
    assert [problem.split(" passed")[0] for problem in found.problems] == ["line 4", "line 5"]


def test_what_is_known_grows_step_by_step(lexicon: Lexicon) -> None:
    found = taught(lexicon, "s; a; t; -s")
    sat = spelled(lexicon, "sat")
    reads = [found.known(n).reads(sat, lexicon.chunks_of) for n in range(5)]
    assert reads == [False, False, False, True, True]
    assert "-s" in found.known().things
    lacks = found.known(1).lacks(sat, lexicon.chunks_of)
    assert len(lacks) == 2


def test_an_irregular_part_is_named(lexicon: Lexicon) -> None:
    known = taught(lexicon, "b o l g n a").known()
    assert "?" in known.lacks(spelled(lexicon, "karaoke"), lexicon.chunks_of)
