"""What is kept for the user: nothing of it is lost, whatever happens while it is written."""

from __future__ import annotations

import contextlib
import datetime as dt
import json
import os
import pwd
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from phonodrill import PhonodrillError, one_at_a_time
from phonodrill.overlay import change_overlay, read_overlay
from phonodrill.tasks.history import parse_history
from tests.cli.faulty import Run, refused

fcntl = pytest.importorskip("fcntl")
resource = pytest.importorskip("resource")
SERIES = ("warmup", "--count", "3", "--seed", "1", "--after")
LESSON = ("lesson", "--focus", "es,ies", "--minutes", "8", "--seed", "3")
OWN = "# ours\nadd ferry 2\nthis is no rule\nblock storm  # a name\n"

KILLED = """
import json, os, signal, sys, tempfile
from pathlib import Path
from phonodrill.cli.series import keep_sets
from phonodrill.overlay import Rule, change_overlay
from phonodrill.whole_file import write_whole

ACTS = {
    "own words": lambda p: change_overlay(
        p, lambda own: own._replace(rules={**own.rules, "gull": Rule("add", "gull")})),
    "series": lambda p: keep_sets(p, [("today", ["gulls"]), ("tomorrow", ["crabs"])]),
    "out": lambda p: write_whole(p, b"new" * 100_000),
}
PLACES = [(tempfile, "mkstemp"), (os, "fdopen"), (os, "fsync"), (Path, "chmod"), (Path, "replace")]

def die(*_, **__):
    os.kill(os.getpid(), signal.SIGKILL)

def dying(function, before):
    def call(*args, **kwargs):
        if before:
            die()
        result = function(*args, **kwargs)
        die()
    return call

kind, folder = sys.argv[1], Path(sys.argv[2])
old = Path(sys.argv[3]).read_bytes()
seen = []
for holder, name in PLACES:
    for before in (True, False):
        path = folder / f"{name} {before}" / "kept.txt"
        path.parent.mkdir()
        path.write_bytes(old)
        pid = os.fork()
        if not pid:
            setattr(holder, name, dying(getattr(holder, name), before))
            ACTS[kind](path)
            os._exit(0)
        _, status = os.waitpid(pid, 0)
        after = path.read_text()
        ACTS[kind](path)
        seen.append([os.WIFSIGNALED(status), after, path.read_text()])
print(json.dumps(seen))
"""
"""Kills itself before and after each step of writing, then looks at what is left."""


@pytest.mark.parametrize("kind", ["own words", "series", "out"])
def test_killed_at_any_step_of_writing(kind: str, tmp_path: Path) -> None:
    old = tmp_path / "old.txt"
    old.write_text(OWN if kind == "own words" else "# ours\nbefore: ropes\n")
    (tmp_path / "files").mkdir()
    done = subprocess.run(
        [sys.executable, "-c", KILLED, kind, tmp_path / "files", old],
        capture_output=True,
        text=True,
        check=True,
        env=os.environ,
    )
    seen = json.loads(done.stdout)
    new = {  # what is there when nothing goes wrong
        "own words": OWN + "add gull 1\n",
        "series": "# ours\nbefore: ropes\ntoday: gulls\ntomorrow: crabs\n",
        "out": "new" * 100_000,
    }[kind]
    assert [was_killed for was_killed, _, _ in seen] == [True] * 10
    whole = [old.read_text()] * 9 + [new]  # only after the last step is the new file there
    assert [after for _, after, _ in seen] == whole
    twice = new + "today: gulls\ntomorrow: crabs\n" if kind == "series" else new
    assert [again for _, _, again in seen] == [new] * 9 + [twice]


WRITERS = 4
CHANGES = 12
TOGETHER = """
import sys
from pathlib import Path
from phonodrill.cli.series import keep_sets
from phonodrill.overlay import Rule, change_overlay

kind, path, own, changes = sys.argv[1], Path(sys.argv[2]), sys.argv[3], int(sys.argv[4])
for n in range(changes):
    word = own + "abcdefghijklmnop"[n]
    if kind == "series":
        keep_sets(path, [("a set", [word])])
    else:
        change_overlay(path, lambda now: now._replace(rules={**now.rules, word: Rule("add", word)}))
"""


