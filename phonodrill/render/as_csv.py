"""CSV, for spreadsheets."""

from __future__ import annotations

import csv
import io
from typing import Any

from phonodrill.render.document import Document


def render(document: Document) -> str:
    """Write the document's records as CSV with a heading line (RFC 4180)."""
    out = io.StringIO()
    names = list(document.records[0]) if document.records else []
    writer = csv.DictWriter(out, names, lineterminator="\r\n")
    writer.writeheader()
    for record in document.records:
        writer.writerow({name: _cell(value) for name, value in record.items()})
    return out.getvalue()


def _cell(value: Any) -> Any:
    if isinstance(value, (list, tuple)):
        return "; ".join(map(str, value))
    return value
