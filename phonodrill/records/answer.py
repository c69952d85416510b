"""What was asked of a student and what came of it: plain records, without a database.

The store (``store.py`` and its neighbors) writes and reads them; needs and the next focus
are worked out from them alone.
"""

from __future__ import annotations

from enum import StrEnum
from typing import NamedTuple


class Kind(StrEnum):
    """In what respect an item is like others."""

    TASK = "task"
    PLACE = "place"
    LEVEL = "level"
    CLUSTER = "cluster"
    CONDITION = "condition"
    ENDING_SOUND = "ending sound"
    CORRESPONDENCE = "correspondence"


class Skill(NamedTuple):
    """One thing that an item asks for.

    Attributes:
        kind: in what respect.
        name: which one: a task of the registry, a place in the word, a level, ``onset
            cluster``, the name of a rule of the table of endings, a sound in IPA
            (``ɪz``), or a correspondence as a taught file writes it (``a_e=ā``).
    """

    kind: Kind
    name: str


class Asked(NamedTuple):
    """One item of a check.

    Attributes:
        how: what sort of item it is, in a teacher's words.
        ask: what the teacher says.
        word: the word it is about.
        answer: what is right.
        shows: what a right answer shows.
        skills: what it asks for; items are counted by these.
    """

    how: str
    ask: str
    word: str
    answer: str
    shows: str
    skills: tuple[Skill, ...]


class Answer(NamedTuple):
    """A student's answer to one item.

    Attributes:
        student: code of the student.
        focus: what the check was about.
        date: of the check, ISO 8601 (``2026-11-25``).
        asked: the item.
        right: whether it was right.
        said: what was said or written instead; empty if right or not noted.
    """

    student: str
    focus: str
    date: str
    asked: Asked
    right: bool
    said: str = ""
