"""Fields of lessons: the records of the lesson's tree, as they are."""

from __future__ import annotations

from typing import TypedDict

from phonodrill.lesson import tree


class OneLesson(TypedDict):
    """A lesson; lesson --from reads it again.

    Attributes:
        lesson: the lesson.
    """

    lesson: tree.Lesson


class DaysOfLessons(TypedDict):
    """Lessons of several days; lesson --from reads them again.

    Attributes:
        lessons: one a day.
    """

    lessons: list[tree.Lesson]


OF_EVERY_SECTION = {
    "name": "Which section it is.",
    "minutes": "How long it takes.",
    "title": "What stands above it.",
    "script": "What the teacher says and does.",
}
SAID_BY_NAME: dict[tuple[type, str], str] = {
    (tree.Activity, "task"): "What is done with the words.",
    (tree.Activity, "at"): "Where in the word.",
    (tree.Activity, "title"): "What stands above it.",
    (tree.WarmUp, "how_to_say"): "Which sounds to hold and which to say short.",
    (tree.WatchOut, "word"): "The word.",
    (tree.WatchOut, "why"): "What is odd about it.",
    (tree.BuildStep, "do"): "What is done.",
    (tree.BuildStep, "shows"): "The letters that stand there then.",
    (tree.Group, "heading"): "What stands above it.",
    (tree.Group, "words"): "The words that belong there.",
    (tree.Sorting, "by"): "What they are sorted by.",
    (tree.Sort, "words"): "The words, mixed.",
    (tree.Found, "word"): "The word.",
    (tree.Found, "bases"): "Bases it may come from, the likeliest first; may be none.",
    (tree.Found, "why"): "The reason.",
    (tree.HeardWord, "word"): "The word.",
    (tree.HeardWord, "arpabet"): "How it is said, as in CMUdict.",
    (tree.Dictation, "sentence"): "The sentence; may be empty.",
    (tree.Advice, "result"): "The result of the quick check.",
    (tree.Advice, "do"): "What to do then.",
}
"""What a field of the tree holds, where in code its name says enough."""
