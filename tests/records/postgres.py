"""A PostgreSQL cluster of the tests' own, from the system's binaries, without the network."""

from __future__ import annotations

import itertools
import os
import shutil
import subprocess
import tempfile
from collections.abc import Sequence
from pathlib import Path

BINARIES = Path("/usr/lib/postgresql")
_OWNER = "postgres"
_FAST = "-c fsync=off -c synchronous_commit=off -c full_page_writes=off"


def find_binaries() -> Path | None:
    """Return the folder of the newest PostgreSQL of the system, or None."""
    found = sorted(BINARIES.glob("*/bin/initdb"), key=lambda path: float(path.parts[-3]))
    return found[-1].parent if found else None


class Cluster:
    """A server on a socket in a temporary folder; as root it runs as another user."""

    def __init__(self, binaries: Path, *, options: str = _FAST) -> None:
        self._binaries = binaries
        self._folder = Path(tempfile.mkdtemp(prefix="pg-"))
        self._numbers = itertools.count(1)
        if os.geteuid() == 0:
            shutil.chown(self._folder, _OWNER)
        self._call("initdb", "-A", "trust", "-U", _OWNER, "-E", "UTF8", "--locale=C", "-N")
        sockets = f"-k {self._folder} -c listen_addresses= -c max_connections=50 {options}"
        self._call("pg_ctl", "-w", "-s", "-l", str(self._folder / "log"), "-o", sockets, "start")

    def new_database(self) -> str:
        """Make an empty database; returns its URL."""
        import psycopg

        name = f"records{next(self._numbers)}"
        with psycopg.connect(self._address("postgres"), autocommit=True) as connection:
            connection.execute(f"CREATE DATABASE {name}")
        return f"postgresql+psycopg://{_OWNER}@/{name}?host={self._folder}"

    def stop(self) -> None:
        """Stop the server and remove all of it."""
        self._call("pg_ctl", "-s", "-m", "immediate", "stop")
        shutil.rmtree(self._folder, ignore_errors=True)

    def _address(self, name: str) -> str:
        return f"host={self._folder} user={_OWNER} dbname={name}"

    def _call(self, program: str, *arguments: str) -> None:
        command: Sequence[str] = (
            str(self._binaries / program),
            "-D",
            str(self._folder / "data"),
            *arguments,
        )
        if os.geteuid() == 0:
            command = (
                "setpriv",
                f"--reuid={_OWNER}",
                f"--regid={_OWNER}",
                "--init-groups",
                *command,
            )
        subprocess.run(
            command,
            check=True,
            cwd=self._folder,
            stdout=subprocess.DEVNULL,
            env={"LC_ALL": "C", "PATH": os.environ["PATH"]},
        )
