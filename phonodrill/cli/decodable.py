"""``phonodrill decodable``: words a class can read."""

from __future__ import annotations

from typing import Annotated

import typer

from phonodrill.cli import options
from phonodrill.cli.deliver import deliver
from phonodrill.cli.own_words import own_words
from phonodrill.lexicon.store import Lexicon
from phonodrill.services import decodable as service
from phonodrill.services.decodable import Wish

DEFAULT_COUNT = 60
app = typer.Typer(add_completion=False, rich_markup_mode=None)


@app.command()
def decodable(
    taught: options.TaughtOption = None,
    pattern: Annotated[
        str, typer.Option("--pattern", help="Only this shape: CVC, CCVC, CVCe, CVVC, CRC.")
    ] = "",
    with_: Annotated[
        str, typer.Option("--with", help="Only words with this spelling: sh, a_e, c=s.")
    ] = "",
    endings: Annotated[
        bool, typer.Option("--endings", help="Also words with -s, -es, -ed, -ing.")
    ] = False,
    band: options.BandOption = 2,
    count: options.CountOption = DEFAULT_COUNT,
    seed: options.SeedOption = None,
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """List words whose every letter-sound correspondence has been taught."""
    count = options.check_count(count)
    with Lexicon() as lexicon:
        known = options.known_from(taught, lexicon)
        wish = Wish(band, count, options.seed_or_new(seed), known, pattern, with_, endings)
        made = service.decodable(lexicon, wish, own_words())
    deliver(made.document, format_, out)
