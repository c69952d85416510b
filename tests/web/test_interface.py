from __future__ import annotations

import json
import re
from html import unescape

import pytest
from fastapi import FastAPI
from fastapi.testclient import TestClient

from phonodrill.web.answers import ANSWERS
from phonodrill.web.pages.interface import Route, routes_of
from tests.web.markup import Markup


@pytest.fixture(scope="module")
def routes(application: FastAPI) -> list[Route]:
    return list(routes_of(application.openapi()))


def test_the_page_shows_every_route_and_field(client: TestClient, routes: list[Route]) -> None:
    page = client.get("/api").text
    assert Markup(page).inline == []
    text = unescape(re.sub(r"<[^>]*>", "", page))
    schema = client.get("/api/openapi.json").json()
    assert {route.path for route in routes} == set(schema["paths"])
    for route in routes:
        assert f"{route.method} {route.path}" in text
        for field in route.fields:
            assert field.says, (route.path, field.name)
            assert field.says in text
            assert field.kind in text
    assert 'href="/api/openapi.json"' in page


def test_every_route_says_what_it_answers_and_answers_so(
    client: TestClient, routes: list[Route]
) -> None:
    for route in routes:
        if route.method == "GET":
            done = client.get(route.link)
        else:
            done = client.post(route.path, json=json.loads(route.body))
        assert done.status_code == 200, route.path
        assert {name for name, _ in route.answers} == set(done.json()), route.path
        assert route.answer, route.path
    assert {route.path.removeprefix("/api") for route in routes} == set(ANSWERS)


def test_refusals_are_described_as_they_are(client: TestClient) -> None:
    schema = client.get("/api/openapi.json").json()
    assert "HTTPValidationError" not in schema["components"]["schemas"]
    for methods in schema["paths"].values():
        for route in methods.values():
            assert {"200", "400", "422"} <= set(route["responses"])
    assert set(client.get("/api/warmup", params={"band": "9"}).json()) == {"error", "try"}
