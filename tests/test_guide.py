"""The worked examples of the contributors' guide, followed step by step in a copy."""

from __future__ import annotations

import json
import os
import re
import shutil
import sqlite3
import subprocess
import sys
from contextlib import closing
from dataclasses import astuple
from pathlib import Path

import pytest

from phonodrill.lexicon.wordlists import read_wordlists
from tests.conftest import ROOT
from tests.raw_cmudict import raw_cmudict

STEP = re.compile(
    r"<!-- (?:new file: (?P<new>\S+)|into (?P<file>\S+), behind: (?P<anchor>.*?)) -->\n"
    r"```\w+\n(?P<text>.*?)```",
    re.DOTALL,
)


def follow(example: str, project: Path) -> None:
    """Copy the project and do what a worked example says."""
    left_out = shutil.ignore_patterns("*.sqlite", "__pycache__")
    shutil.copytree(ROOT / "phonodrill", project / "phonodrill", ignore=left_out)
    lexicon = Path("phonodrill") / "lexicon" / "lexicon.sqlite"
    shutil.copy(ROOT / lexicon, project / lexicon)
    shutil.copytree(ROOT / "wordlists", project / "wordlists")
    shutil.copy(ROOT / "pyproject.toml", project)
    guide = (ROOT / "DEVELOPERS.md").read_text("utf-8")
    start = guide.index(f"<!-- worked example: {example} -->")
    steps = list(STEP.finditer(guide[start : guide.index("<!-- /worked example -->", start)]))
    assert len(steps) > 3
    for step in steps:
        path = project / (step["new"] or step["file"])
        if step["new"]:
            assert not path.exists()
            path.write_text(step["text"], "utf-8")
            continue
        lines = path.read_text("utf-8").splitlines(keepends=True)
        places = [number for number, line in enumerate(lines) if step["anchor"] in line]
        assert len(places) == 1, step["anchor"]
        lines.insert(places[0] + 1, step["text"])
        path.write_text("".join(lines), "utf-8")


def says(project: Path, *words: str) -> str:
    done = subprocess.run(
        [sys.executable, "-m", *words],
        cwd=project,
        env=os.environ | {"PYTHONPATH": str(project)},
        capture_output=True,
        check=False,
        encoding="utf-8",
    )
    assert done.returncode == 0, done.stderr + done.stdout
    return done.stdout


def install_derived_words(project: Path) -> None:
    """Put the table of derived words into the lexicon, as an install would; that takes a minute."""
    rows = [astuple(row) for row in read_wordlists(project / "wordlists").derived_words]
    path = project / "phonodrill" / "lexicon" / "lexicon.sqlite"
    with closing(sqlite3.connect(path)) as connection, connection:
        connection.execute("DELETE FROM derived_word")
        connection.executemany("INSERT INTO derived_word VALUES (?, ?, ?, ?)", rows)


@pytest.mark.source("raw CMUdict: how many phonemes a word has")
def test_a_task(tmp_path: Path) -> None:
    follow("a task", tmp_path)
    drawn = ("--task", "count", "--count", "12", "--seed", "1", "--format", "json")
    items = json.loads(says(tmp_path, "phonodrill", "warmup", *drawn))["items"]
    assert len(items) == 12
    for item in items:
        counts = {len(phones) for phones in raw_cmudict()[item["stimulus"]]}
        assert item["answer_line"] in {f"{count} sounds" for count in counts}, item
    lesson = says(tmp_path, "phonodrill", "lesson", "--focus", "count", "--seed", "1")
    assert "How many sounds has it?" in lesson
    says(tmp_path, "ruff", "check", "phonodrill/tasks")
    says(tmp_path, "ruff", "format", "--check", "phonodrill/tasks")


@pytest.mark.source("raw CMUdict: how words in -ish are said; their spelling is common practice")
def test_an_ending(tmp_path: Path) -> None:
    follow("an ending", tmp_path)
    for base, form in (("red", "reddish"), ("self", "selfish"), ("style", "stylish")):
        added = ("endings", "add", base, "--ending", "ish", "--format", "json")
        made = json.loads(says(tmp_path, "phonodrill", *added))["forms"][0]
        assert made["form"] == form
        assert made["arpabet"] in {" ".join(phones) for phones in raw_cmudict()[form]}
    install_derived_words(tmp_path)
    undone = says(tmp_path, "phonodrill", "endings", "base", "selfish", "--format", "json")
    assert [found["base"] for found in json.loads(undone)["bases"]] == ["self"]
    sort = ("endings", "sort", "--ending", "ish", "--band", "3", "--format", "json")
    drawn = json.loads(says(tmp_path, "phonodrill", *sort))
    assert {row["word"] for group in drawn["groups"] for row in group["words"]} == {
        "selfish",
        "reddish",
    }
    says(tmp_path, "ruff", "check", "phonodrill")
