"""Words are spoken by a voice that works offline, or not at all; the board fits its screen."""

from __future__ import annotations

import json
from collections.abc import Callable

import pytest
from playwright.sync_api import Page

from tests.browser.driving import Visit

OFFLINE = {"name": "here", "lang": "en-US", "localService": True}
AWAY = {"name": "elsewhere", "lang": "en-US", "localService": False}
FRENCH = {"name": "ici", "lang": "fr-FR", "localService": True}
LESSON = "/today?focus=es,ies&seed=4"
BOARDS = (
    "/show?what=lesson&focus=es,ies&band=3&seed=6&boxes=letters&timer=30&item=1",
    "/show?task=categorize&band=3&seed=5&count=12&item=1",
    "/show?task=segment&band=3&seed=5&count=12&boxes=letters&item=1",
)
SCROLLS = """() => {
  const [main, all] = [document.querySelector("main"), document.documentElement];
  return [main.scrollHeight - main.clientHeight, main.scrollWidth - main.clientWidth,
    all.scrollHeight - innerHeight, all.scrollWidth - innerWidth];
}"""


def open_with_voices(
    visit: Callable[..., Visit], path: str, *voices: dict[str, object], **options: object
) -> Page:
    """Open a page in a browser that has these voices; what it says is noted in ``said``."""
    visitor = visit(**options)
    visitor.context.add_init_script(f"""
        window.said = [];
        window.SpeechSynthesisUtterance = function (text) {{ this.text = text; }};
        Object.defineProperty(window, "speechSynthesis", {{ value: {{
          getVoices: () => {json.dumps(voices)},
          cancel() {{}}, addEventListener() {{}},
          speak(words) {{ window.said.push([words.text, words.voice.name]); }},
        }} }});""")
    return visitor.go(path)


def test_an_offline_voice_says_words_and_sentences(visit: Callable[..., Visit]) -> None:
    page = open_with_voices(visit, LESSON, AWAY, FRENCH, OFFLINE)
    assert page.locator(".speech-note").is_visible()
    sentence = page.locator("#part-6 tbody tr").first
    text = sentence.locator("td").first.inner_text().removesuffix("Say").strip()
    sentence.get_by_role("button").click()
    assert page.evaluate("said") == [[text, "here"]]
    spoken = page.locator("button.speak").evaluate_all("all => all.map((one) => one.dataset.say)")
    assert len(spoken) > 10
    assert not [words for words in spoken if "/" in words or len(words) == 1]


@pytest.mark.parametrize("voices", [(), (AWAY,), (FRENCH,)], ids=["none", "not here", "French"])
def test_without_an_offline_voice_nothing_is_offered(
    visit: Callable[..., Visit], voices: tuple[dict[str, object], ...]
) -> None:
    page = open_with_voices(visit, LESSON, *voices)
    assert page.locator("button.speak:visible").count() == 0
    assert not page.locator(".speech-note").is_visible()


def test_a_click_on_say_is_no_step_of_the_board(visit: Callable[..., Visit]) -> None:
    page = open_with_voices(
        visit, "/show?what=words&words=torches+ropes&boxes=sounds&item=1", OFFLINE
    )
    page.locator("button.speak:visible").click()
    assert page.evaluate("said") == [["torches", "here"]]
    assert page.locator(".box.is-full").count() == 0


@pytest.mark.parametrize("address", BOARDS)
def test_nothing_scrolls_on_a_projector(visit: Callable[..., Visit], address: str) -> None:
    page = open_with_voices(visit, address, OFFLINE, viewport={"width": 1280, "height": 720})
    for place in range(0, page.locator(".slide").count(), 3):
        page.evaluate(f"go({place}); showAnswer()")
        assert max(page.evaluate(SCROLLS)) <= 0, page.locator(".slide:visible .ask").inner_text()
    # What is asked is never smaller than a twentieth of the height of the screen.
    asked = page.locator(".slide:visible .ask").evaluate("one => getComputedStyle(one).fontSize")
    assert float(asked.removesuffix("px")) >= 720 / 20
