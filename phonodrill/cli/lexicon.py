"""``phonodrill lexicon``: where the words come from."""

from __future__ import annotations

from typing import Annotated

import typer

from phonodrill.cli import options
from phonodrill.cli.deliver import deliver
from phonodrill.lexicon.store import Lexicon
from phonodrill.render.document import Table
from phonodrill.render.views import lexicon as view

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
        counts = {
            "words": lexicon.count("word"),
            "pronunciations": lexicon.count("pronunciation"),
            "words of band 1": lexicon.count("word", "band = 1"),
            "words of band 2": lexicon.count("word", "band = 2"),
            "words of band 3": lexicon.count("word", "band = 3"),
            "heteronyms": lexicon.count("word", "is_heteronym"),
            "confirmed by the second dictionary": lexicon.count(
                "pronunciation", "second_opinion = 'confirmed'"
            ),
            "contradicted by it": lexicon.count("pronunciation", "second_opinion = 'contradicted'"),
            "mended": lexicon.count("pronunciation", "origin = 'mended'"),
            "built from base + ending": lexicon.count("pronunciation", "origin = 'base + ending'"),
            "never said": lexicon.count("never_say"),
            "forms that are not base + ending": lexicon.count("disagreement"),
        }
        rows = tuple(lexicon.disagreements()) if disagreements else ()
        sources = lexicon.sources()
    checks = Table(("word", "base", "expected", "found"), rows)
    deliver(view.document(sources, counts, checks), format_, out)
