"""``phonodrill chain``: words that change one sound at a time."""

from __future__ import annotations

from typing import Annotated

import typer

from phonodrill.cli import options
from phonodrill.cli.deliver import deliver
from phonodrill.cli.own_words import own_words
from phonodrill.cli.report import report
from phonodrill.errors import PhonodrillError
from phonodrill.lexicon.store import Lexicon
from phonodrill.render.views import chain as view
from phonodrill.selection import Query, nearest_words, select
from phonodrill.sounds.accents import parse_accents
from phonodrill.tasks.chain import shortest_chain, varied_chain

HIGHEST_STEPS = 60
app = typer.Typer(add_completion=False, rich_markup_mode=None)


@app.command()
def chain(
    start: Annotated[str, typer.Argument(help="The word to start from.")],
    end: Annotated[str, typer.Argument(help="The word to come to; none for a varied chain.")] = "",
    steps: Annotated[
        int,
        typer.Option("--steps", min=1, max=HIGHEST_STEPS, help="How many, without END."),
    ] = 8,
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
        pool = select(lexicon, query, overlay=own_words())
        for word in filter(None, (start, end)):
            if lexicon.get(word.strip()) is None:
                near = nearest_words(lexicon, word)
                raise PhonodrillError(
                    f"{word!r} is not in the lexicon",
                    f"phonodrill chain {near[0]}" if near else "check the spelling",
                )
        first, last = start.strip().lower(), end.strip().lower()
        if last:
            result = shortest_chain(pool, query, first, last)
        else:
            result = varied_chain(pool, query, first, steps, seed=options.seed_or_new(seed))
    report(list(result.notes))
    deliver(view.document(result, notation), format_, out)
