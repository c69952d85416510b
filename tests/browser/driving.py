"""Debian's Chromium, driven by Playwright: where it is, and what a visit may not do."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

from playwright.sync_api import Browser, BrowserContext, ConsoleMessage, Page, Playwright, Route

REQUIRED = "CI_REQUIRE_BROWSER"
"""Environment variable: 1 where these tests have to run."""
WAIT = 10_000
"""Milliseconds after which something that should be there is missing."""
REFUSED = "Failed to load resource: the server responded with a status of 4"
"""What the browser says of a page that tells what was wrong; no fault of the page."""


def chromium() -> str | None:
    """Find the browser."""
    return shutil.which("chromium") or shutil.which("chromium-browser")


def launch(playwright: Playwright, executable: str) -> Browser:
    # A container's root has no sandbox; the only pages visited are our own.
    return playwright.chromium.launch(executable_path=executable, args=["--no-sandbox"])


class Visit:
    """A visitor: a browser context that may ask our server only.

    Attributes:
        page: the page that is open.
        foreign: addresses elsewhere that were asked for.
        errors: what the console reported.
    """

    def __init__(self, context: BrowserContext, server: str) -> None:
        self.context = context
        self.server = server
        self.foreign: list[str] = []
        self.errors: list[str] = []
        context.set_default_timeout(WAIT)
        context.route(lambda url: not url.startswith(f"{server}/"), self._refuse)
        self.page: Page = context.new_page()
        self.page.on("console", self._note)
        self.page.on("pageerror", lambda error: self.errors.append(str(error)))

    def go(self, path: str) -> Page:
        """Open a page of ours."""
        self.page.goto(self.server + path)
        return self.page

    def _refuse(self, route: Route) -> None:
        if not route.request.url.startswith(("data:", "blob:")):
            self.foreign.append(route.request.url)
        route.abort()

    def _note(self, message: ConsoleMessage) -> None:
        if message.type in {"error", "warning"} and not message.text.startswith(REFUSED):
            self.errors.append(f"{message.text} at {self.page.url}")


@contextmanager
def visiting(browser: Browser, server: str, **options: Any) -> Iterator[Visit]:
    """Open a context; at its end there must have been no error and no outside request.

    Args:
        browser: the browser.
        server: address of our server.
        options: of Playwright's ``new_context``.
    """
    context = browser.new_context(**options)
    try:
        visit = Visit(context, server)
        yield visit
        assert visit.foreign == []
        assert visit.errors == []
    finally:
        context.close()
