"""What the teacher says: the only place with classroom wording for tasks."""

from __future__ import annotations

from phonodrill.sounds.inventory import VOWELS
from phonodrill.sounds.notation import Notation, symbols
from phonodrill.tasks.item import Item, Position

TITLES = {
    ("delete", Position.FIRST): "Leave off the first sound",
    ("delete", Position.LAST): "Leave off the last sound",
}
_ASK = {
    ("delete", Position.FIRST): "Say “{stimulus}”. Leave off the first sound, {sound}.",
    ("delete", Position.LAST): "Say “{stimulus}”. Leave off the last sound, {sound}.",
}


def title(item: Item) -> str:
    """Name the kind of item in a few words."""
    return TITLES[item.task, item.at]


def ask(item: Item, notation: Notation) -> str:
    """Return the line that the teacher says; a heteronym carries its reading."""
    stimulus = item.stimulus
    if item.stimulus_said.meaning:
        said = item.stimulus_said.write(notation)
        stimulus = f"{stimulus} /{said}/ ({item.stimulus_said.meaning})"
    sound = f"/{sound_of(item, notation)}/"
    return _ASK[item.task, item.at].format(stimulus=stimulus, sound=sound)


def answer(item: Item) -> str:
    """Return the answer line; other words that sound the same are named."""
    return f"{item.answer} (also {', '.join(item.also)})" if item.also else item.answer


def sound_of(item: Item, notation: Notation) -> str:
    """Write the sound an item is about, bare."""
    vowels = sum(char in VOWELS for char in item.sound)
    return "".join(symbols(item.sound, item.sound_stress * vowels, notation))
