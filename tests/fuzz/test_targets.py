"""Every reader of files, given odd and random ones: a result or a clear refusal, and no loss.

The same targets run for hours by ``python -m tests.fuzz``; here with few examples.
"""

from __future__ import annotations

import copy
import json
import random
from pathlib import Path

import pytest

from phonodrill.records.backup import back_up, check_file
from phonodrill.records.place import Place
from phonodrill.records.store import Store
from phonodrill.taught.steps import parse_steps
from tests.fuzz import targets
from tests.fuzz.__main__ import Run, change_bytes
from tests.fuzz.oddities import ODD_JSON, ODDITIES
from tests.fuzz.targets import READERS, TARGETS, Target
from tests.records.conftest import CODES, GROUP, check_of

RANDOM_FILES = 8
SPOILED = 8
WRITTEN = {*READERS} - {"tables", "codes"}
"""Readers of files that a teacher writes."""
LARGE = ("one line of 10 MB", "one word of 10 MB", "21 MB")


@pytest.mark.parametrize("name", READERS)
def test_files_that_are_right_are_taken(name: str) -> None:
    target = READERS[name]
    assert all(map(target.run, target.seeds()))


@pytest.mark.parametrize("oddity", ODDITIES)
@pytest.mark.parametrize("name", READERS)
def test_odd_files(name: str, oddity: str) -> None:
    if name not in WRITTEN and oddity in LARGE:
        pytest.skip("what no file of a teacher's holds has not that size")
    target = READERS[name]
    target.run(ODDITIES[oddity](target.seeds()[0]))


@pytest.mark.parametrize("oddity", ["line ends of Windows", "byte order mark"])
@pytest.mark.parametrize("name", sorted(WRITTEN))
def test_what_windows_writes_is_taken(name: str, oddity: str) -> None:
    target = READERS[name]
    assert target.run(ODDITIES[oddity](target.seeds()[0]))


@pytest.mark.parametrize("oddity", ODD_JSON)
def test_odd_json(oddity: str) -> None:
    assert not TARGETS["lesson"].run(ODD_JSON[oddity])


@pytest.mark.parametrize("name", READERS)
def test_random_changes(name: str) -> None:
    target = READERS[name]
    chance = random.Random(name)
    for _ in range(RANDOM_FILES):
        target.run(change_bytes(chance.choice(target.seeds()), target.words, chance))


def test_a_run_keeps_what_it_finds(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The harness itself: a crash is a finding, a refusal is none."""

    def read(data: bytes) -> bool:
        if b"x" in data:
            raise KeyError("x")
        return True

    run = Run(next(iter(TARGETS)), 1, tmp_path)
    run.target = Target("planted", read, lambda: [b"a"], ("x",))
    for data in (b"a", b"x", b"ax"):
        run.once(data)
    assert (run.executions, run.accepted) == (3, 1)
    assert list(run.found.values()) == [2]
    kept = next(path for path in tmp_path.iterdir() if path.suffix == ".bin")
    assert kept.read_bytes() == b"x"
    assert "FOUND KeyError test_targets.py" in capsys.readouterr().out


def test_a_target_finds_what_is_lost(monkeypatch: pytest.MonkeyPatch) -> None:
    """The checks themselves: a reader that passes a line over in silence is caught."""
    read = TARGETS["taught"].run
    assert read(b"s\na\n")
    monkeypatch.setattr(
        "tests.fuzz.targets.parse_steps",
        lambda lines, inventory: parse_steps([*lines][:1], inventory),
    )
    with pytest.raises(targets.WrongError, match="a line is lost"):
        read(b"s\na\n")


@pytest.fixture(scope="module")
def backup(tmp_path_factory: pytest.TempPathFactory) -> bytes:
    """A backup of a group, its students and a check."""
    folder = tmp_path_factory.mktemp("records")
    with Store(Place(folder / "records.sqlite")) as store:
        store.add_group(GROUP, CODES)
        store.keep_check(check_of(("torches", "ropes")))
        back_up(store, folder / "backup.sqlite")
    return (folder / "backup.sqlite").read_bytes()


@pytest.mark.parametrize("seed", range(SPOILED))
def test_a_spoiled_backup(seed: int, backup: bytes, tmp_path: Path) -> None:
    """Nothing but what is kept or a clear refusal comes of it, by the command or the store."""
    chance = random.Random(seed)
    spoiled = bytearray(backup)
    start = chance.choice((0, 0, 100, len(backup) // 2))
    for _ in range(chance.choice((1, 8, 200))):
        at = chance.randrange(start, min(len(spoiled), start + 4096))
        spoiled[at] = chance.randrange(256)
    path = tmp_path / "backup.sqlite"
    path.write_bytes(spoiled[: chance.choice((len(spoiled), len(spoiled), 5000))])
    with targets.refused_fairly():
        check_file(path)
    with targets.refused_fairly(), Store(Place(path), must_exist=True) as store:
        for group in store.list_groups():
            store.list_students(group.name)
            for check in store.list_checks(group.name):
                store.find_check(check.key)


@pytest.mark.parametrize("name", ["activities", "watch_outs", "points", "words", "items"])
@pytest.mark.parametrize("value", [5, None, {}, [None]])
def test_a_list_of_a_lesson_that_is_none(name: str, value: object) -> None:
    data = copy.deepcopy(targets.lessons()[0])
    for section in data["lesson"]["sections"]:
        if name in section:
            section[name] = value
            break
    TARGETS["lesson"].run(json.dumps(data).encode())
