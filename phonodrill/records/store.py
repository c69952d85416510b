"""The store of records: the only way in; what it takes and gives are plain records.

No other part of phonodrill knows of a database. Every verb is one transaction: when it
returns, it is on the disk.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from types import TracebackType
from typing import Self

from sqlalchemy import func, select

from phonodrill.records import checks, groups, results
from phonodrill.records.answer import Answer
from phonodrill.records.database import Database
from phonodrill.records.kept import Check, Counts, Group, Listed, Result, StudentRecord
from phonodrill.records.migrate import bring_up_to_date
from phonodrill.records.place import Place, find_place
from phonodrill.records.tables import CHECKS, GROUPS, RESULTS, STUDENTS

LISTED = 50
"""Checks in a list."""


class Store:
    """Groups, students, checks and results.

    Use it as a context manager, or call :meth:`close`.

    Args:
        place: a path, or the URL of a PostgreSQL database; by default what
            ``PHONODRILL_DATABASE`` says, else a file in the user's data folder.
        must_exist: whether a file that is not there is refused, not made.

    Raises:
        PhonodrillError: here and in every method, if the database cannot be opened or
            used, is damaged, or was written by a newer version.

    >>> from tempfile import TemporaryDirectory
    >>> with TemporaryDirectory() as folder, Store(f"{folder}/records.sqlite") as store:
    ...     store.add_group("harbor-2", ["A", "B"])
    ...     store.list_groups(), store.list_students("harbor-2")
    ((Group(name='harbor-2', students=2, checks=0),), ('A', 'B'))
    """

    def __init__(self, place: str | Place = "", *, must_exist: bool = False) -> None:
        found = place if isinstance(place, Place) else find_place(place)
        self.database = Database(found, must_exist=must_exist)
        try:
            bring_up_to_date(self.database)
        except BaseException:
            self.close()
            raise

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.close()

    @property
    def place(self) -> Place:
        """Where the records are."""
        return self.database.place

    def close(self) -> None:
        """Close all connections."""
        self.database.close()

    def add_group(self, name: str, students: Iterable[str] = ()) -> None:
        """Add a group with its students' codes.

        Raises:
            PhonodrillError: if its name cannot be used or is taken.
        """
        with self.database.writing() as connection:
            groups.add_group(connection, name, students)

    def list_groups(self) -> tuple[Group, ...]:
        """Return the groups by name."""
        with self.database.reading() as connection:
            return groups.list_groups(connection)

    def remove_group(self, name: str) -> None:
        """Remove a group with its students, checks and results, and leave no trace of them.

        Raises:
            PhonodrillError: if there is no such group.
        """
        with self.database.writing() as connection:
            groups.remove_group(connection, name)
        self.database.vacuum()

    def add_students(self, group: str, students: Iterable[str]) -> None:
        """Add students to a group by their codes.

        Raises:
            PhonodrillError: if there is no such group or it has one of them.
        """
        with self.database.writing() as connection:
            groups.add_students(connection, group, students)

    def list_students(self, group: str) -> tuple[str, ...]:
        """Return the codes of a group's students.

        Raises:
            PhonodrillError: if there is no such group.
        """
        with self.database.reading() as connection:
            group_id = groups.group_id_of(connection, group)
            return tuple(groups.codes_of(connection, group_id))

    def groups_with(self, student: str) -> tuple[str, ...]:
        """Return the names of the groups that have a student of that code."""
        with self.database.reading() as connection:
            return tuple(groups.groups_with(connection, student))

    def keep_check(self, check: Check) -> Check:
        """Keep a check that was made; returns it with its key.

        Raises:
            PhonodrillError: if there is no such group, or its date is none.
        """
        with self.database.writing() as connection:
            results.forget_entries(connection)
            return checks.keep_check(connection, check)

    def find_check(self, key: str) -> Check:
        """Return a check by its key.

        Raises:
            PhonodrillError: if there is none.
        """
        with self.database.reading() as connection:
            return checks.find_check(connection, key)

    def list_checks(self, group: str = "", most: int = LISTED) -> Sequence[Listed]:
        """Return the latest checks of a group or of all, the latest first.

        Raises:
            PhonodrillError: if there is no such group.
        """
        with self.database.reading() as connection:
            return checks.list_checks(connection, group, most)

    def remove_check(self, key: str) -> None:
        """Remove a check with its results, and leave no trace of them.

        Raises:
            PhonodrillError: if there is none.
        """
        with self.database.writing() as connection:
            has_results = checks.remove_check(connection, key)
        if has_results:
            self.database.vacuum()

    def enter_result(self, check: str, result: Result) -> bool:
        """Enter a result, or put it in the place of what was entered before.

        Args:
            check: its key.
            result: with ``entry``, the same act sent again changes nothing.

        Returns:
            Whether the act was a new one.

        Raises:
            PhonodrillError: if there is no such check, item or student.
        """
        return self.enter_results(check, [result]) == 1

    def enter_results(self, check: str, entered: Iterable[Result]) -> int:
        """Enter several results, all of them or none; returns how many acts were new.

        Raises:
            PhonodrillError: if there is no such check, item or student.
        """
        with self.database.writing() as connection:
            return sum([results.enter(connection, check, result) for result in entered])

    def undo_result(self, check: str, position: int, student: str, entry: str = "") -> bool:
        """Take a result back.

        Returns:
            Whether there was one that was taken back.

        Raises:
            PhonodrillError: if there is no such check, item or student.
        """
        with self.database.writing() as connection:
            return results.undo(connection, check, position, student, entry)

    def results_of(self, check: str) -> Sequence[Result]:
        """Return what is entered in a check, by position and student.

        Raises:
            PhonodrillError: if there is no such check.
        """
        with self.database.reading() as connection:
            return results.results_of(connection, check)

    def answers(self, group: str, *, last: int | None = None, since: str = "") -> Iterator[Answer]:
        """Return the answers of a group, the oldest check first.

        Args:
            group: its name.
            last: only of so many of its latest checks; None for all.
            since: only of checks of this date (ISO 8601) or later.

        Raises:
            PhonodrillError: if there is no such group.
        """
        with self.database.reading() as connection:
            return iter(results.answers_of(connection, group, last, since))

    def export_student(self, group: str, student: str) -> StudentRecord:
        """Return all that is kept of a student.

        Raises:
            PhonodrillError: if there is no such group or student.
        """
        with self.database.reading() as connection:
            return results.record_of(connection, group, student)

    def erase_student(self, group: str, student: str) -> int:
        """Erase a student and all results, and leave no trace of them in the database.

        Returns:
            How many results were erased.

        Raises:
            PhonodrillError: if there is no such group or student.
        """
        with self.database.writing() as connection:
            gone = results.erase_student(connection, group, student)
        self.database.vacuum()
        return gone

    def counts(self) -> Counts:
        """Count what is kept."""
        with self.database.reading() as connection:
            tables = (GROUPS, STUDENTS, CHECKS, RESULTS)
            queries = (select(func.count()).select_from(table) for table in tables)
            return Counts(*(connection.execute(query).scalar_one() for query in queries))
