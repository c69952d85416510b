"""What every request passes: the host's name, the size and time of the body, headers."""

from __future__ import annotations

import asyncio
from typing import Any

from starlette.responses import PlainTextResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from phonodrill.web.settings import LARGEST_BODY, SLOWEST_BODY, Settings

HEADERS = {
    "content-security-policy": (
        "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; "
        "img-src 'self' data:; connect-src 'self'; form-action 'self'; base-uri 'none'; "
        "frame-ancestors 'none'"
    ),
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
    "permissions-policy": "camera=(), geolocation=(), microphone=()",
    "referrer-policy": "same-origin",
    "x-content-type-options": "nosniff",
}


_TOO_LARGE = (413, "that is too much at once\n")


class _TooLargeError(Exception):
    pass


class Guard:
    """Refuses requests for another host, and bodies too large or too slow.

    Args:
        app: what is guarded.
        settings: the names under which the page answers.
    """

    def __init__(self, app: ASGIApp, settings: Settings) -> None:
        self._app = app
        self._settings = settings

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass a request on, or answer it here."""
        if scope["type"] != "http":
            await self._app(scope, receive, send)
            return
        answer = _Answer(send)
        refusal = self._refusal(dict(scope["headers"]))
        if refusal is None:
            try:
                await self._app(scope, _limited(receive), answer.send)
            except _TooLargeError:
                refusal = _TOO_LARGE
            except TimeoutError:
                refusal = 408, "that took too long to arrive\n"
        if refusal and not answer.started:
            status, text = refusal
            await PlainTextResponse(text, status)(scope, receive, answer.send)

    def _refusal(self, headers: dict[bytes, bytes]) -> tuple[int, str] | None:
        if _host_of(headers) not in self._settings.hosts:
            return 421, "this page does not answer to that host name\n"
        return _TOO_LARGE if _length_of(headers) > LARGEST_BODY else None


class _Answer:
    """Sends an answer with our headers, and knows whether it has begun."""

    def __init__(self, send: Send) -> None:
        self._send = send
        self.started = False

    async def send(self, message: Message) -> None:
        """Send a part of the answer."""
        if message["type"] == "http.response.start":
            self.started = True
            message["headers"] = _with_headers(message.get("headers", []))
        await self._send(message)


def _limited(receive: Receive) -> Receive:
    """Count what arrives, and give it a time in all."""
    size = 0
    ends = asyncio.get_running_loop().time() + SLOWEST_BODY
    is_whole = False

    async def limited() -> Message:
        nonlocal size, is_whole
        if is_whole:
            return await receive()
        async with asyncio.timeout_at(ends):
            message = await receive()
        is_whole = not message.get("more_body", False)
        size += len(message.get("body", b""))
        if size > LARGEST_BODY:
            raise _TooLargeError
        return message

    return limited


def _host_of(headers: dict[bytes, bytes]) -> str:
    """Return the host that was asked for, without its port, lower case."""
    host = headers.get(b"host", b"").decode("latin-1").lower()
    name, colon, port = host.rpartition(":")
    return name if colon and port.isdigit() else host


def _length_of(headers: dict[bytes, bytes]) -> int:
    length = headers.get(b"content-length", b"0")
    return int(length) if length.isdigit() else 0


def _with_headers(headers: list[Any]) -> list[Any]:
    given = {name.lower() for name, _ in headers}
    more = ((name.encode(), value.encode()) for name, value in HEADERS.items())
    return [*headers, *(pair for pair in more if pair[0] not in given)]
