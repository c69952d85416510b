"""How a lesson is shown: the teacher's script with answers, or the student's part without."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import Any

from phonodrill.lesson import tree
from phonodrill.lesson.as_data import as_data
from phonodrill.lesson.tree import Lesson
from phonodrill.render.document import (
    Document,
    Mark,
    Marked,
    Questions,
    Section,
    Table,
    Words,
    counted,
)

BLANK = "________"


def document(lessons: Sequence[Lesson], *, student: bool = False) -> Document:
    """Show one lesson, or those of several days.

    Args:
        lessons: one a day, in order.
        student: leave out answers and what only the teacher says.
    """
    sections: list[Section] = []
    for lesson in lessons:
        day = f"Day {lesson.request.day}: " if len(lessons) > 1 else ""
        shown = _student(lesson) if student else _teacher(lesson)
        sections += [part._replace(heading=f"{day}{part.heading}".rstrip(": ")) for part in shown]
    first = lessons[0]
    sections.append(Section("", _text(first.caution)))
    title = first.title if len(lessons) == 1 else f"{counted(len(lessons), 'day')}. {first.title}"
    data = (
        {"lesson": as_data(first)}
        if len(lessons) == 1
        else {"lessons": [as_data(lesson) for lesson in lessons]}
    )
    shown_about = "" if student else about(first)
    return Document(title, shown_about, tuple(sections), data, list(_records(lessons)))


def about(lesson: Lesson) -> str:
    """Say how a lesson was made, in one line."""
    request = lesson.request
    minutes = sum(section.minutes for section in lesson.sections)
    taught = ", words by what was taught" if request.taught else ""
    return f"{minutes} minutes, words of band {request.band} or lower{taught}, seed {request.seed}"


def _teacher(lesson: Lesson) -> Iterator[Section]:
    for number, section in enumerate(lesson.sections, 1):
        yield Section(headed(number, section), _text(section.script or " "))
        yield from (part._replace(level=2) for part in parts_of(section))
    if lesson.notes:
        yield Section("Mind", _text("\n".join(lesson.notes)))


def headed(number: int, section: tree.Section) -> str:
    """Write the heading of a section, with its minutes."""
    time = f" ({counted(section.minutes, 'minute')})" if section.minutes else ""
    return f"{number}. {section.title}{time}"


def parts_of(section: tree.Section) -> Iterator[Section]:
    """Show what the teacher needs of a section, answers among it."""
    yield from _TEACHER[section.name](section)


def _student(lesson: Lesson) -> Iterator[Section]:
    for section in lesson.sections:
        if section.name in _STUDENT:
            yield from _STUDENT[section.name](section)


def _text(text: str) -> Marked:
    return Marked(((text, Mark.NONE),))


def _warmup(section: tree.WarmUp) -> Iterator[Section]:
    for activity in section.activities:
        lines = tuple((item.say, item.answer_line, item.heard) for item in activity.items)
        yield Section(activity.title, Questions(lines))
        yield Section("If a student is unsure, as in 1", _text(activity.items[0].correction))
    if section.how_to_say:
        yield Section("Saying the sounds", _text("\n".join(section.how_to_say)))


def _review(section: tree.Review) -> Iterator[Section]:
    rows = tuple(
        (row.letters, row.sound, row.key_word, ", ".join(row.also) or "-")
        for row in section.letters
    )
    yield Section("", Table(("letters", "sound", "as in", "also right when spelled"), rows))


def _rule(section: tree.Rule) -> Iterator[Section]:
    told = dict.fromkeys(point.says for point in section.points)
    yield Section("Say", _text("\n".join(told)))
    has_base = any(point.base for point in section.points)
    if has_base:
        rows = tuple((p.condition, p.base, p.word, p.sound) for p in section.points)
        yield Section("One example of each", Table(("when", "base", "word", "it says"), rows))
    else:
        bare = tuple((p.condition, p.word) for p in section.points)
        yield Section("One example of each", Table(("when", "word"), bare))
    if section.watch_outs:
        watch = tuple((row.word, row.why) for row in section.watch_outs)
        yield Section("Watch out", Table(("word", "why"), watch))


def _build(section: tree.Build) -> Iterator[Section]:
    rows: tuple[tuple[str, ...], ...] = tuple(
        (" + ".join(step.do for step in word.steps), word.word) for word in section.words
    )
    if any(word.base for word in section.words):
        rows = tuple((word.word, _change(word), word.sound) for word in section.words)
        yield Section("", Table(("word", "steps", "the ending says"), rows))
    else:
        yield Section("", Table(("lay, one after the other", "read"), rows))


def _change(word: tree.Built) -> str:
    steps = [f"{step.do} → {step.shows}" for step in word.steps[1:]]
    return "; ".join([word.base, *steps])


def _list(section: tree.SoundOut) -> Iterator[Section]:
    rows = tuple(
        (
            word.word,
            " · ".join(piece.letters for piece in word.pieces),
            " ".join(
                f"/{' '.join(piece.sounds)}/" if piece.sounds else "-" for piece in word.pieces
            ),
            "review" if word.review else word.part_of_speech,
        )
        for word in section.words
    )
    yield Section("", Table(("word", "chunks", "sounds", "used as"), rows))
    odd = tuple(
        f"{word.word}: {', '.join(piece.letters for piece in word.pieces if piece.irregular)}"
        for word in section.words
        if any(piece.irregular for piece in word.pieces)
    )
    if odd:
        yield Section("Odd letters, to learn by heart", Words(odd))


def _sentences(section: tree.Sentences) -> Iterator[Section]:
    rows = tuple((line.text, line.word, line.part_of_speech) for line in section.lines)
    yield Section("", Table(("sentence", "word", "used as"), rows))
    yet = tuple(dict.fromkeys(word for line in section.lines for word in line.not_yet))
    if yet:
        yield Section("The teacher reads these words", Words(yet))


def _sort(section: tree.Sort) -> Iterator[Section]:
    yield Section("To sort", Words(section.words))
    for sorting in section.sortings:
        rows = tuple((group.heading, ", ".join(group.words)) for group in sorting.groups)
        yield Section(f"Key, by {sorting.by}", Table((sorting.by, "words"), rows))


def _bases(section: tree.Bases) -> Iterator[Section]:
    rows = tuple((row.word, " or ".join(row.bases) or "-", row.why) for row in section.words)
    yield Section("", Table(("word", "base", "why"), rows))


def _dictation(section: tree.Dictation) -> Iterator[Section]:
    rows = tuple((row.sound, ", ".join(row.spellings)) for row in section.sounds)
    yield Section("Sounds", Table(("say", "any of these is right"), rows))
    yield Section("Words", Words(tuple(row.word for row in section.words)))
    if section.sentence:
        yield Section("Sentence", _text(section.sentence))


def _check(section: tree.Check) -> Iterator[Section]:
    lines = tuple((row.ask, row.answer, f"({row.shows})") for row in section.questions)
    yield Section("", Questions(lines))


def _next(section: tree.Next) -> Iterator[Section]:
    rows = tuple((row.result, row.do) for row in section.advice)
    yield Section("", Table(("result", "do"), rows))


def _student_list(section: tree.SoundOut) -> Iterator[Section]:
    yield Section("Read", Words(tuple(word.word for word in section.words)))


def _student_sentences(section: tree.Sentences) -> Iterator[Section]:
    yield Section("Read the sentences", _text("\n".join(line.text for line in section.lines)))


def _student_sort(section: tree.Sort) -> Iterator[Section]:
    yield Section("Words to sort", Words(section.words))
    for sorting in section.sortings:
        headings = tuple(group.heading for group in sorting.groups)
        blank = tuple(BLANK for _ in headings)
        most = max(len(group.words) for group in sorting.groups)
        yield Section(f"Sort by {sorting.by}", Table(headings, (blank,) * most))


def _student_bases(section: tree.Bases) -> Iterator[Section]:
    rows = tuple((row.word, BLANK) for row in section.words)
    yield Section("Find the base", Table(("word", "base"), rows))


def _student_dictation(section: tree.Dictation) -> Iterator[Section]:
    lines = len(section.sounds) + len(section.words)
    rows = tuple((str(number), BLANK) for number in range(1, lines + 1))
    yield Section("Dictation: sounds, then words", Table(("", "write"), rows))
    if section.sentence:
        yield Section("Sentence", _text(BLANK * 8))


_TEACHER: dict[str, Callable[[Any], Iterator[Section]]] = {
    "warmup": _warmup,
    "review": _review,
    "rule": _rule,
    "build": _build,
    "list": _list,
    "sentences": _sentences,
    "sort": _sort,
    "bases": _bases,
    "dictation": _dictation,
    "check": _check,
    "next": _next,
}
_STUDENT: dict[str, Callable[[Any], Iterator[Section]]] = {
    "list": _student_list,
    "sentences": _student_sentences,
    "sort": _student_sort,
    "bases": _student_bases,
    "dictation": _student_dictation,
}


def _records(lessons: Sequence[Lesson]) -> Iterator[dict[str, Any]]:
    """Write every word of the lessons as one row: for a spreadsheet of words."""
    for lesson in lessons:
        for section in lesson.sections:
            for word, detail, answer in _rows(section):
                yield {
                    "day": lesson.request.day,
                    "section": section.name,
                    "word": word,
                    "detail": detail,
                    "answer": answer,
                }


def _rows(section: tree.Section) -> Iterator[tuple[str, str, str]]:
    """Yield word, detail and answer of each item of a section that has words."""
    if section.name in _CELLS:
        yield from _CELLS[section.name](section)


_CELLS: dict[str, Callable[[Any], Iterator[tuple[str, str, str]]]] = {
    "warmup": lambda section: (
        (item.stimulus or ", ".join(item.words), item.say, item.answer_line)
        for activity in section.activities
        for item in activity.items
    ),
    "rule": lambda section: ((p.word, p.condition, p.base) for p in section.points),
    "build": lambda section: (
        (word.word, "; ".join(step.do for step in word.steps), word.base) for word in section.words
    ),
    "list": lambda section: ((word.word, word.condition, word.arpabet) for word in section.words),
    "sort": lambda section: (
        (word, sorting.by, group.heading)
        for sorting in section.sortings
        for group in sorting.groups
        for word in group.words
    ),
    "bases": lambda section: ((w.word, w.why, ", ".join(w.bases)) for w in section.words),
    "dictation": lambda section: ((word.word, "", word.arpabet) for word in section.words),
    "check": lambda section: ((q.word, q.ask, q.answer) for q in section.questions),
}
