"""What every request passes: the host's name, the size and time of the body, headers."""

from __future__ import annotations

import asyncio
from itertools import chain
from typing import Any

from starlette.responses import PlainTextResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from phonodrill.web.settings import LARGEST_BODY, LARGEST_HEAD, SLOWEST_BODY, Settings

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
PRIVATE = ("/groups", "/check", "/progress", "/next", "/sign-", "/api/records")
"""How addresses begin whose answers nobody may keep: not the browser, no proxy."""


_Refusal = tuple[str, int]
_TOO_LARGE: _Refusal = ("that is too much at once\n", 413)
_STOPPING: _Refusal = ("the page is stopping\n", 503)
_TOO_SLOW: _Refusal = ("that took too long to arrive\n", 408)


def headers_for(path: str) -> dict[str, str]:
    """Return the headers of every answer under an address.

    >>> headers_for("/groups/204857103366")["cache-control"]
    'no-store'
    """
    return HEADERS | ({"cache-control": "no-store"} if path.startswith(PRIVATE) else {})


class _RefusedError(Exception):
    """Ends the work on a request whose body is refused."""


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
        answer = _Answer(send, headers_for(scope["path"]))
        refusal = self._refusal(scope)
        if refusal is None:
            body = _Body(receive)
            answer.body = body
            try:
                await self._app(scope, body.receive, answer.send)
            except _RefusedError:
                refusal = body.refusal
            except asyncio.CancelledError:
                # Only a server that stops does this; its log is no place for it.
                refusal = _STOPPING
            refusal = body.refusal or refusal
        if refusal and not answer.started:
            answer.body = None
            await PlainTextResponse(*refusal)(scope, receive, answer.send)

    def _refusal(self, scope: Scope) -> _Refusal | None:
        head = [scope["raw_path"], scope["query_string"], *chain(*scope["headers"])]
        if sum(map(len, head)) > LARGEST_HEAD:
            return "that address, or what came with it, is too long\n", 431
        headers = dict(scope["headers"])
        if _host_of(headers) not in self._settings.hosts:
            return "this page does not answer to that host name\n", 421
        return _TOO_LARGE if _length_of(headers) > LARGEST_BODY else None


class _Body:
    """Counts what arrives, and gives it a time in all."""

    def __init__(self, receive: Receive) -> None:
        self._receive = receive
        self._size = 0
        self._ends = asyncio.get_running_loop().time() + SLOWEST_BODY
        self._is_whole = False
        self.refusal: _Refusal | None = None

    async def receive(self) -> Message:
        """Receive a part of the request."""
        if self._is_whole:
            return await self._receive()
        try:
            async with asyncio.timeout_at(self._ends):
                message = await self._receive()
        except TimeoutError as error:
            self.refusal = _TOO_SLOW
            raise _RefusedError from error
        self._is_whole = not message.get("more_body", False)
        self._size += len(message.get("body", b""))
        if self._size > LARGEST_BODY:
            self.refusal = _TOO_LARGE
            raise _RefusedError
        return message


class _Answer:
    """Sends an answer with our headers, and knows whether it has begun.

    Attributes:
        body: what was sent; once it is refused, the answer of the page is dropped, which
            may be its own word on a body that it could not read.
        started: whether a part was sent.
    """

    def __init__(self, send: Send, headers: dict[str, str]) -> None:
        self._send = send
        self._headers = headers
        self.body: _Body | None = None
        self.started = False

    async def send(self, message: Message) -> None:
        """Send a part of the answer."""
        if self.body and self.body.refusal and not self.started:
            return
        if message["type"] == "http.response.start":
            self.started = True
            message["headers"] = _with_headers(message.get("headers", []), self._headers)
        await self._send(message)


def _host_of(headers: dict[bytes, bytes]) -> str:
    """Return the host that was asked for, without its port, lower case."""
    host = headers.get(b"host", b"").decode("latin-1").lower()
    name, colon, port = host.rpartition(":")
    return name if colon and port.isdigit() else host


def _length_of(headers: dict[bytes, bytes]) -> int:
    length = headers.get(b"content-length", b"0")
    return int(length) if length.isdigit() else 0


def _with_headers(headers: list[Any], ours: dict[str, str]) -> list[Any]:
    given = {name.lower() for name, _ in headers}
    more = ((name.encode(), value.encode()) for name, value in ours.items())
    return [*headers, *(pair for pair in more if pair[0] not in given)]
