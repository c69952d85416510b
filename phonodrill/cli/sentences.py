"""``phonodrill sentences``: short sentences with a word."""

from __future__ import annotations

from typing import Annotated

import typer

from phonodrill.cli import options
from phonodrill.cli.deliver import deliver
from phonodrill.cli.own_words import own_words
from phonodrill.lexicon.store import Lexicon
from phonodrill.services import sentences as service

app = typer.Typer(add_completion=False, rich_markup_mode=None)


@app.command()
def sentences(
    word: Annotated[str, typer.Argument(help="The word, in the form wanted: ferries.")],
    cloze: Annotated[bool, typer.Option("--cloze", help="Leave a gap for the word.")] = False,
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """Print short sentences with a word, or with a gap for it."""
    with Lexicon() as lexicon:
        made = service.sentences(lexicon, word, cloze=cloze, overlay=own_words())
    deliver(made.document, format_, out)
