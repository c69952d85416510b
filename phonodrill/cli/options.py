"""Options that several commands share, and how their values are read."""

from __future__ import annotations

import random
from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Optional

import typer

from phonodrill.cli.report import report
from phonodrill.errors import PhonodrillError
from phonodrill.lexicon.store import Lexicon
from phonodrill.sounds.notation import Notation

if TYPE_CHECKING:
    from phonodrill.overlay import Overlay
    from phonodrill.taught.known import Known

HIGHEST_COUNT = 200


class Format(StrEnum):
    """How the result is written."""

    TEXT = "text"
    MARKDOWN = "md"
    CSV = "csv"
    JSON = "json"
    HTML = "html"


FormatOption = Annotated[
    Optional[Format],
    typer.Option("--format", help="How to write it; by default from --out's ending, else text."),
]
OutOption = Annotated[
    Optional[Path], typer.Option("--out", help="File to write instead of the screen.")
]
SeedOption = Annotated[
    Optional[int], typer.Option("--seed", min=0, help="Make the same choice again.")
]
BandOption = Annotated[
    int, typer.Option("--band", min=1, max=3, help="Highest band of words used.")
]
NotationOption = Annotated[
    Optional[Notation],
    typer.Option("--notation", help="How sounds are written; marks in text, IPA in data."),
]
AccentOption = Annotated[
    str,
    typer.Option(
        "--accent",
        help="Mergers your class is known to have: cot-caught,pin-pen,...; or: dictionary. "
        "By default an item is right in every accent.",
    ),
]
WordsOption = Annotated[Optional[Path], typer.Option("--words", help="Your own words, one a line.")]
TaughtOption = Annotated[
    Optional[Path],
    typer.Option(
        "--taught", help="What the class was taught, a step a line: s, sh, a_e, -es; or: default."
    ),
]
CountOption = Annotated[int, typer.Option("--count", help="How many, 1 to 200.")]


def known_from(taught: Path | None, lexicon: Lexicon) -> Known | None:
    """Return what a taught file says is known, or None without one."""
    if taught is None:
        return None
    from phonodrill.cli.taught_file import read_taught

    return read_taught(taught, lexicon).known()


def seed_or_new(seed: int | None) -> int:
    """Return the seed asked for, or a new one."""
    return random.SystemRandom().randrange(1_000_000) if seed is None else seed


def check_count(count: int) -> int:
    """Return the count if it can be met.

    Raises:
        PhonodrillError: if it is not from 1 to 200.
    """
    if not 1 <= count <= HIGHEST_COUNT:
        raise PhonodrillError(
            f"--count is {count}", f"a number from 1 to {HIGHEST_COUNT}: --count 8"
        )
    return count


def usable_words(lexicon: Lexicon, path: Path, overlay: Overlay) -> tuple[str, ...]:
    """Read a teacher's own words, and report those that cannot be used.

    Args:
        lexicon: the open lexicon.
        path: a text file, one word a line.
        overlay: words the teacher added or blocked.

    Raises:
        PhonodrillError: if no word of the file can be used.
    """
    from phonodrill.cli.words_file import read_words
    from phonodrill.services import word_list

    usable, problems = word_list.usable_words(lexicon, read_words(path), overlay, name=str(path))
    report(problems)
    return usable
