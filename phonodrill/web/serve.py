"""Run the page until it is told to stop."""

from __future__ import annotations

import gc
import signal
import socket
import threading
import webbrowser
from collections.abc import Callable
from types import FrameType

import uvicorn
from fastapi import FastAPI

from phonodrill.web.app import make_app
from phonodrill.web.connection import Connection
from phonodrill.web.desk import Desk
from phonodrill.web.settings import MOST_CONNECTIONS, Settings, address_part

IDLE_SECONDS = 10
STOP_SECONDS = 3
ANYWHERE = {"0.0.0.0": "127.0.0.1", "::": "::1"}  # noqa: S104  # only compared
"""Addresses that mean every one of this machine, and what a browser here can ask."""


def serve(
    listener: socket.socket, settings: Settings, *, tell: Callable[[str], None], browser: bool
) -> None:
    """Serve the page until Ctrl-C or SIGTERM.

    Args:
        listener: what takes connections; see :func:`phonodrill.web.listen.listen`.
        settings: what the page may do.
        tell: is given the address when the page can be asked.
        browser: whether to open it in the user's browser.
    """
    host, port, *_ = listener.getsockname()
    address = f"http://{address_part(ANYWHERE.get(host, host))}:{port}/"
    app = make_app(settings)
    server = _Server(_configuration(app), app)
    _stop_on_signals(server)
    # What was imported stays: looking through it again and again for what can be thrown
    # away takes a tenth of a second, in the middle of a request.
    gc.freeze()
    tell(address)
    if browser:
        # Opened from another thread: some browsers do not return until they are closed.
        threading.Thread(target=webbrowser.open, args=(address,), daemon=True).start()
    server.run(sockets=[listener])


def _configuration(app: FastAPI) -> uvicorn.Config:
    return uvicorn.Config(
        app,
        http=Connection,
        ws="none",
        log_level="error",
        access_log=False,
        server_header=False,
        # Anyone can send such headers; the page needs nothing that they say.
        proxy_headers=False,
        limit_concurrency=MOST_CONNECTIONS,
        timeout_keep_alive=IDLE_SECONDS,
        timeout_graceful_shutdown=STOP_SECONDS,
    )


class _Server(uvicorn.Server):
    """Gives up what waits for words as soon as it is told to stop."""

    def __init__(self, config: uvicorn.Config, app: FastAPI) -> None:
        super().__init__(config)
        self._app = app

    def handle_exit(self, sig: int, frame: FrameType | None) -> None:
        """Stop; called on a signal."""
        desk: Desk | None = getattr(self._app.state, "desk", None)
        if desk:  # else it has not begun
            desk.stop()
        super().handle_exit(sig, frame)


def _stop_on_signals(server: uvicorn.Server) -> None:
    """End like any other command: the server would end as if killed by the signal.

    While it runs, it takes signals itself and hands them on to these when it has stopped.
    """

    def stop(*_: object) -> None:
        server.should_exit = True

    for number in (signal.SIGINT, signal.SIGTERM):
        signal.signal(number, stop)
