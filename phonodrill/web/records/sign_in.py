"""Sign in with the passphrase, sign out, and what every page with records is behind."""

from __future__ import annotations

import time
from typing import Annotated
from urllib.parse import urlencode, urlsplit

from fastapi import APIRouter, Form, Query, Request, Response
from fastapi.responses import RedirectResponse
from pydantic import Field, StringConstraints

from phonodrill.errors import PhonodrillError
from phonodrill.records.passphrase import has_passphrase, is_passphrase
from phonodrill.web.csrf import ForgedError, check_form
from phonodrill.web.forms import Form as Fields
from phonodrill.web.page import Page, Problem, settings_of
from phonodrill.web.records.desk import UNAVAILABLE, told
from phonodrill.web.records.errors import SignInError
from phonodrill.web.records.private import PrivateRoute, SentForm, show_private
from phonodrill.web.records.session import COOKIE, LASTS, Tries, is_session, new_session
from phonodrill.web.settings import Records

PAGE = Page("/sign-in", "Sign in", "Groups, checks and results are behind a passphrase.")
TEMPLATE = "sign_in.html"
HOME = "/groups"
OURS = r"^/(groups|check|progress|next)(/[a-z0-9]+)*$"
"""Pages that one may come back to after signing in."""
WRONG = Problem(
    "that is not the passphrase", "again, or set another: phonodrill records passphrase"
)
page = APIRouter(route_class=PrivateRoute)


class BackForm(Fields):
    """Where to go after signing in."""

    to: str = Field(default=HOME, pattern=OURS, max_length=200)


class SignInForm(BackForm, SentForm):
    """The passphrase."""

    passphrase: Annotated[str, StringConstraints(strip_whitespace=False)] = Field(
        default="", max_length=1000
    )


async def need_sign_in(request: Request) -> None:
    """Let only those pass who are signed in, or who need not be.

    Raises:
        SignInError: for all others.
    """
    if must_sign_in(request) and not is_session(request.cookies.get(COOKIE, "")):
        raise SignInError


async def need_own_origin(request: Request) -> None:
    """Take data from programs and from our own pages, not from pages of others.

    Raises:
        ForgedError: if another page sent it, or a form did.
    """
    if request.method == "GET":
        return
    origin = request.headers.get("origin")
    kind = request.headers.get("content-type", "").partition(";")[0].strip().lower()
    if origin and urlsplit(origin).netloc != request.headers.get("host"):
        raise ForgedError
    # Any page can send a form, or text, to any address; JSON only to its own.
    if kind != "application/json":
        raise ForgedError


def must_sign_in(request: Request) -> bool:
    """Whether records are shown only to those who gave the passphrase."""
    return settings_of(request).records is Records.SHARED or has_passphrase()


def ask_to_sign_in(request: Request) -> Response:
    """Send a visitor to sign in and, after it, back."""
    return RedirectResponse(f"{PAGE.path}?{urlencode({'to': request.url.path})}", 303)


@page.get(PAGE.path)
async def sign_in_page(request: Request, form: Annotated[BackForm, Query()]) -> Response:
    """Ask for the passphrase."""
    return _show(request, form)


@page.post(PAGE.path)
def sign_in(request: Request, form: Annotated[SignInForm, Form()]) -> Response:
    """Check the passphrase.

    Not ``async``: it runs in a thread, as the check is slow on purpose.
    """
    check_form(request, form.token)
    wait = tries_of(request).begin(time.monotonic())
    if wait:
        return _keep_waiting(request, form, wait)
    try:
        is_right = is_passphrase(form.passphrase)
    except PhonodrillError as error:
        # A file that cannot be read is named by its path: that is for the one who serves.
        problem = told(error, None, UNAVAILABLE)._replace(
            message="the passphrase cannot be checked"
        )
        return _show(request, form, problem)
    if not is_right:
        return _show(request, form, WRONG)
    tries_of(request).forget()
    answer = RedirectResponse(form.to, 303)
    answer.set_cookie(
        COOKIE,
        new_session(),
        max_age=LASTS,
        httponly=True,
        samesite="strict",
        secure=settings_of(request).secure,
    )
    return answer


@page.post("/sign-out")
async def sign_out(request: Request, form: Annotated[SentForm, Form()]) -> Response:
    """Forget the visitor."""
    check_form(request, form.token)
    answer = RedirectResponse(PAGE.path, 303)
    answer.delete_cookie(COOKIE, httponly=True, samesite="strict")
    return answer


def tries_of(request: Request) -> Tries:
    """Return the count of wrong passphrases."""
    tries: Tries = request.app.state.tries
    return tries


def _keep_waiting(request: Request, form: BackForm, wait: int) -> Response:
    problem = Problem("there were too many wrong passphrases", f"again in {wait} seconds", 429)
    answer = _show(request, form, problem)
    answer.headers["retry-after"] = str(wait)
    return answer


def _show(request: Request, form: BackForm, problem: Problem | None = None) -> Response:
    needed = must_sign_in(request)
    asked = BackForm(to=form.to)
    return show_private(request, TEMPLATE, PAGE, form=asked, problem=problem, needed=needed)
