"""A terminal that can show weight and tables: the same document through rich."""

from __future__ import annotations

import io

from rich.columns import Columns
from rich.console import Console, RenderableType
from rich.table import Table as RichTable
from rich.text import Text

from phonodrill.render.document import Body, Document, Marked, Picture, Table, Words


def render(document: Document, width: int) -> str:
    """Write the document with terminal codes, for a terminal ``width`` columns wide."""
    out = io.StringIO()
    console = Console(
        file=out, force_terminal=True, width=width, no_color=True, color_system="standard"
    )
    console.print(Text(document.title, style="bold"))
    if document.about:
        console.print(Text(document.about, style="dim"))
    for section in document.sections:
        console.print()
        if section.heading:
            console.print(Text(section.heading, style="bold"))
        console.print(_body(section.body))
    return out.getvalue()


def _body(body: Body) -> RenderableType:
    if isinstance(body, (Marked, Picture)):
        return Text(body.plain())
    if isinstance(body, Words):
        return Columns([Text(word) for word in body.words], padding=(0, 3))
    table = RichTable(box=None, padding=(0, 2, 0, 0), show_header=isinstance(body, Table))
    if isinstance(body, Table):
        for heading in body.headings:
            table.add_column(Text(heading, style="underline"))
        for row in body.rows:
            table.add_row(*map(Text, row))
        return table
    table.add_column(justify="right", no_wrap=True)
    table.add_column()
    for number, (ask, answer, sounds) in enumerate(body.lines, 1):
        line = Text(f"{answer}", style="bold")
        table.add_row(Text(f"{number}."), Text(ask))
        table.add_row(Text("→"), line.append(f"   {sounds}", style="not bold dim"))
    return table
