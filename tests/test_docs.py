"""The README's examples are what the commands print; the public names are those documented."""

from __future__ import annotations

import os
import re
import shlex
import subprocess
import sys
from pathlib import Path

import pytest

import phonodrill
from tests.conftest import ROOT

README = (ROOT / "README.md").read_text("utf-8")
GUESSES = (ROOT / "docs" / "guesses.md").read_text("utf-8")
EXAMPLE = re.compile(r"<!-- example: phonodrill (.*?) -->\n```text\n(.*?)\n```", re.DOTALL)


@pytest.mark.parametrize(("command", "shown"), EXAMPLE.findall(README + GUESSES))
def test_examples_are_what_is_printed(command: str, shown: str) -> None:
    done = subprocess.run(
        [sys.executable, "-m", "phonodrill", *shlex.split(command)],
        capture_output=True,
        check=True,
        encoding="utf-8",
    )
    assert done.stdout.rstrip() == shown


def test_the_python_example_runs() -> None:
    code = re.search(r"```python\n(.*?)```", README, re.DOTALL)
    assert code
    done = subprocess.run(
        [sys.executable, "-c", code[1]], capture_output=True, check=True, text=True
    )
    assert len(done.stdout.splitlines()) == 8


def test_every_public_name_is_there() -> None:
    assert len(EXAMPLE.findall(README)) == 5
    for name in phonodrill.__all__:
        assert getattr(phonodrill, name) is not None
    assert set(dir(phonodrill)) == set(phonodrill.__all__)
    with pytest.raises(AttributeError):
        _ = phonodrill.nothing  # type: ignore[attr-defined]


def test_every_table_is_described() -> None:
    described = (ROOT / "wordlists" / "README.md").read_text("utf-8")
    for path in (ROOT / "wordlists").glob("*.tsv"):
        assert f"`{path.name}`" in described, path.name


def test_the_python_example_of_printing_runs(tmp_path: Path) -> None:
    text = (ROOT / "docs" / "printing.md").read_text("utf-8")
    code = re.search(r"```python\n(.*?)```", text, re.DOTALL)
    assert code
    subprocess.run(
        [sys.executable, "-c", code[1]],
        check=True,
        cwd=tmp_path,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
    )
    assert (tmp_path / "harbor.pdf").read_bytes().startswith(b"%PDF-")


def test_the_python_example_of_records_runs(tmp_path: Path) -> None:
    text = (ROOT / "docs" / "records.md").read_text("utf-8")
    code = re.search(r"```python\n(.*?)```", text, re.DOTALL)
    assert code
    subprocess.run(
        [sys.executable, "-c", code[1]],
        check=True,
        cwd=tmp_path,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
    )
    assert (tmp_path / "records.sqlite").exists()
