"""Pictures of every page, to be looked at: python -m tests.browser.screenshots FOLDER."""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path

from playwright.sync_api import FloatRect, ViewportSize, sync_playwright

from tests.browser.addresses import PATHS, addresses_of
from tests.browser.driving import chromium, launch, visiting
from tests.web.serving import served

SIZES: dict[str, ViewportSize] = {
    "phone": {"width": 390, "height": 844},
    "laptop": {"width": 1280, "height": 800},
    "projector": {"width": 1920, "height": 1080},
}
SCREENS = 2
"""What is below the second screen looks like what is above it."""


def main() -> None:
    executable = chromium()
    if executable is None or len(sys.argv) != 2:
        sys.exit("python -m tests.browser.screenshots FOLDER   (needs chromium)")
    folder = Path(sys.argv[1])
    folder.mkdir(parents=True, exist_ok=True)
    with (
        tempfile.TemporaryDirectory() as home,
        served(Path(home)) as server,
        sync_playwright() as playwright,
    ):
        browser = launch(playwright, executable)
        for name, size in SIZES.items():
            scheme = "dark" if name == "phone" else "light"
            with visiting(browser, server, viewport=size, color_scheme=scheme) as visitor:
                for path in PATHS:
                    for number, address in enumerate(addresses_of(path)):
                        file = folder / f"{path.strip('/')}-{number}-{name}.png"
                        page = visitor.go(address)
                        height = page.evaluate("document.documentElement.scrollHeight")
                        part: FloatRect = {
                            "x": 0,
                            "y": 0,
                            "width": size["width"],
                            "height": min(height, SCREENS * size["height"]),
                        }
                        page.screenshot(path=file, full_page=True, clip=part)
                        print(file, address)
        browser.close()


if __name__ == "__main__":
    main()
