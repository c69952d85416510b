"""What pages with records share: how they are written, and that faults tell nothing."""

from __future__ import annotations

from collections.abc import Callable, Coroutine
from pathlib import Path
from traceback import extract_tb
from typing import Any

from fastapi import Request, Response
from fastapi.exceptions import RequestValidationError
from fastapi.routing import APIRoute
from pydantic import Field
from starlette.exceptions import HTTPException

from phonodrill.errors import PhonodrillError
from phonodrill.web.csrf import FIELD, ForgedError
from phonodrill.web.forms import Form
from phonodrill.web.page import Page, show
from phonodrill.web.records.errors import FaultError, RecordsError, SignInError
from phonodrill.web.records.session import COOKIE, is_session
from phonodrill.web.turns import BusyError

TOKEN: Any = Field(default="", max_length=200, alias=FIELD)
"""The hidden field of every form that changes something."""
_TOLD = (
    BusyError,
    ForgedError,
    HTTPException,
    PhonodrillError,
    RecordsError,
    RequestValidationError,
    SignInError,
)
"""Errors that the application words for the user."""


class SentForm(Form):
    """A form that changes something."""

    token: str = TOKEN


class PrivateRoute(APIRoute):
    """A route whose faults can be logged: the words of an error may be of a student."""

    def get_route_handler(self) -> Callable[[Request], Coroutine[Any, Any, Response]]:
        """Wrap the handler."""
        handle = super().get_route_handler()

        async def handle_quietly(request: Request) -> Response:
            try:
                return await handle(request)
            except _TOLD:
                raise
            except Exception as error:  # noqa: BLE001  # told again without its words
                raise FaultError(_where(error)) from None

        return handle_quietly


def show_private(
    request: Request, template: str, page: Page, *, form: Form | None = None, **context: Any
) -> Response:
    """Write a page with records; the arguments are those of :func:`phonodrill.web.page.show`."""
    return show(
        request,
        template,
        page,
        form=form or Form(),
        signed_in=is_session(request.cookies.get(COOKIE, "")),
        **context,
    )


def _where(error: Exception) -> str:
    at = extract_tb(error.__traceback__)[-1]
    return f"{type(error).__name__} in {Path(at.filename).name}, line {at.lineno}"
