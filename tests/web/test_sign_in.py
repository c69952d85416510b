from __future__ import annotations

import re
import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from fastapi import FastAPI
from fastapi.routing import APIRoute
from fastapi.testclient import TestClient
from typer.testing import CliRunner

from phonodrill.cli.main import app
from phonodrill.records.passphrase import derive_key, keep_passphrase
from phonodrill.records.store import Store
from phonodrill.web.csrf import FIELD
from phonodrill.web.records import session
from phonodrill.web.records.api import api
from phonodrill.web.records.join import MODULES
from phonodrill.web.records.session import COOKIE, Tries, is_session, new_session
from phonodrill.web.settings import Records
from tests.web.kept import fill, opened, send, token_of

CHECK = "11111111"
PASSPHRASE = "gulls over the harbor"


@pytest.fixture
def client(tmp_path: Path) -> Iterator[TestClient]:
    """A page on this machine, for which a passphrase is set."""
    with opened(tmp_path) as client:
        keep_passphrase(PASSPHRASE)
        yield client


def sign_in(
    client: TestClient, passphrase: str = PASSPHRASE, to: str = "/groups"
) -> tuple[int, str]:
    return send(client, "/sign-in", passphrase=passphrase, to=to)


def routes_behind() -> list[tuple[str, str]]:
    """Every method and address of every page and API route with records."""
    routers = [(module.page, "") for module in MODULES] + [(api, "/api")]
    return [
        (
            method,
            prefix + re.sub(r"{(group|student)}", "1" * 12, route.path.replace("{check}", CHECK)),
        )
        for router, prefix in routers
        for route in router.routes
        if isinstance(route, APIRoute)
        for method in route.methods or ()
    ]


def test_every_route_is_behind_the_passphrase(client: TestClient) -> None:
    routes = routes_behind()
    assert len(routes) >= 25
    for method, path in routes:
        data: dict[str, str] | None = {} if path.startswith("/api/") and method == "POST" else None
        answer = client.request(method, path, follow_redirects=False, json=data)
        assert answer.headers["cache-control"] == "no-store"
        if path.startswith("/api/"):
            assert answer.status_code == 401, path
            assert set(answer.json()) == {"error", "try"}
        else:
            assert answer.status_code == 303, path
            assert answer.headers["location"].startswith("/sign-in?to=%2F"), path
    assert client.get("/today").status_code == 200


def test_in_and_out(client: TestClient) -> None:
    asked = client.get("/progress")
    assert asked.url.path == "/sign-in"
    assert 'name="to" value="/progress"' in asked.text
    token = token_of(asked.text)
    sent = {FIELD: token, "passphrase": PASSPHRASE, "to": "/progress"}
    answer = client.post("/sign-in", data=sent, follow_redirects=False)
    assert (answer.status_code, answer.headers["location"]) == (303, "/progress")
    cookie = answer.headers["set-cookie"]
    assert "HttpOnly" in cookie
    assert "SameSite=strict" in cookie
    assert "Max-Age=28800" in cookie
    assert "Secure" not in cookie
    page = client.get("/groups")
    assert (page.status_code, page.url.path) == (200, "/groups")
    assert "Sign out" in page.text
    answer = client.post("/sign-out", data={FIELD: token_of(page.text)}, follow_redirects=False)
    assert answer.status_code == 303
    assert client.get("/groups").url.path == "/sign-in"


def test_over_https_the_cookie_goes_over_https_only(tmp_path: Path) -> None:
    with opened(tmp_path) as client:
        keep_passphrase(PASSPHRASE)
        assert isinstance(client.app, FastAPI)
        client.app.state.settings = client.app.state.settings._replace(secure=True)
        page = client.get("/sign-in")
        answer = client.post(
            "/sign-in",
            data={FIELD: token_of(page.text), "passphrase": PASSPHRASE},
            # A client that speaks HTTP does not send back what is for HTTPS only.
            headers={"cookie": page.headers["set-cookie"].partition(";")[0]},
            follow_redirects=False,
        )
        assert answer.status_code == 303
        assert "Secure" in answer.headers["set-cookie"]


def test_a_wrong_passphrase_opens_nothing(client: TestClient) -> None:
    for wrong in ("", "gulls", PASSPHRASE.upper(), f"{PASSPHRASE} "):
        status, text = sign_in(client, wrong)
        assert (status, COOKIE in client.cookies) == (400, False)
        assert "not the passphrase" in text
    assert client.get("/groups").url.path == "/sign-in"


@pytest.mark.parametrize("to", ["//reef.example", "https://reef.example", "/today", "/check/../x"])
def test_one_comes_back_to_pages_with_records_only(client: TestClient, to: str) -> None:
    assert client.get("/sign-in", params={"to": to}).status_code == 422
    assert sign_in(client, to=to)[0] == 422


