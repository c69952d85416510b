"""Pictures of every page, to be looked at: python -m tests.browser.screenshots FOLDER."""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path

from playwright.sync_api import ViewportSize, sync_playwright

from tests.browser.addresses import PATHS, addresses_of
from tests.browser.driving import chromium, launch, visiting
from tests.web.serving import served

SIZES: dict[str, ViewportSize] = {
    "phone": {"width": 390, "height": 844},
    "laptop": {"width": 1280, "height": 800},
    "projector": {"width": 1920, "height": 1080},
}


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
                        # The board is one screen; what else is below the first is seen, too.
                        whole = not address.startswith("/show?")
                        visitor.go(address).screenshot(path=file, full_page=whole)
                        print(file, address)
        browser.close()


if __name__ == "__main__":
    main()
