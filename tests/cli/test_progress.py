"""From a check to the next lesson, run as a teacher runs it."""

from __future__ import annotations

import csv
import io
import json
import re
import xml.etree.ElementTree as ET
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from phonodrill import Lexicon
from phonodrill.lesson.focus import parse_focus
from phonodrill.render.views.progress import SIGNS
from tests.running import fails, run, works

GROUP = ("--group", "harbor-2")
FOCI = (("es,ies", "2026-11-02"), ("es,ies", "2026-11-09"), ("delete", "2026-11-09"))


@pytest.fixture(scope="module", autouse=True)
def words(tmp_path_factory: pytest.TempPathFactory) -> Iterator[dict[str, list[str]]]:
    """Three checks of three students: B and C spell no ending right, A has all of it."""
    folder = tmp_path_factory.mktemp("kept")
    own = pytest.MonkeyPatch()
    own.setenv("PHONODRILL_DATABASE", str(folder / "records.sqlite"))
    own.setenv("XDG_CONFIG_HOME", str(folder))
    works("group", "add", "harbor-2", "--students", "A,B,C")
    asked: dict[str, list[str]] = {"es,ies": [], "delete": []}
    for number, (focus, date) in enumerate(FOCI):
        options = ("--focus", focus, "--date", date, "--seed", str(number), "--format", "json")
        made = json.loads(works("check", "make", *GROUP, *options))
        asked[focus] += [item["word"] for item in made["items"]]
        results = folder / f"{number}.csv"
        results.write_text("\n".join(_rows(focus, made["items"])), encoding="utf-8")
        works("check", "enter", made["check"], "--from", str(results))
    yield asked
    own.undo()


def _rows(focus: str, items: list[dict[str, Any]]) -> Iterator[str]:
    yield "student,item,right,said"
    for student in "ABC":
        for number, item in enumerate(items, 1):
            right = student == "A" or focus == "delete"
            said = "s" if item["how"] == "say the ending" and not right else ""
            yield f"{student},{number},{'y' if right else 'n'},{said}"


def test_progress_tells_who_has_what() -> None:
    data = json.loads(works("progress", *GROUP, "--format", "json"))
    assert data["answers"] == 3 * 8 * 3
    verdicts = {
        (row["student"], row["skill"]): row["verdict"]
        for row in data["standings"]
        if row["kind"] == "task"
    }
    assert verdicts == {(student, "delete"): "has it" for student in "ABC"}
    for row in data["standings"]:
        assert row["low"] <= row["right"] / row["asked"] <= row["high"]
        if row["asked"] < data["rule"]["fewest"]:
            assert row["verdict"] == "too few to say"
    what = " ".join(one["what"] for one in data["confusions"])
    assert "says the syllable /ĭz/ as one sound, /s/" in what


def test_progress_is_read_without_color() -> None:
    text = works("progress", *GROUP)
    assert "+ has it; ~ on the way; - not yet; ? too few to say" in text
    assert "A check is not a diagnosis" in text
    grid = text.partition("Who stands where")[2].partition("\n\n")[0].splitlines()[3:]
    assert [line[0] for line in grid] == ["A", "B", "C"]
    assert {sign for line in grid for sign in line[1:].split()} <= {*SIGNS.values()}
    tables = [part for part in text.split("\n\n") if part.startswith(("Skills", "Who", "Growth"))]
    assert len(tables) > 3
    assert max(len(line) for part in tables[1:] for line in part.splitlines()[1:]) <= 80


def test_the_growth_is_drawn_in_a_page_that_needs_nothing_else(tmp_path: Path) -> None:
    for who in (GROUP, ("--student", "B")):
        path = tmp_path / "progress.html"
        works("progress", *who, "--out", str(path))
        page = path.read_text("utf-8")
        (drawn,) = re.findall(r"<svg.*?</svg>", page, re.DOTALL)
        svg = ET.fromstring(drawn)
        ids = {child.get("id") for child in svg}
        assert {*(svg.get("aria-labelledby") or "").split()} <= ids
        assert "11-09" in drawn
        assert not re.search(r"(src|href)=", page)


def test_a_student_alone_by_another_rule_in_a_table() -> None:
    options = ("--student", "B", "--fewest", "1", "--format", "csv")
    rows = list(csv.DictReader(io.StringIO(works("progress", *options))))
    assert {row["student"] for row in rows} == {"B"}
    assert set(rows[0]) >= {"kind", "skill", "right", "asked", "low", "high", "verdict", "last"}
    assert "too few to say" not in {row["verdict"] for row in rows}


def test_next_says_what_for_whom_and_why(lexicon: Lexicon) -> None:
    data = json.loads(works("next", *GROUP, "--format", "json"))
    first = data["next"][0]
    assert parse_focus(first["focus"], lexicon).endings
    assert first["is_sure"]
    assert {*first["students"], *first["likely"]} == {"B", "C"}
    assert first["right"] < first["asked"]
    text = works("next", *GROUP)
    assert f"{first['right']} of {first['asked']} right" in text
    assert f"phonodrill lesson --group harbor-2 --focus {first['focus']}" in text


def test_a_lesson_starts_from_what_was_missed(words: dict[str, list[str]], tmp_path: Path) -> None:
    path = tmp_path / "lesson.json"
    works("lesson", *GROUP, "--seed", "4", "--out", str(path))
    lesson = json.loads(path.read_text("utf-8"))["lesson"]
    first = json.loads(works("next", *GROUP, "--format", "json"))["next"][0]
    assert lesson["request"]["focus"] == first["focus"]
    missed = set(lesson["request"]["review"])
    assert missed <= {*words["es,ies"]}
    parts = {part["name"]: part for part in lesson["sections"]}
    assert missed & {word["word"] for word in parts["list"]["words"] if word["review"]}
    assert missed & {word["word"] for word in parts["dictation"]["words"]}
    again = tmp_path / "again.json"
    works("lesson", "--from", str(path), "--out", str(again))
    assert again.read_text("utf-8") == path.read_text("utf-8")


def test_a_focus_named_is_kept() -> None:
    options = ("--focus", "sh", "--seed", "4", "--minutes", "15", "--format", "json")
    lesson = json.loads(works("lesson", *GROUP, *options))["lesson"]
    assert lesson["request"]["focus"] == "sh"
    (listed,) = (part["words"] for part in lesson["sections"] if part["name"] == "list")
    review = [word["word"] for word in listed if word["review"]]
    assert {*review} & {*lesson["request"]["review"]}


def test_a_warmup_takes_up_missed_words(words: dict[str, list[str]]) -> None:
    options = ("--ending", "s,es,ies", "--drop", "last", "--seed", "4", "--format", "json")
    data = json.loads(works("warmup", *GROUP, *options))
    assert {item["stimulus"] for item in data["items"]} & {*words["es,ies"]}


def test_what_cannot_be_done_is_one_line() -> None:
    assert "no such student" in fails("progress", *GROUP, "--student", "X")
    assert "in no group" in fails("progress", "--student", "X")
    assert "no group" in fails("next")
    assert "marks" in fails("next", *GROUP, "--has", "0.2")
    assert "only --from" in fails("lesson", *GROUP, "--from", "lesson.json")


def test_a_group_without_answers_is_told_to_check_first() -> None:
    works("group", "add", "pier", "--students", "D")
    done = run("progress", "--group", "pier")
    assert done.returncode == 0
    assert "phonodrill check make --group pier" in done.stderr
    assert "check first" in works("next", "--group", "pier")
    assert "nothing was asked yet" in fails("lesson", "--group", "pier")
