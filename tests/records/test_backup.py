"""Backups, and that what is erased is nowhere in the bytes."""

from __future__ import annotations

import sqlite3
import stat
from collections.abc import Callable
from pathlib import Path

import pytest

from phonodrill import PhonodrillError
from phonodrill.records import backup
from phonodrill.records.kept import Check, Counts, Result
from phonodrill.records.place import find_place
from phonodrill.records.store import Store
from tests.records.conftest import GROUP, check_of

CODE, SAID = "QXZ7", "krabblefish"
"""Neither is a part of anything else in the file."""
OTHERS = ("A", "B")


@pytest.fixture
def path(tmp_path: Path) -> Path:
    path = tmp_path / "records.sqlite"
    with Store(str(path)) as store:
        store.add_group(GROUP, (*OTHERS, CODE))
        for day in range(1, 21):
            key = store.keep_check(check_of(("torches", "ropes"), f"2026-11-{day:02}")).key
            for code in (*OTHERS, CODE):
                said = SAID if code == CODE else "torch"
                store.enter_result(key, Result(1, code, right=False, said=said))
    return path


def found_in(folder: Path, text: str) -> list[str]:
    return sorted(one.name for one in folder.iterdir() if text.encode() in one.read_bytes())


def test_an_erased_student_is_in_no_byte(path: Path, tmp_path: Path) -> None:
    assert found_in(tmp_path, CODE) == found_in(tmp_path, SAID) == ["records.sqlite"]
    with Store(str(path)) as store:
        assert store.erase_student(GROUP, CODE) == 20
        # While it is open, too: the log beside it is empty.
        assert found_in(tmp_path, CODE) == found_in(tmp_path, SAID) == []
        assert len(list(store.answers(GROUP))) == 40
    assert found_in(tmp_path, CODE) == found_in(tmp_path, SAID) == []


def test_what_is_undone_or_removed_is_in_no_byte(path: Path, tmp_path: Path) -> None:
    with Store(str(path)) as store:
        for check in store.list_checks():
            store.undo_result(check.key, 1, CODE)
        store.database.empty_log()
        assert found_in(tmp_path, SAID) == []
        store.remove_group(GROUP)
        assert found_in(tmp_path, CODE) == []
        assert store.counts() == Counts(0, 0, 0, 0)


def test_an_erased_student_is_in_no_backup(path: Path, tmp_path: Path) -> None:
    moved = tmp_path / "moved.sqlite"
    with Store(str(path)) as store:
        for name in ("first.sqlite", "second.sqlite", "moved.sqlite"):
            backup.back_up(store, tmp_path / name)
        store.erase_student(GROUP, CODE)
    assert found_in(tmp_path, SAID) == ["first.sqlite", "moved.sqlite", "second.sqlite"]
    moved.rename(tmp_path / "elsewhere.sqlite")
    (tmp_path / "second.sqlite").write_bytes(b"no database: " + SAID.encode())
    erased, problems = backup.erase_from_backups(find_place(str(path)), GROUP, CODE)
    assert erased == 1
    assert len(problems) == 2
    assert not any(CODE in problem for problem in problems)
    assert found_in(tmp_path, CODE) == ["elsewhere.sqlite"]
    with Store(str(tmp_path / "first.sqlite")) as kept:
        assert kept.list_students(GROUP) == OTHERS


def test_erasing_says_so_if_another_program_reads(path: Path) -> None:
    reader = sqlite3.connect(path, isolation_level=None)
    reader.execute("BEGIN")
    reader.execute("SELECT count(*) FROM results").fetchone()
    with Store(str(path)) as store:
        with store.database.raw() as connection:
            connection.execute("PRAGMA busy_timeout = 50")
        with pytest.raises(PhonodrillError) as raised:
            store.erase_student(GROUP, CODE)
        assert CODE not in raised.value.message
        reader.close()
        assert store.list_students(GROUP) == OTHERS
        store.database.vacuum()
    assert found_in(path.parent, SAID) == []


