"""``phonodrill word``: all that is known of a word."""

from __future__ import annotations

import os
from typing import Annotated

import typer

from phonodrill.cli import options
from phonodrill.cli.deliver import deliver
from phonodrill.cli.own_words import own_words
from phonodrill.lexicon.store import Lexicon
from phonodrill.services import word as service

app = typer.Typer(add_completion=False, rich_markup_mode=None)


@app.command()
def word(
    word: Annotated[str, typer.Argument(help="The word to look up.")],
    band: options.BandOption = 2,
    notation: options.NotationOption = None,
    guess: Annotated[
        bool, typer.Option("--guess", help="Guess the sounds of a word that the lexicon lacks.")
    ] = False,
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """Show all that is known of a word; --band limits the rhymes."""
    # In a locale without UTF-8, Python hands over the bytes of an accented letter as surrogates.
    word = os.fsencode(word).decode("utf-8", "replace")
    with Lexicon() as lexicon:
        made = service.word(
            lexicon, word, band=band, guess=guess, overlay=own_words(), notation=notation
        )
    deliver(made.document, format_, out)
