"""Fields of oral items: warm-ups, the bank, chains."""

from __future__ import annotations

from typing import Annotated, TypedDict

from phonodrill.render.fields.common import Band
from phonodrill.sounds.places import Position
from phonodrill.tasks.difficulty import Level


class Item(TypedDict):
    """One oral item with its checked answer; also one line of the bank.

    Attributes:
        task: what is done with the word.
        at: where in the word, or how finely it is taken apart.
        stimulus: the word that is said; where parts or choices are said, all of them.
        stimulus_arpabet: how it is said, as in CMUdict; of choices, the first.
        stimulus_ipa: the same in IPA.
        sound: what the item is about: taken off, changed, named or shared.
        answer: the word heard in the end, or the sound; a list where all sounds are named.
        answer_arpabet: how the answer is said; empty where it is a sound or sounds.
        answer_ipa: the same in IPA.
        also: other familiar words that sound like the answer.
        say: what the teacher says.
        answer_line: the answer as the script shows it.
        band: the highest band among its words.
        difficulty: an estimate, higher is harder.
        made_up: whether the words are no real ones.
        new_sound: what is added, or put in place of the sound.
        parts: the sounds, onset and rime, or syllables, in order.
        choices: words to compare.
        choices_arpabet: how each of them is said.
        foil: a word without the sound that the choices share.
        correction: what to say if a student is unsure.
        how_to_say: which sounds to hold and which to say short.
        note: what to mind with this item.
        level: how hard it is among items of its kind.
    """

    task: str
    at: Annotated[str, Position]
    stimulus: str
    stimulus_arpabet: str
    stimulus_ipa: str
    sound: str
    answer: str | list[str]
    answer_arpabet: str
    answer_ipa: str
    also: list[str]
    say: str
    answer_line: str
    band: Band
    difficulty: float
    made_up: bool
    new_sound: str
    parts: list[str]
    choices: list[str]
    choices_arpabet: list[str]
    foil: str
    correction: str
    how_to_say: str
    note: str
    level: Annotated[str, Level]


class WarmUp(TypedDict):
    """An oral warm-up.

    Attributes:
        task: what is done with each word.
        at: where in the word.
        seed: makes the same set again.
        notes: one line each on what could not be met, and what would give more.
        review: words of this set that an earlier set of the series had.
        items: from easy to hard.
    """

    task: str
    at: Annotated[str, Position]
    seed: int
    notes: list[str]
    review: list[str]
    items: list[Item]


class Step(TypedDict):
    """One word of a chain.

    Attributes:
        word: the word.
        arpabet: how it is said, as in CMUdict.
        ipa: the same in IPA.
        also: other familiar words that sound like it.
        at: where the sound was changed; empty for the first word.
        old_sound: the sound that was there; empty where one was added.
        new_sound: the sound in its place; empty where one was left off.
        say: what the teacher says.
    """

    word: str
    arpabet: str
    ipa: str
    also: list[str]
    at: str
    old_sound: str
    new_sound: str
    say: str


class Chain(TypedDict):
    """A chain of words, each one sound away from the one before.

    Attributes:
        start: the first word.
        end: the last word.
        seed: makes the same chain again; null where both ends were given.
        notes: one line each on what could not be met.
        steps: the words in order, the first among them.
    """

    start: str
    end: str
    seed: int | None
    notes: list[str]
    steps: list[Step]
