"""``phonodrill passage``: how much of a text a class can read."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import Annotated

import typer

from phonodrill.cli import options
from phonodrill.cli.deliver import deliver
from phonodrill.cli.own_words import own_words
from phonodrill.cli.taught_file import read_taught
from phonodrill.cli.text_file import read_text
from phonodrill.errors import PhonodrillError, UnknownWordError
from phonodrill.gate import open_gate
from phonodrill.graphemes.chunk import ODD_CODE
from phonodrill.guess import Guess, guess_reading
from phonodrill.lexicon.store import Lexicon
from phonodrill.reading.passage import split_passage
from phonodrill.reading.passage_check import check_passage
from phonodrill.render.views import passage as view
from phonodrill.taught.tokens import write_token

HIGHEST_GUESSES = 200
app = typer.Typer(add_completion=False, rich_markup_mode=None)


@app.command()
def passage(
    file: Annotated[Path, typer.Argument(help="A plain text file.")],
    taught: options.TaughtOption = None,
    band: options.BandOption = 2,
    notation: options.NotationOption = None,
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """Check a passage: which words can be read, which were taught whole, which not yet."""
    if taught is None:
        raise PhonodrillError("what has the class been taught?", "--taught FILE, a step a line")
    text = read_text(file)
    with Lexicon() as lexicon:
        known = read_taught(taught, lexicon).known()
        gate = open_gate(lexicon, own_words().words("block"))
        report = check_passage(split_passage(text), lexicon, gate, known, _guesser(lexicon))
        if not report.counts:
            raise PhonodrillError(f"{file} has no word in it", "a plain text file")
        document = view.document(report, _namer(lexicon), band, notation)
    deliver(document, format_, out)


def _guesser(lexicon: Lexicon) -> Callable[[str], Guess | None]:
    """Read unknown words, up to a number: a text of another language would take minutes."""
    read: list[str] = []

    def guess(word: str) -> Guess | None:
        read.append(word)
        if len(read) > HIGHEST_GUESSES:
            return None
        try:
            return guess_reading(word, lexicon)
        except UnknownWordError:
            return None

    return guess


def _namer(lexicon: Lexicon) -> Callable[[str], str]:
    inventory = lexicon.correspondences()
    by_code = {row.code: row for row in inventory}

    @cache
    def name_of(missing: str) -> str:
        if missing == ODD_CODE:
            return "an irregular part"
        return write_token(by_code[missing], inventory) if missing in by_code else missing

    return name_of
