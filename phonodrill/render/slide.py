"""What a renderer of slides is given."""

from __future__ import annotations

from enum import Enum
from typing import NamedTuple

from phonodrill.render.document import Table


class Size(Enum):
    """How large a line is, in points at most; a long one is set smaller until it fits."""

    WORD = 96
    TEXT = 44
    REMARK = 28


class Shown(NamedTuple):
    """A line to show."""

    text: str
    size: Size = Size.TEXT


class Slide(NamedTuple):
    """One slide: one idea.

    Attributes:
        title: at the top, small; large and alone where nothing else is shown.
        lines: what is shown, one under another.
        table: shown under the lines; an empty cell is one to fill.
        notes: what the teacher says, and the answer; only the speaker sees them.
        is_answer: whether it gives away the answer of the slide before.
    """

    title: str
    lines: tuple[Shown, ...] = ()
    table: Table | None = None
    notes: str = ""
    is_answer: bool = False
