"""Slides (Office Open XML, ISO/IEC 29500), 16:9, black on white, with speaker notes.

No animation: the answer is the next slide, so it works in every program and on paper.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import count
from textwrap import wrap
from typing import Any

from phonodrill.extra import import_extra
from phonodrill.lesson.tree import Lesson
from phonodrill.render.document import Table
from phonodrill.render.office import FONT, describe, pack, xml_text
from phonodrill.render.slide import Shown, Size, Slide
from phonodrill.render.views.slides import slides_of

POINTS_AN_INCH = 72
WIDTH, HEIGHT = 13.333, 7.5
MARGIN = 0.7
TITLE_TOP, TITLE_HEIGHT = 0.35, 0.8
BODY_TOP = 1.4
TITLE_POINTS, OPENING_POINTS, SMALLEST_POINTS = 20, 54, 14
SIGN_WIDTH, LINE_HEIGHT = 0.66, 1.3
"""Of the font, in parts of its size: a wide letter, and from line to line."""
GRID = "{5940675A-B579-460E-94D1-54222C63F5DA}"
"""The plain grid among the table styles that slide programs know: no color."""
OPENING, CONTENT, TITLE_ONLY = 0, 1, 5
"""The layouts of the template that are used."""
_ROOM = (WIDTH - 2 * MARGIN, HEIGHT - BODY_TOP - MARGIN)


def render(lessons: Sequence[Lesson], *, student: bool = False) -> bytes:
    """Write one lesson, or those of several days, as slides.

    Args:
        lessons: one a day, in order.
        student: leave out answers and notes.

    Returns:
        The file; the same for the same lessons.

    Raises:
        PhonodrillError: if the package is missing.
    """
    return draw(slides_of(lessons, student=student), title=lessons[0].title)


def draw(slides: Sequence[Slide], *, title: str) -> bytes:
    """Draw slides in their order.

    Raises:
        PhonodrillError: if the package is missing.
    """
    file = _extra("pptx").Presentation()
    describe(file.core_properties, title)
    _set_up(file)
    _number_notes(file.part.package)
    for slide in slides:
        _add_slide(file, slide)
    return pack(file.save)


def _extra(module: str) -> Any:
    return import_extra(module, "PPTX", "python-pptx")


def _inches(size: float) -> Any:
    return _extra("pptx.util").Inches(size)


def _points(size: float) -> Any:
    return _extra("pptx.util").Pt(int(size))


def _set_up(file: Any) -> None:
    """Make the template's master 16:9, in one font, without bullets."""
    file.slide_width, file.slide_height = _inches(WIDTH), _inches(HEIGHT)
    master = file.slide_master
    theme = master.part.part_related_by(_extra("pptx.opc.constants").RELATIONSHIP_TYPE.THEME)
    theme.blob = theme.blob.replace(b'typeface="Calibri"', f'typeface="{FONT}"'.encode())
    for layout in (master, *file.slide_layouts):
        for shape in layout.placeholders:
            # 4:3 in the template; those that inherit their place have no position of their own.
            if shape.element.spPr.xfrm is not None:
                shape.left = int(shape.left * WIDTH / 10)
                shape.width = int(shape.width * WIDTH / 10)
    for place in (master.placeholders, file.slide_layouts[TITLE_ONLY].placeholders):
        _set_place(place[0], TITLE_TOP, TITLE_HEIGHT)
    _set_place(master.placeholders[1], BODY_TOP, _ROOM[1])
    _remove_bullets(master)


def _set_place(shape: Any, top: float, height: float) -> None:
    shape.left, shape.top = _inches(MARGIN), _inches(top)
    shape.width, shape.height = _inches(_ROOM[0]), _inches(height)


def _remove_bullets(master: Any) -> None:
    qn = _extra("pptx.oxml.ns").qn
    level = master.element.find(f".//{qn('p:bodyStyle')}/{qn('a:lvl1pPr')}")
    level.set("marL", "0")
    level.set("indent", "0")
    level.set("algn", "ctr")
    bullet = level.find(qn("a:buChar"))
    bullet.addnext(level.makeelement(qn("a:buNone"), {}))
    level.remove(bullet)
    for font in level.findall(qn("a:buFont")):
        level.remove(font)


def _number_notes(package: Any) -> None:
    """Count the notes: the library walks through all parts to name each, slow for a week."""
    name_of, search, numbers = _extra("pptx.opc.packuri").PackURI, package.next_partname, count(1)

    def next_partname(template: str) -> Any:
        is_notes = "notesSlide%" in template
        return name_of(template % next(numbers)) if is_notes else search(template)

    package.next_partname = next_partname


