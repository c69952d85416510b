"""``phonodrill endings``: words by their endings."""

from __future__ import annotations

import random
from typing import Annotated

import typer

from phonodrill.cli import options
from phonodrill.cli.deliver import deliver
from phonodrill.cli.own_words import own_words
from phonodrill.cli.report import report
from phonodrill.cli.words_file import problems_of, read_words
from phonodrill.endings.sort import By, sort_vocabulary, sort_words
from phonodrill.errors import PhonodrillError
from phonodrill.gate import open_gate
from phonodrill.lexicon.store import Lexicon
from phonodrill.render.views import sort as view
from phonodrill.selection import Query, may_be_shown

ENDINGS = ("s", "es", "ies")
app = typer.Typer(add_completion=False, rich_markup_mode=None)


@app.callback(invoke_without_command=True)
def endings(context: typer.Context) -> None:
    """Sort words by their ending."""
    if context.invoked_subcommand is None:
        typer.echo(context.get_help())


@app.command("sort")
def sort(
    ending: Annotated[
        str, typer.Option("--ending", help="Which spellings: s, es, ies.")
    ] = ",".join(ENDINGS),
    by: Annotated[By, typer.Option("--by", help="Sort by sound or by spelling.")] = By.SOUND,
    band: options.BandOption = 2,
    words: options.WordsOption = None,
    count: options.CountOption = 8,
    seed: options.SeedOption = None,
    notation: options.NotationOption = None,
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """Print words sorted by what their ending says, with the answer key.

    --count is the number of words in each group; with --words all are sorted.
    """
    count = options.check_count(count)
    wanted = options.parse_endings(ending, ENDINGS) or frozenset(ENDINGS)
    seed = options.seed_or_new(seed)
    rng = random.Random(seed)
    with Lexicon() as lexicon:
        if words:
            gate = open_gate(lexicon)

            def why_not(word: str) -> str | None:
                entry = lexicon.get(word)
                fit = may_be_shown(entry, gate) if entry else gate.allows(word, [], alone=False)
                return None if fit else "not a word for class"

            lines = read_words(words)
            usable, problems = problems_of(lines, why_not)
            result = sort_words(lexicon, usable, by, rng)
            numbers = {line.word: line.number for line in reversed(lines)}
            problems += [f"line {numbers[w]}: {w!r} left out: {why}" for w, why in result.left_out]
            report(problems)
        else:
            result = sort_vocabulary(lexicon, Query(band, wanted), by, count, rng, own_words())
    if not result.groups:
        raise PhonodrillError(
            "no word here has an -s ending", "words such as torches, ropes, skies"
        )
    deliver(view.document(result, notation, seed), format_, out)
