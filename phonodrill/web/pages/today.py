"""Today: a whole lesson on one focus; swap a word, see why it fits, print it, take it along."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated, Any, NamedTuple

from fastapi import APIRouter, Query, Request, Response
from pydantic import Field

from phonodrill.errors import PhonodrillError
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import Overlay
from phonodrill.paper.pack_parts import FOR_STUDENTS, Part
from phonodrill.paper.page import Paper
from phonodrill.render.as_html import fragment
from phonodrill.render.as_json import data_of
from phonodrill.render.document import Document, Section
from phonodrill.render.views import lesson as view
from phonodrill.services.lesson import Lessons, Swapped
from phonodrill.services.lesson_files import Kind, file_name, write_file
from phonodrill.services.lesson_words import Reason, why_it_fits, words_of
from phonodrill.web.page import (
    Page,
    Problem,
    address_of,
    desk_of,
    fields_of,
    options_of,
    problem_from,
    redirect_to,
    show,
)
from phonodrill.web.pages.lesson_form import (
    LONGEST_WORD,
    MOST_DAYS,
    LessonForm,
    make_lessons,
    read_swap,
)

PAGE = Page("/today", "Today", "A whole lesson on one focus, every word and answer checked.")
TEMPLATE = "today.html"
FILE = "/lesson"
MEDIA = {
    Kind.PDF: "application/pdf",
    Kind.PPTX: "application/vnd.openxmlformats-officedocument.presentationml.presentation",
    Kind.DOCX: "application/vnd.openxmlformats-officedocument.wordprocessingml.document",
    Kind.MD: "text/markdown; charset=utf-8",
    Kind.CSV: "text/csv; charset=utf-8",
    Kind.JSON: "application/json",
}
KINDS = {
    Kind.PPTX: "Slides",
    Kind.DOCX: "Word file",
    Kind.MD: "Text (Markdown)",
    Kind.CSV: "Table of words (CSV)",
    Kind.JSON: "Data (JSON)",
}
WITH_ANSWERS = (Kind.CSV, Kind.JSON)
"""Kinds that always hold the answers."""
USUAL = (
    ("Endings", ("s", "es,ies", "ed", "ing", "er,est")),
    ("Spellings", ("sh", "ck", "a_e", "ai,ay", "c=s")),
    ("Sounds", ("/k/", "/ā/", "/ch/")),
    ("Two sounds apart", ("i:e", "sh:ch", "f:v")),
    ("Tasks", ("blend", "segment", "delete", "substitute")),
)
"""Foci that are offered, with what they are."""
SPOKEN = {
    "list": "tbody td:first-child",
    "sentences": "tbody td:first-child",
    "dictation": ".words li",
}
"""Section -> which of its words and sentences may be spoken by the browser."""
PARTS = {
    Part.SCRIPT: "what the teacher says",
    Part.STUDENT: "pages for students",
    Part.CARDS: "word cards",
    Part.MAT: "sorting mat",
    Part.BOXES: "sound boxes",
    Part.DICTATION: "dictation sheet",
    Part.CHECK: "quick check",
    Part.KEY: "key",
}
CHOICES = {
    "parts": options_of(Part, **PARTS),
    "papers": options_of(Paper, letter="letter", a4="A4"),
}
page = APIRouter()
api = APIRouter()


class TodayForm(LessonForm):
    """The page shows one day, for the teacher or for students, and one word more closely."""

    day: int = Field(1, ge=1, le=MOST_DAYS, description="Which day is shown.")
    student: bool = Field(default=False, description="What students get, without answers.")
    word: str = Field("", max_length=LONGEST_WORD, description="A word to look at.")
    old: str = Field("", max_length=LONGEST_WORD, description="A word to swap now.")
    new: str = Field("", max_length=LONGEST_WORD, description="The word to take instead.")


class FileForm(LessonForm):
    """A lesson as a file."""

    student: bool = Field(default=False, description="What students get, without answers.")
    paper: Paper = Field(Paper.LETTER, description="Size of the sheets of a PDF.")
    parts: list[Part] = Field([], max_length=len(Part), description="Parts of a PDF.")


LessonQuery = Annotated[LessonForm, Query()]
TodayQuery = Annotated[TodayForm, Query()]
FileQuery = Annotated[FileForm, Query()]


class Shown(NamedTuple):
    """A section of the lesson on the page.

    Attributes:
        heading: with its minutes.
        body: HTML.
        spoken: which of its words may be spoken, as a selector; empty for none.
    """

    heading: str
    body: str
    spoken: str = ""


class Preview(NamedTuple):
    """All that the page shows of a lesson.

    Attributes:
        document: its title and what it is about.
        shown: its sections.
        words: those that can be swapped.
        swapped: one line each on what was put in.
        word: the word that is looked at; empty for none.
        why: the reasons for it.
    """

    document: Document
    shown: tuple[Shown, ...]
    words: tuple[str, ...]
    swapped: tuple[str, ...]
    word: str = ""
    why: tuple[Reason, ...] = ()


@page.get("/")
@page.get(PAGE.path)
async def today_page(request: Request, form: TodayQuery) -> Response:
    """Show the form and a lesson."""
    if not form.focus:
        return _show(request, form)
    if form.seed is None:
        return redirect_to(PAGE.path, form.with_seed())
    problem: Problem | None = None
    if form.old:
        try:
            return redirect_to(PAGE.path, await _swapped(request, form), "word")
        except PhonodrillError as error:
            problem = problem_from(error)
    desk = desk_of(request)
    # An address may name a swap that cannot be done any more: the lesson is shown without.
    for tried in (form, form.model_copy(update={"swap": []})):
        try:
            preview = await desk.ask(make_preview, tried, desk.own_words(), desk.lessons)
        except PhonodrillError as error:
            problem = problem or problem_from(error)
        else:
            return _show(request, tried, preview, problem)
    return _show(request, form, problem=problem)


async def _swapped(request: Request, form: TodayForm) -> TodayForm:
    """Put the swap that is asked for behind the others.

    Raises:
        PhonodrillError: if it cannot be done.
    """
    swap = [*form.swap, f"{form.old}:{form.new}"]
    asked = form.model_copy(update={"swap": swap, "old": "", "new": ""})
    desk = desk_of(request)
    swapped = await desk.ask(make_lessons, asked, desk.own_words(), desk.lessons)
    return asked.model_copy(update={"word": _last_put_in(swapped)})


def _last_put_in(swapped: Swapped) -> str:
    """Return the word that the last swap put in, to be looked at; empty for oral items."""
    _, _, word = swapped.notes[-1].rpartition(" → ")
    return word if word in words_of(swapped.reads) else ""


def _show(
    request: Request,
    form: TodayForm,
    preview: Preview | None = None,
    problem: Problem | None = None,
) -> Response:
    return show(
        request,
        TEMPLATE,
        PAGE,
        form=form,
        problem=problem,
        choices=CHOICES,
        preview=preview,
        usual=_usual(form),
        links=_links(form),
        state=fields_of(form, leave_out={"old", "new", "word"}),
    )


def _usual(form: TodayForm) -> list[tuple[str, list[tuple[str, str]]]]:
    """Pair each usual focus with its address; class and minutes stay as they are."""
    plain = form.model_copy(
        update={"swap": [], "word": "", "old": "", "new": "", "seed": None, "day": 1}
    )
    return [
        (group, [(focus, address_of(PAGE.path, plain, focus=focus)) for focus in foci])
        for group, foci in USUAL
    ]


def _links(form: TodayForm) -> dict[str, Any]:
    """Write the addresses that the page leads to."""
    plain = form.model_copy(update={"old": "", "new": ""})
    lesson = plain.model_copy(update={"word": "", "day": 1})
    return {
        "again": address_of(PAGE.path, lesson, seed=None, swap=None),
        "teacher": address_of(PAGE.path, plain, student=None),
        "student": address_of(PAGE.path, plain, student="true", word=None),
        "days": [address_of(PAGE.path, plain, day=day) for day in range(1, form.days + 1)],
        "word": lambda word: address_of(PAGE.path, plain, word=word) + "#word",
        "undo": [
            address_of(PAGE.path, plain, swap=[*form.swap[:i], *form.swap[i + 1 :]], word=None)
            for i in range(len(form.swap))
        ],
        "files": [
            (text, address_of(f"{FILE}.{kind}", lesson))
            for kind, text in KINDS.items()
            if not (form.student and kind in WITH_ANSWERS)
        ],
        "board": address_of("/show", lesson, what="lesson", student=None, item=1),
    }


def make_preview(lexicon: Lexicon, form: TodayForm, overlay: Overlay, lessons: Lessons) -> Preview:
    """Make what the page shows of a lesson."""
    swapped = make_lessons(lexicon, form, overlay, lessons)
    read = swapped.reads[min(form.day, form.days) - 1]
    document = view.document([read.lesson], student=form.student)
    names = () if form.student else tuple(section.name for section in read.lesson.sections)
    word = form.old or form.word.lower()
    return Preview(
        document,
        tuple(_shown(document.sections, names)),
        words_of([read]),
        _put_in(swapped, form),
        word,
        why_it_fits(read, word) if word else (),
    )


def _put_in(swapped: Swapped, form: TodayForm) -> tuple[str, ...]:
    """Say of each swap what was put in; on several days these may be several words."""
    if form.days == 1:
        return swapped.notes
    return tuple(f"{swap.old} → {swap.new or 'other words'}" for swap in map(read_swap, form.swap))


def _shown(sections: tuple[Section, ...], names: tuple[str, ...]) -> Iterator[Shown]:
    """Part a document at its headings; the caution at its end is on every page already."""
    groups: list[list[Section]] = []
    for section in sections:
        if section.level == 1 and section.heading:
            groups.append([])
        if section.level > 1 or section.heading:
            groups[-1].append(section)
    for number, group in enumerate(groups):
        # The page has a title and the lesson has one: sections stand on the third level.
        lower = [section._replace(level=section.level + 1) for section in group]
        spoken = SPOKEN.get(names[number], "") if number < len(names) else ""
        yield Shown(group[0].heading, fragment(lower), spoken)


@page.get(FILE + ".{kind}")
async def lesson_file(request: Request, kind: Kind, form: FileQuery) -> Response:
    """Send a lesson as a file."""
    desk = desk_of(request)
    swapped = await desk.ask(make_lessons, form.with_seed(), desk.own_words(), desk.lessons)
    lessons = [read.lesson for read in swapped.reads]
    content = await desk.press(
        write_file,
        lessons,
        kind,
        student=form.student,
        paper=form.paper,
        parts=FOR_STUDENTS if form.student else form.parts or list(Part),
    )
    name = file_name(lessons[0], kind, student=form.student)
    headers = {"content-disposition": f'attachment; filename="{name}"'}
    return Response(content, media_type=MEDIA[kind], headers=headers)


@api.get("/lesson", tags=["lessons"], summary="A whole lesson, or one for each of several days")
async def lesson_data(request: Request, form: LessonQuery) -> dict[str, Any]:
    """Return the fields that ``phonodrill lesson --format json`` writes."""
    desk = desk_of(request)
    swapped = await desk.ask(make_lessons, form.with_seed(), desk.own_words(), desk.lessons)
    return data_of(view.document([read.lesson for read in swapped.reads]))
