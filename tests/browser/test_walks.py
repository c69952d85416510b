"""What a teacher does, in a real browser."""

from __future__ import annotations

import io
import re
from collections.abc import Callable
from pathlib import Path

import pdfplumber
import pytest
from playwright.sync_api import Page, expect

from tests.browser.driving import Visit

LESSON = "/today?focus=es,ies&seed=4"


def texts_of(pdf: bytes) -> str:
    with pdfplumber.open(io.BytesIO(pdf)) as opened:
        return "\n".join(page.extract_text() for page in opened.pages)


def choose_word(page: Page) -> str:
    """Look at the first word of the lesson that can be swapped and stands in no instruction."""
    link = page.locator(".choose a").filter(has_text=re.compile("ies$")).first
    word = link.inner_text()
    link.click()
    expect(page.get_by_role("heading", name=re.compile(f"^{word}"))).to_be_visible()
    return word


@pytest.mark.parametrize("scripts", [True, False], ids=["scripts", "no scripts"])
def test_from_a_focus_to_paper(visit: Callable[..., Visit], tmp_path: Path, scripts: bool) -> None:
    visitor = visit(java_script_enabled=scripts)
    page = visitor.go("/")
    page.get_by_label("Focus").fill("es,ies")
    page.get_by_role("button", name="Make the lesson").click()
    page.wait_for_url(re.compile(r"seed=\d+"))
    expect(page.get_by_role("heading", level=2)).to_contain_text("es")
    old = choose_word(page)
    assert page.locator(".chosen dl dd").first.inner_text()
    page.get_by_role("button", name="Swap the word").click()
    page.wait_for_url(re.compile("swap="))
    new = page.locator(".chosen h4").inner_text().split()[0]
    words = page.locator(".choose a").all_inner_texts()
    assert new in words
    assert old not in words
    with page.expect_download() as begun:
        page.get_by_role("button", name="Pages to print").click()
    paper = tmp_path / "lesson.pdf"
    begun.value.save_as(paper)
    printed = texts_of(paper.read_bytes())
    assert new in printed
    assert not re.search(rf"\b{old}\b", printed)
    assert begun.value.suggested_filename.endswith(".pdf")


def test_the_page_itself_can_be_printed(visit: Callable[..., Visit]) -> None:
    """The print stylesheet: the lesson without menu, forms and buttons."""
    page = visit().go(LESSON)
    printed = texts_of(page.pdf())
    heading = page.get_by_role("heading", level=2).first.inner_text()
    assert heading.split()[0] in printed
    for word in page.locator(".choose a").all_inner_texts()[:3]:
        assert word in printed
    for control in ("Make the lesson", "Pages to print", "Swap the word", "Endings Pairs"):
        assert control not in printed


def test_what_is_wrong_is_said_and_the_form_kept(visit: Callable[..., Visit]) -> None:
    page = visit().go("/today")
    page.get_by_label("Focus").fill("zzz")
    page.get_by_role("button", name="Make the lesson").click()
    expect(page.get_by_role("alert")).to_contain_text("zzz")
    expect(page.get_by_role("alert")).to_contain_text("Try:")
    expect(page.get_by_label("Focus")).to_have_value("zzz")
    page = visit().go("/nothing")
    expect(page.get_by_role("alert")).to_contain_text("no such page")


def test_a_warm_up_by_keyboard_alone(visit: Callable[..., Visit]) -> None:
    page = visit().go("/warm-up?seed=3")
    page.get_by_label("Task", exact=True).focus()
    page.keyboard.type("put sounds")
    page.keyboard.press("Enter")
    page.get_by_label("Hide the answers").focus()
    page.keyboard.press("Space")
    page.keyboard.press("Enter")
    page.wait_for_url(re.compile("hide=[Tt]rue"))
    answer = page.locator(".questions details").first
    assert answer.get_attribute("open") is None
    answer.locator("summary").focus()
    page.keyboard.press("Enter")
    assert answer.get_attribute("open") is not None
    assert "task=blend" in page.url


def test_the_board_by_the_keys_of_a_remote(visit: Callable[..., Visit]) -> None:
    page = visit().go("/show?task=blend&item=1&seed=4&count=4&timer=9")
    shown = page.locator(".slide:visible")
    answer = shown.locator(".said")
    first = shown.locator(".ask").inner_text()
    assert page.locator("#clock").inner_text().startswith("0:0")
    expect(answer).not_to_be_visible()
    page.keyboard.press("Space")
    expect(answer).to_be_visible()
    page.keyboard.press("PageDown")
    expect(page.locator("#number")).to_have_text("2")
    expect(answer).not_to_be_visible()
    page.keyboard.press("End")
    expect(page.locator("#number")).to_have_text("4")
    page.keyboard.press("ArrowLeft")
    expect(page.locator("#number")).to_have_text("3")
    assert "item=3" in page.url
    page.reload()
    expect(page.locator("#number")).to_have_text("3")
    page.keyboard.press("Home")
    assert shown.locator(".ask").inner_text() == first
    page.locator("main").click()
    expect(answer).to_be_visible()


def test_sound_boxes_fill_one_by_one(visit: Callable[..., Visit]) -> None:
    page = visit().go("/show?what=words&words=clam&boxes=sounds&item=1&seed=4")
    boxes = page.locator(".slide:visible .box")
    expect(boxes).to_have_count(4)
    for filled in range(1, 5):
        page.keyboard.press("ArrowRight")
        expect(page.locator(".box.is-full")).to_have_count(filled)


def test_the_board_without_scripts(visit: Callable[..., Visit]) -> None:
    page = visit(java_script_enabled=False).go("/show?task=blend&item=1&seed=4")
    page.get_by_role("link", name="Answer").click()
    expect(page.locator(".slide:visible .said")).to_be_visible()
    page.get_by_role("link", name="Next").click()
    expect(page.locator("#number")).to_have_text("2")


def test_a_passage_is_marked_by_shape(visit: Callable[..., Visit]) -> None:
    page = visit().go("/passage")
    page.get_by_label("The text").fill("The gulls sit. A lighthouse is lit.")
    page.get_by_label("What was taught").fill("default:20")
    page.get_by_role("button", name="Check the text").click()
    marks = page.locator("mark.missing")
    expect(marks.first).to_be_visible()
    assert "lighthouse" in marks.all_inner_texts()
    before = marks.first.evaluate("one => getComputedStyle(one, '::before').content")
    assert "[" in before
