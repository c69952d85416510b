"""How a teacher's own words are shown."""

from __future__ import annotations

from phonodrill.overlay import Overlay
from phonodrill.render.document import Document, Section, Table, counted


def document(overlay: Overlay, place: str) -> Document:
    """Show a teacher's words and where they are kept.

    Args:
        overlay: the words.
        place: the file, for the line about them.
    """
    records = [
        {"word": word, "action": rule.action, "band": rule.band if rule.action == "add" else ""}
        for word, rule in sorted(overlay.rules.items())
    ]
    rows = tuple(tuple(str(value) for value in record.values()) for record in records)
    return Document(
        "Your own words",
        f"{counted(len(records), 'word')}, kept in {place}",
        (Section("", Table(("word", "what", "band"), rows)),) if rows else (),
        {"words": records},
        records,
    )
