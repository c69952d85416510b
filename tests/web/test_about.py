from __future__ import annotations

import json

from fastapi.testclient import TestClient

from phonodrill import Lexicon
from phonodrill.lesson.tree import CAUTION
from phonodrill.version import VERSION
from phonodrill.web.app import make_app
from phonodrill.web.settings import Settings
from tests.running import works


def test_every_source_is_named_with_its_license(client: TestClient, lexicon: Lexicon) -> None:
    page = client.get("/about").text
    sources = lexicon.sources()
    assert sources
    for name, version, license_, _, _ in sources:
        assert f"<td>{name}</td><td>{version}</td><td>{license_}</td>" in page
    assert VERSION in page
    assert CAUTION in page
    assert 'href="/api"' in page


def test_privacy_is_told_as_it_is(client: TestClient) -> None:
    assert "Only what you keep on purpose is kept" in client.get("/about").text
    with TestClient(make_app(Settings()), base_url="http://127.0.0.1") as shared:
        assert "Nothing that you enter is kept here." in shared.get("/about").text


def test_the_api_says_what_the_command_says(client: TestClient) -> None:
    said = json.loads(works("lexicon", "--disagreements", "--format", "json"))
    assert client.get("/api/lexicon", params={"disagreements": "true"}).json() == said
    assert client.get("/api/lexicon").json()["disagreements"] == []
