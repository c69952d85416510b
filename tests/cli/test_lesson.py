from __future__ import annotations

import csv
import json
from pathlib import Path

import pytest

from tests.running import fails, run, works

FORMATS = ("text", "md", "csv", "json", "html")


@pytest.fixture
def written(tmp_path: Path) -> Path:
    path = tmp_path / "lesson.json"
    works("lesson", "--focus", "es,ies", "--band", "3", "--seed", "3", "--out", str(path))
    return path


def test_a_lesson_in_every_format(tmp_path: Path) -> None:
    for kind in FORMATS:
        text = works("lesson", "--focus", "sh", "--seed", "3", "--format", kind)
        assert "shout" in text
        if kind not in ("csv", "json"):
            assert "not a diagnosis" in text
    rows = list(csv.DictReader(text_lines(tmp_path)))
    assert {row["section"] for row in rows} >= {"warmup", "rule", "list", "sort", "check"}


def text_lines(tmp_path: Path) -> list[str]:
    path = tmp_path / "words.csv"
    works("lesson", "--focus", "sh", "--seed", "3", "--out", str(path))
    return path.read_text("utf-8-sig").splitlines()


def test_json_is_the_whole_lesson(written: Path) -> None:
    data = json.loads(written.read_text("utf-8"))
    assert data["phonodrill"]["schema"] == 1
    lesson = data["lesson"]
    assert lesson["request"]["focus"] == "es,ies"
    assert [part["name"] for part in lesson["sections"]][:3] == ["warmup", "review", "rule"]


def test_the_student_part_has_no_answers(written: Path) -> None:
    text = works("lesson", "--from", str(written), "--student")
    lesson = json.loads(written.read_text("utf-8"))["lesson"]
    parts = {part["name"]: part for part in lesson["sections"]}
    for row in parts["bases"]["words"]:
        assert row["word"] in text
        shown = text[text.index("Find the base") : text.index("Dictation")]
        assert all(f" {base} " not in f" {' '.join(shown.split())} " for base in row["bases"])
    for row in parts["dictation"]["words"]:
        assert row["word"] not in text[text.index("Dictation") :]
    assert "a right answer shows" not in text
    assert "Key" not in text


def test_a_week_and_a_series(tmp_path: Path) -> None:
    path = tmp_path / "series.txt"
    data = json.loads(
        works("lesson", "--focus", "s", "--days", "2", "--after", str(path), "--format", "json")
    )
    assert [one["request"]["day"] for one in data["lessons"]] == [1, 2]
    lines = path.read_text("utf-8").splitlines()
    assert len(lines) == 3
    assert "lesson s, day 2, oral 3 min:" in lines[2]
    done = json.loads(works("lesson", "--focus", "s", "--after", str(path), "--format", "json"))
    before = set(" ".join(line.rpartition(":")[2] for line in lines[1:]).split())
    (listed,) = (p for p in done["lesson"]["sections"] if p["name"] == "list")
    assert before.isdisjoint(row["word"] for row in listed["words"])


def test_taught() -> None:
    text = works(
        *("lesson", "--focus", "sh", "--taught", "default", "--seed", "1", "--minutes", "15")
    )
    assert "words by what was taught" in text


def test_swap_rewrites_the_file(written: Path) -> None:
    before = json.loads(written.read_text("utf-8"))["lesson"]
    old = next(p for p in before["sections"] if p["name"] == "build")["words"][0]["word"]
    text = written.read_text("utf-8")
    new = next(w for w in ("finches", "torches", "stitches", "clutches") if f'"{w}"' not in text)
    done = run("lesson", "swap", str(written), old, new)
    assert done.returncode == 0, done.stderr
    assert f"{old} → {new}" in done.stderr
    after = written.read_text("utf-8")
    sections = {part["name"]: part for part in json.loads(after)["lesson"]["sections"]}
    assert old not in {row["word"] for row in sections["build"]["words"]}
    assert f'"base": "{new.removesuffix("es")}"' in after
    works("lesson", "--from", str(written))


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        ((), "no focus"),
        (("--focus", "zzq"), "no correspondence is spelled"),
        (("--focus", "s", "--minutes", "3"), "--minutes is 3"),
        (("--focus", "s", "--days", "0"), "--days is 0"),
        (("--focus", "s", "--days", "99"), "--days is 99"),
        (("--focus", "ti", "--band", "1"), "too few for a lesson"),
        (("--focus", "s", "--from", "x.json"), "--from has its focus"),
        (("--from", "nowhere.json"), "cannot read"),
        (("--focus", "s", "--out", "/nowhere/lesson.json"), "cannot write"),
        (("--focus", "s", "--series", "../x"), "no name for a series"),
        (("swap", "nowhere.json", "crabs"), "cannot read"),
    ],
)
def test_bad_input(arguments: tuple[str, ...], says: str) -> None:
    assert says in fails("lesson", *arguments)


def test_files_that_are_no_lesson(tmp_path: Path, written: Path) -> None:
    bad = tmp_path / "bad.json"
    for text in ("{", "[]", "{}", '{"lesson": 3}', "[" * 100_000):
        bad.write_text(text, "utf-8")
        assert "error: " in fails("lesson", "--from", str(bad))
    assert "is not in the lesson" in fails("lesson", "swap", str(written), "zebra")


def test_a_failed_swap_leaves_the_file(written: Path) -> None:
    before = written.read_bytes()
    fails("lesson", "swap", str(written), "zebra", "crabs")
    assert written.read_bytes() == before


def test_a_word_is_swapped_on_the_day_that_has_it(tmp_path: Path) -> None:
    path = tmp_path / "week.json"
    works("lesson", "--focus", "s", "--days", "2", "--seed", "2", "--out", str(path))
    second = json.loads(path.read_text("utf-8"))["lessons"][1]
    word = next(p for p in second["sections"] if p["name"] == "build")["words"][0]["word"]
    done = run("lesson", "swap", str(path), word)
    assert done.returncode == 0, done.stderr
    assert f"note: day 2: {word} → " in done.stderr
    assert "day 1" not in done.stderr
    works("lesson", "--from", str(path), "--format", "html")
