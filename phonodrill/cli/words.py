"""``phonodrill words``: a teacher's own words."""

from __future__ import annotations

from typing import Annotated

import typer

from phonodrill.cli import options
from phonodrill.cli.deliver import deliver
from phonodrill.cli.own_words import own_words, own_words_path
from phonodrill.errors import one_line
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import change_overlay
from phonodrill.render.views import words as view
from phonodrill.services.own_words import add_words, block_words, remove_words

app = typer.Typer(add_completion=False, rich_markup_mode=None)
WordsArgument = Annotated[list[str], typer.Argument(help="One word or more.")]


@app.callback(invoke_without_command=True)
def words(context: typer.Context) -> None:
    """Keep your own words: add some, block some. They count at once."""
    if context.invoked_subcommand is None:
        typer.echo(context.get_help())


@app.command("add")
def add(words: WordsArgument, band: options.BandOption = 1) -> None:
    """Use these words as words of a band; a student's name may be added too."""
    with Lexicon() as lexicon:
        change_overlay(own_words_path(), lambda own: add_words(lexicon, own, words, band))
    typer.echo(f"added to band {band}: {_named(words)}")


@app.command("block")
def block(words: WordsArgument) -> None:
    """Never use these words, nor what sounds like them."""
    with Lexicon() as lexicon:
        change_overlay(own_words_path(), lambda own: block_words(lexicon, own, words))
    typer.echo(f"never used from now on: {_named(words)}")


@app.command("remove")
def remove(words: WordsArgument) -> None:
    """Take words out of your lists again."""
    change_overlay(own_words_path(), lambda own: remove_words(own, words))
    typer.echo(f"taken out of your lists: {_named(words)}")


@app.command("list")
def list_words(format_: options.FormatOption = None, out: options.OutOption = None) -> None:
    """Show your words; --out FILE exports them."""
    deliver(view.document(own_words(), str(own_words_path())), format_, out)


def _named(words: list[str]) -> str:
    return one_line(", ".join(word.strip().lower() for word in words))
