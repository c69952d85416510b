"""Read a table of cases: one row is one named test."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

CASES = Path(__file__).parent / "cases"


def cases(name: str) -> list[Any]:
    lines = [
        line.split("\t")
        for line in (CASES / name).read_text("utf-8").splitlines()
        if line and not line.startswith("#")
    ]
    header, *rows = lines
    for row in rows:
        assert len(row) == len(header), f"{name}: {row}"
    return [pytest.param(*row, id=" ".join(row[:2])) for row in rows]
