"""One question of a phonemic task, with everything a renderer needs."""

from __future__ import annotations

from enum import StrEnum
from typing import NamedTuple

from phonodrill.lexicon.entry import Pronunciation


class Position(StrEnum):
    """Where in the word the sound is that a task is about."""

    FIRST = "first"
    LAST = "last"


class Item(NamedTuple):
    """A question and its checked answer.

    Attributes:
        task: name of the task, a key of the registry.
        at: where in the word.
        stimulus: the word that is said.
        stimulus_said: how it is said.
        sound: code(s) of the sound the task is about, one unit.
        sound_stress: stress digit of that sound if it is a vowel.
        answer: the word that is left, in its most familiar spelling.
        answer_said: how that is said.
        also: other familiar words that sound like the answer.
        base: base word of the stimulus; items of a set differ in it.
        band: the highest band among stimulus and answer.
        difficulty: estimate, higher is harder (see tasks/difficulty.py).
        made_up: whether the stimulus is no real word.
    """

    task: str
    at: Position
    stimulus: str
    stimulus_said: Pronunciation
    sound: str
    sound_stress: str
    answer: str
    answer_said: Pronunciation
    also: tuple[str, ...]
    base: str
    band: int
    difficulty: float
    made_up: bool = False
