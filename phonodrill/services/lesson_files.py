"""Lessons as files: a pack for paper, slides, a Word file, tables and data."""

from __future__ import annotations

import re
from collections.abc import Sequence
from enum import StrEnum

from phonodrill.errors import PhonodrillError
from phonodrill.lesson.tree import Lesson
from phonodrill.paper.pack_parts import Part
from phonodrill.paper.page import Paper


class Kind(StrEnum):
    """A kind of file, by the ending of its name."""

    PDF = "pdf"
    PPTX = "pptx"
    DOCX = "docx"
    MD = "md"
    CSV = "csv"
    JSON = "json"


def write_file(
    lessons: Sequence[Lesson], kind: Kind, *, student: bool, paper: Paper, parts: Sequence[Part]
) -> bytes:
    """Write lessons as a file.

    Args:
        lessons: one a day, in order.
        kind: of the file.
        student: without answers; for a PDF the parts say it.
        paper: size of the sheets of a PDF.
        parts: of a PDF.

    Raises:
        PhonodrillError: if a package is missing, or the lesson has none of the parts.
    """
    if kind is Kind.PDF:
        return write_pack(lessons, parts, paper)
    if kind is Kind.PPTX:
        from phonodrill.render import as_pptx

        return as_pptx.render(lessons, student=student)
    from phonodrill.render.views import lesson as view

    document = view.document(lessons, student=student)
    if kind is Kind.DOCX:
        from phonodrill.render import as_docx

        return as_docx.render(document)
    from phonodrill.render import as_csv, as_json, as_markdown

    if kind is Kind.CSV:
        return as_csv.render(document).encode(as_csv.ENCODING)
    text = as_json.render(document) if kind is Kind.JSON else as_markdown.render(document)
    return text.encode()


def write_pack(lessons: Sequence[Lesson], parts: Sequence[Part], paper: Paper) -> bytes:
    """Draw the pages of lessons as one PDF.

    Raises:
        PhonodrillError: if a package is missing, or the lesson has none of the parts.
    """
    from phonodrill.render import as_pdf
    from phonodrill.render.views.pack import pages_of

    first = lessons[0]
    pages = pages_of(lessons, parts)
    if not pages:
        raise PhonodrillError(
            f"a lesson of {first.request.minutes} minutes has none of these parts",
            "more --minutes, or other --parts",
        )
    title = f"{first.title} (seed {first.request.seed})"
    return as_pdf.render(pages, title=title, paper=paper, footer=first.caution)


def file_name(lesson: Lesson, kind: Kind, *, student: bool) -> str:
    """Name a file after a lesson, in letters that every system takes.

    Args:
        lesson: the first one in it.
        kind: of the file.
        student: whether it is for students.
    """
    request = lesson.request
    focus = re.sub(r"[^a-z0-9]+", "-", request.focus.lower()).strip("-") or "sound"
    for_students = "-students" if student else ""
    return f"lesson-{focus}-{request.minutes}-min-seed-{request.seed}{for_students}.{kind}"
