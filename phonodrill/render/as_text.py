"""Plain text, for pipes and files."""

from __future__ import annotations

import textwrap
import unicodedata

from phonodrill.render.document import Body, Document, Marked, Picture, Questions, Table

WIDTH = 80


def render(document: Document) -> str:
    """Write the document as plain text, 80 columns where words allow."""
    if document.plain:
        return document.plain
    parts = [document.title]
    if document.about:
        parts.append(document.about)
    for section in document.sections:
        body = _body(section.body)
        parts.append(f"{section.heading}\n{body}" if section.heading else body)
    return "\n\n".join(parts) + "\n"


def _body(body: Body) -> str:
    if isinstance(body, Table):
        return table(body)
    if isinstance(body, Questions):
        return _questions(body)
    if isinstance(body, (Marked, Picture)):
        return "\n".join(map(_wrapped, body.plain().splitlines()))
    return textwrap.fill("   ".join(body.words), WIDTH, break_long_words=False)


def _wrapped(line: str) -> str:
    return textwrap.fill(line, WIDTH, break_long_words=False, break_on_hyphens=False)


def _questions(questions: Questions) -> str:
    longest = max((width(answer) for _, answer, _ in questions.lines), default=0)
    lines = []
    for number, (ask, answer, sounds) in enumerate(questions.lines, 1):
        lines.append(f"{number:>2}. {ask}")
        lines.append(f"    → {pad(answer, longest)}   {sounds}".rstrip())
    return "\n".join(lines)


def table(body: Table) -> str:
    """Write a table in aligned columns, a rule under the headings."""
    rows = [body.headings, *body.rows]
    widths = [max(width(row[i]) for row in rows) for i in range(len(body.headings))]
    rule = tuple("-" * width for width in widths)
    lines = (
        "  ".join(pad(cell, size) for cell, size in zip(row, widths, strict=True)).rstrip()
        for row in [body.headings, rule, *body.rows]
    )
    return "\n".join(lines)


def width(text: str) -> int:
    """Count the columns a text takes: combining marks take none."""
    return sum(not unicodedata.combining(char) for char in text)


def pad(text: str, size: int) -> str:
    """Fill a text with spaces to ``size`` columns."""
    return text + " " * (size - width(text))
