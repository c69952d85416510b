"""The lesson as one tree of plain values: all that a renderer needs.

Everything is text, a number, or a tuple of these, so that the tree can be written
as JSON and read again (see ``as_data.py`` and ``from_data.py``).
"""

from __future__ import annotations

from typing import NamedTuple

from phonodrill.lesson.request import Request

CAUTION = (
    "A teaching aid, not a diagnosis. Your curriculum and qualified staff decide. "
    "Dialect differences are not errors."
)


class Oral(NamedTuple):
    """One oral item: what to say, and the checked answer.

    Attributes:
        words: all words that are said or shown.
        stimulus: the word that is said; empty where parts or choices are said.
        sound, new: what it is about, and what is put in its place or added.
        answer: the word heard in the end; empty where it is a sound or sounds.
        arpabet, answer_arpabet: how both are said.
        say, answer_line, correction: the words for class.
        heard: how it sounds before and after, sound by sound.
    """

    words: tuple[str, ...]
    stimulus: str
    sound: str
    new: str
    answer: str
    arpabet: str
    answer_arpabet: str
    say: str
    answer_line: str
    correction: str
    heard: str


class Activity(NamedTuple):
    """Oral items of one task."""

    task: str
    at: str
    title: str
    items: tuple[Oral, ...]


class WarmUp(NamedTuple):
    """Oral work; no letters are shown."""

    name: str
    minutes: int
    title: str
    script: str
    activities: tuple[Activity, ...]
    how_to_say: tuple[str, ...]


class Letter(NamedTuple):
    """A correspondence to say and to spell.

    Attributes:
        letters: as they are shown.
        sound: what they say, between slashes.
        key_word: a word that has it.
        also: what else a class may write for the sound, of all it was taught.
    """

    letters: str
    sound: str
    key_word: str
    also: tuple[str, ...]


class Review(NamedTuple):
    """Say-and-spell review of letters and sounds."""

    name: str
    minutes: int
    title: str
    script: str
    letters: tuple[Letter, ...]


class Point(NamedTuple):
    """One condition of the focus with one example.

    Attributes:
        condition: when it is so.
        says: the rule in a teacher's words.
        word: the example.
        base: its base word; empty where the word has no ending.
        sound: what the focus says there, between slashes.
    """

    condition: str
    says: str
    word: str
    base: str
    sound: str


class WatchOut(NamedTuple):
    """A word to be ready for, and why."""

    word: str
    why: str


class Rule(NamedTuple):
    """The rule, one example a condition, and what to watch out for.

    For a task, ``activities`` have the items it is shown with; the points follow from them.
    """

    name: str
    minutes: int
    title: str
    script: str
    points: tuple[Point, ...]
    watch_outs: tuple[WatchOut, ...]
    activities: tuple[Activity, ...] = ()


class BuildStep(NamedTuple):
    """One thing that is done, and the letters that stand there then."""

    do: str
    shows: str


class Built(NamedTuple):
    """A word built step by step.

    Attributes:
        word: what is built.
        base: what it is built from; empty where it is built from single spellings.
        part_of_speech: how the word is used, the usual one first; may be empty.
        steps: one by one.
        sound: what the focus says in it, between slashes.
    """

    word: str
    base: str
    part_of_speech: str
    steps: tuple[BuildStep, ...]
    sound: str


class Build(NamedTuple):
    """Words to build."""

    name: str
    minutes: int
    title: str
    script: str
    words: tuple[Built, ...]


class Piece(NamedTuple):
    """The letters of one correspondence in a word.

    Attributes:
        letters: ``a_e`` for a split vowel.
        at: where its letters stand.
        sounds: what they say; none where silent.
        irregular: whether it is the odd part of its word.
    """

    letters: str
    at: tuple[int, ...]
    sounds: tuple[str, ...]
    irregular: bool


