"""``phonodrill warmup``: an oral warm-up."""

from __future__ import annotations

from collections.abc import Callable
from enum import StrEnum
from pathlib import Path
from typing import Annotated, Optional

import typer

from phonodrill.cli import options
from phonodrill.cli.deliver import deliver
from phonodrill.cli.own_words import own_words
from phonodrill.cli.report import report
from phonodrill.errors import PhonodrillError
from phonodrill.gate import open_gate
from phonodrill.lexicon.store import Lexicon
from phonodrill.render.views import warmup as view
from phonodrill.selection import Query
from phonodrill.sounds.notation import parse_sound
from phonodrill.sounds.units import RVowels
from phonodrill.tasks.item import Item, Position
from phonodrill.tasks.registry import TASKS
from phonodrill.tasks.warmup import make_warmup

ENDINGS = ("s", "es", "ies", "ed", "ing")
TaskName = StrEnum("TaskName", {name.upper(): name for name in TASKS})  # type: ignore[misc]

_DELETE = TaskName("delete")
app = typer.Typer(add_completion=False, rich_markup_mode=None)


@app.command()
def warmup(
    task: Annotated[
        TaskName, typer.Option("--task", help="What is done with each word.")
    ] = _DELETE,
    drop: Annotated[
        Optional[Position], typer.Option("--drop", help="Which sound is taken off.")
    ] = None,
    at: Annotated[
        Optional[Position], typer.Option("--at", help="Where in the word; the same as --drop.")
    ] = None,
    ending: Annotated[
        str, typer.Option("--ending", help="Only words spelled with s, es, ies, ed or ing added.")
    ] = "",
    sound: Annotated[
        str, typer.Option("--sound", help="Only this sound is taken off: sh, /ʃ/ or SH.")
    ] = "",
    r_vowels: Annotated[
        RVowels, typer.Option("--r-vowels", help="Count a vowel with its R as two sounds or one.")
    ] = RVowels.TWO,
    band: options.BandOption = 2,
    words: options.WordsOption = None,
    count: options.CountOption = 8,
    seed: options.SeedOption = None,
    notation: options.NotationOption = None,
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """Make an oral warm-up: say a word, take off a sound, hear another word."""
    if drop and at and drop is not at:
        raise PhonodrillError(f"--drop {drop} and --at {at} disagree", "one of the two")
    count = options.check_count(count)
    endings = options.parse_endings(ending, ENDINGS)
    code = parse_sound(sound) if sound else ""
    with Lexicon() as lexicon:
        own: list[str] = []
        if words:
            own, problems = _own_words(lexicon, words)
            report(problems)
        query = Query(band, endings, code, tuple(own), r_vowels)
        result = make_warmup(
            lexicon,
            TASKS[task],
            drop or at or Position.FIRST,
            query,
            count=count,
            seed=options.seed_or_new(seed),
            overlay=own_words(),
            keep=_keeps_ending(lexicon) if endings and not own else lambda _: True,
        )
    if not result.items:
        message, _, offers = result.notes[0].partition("; for more: ")
        raise PhonodrillError(message, offers or "other constraints")
    report(list(result.notes))
    deliver(view.document(result, notation), format_, out)


def _keeps_ending(lexicon: Lexicon) -> Callable[[Item], bool]:
    """Make the test that an item for an ending leaves the base, or a word with that ending."""
    from phonodrill.endings.choose import belongs_together

    def keep(item: Item) -> bool:
        stimulus = lexicon.get(item.stimulus)
        answers = filter(None, map(lexicon.get, [item.answer, *item.also]))
        return stimulus is not None and any(belongs_together(stimulus, a) for a in answers)

    return keep


def _own_words(lexicon: Lexicon, path: Path) -> tuple[list[str], list[str]]:
    from phonodrill.cli.words_file import problems_of, read_words, why_unusable

    usable, problems = problems_of(read_words(path), why_unusable(lexicon, open_gate(lexicon)))
    if not usable:
        raise PhonodrillError(f"no word of {path} can be used: {problems[0]}", "another list")
    return usable, problems
