from __future__ import annotations

import threading
from collections.abc import Callable

import pytest
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext

from phonodrill import PhonodrillError
from phonodrill.records.answer import Answer
from phonodrill.records.groups import MOST_STUDENTS, read_codes
from phonodrill.records.kept import Check, Counts, Group, Result
from phonodrill.records.store import Store
from phonodrill.records.tables import METADATA
from tests.records.conftest import CODES, GROUP, check_of

Make = Callable[..., Check]


def test_groups_and_students(store: Store) -> None:
    store.add_group("ferry-1")
    assert store.list_groups() == (Group("ferry-1", 0, 0), Group(GROUP, 3, 0))
    store.add_students("ferry-1", ["B10", "B2", "é"])
    assert store.list_students("ferry-1") == ("B2", "B10", "é")
    assert store.groups_with("B2") == ("ferry-1",)
    store.remove_group("ferry-1")
    assert store.list_groups() == (Group(GROUP, 3, 0),)


@pytest.mark.parametrize("name", ["", " gulls", "g" * 61, "gulls\n", "gu\0lls"])
def test_names_that_are_none(store: Store, name: str) -> None:
    with pytest.raises(PhonodrillError, match="no name for a group"):
        store.add_group(name)


def test_what_is_there_is_not_added_again(store: Store) -> None:
    with pytest.raises(PhonodrillError, match="there is a group"):
        store.add_group(GROUP, ["D"])
    with pytest.raises(PhonodrillError, match="one of these codes already"):
        store.add_students(GROUP, ["D", "A"])
    assert store.list_students(GROUP) == CODES
    with pytest.raises(PhonodrillError, match="at most"):
        store.add_students(GROUP, map(str, range(MOST_STUDENTS)))
    with pytest.raises(PhonodrillError) as raised:
        store.add_students("harbor", ["D"])
    assert raised.value.hint == f"did you mean {GROUP}?"


@pytest.mark.parametrize("text", ["A,A", "Ann Reed", "A;B", "A" * 13, "-", "A,_"])
def test_codes_that_are_none(text: str) -> None:
    with pytest.raises(PhonodrillError) as raised:
        read_codes(text)
    assert text not in raised.value.message


def test_a_check_comes_back_as_it_was_made(store: Store, make_check: Make) -> None:
    made = make_check()
    assert len(made.key) == 8
    assert store.find_check(made.key) == made
    assert made._replace(key="") == check_of(("torches", "ropes"))
    store.enter_result(made.key, Result(1, "A", right=True))
    listed = store.list_checks(GROUP)
    assert listed[0] == (made.key, GROUP, "es,ies", "2026-11-25", 2, 1)
    with pytest.raises(PhonodrillError, match="no check '123'"):
        store.find_check("123")
    with pytest.raises(PhonodrillError, match="no date"):
        make_check("25 Nov")
    store.remove_check(made.key)
    assert store.counts() == Counts(1, 3, 0, 0)


def test_the_latest_checks_come_first(store: Store, make_check: Make) -> None:
    keys = [make_check(date).key for date in ("2026-11-24", "2026-11-26", "2026-11-25")]
    assert [row.key for row in store.list_checks()] == [keys[1], keys[2], keys[0]]
    assert [row.key for row in store.list_checks(most=1)] == [keys[1]]


def test_a_result_is_entered_corrected_and_taken_back(store: Store, make_check: Make) -> None:
    key = make_check().key
    store.enter_result(key, Result(1, "A", right=False, said=" torch\n"))
    assert store.results_of(key) == [Result(1, "A", right=False, said="torch")]
    store.enter_result(key, Result(1, "A", right=True, said="torch"))
    assert store.results_of(key) == [Result(1, "A", right=True)]
    assert store.undo_result(key, 1, "A")
    assert not store.undo_result(key, 1, "A")
    assert store.results_of(key) == []


def test_an_act_that_is_sent_again_changes_nothing(store: Store, make_check: Make) -> None:
    key = make_check().key
    first = Result(1, "A", right=True, entry="first")
    assert store.enter_result(key, first)
    assert store.enter_result(key, Result(1, "A", right=False, said="torch", entry="second"))
    assert not store.enter_result(key, first)
    assert store.results_of(key) == [Result(1, "A", right=False, said="torch")]
    assert store.undo_result(key, 1, "A", "third")
    assert not store.enter_result(key, first)
    assert not store.undo_result(key, 1, "A", "third")
    assert store.results_of(key) == []


def test_no_place_no_result(store: Store, make_check: Make) -> None:
    key = make_check().key
    store.add_group("ferry-1", ["Z"])
    for position, student in ((3, "A"), (0, "A"), (1, "Z"), (1, "D")):
        with pytest.raises(PhonodrillError) as raised:
            store.enter_result(key, Result(position, student, right=True))
        assert "Z" not in raised.value.message
    with pytest.raises(PhonodrillError, match="no check"):
        store.enter_result("1", Result(1, "A", right=True))
    right = Result(1, "A", right=True)
    with pytest.raises(PhonodrillError):
        store.enter_results(key, [right, right._replace(student="D")])
    assert store.results_of(key) == []


