"""A connection on which a request has to arrive in time.

The server gives an idle connection a time, but none to a request that has begun:
one byte now and then would hold a connection for ever.
"""

from __future__ import annotations

import asyncio

import h11
from uvicorn.protocols.http.h11_impl import H11Protocol

from phonodrill.web.settings import SLOWEST_BODY

SLOWEST_REQUEST = SLOWEST_BODY + 5
"""Seconds for a whole request: longer than the guard's, which can still answer."""
_ARRIVING = (h11.IDLE, h11.SEND_BODY)


class Connection(H11Protocol):
    """Closed if a request does not arrive whole within :data:`SLOWEST_REQUEST` seconds."""

    _deadline: asyncio.TimerHandle | None = None

    def connection_made(self, transport: asyncio.Transport) -> None:  # type: ignore[override]
        """Give the first request its time."""
        super().connection_made(transport)
        self._wait_for_request()

    def data_received(self, data: bytes) -> None:
        """Take what came; end the time when the request is whole."""
        super().data_received(data)
        self._wait_for_request()

    def on_response_complete(self) -> None:
        """Begin again for the next request."""
        super().on_response_complete()
        self._wait_for_request()

    def connection_lost(self, exc: Exception | None) -> None:
        """Forget the time."""
        self._forget()
        super().connection_lost(exc)

    def _wait_for_request(self) -> None:
        if self.conn.their_state not in _ARRIVING:
            self._forget()
        elif self._deadline is None:
            self._deadline = self.loop.call_later(SLOWEST_REQUEST, self._give_up)

    def _forget(self) -> None:
        if self._deadline:
            self._deadline.cancel()
            self._deadline = None

    def _give_up(self) -> None:
        self.transport.close()
