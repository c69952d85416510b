from __future__ import annotations

import json
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest

from tests.conftest import WORDLISTS
from tests.running import fails, run, works


@pytest.fixture
def file(tmp_path: Path) -> Path:
    path = tmp_path / "class.txt"
    path.write_text("s a\nt p\nzq\nsh # digraph\nword: damn the\n", "utf-8")
    return path


def test_check_shows_every_step_and_bad_lines_by_number(file: Path) -> None:
    done = run("taught", "check", str(file))
    assert done.returncode == 0
    assert "line 3 passed over" in done.stderr
    assert "line 3 passed over" in done.stdout
    assert "line 5: a word that is not for class" in done.stdout
    assert "damn" not in done.stdout + done.stderr
    assert "sh before its letters: h (not taught)" in done.stdout


@pytest.fixture
def half_taught(tmp_path: Path) -> str:
    """The first half of the default order: what comes next is found in a third of the time."""
    lines = (WORDLISTS / "taught_default.txt").read_text("utf-8").splitlines()
    path = tmp_path / "half.txt"
    path.write_text("\n".join(lines[:60]), "utf-8")
    return str(path)


@pytest.mark.parametrize("kind", ["text", "md", "csv", "json"])
def test_both_commands_in_every_format(kind: str, file: Path, half_taught: str) -> None:
    assert works("taught", "check", str(file), "--format", kind)
    assert works("taught", "suggest", "--start", half_taught, "--steps", "3", "--format", kind)


def test_check_as_data(file: Path) -> None:
    data = json.loads(works("taught", "check", str(file), "--format", "json"))
    assert [step["line"] for step in data["steps"]] == [1, 2, 4, 5]
    assert data["steps"][1]["understood"] == ["t /t/", "p /p/"]
    assert "at" in data["steps"][1]["examples"]
    assert len(data["problems"]) == 2


def test_a_suggestion_is_a_taught_file(tmp_path: Path) -> None:
    out, plot = tmp_path / "mine.txt", tmp_path / "growth.svg"
    works("taught", "suggest", "--steps", "12", "--plot", str(plot), "--out", str(out))
    assert "Traceback" not in works("taught", "check", str(out))
    following = works("taught", "suggest", "--start", str(out), "--steps", "2")
    steps = [line for line in following.splitlines() if line and not line.startswith("#")]
    assert len(steps) == 14
    assert len(ET.parse(plot).getroot().findall("{http://www.w3.org/2000/svg}polyline")) == 4


def test_the_default_order_has_a_name() -> None:
    text = works("taught", "check", "default")
    assert text.startswith("What default opens")
    assert "before its letters" not in text
    assert "taught already" not in text
    assert (WORDLISTS / "taught_default.txt").is_file()


def test_nothing_left_to_teach_is_said() -> None:
    assert "leaves nothing to teach" in fails("taught", "suggest", "--start", "default")


def test_a_plot_that_cannot_be_written(half_taught: str) -> None:
    suggest = ("taught", "suggest", "--start", half_taught, "--steps", "2")
    assert "cannot write" in fails(*suggest, "--plot", "no/such/x.svg")


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (["taught", "check", "no/such.txt"], "cannot read no/such.txt"),
        (["taught", "suggest", "--goal", "songs"], "songs"),
        (["taught", "suggest", "--steps", "0"], "0"),
        (["taught", "chek"], "chek"),
    ],
)
def test_bad_input_is_one_clear_line(arguments: list[str], message: str) -> None:
    assert message in fails(*arguments)


def test_help() -> None:
    for command in ([], ["check"], ["suggest"]):
        assert "Usage" in works("taught", *command, "--help")
