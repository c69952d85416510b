from __future__ import annotations

from pathlib import Path
from urllib.parse import parse_qs

import pytest
from fastapi.testclient import TestClient

from tests.web.commands import printed
from tests.web.tables import rows_of


@pytest.fixture(autouse=True)
def _no_own_words(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path))


@pytest.mark.parametrize(
    ("address", "command"),
    [
        ("pairs?seed=3&sounds=i:e&count=4", "pairs --seed 3 --sounds i:e --count 4"),
        ("pairs?seed=3&kind=deletion&at=first", "pairs --seed 3 --kind deletion --at first"),
        (
            "pairs?seed=1&kind=spelling&notation=ipa",
            "pairs --seed 1 --kind spelling --notation ipa",
        ),
        ("pairs?seed=1&taught=default:40", "pairs --seed 1 --taught default:40"),
        ("decodable?seed=2&pattern=CVC,CCVC", "decodable --seed 2 --pattern CVC,CCVC"),
        ("decodable?seed=2&spelling=sh&endings=true", "decodable --seed 2 --with sh --endings"),
        (
            "decodable?seed=2&taught=default:20&count=5",
            "decodable --seed 2 --taught default:20 --count 5",
        ),
        ("spellings?sound=f", "spellings f"),
        ("spellings?spelling=ough&one_syllable=true", "spellings --spelling ough --one-syllable"),
        ("spellings?band=1", "spellings --band 1"),
    ],
)
def test_the_data_is_that_of_the_command(client: TestClient, address: str, command: str) -> None:
    assert client.get(f"/api/{address}").json() == printed(*command.split())


def test_pairs_differ_where_asked(client: TestClient) -> None:
    page = client.get("/pairs?sounds=sh:ch&at=first&seed=2&count=3").text
    rows = rows_of(page, "Pairs in which one sound differs")
    assert len(rows) == 3
    assert all(row[1].startswith("sh-") for row in rows)
    assert all(row[3].startswith(("ch-", "tch-")) for row in rows)
    assert {row[4] for row in rows} == {"/sh/ : /ch/"}


def test_too_few_pairs_are_said(client: TestClient) -> None:
    page = client.get("/pairs?sounds=sh:ch&at=vowel&seed=2")
    assert page.status_code == 400
    few = client.get("/pairs?sounds=sh:ch&at=last&seed=2&count=100").text
    note = few.partition('<ul class="notes">')[2].partition("</ul>")[0]
    assert "of 100 pairs; for more: place any, band 3, words with endings" in note


@pytest.mark.parametrize(
    "query",
    [
        "/pairs?kind=spelling&at=first&seed=1",
        "/pairs?kind=deletion&at=vowel&seed=1",
        "/pairs?kind=deletion&sounds=i:e&seed=1",
        "/pairs?sounds=<b>&seed=1",
        "/pairs?sounds=i:i&seed=1",
        "/pairs/words-to-read?pattern=CQ&seed=1",
        "/pairs/words-to-read?spelling=zz9&seed=1",
        "/pairs/words-to-read?taught=%23&seed=1",
        "/pairs/spellings?sound=q9",
        "/pairs/spellings?sound=f&spelling=f",
        "/pairs/spellings?spelling=zq",
    ],
)
def test_what_does_not_go_is_explained_with_the_form(client: TestClient, query: str) -> None:
    page = client.get(query)
    assert page.status_code == 400
    assert "Not possible:" in page.text
    assert '<form method="get" action="/pairs' in page.text
    assert "--" not in page.text.partition('role="alert"')[2].partition("</div>")[0]
    assert "<b>" not in page.text


@pytest.mark.parametrize("path", ["/pairs", "/pairs/words-to-read"])
def test_draws_have_an_address_and_files(client: TestClient, path: str) -> None:
    page = client.get(f"{path}?count=4")
    assert "seed=" in str(page.url)
    assert page.text == client.get(str(page.url)).text
    for kind in ("csv", "docx"):
        start = page.text.index(f'href="{path}/file.{kind}?') + len('href="')
        file = page.text[start:].partition('"')[0].replace("&amp;", "&")
        assert len(client.get(file).content) > 60


@pytest.mark.parametrize("path", ["/pairs", "/pairs/words-to-read", "/endings"])
def test_the_words_are_shown_one_by_one_on_the_board(client: TestClient, path: str) -> None:
    page = client.get(f"{path}?seed=4&count=2&notation=marks").text
    link = page.partition('href="/show?')[2].partition('"')[0].replace("&amp;", "&")
    words = parse_qs(link)["words"][0].split()
    assert len(words) == len(set(words)) >= 2
    board = client.get(f"/show?{link}")
    assert board.status_code == 200
    assert words[0] in board.text


def test_what_was_taught_goes_along_to_the_other_tabs(client: TestClient) -> None:
    page = client.get("/pairs?taught=default:30&band=1&seed=1").text
    assert 'href="/pairs/words-to-read?band=1&amp;taught=default%3A30"' in page


def test_every_spelling_is_counted_at_once(client: TestClient) -> None:
    page = client.get("/pairs/spellings").text
    assert len(rows_of(page, "Spellings of every sound")) > 100
