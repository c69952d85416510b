"""What every page has: its frame, and how a page is written."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Mapping, Sequence
from pathlib import Path
from typing import Any, NamedTuple
from urllib.parse import urlencode

from fastapi import Request
from fastapi.responses import HTMLResponse, RedirectResponse
from jinja2 import Environment, FileSystemLoader, StrictUndefined, select_autoescape

from phonodrill.errors import PhonodrillError
from phonodrill.lesson.tree import CAUTION
from phonodrill.services.taught_lists import list_names
from phonodrill.web.csrf import keep_token, token_for
from phonodrill.web.desk import Desk
from phonodrill.web.forms import Form
from phonodrill.web.settings import Settings

FOLDER = Path(__file__).parent
CARRIED = ("band", "taught")
"""Fields that go along to every page of the menu."""
CARRIED_ELSEWHERE = (*CARRIED, "focus")
"""Fields that go along to another page: a page's own link leads to it without a lesson."""
_ENVIRONMENT = Environment(
    loader=FileSystemLoader(FOLDER / "templates"),
    autoescape=select_autoescape(default=True),
    undefined=StrictUndefined,
    # Files of a package do not change while it runs.
    auto_reload=False,
    trim_blocks=True,
    lstrip_blocks=True,
)


_COMMAND = re.compile(r"phonodrill (?:words (?:add )?|word |chain |sentences |spellings )?")
_OPTION = re.compile(r"--([a-z-]+)")
_OPTION_WORDS = {
    "at": "place",
    "ending": "ending",
    "endings": "words with endings",
    "level": "limit to how hard",
    "made-up": "made-up words",
    "pattern": "shape",
    "sounds": "two sounds",
    "spelling": "letters",
    "words": "own words",
}


class Page(NamedTuple):
    """A page of the menu.

    Attributes:
        path: its address.
        name: in the menu.
        purpose: what it is for, in a line.
    """

    path: str
    name: str
    purpose: str


class Problem(NamedTuple):
    """What was wrong and what to do, worded for a page.

    Attributes:
        message: what was wrong.
        hint: what to do; may be empty.
        status: of HTTP.
    """

    message: str
    hint: str = ""
    status: int = 400


def desk_of(request: Request) -> Desk:
    """Return the desk that chooses words."""
    desk: Desk = request.app.state.desk
    return desk


def settings_of(request: Request) -> Settings:
    """Return how the page is served."""
    settings: Settings = request.app.state.settings
    return settings


def problem_from(error: PhonodrillError) -> Problem:
    """Word an error for a page."""
    return Problem(in_page_words(error.message), in_page_words(error.hint))


def in_page_words(text: str) -> str:
    """Word a message of the command line for a page: fields have no dashes, pages no command.

    >>> in_page_words("phonodrill words add gull or --band 3")
    'gull or band 3'
    """
    bare = _COMMAND.sub("", text)
    return _OPTION.sub(lambda found: _OPTION_WORDS.get(found[1], found[1]), bare)


def show(
    request: Request,
    template: str,
    page: Page,
    *,
    form: Form,
    choices: Mapping[str, Sequence[tuple[str, ...]]] | None = None,
    problem: Problem | None = None,
    **context: Any,
) -> HTMLResponse:
    """Write a page.

    Args:
        request: the request.
        template: its file in ``templates/``.
        page: which page of the menu it is.
        form: the fields as they were sent; some go along to other pages.
        choices: for the fields that choose one of several.
        problem: what was wrong with what was asked.
        context: whatever else the template shows.
    """
    token = token_for(request)
    text = _ENVIRONMENT.get_template(template).render(
        page=page,
        menu=request.app.state.menu,
        afresh=_query_of(form, CARRIED),
        carried=_query_of(form, CARRIED_ELSEWHERE),
        caution=CAUTION,
        form=form,
        token=token,
        settings=settings_of(request),
        saved=list_names(settings_of(request).taught_folder),
        problem=problem,
        **(choices or {}),
        **context,
    )
    response = HTMLResponse(text, problem.status if problem else 200)
    keep_token(response, token, secure=settings_of(request).secure)
    return response


def _query_of(form: Form, names: Iterable[str]) -> str:
    sent = form.model_dump(mode="json", exclude_defaults=True)
    given = {name: sent[name] for name in names if name in sent}
    return f"?{urlencode(given)}" if given else ""


def options_of(values: Iterable[str], **words: str) -> list[tuple[str, str]]:
    """Pair each value of a choice with what is shown for it.

    Args:
        values: in the order of the menu.
        words: what is shown where it is not the value itself.

    >>> options_of(["first", "onset2"], onset2="second of two")
    [('first', 'first'), ('onset2', 'second of two')]
    """
    return [(str(value), words.get(str(value), str(value))) for value in values]


def redirect_to(path: str, form: Form, part: str = "") -> RedirectResponse:
    """Send the visitor to the address that has all fields of a form, or to a part of it."""
    return RedirectResponse(address_of(path, form) + (f"#{part}" if part else ""), 303)


def address_of(path: str, form: Form, **more: Any) -> str:
    """Write the address of a page with the fields of a form.

    Args:
        path: of the page.
        form: its fields; those with usual values are left out.
        more: fields to put in or, if None, to leave out.
    """
    fields = form.model_dump(mode="json", exclude_defaults=True) | more
    given = {name: value for name, value in fields.items() if value is not None}
    query = urlencode(given, doseq=True)
    return f"{path}?{query}" if query else path


def fields_of(form: Form, *, leave_out: Collection[str] = ()) -> list[tuple[str, Any]]:
    """Return the fields of a form that go along hidden in another one.

    Args:
        form: its fields; those with usual values are left out.
        leave_out: those that the other form asks for.
    """
    fields = form.model_dump(mode="json", exclude_defaults=True, exclude={*leave_out})
    return [
        (name, value)
        for name, values in fields.items()
        for value in (values if isinstance(values, list) else [values])
    ]
