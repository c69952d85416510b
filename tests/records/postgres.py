"""A PostgreSQL cluster of the tests' own, from the system's binaries, without the network."""

from __future__ import annotations

import contextlib
import itertools
import os
import shutil
import signal
import subprocess
import tempfile
import time
from pathlib import Path

BINARIES = Path("/usr/lib/postgresql")
_OWNER = "postgres"
_FAST = "-c fsync=off -c synchronous_commit=off -c full_page_writes=off"


def find_binaries() -> Path | None:
    """Return the folder of the newest PostgreSQL of the system, or None."""
    found = sorted(BINARIES.glob("*/bin/initdb"), key=lambda path: float(path.parts[-3]))
    return found[-1].parent if found else None


class Cluster:
    """A server on a socket in a temporary folder; as root it runs as another user.

    It ends with the process that started it, however that ends.
    """

    def __init__(self, binaries: Path, *, options: str = _FAST) -> None:
        self._binaries = binaries
        self._folder = Path(tempfile.mkdtemp(prefix="pg-"))
        self._numbers = itertools.count(1)
        if os.geteuid() == 0:
            shutil.chown(self._folder, _OWNER)
        initial = ("-A", "trust", "-U", _OWNER, "-E", "UTF8", "--locale=C", "-N")
        assert self._start("initdb", *initial).wait() == 0
        sockets = f"-k {self._folder} -c listen_addresses= -c max_connections=50 {options}"
        self._server = self._start("postgres", *sockets.split())
        self._wait()

    def new_database(self) -> str:
        """Make an empty database; returns its URL."""
        import psycopg

        name = f"records{next(self._numbers)}"
        with psycopg.connect(self._address("postgres"), autocommit=True) as connection:
            connection.execute(f"CREATE DATABASE {name}")
        return f"postgresql+psycopg://{_OWNER}@/{name}?host={self._folder}"

    def stop(self) -> None:
        """Stop the server at once and remove all of it."""
        self._server.send_signal(signal.SIGQUIT)
        self._server.wait()
        shutil.rmtree(self._folder, ignore_errors=True)

    def _wait(self) -> None:
        import psycopg

        for _ in range(600):
            with contextlib.suppress(psycopg.OperationalError):
                psycopg.connect(self._address("postgres")).close()
                return
            assert self._server.poll() is None, (self._folder / "log").read_text()
            time.sleep(0.1)
        self.stop()
        raise TimeoutError

    def _address(self, name: str) -> str:
        return f"host={self._folder} user={_OWNER} dbname={name}"

    def _start(self, program: str, *arguments: str) -> subprocess.Popen[bytes]:
        as_owner: tuple[str, ...] = ()
        if os.geteuid() == 0:
            as_owner = (f"--reuid={_OWNER}", f"--regid={_OWNER}", "--init-groups")
        data = str(self._folder / "data")
        with (self._folder / "log").open("ab") as log:
            return subprocess.Popen(
                (
                    *("setpriv", "--pdeathsig", "QUIT", *as_owner),
                    *(str(self._binaries / program), "-D", data, *arguments),
                ),
                cwd=self._folder,
                stdout=log,
                stderr=log,
                env={"LC_ALL": "C", "PATH": os.environ["PATH"]},
            )
