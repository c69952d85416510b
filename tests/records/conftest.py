"""Every test of the store runs on SQLite and on PostgreSQL."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from phonodrill.records.answer import Asked, Kind, Skill
from phonodrill.records.kept import Check
from phonodrill.records.store import Store
from tests.records.postgres import Cluster, find_binaries

GROUP = "harbor-2"
CODES = ("A", "B", "C")


@pytest.fixture(scope="session")
def cluster() -> Iterator[Cluster]:
    binaries = find_binaries()
    if binaries is None:
        if os.environ.get("CI_REQUIRE_POSTGRES"):
            pytest.fail("PostgreSQL is not installed: apt-get install postgresql")
        pytest.skip("PostgreSQL is not installed on this machine")
    made = Cluster(binaries)
    yield made
    made.stop()


@pytest.fixture(params=["sqlite", "postgresql"])
def address(request: pytest.FixtureRequest, tmp_path: Path) -> str:
    if request.param == "sqlite":
        return str(tmp_path / "records.sqlite")
    running: Cluster = request.getfixturevalue("cluster")
    return running.new_database()


@pytest.fixture
def store(address: str) -> Iterator[Store]:
    with Store(address) as opened:
        opened.add_group(GROUP, CODES)
        yield opened


@pytest.fixture
def make_check(store: Store) -> Callable[..., Check]:
    def make(date: str = "2026-11-25", words: tuple[str, ...] = ("torches", "ropes")) -> Check:
        return store.keep_check(check_of(words, date))

    return make


def check_of(words: tuple[str, ...], date: str = "2026-11-25", group: str = GROUP) -> Check:
    skills = (Skill(Kind.ENDING_SOUND, "ɪz"), Skill(Kind.CONDITION, "after a hissing sound"))
    items = tuple(
        Asked("say the ending", f"Show “{word}”. Read it.", word, "/ĭz/", "reads -es", skills)
        for word in words
    )
    return Check("", group, "es,ies", date, 2, 5, items)
