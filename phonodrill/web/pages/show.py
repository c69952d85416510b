"""Show: one item at a time, large, for a class that looks at the board."""

from __future__ import annotations

from collections.abc import Sequence
from enum import StrEnum
from typing import Annotated, Any

from fastapi import APIRouter, Query, Request, Response
from pydantic import Field

from phonodrill.errors import PhonodrillError
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import Overlay
from phonodrill.services.board import (
    Board,
    Boxes,
    Slide,
    show_items,
    show_lesson,
    show_words,
)
from phonodrill.services.lesson import Lessons
from phonodrill.sounds.places import Position
from phonodrill.web.page import (
    Page,
    address_of,
    desk_of,
    fields_of,
    options_of,
    problem_from,
    redirect_to,
    show,
)
from phonodrill.web.pages import warmup
from phonodrill.web.pages.lesson_form import LessonForm, make_lessons

PAGE = Page("/show", "Show", "One item at a time, large enough for the back of the room.")
TEMPLATE = "show.html"
BOARD = "board.html"
LONGEST_TIME = 600
LONG_WORD, LONG, LONGER = 7, 60, 110
"""Letters beyond which a word or a line is set smaller."""


class What(StrEnum):
    """What is shown."""

    ITEMS = "items"
    LESSON = "lesson"
    WORDS = "words"


NAMES = {
    What.ITEMS: "Oral items",
    What.LESSON: "Words of a lesson",
    What.WORDS: "Your own words",
}
CHOICES: dict[str, Sequence[tuple[str, ...]]] = {
    **warmup.CHOICES,
    "places": options_of(Position, **warmup.PLACE_WORDS),
    "boxes": options_of(
        Boxes, none="none", sounds="filled with sounds", letters="sounds, letters under them"
    ),
}
ASKED = {
    What.ITEMS: {"task", "at", "band", "count", "level", "sound", "ending", "taught", "made_up"},
    What.LESSON: {"focus", "band", "minutes", "taught"},
    What.WORDS: {"words"},
}
"""The fields of each form; the others go along hidden."""
page = APIRouter()
api = APIRouter()


class ShowForm(warmup.WarmUpForm, LessonForm):
    """What is shown, and where one is."""

    what: What = Field(What.ITEMS, description="What is shown.")
    boxes: Boxes = Field(Boxes.NONE, description="Sound boxes under each item.")
    timer: int | None = Field(None, ge=3, le=LONGEST_TIME, description="Seconds for an item.")
    item: int | None = Field(None, ge=1, description="Which item is shown; none: the form.")
    answer: str = Field("", max_length=5, description="“shown”, or empty.")


ShowQuery = Annotated[ShowForm, Query()]


@page.get(PAGE.path)
async def show_page(request: Request, form: ShowQuery) -> Response:
    """Show the form, or one item."""
    if form.item is None:
        return _show_form(request, form)
    if form.seed is None and form.what is not What.WORDS:
        return redirect_to(PAGE.path, form.with_seed())
    desk = desk_of(request)
    try:
        board = await desk.ask(make_board, form, desk.own_words(), desk.lessons)
    except PhonodrillError as error:
        return _show_form(request, form, problem=problem_from(error))
    number = min(form.item, len(board.slides))
    return show(
        request,
        BOARD,
        PAGE,
        form=form,
        board=board,
        number=number,
        is_shown=form.answer == "shown",
        sizes=[_size(slide) for slide in board.slides],
        links=_links(form, number, len(board.slides)),
    )


def make_board(lexicon: Lexicon, form: ShowForm, overlay: Overlay, lessons: Lessons) -> Board:
    """Make the slides that a form asks for.

    Raises:
        PhonodrillError: if there are none.
    """
    if form.what is What.WORDS:
        return show_words(lexicon, form.words, form.boxes, form.notation, overlay)
    if form.what is What.LESSON:
        return show_lesson(make_lessons(lexicon, form, overlay, lessons).reads, form.boxes, overlay)
    wish, problems = warmup.make_wish(lexicon, form, overlay)
    board = show_items(lexicon, wish, form.boxes, form.notation, overlay)
    return board._replace(notes=(*problems, *board.notes))


def _show_form(request: Request, form: ShowForm, **more: Any) -> Response:
    plain = form.model_copy(update={"item": None, "answer": ""})
    kinds = [(what, NAMES[what], address_of(PAGE.path, plain, what=what)) for what in What]
    asked = {"what", "item", "answer", "boxes", "timer", *ASKED[form.what]}
    return show(
        request,
        TEMPLATE,
        PAGE,
        form=form,
        choices=CHOICES,
        kinds=kinds,
        state=fields_of(form, leave_out=asked),
        again=address_of(PAGE.path, plain, seed=None),
        lesson=_lesson_of(plain),
        **more,
    )


def _lesson_of(form: ShowForm) -> str:
    """Write the address of the lesson whose words are shown; empty where there is none."""
    if form.what is not What.LESSON or form.seed is None:
        return ""
    others = dict.fromkeys(ShowForm.model_fields.keys() - LessonForm.model_fields.keys())
    return address_of("/today", form, **others)


def _size(slide: Slide) -> str:
    """Say how large a slide is set."""
    if slide.is_word:
        return "word" if len(slide.ask) <= LONG_WORD else "word long-word"
    length = max(len(slide.ask), len(slide.answer))
    return "longer" if length > LONGER else "long" if length > LONG else "short"


def _links(form: ShowForm, number: int, count: int) -> dict[str, str]:
    """Write the addresses that a board without a script leads to."""

    def to(item: int | None, answer: str | None = None) -> str:
        return address_of(PAGE.path, form, item=item, answer=answer)

    return {
        "back": to(max(1, number - 1)),
        "answer": to(number, "shown"),
        "next": to(min(count, number + 1)),
        "form": to(None),
    }
