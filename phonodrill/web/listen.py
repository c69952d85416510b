"""Take an address to be asked on: done first, as the page takes a second to load."""

from __future__ import annotations

import os
import socket

from phonodrill.errors import PhonodrillError
from phonodrill.web.settings import MOST_CONNECTIONS


def listen(host: str, port: int) -> socket.socket:
    """Listen on an address.

    Args:
        host: a name or number of this machine.
        port: 0 for any that is free.

    Raises:
        PhonodrillError: if the address cannot be had.
    """
    if not host:
        raise PhonodrillError("no address to listen on", "--host 127.0.0.1")
    family = socket.AF_INET6 if ":" in host else socket.AF_INET
    listener = socket.socket(family, socket.SOCK_STREAM)
    if os.name == "posix":
        # Elsewhere it would let two programs have one port.
        listener.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        listener.bind((host.strip("[]"), port))
        listener.listen(MOST_CONNECTIONS)
    except (OSError, UnicodeError) as error:
        listener.close()
        why = getattr(error, "strerror", None) or "that is no address"
        raise PhonodrillError(
            f"cannot listen on {host}, port {port}: {why.lower()}", "--port 0 for any that is free"
        ) from error
    return listener