class Listed(NamedTuple):
    """A word to sound out.

    Attributes:
        word: the word.
        review: whether it has not the focus, or comes back from an earlier lesson.
        condition: which condition of the focus it has; empty without the focus.
        part_of_speech: how it is used, the usual one first; may be empty.
        arpabet: how it is said.
        pieces: letters tied to sounds.
    """

    word: str
    review: bool
    condition: str
    part_of_speech: str
    arpabet: str
    pieces: tuple[Piece, ...]


class SoundOut(NamedTuple):
    """The list to sound out."""

    name: str
    minutes: int
    title: str
    script: str
    words: tuple[Listed, ...]


class Line(NamedTuple):
    """A sentence.

    Attributes:
        text: the sentence.
        word: the word it is for.
        part_of_speech: how the word is used there.
        gap: the sentence with a gap for the word.
        not_yet: words that the class cannot read yet; the teacher reads these.
    """

    text: str
    word: str
    part_of_speech: str
    gap: str
    not_yet: tuple[str, ...]


class Sentences(NamedTuple):
    """Sentences with words of the lesson."""

    name: str
    minutes: int
    title: str
    script: str
    lines: tuple[Line, ...]


class Group(NamedTuple):
    """One heading of a sort and its words: the key."""

    heading: str
    words: tuple[str, ...]


class Sorting(NamedTuple):
    """One way to sort the words."""

    by: str
    groups: tuple[Group, ...]


class Sort(NamedTuple):
    """Words to sort, mixed, and each way to sort them with its key."""

    name: str
    minutes: int
    title: str
    script: str
    words: tuple[str, ...]
    sortings: tuple[Sorting, ...]


class Found(NamedTuple):
    """A word and the bases it may come from, the likeliest first."""

    word: str
    bases: tuple[str, ...]
    why: str


class Bases(NamedTuple):
    """Words whose base is to be found; some have none."""

    name: str
    minutes: int
    title: str
    script: str
    words: tuple[Found, ...]


class HeardSound(NamedTuple):
    """A sound to write.

    Attributes:
        sound: between slashes.
        spellings: letters that are right.
    """

    sound: str
    spellings: tuple[str, ...]


class HeardWord(NamedTuple):
    """A word to write, and how it is said."""

    word: str
    arpabet: str


class Dictation(NamedTuple):
    """Sounds, words and one sentence to write."""

    name: str
    minutes: int
    title: str
    script: str
    sounds: tuple[HeardSound, ...]
    words: tuple[HeardWord, ...]
    sentence: str


class Question(NamedTuple):
    """One item of the quick check.

    Attributes:
        how: what sort of item it is.
        ask: what the teacher says.
        word: the word it is about.
        answer: what is right.
        shows: what a right answer shows.
    """

    how: str
    ask: str
    word: str
    answer: str
    shows: str


class Check(NamedTuple):
    """The quick check.

    For a task, ``activities`` have the items asked; the questions follow from them.
    """

    name: str
    minutes: int
    title: str
    script: str
    questions: tuple[Question, ...]
    activities: tuple[Activity, ...] = ()


class Advice(NamedTuple):
    """What to do after a result of the quick check."""

    result: str
    do: str


class Next(NamedTuple):
    """What to do next."""

    name: str
    minutes: int
    title: str
    script: str
    advice: tuple[Advice, ...]


Section = (
    WarmUp | Review | Rule | Build | SoundOut | Sentences | Sort | Bases | Dictation | Check | Next
)


class Lesson(NamedTuple):
    """A lesson.

    Attributes:
        title: what it is about.
        kind: sort of focus.
        request: what was asked for.
        oral_minutes: planned minutes of work on sounds without letters.
        notes: one line each on what could not be met and was relaxed.
        sections: in order.
        caution: for the foot of every page.
    """

    title: str
    kind: str
    request: Request
    oral_minutes: int
    notes: tuple[str, ...]
    sections: tuple[Section, ...]
    caution: str = CAUTION
