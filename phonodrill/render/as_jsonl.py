"""JSON lines: one record a line, for results too long to hold."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Mapping
from typing import Any


def lines(records: Iterable[Mapping[str, Any]]) -> Iterator[str]:
    """Write records one by one, each a line of JSON."""
    for record in records:
        yield json.dumps(record, ensure_ascii=False) + "\n"
