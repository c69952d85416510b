"""What every request passes."""

from __future__ import annotations

import httpx2
from fastapi.testclient import TestClient


def test_other_host_names_are_refused(client: TestClient) -> None:
    for host in ("harbor.example", "harbor.example:80", "127.0.0.1.harbor.example", ""):
        answer = client.get("/warm-up?seed=1", headers={"host": host})
        assert answer.status_code == 421, host
        assert "content-security-policy" in answer.headers
    for host in ("127.0.0.1:8000", "localhost", "LOCALHOST:1", "[::1]", "[::1]:8000"):
        assert client.get("/api/openapi.json", headers={"host": host}).status_code == 200, host


def test_the_server_answers(server: str) -> None:
    assert httpx2.get(f"{server}/warm-up?seed=1&count=1").status_code == 200
