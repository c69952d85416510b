from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from fastapi.testclient import TestClient

from phonodrill.overlay import read_overlay
from phonodrill.web.app import make_app
from phonodrill.web.csrf import COOKIE, FIELD
from phonodrill.web.settings import Settings
from tests.web.commands import printed
from tests.web.tables import rows_of

OWN = "/words/own"


@pytest.fixture(autouse=True)
def _no_own_words(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path))


@pytest.fixture(scope="module")
def own_file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("own") / "new" / "words.txt"


@pytest.fixture(scope="module")
def teacher(own_file: Path) -> Iterator[TestClient]:
    """A client whose own words are kept in a file of these tests."""
    app = make_app(Settings(words_file=own_file))
    with TestClient(app, base_url="http://127.0.0.1") as opened:
        yield opened


def change(client: TestClient, action: str, words: str, **more: str) -> tuple[int, str]:
    client.get(OWN)
    fields = {FIELD: client.cookies[COOKIE], "action": action, "words": words, **more}
    answer = client.post(OWN, data=fields)
    return answer.status_code, answer.text


@pytest.mark.parametrize(
    ("address", "command"),
    [
        ("word?word=people", "word people"),
        ("word?word=Gulls&band=3&notation=ipa", "word Gulls --band 3 --notation ipa"),
        ("word?word=flumper&guess=true", "word flumper --guess"),
        ("sentences?word=gulls", "sentences gulls"),
        ("sentences?word=ferries&cloze=true", "sentences ferries --cloze"),
    ],
)
def test_the_data_is_that_of_the_command(client: TestClient, address: str, command: str) -> None:
    assert client.get(f"/api/{address}").json() == printed(*command.split())


def test_a_word_is_shown_in_chunks_with_its_irregular_part(client: TestClient) -> None:
    page = client.get("/words?word=people").text
    assert "“people” is known to most children of 5 to 6." in page
    boxes = page.partition('<ol class="boxes"')[2].partition("</ol>")[0]
    assert boxes.count("<li>") == 4
    assert "<li>eo <small>ē</small> <small>irregular</small></li>" in boxes
    assert boxes.count("irregular") == 1
    facts = dict(rows_of(page, "people"))
    assert facts["in class"] == "yes"
    assert rows_of(page, "How it is said")[0][2] == "2: peo · ple"


def test_homophones_rhymes_and_sentences_are_shown(client: TestClient) -> None:
    page = client.get("/words?word=gulls&band=3").text
    assert "Three gulls rest on the old boat." in page
    facts = dict(rows_of(client.get("/words?word=sail").text, "sail"))
    assert "sale" in facts["sounds the same"]
    assert "snail" in facts["rhymes with"]


def test_an_unknown_word_is_guessed_and_others_named(client: TestClient) -> None:
    page = client.get("/words?word=flumper").text
    assert "not in the lexicon: what follows is a guess" in page
    assert "did you mean" in page
    assert "<li>er <small>ər</small></li>" in page
    unknown = client.get("/api/word?word=flumper")
    assert unknown.status_code == 400


@pytest.mark.parametrize("path", ["/words", "/words/sentences"])
def test_an_unfit_word_is_refused_without_saying_it(client: TestClient, path: str) -> None:
    for word in ("asses", "ASSES"):
        page = client.get(path, params={"word": word})
        assert page.status_code == 400
        problem = page.text.partition('role="alert"')[2].partition("</div>")[0]
        assert "that is not a word for class" in problem
        assert "asses" not in problem.lower()


@pytest.mark.parametrize("word", ["<i>x</i>", "\x00", "7", "x" * 60, "two words"])
def test_what_is_no_word_is_refused(client: TestClient, word: str) -> None:
    page = client.get("/words", params={"word": word})
    assert page.status_code == 400
    assert "<i>" not in page.text
    assert client.get("/words", params={"word": "x" * 61}).status_code == 422


def test_one_letter_and_capitals_are_read(client: TestClient) -> None:
    assert client.get("/words?word=A").status_code == 200
    assert "<h2>gull</h2>" in client.get("/words?word=GULL").text


