"""Files that cannot be written, or not as asked: one clear line, nothing half-written."""

from __future__ import annotations

import json
import os
import stat
import subprocess
import sys
import threading
from pathlib import Path

import pytest

from tests.cli.faulty import OLD, Run, refused
from tests.running import PLAINEST_LOCALE

resource = pytest.importorskip("resource")
LESSON = ("lesson", "--focus", "es,ies", "--minutes", "8", "--seed", "3")
ENDINGS = ("pdf", "docx", "pptx", "html", "md", "csv", "json", "txt")
PRINTS = ("cards", "mat", "boxes", "list")
LONGEST_NAME = 255
"""Bytes of a name that common file systems hold."""


@pytest.mark.parametrize("name", ["old.pdf", "new.pdf", "new.docx", "new.pptx"])
def test_a_full_disk(name: str, full_disk: Path, run: Run) -> None:
    said = refused(run(*LESSON, "--out", str(full_disk / name)))
    assert said == f"cannot write {full_disk / name}: No space left on device"
    assert [path.name for path in full_disk.iterdir()] == ["old.pdf"]
    assert (full_disk / "old.pdf").read_bytes() == OLD


@pytest.mark.parametrize("name", ["old.pdf", "new.pdf", "new.docx", "new.html"])
def test_a_folder_that_is_only_read(name: str, read_only: Path, run: Run) -> None:
    said = refused(run(*LESSON, "--out", str(read_only / name)))
    assert said.startswith(f"cannot write {read_only / name}: ")
    assert [path.name for path in read_only.iterdir()] == ["old.pdf"]
    assert (read_only / "old.pdf").read_bytes() == OLD


@pytest.mark.parametrize("ending", ENDINGS)
def test_a_lesson_larger_than_may_be_written(ending: str, tmp_path: Path, run: Run) -> None:
    """Also without a disk of our own: the system ends a file at so many bytes."""
    out = tmp_path / f"lesson.{ending}"
    out.write_bytes(OLD)
    limits = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (100, limits[1]))
    try:
        shown = run(*LESSON, "--out", str(out))
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, limits)
    assert refused(shown) == f"cannot write {out}: File too large"
    assert [path.name for path in tmp_path.iterdir()] == [out.name]
    assert out.read_bytes() == OLD


@pytest.mark.parametrize("kind", PRINTS)
def test_pages_larger_than_may_be_written(kind: str, tmp_path: Path, run: Run) -> None:
    limits = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (100, limits[1]))
    try:
        shown = run("print", kind, "ropes", "ferries", "--out", str(tmp_path / "x.pdf"))
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, limits)
    assert refused(shown).endswith("x.pdf: File too large")
    assert not list(tmp_path.iterdir())


@pytest.mark.parametrize("command", [LESSON, *(("print", kind, "ropes") for kind in PRINTS)])
@pytest.mark.parametrize(
    ("name", "why"),
    [
        ("no/such/folder/x.pdf", "No such file or directory"),
        ("file.pdf/x.pdf", "Not a directory"),
        ("folder", "Is a directory"),
        ("folder.pdf", "Is a directory"),
        ("", "Is a directory"),
        ("g" * (LONGEST_NAME - 3) + ".pdf", "File name too long"),
    ],
    ids=str,
)
def test_a_name_that_cannot_be_written(
    command: tuple[str, ...],
    name: str,
    why: str,
    tmp_path: Path,
    run: Run,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "file.pdf").write_bytes(OLD)
    for folder in ("folder", "folder.pdf"):
        (tmp_path / folder).mkdir()
    before = sorted(tmp_path.rglob("*"))
    assert refused(run(*command, "--out", name)) == f"cannot write {name or '.'}: {why}"
    assert sorted(tmp_path.rglob("*")) == before
    assert (tmp_path / "file.pdf").read_bytes() == OLD


