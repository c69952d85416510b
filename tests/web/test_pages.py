"""What holds on every page: nothing inline, nothing from elsewhere, text stays text."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest
from fastapi.routing import APIRoute
from fastapi.testclient import TestClient

from phonodrill.web.csrf import COOKIE, FIELD
from phonodrill.web.pages import MENU, PAGES
from tests.browser.addresses import PROBLEMS
from tests.web.markup import FoundForm, Markup

PATHS = [page.path for page in MENU]
NASTY = "<b>x</b>\"' onload=alert(1)&amp;"
CODE = re.compile(r"Traceback|File \"|\.py\b|/home/|/tmp/|/usr/|sqlite|NoneType|object at 0x")
UNFIT = "fuck"


def page_at(client: TestClient, path: str) -> tuple[int, str]:
    answer = client.get(path)
    return answer.status_code, answer.text


def check_page(text: str) -> Markup:
    markup = Markup(text)
    assert markup.inline == []
    assert markup.unclosed == []
    assert not [link for link in markup.links if "//" in link or link.startswith("data:")]
    levels = markup.headings
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(after <= before + 1 for before, after in pairwise(levels))
    assert not CODE.search(text), CODE.search(text)
    return markup


def send(client: TestClient, path: str, form: FoundForm, fields: dict[str, str]) -> tuple[int, str]:
    where = form.action or path
    answer = (
        client.post(where, data=fields)
        if form.method == "post"
        else client.get(where, params=fields)
    )
    return answer.status_code, answer.text


@pytest.mark.parametrize("path", PATHS)
def test_every_page_is_sound_and_its_links_lead_somewhere(client: TestClient, path: str) -> None:
    status, text = page_at(client, path)
    assert status == 200
    for link in dict.fromkeys(check_page(text).links):
        if link.startswith("/"):
            answer = client.get(link, follow_redirects=False)
            # 405: where a form is posted to.
            assert answer.status_code in {200, 303, 405}, link


@pytest.mark.parametrize("path", PATHS)
def test_what_is_typed_stays_text(client: TestClient, path: str) -> None:
    _, text = page_at(client, path)
    for form in Markup(text).forms:
        for name in form.open_fields:
            status, answer = send(client, path, form, {**form.fields, name: NASTY})
            assert status < 500
            if answer.startswith("<!DOCTYPE html>"):
                assert "<b>x</b>" not in answer, name
                check_page(answer)


@pytest.mark.parametrize("path", PATHS)
def test_any_value_of_any_field_is_answered(client: TestClient, path: str) -> None:
    """Also of fields that a browser would not let be changed."""
    _, text = page_at(client, path)
    for form in Markup(text).forms:
        for name in form.fields:
            if name == FIELD:
                continue
            for value in ("-1", "99999999999999999999", "none", "\x00", "ﬀ🦀" * 9, NASTY):
                status, answer = send(client, path, form, {**form.fields, name: value})
                assert status < 500, (name, value)
                assert "<b>x</b>" not in answer
                assert not CODE.search(answer), (name, value)


@pytest.mark.parametrize("path", PATHS)
def test_an_unfit_word_is_not_said_back_in_the_page(client: TestClient, path: str) -> None:
    """The field keeps what was typed; nothing else of the page says it."""
    _, text = page_at(client, path)
    for form in Markup(text).forms:
        for name in form.open_fields:
            _, answer = send(client, path, form, {**form.fields, name: UNFIT})
            shown = re.sub(r"<textarea.*?</textarea>", "", answer, flags=re.DOTALL)
            shown = re.sub(r"<[^>]*>", "", shown)
            assert UNFIT not in shown.lower(), name


def post_paths() -> list[str]:
    """Return where pages send forms; read from their routers, which an application may nest."""
    routes = [route for module in PAGES for route in module.page.routes]
    return [r.path for r in routes if isinstance(r, APIRoute) and "POST" in (r.methods or ())]


def test_no_form_from_elsewhere_changes_anything(client: TestClient) -> None:
    client.cookies.clear()
    client.get("/about" if "/about" in PATHS else PATHS[0])
    token = client.cookies[COOKIE]
    foreign = [
        ({}, {}),
        ({FIELD: ""}, {}),
        ({FIELD: "other"}, {}),
        ({FIELD: "gänse"}, {}),
        ({FIELD: token}, {"origin": "http://reef.example"}),
        ({FIELD: token}, {"origin": "null"}),
        ({FIELD: token}, {"origin": "http://127.0.0.1:81"}),
        ({FIELD: token}, {"cookie": f"{COOKIE}=other"}),
        ({FIELD: ""}, {"cookie": f"{COOKIE}="}),
    ]
    assert post_paths()
    for path in post_paths():
        for fields, headers in foreign:
            answer = client.post(path, data=fields, headers=headers)
            assert answer.status_code in {403, 422}, (path, fields, headers)


def test_addresses_with_a_problem_have_one(client: TestClient) -> None:
    """Those that the tests in a browser and the pictures use."""
    for path, address in PROBLEMS.items():
        answer = client.get(address)
        assert answer.status_code == 400, address
        assert 'role="alert"' in answer.text
        assert path in PATHS
