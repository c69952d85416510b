"""Write lessons: as text of some kind, as slides, or as a pack of pages in a PDF."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import NamedTuple

from phonodrill.cli.deliver import deliver, is_named
from phonodrill.cli.options import Format
from phonodrill.errors import PhonodrillError
from phonodrill.lesson.tree import Lesson
from phonodrill.paper.pack_parts import FOR_STUDENTS, Part, parse_parts
from phonodrill.paper.page import Paper
from phonodrill.render.views import lesson as view
from phonodrill.services.lesson_files import write_pack
from phonodrill.whole_file import write_whole


class Wish(NamedTuple):
    """How lessons are to be written.

    Attributes:
        format_: of text; None to go by the name of the file.
        out: the file; None for the screen.
        student: without answers.
        paper: size of the sheets.
        parts: those of a pack.
    """

    format_: Format | None
    out: Path | None
    student: bool
    paper: Paper
    parts: Sequence[Part]

    @property
    def is_pack(self) -> bool:
        """Whether pages for paper are wanted."""
        return is_named(self.out, self.format_, ".pdf")


def wish_for(
    format_: Format | None, out: Path | None, paper: Paper | None, parts: str, *, student: bool
) -> Wish:
    """Take together how lessons are to be written.

    Raises:
        PhonodrillError: if options do not go together, or a part is not known.
    """
    if (paper or parts) and not is_named(out, format_, ".pdf"):
        option = "--paper" if paper else "--parts"
        raise PhonodrillError(f"{option} is for a PDF", f"{option} ... --out NAME.pdf")
    if student and parts:
        raise PhonodrillError("--student and --parts both choose", "one of the two")
    chosen = FOR_STUDENTS if student else parse_parts(parts)
    return Wish(format_, out, student, paper or Paper.LETTER, chosen)


def deliver_lessons(lessons: Sequence[Lesson], wanted: Wish) -> None:
    """Write lessons to the screen or a file.

    Raises:
        PhonodrillError: if the file cannot be written, a package for PDF is missing, or
            the lesson has none of the parts.
    """
    if not wanted.is_pack or wanted.out is None:

        def slides() -> bytes:
            from phonodrill.render import as_pptx

            return as_pptx.render(lessons, student=wanted.student)

        document = view.document(lessons, student=wanted.student)
        deliver(document, wanted.format_, wanted.out, slides=slides)
        return
    write_whole(wanted.out, write_pack(lessons, wanted.parts, wanted.paper))
