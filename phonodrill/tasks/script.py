"""Fill the classroom phrases with an item: what to ask, to answer, to say if unsure."""

from __future__ import annotations

from collections.abc import Iterable

from phonodrill.sounds.inventory import BY_CODE
from phonodrill.sounds.notation import Notation, symbols
from phonodrill.sounds.places import Position
from phonodrill.sounds.units import stop_after_s
from phonodrill.tasks import phrases
from phonodrill.tasks.item import Item, Part


def title(task: str, at: Position) -> str:
    """Name a kind of item in a few words."""
    return phrases.PHRASES[task, at].title


def ask(item: Item, notation: Notation) -> str:
    """Return the line that the teacher says; a heteronym carries its reading."""
    return phrases.PHRASES[item.task, item.at].ask.format_map(_filled(item, notation))


def answer(item: Item, notation: Notation) -> str:
    """Return the answer line; other words that sound the same are named."""
    filled = _filled(item, notation) | {"answer": _bare_answer(item)}
    return phrases.PHRASES[item.task, item.at].answer.format_map(filled)


def correct(item: Item, notation: Notation) -> str:
    """Return what to say if a student is unsure."""
    return phrases.PHRASES[item.task, item.at].correct.format_map(_filled(item, notation))


def note(item: Item) -> str:
    """Return what the teacher has to mind about the sounds of this item, or nothing."""
    longer, shorter = (
        (item.answer_said, item.stimulus)
        if item.task == "add"
        else (item.stimulus_said, item.answer)
    )
    whole = item.answer if item.task == "add" else item.stimulus
    parted = item.task in ("add", "delete") and item.at is Position.FIRST
    if not (parted and stop_after_s(longer.sounds)):
        return ""
    sound = f"/{BY_CODE[longer.sounds[1]].marks}/"
    return phrases.UNPUFFED.format(word=shorter, sound=sound, other=whole)


def how_to_say(items: Iterable[Item], notation: Notation) -> list[str]:
    """Return how the single sounds of some items are said: held, or short.

    Args:
        items: the items of a set, or one.
        notation: how sounds are written.
    """
    single: dict[str, str] = {}
    for item in items:
        for part in (item.sound, item.new, *item.parts):
            if len(part.sounds) == 1:
                single.setdefault(part.sounds, f"/{write_part(part, notation)}/")
    held = [sign for code, sign in sorted(single.items()) if BY_CODE[code].holdable]
    clipped = [sign for code, sign in sorted(single.items()) if not BY_CODE[code].holdable]
    lines = []
    if held:
        lines.append(phrases.HOLD.format(sounds=" ".join(held)))
    if clipped:
        lines.append(phrases.CLIP.format(sounds=" ".join(clipped)))
    return lines


def write_part(part: Part, notation: Notation) -> str:
    """Write the sounds of a part, bare."""
    return "".join(symbols(part.sounds, part.stress, notation))


def write_parts(item: Item, notation: Notation) -> list[str]:
    """Write the parts of an item, each bare."""
    return [write_part(part, notation) for part in item.parts]


def sound_of(item: Item, notation: Notation) -> str:
    """Write the sound an item is about, bare."""
    return write_part(item.sound, notation)


def _filled(item: Item, notation: Notation) -> dict[str, str]:
    return {
        "stimulus": _stimulus(item, notation),
        "answer": f"“{item.answer}”",
        "sound": _shown(item.sound, notation),
        "new": _shown(item.new, notation),
        "words": ", ".join(f"“{choice.word}”" for choice in item.choices),
        "foil": item.foil.word if item.foil else "",
        "parts": " – ".join(_shown(part, notation) for part in item.parts),
        "turned": " ".join(
            f"/{sign}/"
            for sign in symbols(item.answer_said.sounds, item.answer_said.stress, notation)
        ),
        "count": phrases.SOUND_COUNT.format(count=len(item.parts)),
        "kind": phrases.MADE_UP_WORD if item.made_up else phrases.WORD,
        "side": phrases.IN_FRONT if item.parts[:1] == (item.sound,) else phrases.AT_THE_END,
    }


def _stimulus(item: Item, notation: Notation) -> str:
    said = item.stimulus_said
    if item.made_up:
        return f"“{item.stimulus}” /{said.write(notation)}/"
    if said.meaning:
        return f"“{item.stimulus} /{said.write(notation)}/ ({said.meaning})”"
    return f"“{item.stimulus}”"


def _shown(part: Part, notation: Notation) -> str:
    return f"“{part.word}”" if part.word else f"/{write_part(part, notation)}/"


def _bare_answer(item: Item) -> str:
    if not item.also:
        return item.answer
    return phrases.ALSO.format(answer=item.answer, others=", ".join(item.also))
