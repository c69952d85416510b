"""The tables of the records, the same in SQLite and in PostgreSQL.

A result is one short row under its student and its item, so what a group answered lately
is read from a few places that lie side by side; running tallies beside the results would
have to be kept true when one is undone, corrected or erased (docs/hosting.md has the
figures). The skills of an item are text in its row: they are read with it, never sought.
"""

from __future__ import annotations

from sqlalchemy import (
    BigInteger,
    Boolean,
    Column,
    ForeignKey,
    Index,
    Integer,
    MetaData,
    PrimaryKeyConstraint,
    Table,
    Text,
    UniqueConstraint,
)

SCHEMA = "0001"
"""The revision of ``migrations/`` that these tables are at."""

METADATA = MetaData(
    naming_convention={
        "ix": "ix_%(table_name)s_%(column_0_N_name)s",
        "uq": "uq_%(table_name)s_%(column_0_N_name)s",
        "fk": "fk_%(table_name)s_%(column_0_N_name)s",
        "pk": "pk_%(table_name)s",
    }
)

GROUPS = Table(
    "groups",
    METADATA,
    Column("id", Integer, primary_key=True),
    Column("name", Text, nullable=False, unique=True),
)

STUDENTS = Table(
    "students",
    METADATA,
    Column("id", Integer, primary_key=True),
    Column("group_id", ForeignKey("groups.id", ondelete="CASCADE"), nullable=False),
    Column("code", Text, nullable=False),
    UniqueConstraint("group_id", "code"),
)

CHECKS = Table(
    "checks",
    METADATA,
    Column("id", Integer, primary_key=True),
    Column("key", Text, nullable=False, unique=True),
    Column("group_id", ForeignKey("groups.id", ondelete="CASCADE"), nullable=False),
    Column("focus", Text, nullable=False),
    Column("date", Text, nullable=False),
    Column("band", Integer, nullable=False),
    Column("seed", BigInteger, nullable=False),
    Index(None, "group_id", "date"),
)

ITEMS = Table(
    "items",
    METADATA,
    Column("id", Integer, primary_key=True),
    Column("check_id", ForeignKey("checks.id", ondelete="CASCADE"), nullable=False),
    Column("position", Integer, nullable=False),
    Column("how", Text, nullable=False),
    Column("ask", Text, nullable=False),
    Column("word", Text, nullable=False),
    Column("answer", Text, nullable=False),
    Column("shows", Text, nullable=False),
    Column("skills", Text, nullable=False),
    UniqueConstraint("check_id", "position"),
)

RESULTS = Table(
    "results",
    METADATA,
    Column("student_id", ForeignKey("students.id", ondelete="CASCADE"), nullable=False),
    Column("item_id", ForeignKey("items.id", ondelete="CASCADE"), nullable=False, index=True),
    Column("is_right", Boolean, nullable=False),
    Column("said", Text, nullable=False),
    Column("at", BigInteger, nullable=False),
    PrimaryKeyConstraint("student_id", "item_id"),
    # The rows lie in the order of their key: those of a student side by side.
    sqlite_with_rowid=False,
)

ENTRIES = Table(
    "entries",
    METADATA,
    Column("entry", Text, primary_key=True),
    Column("at", BigInteger, nullable=False, index=True),
)
"""Acts of entering of the last days, so that one that is sent twice counts once."""
