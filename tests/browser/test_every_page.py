"""What holds on every page, as it opens, with a result and with something wrong."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Literal

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page, ViewportSize

from tests.browser.addresses import PATHS, PROBLEMS, RESULTS, addresses_of
from tests.browser.driving import Visit

PHONE: ViewportSize = {"width": 320, "height": 640}
LAPTOP: ViewportSize = {"width": 1280, "height": 800}
WHOLE = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
ALL_RULES = {"runOnly": {"type": "tag", "values": WHOLE}, "resultTypes": ["violations"]}
"""Every rule of axe that WCAG 2.2 AA rests on, and its advice."""
LOOKS = {
    "runOnly": {
        "type": "rule",
        "values": ["color-contrast", "target-size", "scrollable-region-focusable"],
    },
    "resultTypes": ["violations"],
}
"""Those that colors and width can break."""
MOST_STOPS = 50
SEEN_FOCUS = """() => {
  const chosen = document.activeElement;
  const box = chosen.getBoundingClientRect();
  const style = getComputedStyle(chosen);
  return {
    name: chosen.tagName + " " + (chosen.id || chosen.name || chosen.textContent.trim()),
    ring: style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2,
    shown: box.width > 0 && box.right > 0 && box.bottom > 0 && box.left < innerWidth,
    body: chosen === document.body,
  };
}"""
MOVING = """() => document.getAnimations().length + [...document.querySelectorAll("*")].filter(
  (one) => getComputedStyle(one).transitionDuration.split(", ").some((time) => time !== "0s")
).length"""


def violations(page: Page, rules: dict[str, Any]) -> list[str]:
    found = Axe().run(page, options=rules).response["violations"]
    return [
        f"{v['id']}: {node['target']} {node['html'][:90]}" for v in found for node in v["nodes"]
    ]


def test_every_page_has_its_addresses() -> None:
    assert set(RESULTS) == set(PATHS)


@pytest.mark.source("WCAG 2.2 AA as far as axe-core can tell; 1.4.10: 320 CSS pixels wide")
@pytest.mark.parametrize("path", PATHS)
def test_axe_finds_nothing_and_a_phone_scrolls_down_only(
    visit: Callable[..., Visit], path: str
) -> None:
    """Each address as it opens, and again on a small phone in the dark."""
    visitor = visit(viewport=LAPTOP)
    found, widths = {}, {}
    for address in addresses_of(path):
        visitor.page.emulate_media(color_scheme="light")
        visitor.page.set_viewport_size(LAPTOP)
        page = visitor.go(address)
        found[address] = violations(page, ALL_RULES)
        page.emulate_media(color_scheme="dark")
        page.set_viewport_size(PHONE)
        found[address] += violations(page, LOOKS)
        widths[address] = page.evaluate("document.documentElement.scrollWidth")
    assert not any(found.values()), found
    assert max(widths.values()) <= PHONE["width"], widths


def test_every_page_without_scripts(visit: Callable[..., Visit]) -> None:
    visitor = visit(java_script_enabled=False)
    for path, (address, *_) in RESULTS.items():
        page = visitor.go(address)
        assert page.locator("main article, main section, main table").first.is_visible(), address
        if path in PROBLEMS:
            assert visitor.go(PROBLEMS[path]).get_by_role("alert").is_visible(), path


@pytest.mark.parametrize("path", PATHS)
def test_the_keyboard_reaches_everything(visit: Callable[..., Visit], path: str) -> None:
    """Tab goes through the page in order, each stop is seen, and it ends."""
    visitor = visit(viewport=LAPTOP, reduced_motion="reduce")
    page = visitor.go(RESULTS.get(path, (path,))[0])
    assert page.evaluate(MOVING) == 0
    # A date of the page that tells how many stops there are: none may be skipped.
    stops = page.locator(
        "a[href]:visible, button:visible, input:not([type=hidden]):visible, select:visible,"
        " textarea:visible, summary:visible, [tabindex='0']:visible"
    ).count()
    seen = []
    for _ in range(min(stops + 5, MOST_STOPS)):
        page.keyboard.press("Tab")
        at = page.evaluate(SEEN_FOCUS)
        if at["body"]:
            break
        assert at["shown"], at
        assert at["ring"], at
        seen.append(at["name"])
    if page.locator(".skip").count():
        assert seen[0].startswith("A To the content")
    assert len(seen) >= min(stops, 5)


def test_the_skip_link_leads_to_the_content(visit: Callable[..., Visit]) -> None:
    page = visit().go("/warm-up?seed=1")
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.closest('main') !== null")


def test_light_and_dark_follow_the_system(visit: Callable[..., Visit]) -> None:
    page = visit().go("/warm-up?seed=1")
    colors = []
    schemes: list[Literal["light", "dark"]] = ["light", "dark"]
    for scheme in schemes:
        page.emulate_media(color_scheme=scheme)
        colors.append(page.evaluate("getComputedStyle(document.body).backgroundColor"))
    assert colors[0] != colors[1]
