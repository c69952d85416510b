"""Check: make one for a group, print its sheet, see what is entered, remove it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Annotated, Any, NamedTuple

from fastapi import APIRouter, Form, Query, Request, Response
from fastapi.responses import RedirectResponse
from pydantic import Field

from phonodrill.errors import PhonodrillError
from phonodrill.lesson.request import Request as Wanted
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import Overlay
from phonodrill.paper.page import Paper
from phonodrill.records.answer import Asked
from phonodrill.records.items import make_items
from phonodrill.records.kept import Check, Listed, Result
from phonodrill.records.store import Store
from phonodrill.render.as_html import fragment
from phonodrill.render.views import records as view
from phonodrill.services.checks import MOST_ITEMS, USUAL_ITEMS, recent_words, today, write_sheet
from phonodrill.services.taught_steps import steps_from
from phonodrill.web.csrf import check_form
from phonodrill.web.forms import ClassForm, new_seed
from phonodrill.web.forms import Form as Fields
from phonodrill.web.page import Page, Problem, desk_of, options_of, problem_from
from phonodrill.web.pages.lesson_form import LONGEST_FOCUS
from phonodrill.web.records.desk import records_of
from phonodrill.web.records.errors import RecordsError
from phonodrill.web.records.groups import read_groups
from phonodrill.web.records.keys import KEY, CheckKey, Keys, keys_now
from phonodrill.web.records.private import TOKEN, PrivateRoute, SentForm, show_private

PAGE = Page("/check", "Check", "A few questions to each student, and who answered right.")
LIST, CHECK, CONFIRM = "check.html", "check_shown.html", "confirm.html"
CHOICES = {"papers": options_of(Paper, letter="letter", a4="A4")}
page = APIRouter(route_class=PrivateRoute)


class CheckForm(ClassForm):
    """A check to make."""

    group: str = Field(default="", pattern=KEY)
    focus: str = Field(default="", max_length=LONGEST_FOCUS)
    count: int = Field(default=USUAL_ITEMS, ge=1, le=MOST_ITEMS)


class MakeForm(CheckForm):
    """A check to make, sent."""

    token: str = TOKEN


class SheetForm(Fields):
    """The sheet on paper."""

    paper: Paper = Paper.LETTER


class Entered(NamedTuple):
    """A check with what is entered.

    Attributes:
        check: as it was made.
        students: codes of its group.
        results: what is entered.
        group: key of its group.
    """

    check: Check
    students: Sequence[str]
    results: Sequence[Result]
    group: str


@page.get(PAGE.path)
async def checks_page(request: Request, form: Annotated[CheckForm, Query()]) -> Response:
    """List the latest checks; ask for a new one."""
    return await _show_list(request, form)


@page.post(PAGE.path)
async def make(request: Request, form: Annotated[MakeForm, Form()]) -> Response:
    """Make a check and keep it."""
    check_form(request, form.token)
    records, desk = records_of(request), desk_of(request)
    try:
        group, avoid = await records.ask(_rest, keys_now(), form.group)
        seed = new_seed()
        items = await desk.ask(_make_items, form, seed, avoid, desk.own_words())
        wanted = Check("", group, form.focus, today(), form.band, seed, items)
        made = await records.ask(Store.keep_check, wanted)
    except RecordsError as error:
        return await _show_list(request, form, error.problem)
    except PhonodrillError as error:
        return await _show_list(request, form, problem_from(error))
    return RedirectResponse(f"{PAGE.path}/{made.key}", 303)


@page.get(f"{PAGE.path}/{{check}}")
async def check_page(request: Request, check: CheckKey) -> Response:
    """Show a check and what is entered."""
    found = await records_of(request).ask(read_check, keys_now(), check)
    document = view.check(found.check, found.students, found.results)
    return show_private(
        request,
        CHECK,
        PAGE,
        choices=CHOICES,
        found=found,
        document=document,
        body=fragment(document.sections, scrolls=True),
        is_short=len(found.check.items) < USUAL_ITEMS,
    )


@page.get(f"{PAGE.path}/{{check}}/sheet")
async def sheet(request: Request, check: CheckKey, form: Annotated[SheetForm, Query()]) -> Response:
    """Send the sheet of a check as PDF."""
    found = await records_of(request).ask(read_check, keys_now(), check)
    content = await desk_of(request).press(write_sheet, found.check, found.students, form.paper)
    headers = {"content-disposition": f'attachment; filename="check-{check}.pdf"'}
    return Response(content, media_type="application/pdf", headers=headers)


@page.get(f"{PAGE.path}/{{check}}/remove")
async def ask_to_remove(request: Request, check: CheckKey) -> Response:
    """Ask before a check is removed."""
    found = await records_of(request).ask(read_check, keys_now(), check)
    return show_private(
        request,
        CONFIRM,
        PAGE,
        what=f"check {check} with {len(found.results)} results",
        act="Remove the check for good",
        back=f"{PAGE.path}/{check}",
        backups=False,
    )


@page.post(f"{PAGE.path}/{{check}}/remove")
async def remove(request: Request, check: CheckKey, form: Annotated[SentForm, Form()]) -> Response:
    """Remove a check with its results."""
    check_form(request, form.token)
    await records_of(request).ask(Store.remove_check, check)
    return RedirectResponse(PAGE.path, 303)


def read_check(store: Store, keys: Keys, key: str) -> Entered:
    """Read a check and what is entered.

    Raises:
        PhonodrillError: if there is none.
    """
    found = store.find_check(key)
    students = store.list_students(found.group)
    return Entered(found, students, store.results_of(key), keys.of(found.group))


def read_list(store: Store, keys: Keys, group: str) -> Sequence[Listed]:
    """Read the latest checks of a group, or of all if none is named.

    Raises:
        PhonodrillError: if there is no such group.
    """
    return store.list_checks(keys.group(store, group) if group else "")


def _rest(store: Store, keys: Keys, group: str) -> tuple[str, frozenset[str]]:
    """Return the name of a group, and the words that rest."""
    if not group:
        raise PhonodrillError("a check is for a group", "one of the list; or the page Groups")
    name = keys.group(store, group)
    return name, recent_words(store, name)


def _make_items(
    lexicon: Lexicon, form: CheckForm, seed: int, avoid: frozenset[str], overlay: Overlay
) -> tuple[Asked, ...]:
    if not form.focus:
        raise PhonodrillError("a check is on a focus", "es,ies")
    taught = steps_from(form.taught, lexicon).steps if form.taught else ()
    steps = tuple(step.text for step in taught)
    wanted = Wanted(form.focus, form.band, seed=seed, taught=steps)
    return make_items(lexicon, wanted, form.count, overlay, avoid)


async def _show_list(request: Request, form: CheckForm, problem: Problem | None = None) -> Response:
    records, keys = records_of(request), keys_now()
    groups = await records.ask(read_groups, keys)
    # A form may name a group that is gone: it is shown again with what can be chosen.
    chosen = form.group if form.group in {one.key for one in groups} else ""
    found = await records.ask(read_list, keys, chosen)
    name = next((one.name for one in groups if one.key == chosen), "")
    choices: dict[str, Any] = {"groups": [(one.key, one.name) for one in groups]}
    return show_private(
        request,
        LIST,
        PAGE,
        form=form,
        choices=choices,
        problem=problem,
        checks=found,
        of_group=name,
        most_items=MOST_ITEMS,
        longest_focus=LONGEST_FOCUS,
    )
