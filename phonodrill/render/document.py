"""What every renderer is given: a small tree of text, and the data behind it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True, slots=True)
class Table:
    """Rows under headings."""

    headings: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class Questions:
    """Numbered lines to say, each with its answer and how both sound."""

    lines: tuple[tuple[str, str, str], ...]


@dataclass(frozen=True, slots=True)
class Words:
    """Words to read or sort, several a line."""

    words: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Section:
    """A part with a heading; the heading may be empty."""

    heading: str
    body: Table | Questions | Words


@dataclass(frozen=True, slots=True)
class Document:
    """One result, ready for every format.

    Attributes:
        title: what it is.
        about: one line on how it was chosen.
        sections: for people to read.
        data: the JSON contract, without the version.
        records: flat rows for a spreadsheet, all with the same keys.
    """

    title: str
    about: str
    sections: tuple[Section, ...]
    data: dict[str, Any]
    records: Sequence[dict[str, Any]]
