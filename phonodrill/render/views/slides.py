"""How a lesson is shown on a screen: a question, and its answer on the next slide.

Two sections keep their answers in the notes: oral work, where letters on the screen
would be a help, and the quick check, which one student after another is to answer.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import Any

from phonodrill.lesson import tree
from phonodrill.lesson.checking import COUNT, SPELL, WRITE
from phonodrill.lesson.tree import Lesson
from phonodrill.render.document import Table, counted
from phonodrill.render.slide import Shown, Size, Slide
from phonodrill.render.views import lesson as lesson_view

LISTEN = Shown("Listen.")
LISTEN_AND_WRITE = Shown("Listen. Write.")
NO_BASE = "no base"
_ON_HEARING = {SPELL: LISTEN_AND_WRITE, WRITE: LISTEN_AND_WRITE, COUNT: LISTEN}
"""Items of the quick check whose word is said, not shown."""

Item = tuple[Slide, ...]
"""A question and what follows it, each without its place in the title."""


def slides_of(lessons: Sequence[Lesson], *, student: bool = False) -> tuple[Slide, ...]:
    """Turn one lesson, or those of several days, into slides.

    Args:
        lessons: one a day, in order.
        student: leave out answers and what only the teacher says.
    """
    slides: list[Slide] = []
    for lesson in lessons:
        day = f"Day {lesson.request.day}: " if len(lessons) > 1 else ""
        slides += [slide._replace(title=f"{day}{slide.title}") for slide in _lesson(lesson)]
    if not student:
        return tuple(slides)
    return tuple(slide._replace(notes="") for slide in slides if not slide.is_answer)


def _lesson(lesson: Lesson) -> Iterator[Slide]:
    about = lesson_view.document((lesson,)).about
    yield Slide(lesson.title, notes=_notes(about, *lesson.notes, lesson.caution))
    advice: list[str] = []
    for number, section in enumerate(lesson.sections, 1):
        if isinstance(section, tree.Next):
            advice += [section.script, *(f"{row.result}: {row.do}" for row in section.advice)]
        else:
            yield from _section(f"{number}. {section.title}", section)
    yield Slide("The end", (Shown(lesson.caution, Size.REMARK),), notes=_notes(*advice))


def _section(title: str, section: tree.Section) -> Iterator[Slide]:
    """Open a section, then show its items, each with its place in the title."""
    time = counted(section.minutes, "minute") if section.minutes else ""
    spoken = section.how_to_say if isinstance(section, tree.WarmUp) else ()
    yield Slide(title, notes=_notes(time, section.script, *spoken))
    items = list(_ITEMS[section.name](section))
    for place, (question, *answers) in enumerate(items, 1):
        part = f", {question.title}" if question.title else ""
        head = f"{title}{part}: {place} of {len(items)}"
        yield question._replace(title=head)
        for step, answer in enumerate(answers, 1):
            name = "answer" if len(answers) == 1 else f"step {step}"
            yield answer._replace(title=f"{head}, {name}", is_answer=True)


def _notes(*lines: str) -> str:
    return "\n".join(line for line in lines if line.strip())


def _word(word: str, *remarks: str) -> tuple[Shown, ...]:
    """Show a word large, with remarks under it."""
    return (
        Shown(word, Size.WORD),
        *(Shown(remark, Size.REMARK) for remark in remarks if remark),
    )


def _asked(
    title: str,
    asked: tuple[Shown, ...],
    answered: tuple[Shown, ...],
    *,
    say: str,
    answer: str,
) -> Item:
    """Make a question and its answer; the speaker knows the answer before it is shown."""
    notes = _notes(say, f"Answer: {answer}")
    return Slide(title, asked, notes=notes), Slide("", answered, notes=notes)


def _warmup(section: tree.WarmUp) -> Iterator[Item]:
    for activity in section.activities:
        for item in activity.items:
            notes = _notes(
                item.say,
                f"Answer: {item.answer_line}",
                item.heard,
                f"If a student is unsure: {item.correction}",
            )
            yield (Slide(activity.title, (LISTEN,), notes=notes),)


def _review(section: tree.Review) -> Iterator[Item]:
    for row in section.letters:
        also = f"also: {', '.join(row.also)}" if row.also else ""
        yield _asked(
            "",
            _word(row.letters),
            (
                Shown(row.letters, Size.WORD),
                Shown(row.sound),
                *_remarks(f"as in {row.key_word}", also),
            ),
            say="Which sound is it? Letters hidden: write the letters.",
            answer=f"{row.sound}, as in {row.key_word}{f'; {also}' if also else ''}",
        )


def _remarks(*texts: str) -> tuple[Shown, ...]:
    return tuple(Shown(text, Size.REMARK) for text in texts if text)


def _rule(section: tree.Rule) -> Iterator[Item]:
    for says in dict.fromkeys(point.says for point in section.points):
        yield (Slide("", (Shown(says),), notes=f"Say: {says}"),)
        for point in section.points:
            if point.says == says:
                yield _example(point)
    for watch in section.watch_outs:
        yield _asked(
            "watch out",
            _word(watch.word),
            _word(watch.word, watch.why),
            say=f"Show “{watch.word}”. Read it. What is odd?",
            answer=watch.why,
        )


def _example(point: tree.Point) -> Item:
    if point.base:
        asked = _word(point.base, "Add the ending.")
        answered = Shown(f"{point.base} → {point.word}", Size.WORD)
        say = f"Show “{point.base}”. Add the ending and read it."
    else:
        asked, answered = _word(point.word), Shown(point.word, Size.WORD)
        say = f"Show “{point.word}”. Read it."
    known = (point.sound,) if point.sound and not point.condition.endswith(point.sound) else ()
    return _asked(
        "example",
        asked,
        (answered, *_remarks(point.condition, *known)),
        say=say,
        answer="; ".join((point.word, point.condition, *known)),
    )


def _build(section: tree.Build) -> Iterator[Item]:
    for word in section.words:
        steps = [f"{step.do} → {step.shows}" for step in word.steps]
        says = f"the ending says {word.sound}" if word.base else ""
        notes = _notes(*steps, says, f"Answer: {word.word}")
        first, *others = word.steps
        slides = [Slide("", _word(first.shows), notes=notes)]
        for step in others:
            heard = says if step is others[-1] else ""
            slides.append(Slide("", _word(step.shows, step.do, heard), notes=notes))
        yield tuple(slides)


def _list(section: tree.SoundOut) -> Iterator[Item]:
    for word in section.words:
        chunks = " · ".join(piece.letters for piece in word.pieces)
        sounds = " ".join(
            f"/{' '.join(piece.sounds)}/" if piece.sounds else "-" for piece in word.pieces
        )
        odd = ", ".join(piece.letters for piece in word.pieces if piece.irregular)
        by_heart = f"by heart: {odd}" if odd else ""
        yield _asked(
            "",
            _word(word.word),
            (Shown(chunks, Size.WORD), Shown(sounds), *_remarks(by_heart)),
            say="Point to each chunk, then sweep along.",
            answer=f"{chunks}, {sounds}{f', {by_heart}' if by_heart else ''}",
        )


def _sentences(section: tree.Sentences) -> Iterator[Item]:
    for line in section.lines:
        used = ": ".join(filter(None, (line.word, line.part_of_speech)))
        helped = f"The teacher reads: {', '.join(line.not_yet)}" if line.not_yet else ""
        yield _asked(
            "",
            (Shown(line.text),),
            (Shown(line.text), *_remarks(used)),
            say=_notes(f"Read: {line.text}", helped),
            answer=used,
        )


def _sort(section: tree.Sort) -> Iterator[Item]:
    words = Shown("   ".join(section.words))
    yield (Slide("the words", (words,), notes="Read each word."),)
    for sorting in section.sortings:
        headings = (sorting.by, "words")
        key = tuple((group.heading, ", ".join(group.words)) for group in sorting.groups)
        notes = _notes(f"Sort by {sorting.by}.", *(f"{head}: {text}" for head, text in key))
        blank = Table(headings, tuple((heading, "") for heading, _ in key))
        mixed = (words._replace(size=Size.REMARK),)
        yield (
            Slide(f"by {sorting.by}", mixed, blank, notes),
            Slide("", (), Table(headings, key), notes),
        )


def _bases(section: tree.Bases) -> Iterator[Item]:
    for row in section.words:
        bases = " or ".join(row.bases) or NO_BASE
        yield _asked(
            "",
            _word(row.word),
            (Shown(row.word), *_word(bases, row.why)),
            say=f"Show “{row.word}”. Which word did it come from? Write it.",
            answer=f"{bases}. {row.why}",
        )


def _dictation(section: tree.Dictation) -> Iterator[Item]:
    for sound in section.sounds:
        spellings = ", ".join(sound.spellings)
        shown: tuple[Shown, ...] = (Shown(spellings, Size.WORD), Shown(sound.sound))
        yield _dictated("sound", sound.sound, shown, spellings)
    for word in section.words:
        yield _dictated("word", word.word, _word(word.word), word.word)
    if section.sentence:
        text = section.sentence
        yield _dictated("sentence", text, (Shown(text),), text)


def _dictated(title: str, said: str, shown: tuple[Shown, ...], answer: str) -> Item:
    return _asked(title, (LISTEN_AND_WRITE,), shown, say=f"Say: {said}", answer=answer)


def _check(section: tree.Check) -> Iterator[Item]:
    for row in section.questions:
        heard = _ON_HEARING.get(row.how)
        shown = (heard,) if heard else _word(row.word)
        notes = _notes(row.ask, f"Answer: {row.answer}", f"A right answer {row.shows}.")
        yield (Slide("", shown, notes=notes),)


_ITEMS: dict[str, Callable[[Any], Iterator[Item]]] = {
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
}
