"""Run a command inside the test's own process: a process apart costs half a second."""

from __future__ import annotations

import contextlib
import io
import os
import sys
from typing import NamedTuple
from unittest.mock import patch

from phonodrill.cli.main import main

PLAINEST_LOCALE = {"COLUMNS": "100", "PYTHONUTF8": "0", "LC_ALL": "C"}
"""What a process apart is given where the screen is said to know nothing but ASCII."""


class Done(NamedTuple):
    """What a command left behind."""

    returncode: int
    stdout: str
    stderr: str


def run(*arguments: str, keys: str = "") -> Done:
    """Run a command as if typed.

    Args:
        arguments: what follows ``phonodrill``.
        keys: what is typed while it runs.
    """
    out, err = _stream(), _stream()
    with (
        patch.object(sys, "argv", ["phonodrill", *arguments]),
        patch.object(sys, "stdin", io.StringIO(keys)),
        contextlib.redirect_stdout(out),
        contextlib.redirect_stderr(err),
    ):
        try:
            main()
        except SystemExit as left:
            status = left.code if isinstance(left.code, int) else 1
        else:
            status = 0
    return Done(status, _text(out), _text(err))


def works(*arguments: str, keys: str = "") -> str:
    """Run a command that has to succeed; returns what it printed."""
    done = run(*arguments, keys=keys)
    assert done.returncode == 0, done.stderr
    return done.stdout


def fails(*arguments: str, keys: str = "") -> str:
    """Run a command that has to say one clear line; returns what it complained of."""
    done = run(*arguments, keys=keys)
    assert done.returncode == 2, done
    lines = done.stderr.splitlines()
    assert [line.startswith("error: ") for line in lines].count(True) == 1, done.stderr
    assert all(line.startswith(("error: ", "try: ", "note: ")) for line in lines), done.stderr
    return done.stderr


def _stream() -> io.TextIOWrapper:
    return io.TextIOWrapper(io.BytesIO(), encoding="ascii", errors="backslashreplace")


def _text(stream: io.TextIOWrapper) -> str:
    stream.flush()
    written = stream.buffer
    assert isinstance(written, io.BytesIO)
    return written.getvalue().decode("utf-8").replace(os.linesep, "\n")
