"""``phonodrill taught``: what a class has been taught, and what to teach next."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Optional

import typer

from phonodrill.cli import options
from phonodrill.cli.deliver import deliver
from phonodrill.cli.own_words import own_words
from phonodrill.cli.taught_file import read_taught
from phonodrill.errors import PhonodrillError
from phonodrill.gate import open_gate
from phonodrill.lexicon.store import Lexicon
from phonodrill.reading.material import (
    frequent_targets,
    read_words,
    sentence_targets,
    whole_targets,
    word_targets,
)
from phonodrill.render.views import taught as view
from phonodrill.selection import may_be_shown
from phonodrill.taught.check import check_steps, leave_out_unfit
from phonodrill.taught.steps import Taught
from phonodrill.taught.suggest import Goal, Material, Suggestion
from phonodrill.taught.suggest import suggest as suggest_order
from phonodrill.taught.tokens import always_open
from phonodrill.whole_file import write_whole

HIGHEST_STEPS = 1000
DEFAULT_SEED = 1
app = typer.Typer(add_completion=False, rich_markup_mode=None)


@app.callback(invoke_without_command=True)
def taught(context: typer.Context) -> None:
    """Check what a class has been taught, or work out what to teach next."""
    if context.invoked_subcommand is None:
        typer.echo(context.get_help())


@app.command("check")
def check(
    file: Annotated[Path, typer.Argument(help="A taught file, a step a line; or: default.")],
    band: options.BandOption = 2,
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """Show step by step how many words open, and what is used before it is taught."""
    with Lexicon() as lexicon:
        gate = open_gate(lexicon, own_words().words("block"))

        def is_fit(word: str) -> bool:
            entry = lexicon.get(word)
            return may_be_shown(entry, gate) if entry else gate.allows(word, [], alone=False)

        known = leave_out_unfit(read_taught(file, lexicon), is_fit)
        words = word_targets(lexicon, read_words(lexicon, gate, band))
        whole = whole_targets(lexicon, (word for step in known.steps for word in step.words))
        steps = check_steps(known, words, whole, lexicon.correspondences())
    deliver(view.checked(file.name, band, steps, known.problems), format_, out)


@app.command("suggest")
def suggest(
    goal: Annotated[
        Goal, typer.Option("--goal", help="Open words to read, or whole sentences of the bank.")
    ] = Goal.DECODABLE,
    start: Annotated[
        Optional[Path], typer.Option("--start", help="What was taught already: a taught file.")
    ] = None,
    steps: Annotated[
        Optional[int],
        typer.Option("--steps", min=1, max=HIGHEST_STEPS, help="How many steps; all by default."),
    ] = None,
    band: options.BandOption = 2,
    seed: Annotated[
        int, typer.Option("--seed", min=0, help="Search in another way.")
    ] = DEFAULT_SEED,
    plot: Annotated[
        Optional[Path], typer.Option("--plot", help="File for the growth curves, as SVG.")
    ] = None,
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """Work out an order of steps that opens the most words soonest.

    The text is a taught file: phonodrill taught suggest > mine.txt
    """
    with Lexicon() as lexicon:
        result = _suggest(lexicon, goal, start, steps, band, seed)
    if plot:
        from phonodrill.render.plot import line_chart

        what = view.WHAT[goal]
        title = f"Growth: {what} that can be read"
        picture = line_chart(title, "steps taught", what, result.curves)
        write_whole(plot, picture.encode())
    deliver(view.suggested(result, band), format_, out)


def _suggest(
    lexicon: Lexicon, goal: Goal, start: Path | None, steps: int | None, band: int, seed: int
) -> Suggestion:
    inventory = lexicon.correspondences()
    known = Taught((), always_open(inventory))
    if start:
        known = read_taught(start, lexicon)
    gate = open_gate(lexicon, own_words().words("block"))
    material = Material(
        inventory,
        word_targets(lexicon, read_words(lexicon, gate, band)),
        sentence_targets(lexicon, gate) if goal is Goal.SENTENCES else (),
        frequent_targets(lexicon, gate),
    )
    result = suggest_order(material, goal, seed, known, steps)
    if len(result.lines) == result.started:
        raise PhonodrillError(f"{start} leaves nothing to teach", "a shorter file")
    return result
