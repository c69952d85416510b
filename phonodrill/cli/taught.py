"""``phonodrill taught``: what a class has been taught, and what to teach next."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Optional

import typer

from phonodrill.cli import options
from phonodrill.cli.deliver import deliver
from phonodrill.cli.own_words import own_words
from phonodrill.cli.taught_file import read_taught
from phonodrill.lexicon.store import Lexicon
from phonodrill.render.views import taught as view
from phonodrill.services.taught import DEFAULT_SEED, NextSteps, check_taught, suggest_steps
from phonodrill.taught.suggest import Goal
from phonodrill.whole_file import write_whole

HIGHEST_STEPS = 1000
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
        steps, problems = check_taught(lexicon, read_taught(file, lexicon), band, own_words())
    deliver(view.checked(file.name, band, steps, problems), format_, out)


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

    The text is a taught file: phonodrill taught suggest --out taught.txt
    """
    with Lexicon() as lexicon:
        known = read_taught(start, lexicon) if start else None
        wish = NextSteps(goal, steps, seed)
        result = suggest_steps(lexicon, wish, band, known, own_words(), str(start))
    if plot:
        from phonodrill.render.plot import line_chart

        what = view.WHAT[goal]
        title = f"Growth: {what} that can be read"
        picture = line_chart(title, "steps taught", what, result.curves)
        write_whole(plot, picture.encode())
    deliver(view.suggested(result, band), format_, out)
