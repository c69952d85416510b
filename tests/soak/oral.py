"""Build an item again from the lines of a lesson, so that the checker of items can take it."""

from __future__ import annotations

import re
from typing import Any, NamedTuple

from tests.soak.phones import ARPABET, Phones

_CODES = {phone: code for code, phone in ARPABET.items()} | {"AX": "ə"}
"""AX is the weak vowel, where a lesson names what letters say."""
_PHONE = re.compile("(" + "|".join(sorted(_CODES, key=len, reverse=True)) + ")([012]?)")
_SHOWN = re.compile(r"/([^/]*)/|“([^”]*)”")


class Said(NamedTuple):
    """Sounds and stress as an item has them, and the word where they are one."""

    sounds: str
    stress: str
    word: str = ""


NOTHING = Said("", "")


class Choice(NamedTuple):
    """A word to compare."""

    word: str
    said: Said


class Rebuilt(NamedTuple):
    """What the checker asks of an item."""

    task: str
    at: str
    stimulus: str
    stimulus_said: Said
    sound: Said
    answer: str
    answer_said: Said
    new: Said = NOTHING
    parts: tuple[Said, ...] = ()
    choices: tuple[Choice, ...] = ()
    foil: Choice | None = None
    also: tuple[str, ...] = ()
    made_up: bool = False


def read_phones(text: str, word: str = "") -> Said:
    """Read phones in ARPAbet, parted or not, with or without stress."""
    found = _PHONE.findall(text)
    sounds = "".join(_CODES[phone] for phone, _ in found)
    stress = "".join(digit for _, digit in found)
    if "".join(phone + digit for phone, digit in found) != text.replace(" ", ""):
        raise ValueError(f"no phones: {text}")
    return Said(sounds, stress, word)


def bare_phones(text: str) -> Phones:
    """Read phones between slashes, without their stress."""
    return tuple(
        "@" if code == "ə" else ARPABET[code] for code in read_phones(text.strip("/")).sounds
    )


def _shown(line: str) -> list[tuple[str, str]]:
    """Return what stands between slashes or quotes: ``(phones, word)``."""
    return _SHOWN.findall(line)


def rebuild(task: str, at: str, row: dict[str, Any]) -> Rebuilt:
    """Build an item again from an oral row of a lesson in ARPAbet."""
    heard = [read_phones(phones) for phones, _ in _shown(row["heard"])]
    sound = read_phones(row["sound"])
    said, answered = read_phones(row["arpabet"]), read_phones(row["answer_arpabet"])
    item = Rebuilt(task, at, row["stimulus"], said, sound, row["answer"], answered)
    if task in ("identify", "categorize"):
        words = [word for _, word in _shown(row["say"]) if word]
        choices = [Choice(word, way) for word, way in zip(words, heard, strict=True)]
        foil = choices.pop() if task == "identify" else None
        return item._replace(choices=tuple(choices), foil=foil, new=read_phones(row["new"]))
    if task in ("blend", "segment"):
        line = row["say"] if task == "blend" else row["answer_line"]
        return item._replace(parts=_parts(_shown(line), sound, answered))
    if task == "reverse" and at == "syllable":
        second, first = (word for _, word in _shown(row["answer_line"]))
        size = len(sound.sounds)
        halves = Said(answered.sounds[:-size], "", second), sound._replace(word=first)
        return item._replace(parts=halves)
    return item._replace(new=read_phones(row["new"]))


def _parts(shown: list[tuple[str, str]], first: Said, whole: Said) -> tuple[Said, ...]:
    """Return parts; a part that is shown as a word has the sounds that are its share."""
    if not any(word for _, word in shown):
        return tuple(read_phones(phones) for phones, _ in shown)
    (_, one), (_, two) = shown
    size = len(first.sounds)
    return Said(whole.sounds[:size], "", one), Said(whole.sounds[size:], "", two)