@pytest.mark.parametrize(
    "name",
    [
        "two words.pdf",
        'it\'s "ours" & $HOME `x` *?.docx',
        "gülls 😀 ⛵.pptx",
        "-x.pdf",
        "--parts",
        "two\nlines.html",
        ".pdf",
        "..lesson..md",
        os.fsdecode(b"\xff\xfe.pdf"),
        "g" * (LONGEST_NAME - 4) + ".pdf",
        "g" * (LONGEST_NAME - 5) + ".html",
    ],
    ids=ascii,
)
def test_strange_names_are_names(
    name: str, tmp_path: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    for _ in range(2):
        code, out, _ = run(*LESSON, f"--out={name}")
        assert (code, out) == (0, "")
        assert [path.name for path in tmp_path.iterdir()] == [name]


def test_a_name_of_other_bytes_under_the_plainest_locale(tmp_path: Path) -> None:
    """Also in what is said of it, which must not fail to be said."""
    name = os.fsencode(tmp_path) + b"/no folder/\xff\xc3\xbc.pdf"
    done = subprocess.run(
        [sys.executable, "-m", "phonodrill", "print", "list", "gulls", "--out", name],
        capture_output=True,
        check=False,
        env=os.environ | PLAINEST_LOCALE | {"PYTHONCOERCECLOCALE": "0"},
    )
    assert done.returncode == 2
    assert done.stderr.startswith(b"error: cannot write ")
    assert len(done.stderr.splitlines()) == 2


def test_a_link_stays_one_and_its_file_is_written(tmp_path: Path, run: Run) -> None:
    link, target = tmp_path / "today.html", tmp_path / "lesson 1.html"
    target.write_bytes(OLD)
    target.chmod(0o640)
    link.symlink_to(target.name)
    assert run(*LESSON, "--out", str(link))[0] == 0
    assert link.is_symlink()
    assert target.read_text("utf-8").startswith("<!DOCTYPE html>")
    assert stat.S_IMODE(target.stat().st_mode) == 0o640
    assert len(list(tmp_path.iterdir())) == 2


@pytest.mark.skipif(os.geteuid() == 0, reason="root may write any file")
def test_a_file_that_is_only_read_stays(tmp_path: Path, run: Run) -> None:
    out = tmp_path / "kept.pdf"
    out.write_bytes(OLD)
    out.chmod(0o444)
    assert refused(run(*LESSON, "--out", str(out))).endswith("Permission denied")
    assert out.read_bytes() == OLD


def test_a_pipe_is_written_and_stays_one(tmp_path: Path, run: Run) -> None:
    pipe = tmp_path / "printer.pdf"
    os.mkfifo(pipe)
    got: list[bytes] = []
    reader = threading.Thread(target=lambda: got.append(pipe.read_bytes()), daemon=True)
    reader.start()
    assert run("print", "list", "gulls", "--out", str(pipe))[0] == 0
    reader.join(10)
    assert got[0].startswith(b"%PDF-")
    assert stat.S_ISFIFO(pipe.stat().st_mode)
    assert [path.name for path in tmp_path.iterdir()] == [pipe.name]


def test_a_device_is_never_replaced(tmp_path: Path, run: Run) -> None:
    """A device of our own: with a real one a mistake would harm the computer."""
    device = tmp_path / "full.txt"
    try:
        os.mknod(device, 0o666 | stat.S_IFCHR, os.makedev(1, 7))
        os.close(os.open(device, os.O_WRONLY))
    except OSError:
        pytest.skip("no device can be made here")
    assert refused(run(*LESSON, "--out", str(device))).endswith("No space left on device")
    assert stat.S_ISCHR(device.stat().st_mode)


SCREENED = (
    ("word", "ferries"),
    ("word", "ferries", "--format", "json"),
    ("bank", "--task", "isolate", "--format", "jsonl"),
    ("print", "--help"),
)


@pytest.mark.parametrize("command", SCREENED, ids=" ".join)
def test_a_full_disk_behind_the_screen(command: tuple[str, ...], tmp_path: Path) -> None:
    with (tmp_path / "out.txt").open("wb") as out:
        done = subprocess.run(
            [sys.executable, "-m", "phonodrill", *command],
            stdout=out,
            stderr=subprocess.PIPE,
            text=True,
            check=False,
            # Unbuffered, Python itself drops what a short write leaves, and says nothing.
            env={**os.environ, "PYTHONUNBUFFERED": ""},
            preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (10, 10)),
        )
    assert done.stderr.splitlines() == [
        "error: cannot write the result: File too large",
        "try: --out FILE",
    ]
    assert done.returncode == 2


