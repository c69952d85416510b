"""Shared fixtures: the compiled lexicon, checked to be made from these very tables."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from phonodrill import TASKS, Gate, Item, Lexicon, Query, open_gate, select
from phonodrill.lexicon.compile import fingerprint, stored_fingerprint
from phonodrill.lexicon.schema import LEXICON_PATH
from tests.web.serving import served

ROOT = Path(__file__).parents[1]
WORDLISTS = ROOT / "wordlists"


COMPILES = "test_compile.py"
USES_EVERY_ITEM = ("test_tasks.py", "test_difficulty.py", "test_gate.py", "test_every_item.py")


@pytest.hookimpl(trylast=True)
def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Begin with what takes a minute: one process compiles, another makes every item, once."""
    first = (COMPILES, *USES_EVERY_ITEM)
    items.sort(
        key=lambda item: first.index(item.path.name) if item.path.name in first else len(first)
    )


def pytest_sessionstart() -> None:
    if stored_fingerprint(LEXICON_PATH) != fingerprint(WORDLISTS):
        pytest.exit("the lexicon is not made from these tables: python -m pip install .", 2)


@pytest.fixture(scope="session")
def lexicon() -> Iterator[Lexicon]:
    with Lexicon() as opened:
        yield opened


@pytest.fixture(scope="session")
def gate(lexicon: Lexicon) -> Gate:
    return open_gate(lexicon)


@pytest.fixture(scope="session")
def every_item(lexicon: Lexicon) -> list[Item]:
    """The whole bank: every item of every task over bands 1-3, real words."""
    query = Query(band=3)
    return [
        item
        for task in TASKS.values()
        for at in task.positions
        for item in task.candidates(select(lexicon, query), query, at)
    ]


@pytest.fixture(scope="session")
def server(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """The address of a real server of the page, without the last slash."""
    with served(tmp_path_factory.mktemp("served")) as address:
        yield address