@pytest.mark.parametrize("kind", ["own words", "series"])
def test_several_write_the_same_file(kind: str, tmp_path: Path) -> None:
    path = tmp_path / "kept.txt"
    owns = ["gull", "crab", "rope", "clam"][:WRITERS]
    started = [
        subprocess.Popen(
            [sys.executable, "-c", TOGETHER, kind, path, own, str(CHANGES)], env=os.environ
        )
        for own in owns
    ]
    assert [process.wait(60) for process in started] == [0] * WRITERS
    wanted = {own + letter for own in owns for letter in "abcdefghijklmnop"[:CHANGES]}
    if kind == "series":
        assert sorted(map(sorted, parse_history(path.read_text()).sets)) == [
            [word] for word in sorted(wanted)
        ]
    else:
        assert read_overlay(path).rules.keys() == wanted
    assert [one.name for one in tmp_path.iterdir()] == [path.name]


def test_a_writer_that_never_ends_is_waited_for_and_named(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "words.txt"
    path.write_text(OWN)
    monkeypatch.setattr(one_at_a_time, "LONGEST_WAIT", 0.1)
    handle = os.open(tmp_path, os.O_RDONLY)
    try:
        fcntl.flock(handle, fcntl.LOCK_EX)
        with pytest.raises(PhonodrillError, match="another program is changing"):
            change_overlay(path, lambda own: own)
    finally:
        os.close(handle)
    assert path.read_text() == OWN
    change_overlay(path, lambda own: own)


def own_words_file() -> Path:
    return Path(os.environ["XDG_CONFIG_HOME"]) / "phonodrill" / "words.txt"


def keep_own(text: str | bytes) -> Path:
    path = own_words_file()
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(text.encode() if isinstance(text, str) else text)
    return path


def test_comments_and_lines_that_cannot_be_read_stay(run: Run) -> None:
    path = keep_own(OWN.encode() + b"caf\xe9\n")
    assert run("words", "add", "gull")[0] == 0
    assert path.read_bytes() == OWN.encode() + b"caf\xe9\nadd gull 1\n"
    assert run("words", "add", "ferry", "--band", "3")[0] == 0
    assert run("words", "remove", "storm")[0] == 0
    assert path.read_bytes() == b"# ours\nthis is no rule\ncaf\xe9\nadd gull 1\nadd ferry 3\n"


@pytest.mark.parametrize("command", [("words", "add", "gull"), ("warmup",), ("words", "list")])
@pytest.mark.parametrize("text", [OWN.encode("utf-16"), OWN.encode() + b"\0"])
def test_own_words_that_cannot_be_read_are_never_passed_over(
    text: bytes, command: tuple[str, ...], run: Run
) -> None:
    """A blocked word would come back unseen, and a new list would replace the old one."""
    path = keep_own(text)
    said = refused(run(*command))
    assert said.startswith(f"{path} is ")
    assert path.read_bytes() == text


@contextlib.contextmanager
def largest_file(size: int) -> Iterator[None]:
    limits = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (size, limits[1]))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, limits)


@pytest.mark.parametrize("command", [("words", "add", "gull"), ("words", "block", "gull")])
def test_own_words_larger_than_may_be_written(command: tuple[str, ...], run: Run) -> None:
    path = keep_own(OWN)
    with largest_file(len(OWN)):
        shown = run(*command)
    assert refused(shown) == f"cannot write {path}: File too large"
    assert path.read_text() == OWN
    assert [one.name for one in path.parent.iterdir()] == [path.name]


def test_a_series_larger_than_may_be_written(tmp_path: Path, run: Run) -> None:
    path = tmp_path / "series.txt"
    path.write_text("# ours\nbefore: ropes\n")
    with largest_file(30):
        code, out, error = run(*SERIES, str(path))
    assert code == 2
    assert "1. " in out  # the warm-up itself is there to be used
    assert f"error: cannot write {path}: File too large" in error
    assert path.read_text() == "# ours\nbefore: ropes\n"


def test_a_lesson_swapped_where_it_is(tmp_path: Path, run: Run) -> None:
    path = tmp_path / "lesson.json"
    assert run(*LESSON, "--out", str(path))[0] == 0
    before = path.read_bytes()
    word = json.loads(before)["lesson"]["sections"][-2]["words"][0]["word"]
    with largest_file(1000):
        shown = run("lesson", "swap", str(path), word)
    assert refused(shown) == f"cannot write {path}: File too large"
    assert path.read_bytes() == before
    assert run("lesson", "swap", str(path), word)[0] == 0
    assert path.read_bytes() != before
    assert [one.name for one in tmp_path.iterdir()] == [path.name]


