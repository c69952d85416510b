"""The tutorial's way through the page can be gone, and its stops say what the pictures show."""

from __future__ import annotations

from PIL import Image
from playwright.sync_api import Browser

from docs.pictures import page


def test_the_way_of_the_tutorial(browser: Browser, server: str) -> None:
    """A stop that lacks what it must say is an error; then see what changed, and draw again."""
    drawn = dict(page.draw(browser, server))
    assert list(drawn) == [shot.name for shot in page.SHOTS]
    for name, picture in drawn.items():
        with Image.open(page.FOLDER / f"{name}.png") as old:
            assert picture.size == old.size, name
        gray = picture.convert("L").histogram()
        assert min(sum(gray[:100]), sum(gray[150:])) > 500, name
