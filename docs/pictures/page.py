"""Make the pictures of the page and of a terminal that are shown in docs/.

Run ``python -m docs.pictures.page`` from the project's folder after a change in how the page looks.
It needs the packages of ``phonodrill[test]`` and chromium. The pages are real ones, of a real
server; the terminal shows what the commands really print.
"""

from __future__ import annotations

import html
import sys
import tempfile
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path
from typing import NamedTuple

from PIL import Image, ImageOps
from playwright.sync_api import Browser, Page, ViewportSize, sync_playwright

from tests import harbor
from tests.browser.driving import chromium, launch, visiting
from tests.web.serving import served

FOLDER = Path(__file__).parent
SHADES = 16
LINE = 150
"""Gray of the line around a picture."""
SEED = "seed=9"
LESSON = f"/today?focus=es,ies&{SEED}"
OLD_WORD, NEW_WORD = "searches", "beaches"
STEPS_TAUGHT = "60"
BOARD = "/show?what=words&words=clam+crab+gull&boxes=letters&item=1"
PROMPT = "$ "
TYPED = ("warmup --drop first --ending es --count 3 --seed 9",)
STYLE = """
body { margin: 0; background: #222; color: #eee; font: 15px/1.4 monospace }
pre { margin: 0; padding: 14px 18px; font: inherit; white-space: pre-wrap }
b { color: #fff }
"""


class Shot(NamedTuple):
    """A picture to be made.

    Attributes:
        name: of its file, without the ending.
        width: of the window, in CSS pixels.
        height: likewise; what is below is cut off.
        says: what must stand there, since the texts beside the pictures speak of it.
        top: the part of the page that it begins with, if not its top.
    """

    name: str
    width: int
    height: int
    says: tuple[str, ...]
    top: str = "body"


FORM = Shot("page-form", 1000, 600, ("What was taught", "Make the lesson", "Usual foci"))
MADE = Shot("page-lesson", 1000, 760, ("Say “lies”", "Say and spell", "Other words"), ".result")
SWAPPED = Shot("page-swap", 1000, 900, ("beach + -es", "Swap the word", "undo"), "#word")
SHOWN = Shot("page-show", 900, 506, ("stories", "/s t ô r ē z/", "Leave"))
BOXES = Shot("page-boxes", 900, 506, ("clam", "Answer", "Next"))
STEPS = Shot("page-taught", 900, 740, ("Steps, one a line", "Check the steps"))
TERMINAL = Shot("terminal", 760, 440, ("Say “pitches”", "Say “brushes”", "Say “switches”"))
SHOTS = (FORM, MADE, SWAPPED, STEPS, SHOWN, BOXES, TERMINAL)


def main() -> None:
    """Make all pictures beside this script, and say which."""
    executable = chromium()
    if executable is None:
        sys.exit("chromium is not there: apt-get install chromium")
    with (
        tempfile.TemporaryDirectory() as home,
        served(Path(home)) as server,
        sync_playwright() as playwright,
    ):
        browser = launch(playwright, executable)
        for name, picture in draw(browser, server):
            path = FOLDER / f"{name}.png"
            picture.save(path, optimize=True)
            print(f"{path.name}: {path.stat().st_size:,} bytes")
        browser.close()


def draw(browser: Browser, server: str) -> Iterator[tuple[str, Image.Image]]:
    """Walk through the page as the tutorial does; yield the name and picture of each stop."""
    with visiting(browser, server) as visitor:
        page = visitor.go("/today")
        page.get_by_label("Focus").fill("es,ies")
        yield FORM.name, taken(page, FORM)
        yield MADE.name, taken(visitor.go(LESSON), MADE)
        page = visitor.go(f"{LESSON}&word={OLD_WORD}")
        page.get_by_label(f"Take instead of {OLD_WORD}").fill(NEW_WORD)
        page.get_by_role("button", name="Swap the word").click()
        page.wait_for_url("**swap=**")
        yield SWAPPED.name, taken(page, SWAPPED)
        page = visitor.go("/taught")
        page.get_by_label("Start from our order").fill(STEPS_TAUGHT)
        page.get_by_role("button", name="Take our order").click()
        page.wait_for_url("**taught=**")
        yield STEPS.name, taken(page, STEPS)
        page = visitor.go(LESSON)
        page.get_by_role("link", name="Show the words").click()
        # Before its script runs the board takes no keys.
        page.get_by_role("button", name="Full screen").wait_for()
        page.keyboard.press("Space")
        yield SHOWN.name, taken(page, SHOWN)
        page.get_by_role("link", name="Leave").click()
        page.get_by_role("link", name="Back to the lesson").click()
        page.wait_for_url("**/today?**")
        page = visitor.go(BOARD)
        for _ in range(3):
            page.keyboard.press("Space")
        yield BOXES.name, taken(page, BOXES)
    yield TERMINAL.name, terminal(browser)


def taken(page: Page, shot: Shot) -> Image.Image:
    """Take the window in few shades of gray, with a thin line around it.

    Raises:
        playwright.sync_api.TimeoutError: if something that it must say is not there.
    """
    page.set_viewport_size(ViewportSize(width=shot.width, height=shot.height))
    for text in shot.says:
        page.get_by_text(text).locator("visible=true").first.wait_for()
    page.locator(shot.top).evaluate("part => part.scrollIntoView()")
    with Image.open(BytesIO(page.screenshot())) as picture:
        framed = ImageOps.expand(picture.convert("L"), 1, LINE)
    return framed.quantize(SHADES, dither=Image.Dither.NONE)


def terminal(browser: Browser) -> Image.Image:
    """Draw a terminal in which commands were run."""
    lines = []
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        (folder / harbor.HOME).mkdir()
        for typed in TYPED:
            printed = harbor.run(folder, typed.split()).stdout.rstrip()
            lines.append(f"{PROMPT}<b>phonodrill {typed}</b>\n{html.escape(printed)}\n\n")
    page = browser.new_page()
    page.set_content(f"<style>{STYLE}</style><pre>{''.join(lines)}{PROMPT}▌</pre>")
    picture = taken(page, TERMINAL)
    page.close()
    return picture


if __name__ == "__main__":
    main()
