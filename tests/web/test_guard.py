"""What every request passes: host, headers, size and time of the body."""

from __future__ import annotations

import asyncio
import socket
import time
from collections.abc import Iterator
from typing import Any
from urllib.parse import urlsplit

import pytest
from fastapi import FastAPI, Request
from fastapi.testclient import TestClient

from phonodrill.web import connection, guard
from phonodrill.web.app import make_app
from phonodrill.web.pages import MENU
from phonodrill.web.settings import LARGEST_BODY, Settings

PAGE = "/warm-up?seed=1&count=1"
ADDRESSES = [
    *(page.path for page in MENU),
    *("/nothing", "/static/style.css", "/static/nothing", "/static/ABeeZee-Regular.ttf"),
    *("/api/openapi.json", "/api/nothing", "/api/warmup?count=0", "/warm-up?count=x", "/%00"),
]


@pytest.fixture(scope="module")
def faulty() -> Iterator[TestClient]:
    """A page with a fault of ours in it, and one that reads what is sent."""
    app: FastAPI = make_app(Settings())

    @app.get("/fault")
    @app.get("/api/fault")
    def fault() -> None:
        secret = "/harbor/ropes.txt"
        raise RuntimeError(secret)

    @app.post("/length")
    async def length(request: Request) -> int:
        return len(await request.body())

    with TestClient(app, base_url="http://127.0.0.1", raise_server_exceptions=False) as opened:
        yield opened


def is_guarded(headers: Any) -> bool:
    policy = headers["content-security-policy"]
    assert "unsafe" not in policy
    assert "default-src 'none'" in policy
    assert "frame-ancestors 'none'" in policy
    return bool(headers["x-content-type-options"] == "nosniff")


def test_other_host_names_are_refused(client: TestClient) -> None:
    for host in ("harbor.example", "harbor.example:80", "127.0.0.1.harbor.example", "", "[::1"):
        answer = client.get(PAGE, headers={"host": host})
        assert answer.status_code == 421, host
        assert is_guarded(answer.headers)
    for host in ("127.0.0.1:8000", "localhost", "LOCALHOST:1", "[::1]", "[::1]:8000"):
        assert client.get("/api/openapi.json", headers={"host": host}).status_code == 200, host


@pytest.mark.parametrize("address", ADDRESSES)
def test_every_answer_has_the_policy(client: TestClient, address: str) -> None:
    assert is_guarded(client.get(address, follow_redirects=False).headers)


def test_a_fault_of_ours_shows_nothing_of_it(faulty: TestClient) -> None:
    for address in ("/fault", "/api/fault"):
        answer = faulty.get(address)
        assert answer.status_code == 500
        assert is_guarded(answer.headers)
        assert "something went wrong" in answer.text
        for secret in ("ropes", "RuntimeError", "Traceback", ".py"):
            assert secret not in answer.text


@pytest.mark.parametrize("method", ["POST", "PUT", "PATCH", "DELETE", "OPTIONS", "TRACE", "X"])
def test_other_methods_are_refused(client: TestClient, method: str) -> None:
    for address in ("/warm-up", "/api/warmup", "/static/style.css"):
        assert client.request(method, address).status_code == 405, address


@pytest.mark.parametrize(
    "path",
    [
        "/static/../app.py",
        "/static/%2e%2e/app.py",
        "/static/..%2fapp.py",
        "/static/..%5capp.py",
        "/static//etc/passwd",
        "/static/%2fetc%2fpasswd",
        "/static/....//app.py",
        "/static/style.css%00.py",
        "/static/",
        "/static",
        "/..%2f..%2fetc/passwd",
    ],
)
def test_no_file_but_those_served(server: str, path: str) -> None:
    """Sent as written: a client library would tidy the path."""
    assert answer_to(server, f"GET {path} HTTP/1.1\r\nHost: localhost\r\n\r\n") in {"404", "405"}