def test_who_tries_too_often_has_to_wait(
    client: TestClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    now = 1000.0
    monkeypatch.setattr("phonodrill.web.records.sign_in.time.monotonic", lambda: now)
    checked = []
    monkeypatch.setattr(
        "phonodrill.web.records.sign_in.is_passphrase",
        lambda text: checked.append(text) or text == PASSPHRASE,  # type: ignore[func-returns-value]
    )
    for _ in range(session.FREE_TRIES):
        assert sign_in(client, "gull")[0] == 400
    token = token_of(client.get("/sign-in").text)
    sent = {FIELD: token, "passphrase": PASSPHRASE}
    refused = client.post("/sign-in", data=sent, follow_redirects=False)
    assert (refused.status_code, refused.headers["retry-after"]) == (429, "31")
    assert "again in 31 seconds" in refused.text
    assert len(checked) == session.FREE_TRIES, "the right one is not even looked at"
    now += session.FIRST_WAIT
    assert sign_in(client, "gull")[0] == 400
    now += session.FIRST_WAIT
    assert sign_in(client)[0] == 429, "twice as long the second time"
    now += session.FIRST_WAIT
    assert sign_in(client)[0] == 303
    assert sign_in(client, "gull")[0] == 400, "counted anew"


def test_waiting_doubles_up_to_a_quarter_of_an_hour_and_is_forgotten() -> None:
    tries, now = Tries(), 0.0
    assert [tries.begin(now) for _ in range(session.FREE_TRIES)] == [0] * session.FREE_TRIES
    waits = []
    for _ in range(7):
        waits.append(tries.begin(now) - 1)
        now += waits[-1]
        assert tries.begin(now) == 0
    assert waits == [30, 60, 120, 240, 480, 900, 900]
    now += session.FORGOTTEN + 1
    assert [tries.begin(now) for _ in range(session.FREE_TRIES)] == [0] * session.FREE_TRIES


def test_a_new_passphrase_ends_every_session_and_changes_every_address(
    client: TestClient,
) -> None:
    with Store() as store:
        fill(store)
    assert sign_in(client)[0] == 303
    before = re.findall(r"/groups/\d{12}", client.get("/groups").text)
    keep_passphrase("crabs under the ropes")
    assert client.get("/groups").url.path == "/sign-in"
    assert sign_in(client)[0] == 400
    assert sign_in(client, "crabs under the ropes")[0] == 303
    after = re.findall(r"/groups/\d{12}", client.get("/groups").text)
    assert len(before) == len(after) == 1
    assert before != after


def test_several_servers_agree(tmp_path: Path) -> None:
    """What one signed, another takes: the key comes from the passphrase alone."""
    with opened(tmp_path / "data") as one, opened(tmp_path / "data") as other:
        keep_passphrase(PASSPHRASE)
        with Store() as store:
            fill(store)
        assert sign_in(one)[0] == 303
        other.cookies.set(COOKIE, one.cookies[COOKIE])
        assert other.get("/groups").text.count("/groups/") == one.get("/groups").text.count(
            "/groups/"
        )
        pages = [re.findall(r"/groups/\d{12}", here.get("/groups").text) for here in (one, other)]
        assert pages[0] == pages[1] != []


@pytest.mark.usefixtures("client")
def test_a_session_ends_and_cannot_be_made_up() -> None:
    now = time.time()
    made = new_session(now)
    assert is_session(made, now + session.LASTS - 2)
    assert not is_session(made, now + session.LASTS + 1)
    ends, salt, signature = made.split(".")
    later = f"{int(ends) + 3600}.{salt}.{signature}"
    for forged in ("", ".", later, f"{ends}.{salt}.", f"{made}0", "gänse.x.y", f"{ends}.{salt}"):
        assert not is_session(forged, now), forged
    assert derive_key("session") != derive_key("addresses")


def test_a_shared_page_without_its_passphrase_lets_nobody_in(tmp_path: Path) -> None:
    """The file with the hash is gone while the page runs."""
    with opened(tmp_path, Records.SHARED) as client:
        assert client.get("/groups").url.path == "/sign-in"
        status, text = sign_in(client)
        assert (status, str(tmp_path) in text) == (503, False)
        assert not is_session(f"{int(time.time()) + 99}.a.")


@pytest.mark.parametrize("options", [["--host", "0.0.0.0"], ["--name", "drills.harbor.example"]])
def test_serve_refuses_to_share_records_without_a_passphrase(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, options: list[str]
) -> None:
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path))
    seen = []
    monkeypatch.setattr(
        "phonodrill.web.serve.serve", lambda _, settings, **__: seen.append(settings.records)
    )
    run = CliRunner().invoke(app, ["serve", *options, "--records"])
    assert run.exit_code != 0
    assert "need a passphrase" in str(run.exception) + run.output
    assert seen == []
    for more in ([], ["--no-records"]):
        assert CliRunner().invoke(app, ["serve", *options, *more]).exit_code == 0
    keep_passphrase(PASSPHRASE)
    assert CliRunner().invoke(app, ["serve", *options, "--records"]).exit_code == 0
    for more in ([], ["--no-records"]):
        assert CliRunner().invoke(app, ["serve", *more]).exit_code == 0
    assert seen == [Records.OFF, Records.OFF, Records.SHARED, Records.OWN, Records.OFF]


def test_without_the_packages_the_pages_are_left_out(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(
        "phonodrill.cli.serve.find_spec", lambda name: None if name == "sqlalchemy" else name
    )
    seen = []
    monkeypatch.setattr(
        "phonodrill.web.serve.serve", lambda _, settings, **__: seen.append(settings.records)
    )
    assert CliRunner().invoke(app, ["serve"]).exit_code == 0
    assert seen == [Records.OFF]
    run = CliRunner().invoke(app, ["serve", "--records"])
    assert run.exit_code != 0
    assert "more packages" in str(run.exception) + run.output
