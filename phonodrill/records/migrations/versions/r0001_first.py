"""The first tables."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None


def upgrade() -> None:
    """Make the tables."""
    op.create_table(
        "groups",
        sa.Column("id", sa.Integer, nullable=False),
        sa.Column("name", sa.Text, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_groups"),
        sa.UniqueConstraint("name", name="uq_groups_name"),
    )
    op.create_table(
        "students",
        sa.Column("id", sa.Integer, nullable=False),
        sa.Column("group_id", sa.Integer, nullable=False),
        sa.Column("code", sa.Text, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_students"),
        sa.ForeignKeyConstraint(
            ["group_id"], ["groups.id"], name="fk_students_group_id", ondelete="CASCADE"
        ),
        sa.UniqueConstraint("group_id", "code", name="uq_students_group_id_code"),
    )
    op.create_table(
        "checks",
        sa.Column("id", sa.Integer, nullable=False),
        sa.Column("key", sa.Text, nullable=False),
        sa.Column("group_id", sa.Integer, nullable=False),
        sa.Column("focus", sa.Text, nullable=False),
        sa.Column("date", sa.Text, nullable=False),
        sa.Column("band", sa.Integer, nullable=False),
        sa.Column("seed", sa.BigInteger, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_checks"),
        sa.ForeignKeyConstraint(
            ["group_id"], ["groups.id"], name="fk_checks_group_id", ondelete="CASCADE"
        ),
        sa.UniqueConstraint("key", name="uq_checks_key"),
    )
    op.create_index("ix_checks_group_id_date", "checks", ["group_id", "date"])
    op.create_table(
        "items",
        sa.Column("id", sa.Integer, nullable=False),
        sa.Column("check_id", sa.Integer, nullable=False),
        sa.Column("position", sa.Integer, nullable=False),
        *(
            sa.Column(name, sa.Text, nullable=False)
            for name in ("how", "ask", "word", "answer", "shows", "skills")
        ),
        sa.PrimaryKeyConstraint("id", name="pk_items"),
        sa.ForeignKeyConstraint(
            ["check_id"], ["checks.id"], name="fk_items_check_id", ondelete="CASCADE"
        ),
        sa.UniqueConstraint("check_id", "position", name="uq_items_check_id_position"),
    )
    op.create_table(
        "results",
        sa.Column("student_id", sa.Integer, nullable=False),
        sa.Column("item_id", sa.Integer, nullable=False),
        sa.Column("is_right", sa.Boolean, nullable=False),
        sa.Column("said", sa.Text, nullable=False),
        sa.Column("at", sa.BigInteger, nullable=False),
        sa.PrimaryKeyConstraint("student_id", "item_id", name="pk_results"),
        sa.ForeignKeyConstraint(
            ["student_id"], ["students.id"], name="fk_results_student_id", ondelete="CASCADE"
        ),
        sa.ForeignKeyConstraint(
            ["item_id"], ["items.id"], name="fk_results_item_id", ondelete="CASCADE"
        ),
        sqlite_with_rowid=False,
    )
    op.create_index("ix_results_item_id", "results", ["item_id"])
    op.create_table(
        "entries",
        sa.Column("entry", sa.Text, nullable=False),
        sa.Column("at", sa.BigInteger, nullable=False),
        sa.PrimaryKeyConstraint("entry", name="pk_entries"),
    )
    op.create_index("ix_entries_at", "entries", ["at"])
