"""One question of a phonemic task, with everything a renderer needs."""

from __future__ import annotations

from typing import NamedTuple

from phonodrill.lexicon.entry import Pronunciation
from phonodrill.sounds.places import Position
from phonodrill.tasks.difficulty import Level, level_of


class Part(NamedTuple):
    """A run of sounds that is named, added, or put together.

    Attributes:
        sounds: one code a phoneme.
        stress: one digit a vowel of ``sounds``.
        word: its spelling, if it is said as a word (the *cow* of *cowboy*).
        before_r: whether an R follows it in the word: vowels are marked otherwise there.
    """

    sounds: str
    stress: str = ""
    word: str = ""
    before_r: bool = False


NO_PART = Part("")


class Choice(NamedTuple):
    """A word among others to compare, and how it is said."""

    word: str
    said: Pronunciation


class Item(NamedTuple):
    """A question and its checked answer.

    Attributes:
        task: name of the task, a key of the registry.
        at: where in the word, or how finely it is taken apart.
        stimulus: the word that is said; empty where parts or choices are said.
        stimulus_said: how it is said; for choices, how the first one is.
        sound: what the item is about: taken off, changed, named or shared.
        answer: the word that is heard in the end, in its most familiar spelling;
            empty where the answer is a sound or a list of sounds.
        answer_said: how that is said.
        also: other familiar words that sound like the answer.
        base: base word of the stimulus; items of a set differ in it.
        band: the highest band among the words.
        difficulty: estimate, higher is harder (see tasks/difficulty.py).
        made_up: whether the words are no real ones.
        new: what is added, or put in place of ``sound``.
        parts: the sounds, onset and rime, or syllables, in order.
        choices: words to compare.
        foil: a word that does not share the sound the choices share.
    """

    task: str
    at: Position
    stimulus: str
    stimulus_said: Pronunciation
    sound: Part
    answer: str
    answer_said: Pronunciation
    also: tuple[str, ...] = ()
    base: str = ""
    band: int = 1
    difficulty: float = 0.0
    made_up: bool = False
    new: Part = NO_PART
    parts: tuple[Part, ...] = ()
    choices: tuple[Choice, ...] = ()
    foil: Choice | None = None

    @property
    def level(self) -> Level:
        """How hard it is among items of its kind."""
        return level_of(self.task, self.at, self.difficulty)

    @property
    def words(self) -> frozenset[str]:
        """Every word that is said or shown: no two items of a set share one."""
        said = {self.stimulus, self.base, self.answer, self.sound.word, self.new.word, *self.also}
        said.update(part.word for part in self.parts)
        said.update(choice.word for choice in self.choices)
        if self.foil:
            said.add(self.foil.word)
        return frozenset(said - {""})
