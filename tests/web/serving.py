"""A real server for tests, in a process of its own."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

WAIT_SECONDS = 30


@contextmanager
def served(home: Path, *options: str) -> Iterator[str]:
    """Run ``phonodrill serve`` on a free port; give its address without the last slash."""
    with running(home, *options) as (address, _):
        yield address


@contextmanager
def running(home: Path, *options: str) -> Iterator[tuple[str, int]]:
    """Run ``phonodrill serve``; give its address without the last slash, and its process.

    Args:
        home: a temporary folder for what a teacher keeps.
        options: more options of the command.
    """
    environment = {
        **os.environ,
        "XDG_CONFIG_HOME": str(home / "config"),
        "XDG_DATA_HOME": str(home / "data"),
        "PYTHONUNBUFFERED": "1",
    }
    with subprocess.Popen(
        [sys.executable, "-m", "phonodrill", "serve", "--no-browser", *options],
        stdout=subprocess.PIPE,
        encoding="utf-8",
        env=environment,
    ) as server:
        assert server.stdout
        try:
            line = server.stdout.readline()
            assert "http://" in line, f"the server said {line!r}"
            address = next(part for part in line.split() if part.startswith("http://"))
            yield address.rstrip("/"), server.pid
        finally:
            server.terminate()
            server.wait(WAIT_SECONDS)