def parts() -> Iterator[bytes]:
    for _ in range(LARGEST_BODY // 100_000 + 2):
        yield b"g" * 100_000


def test_headers_are_limited(client: TestClient) -> None:
    for size, status in ((70_000, 431), (60_000, 404)):
        answer = client.get("/nothing", headers={"x": "g" * size})
        assert answer.status_code == status
        assert is_guarded(answer.headers)


def test_a_body_is_limited_with_and_without_its_length(faulty: TestClient) -> None:
    small = b"gull" * 1000
    assert faulty.post("/length", content=small).json() == len(small)
    # Once refused by what it says of itself, once by what came.
    for content in (b"g" * (LARGEST_BODY + 1), parts()):
        answer = faulty.post("/length", content=content)
        assert answer.status_code == 413
        assert is_guarded(answer.headers)


def test_a_slow_body_is_given_up(faulty: TestClient, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(guard, "SLOWEST_BODY", 0.2)

    async def ask() -> list[dict[str, Any]]:
        sent: list[dict[str, Any]] = []

        async def receive() -> dict[str, Any]:
            await asyncio.sleep(0.05)
            return {"type": "http.request", "body": b"g", "more_body": True}

        async def send(message: dict[str, Any]) -> None:
            sent.append(message)

        scope = {"type": "http", "method": "POST", "path": "/length", "raw_path": b"/length"}
        scope |= {"query_string": b"", "headers": [(b"host", b"localhost")], "root_path": ""}
        await faulty.app(scope, receive, send)  # type: ignore[arg-type]
        return sent

    started = time.monotonic()
    sent = asyncio.run(ask())
    assert time.monotonic() - started < 2
    assert sent[0]["status"] == 408
    assert is_guarded({name.decode(): value.decode() for name, value in sent[0]["headers"]})


def answer_to(server: str, text: str) -> str:
    """Send bytes as they are; give the status."""
    place = urlsplit(server)
    with socket.create_connection((place.hostname or "", place.port or 0), 10) as link:
        link.sendall(text.encode("latin-1"))
        return link.recv(4000).decode("latin-1").split(" ")[1]


@pytest.mark.parametrize(
    ("request_", "status"),
    [
        (f"GET / HTTP/1.1\r\nHost: localhost\r\nX: {'g' * 70_000}\r\n\r\n", "4"),
        (f"GET /warm-up?sound={'g' * 70_000} HTTP/1.1\r\nHost: localhost\r\n\r\n", "4"),
        ("GET / HTTP/1.1\r\nHost: localhost\r\nHost: reef.example\r\n\r\n", "400"),
        ("GET / HTTP/1.1\r\n\r\n", "400"),
        ("GET / HTTP/1.0\r\n\r\n", "421"),
        ("POST / HTTP/1.1\r\nHost: localhost\r\nContent-Length: -1\r\n\r\n", "400"),
        ("POST / HTTP/1.1\r\nHost: localhost\r\nContent-Length: 99999999\r\n\r\n", "413"),
        ("gulls\r\n\r\n", "400"),
    ],
    ids=["header", "address", "two hosts", "no host", "old", "negative", "large", "nonsense"],
)
def test_odd_requests(server: str, request_: str, status: str) -> None:
    # What is too long is refused by the server if it comes in parts, else by the guard.
    assert answer_to(server, request_).startswith(status)


@pytest.mark.parametrize(
    "begun",
    [
        "",
        "GET /warm-up HTTP/1.1\r\nHost: local",
        "POST /warm-up HTTP/1.1\r\nHost: localhost\r\nContent-Length: 9\r\n\r\ng",
    ],
    ids=["nothing", "headers", "body"],
)
def test_a_request_that_never_ends_is_closed(monkeypatch: pytest.MonkeyPatch, begun: str) -> None:
    """In this process, with a short time: a byte now and then does not hold the connection."""
    monkeypatch.setattr(connection, "SLOWEST_REQUEST", 0.4)

    async def trickle() -> float:
        import uvicorn

        config = uvicorn.Config(
            make_app(), http=connection.Connection, ws="none", lifespan="off", log_config=None
        )
        server = uvicorn.Server(config)
        listener = socket.create_server(("127.0.0.1", 0))
        serving = asyncio.create_task(server.serve([listener]))
        reader, writer = await asyncio.open_connection(*listener.getsockname())
        started = time.monotonic()
        writer.write(begun.encode())
        answer = asyncio.create_task(reader.read())
        while not answer.done() and time.monotonic() - started < 5:
            if begun:
                writer.write(b"g" if "\r\n\r\n" not in begun else b"")
            await asyncio.wait([answer], timeout=0.1)
        took = time.monotonic() - started
        writer.close()
        server.should_exit = True
        await serving
        return took

    assert 0.3 < asyncio.run(trickle()) < 3
