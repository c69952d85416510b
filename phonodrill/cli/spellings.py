"""``phonodrill spellings``: how a sound is spelled, or a spelling said."""

from __future__ import annotations

from typing import Annotated

import typer

from phonodrill.cli import options
from phonodrill.cli.deliver import deliver
from phonodrill.cli.own_words import own_words
from phonodrill.lexicon.store import Lexicon
from phonodrill.services import spellings as service

app = typer.Typer(add_completion=False, rich_markup_mode=None)


@app.command()
def spellings(
    sound: Annotated[str, typer.Argument(help="A sound: /f/, sh, ā, ER, or ə.")] = "",
    spelling: Annotated[
        str, typer.Option("--spelling", help="Ask the reverse: how these letters are said.")
    ] = "",
    one_syllable: Annotated[
        bool, typer.Option("--one-syllable", help="Count only words of one syllable.")
    ] = False,
    band: options.BandOption = 3,
    notation: options.NotationOption = None,
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """Show every spelling of a sound, with its share of words and of running text.

    Without a sound, all sounds.
    """
    with Lexicon() as lexicon:
        made = service.spellings(
            lexicon,
            sound,
            spelling,
            band=band,
            one_syllable=one_syllable,
            overlay=own_words(),
            notation=notation,
        )
    deliver(made.document, format_, out)
