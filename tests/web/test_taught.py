from __future__ import annotations

import json
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any
from urllib.parse import parse_qs, urlsplit
from xml.etree import ElementTree as ET

import pytest
from fastapi.testclient import TestClient

from phonodrill.services import taught_lists
from phonodrill.services.taught_steps import default_lines
from phonodrill.web.app import make_app
from phonodrill.web.csrf import COOKIE, FIELD
from phonodrill.web.settings import Settings
from tests.running import works

STEPS = "s a\nt p\nzq\nsh # digraph"


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("kept") / "taught"


@pytest.fixture(scope="module")
def own(folder: Path) -> Iterator[TestClient]:
    """A page that keeps lists in a folder of these tests."""
    settings = Settings(taught_folder=folder)
    with TestClient(make_app(settings), base_url="http://127.0.0.1") as opened:
        yield opened


def post(client: TestClient, path: str, **fields: str) -> Any:
    client.get("/taught")
    return client.post(path, data={FIELD: client.cookies[COOKIE], **fields})


def in_box(page: str) -> str:
    found = re.search(r'<textarea id="taught".*?>\n(.*?)</textarea>', page, re.DOTALL)
    assert found
    return found[1]


def test_steps_are_checked_one_by_one(client: TestClient) -> None:
    page = client.get("/taught", params={"taught": STEPS}).text
    assert in_box(page) == STEPS
    assert "line 3 passed over" in page
    assert "sh before its letters: h (not taught)" in page
    assert "<td>2</td><td>2</td><td>t p</td><td>t /t/; p /p/</td>" in page
    assert 'href="/warm-up?taught=s+a%0At+p' in page


def test_growth_is_a_picture_with_words_for_it(client: TestClient) -> None:
    page = client.get("/taught", params={"taught": "default:12"}).text
    found = re.search(r"<svg.*?</svg>", page, re.DOTALL)
    assert found
    picture = ET.fromstring(found[0])
    svg = "{http://www.w3.org/2000/svg}"
    named = {picture.find(f"{svg}title"), picture.find(f"{svg}desc")}
    ids = {part.get("id") for part in named if part is not None}
    assert ids == set((picture.get("aria-labelledby") or "").split())
    # No color of its own: it must be seen on a dark page, too.
    colors = {e.get(a) for e in picture.iter() for a in ("fill", "stroke")}
    assert colors <= {None, "none", "currentColor"}
    assert "style" not in found[0]
    points = picture.find(f"{svg}polyline")
    assert points is not None
    assert len((points.get("points") or "").split()) == 13


def test_the_focus_waits_on_the_way_through_taught(own: TestClient) -> None:
    def link(page: str, to: str) -> str:
        found = re.search(rf'href="({to}[^"]*)"', page)
        assert found
        return found[1].replace("&amp;", "&")

    page = own.get("/today", params={"focus": "es,ies", "seed": "1"}).text
    assert link(page, "/today") == "/today"  # the page's own link begins anew
    page = own.get(link(page, "/taught")).text
    assert '<input type="hidden" name="focus" value="es,ies">' in page
    page = own.get("/taught", params={"start": "60", "focus": "es,ies"}).text
    assert link(page, "/today") == "/today?taught=default%3A60&focus=es%2Cies"
    kept = post(own, "/taught/keep", name="crabs", taught=STEPS, focus="es,ies")
    assert link(kept.text, "/today") == "/today?taught=list%3Acrabs&focus=es%2Cies"
    assert (
        link(kept.text, r"/taught\?taught=list:crabs") == "/taught?taught=list:crabs&focus=es%2Cies"
    )
    gone = post(own, "/taught/delete", name="crabs", taught="list:crabs", focus="es,ies")
    assert link(gone.text, "/today") == "/today?focus=es%2Cies"


def test_our_order_up_to_a_step(client: TestClient) -> None:
    answer = client.get("/taught", params={"start": "12"})
    assert parse_qs(answer.url.query.decode()) == {"taught": ["default:12"]}
    assert in_box(answer.text).splitlines() == default_lines()[:12]
    assert "What our default order up to step 12 opens" in answer.text


def test_next_steps_can_be_added(client: TestClient) -> None:
    page = client.get("/taught", params={"taught": "default:12", "more": "3"}).text
    link = re.search(r'href="([^"]*)">Add these steps', page)
    assert link
    steps = parse_qs(urlsplit(link[1].replace("&amp;", "&")).query)["taught"][0].splitlines()
    assert steps[:12] == default_lines()[:12]
    assert len(steps) == 15
    assert client.get(link[1].replace("&amp;", "&")).status_code == 200


def test_next_steps_from_nothing(client: TestClient) -> None:
    page = client.get("/taught", params={"more": "2"}).text
    assert "Add these steps" in page
    done = client.get("/taught", params={"taught": "default", "more": "2"})
    assert done.status_code == 400
    assert "our default order leaves nothing to teach" in done.text


@pytest.mark.parametrize("taught", ["zq", "# nothing", "default:0", "default:" + "9" * 5000])
def test_steps_that_cannot_be_read(client: TestClient, taught: str) -> None:
    answer = client.get("/taught", params={"taught": taught})
    assert answer.status_code == (200 if "9" in taught else 400)
    if answer.status_code == 400:
        assert "what was taught: " in answer.text


