"""Forms that change something come from a page of ours."""

from __future__ import annotations

import pytest
from starlette.requests import Request
from starlette.responses import Response

from phonodrill.web.csrf import COOKIE, ForgedError, check_form, keep_token, token_for


def request_with(**headers: str) -> Request:
    given = {"host": "127.0.0.1:8000", **headers}
    raw = [(name.encode(), value.encode()) for name, value in given.items()]
    return Request({"type": "http", "headers": raw})


def test_the_token_is_kept_and_not_guessed() -> None:
    token = token_for(request_with())
    assert len(token) >= 32
    assert token != token_for(request_with())
    assert token_for(request_with(cookie=f"{COOKIE}={token}")) == token


def test_the_cookie_stays_with_the_page() -> None:
    for secure in (True, False):
        response = Response()
        keep_token(response, "gull", secure=secure)
        said = response.headers["set-cookie"].lower()
        assert "httponly" in said
        assert "samesite=strict" in said
        assert ("secure" in said) == secure
        assert "domain" not in said


def test_a_form_of_ours_passes() -> None:
    check_form(request_with(cookie=f"{COOKIE}=gull"), "gull")
    check_form(request_with(cookie=f"{COOKIE}=gull", origin="http://127.0.0.1:8000"), "gull")


@pytest.mark.parametrize(
    ("sent", "headers"),
    [
        ("gull", {}),
        ("", {}),
        ("", {"cookie": f"{COOKIE}="}),
        ("", {"cookie": f"{COOKIE}=gull"}),
        ("crab", {"cookie": f"{COOKIE}=gull"}),
        ("gänse", {"cookie": f"{COOKIE}=gull"}),
        ("gull", {"cookie": f"{COOKIE}=gull", "origin": "null"}),
        ("gull", {"cookie": f"{COOKIE}=gull", "origin": "http://reef.example"}),
        ("gull", {"cookie": f"{COOKIE}=gull", "origin": "http://127.0.0.1"}),
        ("gull", {"cookie": f"{COOKIE}=gull", "origin": "http://127.0.0.1:8000.reef.example"}),
    ],
)
def test_a_form_from_elsewhere_does_not(sent: str, headers: dict[str, str]) -> None:
    with pytest.raises(ForgedError):
        check_form(request_with(**headers), sent)
