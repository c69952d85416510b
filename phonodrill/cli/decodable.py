"""``phonodrill decodable``: words a class can read."""

from __future__ import annotations

import random
from typing import Annotated

import typer

from phonodrill.cli import options
from phonodrill.cli.deliver import deliver
from phonodrill.cli.own_words import own_words
from phonodrill.errors import PhonodrillError
from phonodrill.gate import open_gate
from phonodrill.lexicon.store import Lexicon
from phonodrill.reading.decodable import Wanted, find_words
from phonodrill.reading.patterns import check_pattern, pattern_of, signs_of
from phonodrill.render.views import decodable as view
from phonodrill.taught.tokens import read_token

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
    patterns = frozenset(check_pattern(part.strip()) for part in pattern.split(",") if part.strip())
    seed = options.seed_or_new(seed)
    with Lexicon() as lexicon:
        gate = open_gate(lexicon, own_words().words("block"))
        wanted = Wanted(
            options.known_from(taught, lexicon),
            patterns,
            frozenset(
                row.code
                for token in with_.replace(",", " ").split()
                for row in read_token(token, lexicon.correspondences())
            ),
            endings,
        )
        found = find_words(lexicon, gate, wanted, highest_band=band)
        if not found:
            raise PhonodrillError(
                f"no word of bands 1-{band} fits", "more steps, another --pattern, or --band 3"
            )
        signs = signs_of(lexicon.correspondences())
        chosen = [
            view.Shown(word, lexicon.chunks(word.chunks), pattern_of(word.chunks, signs))
            for word in random.Random(seed).sample(found, min(count, len(found)))
        ]
    deliver(view.document(chosen, len(found), seed), format_, out)
