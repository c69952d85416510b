"""Fill a database with a district's records and time what teachers wait for.

    python -m tests.benchmarks.load_records --students 5000 --days 180

Every day every group has a check of eight items that all its students answer. Prints, for
each size on the way, a row of the table in docs/hosting.md.
"""

from __future__ import annotations

import argparse
import random
import shutil
import sqlite3
import statistics
import tempfile
import time
from collections.abc import Callable, Iterator, Sequence
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import psycopg

from phonodrill.records.answer import Asked, Kind, Skill
from phonodrill.records.checks import rows_of
from phonodrill.records.kept import Check, Result
from phonodrill.records.store import Store
from tests.records.postgres import Cluster, find_binaries

IN_GROUP = 25
FEWER, MANY = 50, 200
ITEMS = 8
RECENT = 30
"""Checks that a group page looks back on."""
OTHER_DAY = "2027-01-01"
FIRST_DAY = date(2026, 1, 5)
SIZES = (100_000, 1_000_000, 3_000_000, 7_200_000)
WORDS = ("torches", "ropes", "gulls", "ferries", "hedges", "jellies", "skies", "crabs")
SOUNDS = ("ɪz", "s", "z", "iz", "ɪz", "iz", "aɪz", "z")
COLUMNS = {
    "checks": ("id", "key", "group_id", "focus", "date", "band", "seed"),
    "items": ("id", "check_id", "position", "how", "ask", "word", "answer", "shows", "skills"),
    "results": ("student_id", "item_id", "is_right", "said", "at"),
}
Rows = dict[str, list[tuple[Any, ...]]]


def asked() -> tuple[Asked, ...]:
    """Return eight items as a check on endings has them."""
    return tuple(
        Asked(
            "say the ending",
            f"Show “{word}”. Read it. What does the ending say?",
            word,
            f"/{sound}/",
            f"reads -es as /{sound}/",
            (Skill(Kind.ENDING_SOUND, sound), Skill(Kind.CONDITION, f"condition {number % 3}")),
        )
        for number, (word, sound) in enumerate(zip(WORDS, SOUNDS, strict=True))
    )


def rows_of_day(day: int, groups: int, chance: random.Random) -> Rows:
    """Make the rows of one day: a check a group, all students answering all items."""
    when = FIRST_DAY + timedelta(days=day)
    at = int(time.mktime(when.timetuple()))
    rows: Rows = {"checks": [], "items": [], "results": []}
    for group in range(groups):
        check = day * groups + group + 1
        rows["checks"].append((check, f"{check:08}", group + 1, "es,ies", when.isoformat(), 2, day))
        for item in rows_of(asked(), check):
            item_id = (check - 1) * ITEMS + int(str(item["position"]))
            values = {"id": item_id, **item}
            rows["items"].append(tuple(values[name] for name in COLUMNS["items"]))
            for student in range(group * IN_GROUP + 1, (group + 1) * IN_GROUP + 1):
                is_right = chance.random() < 0.7
                said = "" if is_right else chance.choice(("", "/s/", "torch"))
                rows["results"].append((student, item_id, is_right, said, at))
    return rows


def write_sqlite(path: Path, rows: Rows) -> None:
    """Write the rows of a day in one transaction."""
    connection = sqlite3.connect(path)
    connection.execute("PRAGMA cache_size = -200000")
    with connection:
        for table, columns in COLUMNS.items():
            marks = ", ".join("?" * len(columns))
            names = ", ".join(columns)
            connection.executemany(f"INSERT INTO {table} ({names}) VALUES ({marks})", rows[table])
    connection.close()


def write_postgres(url: str, rows: Rows) -> None:
    """Write the rows of a day in one transaction."""
    with psycopg.connect(url.replace("+psycopg", "")) as connection, connection.cursor() as cursor:
        for table, columns in COLUMNS.items():
            with cursor.copy(f"COPY {table} ({', '.join(columns)}) FROM STDIN") as copy:
                for row in rows[table]:
                    copy.write_row(row)


def finish_sqlite(path: Path) -> int:
    """Bring all into the one file; returns its size in bytes."""
    connection = sqlite3.connect(path)
    connection.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    connection.close()
    return path.stat().st_size


def finish_postgres(url: str) -> int:
    """Let the server learn what it holds; returns its size in bytes."""
    with psycopg.connect(url.replace("+psycopg", ""), autocommit=True) as connection:
        connection.execute("VACUUM ANALYZE")
        for table in ("checks", "items"):
            connection.execute(
                f"SELECT setval(pg_get_serial_sequence('{table}', 'id'), max(id)) FROM {table}"
            )
        row = connection.execute("SELECT pg_database_size(current_database())").fetchone()
        return int(row[0]) if row else 0