def _add_slide(file: Any, slide: Slide) -> None:
    is_opening = not slide.lines and not slide.table
    layout = OPENING if is_opening else TITLE_ONLY if slide.table else CONTENT
    made = file.slides.add_slide(file.slide_layouts[layout])
    made.shapes.title.text_frame.text = xml_text(slide.title)
    title_points = OPENING_POINTS if is_opening else TITLE_POINTS
    size = fit(slide.title, title_points, (_ROOM[0], 3 if is_opening else TITLE_HEIGHT))
    _set_font(made.shapes.title.text_frame, size)
    if is_opening:
        _add_opening(made)
    elif slide.table:
        _add_table(made, slide.lines, slide.table)
    else:
        _fill(made.placeholders[1].text_frame, slide.lines, _ROOM[1])
    if slide.notes:
        made.notes_slide.notes_text_frame.text = xml_text(slide.notes)


def _add_opening(made: Any) -> None:
    """Set the title in the middle, and take away the empty place for a subtitle."""
    _set_place(made.shapes.title, 2.0, 3.0)
    subtitle = made.placeholders[1].element
    subtitle.getparent().remove(subtitle)


def _fill(frame: Any, lines: Sequence[Shown], height: float) -> None:
    frame.word_wrap = True
    frame.vertical_anchor = _extra("pptx.enum.text").MSO_ANCHOR.MIDDLE
    share = height / sum(line.size.value for line in lines)
    for number, line in enumerate(lines):
        paragraph = frame.paragraphs[0] if number == 0 else frame.add_paragraph()
        run = paragraph.add_run()
        run.text = xml_text(line.text)
        room = (_ROOM[0], share * line.size.value)
        is_word = line.size is Size.WORD
        run.font.size = _points(fit(line.text, line.size.value, room, on_one_line=is_word))


def _set_font(frame: Any, size: float, *, is_bold: bool = False) -> None:
    for paragraph in frame.paragraphs:
        for run in paragraph.runs:
            run.font.size = _points(size)
            run.font.bold = is_bold or None


def _add_table(made: Any, lines: Sequence[Shown], table: Table) -> None:
    top = BODY_TOP
    if lines:
        box = made.shapes.add_textbox(*map(_inches, (MARGIN, top, _ROOM[0], 1.3)))
        _fill(box.text_frame, lines, 1.3)
        top += 1.5
    rows = (table.headings, *table.rows)
    height = (HEIGHT - MARGIN - top) / len(rows)
    place = map(_inches, (MARGIN, top, _ROOM[0], HEIGHT - MARGIN - top))
    grid = made.shapes.add_table(len(rows), len(table.headings), *place).table
    grid._tbl.tblPr.find(_extra("pptx.oxml.ns").qn("a:tableStyleId")).text = GRID  # noqa: SLF001
    grid.horz_banding = False
    widths = _widths(table)
    for column, width in zip(grid.columns, widths, strict=True):
        column.width = _inches(width)
    cells = [
        (text, (width, height)) for row in rows for text, width in zip(row, widths, strict=True)
    ]
    size = min(fit(text, 28, (width - 0.3, height - 0.15)) for text, (width, height) in cells)
    for number, (cell, (text, _)) in enumerate(zip(grid.iter_cells(), cells, strict=True)):
        cell.text_frame.text = xml_text(text)
        cell.vertical_anchor = _extra("pptx.enum.text").MSO_ANCHOR.MIDDLE
        _set_font(cell.text_frame, size, is_bold=number < len(table.headings))


def _widths(table: Table) -> list[float]:
    """Give all columns but the last a quarter of the width at most."""
    first = min(_ROOM[0] / len(table.headings), _ROOM[0] / 4)
    others = len(table.headings) - 1
    return [first] * others + [_ROOM[0] - first * others]


def fit(text: str, most: float, room: tuple[float, float], *, on_one_line: bool = False) -> int:
    """Return the size in points at which a text fits, its words unbroken.

    Args:
        text: what is set.
        most: the largest size.
        room: width and height in inches.
        on_one_line: whether it may not be broken into lines.
    """
    width, height = (side * POINTS_AN_INCH for side in room)
    longest = len(text) if on_one_line else max(map(len, text.split()), default=1)
    for size in range(int(most), SMALLEST_POINTS, -1):
        signs = int(width / (size * SIGN_WIDTH))
        if longest <= signs and len(wrap(text, signs)) * size * LINE_HEIGHT <= height:
            return size
    return SMALLEST_POINTS
