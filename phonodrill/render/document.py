"""What every renderer is given: a small tree of text, and the data behind it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from enum import StrEnum
from typing import Any, NamedTuple


class Table(NamedTuple):
    """Rows under headings."""

    headings: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


class Questions(NamedTuple):
    """Numbered lines to say, each with its answer and how both sound."""

    lines: tuple[tuple[str, str, str], ...]


class Words(NamedTuple):
    """Words to read or sort, several a line."""

    words: tuple[str, ...]


class Mark(StrEnum):
    """How a run of text is set off; never by color alone."""

    NONE = ""
    MISSING = "missing"
    LEARNED = "learned"
    HIDDEN = "hidden"


BRACKETS = {Mark.MISSING: ("[", "]"), Mark.LEARNED: ("{", "}"), Mark.HIDDEN: ("(", ")")}
"""The signs around a marked run where there is only plain text."""


class Marked(NamedTuple):
    """Running text in which some words are set off.

    Attributes:
        runs: text with its mark; joined they are the whole.
    """

    runs: tuple[tuple[str, Mark], ...]

    def plain(self) -> str:
        """The text with brackets for marks."""
        parts = []
        for text, mark in self.runs:
            before, after = BRACKETS.get(mark, ("", ""))
            parts.append(f"{before}{text}{after}")
        return "".join(parts)


class Picture(NamedTuple):
    """A drawing, where the format can show one.

    Attributes:
        svg: the drawing; it tells by itself what is in it.
        told: the same in a line, where there is only text.
    """

    svg: str
    told: str

    def plain(self) -> str:
        """What is told instead of the drawing."""
        return self.told


Body = Table | Questions | Words | Marked | Picture


class Section(NamedTuple):
    """A part with a heading.

    Attributes:
        heading: may be empty.
        body: what stands under it.
        level: 1, or 2 for a part of the section before.
    """

    heading: str
    body: Body
    level: int = 1


class Document(NamedTuple):
    """One result, ready for every format.

    Attributes:
        title: what it is.
        about: one line on how it was chosen.
        sections: for people to read.
        data: the JSON contract, without the version; one of the types of
            :mod:`phonodrill.render.fields`.
        records: flat rows for a spreadsheet, all with the same keys.
        plain: what is written as text instead, for a file that commands read again.
    """

    title: str
    about: str
    sections: tuple[Section, ...]
    data: Mapping[str, Any]
    records: Sequence[Mapping[str, Any]]
    plain: str = ""


def counted(number: int, noun: str) -> str:
    """Write a number with its noun.

    >>> counted(1, "item"), counted(8, "item")
    ('1 item', '8 items')
    """
    return f"{number:,} {noun}" + "s" * (number != 1)
