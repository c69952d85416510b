"""How a chain is shown."""

from __future__ import annotations

from typing import TYPE_CHECKING

from phonodrill.render.document import Document, Section, Table, counted
from phonodrill.sounds.notation import SCRIPT, Notation
from phonodrill.tasks.chain import Chain, Step
from phonodrill.tasks.script import describe_step, write_part

if TYPE_CHECKING:
    from phonodrill.render.fields import oral


def document(result: Chain, notation: Notation | None) -> Document:
    """Show a chain: each word, what changed, and how it sounds."""
    style, bare = notation or SCRIPT, notation or Notation.IPA
    rows = tuple(
        (step.word, f"/{step.said.spaced(style)}/", describe_step(step, style))
        for step in result.steps
    )
    records = [_step(step, style, bare) for step in result.steps]
    start, end = result.steps[0].word, result.steps[-1].word
    seed = "" if result.seed is None else f", seed {result.seed}"
    about = f"{counted(len(records) - 1, 'step')}, words of band {result.query.band} or lower{seed}"
    data: oral.Chain = {
        "start": start,
        "end": end,
        "seed": result.seed,
        "notes": list(result.notes),
        "steps": records,
    }
    return Document(
        f"Word chain: {start} to {end}",
        about,
        (Section("", Table(("word", "sounds", "say"), rows)),),
        data,
        records,
    )


def _step(step: Step, style: Notation, bare: Notation) -> oral.Step:
    return {
        "word": step.word,
        "arpabet": step.said.arpabet,
        "ipa": step.said.ipa,
        "also": list(step.also),
        "at": step.place,
        "old_sound": write_part(step.old, bare),
        "new_sound": write_part(step.new, bare),
        "say": describe_step(step, style),
    }
