"""Fill the classroom phrases with an item: what to ask, to answer, to say if unsure."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING

from phonodrill.sounds.inventory import BY_CODE
from phonodrill.sounds.notation import Notation, joined, symbols
from phonodrill.sounds.places import Position
from phonodrill.sounds.units import stop_after_s
from phonodrill.tasks import phrases
from phonodrill.tasks.item import Item, Part
from phonodrill.tasks.phrases import Phrase

if TYPE_CHECKING:
    from phonodrill.tasks.chain import Step


def title(task: str, at: Position) -> str:
    """Name a kind of item in a few words."""
    return phrases.PHRASES[task, at].title


def ask(item: Item, notation: Notation) -> str:
    """Return the line that the teacher says; a heteronym carries its reading."""
    return say(item, notation).ask


def answer(item: Item, notation: Notation) -> str:
    """Return the answer line; other words that sound the same are named."""
    return say(item, notation).answer


def say(item: Item, notation: Notation) -> Phrase:
    """Fill all phrases of an item: how to ask, to answer, and to help if a student is unsure."""
    phrase = phrases.PHRASES[item.task, item.at]
    fields = _Fields(item, notation)
    correct = phrase.correct.format_map(fields)
    asked = phrase.ask.format_map(fields)
    fields["answer"] = _bare_answer(item)
    return Phrase(phrase.title, asked, phrase.answer.format_map(fields), correct)


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


def describe_step(step: Step, notation: Notation) -> str:
    """Return what the teacher says to come from the word before to this one."""
    old, new = _shown(step.old, notation), _shown(step.new, notation)
    if step.old.sounds and step.new.sounds:
        return phrases.CHAIN_CHANGE.format(old=old, new=new)
    if step.new.sounds:
        return phrases.CHAIN_ADD.format(new=new, place=phrases.CHAIN_PLACES[step.place])
    if step.old.sounds:
        return phrases.CHAIN_LEAVE_OFF.format(old=old)
    return phrases.CHAIN_START.format(word=step.word)


def write_part(part: Part, notation: Notation) -> str:
    """Write the sounds of a part, bare."""
    # What stands before an R is written as before an R, though the R is not of the part.
    sounds = part.sounds + "r" * part.before_r
    return joined(symbols(sounds, part.stress, notation)[: len(part.sounds)], notation)


def write_parts(item: Item, notation: Notation) -> list[str]:
    """Write the parts of an item, each bare."""
    return [write_part(part, notation) for part in item.parts]


def sound_of(item: Item, notation: Notation) -> str:
    """Write the sound an item is about, bare."""
    return write_part(item.sound, notation)


class _Fields(dict[str, str]):
    """The names a phrase may use, each written when it is first asked for."""

    def __init__(self, item: Item, notation: Notation) -> None:
        super().__init__()
        self._item = item
        self._notation = notation

    def __missing__(self, name: str) -> str:
        self[name] = _FIELDS[name](self._item, self._notation)
        return self[name]


def _stimulus(item: Item, notation: Notation) -> str:
    said = item.stimulus_said
    if item.made_up:
        return f"“{item.stimulus}” /{said.write(notation)}/"
    if said.meaning:
        return f"“{item.stimulus}” /{said.write(notation)}/ ({said.meaning})"
    return f"“{item.stimulus}”"


def _shown(part: Part, notation: Notation) -> str:
    return f"“{part.word}”" if part.word else f"/{write_part(part, notation)}/"


def _bare_answer(item: Item) -> str:
    if not item.also:
        return item.answer
    return phrases.ALSO.format(answer=item.answer, others=", ".join(item.also))


def _turned(item: Item, notation: Notation) -> str:
    said = item.answer_said
    return " ".join(f"/{sign}/" for sign in symbols(said.sounds, said.stress, notation))


def _side(item: Item, _: Notation) -> str:
    return phrases.IN_FRONT if item.parts[:1] == (item.sound,) else phrases.AT_THE_END


_FIELDS: dict[str, Callable[[Item, Notation], str]] = {
    "stimulus": _stimulus,
    "answer": lambda item, _: f"“{item.answer}”",
    "sound": lambda item, notation: _shown(item.sound, notation),
    "new": lambda item, notation: _shown(item.new, notation),
    "words": lambda item, _: ", ".join(f"“{choice.word}”" for choice in item.choices),
    "foil": lambda item, _: item.foil.word if item.foil else "",
    "parts": lambda item, notation: " – ".join(_shown(part, notation) for part in item.parts),
    "turned": _turned,
    "count": lambda item, _: phrases.SOUND_COUNT.format(count=len(item.parts)),
    "kind": lambda item, _: phrases.MADE_UP_WORD if item.made_up else phrases.WORD,
    "side": _side,
}
