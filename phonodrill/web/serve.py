"""Run the page on an address until Ctrl-C."""

from __future__ import annotations

import contextlib
import socket
import threading
import webbrowser
from collections.abc import Callable

import uvicorn

from phonodrill.errors import PhonodrillError
from phonodrill.web.app import make_app
from phonodrill.web.settings import Settings

IDLE_SECONDS = 10
STOP_SECONDS = 3


def serve(
    host: str, port: int, settings: Settings, *, tell: Callable[[str], None], browser: bool
) -> None:
    """Serve the page until it is stopped.

    Args:
        host: address to listen on.
        port: 0 for any that is free.
        settings: what the page may do.
        tell: is given the address when the page can be asked.
        browser: whether to open it in the user's browser.

    Raises:
        PhonodrillError: if the address cannot be had.
    """
    with contextlib.closing(_listen(host, port)) as listener:
        address = f"http://{_shown(host)}:{listener.getsockname()[1]}/"
        config = uvicorn.Config(
            make_app(settings),
            log_level="warning",
            access_log=False,
            server_header=False,
            timeout_keep_alive=IDLE_SECONDS,
            timeout_graceful_shutdown=STOP_SECONDS,
        )
        server = uvicorn.Server(config)
        tell(address)
        if browser:
            # Opened from another thread: some browsers do not return until they are closed.
            threading.Thread(target=webbrowser.open, args=(address,), daemon=True).start()
        with contextlib.suppress(KeyboardInterrupt):
            server.run(sockets=[listener])


def _listen(host: str, port: int) -> socket.socket:
    family = socket.AF_INET6 if ":" in host else socket.AF_INET
    listener = socket.socket(family, socket.SOCK_STREAM)
    listener.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        listener.bind((host.strip("[]"), port))
        listener.listen(128)
    except (OSError, OverflowError) as error:
        listener.close()
        raise PhonodrillError(
            f"cannot listen on {host}, port {port}: {error}", "--port 0 for any that is free"
        ) from error
    return listener


def _shown(host: str) -> str:
    return f"[{host}]" if ":" in host and not host.startswith("[") else host