def test_a_list_is_kept_found_and_deleted(own: TestClient, folder: Path) -> None:
    kept = post(own, "/taught/keep", name="Harbor class", taught=STEPS, band="2")
    assert parse_qs(kept.url.query.decode()) == {"taught": ["list:harbor-class"]}
    assert in_box(kept.text) == STEPS
    assert "What the list harbor-class opens" in kept.text
    assert [path.name for path in folder.iterdir()] == ["harbor-class.txt"]
    # Every page takes the name, and offers it.
    page = own.get("/warm-up", params={"taught": "list:harbor-class", "task": "blend", "seed": "1"})
    assert page.status_code == 200
    assert '<option value="list:harbor-class">' in page.text
    data = own.get("/api/taught/check", params={"taught": "list:harbor-class"}).json()
    assert [step["text"] for step in data["steps"]] == ["s a", "t p", "sh"]
    post(own, "/taught/keep", name="harbor-class", taught="default:5")
    assert (folder / "harbor-class.txt").read_text("utf-8").splitlines() == default_lines()[:5]
    gone = post(own, "/taught/delete", name="harbor-class", taught="list:harbor-class")
    assert not gone.url.query
    assert list(folder.iterdir()) == []
    missing = own.get("/passage", params={"text": "a crab", "taught": "list:harbor-class"})
    assert missing.status_code == 400
    assert "there is no list" in missing.text


@pytest.mark.parametrize(
    "name", ["", ".", "..", "../x", "a/b", "a\\b", "/etc/x", "x.txt", "ä", "-x", "x" * 41, "a\0b"]
)
def test_no_name_leads_out_of_the_folder(own: TestClient, folder: Path, name: str) -> None:
    before = sorted(folder.parent.rglob("*"))
    answer = post(own, "/taught/keep", name=name, taught="s")
    assert answer.status_code == 400
    assert "cannot be the name of a list" in answer.text
    assert post(own, "/taught/delete", name=name).status_code == 400
    assert sorted(folder.parent.rglob("*")) == before
    assert own.get("/taught", params={"taught": f"list:{name}"}).status_code == 400


def test_only_steps_are_kept(own: TestClient, folder: Path) -> None:
    assert post(own, "/taught/keep", name="crabs", taught="zq").status_code == 400
    assert not (folder / "crabs.txt").exists()


def test_the_folder_has_an_end(
    own: TestClient, folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(taught_lists, "MOST_LISTS", 1)
    post(own, "/taught/keep", name="one", taught="s")
    assert post(own, "/taught/keep", name="one", taught="s\na").status_code == 200
    full = post(own, "/taught/keep", name="two", taught="s")
    assert "lists are kept already" in full.text
    (folder / "one.txt").unlink()


def test_a_folder_that_cannot_be_made(tmp_path: Path) -> None:
    (tmp_path / "taught").write_text("a file")
    settings = Settings(taught_folder=tmp_path / "taught")
    with TestClient(make_app(settings), base_url="http://127.0.0.1") as client:
        answer = post(client, "/taught/keep", name="crabs", taught="s")
        assert answer.status_code == 400
        assert "the list cannot be kept" in answer.text
        assert str(tmp_path) not in answer.text


def test_a_shared_page_keeps_nothing() -> None:
    with TestClient(make_app(Settings()), base_url="http://127.0.0.1") as client:
        page = client.get("/taught", params={"taught": "s"}).text
        assert "Lists are not kept here" in page
        assert "/taught/keep" not in page
        for answer in (
            post(client, "/taught/keep", name="crabs", taught="s"),
            client.get("/taught", params={"taught": "list:crabs"}),
        ):
            assert answer.status_code == 400
            assert "lists are not kept here" in answer.text


def test_lines_reach_every_page_whole(client: TestClient) -> None:
    """An input would lose the ends of lines."""
    page = client.get("/warm-up", params={"taught": "s\na\nt", "task": "blend", "seed": "1"}).text
    assert in_box(page) == "s\na\nt"
    short = client.get("/warm-up", params={"taught": "default:20", "seed": "1"}).text
    assert '<input id="taught" name="taught" value="default:20"' in short


def test_the_api_says_what_the_command_says(client: TestClient) -> None:
    said = json.loads(works("taught", "check", "default:12", "--format", "json"))
    data = client.get("/api/taught/check", params={"taught": "default:12"}).json()
    for of in (said, data):
        for step in of["steps"]:
            del step["line"]  # the file of our order has comments
    assert data["steps"] == said["steps"]
    assert set(data) == set(said)


def test_the_api_suggests(client: TestClient) -> None:
    data = client.get("/api/taught/suggest", params={"taught": "default:12", "steps": "3"}).json()
    assert [step["is_new"] for step in data["steps"]] == [False] * 12 + [True] * 3
    assert data["growth"]["this order"] == sorted(data["growth"]["this order"])
    assert client.get("/api/taught/suggest", params={"steps": "21"}).status_code == 422
