"""One browser for all tests in it."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator
from contextlib import ExitStack
from typing import Any

import pytest
from playwright.sync_api import Browser, sync_playwright

from tests.browser.driving import REQUIRED, Visit, chromium, launch, visiting


@pytest.fixture(scope="package")
def browser() -> Iterator[Browser]:
    """Of this package only: while it is open, nothing else can run a loop of its own."""
    executable = chromium()
    if executable is None:
        assert os.environ.get(REQUIRED) != "1", "chromium is not there, and has to be"
        pytest.skip("chromium is not there: apt-get install chromium")
    with sync_playwright() as playwright:
        opened = launch(playwright, executable)
        yield opened
        opened.close()


@pytest.fixture
def visit(browser: Browser, server: str) -> Iterator[Callable[..., Visit]]:
    """Open visits; each must end without an error and without an outside request."""
    with ExitStack() as stack:

        def start(**options: Any) -> Visit:
            return stack.enter_context(visiting(browser, server, **options))

        yield start
