"""Warm-up: items of any task, answers shown or hidden."""

from __future__ import annotations

from typing import Annotated, Any

from fastapi import APIRouter, Query, Request, Response
from pydantic import Field

from phonodrill.errors import PhonodrillError
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import Overlay
from phonodrill.render.as_html import fragment
from phonodrill.render.as_json import data_of
from phonodrill.render.document import Document
from phonodrill.render.views import warmup as view
from phonodrill.selection import Query as WordQuery
from phonodrill.services.oral import ENDINGS, read_query
from phonodrill.services.taught_steps import steps_from
from phonodrill.services.warmup import Wish, warm_up
from phonodrill.sounds.notation import Notation
from phonodrill.sounds.places import Position
from phonodrill.tasks.difficulty import Level
from phonodrill.tasks.registry import TASKS
from phonodrill.web.forms import DrawForm
from phonodrill.web.page import (
    Page,
    address_of,
    desk_of,
    options_of,
    problem_from,
    redirect_to,
    show,
)

PAGE = Page("/warm-up", "Warm-up", "Oral items of one task, each with its checked answer.")
TEMPLATE = "warmup.html"
MOST_ITEMS = 40
PLACES = {
    "first": "first sound",
    "last": "last sound",
    "vowel": "vowel",
    "onset2": "second consonant",
    "coda1": "last consonant but one",
    "each": "sound by sound",
}
CHOICES = {
    "tasks": options_of(TASKS),
    "places": options_of(Position, **PLACES),
    "endings": [(ending, f"-{ending}") for ending in ENDINGS],
    "levels": options_of(Level),
}
page = APIRouter()
api = APIRouter()


class WarmUpForm(DrawForm):
    """An oral warm-up."""

    task: str = Field("delete", description=f"One of {', '.join(TASKS)}.", max_length=20)
    at: Position | None = Field(None, description="Where in the word; empty: the usual place.")
    ending: str = Field("", max_length=20, description=f"Words with {', '.join(ENDINGS)} added.")
    sound: str = Field("", max_length=10, description="Only items about this sound: sh, /ʃ/ or SH.")
    level: Level | None = Field(None, description="How hard among items of this kind.")
    count: int = Field(8, ge=1, le=MOST_ITEMS, description="How many items.")
    made_up: bool = Field(default=False, description="Made-up words: blend, segment, substitute.")
    notation: Notation | None = Field(None, description="How sounds are written.")


class WarmUpPageForm(WarmUpForm):
    """The page shows answers or hides them."""

    hide: bool = Field(default=False, description="Fold the answers away.")


WarmUpQuery = Annotated[WarmUpForm, Query()]
WarmUpPageQuery = Annotated[WarmUpPageForm, Query()]


@page.get(PAGE.path)
async def warmup_page(request: Request, form: WarmUpPageQuery) -> Response:
    """Show the form and a warm-up."""
    if form.seed is None:
        return redirect_to(PAGE.path, form.with_seed())
    desk = desk_of(request)
    try:
        document = await desk.ask(make_document, form, desk.own_words())
    except PhonodrillError as error:
        problem = problem_from(error)
        return show(request, TEMPLATE, PAGE, form=form, choices=CHOICES, problem=problem)
    return show(
        request,
        TEMPLATE,
        PAGE,
        form=form,
        choices=CHOICES,
        document=document,
        body=fragment(document.sections, hide_answers=form.hide),
        again=address_of(PAGE.path, form, seed=None),
    )


@api.get("/warmup", tags=["words"], summary="An oral warm-up")
async def warmup_data(request: Request, form: WarmUpQuery) -> dict[str, Any]:
    """Return the fields that ``phonodrill warmup --format json`` writes."""
    desk = desk_of(request)
    return data_of(await desk.ask(make_document, form.with_seed(), desk.own_words()))


def make_document(lexicon: Lexicon, form: WarmUpForm, overlay: Overlay) -> Document:
    """Make the warm-up that a form asks for."""
    return view.document(warm_up(lexicon, make_wish(lexicon, form), overlay), form.notation)


def make_wish(lexicon: Lexicon, form: WarmUpForm) -> Wish:
    """Read what a form asks for.

    Raises:
        PhonodrillError: naming what cannot be read.
    """
    query: WordQuery = read_query(
        band=form.band, ending=form.ending, sound=form.sound, made_up=form.made_up
    )
    if form.taught:
        query = query._replace(known=steps_from(form.taught, lexicon).known())
    return Wish(query, form.count, form.seed or 0, form.task, form.at, form.level)
