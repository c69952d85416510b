"""The tutorial's way through the page can be gone, and its pictures show what is there."""

from __future__ import annotations

import pytest
from PIL import Image, ImageChops, ImageStat
from playwright.sync_api import Browser

from docs.pictures import page

NOT_DRAWN_BY_CHANCE = 12
"""Mean difference in gray: other fonts move the lines, another page changes more than that."""


def test_the_way_of_the_tutorial(
    browser: Browser, server: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A picture that differs is old: python -m docs.pictures.page."""
    monkeypatch.delenv("COLUMNS", raising=False)
    drawn = dict(page.draw(browser, server))
    assert list(drawn) == [shot.name for shot in page.SHOTS]
    for name, picture in drawn.items():
        with Image.open(page.FOLDER / f"{name}.png") as old:
            assert picture.size == old.size, name
            difference = ImageChops.difference(old.convert("L"), picture.convert("L"))
        assert ImageStat.Stat(difference).mean[0] < NOT_DRAWN_BY_CHANCE, name
