"""CSV, for spreadsheets."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from phonodrill.render.document import Document

ENCODING = "utf-8-sig"
"""Spreadsheets take CSV for UTF-8 only with a byte order mark."""


def render(document: Document) -> str:
    """Write the document's records as CSV with a heading line (RFC 4180)."""
    out = io.StringIO()
    names = list(document.records[0]) if document.records else []
    writer = csv.DictWriter(out, names, lineterminator="\r\n")
    writer.writeheader()
    for record in document.records:
        writer.writerow({name: _cell(value) for name, value in record.items()})
    return out.getvalue()


def lines(records: Iterable[Mapping[str, Any]]) -> Iterator[str]:
    """Write records one by one, the heading line first: for results too long to hold."""
    for number, record in enumerate(records):
        out = io.StringIO()
        writer = csv.DictWriter(out, list(record), lineterminator="\r\n")
        if number == 0:
            writer.writeheader()
        writer.writerow({name: _cell(value) for name, value in record.items()})
        yield out.getvalue()


def _cell(value: Any) -> Any:
    if isinstance(value, (list, tuple)):
        return "; ".join(map(str, value))
    return value
