"""The rooms and their order, as pyproject.toml states them: no import points up or in a circle."""

from __future__ import annotations

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.conftest import ROOT

LINTER = Path(sys.executable).parent / "lint-imports"


def lint(folder: Path) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [LINTER, "--no-cache"],
        check=False,
        cwd=folder,
        env={"PYTHONPATH": str(folder), "PATH": ""},
        capture_output=True,
        encoding="utf-8",
    )


@pytest.mark.source("import-linter: layers, and siblings without cycles")
def test_imports_point_down_and_never_in_circles() -> None:
    done = lint(ROOT)
    assert done.returncode == 0, done.stdout
    assert "2 kept, 0 broken" in done.stdout


def test_an_import_that_points_up_is_found(tmp_path: Path) -> None:
    left_out = shutil.ignore_patterns("*.sqlite", "__pycache__")
    shutil.copytree(ROOT / "phonodrill", tmp_path / "phonodrill", ignore=left_out)
    shutil.copy(ROOT / "pyproject.toml", tmp_path)
    with (tmp_path / "phonodrill" / "sounds" / "units.py").open("a") as file:
        file.write("import phonodrill.lexicon.rows\n")
    done = lint(tmp_path)
    assert done.returncode == 1
    assert "0 kept, 2 broken" in done.stdout


MOST_LINES = 400
LONGER = {"lexicon/store.py": "one class, the only reader of the SQLite file: a query a method"}


def test_no_module_is_long_without_a_reason() -> None:
    package = ROOT / "phonodrill"
    lengths = {
        path.relative_to(package).as_posix(): len(path.read_text("utf-8").splitlines())
        for path in package.rglob("*.py")
    }
    assert {name for name, lines in lengths.items() if lines > MOST_LINES} == {*LONGER}
