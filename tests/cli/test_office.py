from __future__ import annotations

import io
import subprocess
import sys
from pathlib import Path

import docx
import pptx
import pytest

from tests.running import fails, works

LESSON = ("lesson", "--focus", "es,ies", "--minutes", "15", "--seed", "3")


@pytest.mark.parametrize("name", ["lesson.docx", "lesson.pptx", "crabs & 'gulls' #1.PPTX"])
def test_the_ending_of_the_name_chooses(name: str, tmp_path: Path) -> None:
    out = tmp_path / name
    assert works(*LESSON, "--out", str(out)) == ""
    content = out.read_bytes()
    works(*LESSON, "--out", str(out))
    assert out.read_bytes() == content
    works(*LESSON[:-1], "4", "--out", str(out))
    assert out.read_bytes() != content
    assert [path.name for path in tmp_path.iterdir()] == [name]


def test_an_edited_lesson_and_the_students_part(tmp_path: Path) -> None:
    data, whole, part = (tmp_path / name for name in ("l.json", "whole.pptx", "part.pptx"))
    works(*LESSON, "--out", str(data))
    works("lesson", "--from", str(data), "--out", str(whole))
    works("lesson", "--from", str(data), "--student", "--out", str(part))
    slides = [len(pptx.Presentation(str(path)).slides) for path in (whole, part)]
    assert slides[0] > slides[1] > 10
    works(*LESSON, "--out", str(tmp_path / "same.pptx"))
    assert (tmp_path / "same.pptx").read_bytes() == whole.read_bytes()


@pytest.mark.parametrize(
    "command",
    [
        ("warmup", "--seed", "1"),
        ("endings", "table"),
        ("endings", "sort", "--seed", "1"),
        ("word", "ferries"),
        ("print", "list", "gulls"),
    ],
)
def test_every_command_writes_docx(command: tuple[str, ...], tmp_path: Path) -> None:
    out = tmp_path / "result.docx"
    works(*command, "--out", str(out))
    file = docx.Document(io.BytesIO(out.read_bytes()))
    assert file.paragraphs[0].style is not None
    assert file.paragraphs[0].style.name == "Title"
    assert file.paragraphs[0].text == works(*command).splitlines()[0]


@pytest.mark.source("ISO 216: A4 is 210 mm by 297 mm; letter is 8.5 by 11 inches")
@pytest.mark.parametrize("command", [LESSON, ("print", "list", "gulls")])
def test_docx_on_either_paper(command: tuple[str, ...], tmp_path: Path) -> None:
    for paper, size in (("letter", (216, 279)), ("a4", (210, 297))):
        out = tmp_path / f"{paper}.docx"
        works(*command, "--paper", paper, "--out", str(out))
        (page,) = docx.Document(str(out)).sections
        assert page.page_width
        assert page.page_height
        assert (round(page.page_width.mm), round(page.page_height.mm)) == size


def test_a_format_asked_for_goes_before_the_name(tmp_path: Path) -> None:
    out = tmp_path / "lesson.pptx"
    works(*LESSON, "--format", "md", "--out", str(out))
    assert out.read_text("utf-8").startswith("# Lesson")


def test_other_commands_make_no_slides(tmp_path: Path) -> None:
    out = tmp_path / "warmup.pptx"
    assert "error: this is not made as slides" in fails("warmup", "--out", str(out))
    assert not out.exists()


def test_the_bank_is_rows(tmp_path: Path) -> None:
    out = tmp_path / "bank.docx"
    assert "error: the bank is rows of data" in fails("bank", "--task", "delete", "--out", str(out))
    assert not out.exists()


@pytest.mark.parametrize("ending", ["docx", "pptx"])
def test_where_nothing_can_be_written(ending: str) -> None:
    assert "cannot write" in fails(*LESSON, "--out", f"no/such/folder/lesson.{ending}")


@pytest.mark.parametrize("package", ["docx", "pptx"])
def test_a_missing_package_is_one_clear_line(package: str, tmp_path: Path) -> None:
    out = tmp_path / f"lesson.{package}"
    out.write_text("old")
    code = (
        f"import sys; sys.modules[{package!r}] = None\n"
        "from phonodrill.cli.main import main\n"
        f"sys.argv = ['phonodrill', *{LESSON!r}, '--out', {str(out)!r}]; main()"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, check=False, text=True)
    assert done.returncode == 2
    assert [line for line in done.stderr.splitlines() if not line.startswith("note: ")] == [
        f"error: {package.upper()} needs the package python-{package}",
        'try: in the folder of phonodrill: python -m pip install ".[print]"',
    ]
    assert out.read_text() == "old"
    assert [path.name for path in tmp_path.iterdir()] == [out.name]
