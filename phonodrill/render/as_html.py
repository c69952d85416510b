"""One HTML page that needs nothing else: no script, no font, no address outside it."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

from phonodrill.render.document import (
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

_STYLE = """
:root { color-scheme: light dark; }
body { font: 1.1rem/1.6 Verdana, Tahoma, sans-serif; margin: 2rem auto; max-width: 50rem;
  padding: 0 1rem; }
h1 { font-size: 1.5rem; } h2 { font-size: 1.15rem; } h3 { font-size: 1rem; }
table { border-collapse: collapse; }
th, td { border-bottom: 1px solid; padding: .25rem .9rem .25rem 0; text-align: left;
  vertical-align: top; }
.words li { display: inline-block; margin-right: 1.5rem; } .words { list-style: none; padding: 0; }
.passage { white-space: pre-wrap; }
mark { background: none; color: inherit; }
mark.missing { border-bottom: 4px double; } mark.missing::before { content: "["; }
mark.missing::after { content: "]"; }
mark.learned { border-bottom: 2px dotted; } mark.learned::before { content: "{"; }
mark.learned::after { content: "}"; }
mark.hidden { border: 1px solid; }
@media print { body { margin: 0; max-width: none; } }
""".strip()


def render(document: Document) -> str:
    """Write the document as a page."""
    parts = [f"<h1>{escape(document.title)}</h1>"]
    if document.about:
        parts.append(f"<p>{escape(document.about)}</p>")
    parts.append(fragment(document.sections))
    content = "\n".join(parts)
    return (
        '<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{escape(document.title)}</title>\n<style>\n{_STYLE}\n</style>\n</head>\n"
        f"<body>\n<main>\n{content}\n</main>\n</body>\n</html>\n"
    )


def fragment(
    sections: Sequence[Section], *, hide_answers: bool = False, scrolls: bool = False
) -> str:
    """Write sections as a part of a page that has its title already.

    Args:
        sections: in order.
        hide_answers: answers of questions are folded away, to open one by one, and so is
            what stands behind the questions, as it may name an answer.
        scrolls: tables and drawings too wide for the page scroll by themselves, by keyboard, too.
    """
    parts = []
    folds = False
    for number, section in enumerate(sections, 1):
        tag = f"h{section.level + 1}"
        heading = f"<{tag}>{escape(section.heading)}</{tag}>\n" if section.heading else ""
        body = _body(section.body, hide=hide_answers)
        if scrolls and isinstance(section.body, Picture):
            label = escape(section.heading or f"Picture {number}")
            body = (
                f'<figure class="chart scroll" tabindex="0" role="region" aria-label="{label}">\n'
                f"{section.body.svg}</figure>"
            )
        if scrolls and isinstance(section.body, Table):
            label = f"Table {number}: {section.heading}" if section.heading else f"Table {number}"
            body = (
                f'<div class="scroll" tabindex="0" role="region" aria-label="{escape(label)}">\n'
                f"{body}\n</div>"
            )
        if folds:
            body = f"<details><summary>Show</summary>\n{body}\n</details>"
        folds = folds or (hide_answers and isinstance(section.body, Questions))
        parts.append(f"<section>\n{heading}{body}\n</section>")
    return "\n".join(parts)


def _body(body: Body, *, hide: bool) -> str:
    if isinstance(body, Table):
        return _table(body)
    if isinstance(body, Questions):
        lines = "\n".join(_question(*line, hide=hide) for line in body.lines)
        return f'<ol class="questions">\n{lines}\n</ol>'
    if isinstance(body, Words):
        words = "\n".join(f"<li>{escape(word)}</li>" for word in body.words)
        return f'<ul class="words">\n{words}\n</ul>'
    if isinstance(body, Picture):
        return f"<figure>\n{body.svg}</figure>"
    return f'<p class="passage">{_runs(body)}</p>'


def _question(ask: str, answer: str, sounds: str, *, hide: bool) -> str:
    said = f"<strong>{escape(answer)}</strong> {escape(sounds)}"
    if hide:
        return f"<li>{escape(ask)}<details><summary>Answer</summary>{said}</details></li>"
    return f"<li>{escape(ask)}<br>{said}</li>"


def _table(table: Table) -> str:
    # A heading without text would be read out as an empty one.
    headings = "".join(
        f'<th scope="col">{escape(heading)}</th>' if heading else "<td></td>"
        for heading in table.headings
    )
    rows = (
        "<tr>" + "".join(f"<td>{escape(cell)}</td>" for cell in row) + "</tr>" for row in table.rows
    )
    body = "\n".join(rows)
    return f"<table>\n<thead><tr>{headings}</tr></thead>\n<tbody>\n{body}\n</tbody>\n</table>"


def _runs(marked: Marked) -> str:
    return "".join(
        escape(text) if mark is Mark.NONE else f'<mark class="{mark}">{escape(text)}</mark>'
        for text, mark in marked.runs
    )
