"""Draw, check and count, cell by cell."""

from __future__ import annotations

import time
from collections import Counter
from collections.abc import Callable, Iterator
from itertools import islice
from pathlib import Path

from phonodrill import Item, Lexicon
from phonodrill.sounds.notation import SCRIPT
from phonodrill.tasks.script import say
from tests.soak.checker import Asked, answer_faults, describe, line_faults, word_faults
from tests.soak.draws import Cell, Drawn, cells, draw
from tests.soak.tally import Tally


def soak_items(
    lexicon: Lexicon, tally: Tally, wanted: int, out: Path | None, report: Callable[[str], None]
) -> None:
    """Draw items until so many are drawn, and check each different one of a cell.

    Args:
        lexicon: the open lexicon.
        tally: what was done before; the figures are added.
        wanted: how many items.
        out: where the figures are kept after each cell.
        report: told of each cell.
    """
    checked: set[int] = set()
    for cell in islice(cells(tally.seed), tally.cells, None):
        left = wanted - tally.draws["all"]
        if left <= 0:
            return
        wall, processor = time.perf_counter(), time.process_time()
        _soak_cell(islice(draw(lexicon, cell), left), cell, tally, checked)
        tally.cells += 1
        tally.wall += time.perf_counter() - wall
        tally.processor += time.process_time() - processor
        if out:
            tally.write(out)
        report(f"{tally.cells} {cell.accents or 'every accent'}, band {cell.band}: {_line(tally)}")


def _line(tally: Tally) -> str:
    seen = f"{tally.draws['all']:,} drawn, {tally.distinct['all']:,} checked"
    return f"{seen}, {dict(tally.faults)}, {tally.processor:,.0f} s"


def _soak_cell(drawn: Iterator[Drawn], cell: Cell, tally: Tally, checked: set[int]) -> None:
    """Check each different item of a cell; its words and lines, if no earlier cell had it."""
    seen: set[int] = set()
    asked = cell.asked
    drawn_of: Counter[tuple[str, str, bool]] = Counter()
    distinct_of: Counter[tuple[str, str, bool]] = Counter()
    for source, item in drawn:
        key = hash(item)
        kind = (source, item.task, item.made_up)
        drawn_of[kind] += 1
        if key in seen:
            continue
        seen.add(key)
        distinct_of[kind] += 1
        found = answer_faults(item, asked)
        if key not in checked:
            checked.add(key)
            tally.worded += 1
            found += words_and_lines(item)
        for fault in found:
            tally.note(fault, f"{cell} {describe(item)}")
    for counted, into in ((drawn_of, tally.draws), (distinct_of, tally.distinct)):
        for kind, count in counted.items():
            for name in _kinds(*kind, cell):
                into[name] += count


def _kinds(source: str, task: str, made_up: bool, cell: Cell) -> tuple[str, ...]:
    task = f"{task}, made-up words" if made_up else task
    counting = cell.r_vowels.value if cell.r_vowels else "left out"
    return (
        "all",
        f"in {source}",
        f"task {task}",
        f"band {cell.band}",
        f"accents: {_accents(cell.accents)}",
        f"vowel + R: {counting}",
        f"words: {','.join(sorted(cell.endings)) or 'base words'}",
    )


def _accents(accents: str) -> str:
    if not accents:
        return "right for everybody"
    names = accents.count(",") + 1
    return accents if names == 1 else f"{'all' if names > 3 else names} together"


def words_and_lines(item: Item) -> list[str]:
    """Say what is wrong with the words of an item and the lines that are read out for it."""
    phrase = say(item, SCRIPT)
    return word_faults(item) + line_faults(item, f"{phrase.ask} {phrase.correct}", phrase.answer)


def check(item: Item, asked: Asked) -> list[str]:
    """Say all that is wrong with an item."""
    return answer_faults(item, asked) + words_and_lines(item)
