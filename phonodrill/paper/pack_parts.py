"""The parts of a lesson on paper."""

from __future__ import annotations

from collections.abc import Sequence
from enum import StrEnum

from phonodrill.errors import PhonodrillError


class Part(StrEnum):
    """A part of a lesson on paper, in the order of the pack."""

    SCRIPT = "script"
    STUDENT = "student"
    CARDS = "cards"
    MAT = "mat"
    BOXES = "boxes"
    DICTATION = "dictation"
    CHECK = "check"
    KEY = "key"


FOR_STUDENTS = (Part.STUDENT, Part.MAT, Part.BOXES, Part.DICTATION)
"""The parts that show no answer."""


def parse_parts(text: str) -> Sequence[Part]:
    """Read names of parts, parted by commas; nothing means all.

    Raises:
        PhonodrillError: if there is no such part.

    >>> [str(part) for part in parse_parts("key, script")]
    ['key', 'script']
    """
    names = [name.strip() for name in text.split(",") if name.strip()]
    for name in names:
        if name not in tuple(Part):
            raise PhonodrillError(f"no part {name!r} of a lesson", f"--parts {','.join(Part)}")
    return [Part(name) for name in names] or list(Part)
