"""Let one program change a file at a time, so that none takes back what another added."""

from __future__ import annotations

import contextlib
import os
import time
from collections.abc import Iterator
from pathlib import Path

from phonodrill.errors import PhonodrillError

LONGEST_WAIT = 10.0
"""Seconds; a change takes a fraction of one."""
_PAUSE = 0.02


@contextlib.contextmanager
def one_at_a_time(path: Path) -> Iterator[None]:
    """Keep other programs from changing a file between reading and writing it.

    The folder is locked, not the file, which is replaced by each change; so nothing is left
    behind by a program that is killed. Where folders cannot be locked (Windows, some network
    disks) the change is made all the same.

    Args:
        path: the file; its folder need not be there.

    Raises:
        PhonodrillError: if another program does not come to an end with it.
    """
    folder = Path(os.path.realpath(path)).parent
    with contextlib.ExitStack() as until_done:
        handle = _open(folder)
        if handle is not None:
            until_done.callback(os.close, handle)
            _wait_for(handle, path)
        yield


def _open(folder: Path) -> int | None:
    try:
        return os.open(folder, os.O_RDONLY)
    except OSError:
        return None


def _wait_for(handle: int, path: Path) -> None:
    try:
        import fcntl
    except ImportError:
        return
    last = time.monotonic() + LONGEST_WAIT
    while True:
        try:
            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            if time.monotonic() > last:
                raise PhonodrillError(
                    f"another program is changing {path}", "again in a moment"
                ) from None
            time.sleep(_PAUSE)
        except OSError:
            return
        else:
            return
