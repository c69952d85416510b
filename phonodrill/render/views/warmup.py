"""How a warm-up is shown."""

from __future__ import annotations

from typing import Any

from phonodrill.render.document import Document, Questions, Section, counted
from phonodrill.sounds.notation import SCRIPT, Notation
from phonodrill.tasks import phrases
from phonodrill.tasks.item import Item
from phonodrill.tasks.warmup import WarmUp


def document(result: WarmUp, notation: Notation | None) -> Document:
    """Show a warm-up: lines to say, answers, and both in sounds."""
    script = notation or SCRIPT
    lines = tuple(
        (
            phrases.ask(item, script),
            phrases.answer(item),
            f"/{item.stimulus_said.spaced(script)}/ → /{item.answer_said.spaced(script)}/",
        )
        for item in result.items
    )
    records = [_item(item, script, notation or Notation.IPA) for item in result.items]
    data = {
        "task": result.task,
        "at": str(result.at),
        "seed": result.seed,
        "notes": list(result.notes),
        "items": records,
    }
    return Document(
        f"Oral warm-up: {phrases.TITLES[result.task, result.at].lower()}",
        f"{counted(len(lines), 'item')}, words of band {result.query.band} or lower, "
        f"seed {result.seed}",
        (Section("", Questions(lines)),),
        data,
        records,
    )


def _item(item: Item, script: Notation, notation: Notation) -> dict[str, Any]:
    return {
        "task": item.task,
        "at": str(item.at),
        "stimulus": item.stimulus,
        "stimulus_arpabet": item.stimulus_said.arpabet,
        "stimulus_ipa": item.stimulus_said.ipa,
        "sound": phrases.sound_of(item, notation),
        "answer": item.answer,
        "answer_arpabet": item.answer_said.arpabet,
        "answer_ipa": item.answer_said.ipa,
        "also": list(item.also),
        "say": phrases.ask(item, script),
        "answer_line": phrases.answer(item),
        "band": item.band,
        "difficulty": item.difficulty,
        "made_up": item.made_up,
    }
