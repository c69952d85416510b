"""The file of records: who can read it, and what is refused."""

from __future__ import annotations

import shutil
import sqlite3
import stat
from pathlib import Path

import pytest

from phonodrill import PhonodrillError
from phonodrill.records.database import Database
from phonodrill.records.kept import Counts, Result
from phonodrill.records.migrate import MIGRATIONS, bring_up_to_date
from phonodrill.records.place import Place, find_place
from phonodrill.records.store import Store
from phonodrill.records.tables import SCHEMA
from tests.records.conftest import CODES, GROUP, check_of

SECOND = '''
"""A revision of a later version."""
import sqlalchemy as sa
from alembic import op
revision = "9999"
down_revision = "{before}"
def upgrade():
    op.add_column("students", sa.Column("note", sa.Text, nullable=False, server_default="-"))
'''


def fill(path: Path) -> str:
    with Store(str(path)) as store:
        store.add_group(GROUP, CODES)
        key = store.keep_check(check_of(tuple(f"word{n}" for n in range(8)))).key
        for position in range(1, 9):
            for code in CODES:
                store.enter_result(key, Result(position, code, right=False, said="torch"))
    return key


def mode(path: Path) -> int:
    return stat.S_IMODE(path.stat().st_mode)


def test_only_the_user_can_read_the_default_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path))
    monkeypatch.delenv("PHONODRILL_DATABASE", raising=False)
    path = find_place().path
    assert path
    assert tmp_path in path.parents
    with Store() as store:
        store.add_group(GROUP, CODES)
        there = {one.name: mode(one) for one in path.parent.iterdir()}
        assert set(there) == {"records.sqlite", "records.sqlite-wal", "records.sqlite-shm"}
        assert set(there.values()) == {0o600}
    assert mode(path.parent) == 0o700
    path.chmod(0o644)
    with Store():
        assert mode(path) == 0o600


def test_the_settings_of_the_file(tmp_path: Path) -> None:
    with Store(str(tmp_path / "r.sqlite")) as store, store.database.raw() as connection:
        found = {
            name: connection.execute(f"PRAGMA {name}").fetchone()[0]
            for name in ("journal_mode", "synchronous", "foreign_keys", "secure_delete")
        }
        assert found == {
            "journal_mode": "wal",
            "synchronous": 2,
            "foreign_keys": 1,
            "secure_delete": 1,
        }
        assert connection.execute("PRAGMA busy_timeout").fetchone()[0] >= 5000


def refused(path: Path) -> PhonodrillError:
    before = path.read_bytes() if path.is_file() else b""
    with pytest.raises(PhonodrillError) as raised:
        Store(str(path))
    assert raised.value.hint
    assert "\n" not in raised.value.message
    assert not path.is_file() or path.read_bytes() == before
    return raised.value


def test_what_is_no_file_of_records_is_refused(tmp_path: Path) -> None:
    text = tmp_path / "notes.txt"
    text.write_text("ferries and gulls\n" * 100)
    assert "no file of records" in refused(text).message
    assert "is a folder" in refused(tmp_path).message
    assert "cannot open" in refused(tmp_path / "none" / "records.sqlite").message
    with pytest.raises(PhonodrillError, match="is not there"):
        Store(str(tmp_path / "none.sqlite"), must_exist=True)
    other = tmp_path / "other.sqlite"
    connection = sqlite3.connect(other)
    connection.execute("PRAGMA journal_mode = WAL")
    connection.execute("CREATE TABLE ships (name)")
    connection.close()
    assert "something else than records" in refused(other).message


@pytest.mark.parametrize("share", [0.1, 0.5, 0.9])
def test_a_file_cut_short_is_refused(tmp_path: Path, share: float) -> None:
    path = tmp_path / "records.sqlite"
    fill(path)
    whole = path.read_bytes()
    path.write_bytes(whole[: int(len(whole) * share)])
    error = refused(path)
    assert "is damaged" in error.message
    assert "restore" in error.hint


def test_a_file_with_a_spoiled_page_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "records.sqlite"
    fill(path)
    content = bytearray(path.read_bytes())
    for start in range(4096, len(content), 4096):
        content[start : start + 64] = b"\xff" * 64
    path.write_bytes(content)
    assert "is damaged" in refused(path).message


