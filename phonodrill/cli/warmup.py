"""``phonodrill warmup``: an oral warm-up."""

from __future__ import annotations

from enum import StrEnum
from pathlib import Path
from typing import Annotated, Optional

import typer

from phonodrill.cli import options, oral
from phonodrill.cli.deliver import deliver
from phonodrill.cli.own_words import own_words
from phonodrill.cli.report import report
from phonodrill.errors import PhonodrillError
from phonodrill.lexicon.store import Lexicon
from phonodrill.render.views import warmup as view
from phonodrill.services.oral import read_query
from phonodrill.services.warmup import USUAL_TASK, Wish, task_and_place, warm_up
from phonodrill.sounds.places import Position
from phonodrill.tasks.difficulty import Level
from phonodrill.tasks.history import NO_HISTORY, RESTING_SETS
from phonodrill.tasks.registry import TASKS
from phonodrill.tasks.warmup import WarmUp

TaskName = StrEnum("TaskName", {name.upper(): name for name in TASKS})  # type: ignore[misc]


class Drop(StrEnum):
    """The two ends of a word."""

    FIRST = "first"
    LAST = "last"


app = typer.Typer(add_completion=False, rich_markup_mode=None)


@app.command()
def warmup(
    task: Annotated[
        Optional[TaskName],
        typer.Option("--task", help="What is done with each word; delete by default."),
    ] = None,
    drop: Annotated[
        Optional[Drop], typer.Option("--drop", help="Short for --task delete --at.")
    ] = None,
    at: Annotated[
        Optional[Position],
        typer.Option("--at", help="Where in the word, or how finely it is taken apart."),
    ] = None,
    ending: oral.EndingOption = "",
    sound: oral.SoundOption = "",
    level: Annotated[
        Optional[Level], typer.Option("--level", help="How hard, among items of this kind.")
    ] = None,
    accent: options.AccentOption = "",
    r_vowels: oral.RVowelsOption = None,
    made_up: oral.MadeUpOption = False,
    series: Annotated[
        str, typer.Option("--series", help="A group's name: no word again too soon.")
    ] = "",
    after: Annotated[
        Optional[Path], typer.Option("--after", help="The same, kept in this file.")
    ] = None,
    rest: Annotated[
        int, typer.Option("--rest", min=0, help="For how many sets a word rests.")
    ] = RESTING_SETS,
    group: Annotated[
        str, typer.Option("--group", help="What this group missed; its weakest task.")
    ] = "",
    taught: options.TaughtOption = None,
    band: options.BandOption = 2,
    words: options.WordsOption = None,
    count: options.CountOption = 8,
    seed: options.SeedOption = None,
    notation: options.NotationOption = None,
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """Make an oral warm-up: a task, a checked answer to each item, easy to hard."""
    chosen, place = _task_and_place(task, drop, at)
    missed: tuple[str, ...] = ()
    if group:
        if made_up or words:
            raise PhonodrillError("--group goes without --made-up and --words", "one of them")
        is_open = not (task or drop or at)
        chosen, place, missed = _for_group(group, chosen, place, is_open=is_open)
    task_and_place(chosen, place)
    count = options.check_count(count)
    query = read_query(
        band=band, ending=ending, sound=sound, accent=accent, r_vowels=r_vowels, made_up=made_up
    )
    path, history = None, NO_HISTORY
    if series or after:
        from phonodrill.cli.series import read_series, series_path

        path = series_path(series, after)
        history = read_series(path, rest)
    overlay = own_words()
    with Lexicon() as lexicon:
        if words:
            query = query._replace(words=options.usable_words(lexicon, words, overlay))
        query = query._replace(known=options.known_from(taught, lexicon))
        wish = Wish(query, count, options.seed_or_new(seed), chosen, place, level, missed)
        result = warm_up(lexicon, wish, overlay, history)
    report(list(result.notes))
    deliver(view.document(result, notation), format_, out)
    if path:
        _keep(path, result)


def _for_group(
    group: str, task: str, at: Optional[Position], *, is_open: bool
) -> tuple[str, Optional[Position], tuple[str, ...]]:
    """Take up the words a group missed, and its weakest task and place if none is named."""
    from phonodrill.cli import needs
    from phonodrill.records.practice import missed_words, oral_for
    from phonodrill.services.checks import today

    answers = needs.answers_of(group)
    weakest = oral_for(answers) if is_open else None
    if weakest:
        task, at = weakest.task.name, weakest.at
        report([f"task {task} at {at}: where this group is weakest"])
    return task, at, missed_words(answers, today())


def _task_and_place(
    task: Optional[TaskName], drop: Optional[Drop], at: Optional[Position]
) -> tuple[str, Optional[Position]]:
    """Put --task, --drop and --at together.

    Raises:
        PhonodrillError: if they contradict each other.
    """
    if drop and at and Position(drop) is not at:
        raise PhonodrillError(f"--drop {drop} and --at {at} disagree", "one of the two")
    if drop and task and task.value != "delete":
        raise PhonodrillError(f"--drop goes with --task delete, not {task}", f"--at {drop}")
    return task.value if task else USUAL_TASK, Position(drop) if drop else at


def _keep(path: Path, result: WarmUp) -> None:
    """Add the set to its series."""
    from datetime import datetime

    from phonodrill.cli.series import keep_sets

    day = datetime.now().astimezone().date().isoformat()
    about = f"{day} {result.task} {result.at}"
    keep_sets(path, [(about, result.words)])
