"""Make the pictures in the README and in docs/ out of what phonodrill writes.

Run ``python docs/pictures/make.py`` after a change in how pages, slides or lessons look. It
needs the packages of ``phonodrill[print]``; slides are drawn by LibreOffice, and left as
they are where it is not installed.
"""

from __future__ import annotations

import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterator, Sequence
from io import BytesIO
from pathlib import Path

from PIL import Image, ImageOps

from phonodrill import Lexicon, Notation, open_gate
from phonodrill.endings.sort import By
from phonodrill.lesson.compose import make_lesson
from phonodrill.lesson.request import Request
from phonodrill.lesson.tree import Lesson
from phonodrill.paper.cards import GRIDS, Back, Size, card_of, lay_out
from phonodrill.paper.mat import by_ending, mat_of
from phonodrill.paper.pack_parts import Part
from phonodrill.paper.page import Page
from phonodrill.paper.printed import print_words
from phonodrill.paper.sheets import boxes_of, chunk_lines_of
from phonodrill.render import as_pdf, as_pptx
from phonodrill.render.slide import Slide
from phonodrill.render.views.pack import pages_of
from phonodrill.render.views.slides import slides_of

FOLDER = Path(__file__).parent
HARBOR = [
    "torches",
    "ropes",
    "gulls",
    "ferries",
    "crabs",
    "lighthouses",
    "jellies",
    "finches",
    "hedges",
    "ladies",
    "ponies",
    "stitches",
    "patches",
    "skates",
    "slopes",
    "snails",
    "clams",
    "beaches",
]
BOXED = 6
LESSON = Request("es,ies", band=2, minutes=25, seed=9)
WHOLE, HALF, THIRD = 90, 72, 60
"""Dots an inch of a page that stands alone, or beside one or two others."""
SHADES = 16
GAP = 10
LINE = 150
"""Gray of the line around a page."""
SLIDE_WIDTH = 560
SHOWN_SLIDE = "Find the base"


def main() -> None:
    """Make all pictures beside this script, and say which."""
    with Lexicon() as lexicon:
        lesson = make_lesson(lexicon, LESSON)
        made = [*paper_pictures(lexicon, lesson)]
    soffice = shutil.which("soffice")
    if soffice:
        made.append(("slides", slide_picture(lesson, soffice)))
    else:
        print("no LibreOffice here: slides.png stays as it is", file=sys.stderr)
    for name, picture in made:
        path = FOLDER / f"{name}.png"
        picture.save(path, optimize=True)
        print(f"{path.name}: {path.stat().st_size:,} bytes")


def paper_pictures(lexicon: Lexicon, lesson: Lesson) -> Iterator[tuple[str, Image.Image]]:
    """Draw pages of a lesson, and pages of words without one.

    Yields:
        Name and picture.
    """
    script = pages_of([lesson], [Part.SCRIPT])
    student = [page for page in pages_of([lesson], [Part.STUDENT]) if page.title == "Words to sort"]
    entries = [entry for word in HARBOR if (entry := lexicon.get(word))]
    words = print_words(lexicon, open_gate(lexicon), entries, Notation.MARKS)
    faces = [card_of(word, Back.ENDING) for word in words]
    cards = lay_out("Word cards", faces, GRIDS[Size.MEDIUM])
    mat = mat_of("Sort by the sound of the ending", by_ending(words, By.SOUND))
    boxed = words[:BOXED]
    boxes: list[Page] = [
        chunk_lines_of(boxed),
        boxes_of(boxed, filled=False),
        boxes_of(boxed, filled=True, title="Key: sound boxes"),
    ]

    def drawn(pages: Sequence[Page], dots: int) -> list[Image.Image]:
        footer = lesson.caution
        return [
            _opened(one)
            for one in as_pdf.render_pictures(pages, title="x", footer=footer, dots=dots)
        ]

    yield "script", joined(drawn(script, WHOLE)[:1])
    yield "student", joined(drawn(student, WHOLE))
    yield "cards", joined(drawn([cards], HALF))
    yield "mat", joined(drawn([mat], HALF))
    yield "boxes", joined(drawn(boxes, THIRD))
    pages = [drawn(some, THIRD)[0] for some in (script, student, [cards])]
    yield "lesson", joined(pages)


def slide_picture(lesson: Lesson, soffice: str) -> Image.Image:
    """Draw a question and its answer, as a slide program shows them."""
    slides = slides_of([lesson])
    answer = next(
        place
        for place, slide in enumerate(slides)
        if slide.is_answer and SHOWN_SLIDE in slide.title
    )
    return joined([_slide(slide, soffice) for slide in slides[answer - 1 : answer + 1]])


def joined(pictures: Sequence[Image.Image]) -> Image.Image:
    """Set pictures side by side, each with a thin line around it, in few shades of gray."""
    framed = [ImageOps.expand(picture, 1, LINE) for picture in pictures]
    width = sum(picture.width + GAP for picture in framed) - GAP
    whole = Image.new("L", (width, max(picture.height for picture in framed)), 255)
    left = 0
    for picture in framed:
        whole.paste(picture, (left, 0))
        left += picture.width + GAP
    return whole.quantize(SHADES, dither=Image.Dither.NONE)


def _slide(slide: Slide, soffice: str) -> Image.Image:
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        (folder / "slide.pptx").write_bytes(as_pptx.draw([slide], title="slide"))
        profile = f"-env:UserInstallation={(folder / 'profile').as_uri()}"
        convert = [soffice, profile, "--headless", "--convert-to", "png", "--outdir", name]
        subprocess.run([*convert, str(folder / "slide.pptx")], check=True, capture_output=True)
        picture = _opened((folder / "slide.png").read_bytes())
    height = round(picture.height * SLIDE_WIDTH / picture.width)
    return picture.resize((SLIDE_WIDTH, height), Image.Resampling.LANCZOS)


def _opened(content: bytes) -> Image.Image:
    return Image.open(BytesIO(content)).convert("L")


if __name__ == "__main__":
    main()