def test_a_newer_file_is_refused_and_stays_as_it_is(tmp_path: Path) -> None:
    path = tmp_path / "records.sqlite"
    fill(path)
    connection = sqlite3.connect(path)
    connection.execute("UPDATE alembic_version SET version_num = '9999'")
    connection.commit()
    connection.close()
    error = refused(path)
    assert "newer phonodrill (its tables are 9999)" in error.message
    assert error.hint == "install phonodrill again, from its newer folder: python -m pip install ."


def test_an_address_that_is_none(monkeypatch: pytest.MonkeyPatch) -> None:
    for text in ("mysql://office:secret@db/harbor", "postgresql://office:secret@[db/harbor"):
        monkeypatch.setenv("PHONODRILL_DATABASE", text)
        with pytest.raises(PhonodrillError) as raised:
            Store()
        assert "secret" not in raised.value.message + raised.value.hint


def test_a_server_that_is_not_there(tmp_path: Path) -> None:
    with pytest.raises(PhonodrillError) as raised:
        Store(f"postgresql+psycopg://office:secret@/harbor?host={tmp_path}")
    assert raised.value.message == "cannot work with the database of PHONODRILL_DATABASE"


def test_every_earlier_schema_is_brought_up_to_date_with_its_data(address: str) -> None:
    """From each revision there is: data put in at the first come through to the last."""
    from alembic.script import ScriptDirectory

    revisions = [one.revision for one in ScriptDirectory(str(MIGRATIONS)).walk_revisions()]
    assert revisions[0] == SCHEMA
    database = Database(find_place(address))
    for revision in reversed(revisions):
        bring_up_to_date(database, to=revision)
        if revision == revisions[-1]:
            with database.writing() as connection:
                for statement in FIRST_DATA:
                    connection.exec_driver_sql(statement)
    database.close()
    with Store(address) as store:
        assert store.counts() == Counts(1, 1, 1, 1)
        (answer,) = store.answers(GROUP)
        assert (answer.student, answer.said, answer.asked.word) == ("A", "torch", "torches")
        assert answer.asked.skills[0].name == "ɪz"


FIRST_DATA = (
    f"INSERT INTO groups (id, name) VALUES (1, '{GROUP}')",
    "INSERT INTO students (id, group_id, code) VALUES (1, 1, 'A')",
    (
        "INSERT INTO checks (id, key, group_id, focus, date, band, seed)"
        " VALUES (1, '12345678', 1, 'es,ies', '2026-11-25', 2, 5)"
    ),
    (
        "INSERT INTO items (id, check_id, position, how, ask, word, answer, shows, skills) VALUES"
        " (1, 1, 1, 'say', 'Read it.', 'torches', '/ĭz/', 'reads', '[[\"ending sound\", \"ɪz\"]]')"
    ),
    (
        "INSERT INTO results (student_id, item_id, is_right, said, at)"
        " VALUES (1, 1, FALSE, 'torch', 1764000000)"
    ),
)


def test_an_older_database_is_changed_where_it_is(address: str, tmp_path: Path) -> None:
    """A revision added to a copy of ours stands for a later version of phonodrill."""
    later = tmp_path / "migrations"
    shutil.copytree(MIGRATIONS, later, ignore=shutil.ignore_patterns("__pycache__"))
    (later / "versions" / "r9999_later.py").write_text(SECOND.format(before=SCHEMA))
    with Store(address) as store:
        store.add_group(GROUP, CODES)
    database = Database(find_place(address))
    bring_up_to_date(database, later, "9999")
    with database.reading() as connection:
        rows = connection.exec_driver_sql("SELECT code, note FROM students ORDER BY code").all()
    database.close()
    assert [tuple(row) for row in rows] == [(code, "-") for code in CODES]
    with pytest.raises(PhonodrillError, match="newer phonodrill"):
        Store(address)


def test_a_migration_that_fails_changes_nothing(address: str, tmp_path: Path) -> None:
    later = tmp_path / "migrations"
    shutil.copytree(MIGRATIONS, later, ignore=shutil.ignore_patterns("__pycache__"))
    broken = SECOND.format(before=SCHEMA) + "    op.drop_table('no_such_table')\n"
    (later / "versions" / "r9999_later.py").write_text(broken)
    with Store(address) as store:
        store.add_group(GROUP, CODES)
    database = Database(find_place(address))
    with pytest.raises(PhonodrillError):
        bring_up_to_date(database, later, "9999")
    database.close()
    with Store(address) as store:
        assert store.list_students(GROUP) == CODES


def test_a_place_shows_no_password() -> None:
    assert "secret" not in Place(None, "postgresql+psycopg://office:secret@db/harbor").shown
