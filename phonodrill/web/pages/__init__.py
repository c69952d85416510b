"""One file a page: its form, its result, the page and its part of the API."""

from __future__ import annotations

from phonodrill.web.pages import about, passage, show, taught, today, warmup

PAGES = (today, warmup, show, passage, taught, about)
MENU = tuple(module.PAGE for module in PAGES)
