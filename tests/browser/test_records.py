"""Groups, checks and progress in a real browser: entered by keys and by touch."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, ViewportSize, expect

from phonodrill.records.kept import Result
from phonodrill.records.passphrase import keep_passphrase, passphrase_path
from phonodrill.records.store import Store
from tests.browser.driving import Visit
from tests.browser.test_every_page import ALL_RULES, LAPTOP, LOOKS, PHONE, violations
from tests.web.kept import CODES, GROUP, fill
from tests.web.serving import served

TABLET: ViewportSize = {"width": 820, "height": 1180}
FINGER = 44
"""CSS pixels."""


@pytest.fixture(scope="module")
def data(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("records")


@pytest.fixture(scope="module")
def store(data: Path) -> Iterator[Store]:
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_DATA_HOME", str(data / "data"))
        patch.delenv("PHONODRILL_DATABASE", raising=False)
        with Store() as opened:
            fill(opened)
            yield opened


@pytest.fixture(scope="module")
def server(data: Path, store: Store) -> Iterator[str]:
    """A server of its own, with a group."""
    assert store.list_groups()
    with served(data) as address:
        yield address


@pytest.fixture
def check(store: Store) -> str:
    """The digits of a new check."""
    made = store.find_check(store.list_checks(GROUP)[-1].key)
    return store.keep_check(made).key


def heading(page: Page, text: str) -> None:
    expect(page.get_by_role("heading", level=1)).to_have_text(text)


def with_keys(page: Page, text: str) -> None:
    """Wait for a page and its script; a key pressed earlier does nothing."""
    heading(page, text)
    expect(page.locator("#keys-told")).to_be_visible()


def test_a_check_is_entered_by_keys(visit: Callable[..., Visit], store: Store, check: str) -> None:
    page = visit().go(f"/check/{check}/enter")
    page.keyboard.press("ArrowRight")
    with_keys(page, "Q7, 1 of 3")
    page.keyboard.press("y")
    with_keys(page, "Q7, 2 of 3")
    page.get_by_label("Said or written instead").fill("yes, un")
    with_keys(page, "Q7, 2 of 3")
    page.keyboard.press("Enter")
    with_keys(page, "Q7, 3 of 3")
    page.keyboard.press("u")
    with_keys(page, "Q7, 2 of 3")
    page.keyboard.press("ArrowRight")
    with_keys(page, "Q7, 3 of 3")
    page.keyboard.press("ArrowLeft")
    with_keys(page, "Q7, 2 of 3")
    page.keyboard.press("n")
    with_keys(page, "Q7, 3 of 3")
    page.get_by_role("button", name="Turn keys off").click()
    page.keyboard.press("y")
    with_keys(page, "Q7, 3 of 3")
    page.get_by_role("button", name="Turn keys on").click()
    page.keyboard.press("y")
    heading(page, f"Check {check}: es,ies")
    expect(page.locator("#following")).to_have_text("Next: X4")
    assert store.results_of(check) == [
        Result(1, "Q7", True),
        Result(2, "Q7", False),
        Result(3, "Q7", True),
    ]


@pytest.mark.source("WCAG 2.5.8: targets of 24 CSS pixels or more; 44 is WCAG 2.5.5, AAA")
@pytest.mark.parametrize("scripts", [True, False], ids=["scripts", "no scripts"])
def test_a_check_is_entered_by_touch(
    visit: Callable[..., Visit], store: Store, check: str, scripts: bool
) -> None:
    page = visit(java_script_enabled=scripts, viewport=TABLET, has_touch=True).go("/check")
    page.get_by_role("link", name=f"Enter {check}").tap()
    page.get_by_role("link", name="Start: Q7").tap()
    # Sizes are those of the style sheet, of this page and not of the one before.
    expect(page.get_by_role("button", name="Right")).to_be_visible()
    page.wait_for_load_state()
    for target in page.locator("main :is(button, .button, .steps a):visible").all():
        box = target.bounding_box()
        assert box
        assert min(box["width"], box["height"]) >= FINGER, target.inner_text()
    for name in ("Right", "Not yet"):
        box = page.get_by_role("button", name=name).bounding_box()
        assert box
        assert box["width"] > 300
        assert box["height"] > 100
        assert box["y"] + box["height"] < TABLET["height"], "seen without scrolling"
    page.get_by_role("button", name="Right").tap()
    heading(page, "Q7, 2 of 3")
    page.get_by_role("button", name="Not yet").tap()
    heading(page, "Q7, 3 of 3")
    page.get_by_role("button", name="Undo").tap()
    heading(page, "Q7, 2 of 3")
    page.get_by_role("button", name="Skip").tap()
    heading(page, "Q7, 3 of 3")
    assert store.results_of(check) == [Result(1, "Q7", True)]


@pytest.mark.source("WCAG 2.2 AA as far as axe-core can tell; 1.4.10: 320 CSS pixels wide")
def test_axe_finds_nothing_and_a_phone_scrolls_down_only(
    visit: Callable[..., Visit], store: Store, check: str
) -> None:
    for code in CODES[:2]:
        for position in (1, 2, 3):
            store.enter_result(check, Result(position, code, code == "Q7", "/s/"))
    visitor = visit()
    page = visitor.go("/groups")
    group = page.get_by_role("link", name=GROUP, exact=True).get_attribute("href") or ""
    key = group.rpartition("/")[2]
    seat = visitor.go(f"/check/{check}/enter").locator(".students a").first.get_attribute("href")
    student = (seat or "").rpartition("/")[2]
    addresses = [
        *("/groups", group, f"{group}/{student}/erase", "/groups/000000000000"),
        *(
            f"/check?group={key}",
            f"/check/{check}",
            f"/check/{check}/enter",
            f"{seat}?item=2&done=1",
        ),
        *("/progress", f"/progress/{key}", f"/progress/{key}/{student}", f"/next/{key}"),
    ]
    found, widths = look_at(visitor, addresses)
    keep_passphrase("gulls over the harbor")
    try:
        more, wide = look_at(visitor, ["/sign-in"])
        assert visitor.page.get_by_label("Passphrase").is_visible()
        visitor.page.get_by_label("Passphrase").fill("gulls over the harbor")
        visitor.page.keyboard.press("Enter")
        visitor.page.wait_for_url(re.compile("/groups$"))
    finally:
        # The other tests of this server come without.
        passphrase_path().unlink()
    assert not any((found | more).values()), found | more
    assert max((widths | wide).values()) <= PHONE["width"], widths | wide


def look_at(visitor: Visit, addresses: list[str]) -> tuple[dict[str, list[str]], dict[str, int]]:
    """Return what axe finds on each page, light and wide, dark and small; and how wide it is."""
    found, widths = {}, {}
    for address in addresses:
        visitor.page.emulate_media(color_scheme="light")
        visitor.page.set_viewport_size(LAPTOP)
        page = visitor.go(address)
        found[address] = violations(page, ALL_RULES)
        page.emulate_media(color_scheme="dark")
        page.set_viewport_size(PHONE)
        found[address] += violations(page, LOOKS)
        widths[address] = page.evaluate("document.documentElement.scrollWidth")
    return found, widths
