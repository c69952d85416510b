"""The steps a class has been taught: a plain text file, one step a line.

    s                 the letter with its usual sound
    c=s               with the sound that is written, in marks, IPA or ARPAbet
    sh, ch            several in one step
    a_e               a split vowel
    -es               an ending
    word: said was    words taught whole
    # a comment

A line that cannot be read is passed over and reported with its number.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from phonodrill.errors import PhonodrillError
from phonodrill.lexicon.entry import Counted
from phonodrill.taught.known import WHOLE, Known
from phonodrill.taught.tokens import (
    SPELLED_ENDINGS,
    always_open,
    companions,
    ending_codes,
    read_token,
)

LONGEST_LINE = 500
"""Signs of a line; a step is one thing to teach, or a few."""


class Step(NamedTuple):
    """One line of the file.

    Attributes:
        number: line number, from 1.
        text: the line, without its comment.
        named: the correspondences it names.
        opens: codes of these and of what comes with them.
        endings: spelled endings it names.
        words: words it teaches whole.
    """

    number: int
    text: str
    named: tuple[Counted, ...] = ()
    opens: frozenset[str] = frozenset()
    endings: frozenset[str] = frozenset()
    words: tuple[str, ...] = ()

    @property
    def things(self) -> frozenset[str]:
        """All that it teaches: codes, endings as ``-ing``, words as ``word:said``."""
        endings = (f"-{ending}" for ending in self.endings)
        return self.opens.union(endings, (WHOLE + word for word in self.words))


class Taught(NamedTuple):
    """A taught file.

    Attributes:
        steps: in the order in which they are taught.
        open: codes that need no teaching.
        ending_codes: codes of all endings.
        problems: one line each on what could not be read.
    """

    steps: tuple[Step, ...]
    open: frozenset[str] = frozenset()
    ending_codes: frozenset[str] = frozenset()
    problems: tuple[str, ...] = ()

    def known(self, steps: int | None = None) -> Known:
        """Return what is known after so many steps, by default all."""
        done = self.steps[:steps]
        return Known(self.open.union(*(step.things for step in done)), self.ending_codes)


def parse_steps(lines: Iterable[str], inventory: Sequence[Counted]) -> Taught:
    """Read the lines of a taught file.

    Args:
        lines: the file's lines.
        inventory: ``Lexicon.correspondences()``.
    """
    steps: list[Step] = []
    problems: list[str] = []
    for number, line in enumerate(lines, 1):
        text = line.partition("#")[0].strip().replace("’", "'")
        if not text:
            continue
        if len(text) > LONGEST_LINE:
            problems.append(f"line {number} passed over: longer than {LONGEST_LINE} signs")
            continue
        try:
            steps.append(parse_step(number, text, inventory))
        except PhonodrillError as error:
            problems.append(f"line {number} passed over: {error.message}; {error.hint}")
    return Taught(tuple(steps), always_open(inventory), ending_codes(inventory), tuple(problems))


def parse_step(number: int, text: str, inventory: Sequence[Counted]) -> Step:
    """Read one line.

    Raises:
        PhonodrillError: if it names no correspondence, ending or word.
    """
    if text.lower().startswith(WHOLE):
        words = tuple(text[len(WHOLE) :].lower().replace(",", " ").split())
        if not words or not all(word.replace("'", "").isalpha() for word in words):
            raise PhonodrillError(f"no word in {text!r}", "word: said")
        return Step(number, text, words=words)
    tokens = text.replace(",", " ").split()
    named = [row for token in tokens for row in read_token(token, inventory)]
    endings = (token[1:].lower().partition("=")[0] for token in tokens if token.startswith("-"))
    return Step(
        number,
        text,
        tuple(named),
        frozenset[str]().union(*(companions(row, inventory) for row in named)),
        frozenset(ending for ending in endings if ending in SPELLED_ENDINGS),
    )
