from __future__ import annotations

import csv
import io
import json
import zipfile
from pathlib import Path

import pytest
from fastapi.testclient import TestClient

from phonodrill.tasks.registry import TASKS
from tests.web.commands import printed


@pytest.fixture(autouse=True)
def _no_own_words(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path))


def test_the_data_is_that_of_the_command(client: TestClient, tmp_path: Path) -> None:
    words = tmp_path / "words.txt"
    words.write_text("rope\nskate\nclam\ntorch\n", "utf-8")
    command = ["warmup", "--task", "substitute", "--at", "first", "--count", "3", "--seed", "7"]
    command += ["--accent", "pin-pen,cot-caught", "--notation", "marks", "--words", str(words)]
    query: dict[str, str | int] = {
        "task": "substitute",
        "at": "first",
        "count": 3,
        "seed": 7,
        "notation": "marks",
    }
    accents = ["pin-pen", "cot-caught"]
    answer = client.get(
        "/api/warmup", params=query | {"accent": accents, "words": "rope, skate clam torch"}
    )
    assert answer.json() == printed(*command)
    assert len(answer.json()["items"]) > 1


def test_the_data_of_a_chain_is_that_of_the_command(client: TestClient) -> None:
    shortest = client.get("/api/chain", params={"start": "crab", "end": "clam"}).json()
    assert shortest == printed("chain", "crab", "clam")
    varied = client.get("/api/chain", params={"start": "crab", "steps": 4, "seed": 3}).json()
    assert varied == printed("chain", "crab", "--steps", "4", "--seed", "3")


def test_a_draw_is_sent_to_its_own_address(client: TestClient) -> None:
    first = client.get("/warm-up?count=3", follow_redirects=False)
    assert first.status_code == 303
    address = first.headers["location"]
    assert "seed=" in address
    assert "count=3" in address
    page, again = client.get(address).text, client.get(address).text
    assert page == again
    assert page.count("<strong>") == 3


def test_an_accent_that_is_named_twice_stays_in_the_address(client: TestClient) -> None:
    accents = "accent=cot-caught&accent=pin-pen"
    sent = client.get(f"/warm-up?{accents}", follow_redirects=False).headers["location"]
    assert accents in sent
    page = client.get(sent).text
    assert page.count('name="accent" type="checkbox"') == page.count('id="accent-')
    assert page.count(" checked>") == 2
    board = page.partition('href="/show?')[2].partition('"')[0]
    assert accents in board.replace("&amp;", "&")


@pytest.mark.parametrize("task", TASKS)
def test_a_place_that_a_task_lacks_is_explained(client: TestClient, task: str) -> None:
    page = client.get("/warm-up", params={"task": task, "at": "vowel", "seed": 1, "count": 2})
    if "vowel" in TASKS[task].positions:
        assert page.status_code == 200
        return
    assert page.status_code == 400
    assert "is not done at “the vowel” (vowel)" in page.text
    hint = page.text.partition("Try:")[2].partition("</p>")[0]
    assert all(f"({place})" in hint for place in TASKS[task].positions)
    assert '<option value="vowel" data-tasks="' in page.text
    assert f'<option value="{task}" selected>' in page.text


def test_each_place_names_the_tasks_that_have_it(client: TestClient) -> None:
    page = client.get("/warm-up?seed=1&count=1").text
    offered = page.partition('<option value="onset2" data-tasks="')[2].partition('"')[0].split()
    assert offered == [name for name, task in TASKS.items() if "onset2" in task.positions]


def test_notes_are_shown_in_the_words_of_the_page(client: TestClient) -> None:
    query: dict[str, str | int] = {"words": "clam blorf", "task": "substitute", "seed": 1}
    page = client.get("/warm-up", params=query).text
    notes = page.partition('<ul class="notes">')[2].partition("</ul>")[0]
    assert "word 2: &#39;blorf&#39; is not in the lexicon" in notes
    assert "only 1 of 8 item holds under these constraints; for more: no own words" in notes
    assert "--" not in notes


def test_hidden_answers_are_folded(client: TestClient) -> None:
    address = "/warm-up?seed=4&count=3"
    shown, hidden = client.get(address).text, client.get(f"{address}&hide=true").text
    assert "<summary>Answer" not in shown
    assert hidden.count("<summary>Answer</summary>") == 3
    # What helps with the first item says its answer.
    assert "unsure, as in 1</h2>\n<details>" in hidden


def test_files_hold_the_same_items(client: TestClient) -> None:
    query = {"seed": 4, "count": 3}
    items = client.get("/api/warmup", params=query).json()["items"]
    sheet = client.get("/warm-up/file.csv", params=query)
    assert sheet.headers["content-disposition"] == 'attachment; filename="warm-up.csv"'
    rows = list(csv.DictReader(io.StringIO(sheet.content.decode("utf-8-sig"))))
    assert [row["say"] for row in rows] == [item["say"] for item in items]
    word = client.get("/warm-up/file.docx", params=query)
    text = zipfile.ZipFile(io.BytesIO(word.content)).read("word/document.xml").decode()
    assert all(item["stimulus"] in text for item in items)
    assert client.get("/warm-up/file.exe", params=query).status_code == 422


def test_a_chain_is_asked_for_and_explained(client: TestClient) -> None:
    empty = client.get("/warm-up/chain")
    assert empty.status_code == 200
    assert "<article" not in empty.text
    drawn = client.get("/warm-up/chain?start=crab", follow_redirects=False)
    assert "seed=" in drawn.headers["location"]
    shown = client.get(drawn.headers["location"]).text
    assert "Word chain: crab to" in shown
    assert "Other words" in shown
    wrong = client.get("/warm-up/chain?start=crap")
    assert wrong.status_code == 400
    unknown = client.get("/warm-up/chain?start=blorf")
    assert (unknown.status_code, "phonodrill chain" in unknown.text) == (400, False)
    assert "no word to start from" in client.get("/warm-up/chain?end=clam").text


def test_the_bank_comes_by_pages(client: TestClient) -> None:
    query: dict[str, str | int] = {"task": "delete", "at": "onset2", "band": 1}
    whole = client.get("/api/bank", params=query | {"count": 200}).json()
    assert whole["next"] is None
    assert len(whole["items"]) > 5
    some = client.get("/api/bank", params=query | {"count": 3, "offset": 2}).json()
    assert some["items"] == whole["items"][2:5]
    assert some["next"] == 5
    assert client.get("/api/bank?count=201").status_code == 422
    assert client.get("/api/bank?offset=10001").status_code == 422
    assert client.get("/api/bank?task=juggle").status_code == 400


def test_the_bank_has_the_rows_of_the_command(client: TestClient) -> None:
    from typer.testing import CliRunner

    from phonodrill.cli.main import app

    command = ["bank", "--task", "delete", "--at", "coda1", "--band", "1", "--format", "jsonl"]
    rows = CliRunner().invoke(app, command).stdout.splitlines()
    data = client.get("/api/bank?task=delete&at=coda1&band=1&count=200").json()
    assert data["items"] == [json.loads(row) for row in rows if row.startswith("{")]
