"""``phonodrill bank``: every item of a task, as data."""

from __future__ import annotations

import sys
from collections.abc import Iterable, Iterator
from enum import StrEnum
from importlib import import_module
from pathlib import Path
from typing import Annotated, Any, Optional

import typer

from phonodrill.cli import options, oral
from phonodrill.cli.deliver import is_named
from phonodrill.cli.own_words import own_words
from phonodrill.errors import PhonodrillError
from phonodrill.lexicon.store import Lexicon
from phonodrill.render.views.warmup import record
from phonodrill.selection import Pool, Query, select
from phonodrill.services.bank import every_item, kinds_of
from phonodrill.services.oral import read_query
from phonodrill.sounds.places import Position
from phonodrill.tasks.item import Item
from phonodrill.tasks.registry import Task
from phonodrill.whole_file import whole_file

app = typer.Typer(add_completion=False, rich_markup_mode=None)


class Rows(StrEnum):
    """How the rows are written."""

    CSV = "csv"
    JSONL = "jsonl"


@app.command()
def bank(
    task: Annotated[
        str, typer.Option("--task", help="Tasks, comma-separated; all by default.")
    ] = "",
    at: Annotated[
        Optional[Position], typer.Option("--at", help="Only this place; all by default.")
    ] = None,
    ending: oral.EndingOption = "",
    sound: oral.SoundOption = "",
    accent: options.AccentOption = "",
    r_vowels: oral.RVowelsOption = None,
    made_up: oral.MadeUpOption = False,
    band: options.BandOption = 2,
    notation: options.NotationOption = None,
    format_: Annotated[
        Optional[Rows],
        typer.Option("--format", help="By default from --out's ending, else csv."),
    ] = None,
    out: options.OutOption = None,
) -> None:
    """Write every item of a task, one row each, with a count at the end."""
    kinds = kinds_of(task, at, made_up=made_up)
    query = read_query(
        band=band, ending=ending, sound=sound, accent=accent, r_vowels=r_vowels, made_up=made_up
    )
    if is_named(out, format_, ".docx", ".pptx", ".pdf"):
        raise PhonodrillError("the bank is rows of data", "--out NAME.csv, or NAME.jsonl")
    by_name = Rows.JSONL if out and out.suffix.lower() == ".jsonl" else Rows.CSV
    chosen = format_ or by_name
    with Lexicon() as lexicon:
        pool = select(lexicon, query, overlay=own_words())
        count = _Count()
        records = (record(item, notation) for item in count.watch(kinds, pool, query))
        _write(import_module(f"phonodrill.render.as_{chosen}").lines(records), chosen, out)
    noun = "item" if count.items == 1 else "items"
    typer.echo(f"note: {count.items:,} {noun}", err=True)
    if not count.items:
        raise PhonodrillError("no item holds under these constraints", "other constraints")


class _Count:
    """Counts items as they pass, and shows a bar if standard error is a terminal."""

    def __init__(self) -> None:
        self.items = 0

    def watch(self, kinds: list[tuple[Task, Position]], pool: Pool, query: Query) -> Iterator[Item]:
        if not sys.stderr.isatty():
            yield from self._count(every_item(kinds, pool, query))
            return
        from rich.console import Console
        from rich.progress import Progress

        with Progress(console=Console(stderr=True), transient=True) as progress:
            bar = progress.add_task("", total=len(kinds))
            for task, place in kinds:
                progress.update(bar, description=f"{task.name}, {place}: {self.items:,} items")
                yield from self._count(task.candidates(pool, query, place))
                progress.advance(bar)

    def _count(self, items: Iterable[Item]) -> Iterator[Item]:
        for item in items:
            self.items += 1
            yield item


def _write(lines: Iterator[str], kind: Rows, out: Optional[Path]) -> None:
    if out is None:
        stream: Any = sys.stdout
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(encoding="utf-8", newline="")
        for line in lines:
            stream.write(line)
        stream.flush()
        return
    # Spreadsheets take CSV for UTF-8 only with a byte order mark.
    with whole_file(out) as file:
        file.write(b"\xef\xbb\xbf" if kind is Rows.CSV else b"")
        for line in lines:
            file.write(line.encode())