def test_answers_come_by_check_item_and_student(store: Store, make_check: Make) -> None:
    late, early = (
        make_check("2026-11-26", ("gulls",)),
        make_check("2026-11-24", ("crabs", "jellies")),
    )
    for key, position, student, right in (
        (late.key, 1, "B", True),
        (late.key, 1, "A", False),
        (early.key, 2, "A", True),
        (early.key, 1, "C", True),
    ):
        store.enter_result(key, Result(position, student, right, "gull" if not right else ""))
    store.add_group("ferry-1", ["A"])
    store.keep_check(check_of(("ropes",), group="ferry-1"))
    answers = list(store.answers(GROUP))
    assert answers == [
        Answer("C", "es,ies", "2026-11-24", early.items[0], right=True),
        Answer("A", "es,ies", "2026-11-24", early.items[1], right=True),
        Answer("A", "es,ies", "2026-11-26", late.items[0], right=False, said="gull"),
        Answer("B", "es,ies", "2026-11-26", late.items[0], right=True),
    ]
    assert list(store.answers(GROUP, last=1)) == answers[2:]
    assert list(store.answers(GROUP, since="2026-11-25")) == answers[2:]
    assert list(store.answers("ferry-1")) == []
    with pytest.raises(PhonodrillError, match="no group"):
        store.answers("gulls")


def test_all_of_a_student_is_exported(store: Store, make_check: Make) -> None:
    made = make_check()
    store.enter_result(made.key, Result(2, "A", right=False, said="rope"))
    store.enter_result(made.key, Result(1, "B", right=True))
    record = store.export_student(GROUP, "A")
    assert (record.group, record.code, len(record.entered)) == (GROUP, "A", 1)
    (entered,) = record.entered
    assert entered[:5] == (made.key, "es,ies", "2026-11-25", 2, made.items[1])
    assert (entered.right, entered.said, entered.at[10:11]) == (False, "rope", "T")
    with pytest.raises(PhonodrillError, match="no such student"):
        store.export_student(GROUP, "Z")


def test_an_erased_student_is_gone_and_no_other(store: Store, make_check: Make) -> None:
    made = make_check()
    for student in CODES:
        store.enter_result(made.key, Result(1, student, right=True))
    assert store.erase_student(GROUP, "B") == 1
    assert store.list_students(GROUP) == ("A", "C")
    assert [result.student for result in store.results_of(made.key)] == ["A", "C"]
    with pytest.raises(PhonodrillError, match="no such student"):
        store.erase_student(GROUP, "B")


def test_the_migrations_make_the_tables(store: Store) -> None:
    with store.database.reading() as connection:
        assert compare_metadata(MigrationContext.configure(connection), METADATA) == []


def test_several_write_at_once(address: str, store: Store, make_check: Make) -> None:
    words = tuple(f"w{number}" for number in range(10))
    key = make_check(words=words).key
    problems: list[Exception] = []

    def enter(right: bool) -> None:
        try:
            with Store(address) as own:
                for position in range(1, 11):
                    for student in CODES:
                        own.enter_result(key, Result(position, student, right))
        except Exception as problem:  # noqa: BLE001
            problems.append(problem)

    threads = [threading.Thread(target=enter, args=(right,)) for right in (True, False)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert problems == []
    assert len(store.results_of(key)) == store.counts().results == 30


def test_several_open_a_new_database_at_once(address: str) -> None:
    problems: list[Exception] = []

    def open_it(number: int) -> None:
        try:
            with Store(address) as own:
                own.add_group(f"group-{number}")
        except Exception as problem:  # noqa: BLE001
            problems.append(problem)

    threads = [threading.Thread(target=open_it, args=(number,)) for number in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert problems == []
    with Store(address) as store:
        assert len(store.list_groups()) == 4


def test_what_no_database_can_hold(store: Store, make_check: Make) -> None:
    key = make_check().key
    huge = check_of(("torches",))._replace(seed=10**30)
    with pytest.raises(PhonodrillError):
        store.keep_check(huge)
    with pytest.raises(PhonodrillError):
        store.enter_result(key, Result(10**30, "A", right=True))
    for text in ("\udcff", "\ud800x"):
        with pytest.raises(PhonodrillError):
            store.find_check(text)
        with pytest.raises(PhonodrillError):
            store.list_students(text)
    with pytest.raises(PhonodrillError):
        store.list_students("\0")
    store.enter_result(key, Result(1, "A", right=False, said="/s/\0\n" + "z" * 200))
    (result,) = store.results_of(key)
    assert result.said == "/s/ " + "z" * 76
    assert store.counts() == Counts(1, 3, 1, 1)
