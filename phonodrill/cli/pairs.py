"""``phonodrill pairs``: pairs of words for contrast."""

from __future__ import annotations

from typing import Annotated

import typer

from phonodrill.cli import options
from phonodrill.cli.deliver import deliver
from phonodrill.cli.own_words import own_words
from phonodrill.cli.report import report
from phonodrill.lexicon.store import Lexicon
from phonodrill.reading.pairs import Kind, Place
from phonodrill.services import pairs as service
from phonodrill.services.pairs import Wish

app = typer.Typer(add_completion=False, rich_markup_mode=None)


@app.command()
def pairs(
    kind: Annotated[
        Kind,
        typer.Option("--kind", help="One sound differs, one is left off, or only the spelling."),
    ] = Kind.MINIMAL,
    sounds: Annotated[
        str, typer.Option("--sounds", help="The two sounds of a minimal pair: i:e, sh:ch, p:b.")
    ] = "",
    at: Annotated[Place, typer.Option("--at", help="Where the sound is.")] = Place.ANY,
    taught: options.TaughtOption = None,
    endings: Annotated[
        bool, typer.Option("--endings", help="Also words with -s, -es, -ed, -ing.")
    ] = False,
    band: options.BandOption = 2,
    count: options.CountOption = 12,
    seed: options.SeedOption = None,
    notation: options.NotationOption = None,
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """List pairs of words for contrast, both parts in chunks."""
    count = options.check_count(count)
    with Lexicon() as lexicon:
        known = options.known_from(taught, lexicon)
        wish = Wish(band, count, options.seed_or_new(seed), kind, sounds, at, known, endings)
        made = service.pairs(lexicon, wish, own_words(), notation)
    report(made.notes)
    deliver(made.document, format_, out)