class Clock:
    """Time calls by the clock on the wall, and by the processor that they and the server use.

    On a machine that does nothing else both agree; what else it does only adds to the first.
    """

    def __init__(self, store: Store) -> None:
        self._walls: list[float] = []
        self._processors: list[float] = []
        self._server: Path | None = None
        if not store.database.is_file:
            with store.database.reading() as connection:
                number = connection.exec_driver_sql("SELECT pg_backend_pid()").scalar_one()
            self._server = Path(f"/proc/{number}/schedstat")

    def call(self, work: Callable[[], object]) -> None:
        """Time one call."""
        wall, processor = time.perf_counter(), self._used()
        work()
        self._walls.append(time.perf_counter() - wall)
        self._processors.append(self._used() - processor)

    def cells(self) -> str:
        """Write medians and 95th percentiles in milliseconds."""
        cells = []
        for seconds in (self._processors, self._walls):
            times = [second * 1000 for second in seconds]
            last = statistics.quantiles(times, n=20)[-1]
            cells.append(f"{statistics.median(times):.1f} / {last:.1f}")
        return " | ".join(cells)

    def _used(self) -> float:
        server = int(self._server.read_text().split()[0]) / 1e9 if self._server else 0.0
        return time.process_time() + server


def measure(address: str, names: Sequence[str]) -> Iterator[str]:
    """Time the group page, the whole year of a group, and the entering of results."""
    with Store(address) as store:
        for chosen, last in ((names, RECENT), (names[:25], None)):
            clock = Clock(store)
            for name in chosen:
                clock.call(lambda name=name, last=last: list(store.answers(name, last=last)))  # type: ignore[misc]
            yield clock.cells()
        clock = Clock(store)
        for number, name in enumerate(names[:20]):
            check = store.keep_check(Check("", name, "es,ies", OTHER_DAY, 2, 1, asked()))
            for place, student in enumerate(store.list_students(name)[:10]):
                result = Result(place % ITEMS + 1, student, place % 2 == 0, "", f"{number}-{place}")
                clock.call(lambda c=check.key, r=result: store.enter_result(c, r))  # type: ignore[misc]
        yield clock.cells()
        # The ids of the days that follow are the loader's own.
        with store.database.writing() as connection:
            connection.exec_driver_sql(f"DELETE FROM checks WHERE date = '{OTHER_DAY}'")


def load(address: str, students: int, days: int, path: Path | None) -> None:
    """Load day by day; stop to measure at each size."""
    groups = students // IN_GROUP
    with Store(address) as store:
        for group in range(groups):
            store.add_group(f"group {group}", [f"S{number}" for number in range(IN_GROUP)])
    chance = random.Random(1)
    sizes = [size for size in SIZES if size <= students * days * ITEMS]
    written, spent = 0, 0.0
    for day in range(days):
        rows = rows_of_day(day, groups, chance)
        start = time.perf_counter()
        if path:
            write_sqlite(path, rows)
        else:
            write_postgres(address, rows)
        spent += time.perf_counter() - start
        written += len(rows["results"])
        if sizes and written >= sizes[0]:
            sizes.pop(0)
            size = finish_sqlite(path) if path else finish_postgres(address)
            # All groups once at the end; fewer on the way.
            count = FEWER if sizes else MANY
            names = [f"group {number * 7 % groups}" for number in range(count)]
            cells = " | ".join(measure(address, names))
            print(f"| {written:,} | {size / 1e6:,.0f} MB | {spent:.0f} s | {cells} |", flush=True)


def main() -> None:
    """Load and measure both kinds of database."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--students", type=int, default=5000)
    parser.add_argument("--days", type=int, default=180)
    parser.add_argument("--only", choices=["sqlite", "postgresql"])
    chosen = parser.parse_args()
    timed = (f"last {RECENT} checks of a group", "its whole year", "enter one")
    cells = (f"{what}: {clock}" for what in timed for clock in ("processor", "wall"))
    head = f"| results | size | load | {' | '.join(cells)} |"
    if chosen.only != "postgresql":
        print(f"SQLite {sqlite3.sqlite_version}; times in ms, median / 95th percentile\n{head}")
        folder = Path(tempfile.mkdtemp(prefix="load-"))
        path = folder / "records.sqlite"
        try:
            load(str(path), chosen.students, chosen.days, path)
        finally:
            shutil.rmtree(folder)
    binaries = find_binaries()
    if chosen.only != "sqlite" and binaries:
        print(f"PostgreSQL {binaries.parts[-2]}; times in ms, median / 95th percentile\n{head}")
        cluster = Cluster(binaries, options="")
        try:
            load(cluster.new_database(), chosen.students, chosen.days, None)
        finally:
            cluster.stop()


if __name__ == "__main__":
    main()
