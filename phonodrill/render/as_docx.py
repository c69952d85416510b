"""A word processor's file (Office Open XML, ISO/IEC 29500), to change and to print.

All is done with the styles that word processors know by name, so that the outline, a
table of contents and screen readers work, and a teacher changes the look in one place.
"""

from __future__ import annotations

from typing import Any

from phonodrill.extra import import_extra
from phonodrill.lesson.tree import CAUTION
from phonodrill.paper.page import Paper
from phonodrill.render.document import (
    BRACKETS,
    Body,
    Document,
    Mark,
    Marked,
    Picture,
    Questions,
    Section,
    Table,
    Words,
)
from phonodrill.render.office import FONT, describe, pack, xml_text

WORD_STYLE = "Word List"
GAP = "   "
"""Stands between words of a list."""
_SIZES = {"Normal": 11, "Title": 22, "Subtitle": 11, "Heading 1": 15, "Heading 2": 12.5}
_FOOT_SIZE = 8
_ROW_TO_WRITE_IN = 10
"""Millimeters, at least, of a row with a cell to fill in."""
_MILLIMETERS = {Paper.LETTER: (215.9, 279.4), Paper.A4: (210, 297)}
"""Width and height of the sheets: ANSI/ASME Y14.1 (letter), ISO 216 (A4)."""
_SIGNS_A_LINE, _MOST_SIGNS, _PADDING = 66, 40, 3
"""About how many signs a line of a table has, a column may ask for, and its margins take."""


def render(document: Document, paper: Paper = Paper.LETTER) -> bytes:
    """Write the document as a file, with the cautions at the foot of each page.

    Args:
        document: what to write.
        paper: size of the sheet.

    Returns:
        The file; the same for the same document.

    Raises:
        PhonodrillError: if the package is missing.
    """
    file = _extra("docx").Document()
    _set_up(file, document.title, paper)
    file.add_paragraph(xml_text(document.title), style="Title")
    if document.about:
        file.add_paragraph(xml_text(document.about), style="Subtitle")
    levels = [section.level for section in document.sections]
    for section, below in zip(document.sections, [*levels[1:], 0], strict=True):
        _add_section(file, section, is_led_in=section.level < below)
    return pack(file.save)


def _extra(module: str) -> Any:
    return import_extra(module, "DOCX", "python-docx")


def _set_up(file: Any, title: str, paper: Paper) -> None:
    describe(file.core_properties, title)
    shared = _extra("docx.shared")
    for name, size in _SIZES.items():
        _set_style(file.styles[name], shared, size)
    file.styles["Title"].paragraph_format.space_after = shared.Pt(4)
    for name in ("Heading 1", "Heading 2"):
        file.styles[name].paragraph_format.space_before = shared.Pt(12)
        file.styles[name].paragraph_format.space_after = shared.Pt(3)
    kinds = _extra("docx.enum.style").WD_STYLE_TYPE
    words = file.styles.add_style(WORD_STYLE, kinds.PARAGRAPH)
    words.base_style = file.styles["Normal"]
    words.font.size = shared.Pt(14)
    words.paragraph_format.line_spacing = 1.5
    page = file.sections[0]
    page.page_width, page.page_height = map(shared.Mm, _MILLIMETERS[paper])
    page.left_margin = page.right_margin = shared.Inches(0.9)
    page.top_margin = page.bottom_margin = shared.Inches(0.8)
    foot = page.footer.paragraphs[0]
    foot.add_run(f"{CAUTION}{GAP}").font.size = shared.Pt(_FOOT_SIZE)
    _number_pages(foot)


def _set_style(style: Any, shared: Any, size: float) -> None:
    """Set font and size, black: the template's headings are blue, in fonts of the theme."""
    oxml = _extra("docx.oxml.ns")
    style.font.name = FONT
    style.font.size = shared.Pt(size)
    style.font.color.rgb = shared.RGBColor(0, 0, 0)
    style.font.italic = False
    fonts = style.element.rPr.rFonts
    for attribute in list(fonts.attrib):
        if attribute.endswith("Theme"):
            del fonts.attrib[attribute]
    for script in ("ascii", "hAnsi", "cs", "eastAsia"):
        fonts.set(oxml.qn(f"w:{script}"), FONT)
    for lines in style.element.xpath("w:pPr/w:pBdr"):
        lines.getparent().remove(lines)


def _number_pages(paragraph: Any) -> None:
    element = _extra("docx.oxml").OxmlElement
    qn = _extra("docx.oxml.ns").qn
    field = element("w:fldSimple")
    field.set(qn("w:instr"), "PAGE")
    paragraph.alignment = _extra("docx.enum.text").WD_ALIGN_PARAGRAPH.CENTER
    run = paragraph.add_run("1")
    run.font.size = _extra("docx.shared").Pt(_FOOT_SIZE)
    field.append(run._element)  # noqa: SLF001 - python-docx has no fields
    paragraph._element.append(field)  # noqa: SLF001


