"""``phonodrill chain``: words that change one sound at a time."""

from __future__ import annotations

from typing import Annotated

import typer

from phonodrill.cli import options
from phonodrill.cli.deliver import deliver
from phonodrill.cli.own_words import own_words
from phonodrill.cli.report import report
from phonodrill.lexicon.store import Lexicon
from phonodrill.selection import Query
from phonodrill.services import chain as service
from phonodrill.services.chain import HIGHEST_STEPS, USUAL_STEPS
from phonodrill.sounds.accents import parse_accents

app = typer.Typer(add_completion=False, rich_markup_mode=None)


@app.command()
def chain(
    start: Annotated[str, typer.Argument(help="The word to start from.")],
    end: Annotated[str, typer.Argument(help="The word to come to; none for a varied chain.")] = "",
    steps: Annotated[
        int,
        typer.Option("--steps", min=1, max=HIGHEST_STEPS, help="How many, without END."),
    ] = USUAL_STEPS,
    accent: options.AccentOption = "",
    taught: options.TaughtOption = None,
    band: options.BandOption = 2,
    seed: options.SeedOption = None,
    notation: options.NotationOption = None,
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """Make a word chain: each step changes one sound and is a familiar word.

    With END the shortest chain, else one of so many steps whose place of change varies.
    """
    query = Query(band=band, accents=parse_accents(accent))
    with Lexicon() as lexicon:
        query = query._replace(known=options.known_from(taught, lexicon))
        made = service.chain(
            lexicon,
            query,
            start,
            end,
            steps=steps,
            seed=options.seed_or_new(seed),
            overlay=own_words(),
            notation=notation,
        )
    report(made.notes)
    deliver(made.document, format_, out)