def test_a_backup_is_one_private_file_and_is_restored(path: Path, tmp_path: Path) -> None:
    kept = tmp_path / "kept.sqlite"
    with Store(str(path)) as store:
        backup.back_up(store, kept)
        backup.back_up(store, kept)
        before = store.counts()
        assert stat.S_IMODE(kept.stat().st_mode) == 0o600
        store.add_group("ferry-1", ["Z"])
        content = kept.read_bytes()
        replaced = backup.restore(store.place, kept)
        # Who has it open goes on with what was restored.
        assert store.counts() == before
        store.add_group("gulls", ["G"])
    assert kept.read_bytes() == content
    assert replaced
    with Store(str(replaced)) as old:
        assert [group.name for group in old.list_groups()] == ["ferry-1", GROUP]
    assert backup.backups_of(find_place(str(path))) == (kept, replaced)
    with Store(str(path)) as store:
        assert [group.name for group in store.list_groups()] == ["gulls", GROUP]
    assert {one.name for one in tmp_path.iterdir()} == {
        "records.sqlite",
        "records.sqlite.backups",
        "kept.sqlite",
        replaced.name,
    }


def test_restoring_over_a_damaged_file_keeps_it(path: Path, tmp_path: Path) -> None:
    kept = tmp_path / "kept.sqlite"
    with Store(str(path)) as store:
        backup.back_up(store, kept)
    path.write_bytes(path.read_bytes()[:9000])
    replaced = backup.restore(find_place(str(path)), kept)
    assert replaced
    assert replaced.stat().st_size == 9000
    with Store(str(path)) as store:
        assert store.counts().results == 60


def test_restoring_where_nothing_was(path: Path, tmp_path: Path) -> None:
    new = find_place(str(tmp_path / "new.sqlite"))
    assert backup.restore(new, path) is None
    with Store(new) as store:
        assert store.counts().results == 60


def test_what_is_no_sound_backup_changes_nothing(path: Path, tmp_path: Path) -> None:
    place = find_place(str(path))
    before = path.read_bytes()
    for name, content, message in (
        ("cut.sqlite", before[: len(before) // 2], "is damaged"),
        ("notes.txt", b"gulls" * 999, "no file of records"),
        ("empty.sqlite", b"", "something else than records"),
    ):
        (tmp_path / name).write_bytes(content)
        with pytest.raises(PhonodrillError, match=message):
            backup.restore(place, tmp_path / name)
        with Store(place) as store, pytest.raises(PhonodrillError):
            backup.back_up(store, tmp_path / name)
        assert (tmp_path / name).read_bytes() == content
    for same in (path, tmp_path / "gone.sqlite"):
        with pytest.raises(PhonodrillError):
            backup.restore(place, same)
    with Store(place) as store, pytest.raises(PhonodrillError, match="itself"):
        backup.back_up(store, path)
    with Store(place) as store, pytest.raises(PhonodrillError, match="cannot write"):
        backup.back_up(store, tmp_path / "none" / "kept.sqlite")
    assert path.read_bytes() == before


def test_ties_that_lead_nowhere_are_damage(path: Path) -> None:
    connection = sqlite3.connect(path)
    connection.execute("DELETE FROM students WHERE code = 'A'")
    connection.commit()
    connection.close()
    with pytest.raises(PhonodrillError, match="is damaged"):
        backup.check_file(path)


def test_backups_of_a_server_are_its_own(cluster: object, store: Store, tmp_path: Path) -> None:
    del cluster
    if store.database.is_file:
        return
    with pytest.raises(PhonodrillError, match="PostgreSQL") as raised:
        backup.back_up(store, tmp_path / "kept.sqlite")
    assert "pg_dump" in raised.value.hint
    assert backup.backups_of(store.place) == ()


def test_no_error_quotes_what_was_kept(store: Store, make_check: Callable[..., Check]) -> None:
    """Whatever the database says: the line is ours."""
    key = make_check().key
    store.enter_result(key, Result(1, "A", right=False, said=SAID))
    with store.database.writing() as connection:
        connection.exec_driver_sql("ALTER TABLE results RENAME TO elsewhere")
    with pytest.raises(PhonodrillError) as raised:
        store.enter_result(key, Result(1, "A", right=False, said=SAID))
    error = raised.value
    assert SAID not in error.message + error.hint
    assert error.__suppress_context__
    assert error.__cause__ is None


def test_a_file_in_use_is_one_clear_line(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("phonodrill.records.database.WAIT", 0.05)
    other = sqlite3.connect(path, isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    with Store(str(path)) as store:
        assert store.list_students(GROUP) == (*OTHERS, CODE)
        with pytest.raises(PhonodrillError, match="another program is writing"):
            store.add_group("gulls")
    other.close()