def test_a_full_disk_under_all_that_is_kept(
    full_disk: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    for name in ("XDG_CONFIG_HOME", "XDG_DATA_HOME"):
        monkeypatch.setenv(name, str(full_disk))
    path = keep_own(OWN)
    series = full_disk / "series.txt"
    series.write_text("# ours\nbefore: ropes\n")
    with (full_disk / "filler").open("wb", buffering=0) as filler, contextlib.suppress(OSError):
        while True:
            filler.write(b"x" * 512)
    full = "No space left on device"
    assert refused(run("words", "add", "gull")).endswith(full)
    assert run(*SERIES, str(series))[0] == 2
    for command in (("group", "add", "harbor", "--students", "A,B"), ("group", "list")):
        code, _, error = run(*command)
        assert code == 2
        assert "Traceback" not in error
        assert len([line for line in error.splitlines() if line.startswith("error: ")]) == 1
    assert path.read_text() == OWN
    assert series.read_text() == "# ours\nbefore: ropes\n"
    (full_disk / "filler").unlink()
    (full_disk / "old.pdf").unlink()
    assert run("words", "add", "gull")[0] == 0
    assert run(*SERIES, str(series))[0] == 0


def test_records_on_a_disk_that_fills_up(tmp_path: Path, run: Run) -> None:
    """What was written before is there again when there is room."""
    database = tmp_path / "records.sqlite"
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("PHONODRILL_DATABASE", str(database))
        assert run("group", "add", "harbor", "--students", "A,B")[0] == 0
        with largest_file(database.stat().st_size):
            codes = ",".join(f"C{n}" for n in range(150))
            code, _, error = run("group", "add", "beach", "--students", codes)
            if code:  # else the log beside the file had room
                assert code == 2
                assert error.startswith("error: ")
                assert len(error.splitlines()) == 2
        said = run("group", "list")
        assert said[0] == 0
        assert "harbor" in said[1]
        assert ("beach" in said[1]) == (code == 0)
        assert run("records", "verify")[0] == 0


def test_a_home_that_is_only_read(
    read_only: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    for name in ("XDG_CONFIG_HOME", "XDG_DATA_HOME"):
        monkeypatch.setenv(name, str(read_only))
    assert run("warmup", "--count", "2")[0] == 0
    assert run("words", "list")[0] == 0
    assert refused(run("words", "add", "gull")).startswith("cannot make the folder ")
    code, out, error = run("warmup", "--count", "2", "--series", "harbor")
    assert code == 2
    assert "1. " in out
    assert "error: cannot make the folder " in error
    assert refused(run("group", "add", "harbor", "--students", "A"))


def no_user(_: int) -> Any:
    raise KeyError("no such user")


def test_no_home_at_all(run: Run, monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """As in a container whose user has no name."""
    monkeypatch.chdir(tmp_path)
    for name in ("HOME", "XDG_CONFIG_HOME", "XDG_DATA_HOME", "PHONODRILL_DATABASE"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setattr(pwd, "getpwuid", no_user)
    code, out, error = run("warmup", "--count", "2")
    assert (code, error.splitlines()[0]) == (
        0,
        "note: your own words are not known: no home folder is known",
    )
    assert "1. " in out
    for command in (("words", "add", "gull"), ("warmup", "--series", "x"), ("group", "list")):
        assert refused(run(*command)) == "no home folder is known"
    monkeypatch.setenv("PHONODRILL_DATABASE", "~/records.sqlite")
    assert refused(run("group", "list")) == "no home folder is known for ~/records.sqlite"
    assert not list(tmp_path.iterdir())


@pytest.mark.parametrize("value", ["", "relative", "/dev/null", "/dev/null/x"])
def test_odd_folders_for_settings(
    value: str, run: Run, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.chdir(tmp_path)
    home = tmp_path / "home"
    home.mkdir()
    monkeypatch.setenv("HOME", str(home))
    for name in ("XDG_CONFIG_HOME", "XDG_DATA_HOME"):
        monkeypatch.setenv(name, value)
    assert run("warmup", "--count", "2")[0] == 0
    code, _, error = run("words", "add", "gull")
    assert code in {0, 2}
    assert "Traceback" not in error
    assert {one.name for one in tmp_path.iterdir()} == {"home"}


class Clock(dt.datetime):
    """A clock that shows what it is set to."""

    shows = dt.datetime(2026, 11, 25, tzinfo=dt.UTC)

    @classmethod
    def now(cls, tz: dt.tzinfo | None = None) -> Clock:
        return cls.combine(cls.shows.date(), cls.shows.time(), tz)


@pytest.fixture
def clock(monkeypatch: pytest.MonkeyPatch) -> type[Clock]:
    monkeypatch.setattr(dt, "datetime", Clock)
    monkeypatch.setattr("phonodrill.services.checks.datetime", Clock)
    return Clock


def test_a_clock_that_jumps(clock: type[Clock], run: Run, tmp_path: Path) -> None:
    """Words rest by the order of the sets, whatever day was written before them."""
    series = tmp_path / "series.txt"
    for year in (2026, 1970, 2999, 1999):
        clock.shows = dt.datetime(year, 1, 2, tzinfo=dt.UTC)
        assert run(*SERIES, str(series), "--rest", "9")[0] == 0
    history = parse_history(series.read_text())
    years = [line[:4] for line in history.lines if not line.startswith("#")]
    assert years == ["2026", "1970", "2999", "1999"]
    words = [word for one in history.sets for word in one]
    assert len(words) == len({*words})


def test_records_of_a_clock_that_ran_ahead(clock: type[Clock], run: Run, tmp_path: Path) -> None:
    """A word missed on a day that is not yet comes back, then as if it were long ago."""
    assert run("group", "add", "harbor", "--students", "A")[0] == 0
    clock.shows = dt.datetime(2999, 1, 2, tzinfo=dt.UTC)
    made = run("check", "make", "--group", "harbor", "--focus", "es,ies", "--format", "json")
    assert made[0] == 0
    check = json.loads(made[1])
    table = tmp_path / "results.csv"
    table.write_text("student,item,right,said\nA,1,n,\nA,2,y,\n")
    assert run("check", "enter", check["check"], "--from", str(table))[0] == 0
    for year in (1969, 2026, 2999):
        clock.shows = dt.datetime(year, 1, 3, tzinfo=dt.UTC)
        code, shown, _ = run("progress", "--group", "harbor", "--format", "json")
        assert code == 0
        assert [due["word"] for due in json.loads(shown)["review"]] == [check["items"][0]["word"]]


@pytest.fixture(scope="session")
def turkish(tmp_path_factory: pytest.TempPathFactory) -> dict[str, str]:
    """The locale in which the small letter of I is ı, where it can be made."""
    folder = tmp_path_factory.mktemp("locales")
    if not shutil.which("localedef"):
        pytest.skip("no locale can be made here")
    made = subprocess.run(
        ["localedef", "-i", "tr_TR", "-f", "UTF-8", folder / "tr_TR.UTF-8"],
        check=False,
        capture_output=True,
    )
    if made.returncode > 1:
        pytest.skip("the data of locales is not installed")
    return {"LOCPATH": str(folder), "LC_ALL": "tr_TR.UTF-8", "LANG": "tr_TR.UTF-8"}


@pytest.mark.parametrize(
    "command",
    [("endings", "add", "INSIST", "--ending", "ing"), ("word", "Island")],
    ids=lambda command: command[0],
)
def test_in_turkish(command: tuple[str, ...], turkish: dict[str, str]) -> None:
    """The letters of words are English ones wherever the machine is."""
    call = [sys.executable, "-m", "phonodrill", *command]
    plain = subprocess.run(call, capture_output=True, check=True, env=os.environ)
    there = subprocess.run(call, capture_output=True, check=True, env={**os.environ, **turkish})
    assert there.stdout == plain.stdout


@pytest.mark.parametrize(
    "command",
    [
        ("word", "fıns"),
        ("word", "İsland"),
        ("word", "gull\u202e"),
        ("word", "ga\u0301p"),
        ("words", "add", "ﬁsh\u200d"),
        ("print", "list", "שלום"),
        ("sentences", os.fsdecode(b"\xff")),
        ("chain", "crab", os.fsdecode(b"\xed\xa0\x80")),
        ("print", "list", os.fsdecode(b"\xff")),
        ("lesson", "--focus", "s\x1b[2J"),
        ("lesson", "--focus", "s" * 100_000),
        ("warmup", "--sound", "\u202e\x07"),
        ("warmup", "--accent", "\x1b]0;x\x07"),
        ("taught", "check", "\x1b[2J.txt"),
        ("no-such\x1b[2J",),
        ("warmup", "--no-such\x1b[2J"),
    ],
    ids=ascii,
)
def test_odd_signs_on_the_command_line(command: tuple[str, ...], run: Run) -> None:
    """What is said of them cannot turn, clear or ring a screen."""
    shown = run(*command)
    refused(shown)
    assert all(sign.isprintable() or sign == "\n" for sign in shown[2])
    assert len(shown[2]) < 3000