@pytest.mark.parametrize("command", SCREENED[:3], ids=" ".join)
def test_no_screen_at_all(command: tuple[str, ...]) -> None:
    done = subprocess.run(
        [sys.executable, "-m", "phonodrill", *command],
        stderr=subprocess.PIPE,
        text=True,
        check=False,
        preexec_fn=lambda: os.close(1),
    )
    assert done.stderr.splitlines() == [
        "error: there is no screen to write to",
        "try: --out FILE",
    ]
    assert done.returncode == 2


def test_without_any_extra_package_text_is_written(
    tmp_path: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    for package in ("typst", "fontpkg_abeezee", "fontpkg_noto_sans", "docx", "pptx"):
        monkeypatch.setitem(sys.modules, package, None)
    for ending in ("html", "md", "csv", "json", "txt"):
        assert run(*LESSON, "--out", str(tmp_path / f"lesson.{ending}"))[0] == 0
    for ending, what in (("pdf", "PDF"), ("docx", "DOCX"), ("pptx", "PPTX")):
        said = refused(run(*LESSON, "--out", str(tmp_path / f"lesson.{ending}")))
        assert said.startswith(f"{what} needs the package ")


@pytest.mark.parametrize("package", ["typst", "fontpkg_abeezee", "fontpkg_noto_sans"])
@pytest.mark.parametrize("kind", PRINTS)
def test_prints_without_their_packages(
    package: str, kind: str, tmp_path: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, package, None)
    out = tmp_path / "x.pdf"
    out.write_bytes(OLD)
    said = refused(run("print", kind, "ropes", "--out", str(out)))
    assert said == f"PDF needs the package {package.replace('_', '-')}"
    assert [path.name for path in tmp_path.iterdir()] == [out.name]
    assert out.read_bytes() == OLD
    for plain in ("txt", "md", "html", "csv", "json"):
        assert run("print", kind, "ropes", "--out", str(tmp_path / f"x.{plain}"))[0] == 0


@pytest.mark.parametrize("sign", ["海", "😀", "\ufdd0"])
def test_a_sign_that_no_font_has(sign: str, tmp_path: Path, run: Run) -> None:
    data = edited(tmp_path, run, sign)
    out = tmp_path / "x.pdf"
    out.write_bytes(OLD)
    said = refused(run("lesson", "--from", str(data), "--out", str(out)))
    assert said.startswith("the pages cannot be drawn: ")
    assert out.read_bytes() == OLD
    for other in ("docx", "pptx", "html", "md", "txt"):
        path = tmp_path / f"x.{other}"
        assert run("lesson", "--from", str(data), "--out", str(path))[0] == 0


@pytest.mark.parametrize("ending", ENDINGS)
def test_a_sign_that_is_none(ending: str, tmp_path: Path, run: Run) -> None:
    data = edited(tmp_path, run, "\ud800")
    out = tmp_path / f"x.{ending}"
    shown = run("lesson", "--from", str(data), "--out", str(out))
    assert refused(shown)
    assert not out.exists()


def edited(folder: Path, run: Run, sign: str) -> Path:
    """Write a lesson as a teacher might who put a sign in what is to be said."""
    path = folder / "lesson.json"
    assert run(*LESSON, "--out", str(path))[0] == 0
    data = json.loads(path.read_text("utf-8"))
    data["lesson"]["sections"][0]["script"] += sign
    path.write_text(json.dumps(data), "utf-8")
    return path
