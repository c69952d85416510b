"""Show: one item at a time, with every step a link too."""

from __future__ import annotations

import re
from html import unescape

import pytest
from fastapi.testclient import TestClient

from tests.raw_cmudict import raw_cmudict

LESSON_LINK = re.compile(r'href="([^"]+)">Show the words<')
BACK_LINK = re.compile(r'href="([^"]+)">Back to the lesson<')
WORDS = "what=words&words=torches,+ropes+lamb+knight+box+gulls&boxes=letters"


def text_of(client: TestClient, query: str, status: int = 200) -> str:
    answer = client.get(f"/show?{query}")
    assert answer.status_code == status
    return unescape(answer.text)


def slides(text: str) -> list[str]:
    return re.findall(r'<section class="slide.*?</section>', text, re.DOTALL)


def here(text: str) -> str:
    (slide,) = (s for s in slides(text) if " hidden>" not in s.partition("\n")[0])
    return slide


def link(text: str, name: str) -> str:
    found = re.search(rf'href="([^"]+)" id="{name}"', text)
    assert found
    return found[1].removeprefix("/show?")


def test_the_form_offers_items_lessons_and_words(client: TestClient) -> None:
    text = text_of(client, "band=3")
    kinds = re.findall(r'<li><a href="/show\?([^"]+what=[^"]+)"', text)
    assert len(kinds) == 3
    for kind in kinds:
        assert "band=3" in kind
        assert "<button>Show</button>" in text_of(client, kind)


def test_without_a_script_links_lead_through_the_items(client: TestClient) -> None:
    first = text_of(client, "task=segment&seed=3&count=4&boxes=sounds&item=1")
    assert len(slides(first)) == 4
    assert '<div class="answer" hidden>' in here(first)
    answered = text_of(client, link(first, "answer"))
    assert '<div class="answer">' in here(answered)
    assert "is-shown" in here(answered)
    second = text_of(client, link(answered, "next"))
    assert here(second) != here(first)
    assert '<div class="answer" hidden>' in here(second)
    assert here(text_of(client, link(second, "back"))) == here(first)
    last = text_of(client, "task=segment&seed=3&count=4&item=99")
    assert here(last) == here(text_of(client, link(last, "next")))
    assert "<form" in text_of(client, link(last, "leave"))


def test_from_the_board_back_to_the_lesson(client: TestClient) -> None:
    asked = "/today?focus=sh&seed=4&minutes=15&swap=fish:"
    board = LESSON_LINK.search(client.get(asked).text)
    assert board
    form = client.get(unescape(board[1]).replace("item=1", "boxes=sounds&timer=9"))
    back = BACK_LINK.search(form.text)
    assert back
    assert set(unescape(back[1]).split("?")[1].split("&")) == {
        "focus=sh",
        "seed=4",
        "minutes=15",
        "swap=fish%3A",
    }
    assert "Back to the lesson" not in client.get("/show?what=words&words=clam").text


def test_a_warm_up_is_the_same_on_both_pages(client: TestClient) -> None:
    query = "task=delete&seed=8&count=5"
    board = text_of(client, f"{query}&item=1")
    data = client.get(f"/api/warmup?{query}").json()
    asks = re.findall(r'<p class="ask">(.*?)</p>', board)
    assert asks == [item["say"] for item in data["items"]]
    answers = re.findall(r'<p class="said">(.*?)</p>', board)
    assert answers == [item["answer_line"] for item in data["items"]]


@pytest.mark.source("CMUdict 1.1.3, read anew by tests/raw_cmudict.py")
def test_there_is_one_box_a_sound(client: TestClient) -> None:
    for slide in slides(text_of(client, f"{WORDS}&item=1")):
        word = re.findall(r'<p class="ask">(.*?)</p>', slide)[0]
        boxes = re.findall(r'<span class="sound">(.*?)</span>', slide)
        assert len(boxes) in {len(way) for way in raw_cmudict()[word]}
        letters = "".join(re.findall(r'<span class="letters">(.*?)</span>', slide))
        assert letters == word


@pytest.mark.source("common practice, no source: silent letters have no box of their own")
def test_silent_letters_have_no_box(client: TestClient) -> None:
    by_word = {
        re.findall(r'<p class="ask">(.*?)</p>', slide)[0]: re.findall(
            r'<div class="chunk">(.*?)(?=<div class="chunk">|</div>\s*<div class="answer")',
            slide,
            re.DOTALL,
        )
        for slide in slides(text_of(client, f"{WORDS}&item=1"))
    }
    silent = {
        word: [chunk for chunk in chunks if "sound" not in chunk]
        for word, chunks in by_word.items()
    }
    assert len(silent["ropes"]) == 1
    assert not silent["gulls"]
    assert "".join(re.findall(r"letters\">(\w+)", "".join(silent["ropes"]))) == "e"


def test_words_of_a_lesson_leave_out_what_is_dictated_or_checked(client: TestClient) -> None:
    query = "focus=es,ies&seed=3&band=3"
    board = text_of(client, f"what=lesson&{query}&item=1")
    shown = re.findall(r'<p class="ask">(.*?)</p>', board)
    lesson = client.get(f"/api/lesson?{query}").json()["lesson"]
    sections = {section["name"]: section for section in lesson["sections"]}
    assert {row["word"] for row in sections["list"]["words"]} <= {*shown}
    assert not {row["word"] for row in sections["dictation"]["words"]} & {*shown}
    assert not {row["word"] for row in sections["check"]["questions"]} & {*shown}


def test_single_sounds_are_never_spoken(client: TestClient) -> None:
    board = text_of(client, "task=blend&seed=3&item=1") + text_of(client, f"{WORDS}&item=1")
    spoken = re.findall(r'data-say="(.*?)"', board)
    assert "torches" in spoken
    assert not [said for said in spoken if "/" in said or len(said) == 1]
    made_up = text_of(client, "task=segment&made_up=true&seed=3&item=1")
    assert "data-say" not in made_up


def test_made_up_words_have_boxes_without_letters(client: TestClient) -> None:
    board = text_of(client, "task=segment&made_up=true&seed=3&item=1&boxes=letters")
    assert '<span class="sound">' in board
    assert '<span class="letters">' not in board


def test_words_that_cannot_be_shown_are_named_or_left_unsaid(client: TestClient) -> None:
    board = text_of(client, "what=words&words=torches+blorf+bitches&item=1")
    assert len(slides(board)) == 1
    assert "'blorf' is not in the lexicon" in board
    assert "bitches" not in board.partition("<main>")[2].partition("</main>")[0]
    assert "not a word for class" in board
    nothing = text_of(client, "what=words&words=blorf&item=1", 400)
    assert "none of these words can be shown" in nothing


@pytest.mark.parametrize(
    ("query", "status"),
    [("item=0", 422), ("item=1&timer=1", 422), ("item=1&task=zzz&seed=1", 400)],
)
def test_bad_input_is_explained(client: TestClient, query: str, status: int) -> None:
    assert "Not possible" in text_of(client, query, status)
