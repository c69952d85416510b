from __future__ import annotations

from pathlib import Path

import pytest
from fastapi.testclient import TestClient

from tests.web.commands import printed
from tests.web.tables import rows_of

WORDS = "Ferries, torches ropes\nsnails skated bus men xyzzys"


@pytest.fixture(autouse=True)
def _no_own_words(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path))


@pytest.mark.parametrize(
    ("address", "command"),
    [
        ("add?word=ferry", "add ferry"),
        ("add?word=gutch&ending=ed&sounds=G AH1 CH", "add gutch --ending ed --sounds 'G AH1 CH'"),
        ("base?word=axes", "base axes"),
        ("base?word=bus", "base bus"),
        ("sort?by=spelling&seed=5&count=3", "sort --by spelling --seed 5 --count 3"),
        ("sort?ending=ed&ending=ing&seed=2", "sort --ending ed,ing --seed 2"),
        ("sort?seed=2&taught=default:40", "sort --seed 2 --taught default:40"),
        ("table?ending='s&seed=1&count=1", 'table --ending "\'s" --seed 1 --count 1'),
        ("lookalikes?ending=er,y&seed=1", "lookalikes --ending er,y --seed 1"),
    ],
)
def test_the_data_is_that_of_the_command(client: TestClient, address: str, command: str) -> None:
    import shlex

    assert client.get(f"/api/endings/{address}").json() == printed("endings", *shlex.split(command))


def test_words_typed_are_sorted_as_those_of_a_file(client: TestClient, tmp_path: Path) -> None:
    file = tmp_path / "words.txt"
    file.write_text(WORDS.replace(",", "").replace(" ", "\n"), "utf-8")
    data = client.get("/api/endings/sort", params={"words": WORDS, "seed": 1}).json()
    assert data == printed("endings", "sort", "--words", str(file), "--seed", "1")
    assert [group["sound"] for group in data["groups"]] == ["s", "z", "ɪz", "iz", "ɪd"]


@pytest.mark.source("common practice, no source: /s/ after voiceless sounds, /ɪz/ after hisses")
def test_each_word_has_its_reasons(client: TestClient) -> None:
    page = client.get("/endings", params={"words": WORDS, "seed": 1}).text
    rows = {row[0]: row[1:] for row in rows_of(page, "The reason of each")}
    assert rows["ropes"] == ["rope", "-s", "Add s.", "/s/", "after /p/, said without voice"]
    assert rows["snails"][3:] == ["/z/", "after /l/, said with voice"]
    assert rows["torches"][4] == "after /ch/: a syllable of its own"
    assert rows["ferries"][2] == "After a consonant, y turns to i; then add es."
    assert rows["ferries"][4] == "the base ends in /ē/"
    assert rows["skated"][1:3] == ["-ed", "Drop the e; then add ed."]


def test_words_without_an_ending_are_left_out_with_why(client: TestClient) -> None:
    page = client.get("/endings", params={"words": WORDS, "seed": 1}).text
    left = dict(rows_of(page, "Left out"))
    assert left["bus"].startswith("a word of its own")
    assert left["men"].startswith("from man:")
    assert left["xyzzys"] == "base word not known"
    by_spelling = dict(rows_of(page, "The same words by spelling"))
    assert by_spelling["-s"] == "ropes, snails"


def test_watch_outs_are_shown(client: TestClient) -> None:
    page = client.get("/endings?words=does houses ropes&seed=1").text
    assert dict(rows_of(page, "Watch out"))["does"].startswith("said /dʌz/")
    assert "an exception: see Watch out" in page


def test_words_are_drawn_when_none_are_typed(client: TestClient) -> None:
    page = client.get("/endings?count=2")
    assert page.status_code == 200
    assert "seed=" in str(page.url)
    assert len(rows_of(page.text, "The reason of each")) >= 6
    assert "Other words" in page.text
    typed = client.get("/endings?words=gulls").text
    assert "Other words" not in typed


def test_an_unfit_word_is_not_said_again(client: TestClient) -> None:
    page = client.get("/endings?words=gulls asses&seed=1").text
    assert "word 2: not a word for class" in page
    shown = page.partition('<div class="grouped"')[2]
    assert "gulls" in shown
    assert "asses" not in shown
    for address in ("/endings/add?word=ass", "/endings/base?word=asses"):
        answer = client.get(address)
        assert answer.status_code == 400
        assert "that is not a word for class" in answer.text


def test_an_ending_is_added_step_by_step(client: TestClient) -> None:
    page = client.get("/endings/add?word=ferry").text
    assert rows_of(page, "Step by step") == [
        ["start with", "ferry"],
        ["keep ferr", "ferr"],
        ["change y to i", "ferri"],
        ["add es", "ferries"],
    ]
    doubled = client.get("/endings/add?word=jog&ending=ing").text
    assert [row[1] for row in rows_of(doubled, "Step by step")][1:] == ["jog", "jogg", "jogging"]
    irregular = client.get("/endings/add?word=foot").text
    assert rows_of(irregular, "Step by step")[-1][1] == "feet"
    dropped = client.get("/endings/add?word=skate&ending=ing").text
    assert rows_of(dropped, "Step by step")[-1][1] == "skating"


def test_the_likeliest_base_comes_first_or_why_there_is_none(client: TestClient) -> None:
    several = client.get("/endings/base?word=axes").text
    assert [row[0] for row in rows_of(several, "Where “axes” comes from")] == ["axe", "ax", "axis"]
    none = client.get("/endings/base?word=bus").text
    assert "“bus” has no base word" in none
    assert "which is no word" in none


def test_forms_wait_for_a_word(client: TestClient) -> None:
    for path in ("/endings/add", "/endings/base"):
        page = client.get(path)
        assert page.status_code == 200
        assert "<article" not in page.text
        assert 'role="alert"' not in page.text


@pytest.mark.parametrize("word", ["<b>gull</b>", "two words", "7", "'s", "x" * 41])
def test_what_is_no_word_is_refused(client: TestClient, word: str) -> None:
    for path in ("/endings/add", "/endings/base"):
        page = client.get(path, params={"word": word})
        assert page.status_code == 400
        assert "<b>" not in page.text
        assert 'role="alert"' in page.text


def test_capital_letters_and_letters_alone_are_read(client: TestClient) -> None:
    assert "<h2>ferries" in client.get("/endings/add?word=FERRY").text
    assert client.get("/endings/base?word=S").status_code == 200
    assert client.get("/endings?words=GULLS&seed=1").status_code == 200


def test_rules_and_look_alikes_are_drawn(client: TestClient) -> None:
    rules = client.get("/endings/rules?ending=ed&seed=1")
    assert "Rules for -ed" in rules.text
    traps = client.get("/endings/look-alikes?ending=s&seed=1&count=3")
    assert "Traps for -s" in traps.text
    assert client.get("/endings/look-alikes?ending=q&seed=1").status_code == 400
