from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any
from urllib.parse import parse_qs, urlsplit

import pytest
from fastapi.testclient import TestClient

from phonodrill.web.csrf import COOKIE, FIELD
from phonodrill.web.settings import LARGEST_BODY
from tests.running import works
from tests.web.markup import Markup

TEXT = "The ships sat in the harbor at 10.\n“Look!” said the lads."
STEPS = "a, t, s, i, n, l, d, p, h, b\nsh\n-s\nword: the said"


def send(
    client: TestClient, fields: dict[str, str], file: bytes | None = None, *, follow: bool = True
) -> Any:
    """Send the form as a browser does: the field of the file is there even if it is empty."""
    client.get("/passage")
    name = "crabs.txt" if file is not None else ""
    return client.post(
        "/passage",
        data={FIELD: client.cookies[COOKIE], **fields},
        files={"file": (name, file or b"", "text/plain")},
        follow_redirects=follow,
    )


def marked(page: str) -> str:
    found = re.search(r'<p class="passage">(.*?)</p>', page, re.DOTALL)
    assert found
    return found[1]


def test_a_text_is_marked_by_shape_and_label(client: TestClient) -> None:
    page = client.get("/passage", params={"text": TEXT, "taught": STEPS}).text
    shown = marked(page)
    assert '<mark class="missing">harbor</mark>' in shown
    assert '<mark class="learned">said</mark>' in shown
    assert re.sub(r"<[^>]*>", "", shown) == TEXT
    for words in ("in square brackets", "in curly brackets", "hidden, in a box"):
        assert words in page
    assert "81.8% of 11 words can be read" in page
    assert "<td>harbor</td><td>1</td><td>ar, or=ûr</td>" in page
    assert "Judged by this list of steps." in page


def test_what_is_not_for_class_is_hidden(client: TestClient) -> None:
    page = client.get("/passage", params={"text": "the damn ship", "taught": STEPS}).text
    assert '<mark class="hidden">•••</mark>' in marked(page)
    assert page.count("damn") == 1  # only in the box, which holds what was typed


def test_a_short_text_gets_an_address_of_its_own(client: TestClient) -> None:
    answer = send(client, {"text": TEXT, "taught": STEPS, "band": "3"}, follow=False)
    assert answer.status_code == 303
    address = urlsplit(answer.headers["location"])
    fields = parse_qs(address.query)
    assert fields == {"text": [TEXT], "taught": [STEPS], "band": ["3"]}
    assert client.get(answer.headers["location"]).status_code == 200


def test_without_a_list_our_order_is_taken_and_said_so(client: TestClient) -> None:
    assert "No list? Our order up to step" in client.get("/passage").text
    answer = send(client, {"text": TEXT, "taught": "", "steps": "30"})
    assert parse_qs(answer.url.query.decode())["taught"] == ["default:30"]
    assert "Judged by our default order up to step 30." in answer.text
    own = send(client, {"text": TEXT, "taught": STEPS, "steps": "30"})
    assert "Judged by this list of steps." in own.text
    neither = client.get("/passage", params={"text": TEXT})
    assert neither.status_code == 400
    assert "what has the class been taught?" in neither.text
    assert TEXT.splitlines()[0] in neither.text


@pytest.mark.parametrize(
    "content",
    [
        TEXT.encode(),
        TEXT.encode("utf-8-sig"),
        TEXT.encode("utf-16"),
        TEXT.replace("\n", "\r\n").encode(),
    ],
)
def test_a_file_is_read_as_text(client: TestClient, content: bytes) -> None:
    answer = send(client, {"text": "not this", "taught": STEPS}, content)
    assert "81.8% of 11 words can be read" in answer.text
    assert "crabs.txt" not in answer.text


def test_bytes_that_are_no_text(client: TestClient) -> None:
    strange = send(client, {"taught": STEPS}, b"the caf\xe9 at the pond")
    assert strange.status_code == 200
    assert "caf" in marked(strange.text)
    for content in (b"PK\x03\x04\0\0", b"%PDF-1.7\0\x01"):
        refused = send(client, {"taught": STEPS}, content)
        assert refused.status_code == 400
        assert "that file is no plain text" in refused.text


@pytest.mark.parametrize("text", ["", "   \n", "... 12 !"])
def test_a_text_without_words(client: TestClient, text: str) -> None:
    answer = send(client, {"text": text, "taught": STEPS})
    assert answer.status_code == (400 if text.strip() else 200)
    assert ("has no word in it" in answer.text) == bool(text.strip())


def test_markup_in_a_text_stays_text(client: TestClient) -> None:
    text = "</textarea><script>sat</script> & <img src=x onerror=sat>"
    page = client.get("/passage", params={"text": text, "taught": STEPS}).text
    markup = Markup(page)
    assert markup.inline == []
    assert markup.unclosed == []
    assert "<img" not in page
    assert "</textarea><script" not in page


def test_text_from_right_to_left(client: TestClient) -> None:
    answer = send(client, {"text": "שלום ship عالم", "taught": STEPS})
    assert '<mark class="missing">שלום</mark> ship <mark class="missing">عالم</mark>' in answer.text
    assert "no reading found" in answer.text


def test_a_long_text_is_answered_directly(client: TestClient) -> None:
    text = "The crab sat on a rope. " * 4200
    answer = send(client, {"text": text, "taught": "default:40"}, follow=False)
    assert answer.status_code == 200
    assert "of 25,200 words can be read" in answer.text
    assert send(client, {"text": "x" * (LARGEST_BODY + 1)}).status_code == 413


def test_long_tables_are_folded(client: TestClient) -> None:
    letters = "bdfgklmnprt"
    words = " ".join(f"{a}e{b}" for a in letters for b in letters)
    page = client.get("/passage", params={"text": words, "taught": "s"}).text
    assert re.search(r"<summary>1\d\d words</summary>", page)


def test_the_api_says_what_the_command_says(client: TestClient, tmp_path: Path) -> None:
    text, steps = tmp_path / "text.txt", tmp_path / "steps.txt"
    text.write_text(TEXT, "utf-8")
    steps.write_text(STEPS, "utf-8")
    said = works("passage", str(text), "--taught", str(steps), "--format", "json")
    answer = client.post("/api/passage", json={"text": TEXT, "taught": STEPS})
    assert answer.json() == json.loads(said)


def test_the_api_refuses_in_two_fields(client: TestClient) -> None:
    for body in ({"text": TEXT}, {"text": "", "taught": "s"}, {"text": TEXT, "taught": "zq"}):
        answer = client.post("/api/passage", json=body)
        assert answer.status_code == 400
        assert set(answer.json()) == {"error", "try"}
    assert client.post("/api/passage", json={"band": 7}).status_code == 422


def test_what_is_no_text_does_not_hold_up_others(client: TestClient) -> None:
    letters = "bdfgklmnprstvz"
    words = " ".join(a + b + c + d for a in letters for b in letters for c in letters for d in "ab")
    many = " ".join(a + b + word for a in "ae" for b in "io" for word in words.split())
    answer = client.post("/api/passage", json={"text": many, "taught": "s"})
    assert answer.status_code == 400
    assert "more than 15,000 different words" in answer.json()["error"]
