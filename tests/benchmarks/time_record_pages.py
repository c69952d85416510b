"""Time the pages with records on a file that load_records fills.

    python -m tests.benchmarks.time_record_pages --students 1000 --days 40

Each page is asked for once a group, through the application without a network. Prints the
rows of the table in docs/hosting.md.
"""

from __future__ import annotations

import argparse
import gc
import random
import statistics
import tempfile
import time
from collections.abc import Sequence
from pathlib import Path

import pytest
from fastapi.testclient import TestClient

from phonodrill.records.place import VARIABLE
from phonodrill.records.store import Store
from phonodrill.web.app import make_app
from phonodrill.web.csrf import FIELD
from phonodrill.web.settings import Records, Settings
from tests.benchmarks.load_records import IN_GROUP, ITEMS, rows_of_day, write_sqlite
from tests.web.kept import entry_of, token_of

ENTERED = 100


def fill(path: Path, students: int, days: int) -> None:
    """Fill a new file with a check a day for every group."""
    groups = students // IN_GROUP
    with Store(str(path)) as store:
        for group in range(groups):
            store.add_group(f"group {group}", [f"S{number}" for number in range(IN_GROUP)])
    chance = random.Random(1)
    for day in range(days):
        write_sqlite(path, rows_of_day(day, groups, chance))


def row(name: str, times: Sequence[tuple[float, float]]) -> str:
    """Write a row: processor and wall, median and 95th percentile, in milliseconds."""
    cells = []
    for seconds in zip(*times, strict=True):
        last = statistics.quantiles(seconds, n=20)[-1]
        cells.append(f"{statistics.median(seconds) * 1000:.0f} / {last * 1000:.0f}")
    return f"| {name} | {' | '.join(cells)} |"


def ask(client: TestClient, path: str) -> tuple[float, float]:
    """Time one page."""
    wall, processor = time.perf_counter(), time.process_time()
    answer = client.get(path)
    assert answer.status_code == 200, path
    return time.process_time() - processor, time.perf_counter() - wall


def enter(client: TestClient, path: str, number: int) -> tuple[float, float]:
    """Time one tap: it is kept, and the next page comes."""
    text = client.get(path).text
    sent = {FIELD: token_of(text), "entry": entry_of(text), "act": "right"}
    sent["item"] = str(number % ITEMS + 1)
    wall, processor = time.perf_counter(), time.process_time()
    assert client.post(path, data=sent).status_code == 200
    return time.process_time() - processor, time.perf_counter() - wall


def measure(client: TestClient) -> None:
    """Ask for every page of every group once, and enter some results."""
    groups = client.get("/api/records/groups").json()["groups"]
    pages = {
        "Groups": [("/groups") for _ in groups],
        "a group": [f"/groups/{one['key']}" for one in groups],
        "Check": [f"/check?group={one['key']}" for one in groups],
        "Progress of a group": [f"/progress/{one['key']}" for one in groups],
        "Progress of a student": [f"/progress/{one['key']}/{one['keys'][0]}" for one in groups],
        "Next": [f"/next/{one['key']}" for one in groups],
    }
    for name, paths in pages.items():
        client.get(paths[0])
        print(row(name, [ask(client, path) for path in paths]), flush=True)
    first = groups[0]
    checks = client.get("/api/records/checks", params={"group": first["key"]}).json()["checks"]
    seat = f"/check/{checks[0]['check']}/enter/{first['keys'][0]}"
    print(row("a tap", [enter(client, seat, number) for number in range(ENTERED)]), flush=True)


def main() -> None:
    """Fill a file and time the pages."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--students", type=int, default=1000)
    parser.add_argument("--days", type=int, default=40)
    chosen = parser.parse_args()
    print(f"{chosen.students * chosen.days * ITEMS:,} results; ms, median / 95th percentile")
    print("| page | used | waited |\n|---|---|---|")
    with tempfile.TemporaryDirectory() as folder, pytest.MonkeyPatch.context() as patch:
        path = Path(folder) / "records.sqlite"
        fill(path, chosen.students, chosen.days)
        patch.setenv(VARIABLE, str(path))
        patch.setenv("XDG_DATA_HOME", folder)
        application = make_app(Settings(records=Records.OWN))
        gc.freeze()  # As the server does.
        with TestClient(application, base_url="http://127.0.0.1") as client:
            measure(client)


if __name__ == "__main__":
    main()
