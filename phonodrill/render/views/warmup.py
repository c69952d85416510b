"""How a warm-up is shown."""

from __future__ import annotations

from typing import TYPE_CHECKING

from phonodrill.render.document import Document, Questions, Section, Words, counted
from phonodrill.sounds.notation import SCRIPT, Notation
from phonodrill.tasks import script
from phonodrill.tasks.item import Item
from phonodrill.tasks.warmup import WarmUp

if TYPE_CHECKING:
    from phonodrill.render.fields import oral


def document(result: WarmUp, notation: Notation | None) -> Document:
    """Show a warm-up: lines to say, answers, and both in sounds."""
    style = notation or SCRIPT
    said = [script.say(item, style) for item in result.items]
    lines = tuple(
        (phrase.ask, phrase.answer, _sounds(item, style))
        for item, phrase in zip(result.items, said, strict=True)
    )
    records = [record(item, notation) for item in result.items]
    data: oral.WarmUp = {
        "task": result.task,
        "at": str(result.at),
        "seed": result.seed,
        "notes": list(result.notes),
        "review": list(result.review),
        "items": records,
    }
    kind = (
        "made-up words" if result.query.made_up else f"words of band {result.query.band} or lower"
    )
    return Document(
        f"Oral warm-up: {script.title(result.task, result.at).lower()}",
        f"{counted(len(lines), 'item')}, {kind}, seed {result.seed}",
        (Section("", Questions(lines)), *_for_the_teacher(result, style)),
        data,
        records,
    )


def record(item: Item, notation: Notation | None) -> oral.Item:
    """Write one item as the flat record of JSON and CSV.

    Args:
        item: the item.
        notation: how sounds are written; the default is IPA in data and marks in
            what is said.
    """
    style, bare = notation or SCRIPT, notation or Notation.IPA
    is_apart = item.task == "segment" or (item.task == "reverse" and not item.answer)
    phrase = script.say(item, style)
    parts = script.write_parts(item, bare)
    stimulus = item.stimulus or ", ".join(choice.word for choice in item.choices)
    return {
        "task": item.task,
        "at": str(item.at),
        "stimulus": stimulus or " ".join(parts),
        "stimulus_arpabet": item.stimulus_said.arpabet,
        "stimulus_ipa": item.stimulus_said.ipa,
        "sound": script.sound_of(item, bare),
        "answer": parts if is_apart else item.answer or script.write_part(item.sound, bare),
        "answer_arpabet": item.answer_said.arpabet,
        "answer_ipa": item.answer_said.ipa,
        "also": list(item.also),
        "say": phrase.ask,
        "answer_line": phrase.answer,
        "band": item.band,
        "difficulty": item.difficulty,
        "made_up": item.made_up,
        "new_sound": script.write_part(item.new, bare),
        "parts": parts,
        "choices": [choice.word for choice in item.choices],
        "choices_arpabet": [choice.said.arpabet for choice in item.choices],
        "foil": item.foil.word if item.foil else "",
        "correction": phrase.correct,
        "how_to_say": " ".join(script.how_to_say([item], style)),
        "note": script.note(item),
        "level": str(item.level),
    }


def _sounds(item: Item, style: Notation) -> str:
    """Write what is heard, before and after, sound by sound."""
    if item.choices:
        return "   ".join(f"/{choice.said.spaced(style)}/" for choice in item.choices)
    before = f"/{item.stimulus_said.spaced(style)}/"
    if item.task in ("delete", "add", "substitute") or (item.task == "reverse" and item.answer):
        return f"{before} → /{item.answer_said.spaced(style)}/"
    return before


def _for_the_teacher(result: WarmUp, style: Notation) -> list[Section]:
    """Say how the sounds are said, what to mind, and how to help."""
    if not result.items:
        return []
    how = Words(tuple(script.how_to_say(result.items, style)))
    sections = [Section("Saying the sounds", how)] if how.words else []
    notes = dict.fromkeys(filter(None, map(script.note, result.items)))
    help_ = (script.say(result.items[0], style).correct, *list(notes)[:1])
    sections.append(Section("If a student is unsure, as in 1", Words(help_[:1])))
    if notes:
        sections.append(Section("Mind", Words(help_[1:])))
    if result.review:
        sections.append(Section("Back for review", Words(result.review)))
    return sections
