"""``phonodrill lesson --out NAME.pdf``: one file, or one clear line."""

from __future__ import annotations

import io
import sys
from pathlib import Path

import pdfplumber
import pytest

from tests.running import run

LESSON = ("lesson", "--focus", "es,ies", "--seed", "3")


def text_of(path: Path) -> str:
    with pdfplumber.open(io.BytesIO(path.read_bytes())) as pdf:
        return "\n".join(page.extract_text() for page in pdf.pages)


def test_a_pack_is_one_file_the_same_for_a_seed(tmp_path: Path) -> None:
    first, again, other = (tmp_path / f"{name}.pdf" for name in ("a", "b", "c"))
    for path in (first, again):
        assert run(*LESSON, "--out", str(path))[0] == 0
    assert run(*LESSON[:-1], "4", "--out", str(other))[0] == 0
    assert first.read_bytes() == again.read_bytes() != other.read_bytes()
    text = text_of(first)
    titles = ("Lesson: the ending", "Words to read", "Sound boxes", "Dictation", "Answer key")
    assert all(title in text for title in titles)


def test_parts_and_paper_are_chosen(tmp_path: Path) -> None:
    path = tmp_path / "one.pdf"
    assert run(*LESSON, "--parts", "dictation", "--paper", "a4", "--out", str(path))[0] == 0
    with pdfplumber.open(path) as pdf:
        (page,) = pdf.pages
        # ISO 216: A4 is 210 mm by 297 mm.
        assert (page.width, page.height) == pytest.approx((595.3, 841.9), abs=0.1)


def test_students_get_the_parts_without_answers(tmp_path: Path) -> None:
    path = tmp_path / "students.pdf"
    assert run(*LESSON, "--student", "--out", str(path))[0] == 0
    text = text_of(path)
    assert "Words to read" in text
    assert not any(word in text for word in ("Answer key", "Quick check", "→", "Rule:"))


def test_an_edited_lesson_is_printed_alike(tmp_path: Path) -> None:
    data, direct, read = (tmp_path / name for name in ("a.json", "a.pdf", "b.pdf"))
    assert run(*LESSON, "--out", str(data))[0] == 0
    assert run(*LESSON, "--out", str(direct))[0] == 0
    assert run("lesson", "--from", str(data), "--out", str(read))[0] == 0
    assert direct.read_bytes() == read.read_bytes()


@pytest.mark.parametrize(
    ("more", "said"),
    [
        (("--parts", "poster", "--out", "x.pdf"), "no part 'poster'"),
        (("--parts", "key"), "--parts is for a PDF"),
        (("--paper", "a4", "--out", "x.html"), "--paper is for a PDF"),
        (("--student", "--parts", "key", "--out", "x.pdf"), "--student and --parts"),
        (("--paper", "a3", "--out", "x.pdf"), "a3"),
        (("--out", "no/such/folder/x.pdf"), "cannot write"),
        (("--minutes", "8", "--parts", "mat", "--out", "x.pdf"), "none of these parts"),
    ],
)
def test_bad_input_is_one_clear_line(
    more: tuple[str, ...],
    said: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.chdir(tmp_path)
    code, out, error = run(*LESSON, *more)
    assert code == 2
    assert out == ""
    assert said in error
    assert "Traceback" not in error
    assert not list(tmp_path.iterdir())


@pytest.mark.parametrize("package", ["typst", "fontpkg_abeezee", "fontpkg_noto_sans"])
def test_a_missing_package_is_one_clear_line(
    package: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, package, None)
    code, _, error = run(*LESSON, "--out", str(tmp_path / "x.pdf"))
    assert code == 2
    assert f"PDF needs the package {package.replace('_', '-')}" in error
    assert ".[print]" in error
    assert not list(tmp_path.iterdir())