def _add_section(file: Any, section: Section, *, is_led_in: bool) -> None:
    """Add a section; what only leads into the part after it stays on one page with it."""
    if section.heading:
        file.add_heading(xml_text(section.heading), section.level)
    _add_body(file, section.body)
    if is_led_in:
        file.paragraphs[-1].paragraph_format.keep_with_next = True


def _add_body(file: Any, body: Body) -> None:
    if isinstance(body, Table):
        _add_table(file, body)
    elif isinstance(body, Questions):
        _add_questions(file, body)
    elif isinstance(body, Words):
        file.add_paragraph(GAP.join(map(xml_text, body.words)), style=WORD_STYLE)
    elif isinstance(body, Picture):
        file.add_paragraph(xml_text(body.told))
    elif body.plain().strip():
        _add_marked(file, body)


def _add_questions(file: Any, questions: Questions) -> None:
    number = _new_list(file)
    for ask, answer, sounds in questions.lines:
        paragraph = file.add_paragraph(style="List Number")
        paragraph.paragraph_format.keep_together = True
        properties = paragraph._p.get_or_add_pPr().get_or_add_numPr()  # noqa: SLF001
        properties.get_or_add_numId().val = number
        properties.get_or_add_ilvl().val = 0
        paragraph.add_run(xml_text(ask)).add_break()
        paragraph.add_run(xml_text(answer)).bold = True
        paragraph.add_run(xml_text(f"{GAP}{sounds}" if sounds else ""))


def _new_list(file: Any) -> int:
    """Return a number for a list that starts at 1: all of one style count on else."""
    style = file.styles["List Number"].element
    numbering = file.part.numbering_part.element
    same = numbering.num_having_numId(style.pPr.numPr.numId.val)
    number = numbering.add_num(same.abstractNumId.val)
    number.add_lvlOverride(ilvl=0).add_startOverride(1)
    found: int = number.numId
    return found


def _add_marked(file: Any, marked: Marked) -> None:
    underline = _extra("docx.enum.text").WD_UNDERLINE
    lines = {
        Mark.MISSING: underline.DOUBLE,
        Mark.LEARNED: underline.DOTTED,
        Mark.HIDDEN: underline.SINGLE,
    }
    paragraph = file.add_paragraph()
    for text, mark in marked.runs:
        before, after = BRACKETS.get(mark, ("", ""))
        run = paragraph.add_run(xml_text(f"{before}{text}{after}"))
        run.underline = lines.get(mark)


def _add_table(file: Any, table: Table) -> None:
    shared = _extra("docx.shared")
    page = file.sections[0]
    room = page.page_width - page.left_margin - page.right_margin
    widths = [shared.Emu(int(room * share)) for share in _shares(table)]
    made = file.add_table(rows=0, cols=len(widths), style="Table Grid")
    made.autofit = False
    for column, width in zip(made.columns, widths, strict=True):
        column.width = width
    for number, cells in enumerate((table.headings, *table.rows)):
        _add_row(made, cells, widths, is_heading=number == 0)
    # Without it the table stands against the next one, or against running text.
    gap = file.add_paragraph()
    gap.paragraph_format.space_after = shared.Pt(0)
    gap.paragraph_format.line_spacing = shared.Pt(8)


def _add_row(made: Any, cells: tuple[str, ...], widths: list[Any], *, is_heading: bool) -> None:
    element = _extra("docx.oxml").OxmlElement
    points = _extra("docx.shared").Pt
    row = made.add_row()
    properties = row._tr.get_or_add_trPr()  # noqa: SLF001 - python-docx cannot repeat a heading
    properties.append(element("w:cantSplit"))
    if is_heading:
        properties.append(element("w:tblHeader"))
    if any(text and not text.strip("_") for text in cells):
        row.height = _extra("docx.shared").Mm(_ROW_TO_WRITE_IN)
        for cell in row.cells:
            cell.vertical_alignment = _extra("docx.enum.table").WD_ALIGN_VERTICAL.BOTTOM
    for cell, text, width in zip(row.cells, cells, widths, strict=True):
        cell.width = width
        paragraph = cell.paragraphs[0]
        paragraph.paragraph_format.space_after = points(2)
        paragraph.paragraph_format.keep_with_next = is_heading
        paragraph.add_run(xml_text(text)).bold = is_heading or None


def _shares(table: Table) -> list[float]:
    """Share the width out: a place for the longest word of each column, then by length."""
    columns = list(zip(table.headings, *table.rows, strict=True))
    needed = [
        max(len(word) for text in column for word in ["", *text.split()]) for column in columns
    ]
    wanted = [min(max(map(len, column)), _MOST_SIGNS) for column in columns]
    least = [signs + _PADDING for signs in needed]
    more = [max(want - need, 0) + 1 for want, need in zip(wanted, needed, strict=True)]
    free = max(_SIGNS_A_LINE - sum(least), 0)
    signs = [low + free * part / sum(more) for low, part in zip(least, more, strict=True)]
    return [width / sum(signs) for width in signs]
