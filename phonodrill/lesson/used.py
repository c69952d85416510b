"""Which words a lesson used, so that they rest."""

from __future__ import annotations

from phonodrill.lesson import tree
from phonodrill.lesson.checking import TRAP
from phonodrill.lesson.tree import Lesson


def words_of_lesson(lesson: Lesson) -> frozenset[str]:
    """Return the words that a lesson practices, and those of its oral items.

    Words that stand only in a sentence, a watch-out or as a trap of the check are not
    among them: there are few of these.
    """
    return frozenset(word for section in lesson.sections for word in _words(section))


def _words(section: tree.Section) -> list[str]:
    if isinstance(section, (tree.WarmUp, tree.Rule, tree.Check)) and section.activities:
        items = (item for activity in section.activities for item in activity.items)
        return [word for item in items for word in item.words]
    if isinstance(section, tree.Rule):
        return [point.word for point in section.points]
    if isinstance(section, tree.Sort):
        return list(section.words)
    if isinstance(section, (tree.Build, tree.SoundOut, tree.Bases, tree.Dictation)):
        return [row.word for row in section.words]
    if isinstance(section, tree.Check):
        return [question.word for question in section.questions if question.how != TRAP]
    return []
