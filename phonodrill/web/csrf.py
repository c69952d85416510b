"""Forms that change something must come from a page of ours.

A random token lies in a cookie that no other site can read or send (SameSite=Strict,
HttpOnly) and in a hidden field of the form; both must be the same.
"""

from __future__ import annotations

import hmac
import secrets
from urllib.parse import urlsplit

from starlette.requests import Request
from starlette.responses import Response

COOKIE = FIELD = "phonodrill_token"


class ForgedError(Exception):
    """A form did not come from a page of ours."""


def token_for(request: Request) -> str:
    """Return the token of the visitor, or a new one."""
    return request.cookies.get(COOKIE) or secrets.token_urlsafe(24)


def keep_token(response: Response, token: str, *, secure: bool) -> None:
    """Set the cookie that goes with the form."""
    response.set_cookie(COOKIE, token, httponly=True, samesite="strict", secure=secure)


def check_form(request: Request, sent: str) -> None:
    """Make sure that a form came from a page of ours.

    Args:
        request: the request; its cookie and origin are looked at.
        sent: the hidden field of the form.

    Raises:
        ForgedError: if it did not.
    """
    origin = request.headers.get("origin")
    if origin and urlsplit(origin).netloc != request.headers.get("host"):
        raise ForgedError
    kept = request.cookies.get(COOKIE, "")
    if not kept or not hmac.compare_digest(kept.encode(), sent.encode()):
        raise ForgedError
