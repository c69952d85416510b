"""``phonodrill lexicon``: where the words come from."""

from __future__ import annotations

from typing import Annotated

import typer

from phonodrill.cli import options
from phonodrill.cli.deliver import deliver
from phonodrill.lexicon.store import Lexicon
from phonodrill.render.views import lexicon as view
from phonodrill.services.lexicon import count_words

app = typer.Typer(add_completion=False, rich_markup_mode=None)


@app.command()
def lexicon(
    disagreements: Annotated[
        bool,
        typer.Option("--disagreements", help="List forms that are not base + ending."),
    ] = False,
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """Show sources, versions, licenses and counts."""
    with Lexicon() as lexicon:
        counts = count_words(lexicon)
        rows = tuple(lexicon.disagreements()) if disagreements else ()
        sources = lexicon.sources()
    deliver(view.document(sources, counts, rows), format_, out)
