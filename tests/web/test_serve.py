"""``phonodrill serve``: how it starts, what it says, how it stops."""

from __future__ import annotations

import os
import signal
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from pathlib import Path

import httpx2
import pytest

from phonodrill.web.settings import settings_for

COMMAND = [sys.executable, "-m", "phonodrill", "serve"]
WITHOUT = "import sys; sys.modules[{!r}] = None; from phonodrill.cli.main import main; main()"


@contextmanager
def started(home: Path, *options: str, **environment: str) -> Iterator[subprocess.Popen[str]]:
    with subprocess.Popen(
        [*COMMAND, *options],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        encoding="utf-8",
        env={**os.environ, "XDG_CONFIG_HOME": str(home), "PYTHONUNBUFFERED": "1", **environment},
    ) as process:
        try:
            yield process
        finally:
            process.kill()


def address_in(process: subprocess.Popen[str]) -> str:
    assert process.stdout
    return next(part for part in process.stdout.readline().split() if part.startswith("http://"))


def failed(*arguments: str) -> str:
    done = subprocess.run(
        [*COMMAND, "--no-browser", *arguments],
        capture_output=True,
        check=False,
        encoding="utf-8",
        timeout=60,
    )
    assert done.returncode == 2, done
    assert len(done.stderr.splitlines()) == 2, done.stderr
    return done.stderr


@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM])
def test_it_opens_the_browser_and_stops_cleanly(tmp_path: Path, number: signal.Signals) -> None:
    seen = tmp_path / "seen.txt"
    browser = tmp_path / "browser"
    browser.write_text(f'#!/bin/sh\nprintf %s "$1" > {seen}.part && mv {seen}.part {seen}\n')
    browser.chmod(0o700)
    with started(tmp_path, BROWSER=f"{browser} %s") as process:
        address = address_in(process)
        answer = httpx2.get(f"{address}warm-up?seed=1&count=1")
        assert answer.status_code == 200
        assert "server" not in answer.headers
        for _ in range(200):
            if seen.exists():
                break
            time.sleep(0.05)
        assert seen.read_text() == address
        process.send_signal(number)
        out, problems = process.communicate(timeout=30)
    assert (process.returncode, out, problems) == (0, "", "")


def test_a_stop_before_it_has_begun_is_clean_too(tmp_path: Path) -> None:
    with started(tmp_path, "--no-browser") as process:
        address_in(process)
        process.send_signal(signal.SIGTERM)
        _, problems = process.communicate(timeout=30)
    assert (process.returncode, problems) == (0, "")


def test_a_stop_with_many_waiting_is_clean_too(tmp_path: Path) -> None:
    # Pairs among all words, each with another seed: more than it can do before it must stop.
    with started(tmp_path, "--no-browser") as process, ExitStack() as waiting:
        host, port = address_in(process).strip("/").rpartition("/")[2].split(":")
        for seed in range(60):
            asking = waiting.enter_context(socket.create_connection((host, int(port))))
            asking.sendall(
                f"GET /pairs?band=3&seed={seed} HTTP/1.1\r\nHost: {host}\r\n\r\n".encode()
            )
        process.send_signal(signal.SIGTERM)
        _, problems = process.communicate(timeout=60)
    assert (process.returncode, problems) == (0, "")


def test_a_port_in_use_is_one_line() -> None:
    with socket.create_server(("127.0.0.1", 0)) as taken:
        port = str(taken.getsockname()[1])
        said = failed("--port", port)
    assert f"port {port}: address already in use" in said
    assert "try: --port 0" in said


@pytest.mark.parametrize("host", ["", "a..b", "203.0.113.7"])
@pytest.mark.source("203.0.113.0/24 belongs to nobody: RFC 5737")
def test_an_address_that_cannot_be_had_is_one_line(host: str) -> None:
    said = failed("--host", host)
    assert "error: " in said
    assert "listen on" in said


@pytest.mark.parametrize("module", ["fastapi", "uvicorn", "jinja2", "python_multipart"])
def test_a_missing_package_is_named_with_its_extra(module: str) -> None:
    done = subprocess.run(
        [sys.executable, "-c", WITHOUT.format(module), "serve", "--no-browser"],
        capture_output=True,
        check=False,
        encoding="utf-8",
        timeout=60,
    )
    assert done.returncode == 2
    name = module.replace("_", "-")
    assert done.stderr.splitlines() == [
        f"error: the page needs the package {name}",
        'try: in the folder of phonodrill: python -m pip install ".[web]"',
    ]


def test_an_open_address_is_warned_of_and_a_name_is_answered(tmp_path: Path) -> None:
    options = ("--no-browser", "--host", "0.0.0.0", "--name", "Drills.Harbor.Example", "--https")
    with started(tmp_path, *options) as process:
        address = address_in(process)
        assert address.startswith("http://127.0.0.1:")
        page = f"{address}warm-up?seed=1&count=1"
        behind_proxy = {"host": "drills.harbor.example", "x-forwarded-proto": "https"}
        answer = httpx2.get(page, headers=behind_proxy)
        assert answer.status_code == 200
        assert "secure" in answer.headers["set-cookie"].lower()
        # What a proxy did not check may say anything: it is not looked at.
        foreign = {"x-forwarded-host": "drills.harbor.example", "host": "reef.example"}
        assert httpx2.get(page, headers=foreign).status_code == 421
        process.send_signal(signal.SIGINT)
        _, problems = process.communicate(timeout=30)
    assert "note: 0.0.0.0 can be reached from other machines" in problems
    assert "cannot be kept there" in problems
    assert process.returncode == 0


def test_what_is_shared_keeps_nothing() -> None:
    words = Path("words.txt")
    alone = settings_for("127.0.0.1", (), words)
    assert (alone.words_file, alone.taught_folder, alone.secure) == (words, Path("taught"), False)
    for host, names in (("127.0.0.1", ("drills.harbor.example",)), ("::", ()), ("10.0.0.1", ())):
        shared = settings_for(host, names, words, https=True)
        assert (shared.words_file, shared.taught_folder, shared.secure) == (None, None, True)
        assert set(names) < set(shared.hosts)
    assert "[fd00::7]" in settings_for("fd00::7", (), words).hosts
