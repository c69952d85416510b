"""One file a page: its form, its result, the page and its part of the API."""

from __future__ import annotations

from phonodrill.web.pages import (
    about,
    endings,
    pairs,
    passage,
    show,
    taught,
    today,
    warmup,
    words,
)

PAGES = (today, warmup, show, endings, pairs, passage, words, taught, about)
MENU = tuple(module.PAGE for module in PAGES)
