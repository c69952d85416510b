"""The commands of records, run as a teacher runs them.

Most run in this process: a new one for each command would take most of the time.
"""

from __future__ import annotations

import csv
import io
import json
import os
import signal
import subprocess
import sys
from pathlib import Path
from typing import Any

import pdfplumber
import pytest

from phonodrill.records.store import Store
from tests.records.conftest import check_of
from tests.running import fails, run, works

MAKE = ("check", "make", "--group", "harbor-2", "--focus", "es,ies", "--seed", "5")
GROUP = "harbor-2"


@pytest.fixture(autouse=True)
def _no_server(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("PHONODRILL_DATABASE", raising=False)


@pytest.fixture
def group() -> str:
    """A group of three students that is kept."""
    with Store() as store:
        store.add_group(GROUP, ["A", "B", "C"])
    return GROUP


@pytest.fixture
def key(group: str) -> str:
    """A check of eight items for that group."""
    with Store() as store:
        words = tuple(f"word{number}" for number in range(8))
        return store.keep_check(check_of(words, group=group)).key


def make_check(*more: str) -> dict[str, Any]:
    data: dict[str, Any] = json.loads(works(*MAKE, "--format", "json", *more))
    return data


def shown(key: str) -> dict[str, Any]:
    data: dict[str, Any] = json.loads(works("check", "show", key, "--format", "json"))
    return data


def typed(key: str, keys: str, *more: str) -> str:
    status, text, complaint = run("check", "enter", key, *more, keys=keys)
    assert (status, complaint) == (0, "")
    return text


def entered(key: str) -> list[tuple[str, int, bool, str]]:
    rows = shown(key)["results"]
    return sorted((r["student"], r["position"], r["right"], r["said"]) for r in rows)


def test_groups() -> None:
    assert (
        works("group", "add", "harbor-2", "--students", "A,B,C") == "group harbor-2: 3 students\n"
    )
    assert works("group", "student", "add", "harbor-2", "D") == "group harbor-2: 4 students\n"
    assert works("group", "add", "tuesdays", "--students", "A") == "group tuesdays: 1 student\n"
    works("group", "remove", "tuesdays", "--yes")
    works("group", "student", "remove", "harbor-2", "D", "--yes")
    data = json.loads(works("group", "list", "--students", "--format", "json"))
    (group,) = data["groups"]
    assert group == {"group": "harbor-2", "students": 3, "checks": 0, "codes": ["A", "B", "C"]}
    assert "A B C" in works("group", "list", "--students")
    assert "A B C" not in works("group", "list")
    assert "there is no group 'harbor'" in fails("group", "remove", "harbor", "--yes")
    assert "--yes" in fails("group", "remove", "harbor-2")
    works("group", "remove", "harbor-2", "--yes")
    assert json.loads(works("group", "list", "--format", "json"))["groups"] == []
    message = fails("group", "add", "gulls", "--students", "A,Wren Sole")
    assert "Wren" not in message
    assert "code 2 of the students is no code" in message


def test_a_check_is_made_shown_and_listed(group: str) -> None:
    data = make_check()
    key = data["check"]
    assert (data["group"], data["students"]) == (group, ["A", "B", "C"])
    assert shown(key) == data
    assert [item["position"] for item in data["items"]] == list(range(1, 9))
    assert all(item["ask"] and item["answer"] and item["skills"] for item in data["items"])
    again = make_check()
    old, new = ({item["word"] for item in one["items"]} for one in (data, again))
    assert not old & new, "words of the last checks rest"
    assert "Students\nA   B   C" in works("check", "show", key)
    (_, listed) = json.loads(works("check", "list", "--format", "json"))["checks"]
    assert (listed["check"], listed["items"], listed["results"]) == (key, 8, 0)
    rows = list(csv.DictReader(io.StringIO(works("check", "show", key, "--format", "csv"))))
    assert len(rows) == 8
    works("check", "remove", key, "--yes")
    assert f"there is no check '{key}'" in fails("check", "show", key)


@pytest.mark.parametrize("focus", ["sh", "/k/", "i:e", "delete"])
@pytest.mark.usefixtures("group")
def test_every_kind_of_focus(focus: str) -> None:
    data = json.loads(
        works(*MAKE[:4], "--focus", focus, "--seed", "1", "--count", "4", "--format", "json")
    )
    assert len(data["items"]) == 4


def test_the_sheet_has_a_row_for_each_student(key: str, tmp_path: Path) -> None:
    out = tmp_path / "sheet.pdf"
    said = works(*MAKE, "--count", "12", "--out", str(out), "--paper", "a4")
    assert said.startswith("check ")
    with pdfplumber.open(out) as pdf:
        pages = [page.extract_text() for page in pdf.pages]
        widths = {page.width for page in pdf.pages}
    assert {int(width) for width in widths} == {595}
    assert "1 A\n2 B\n3 C\n4" in pages[-1]
    assert "sum" in pages[-1]
    assert "12." in pages[0]
    works("check", "show", key, "--out", str(out))
    assert out.read_bytes().startswith(b"%PDF-")


def test_what_is_no_check(key: str, tmp_path: Path) -> None:
    assert "for a group and on a focus" in fails("check", "make", "--group", "harbor-2")
    assert "--count is 13" in fails(*MAKE, "--count", "13")
    assert "no date" in fails(*MAKE, "--date", "25 Nov")
    assert "--paper is for a PDF" in fails(*MAKE, "--paper", "a4")
    assert "there is no group" in fails(*MAKE[:3], "gulls", *MAKE[4:])
    assert "cannot write" in fails(*MAKE, "--out", str(tmp_path / "none" / "sheet.pdf"))
    checks = json.loads(works("check", "list", "--format", "json"))["checks"]
    assert [one["check"] for one in checks] == [key]


def test_one_key_an_item(key: str) -> None:
    text = typed(key, "yns /z/\n yyuq")
    assert "A  1/8" in text
    assert text.endswith("4 results entered, 19 left\n")
    assert entered(key) == [
        ("A", 1, True, ""),
        ("A", 2, False, ""),
        ("A", 3, False, "/z/"),
        ("A", 5, True, ""),
    ]
    # Goes on with what is missing; an unknown key does nothing; back at the start is no error.
    assert "nothing to undo" in typed(key, "?uy")
    assert ("A", 4, True, "") in entered(key)
    assert typed(key, "yyy" + "n" * 8, "--student", "A").endswith("3 results entered, 0 left\n")
    assert len(entered(key)) == 8


def test_what_was_entered_is_entered_again_and_brought_back(key: str) -> None:
    typed(key, "ys torch\n", "--student", "A")
    typed(key, "nnuuyq", "--student", "A", "--again")
    assert entered(key) == [("A", 1, True, ""), ("A", 2, False, "torch")]
    message = fails("check", "enter", key, "--student", "Z")
    assert "no such student" in message


def test_a_table_of_results(key: str, tmp_path: Path) -> None:
    table = tmp_path / "results.csv"
    table.write_text("\ufeffStudent;Item;Right;Said\r\nA;1;y;\r\nA;2;no;/s/\r\nB;1;;\r\n", "utf-8")
    for _ in range(2):
        assert works("check", "enter", key, "--from", str(table)) == "2 results entered\n"
    assert entered(key) == [("A", 1, True, ""), ("A", 2, False, "/s/")]
    before = entered(key)
    for line, problem in (
        ("Zed,1,y,", "line 3: no such student"),
        ("A,9,y,", "line 3: the item is no number from 1 to 8"),
        ("A,1,maybe,", "line 3: right is neither"),
    ):
        table.write_text(f"student,item,right,said\nB,1,y,\n{line}\n", "utf-8")
        message = fails("check", "enter", key, "--from", str(table))
        assert problem in message
        assert "Zed" not in message
    table.write_text("who,what\nA,1\n", "utf-8")
    assert "not the columns" in fails("check", "enter", key, "--from", str(table))
    assert entered(key) == before


def start_entering(key: str, *more: str) -> subprocess.Popen[bytes]:
    return subprocess.Popen(
        [sys.executable, "-m", "phonodrill", "check", "enter", key, *more],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
    )


def test_killed_while_entering_loses_only_what_is_being_typed(key: str) -> None:
    process = start_entering(key)
    assert process.stdin
    assert process.stdout
    process.stdin.write(b"yynyyyyyns tor")  # The last one is not finished.
    process.stdin.flush()
    text = b""
    while b"B  2/8" not in text:
        text += os.read(process.stdout.fileno(), 4096)
    process.send_signal(signal.SIGKILL)
    process.wait()
    process.stdin.close()
    process.stdout.close()
    right = [True, True, False, True, True, True, True, True]
    expected = [("A", position, is_right, "") for position, is_right in enumerate(right, 1)]
    assert entered(key) == [*expected, ("B", 1, False, "")]
    assert "is sound" in works("records", "verify")


def test_two_enter_the_same_check(key: str) -> None:
    processes = [start_entering(key, "--again") for _ in range(2)]
    for process in processes:
        assert process.stdin
        process.stdin.write(b"y" * 24)
        process.stdin.close()
    for process in processes:
        assert process.stdout
        assert b"24 results entered" in process.stdout.read()
        assert process.wait() == 0
        process.stdout.close()
    assert len(entered(key)) == 24


def test_all_of_a_student_as_data(key: str) -> None:
    typed(key, "ys /z/\n")
    data = json.loads(works("records", "export", "A", "--format", "json"))
    assert (data["group"], data["student"], len(data["results"])) == ("harbor-2", "A", 2)
    first, second = data["results"]
    assert (first["check"], first["focus"], first["position"], first["right"]) == (
        key,
        "es,ies",
        1,
        True,
    )
    assert second["said"] == "/z/"
    rows = list(csv.DictReader(io.StringIO(works("records", "export", "A", "--format", "csv"))))
    assert [row["right"] for row in rows] == ["yes", "no"]
    assert {row["student"] for row in rows} == {"A"}
    assert set(first) | {"group", "student"} == set(rows[0])
    assert "/z/" in works("records", "export", "A")
    works("group", "add", "ferry-1", "--students", "A")
    assert "2 groups have a student" in fails("records", "export", "A")
    assert works("records", "export", "A", "--group", "ferry-1", "--format", "json")
    assert "no such student" in fails("records", "export", "Z")


def test_backed_up_erased_and_restored(key: str, tmp_path: Path) -> None:
    typed(key, "ys krabblefish\n")
    kept, early = tmp_path / "kept.sqlite", tmp_path / "early.sqlite"
    works("records", "backup", str(early))
    assert "1 group, 3 students, 1 check, 2 results written" in works(
        "records", "backup", str(kept)
    )
    assert works("records", "verify", str(kept)) == f"{kept} is sound\n"
    assert "--yes" in fails("records", "erase", "A")
    early.unlink()
    status, text, note = run("records", "erase", "A", "--yes")
    assert (status, text) == (0, "erased with 2 results\n")
    assert "2 backups may still have it" in note
    status, text, note = run("records", "erase", "A", "--group", "harbor-2", "--backups", "--yes")
    assert (status, text) == (0, "erased from 1 backups\n")
    assert f"{early} is not there any more" in note
    assert b"krabblefish" not in kept.read_bytes()
    works("group", "add", "ferry-1")
    text = works("records", "restore", str(kept), "--yes")
    assert text.startswith(
        "1 group, 2 students, 1 check, 0 results restored\nwhat was there is kept"
    )
    kept.write_bytes(kept.read_bytes()[:5000])
    assert "is damaged" in fails("records", "restore", str(kept), "--yes")
    assert "is sound: 1 group, 2 students" in works("records", "verify")


def test_a_damaged_file_is_one_clear_line() -> None:
    works("group", "add", "harbor-2", "--students", "A,B,C")
    path = Path(os.environ["XDG_DATA_HOME"]) / "phonodrill" / "records" / "records.sqlite"
    path.write_bytes(path.read_bytes()[:9000])
    for command in (["group", "list"], ["check", "list"], ["records", "verify"]):
        message = fails(*command)
        assert "records.sqlite is damaged" in message
        assert "try: phonodrill records restore BACKUP" in message


def test_the_passphrase_is_read_from_a_pipe() -> None:
    status, text, _ = run("records", "passphrase", keys="salt water torches\n")
    assert (status, text) == (0, "the passphrase is set\n")
    assert run("records", "passphrase", keys="gull\n")[0] == 2


@pytest.mark.parametrize("package", ["sqlalchemy", "alembic"])
@pytest.mark.parametrize("command", [["group", "list"], ["check", "list"], ["records", "verify"]])
def test_a_missing_package_is_one_clear_line(
    package: str, command: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, package, None)
    assert fails(*command).splitlines() == [
        f"error: keeping records needs the package {package}",
        'try: in the folder of phonodrill: python -m pip install ".[records]"',
    ]


def test_the_database_is_imported_only_for_records() -> None:
    commands = [["lesson", "--focus", "sh"], ["warmup"], ["group"], ["check"], ["records"]]
    code = (
        "import sys; from phonodrill.cli.main import main\n"
        f"for command in {commands!r}:\n"
        "    sys.argv = ['phonodrill', *command]\n"
        "    try: main()\n    except SystemExit: pass\n"
        "print(sorted({'sqlalchemy', 'alembic', 'psycopg', 'argon2'} & set(sys.modules)))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, check=True, text=True)
    assert done.stdout.splitlines()[-1] == "[]"
