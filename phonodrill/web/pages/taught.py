"""Taught: edit the steps, see what each opens, keep them by name, find the next."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Annotated, Any, NamedTuple

from fastapi import APIRouter, Form, Query, Request, Response
from pydantic import Field

from phonodrill.errors import PhonodrillError
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import Overlay
from phonodrill.render.as_html import fragment
from phonodrill.render.as_json import data_of
from phonodrill.render.document import Document, Section, Table
from phonodrill.render.plot import line_chart
from phonodrill.render.views import taught as view
from phonodrill.services.taught import DEFAULT_SEED, NextSteps, check_taught, suggest_steps
from phonodrill.services.taught_lists import LIST, LONGEST_NAME, delete_list, keep_list
from phonodrill.services.taught_steps import (
    DEFAULT,
    default_lines,
    lines_of,
    named,
    steps_from,
)
from phonodrill.taught.check import Checked
from phonodrill.taught.suggest import Goal, Suggestion
from phonodrill.web.csrf import FIELD, check_form
from phonodrill.web.forms import HIGHEST_SEED, LONGEST_STEPS, ClassForm
from phonodrill.web.page import (
    Page,
    address_of,
    desk_of,
    options_of,
    problem_from,
    redirect_to,
    show,
)
from phonodrill.web.pages.lesson_form import LONGEST_FOCUS

PAGE = Page("/taught", "Taught", "What your class was taught, step by step, and what comes next.")
TEMPLATE = "taught.html"
MOST_NEXT = 20
USUAL_NEXT = 8
GOALS = {"decodable": "words to read", "sentences": "whole sentences of the bank"}
CHOICES = {"goals": options_of(Goal, **GOALS)}
page = APIRouter()
api = APIRouter()


class StepsForm(ClassForm):
    """The page keeps the focus of a lesson for the way back to it."""

    focus: str = Field(default="", max_length=LONGEST_FOCUS, description="Of a lesson.")


class SuggestForm(ClassForm):
    """Steps to teach next."""

    goal: Goal = Field(
        default=Goal.DECODABLE, description="Open words to read, or whole sentences."
    )
    steps: int = Field(default=USUAL_NEXT, ge=1, le=MOST_NEXT, description="How many steps to add.")
    seed: int = Field(default=DEFAULT_SEED, ge=0, le=HIGHEST_SEED, description="Mixes the search.")


class TaughtForm(StepsForm):
    """What the page shows."""

    start: int | None = Field(
        default=None, ge=1, le=999, description="Our order up to this step instead."
    )
    more: int | None = Field(
        default=None, ge=1, le=MOST_NEXT, description="How many steps to suggest."
    )
    goal: Goal = Field(default=Goal.DECODABLE, description="What these are to open.")
    name: str = Field(default="", max_length=100, description="Under which the list was kept.")


class KeepForm(StepsForm):
    """A list to keep or to delete."""

    name: str = Field(default="", max_length=100)
    token: str = Field(default="", max_length=200, alias="phonodrill_token")


class Shown(NamedTuple):
    """What the page shows, ready to be put into it.

    Attributes:
        lines: the steps, to be edited.
        document: the checked steps, or None if there are none.
        chart: their growth, as SVG.
        steps: a table of them.
        notes: heading and table of each kind of note on them.
        next_steps: a table of steps to teach next, or empty.
        joined: the steps with these.
    """

    lines: str
    document: Document | None = None
    chart: str = ""
    steps: str = ""
    notes: tuple[tuple[str, str], ...] = ()
    next_steps: str = ""
    joined: str = ""


@page.get(PAGE.path)
async def taught_page(request: Request, form: Annotated[TaughtForm, Query()]) -> Response:
    """Show the steps, what they open, and what may come next."""
    if form.start is not None:
        wanted = {"taught": f"{DEFAULT}:{form.start}", "start": None, "name": ""}
        return redirect_to(PAGE.path, form.model_copy(update=wanted))
    desk = desk_of(request)
    try:
        shown = await desk.ask(make_shown, form, desk.own_words())
    except PhonodrillError as error:
        lines = "" if form.taught.startswith(LIST) else form.taught
        return _show(request, form, Shown(lines), problem=problem_from(error))
    return _show(request, form, shown)


@page.post(f"{PAGE.path}/keep")
async def keep(request: Request, form: Annotated[KeepForm, Form()]) -> Response:
    """Keep the steps under a name."""
    check_form(request, form.token)
    try:
        name = await desk_of(request).ask(keep_steps, form.name, form.taught)
    except PhonodrillError as error:
        asked = _asked(form, form.taught, name=form.name)
        return _show(request, asked, Shown(form.taught), problem=problem_from(error))
    return redirect_to(PAGE.path, _asked(form, f"{LIST}{name}"))


@page.post(f"{PAGE.path}/delete")
async def delete(request: Request, form: Annotated[KeepForm, Form()]) -> Response:
    """Delete a list."""
    check_form(request, form.token)
    await desk_of(request).ask(lambda _: delete_list(form.name))
    kept = "" if form.taught == f"{LIST}{form.name}" else form.taught
    return redirect_to(PAGE.path, _asked(form, kept))


@api.get(
    "/taught/check",
    tags=["steps"],
    summary="What each step taught opens",
)
async def check_data(request: Request, form: Annotated[ClassForm, Query()]) -> dict[str, Any]:
    """Return the fields that ``phonodrill taught check --format json`` writes."""
    desk = desk_of(request)
    return data_of((await desk.ask(check_steps, form, desk.own_words()))[0])


@api.get(
    "/taught/suggest",
    tags=["steps"],
    summary="What to teach next",
)
async def suggest_data(request: Request, form: Annotated[SuggestForm, Query()]) -> dict[str, Any]:
    """Return the fields that ``phonodrill taught suggest --format json`` writes.

    The search is the quick one: the command moves steps about until no move helps,
    which takes ten times as long.
    """
    desk = desk_of(request)
    result = await desk.ask(suggest_next, form, desk.own_words())
    return data_of(view.suggested(result, form.band))


def make_shown(lexicon: Lexicon, form: TaughtForm, overlay: Overlay) -> Shown:
    """Check the steps of a form and find the next ones, if that is asked for."""
    shown = Shown("\n".join(lines_of(form.taught)))
    if form.taught:
        document, steps = check_steps(lexicon, form, overlay)
        chart = _draw_growth(steps) if steps else ""
        table, *notes = ((part.heading, _table(part.body)) for part in document.sections)
        shown = shown._replace(document=document, chart=chart, steps=table[1], notes=tuple(notes))
    if form.more:
        wish = SuggestForm(taught=form.taught, band=form.band, goal=form.goal, steps=form.more)
        result = suggest_next(lexicon, wish, overlay)
        added = "\n".join(line.text for line in result.lines[result.started :])
        joined = f"{shown.lines.rstrip()}\n{added}".strip()
        shown = shown._replace(next_steps=_table(view.following(result)), joined=joined)
    return shown


def check_steps(
    lexicon: Lexicon, form: ClassForm, overlay: Overlay
) -> tuple[Document, list[Checked]]:
    """Check the steps of a form; lines are counted as they are shown."""
    text = "\n".join(lines_of(form.taught))
    steps, problems = check_taught(lexicon, steps_from(text, lexicon), form.band, overlay)
    return view.checked(named(form.taught), form.band, steps, problems), steps


def suggest_next(lexicon: Lexicon, form: SuggestForm, overlay: Overlay) -> Suggestion:
    """Find steps to teach next, by the quick search."""
    start = steps_from(form.taught, lexicon) if form.taught else None
    wish = NextSteps(form.goal, form.steps, form.seed, passes=0)
    return suggest_steps(lexicon, wish, form.band, start, overlay, named(form.taught))


def keep_steps(lexicon: Lexicon, name: str, text: str) -> str:
    """Keep steps under a name, if there is one in them."""
    steps_from(text, lexicon)
    return keep_list(name, "\n".join(lines_of(text)) + "\n")


def _asked(form: KeepForm, taught: str, name: str = "") -> TaughtForm:
    return TaughtForm(band=form.band, focus=form.focus, taught=taught, name=name)


def _draw_growth(steps: Sequence[Checked]) -> str:
    curve = [steps[0].total - len(steps[0].opens), *(step.total for step in steps)]
    title = "Growth: words that can be read"
    return line_chart(title, "steps taught", "words", {"these steps": curve}, inline=True)


def _table(body: Any) -> str:
    assert isinstance(body, Table)  # noqa: S101  # a check has only tables
    return fragment([Section("", body)])


def _show(request: Request, form: TaughtForm, shown: Shown, **context: Any) -> Response:
    name = form.taught.removeprefix(LIST) if form.taught.startswith(LIST) else form.name
    asked = form.model_copy(update={"more": None, "name": ""})
    return show(
        request,
        TEMPLATE,
        PAGE,
        form=form,
        choices=CHOICES,
        shown=shown,
        name=name,
        longest_steps=LONGEST_STEPS,
        longest_name=LONGEST_NAME,
        most_steps=len(default_lines()),
        most_next=MOST_NEXT,
        usual_next=USUAL_NEXT,
        token_field=FIELD,
        add=address_of(PAGE.path, asked, taught=shown.joined) if shown.joined else "",
        **context,
    )