def test_own_words_are_added_blocked_and_taken_out(teacher: TestClient, own_file: Path) -> None:
    status, page = change(teacher, "add", "Ferry, clam", band="2")
    assert status == 200
    assert rows_of(page, "Your own words") == [["clam", "add", "2"], ["ferry", "add", "2"]]
    status, page = change(teacher, "block", "storm")
    assert ["storm", "block", ""] in rows_of(page, "Your own words")
    assert own_file.read_text("utf-8") == "add clam 2\nadd ferry 2\nblock storm\n"
    blocked = teacher.get("/api/word?word=storm").json()
    assert blocked["in_class"] == "no"
    status, page = change(teacher, "remove", "ferry storm")
    assert rows_of(page, "Your own words") == [["clam", "add", "2"]]
    assert list(read_overlay(own_file).rules) == ["clam"]
    assert teacher.get("/api/words").json()["words"] == [
        {"word": "clam", "action": "add", "band": 2}
    ]


@pytest.mark.parametrize(
    ("action", "words", "said"),
    [
        ("add", "blorf", "&#39;blorf&#39; is not in the lexicon"),
        ("add", "gull asses", "that is not a word for class"),
        ("block", "asses", "that is not a word for class"),
        ("block", "gull <b>", "&#39;&lt;b&gt;&#39; is not a word of letters"),
        ("block", "#gull", "is not a word of letters"),
        ("add", " , ", "there is no word"),
        ("remove", "skate", "&#39;skate&#39; is not in your lists"),
    ],
)
def test_a_change_is_all_or_nothing(
    teacher: TestClient, own_file: Path, action: str, words: str, said: str
) -> None:
    before = own_file.read_text("utf-8") if own_file.exists() else ""
    status, page = change(teacher, action, words)
    assert status == 400
    assert said in page
    assert f'<option value="{action}" selected>' in page
    assert (own_file.read_text("utf-8") if own_file.exists() else "") == before


def test_a_form_of_another_site_changes_nothing(teacher: TestClient, own_file: Path) -> None:
    before = own_file.read_text("utf-8") if own_file.exists() else ""
    teacher.get(OWN)
    fields = {"action": "add", "words": "gull"}
    assert teacher.post(OWN, data=fields).status_code == 403
    assert teacher.post(OWN, data=fields | {FIELD: "guessed"}).status_code == 403
    right = fields | {FIELD: teacher.cookies[COOKIE]}
    elsewhere = teacher.post(OWN, data=right, headers={"origin": "http://evil.example"})
    assert elsewhere.status_code == 403
    assert (own_file.read_text("utf-8") if own_file.exists() else "") == before


def test_what_is_not_for_class_is_counted_only(tmp_path: Path) -> None:
    file = tmp_path / "words.txt"
    file.write_text("block asses\nblock storm\nwhat is this\n", "utf-8")
    with TestClient(make_app(Settings(words_file=file)), base_url="http://127.0.0.1") as client:
        page = client.get(OWN).text
    assert "asses" not in page
    assert "not shown, as not for class: 1 more" in page
    assert "line 3: cannot be read, passed over" in page
    assert str(tmp_path) not in page


def test_lists_that_cannot_be_kept_name_no_folder(tmp_path: Path) -> None:
    blocked = tmp_path / "file"
    blocked.write_text("", "utf-8")
    settings = Settings(words_file=blocked / "words.txt")
    with TestClient(make_app(settings), base_url="http://127.0.0.1") as client:
        status, page = change(client, "add", "gull")
    assert status == 400
    assert "your lists cannot be kept" in page
    assert str(tmp_path) not in page


def test_the_lists_are_those_of_the_command(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path))
    from phonodrill.cli.own_words import own_words_path

    with TestClient(
        make_app(Settings(words_file=own_words_path())), base_url="http://127.0.0.1"
    ) as client:
        change(client, "add", "gull clam", band="2")
        change(client, "block", "storm")
        data = client.get("/api/words").json()
    assert len(data["words"]) == 3
    assert data == printed("words", "list")


def test_where_many_share_the_page_nothing_is_kept() -> None:
    with TestClient(make_app(Settings()), base_url="http://127.0.0.1") as client:
        page = client.get(OWN).text
        assert "<form" not in page
        assert "Lists cannot be kept here" in page
        status, answer = change(client, "add", "gull")
    assert status == 400
    assert "words cannot be kept here" in answer


def test_the_link_of_a_word_fills_the_form_of_the_lists(client: TestClient) -> None:
    page = client.get("/words?word=gull").text
    assert 'href="/words/own?words=gull"' in page
    assert 'name="words" value="gull"' in client.get("/words/own?words=gull").text
