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
    """Look at the first word of the lesson that can be swapped."""
    link = page.locator(".choose a").first
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
    page.keyboard.type("blend")
    page.keyboard.press("Enter")
    page.get_by_label("Hide the answers").focus()
    page.keyboard.press("Space")
    page.keyboard.press("Enter")
    page.wait_for_url(re.compile("hide=true"))
    answer = page.locator("details").first
    assert answer.get_attribute("open") is None
    answer.locator("summary").focus()
    page.keyboard.press("Enter")
    assert answer.get_attribute("open") is not None
    assert "task=blend" in page.url
