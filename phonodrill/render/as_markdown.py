"""Markdown, for notes and web pages."""

from __future__ import annotations

import re

from phonodrill.render.document import Body, Document, Marked, Picture, Questions, Table

_LINE_END = re.compile(r"(?<=[^\n])\n(?=[^\n])")
"""Which Markdown takes for a space unless two spaces stand before it."""


def render(document: Document) -> str:
    """Write the document as Markdown."""
    parts = [f"# {escape(document.title)}"]
    if document.about:
        parts.append(escape(document.about))
    for section in document.sections:
        if section.heading:
            parts.append(f"#{'#' * section.level} {escape(section.heading)}")
        parts.append(_body(section.body))
    return "\n\n".join(parts) + "\n"


def escape(text: str) -> str:
    r"""Escape what Markdown would read as markup.

    >>> escape("a_e *or* |")
    'a\\_e \\*or\\* \\|'
    """
    return re.sub(r"([\\`*_{}\[\]<>#|])", r"\\\1", text)


def _body(body: Body) -> str:
    if isinstance(body, Table):
        rows = [body.headings, tuple("---" for _ in body.headings), *body.rows]
        return "\n".join(f"| {' | '.join(map(_cell, row))} |" for row in rows)
    if isinstance(body, Questions):
        return "\n".join(
            f"{number}. {escape(ask)}\n   **{escape(answer)}** {escape(sounds)}"
            for number, (ask, answer, sounds) in enumerate(body.lines, 1)
        )
    if isinstance(body, (Marked, Picture)):
        return _LINE_END.sub("  \n", escape(body.plain()))
    return ", ".join(map(escape, body.words))


def _cell(text: str) -> str:
    return text if text == "---" else escape(text)
