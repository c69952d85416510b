"""One file a page: its form, its result, the page and its part of the API."""

from __future__ import annotations

from phonodrill.web.pages import endings, pairs, warmup, words

PAGES = (warmup, endings, pairs, words)
MENU = tuple(module.PAGE for module in PAGES)
