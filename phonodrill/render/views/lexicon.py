"""How the sources and counts of the lexicon are shown."""

from __future__ import annotations

from collections.abc import Mapping

from phonodrill.render.document import Document, Section, Table


def document(
    sources: list[tuple[str, str, str, str, str]],
    counts: Mapping[str, int],
    disagreements: tuple[tuple[str, ...], ...],
) -> Document:
    """Show where the words come from, how many there are, and what differs."""
    checks = Table(("word", "base", "expected", "found"), disagreements)
    names = ("name", "version", "license", "credit", "used_for")
    records = [dict(zip(names, source, strict=True)) for source in sources]
    shown = tuple((name, f"{number:,}") for name, number in counts.items())
    sections = [
        Section(
            "Sources",
            Table(
                ("source", "version", "license", "used for"),
                tuple((s[0], s[1], s[2], s[4]) for s in sources),
            ),
        ),
        Section("Credits", Table(("source", "credit"), tuple((s[0], s[3]) for s in sources))),
        Section("Counts", Table(("what", "how many"), shown)),
    ]
    if checks.rows:
        sections.append(Section("Forms that are not base + ending", checks))
    data = {
        "sources": records,
        "counts": dict(counts),
        "disagreements": [dict(zip(checks.headings, row, strict=True)) for row in checks.rows],
    }
    return Document("The lexicon", "", tuple(sections), data, records)
