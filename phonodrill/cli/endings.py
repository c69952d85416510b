"""``phonodrill endings``: words by their endings."""

from __future__ import annotations

from enum import StrEnum
from pathlib import Path
from typing import Annotated

import typer

from phonodrill.cli import options
from phonodrill.cli.deliver import deliver
from phonodrill.cli.own_words import own_words
from phonodrill.cli.report import report
from phonodrill.endings.sort import By
from phonodrill.endings.suffix import SPELLINGS, SUFFIX_OF
from phonodrill.lexicon.store import Lexicon
from phonodrill.services import word_endings
from phonodrill.services.word_endings import DEFAULT_ENDINGS, Draw
from phonodrill.services.word_list import Line

# Es and ies are the ending s as a rule spells it: who asks for one of them means that.
Spelled = StrEnum("Spelled", {s.strip("'").upper() + "_" * ("'" in s): s for s in SPELLINGS})  # type: ignore[misc]
_S = Spelled("s")
app = typer.Typer(add_completion=False, rich_markup_mode=None)

SuffixOption = Annotated[
    Spelled,
    typer.Option(
        "--ending", help='Which ending; es, ies and ves are s by rule; "\'s" is the possessive.'
    ),
]


@app.callback(invoke_without_command=True)
def endings(context: typer.Context) -> None:
    """Add an ending, take it off, see its rules and traps, sort words by it."""
    if context.invoked_subcommand is None:
        typer.echo(context.get_help())


@app.command("add")
def add(
    word: Annotated[str, typer.Argument(help="The base word, real or made up: ferry, gutch.")],
    ending: SuffixOption = _S,
    sounds: Annotated[
        str, typer.Option("--sounds", help="How a made-up base is said, as in CMUdict: G AH1 CH.")
    ] = "",
    notation: options.NotationOption = None,
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """Add an ending to a word: the form, what happens to the letters, the rule, the sound."""
    with Lexicon() as lexicon:
        made = word_endings.add(
            lexicon, word, SUFFIX_OF[ending], sounds=sounds, overlay=own_words(), notation=notation
        )
    deliver(made.document, format_, out)


@app.command("base")
def base(
    word: Annotated[str, typer.Argument(help="A word with an ending: ferries, skated.")],
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """Take the ending off: every base a word may come from, the likeliest first."""
    with Lexicon() as lexicon:
        made = word_endings.base(lexicon, word, own_words())
    deliver(made.document, format_, out)


@app.command("table")
def table(
    ending: SuffixOption = _S,
    band: options.BandOption = 2,
    count: options.CountOption = 2,
    seed: options.SeedOption = None,
    notation: options.NotationOption = None,
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """Print the rule card of an ending, with examples from the vocabulary.

    --count is the number of examples for each kind of base.
    """
    draw = Draw(band, options.check_count(count), options.seed_or_new(seed))
    with Lexicon() as lexicon:
        made = word_endings.table(lexicon, SUFFIX_OF[ending], draw, own_words(), notation)
    deliver(made.document, format_, out)


@app.command("lookalikes")
def lookalikes(
    ending: Annotated[
        str, typer.Option("--ending", help=f"The lesson's focus: {', '.join(SPELLINGS)}.")
    ] = ",".join(DEFAULT_ENDINGS),
    band: options.BandOption = 2,
    count: options.CountOption = 8,
    seed: options.SeedOption = None,
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """List traps for a lesson: words that only look inflected, odd sounds, two rules.

    --count is the number of words of each kind.
    """
    draw = Draw(band, options.check_count(count), options.seed_or_new(seed))
    with Lexicon() as lexicon:
        made = word_endings.lookalikes(lexicon, ending, draw, own_words())
    deliver(made.document, format_, out)


@app.command("sort")
def sort(
    ending: Annotated[
        str,
        typer.Option(
            "--ending",
            help=f"Which spellings: {', '.join(SPELLINGS)}; by default s, es, ies.",
        ),
    ] = "",
    by: Annotated[
        By, typer.Option("--by", help="Sort by sound, spelling, rule or base.")
    ] = By.SOUND,
    taught: options.TaughtOption = None,
    band: options.BandOption = 2,
    words: options.WordsOption = None,
    count: options.CountOption = 8,
    seed: options.SeedOption = None,
    notation: options.NotationOption = None,
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """Print words sorted by what their ending says, with the answer key.

    --count is the number of words in each group, or of bases with --by base; with
    --words all are sorted.
    """
    from phonodrill.render.views import sort as view

    draw = Draw(band, options.check_count(count), options.seed_or_new(seed))
    with Lexicon() as lexicon:
        lines = _lines(words) if words else []
        if not words:
            draw = draw._replace(known=options.known_from(taught, lexicon))
        result = word_endings.sort(lexicon, ending, by, draw, own_words(), lines)
    report(result.unfit + result.left_out)
    deliver(view.document(result.sort, notation, draw.seed), format_, out)


def _lines(path: Path) -> list[Line]:
    from phonodrill.cli.words_file import read_words

    return read_words(path)
