"""What a type checker makes of the installed package, in a program that uses it."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

import pytest

import phonodrill
from tests.packaging.building import Environment

CONSUMER = Path(__file__).with_name("consumer.py")
WRONG = """\
import phonodrill
from phonodrill import Lexicon, Query, make_warmup, make_warmpu
query = Query(band="2")
query.band = 3
with Lexicon() as lexicon:
    lexicon.get("gull").word
    lexicon.get(7)
phonodrill.make_lessons
"""
MISTAKES = {
    (2, "attr-defined"),
    (3, "arg-type"),
    (4, "misc"),
    (6, "union-attr"),
    (7, "arg-type"),
    (8, "attr-defined"),
}


@pytest.fixture(scope="module")
def checked(installed: Environment, tmp_path_factory: pytest.TempPathFactory) -> str:
    """What mypy says of a right and a wrong program and of every public name."""
    folder = tmp_path_factory.mktemp("consumer")
    (folder / "right.py").write_text(CONSUMER.read_text("utf-8"), "utf-8")
    (folder / "wrong.py").write_text(WRONG)
    names = "".join(f"reveal_type(phonodrill.{name})\n" for name in phonodrill.__all__)
    (folder / "names.py").write_text("import phonodrill\n" + names)
    done = subprocess.run(
        [
            *(sys.executable, "-m", "mypy", "--strict", "--config-file=", "--no-error-summary"),
            *("--cache-dir=/dev/null", "--python-executable", installed.python),
            *("right.py", "wrong.py", "names.py"),
        ],
        check=False,
        cwd=folder,
        env={"PATH": ""},
        capture_output=True,
        encoding="utf-8",
    )
    assert not done.stderr
    return done.stdout


@pytest.mark.source("mypy --strict, against the installed package (PEP 561: py.typed)")
def test_a_right_program_is_right(checked: str) -> None:
    assert "right.py" not in checked


@pytest.mark.source("mypy --strict, against the installed package (PEP 561: py.typed)")
def test_each_mistake_is_found(checked: str) -> None:
    found = re.findall(r"^wrong\.py:(\d+): error: .*\[([a-z-]+)\]$", checked, re.MULTILINE)
    assert {(int(line), kind) for line, kind in found} == MISTAKES


@pytest.mark.source("mypy: reveal_type of each public name")
def test_every_public_name_has_a_type(checked: str) -> None:
    revealed = re.findall(r'^names\.py:\d+: note: Revealed type is "(.*)"$', checked, re.MULTILINE)
    assert len(revealed) == len(phonodrill.__all__)
    assert "names.py" not in re.sub(r"names\.py:\d+: note", "", checked)
    assert not [kind for kind in revealed if kind.startswith("Any") or kind.endswith("-> Any")]


def test_the_right_program_runs(installed: Environment, tmp_path: Path) -> None:
    done = installed.run(str(CONSUMER), cwd=tmp_path)
    assert not done.stderr
    assert {"trace -> race", "torch", "ferries", "clam"} < set(done.stdout.splitlines())
