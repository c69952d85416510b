"""Imports point one way: records are built on lessons, never the other way round."""

from __future__ import annotations

import re
from pathlib import Path

import phonodrill

PACKAGE = Path(phonodrill.__file__).parent
DATABASE = re.compile(r"^\s*(?:from|import) (?:sqlalchemy|alembic|psycopg|argon2)\b", re.MULTILINE)


def test_nothing_below_knows_of_records() -> None:
    for room in (
        "lesson",
        "tasks",
        "endings",
        "lexicon",
        "graphemes",
        "reading",
        "sounds",
        "taught",
    ):
        for path in (PACKAGE / room).rglob("*.py"):
            assert "phonodrill.records" not in path.read_text("utf-8"), path


def test_only_the_store_knows_of_a_database() -> None:
    for path in PACKAGE.rglob("*.py"):
        if path.parent.name != "versions" and path.parent != PACKAGE / "records":
            assert not DATABASE.search(path.read_text("utf-8")), path
