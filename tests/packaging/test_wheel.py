"""What is published: what it has in it, that it works where it is installed, and its types.

One file, so that the wheel is built and installed once.
"""

from __future__ import annotations

import re
import shutil
import subprocess
import sys
import tarfile
from email import message_from_bytes, policy
from pathlib import Path
from zipfile import ZipFile

import pytest

import phonodrill
from phonodrill.lexicon.schema import LEXICON_PATH
from phonodrill.version import VERSION
from tests.conftest import ROOT
from tests.documented import examples
from tests.packaging.building import Environment, build

LARGEST = 25_000_000
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
def sdist(tmp_path_factory: pytest.TempPathFactory) -> tuple[bytes, list[str]]:
    """The sdist's metadata, and the names in it."""
    with tarfile.open(build("sdist", tmp_path_factory.mktemp("sdist"))) as packed:
        metadata = packed.extractfile(f"phonodrill-{VERSION}/PKG-INFO")
        assert metadata
        return metadata.read(), [name.partition("/")[2] for name in packed.getnames()]


def test_the_wheel_has_the_package_and_its_licenses_and_no_more(wheel: Path) -> None:
    with ZipFile(wheel) as packed:
        names = set(packed.namelist())
    about = f"phonodrill-{VERSION}.dist-info"
    licenses = ["LICENSE", *(f"docs/licenses/{path.name}" for path in licenses_kept())]
    source = {
        path.relative_to(ROOT).as_posix()
        for path in (ROOT / "phonodrill").rglob("*")
        if path.is_file() and "__pycache__" not in path.parts
    }
    assert {"phonodrill/py.typed", "phonodrill/lexicon/lexicon.sqlite"} < source
    assert names == {
        *source,
        "phonodrill/taught/taught_default.txt",
        *(f"{about}/{name}" for name in ("METADATA", "RECORD", "WHEEL", "entry_points.txt")),
        *(f"{about}/licenses/{name}" for name in licenses),
    }
    assert wheel.name == f"phonodrill-{VERSION}-py3-none-any.whl"
    assert wheel.stat().st_size < LARGEST


def licenses_kept() -> list[Path]:
    return sorted((ROOT / "docs" / "licenses").iterdir())


def test_what_is_said_of_it_is_true(wheel: Path, sdist: tuple[bytes, list[str]]) -> None:
    with ZipFile(wheel) as packed:
        raw = packed.read(f"phonodrill-{VERSION}.dist-info/METADATA")
    assert raw == sdist[0]
    said = message_from_bytes(raw, policy=policy.default)
    assert said["Version"] == VERSION
    assert said["License-Expression"] == "MIT AND CC-BY-SA-4.0 AND BSD-2-Clause AND Apache-2.0"
    assert len(said.get_all("License-File", [])) == 1 + len(licenses_kept())
    assert said["Requires-Python"] == ">=3.11"
    assert "Typing :: Typed" in said.get_all("Classifier", [])
    # A test must not be what an extra for users asks for.
    ours = ("extra == 'test'", "extra == 'mutation'")
    users = [line for line in said.get_all("Requires-Dist", []) if not line.endswith(ours)]
    assert not any("pytest" in line or "hypothesis" in line for line in users)
    assert f"## {VERSION}" in (ROOT / "CHANGELOG.md").read_text("utf-8")


def test_nothing_of_the_time_or_place_of_a_build_is_in_it(wheel: Path) -> None:
    # tests/packaging/everywhere.py builds twice and compares every byte.
    with ZipFile(wheel) as packed:
        listed = packed.infolist()
    assert {member.date_time[:3] for member in listed} == {(2026, 1, 1)}


def test_the_sdist_has_all_that_a_build_and_the_tests_need(sdist: tuple[bytes, list[str]]) -> None:
    _, names = sdist
    for path in [*(ROOT / "wordlists").iterdir(), *licenses_kept(), *(ROOT / "tests").glob("*.py")]:
        assert path.relative_to(ROOT).as_posix() in names
    assert {"LICENSE", "README.md", "CHANGELOG.md", "pyproject.toml"} < set(names)
    # The lexicon is compiled where the wheel is built.
    assert LEXICON_PATH.relative_to(ROOT).as_posix() not in names
    assert not [name for name in names if "__pycache__" in name or name.startswith("build/")]


def test_it_works_where_it_is_installed_and_writes_nothing_there(
    installed: Environment, tmp_path: Path
) -> None:
    before = installed.state()
    assert "phonodrill/lexicon/lexicon.sqlite" in before
    where = installed.run("-c", "import phonodrill; print(phonodrill.__file__)", cwd=tmp_path)
    assert where.stdout.strip() == str(installed.site / "phonodrill" / "__init__.py"), where.stderr
    example = next(example for example in examples() if example.page == "README.md")
    done = installed.run("-B", "-m", "phonodrill", *example.line.split(), cwd=tmp_path)
    assert (done.stdout.rstrip(), done.stderr) == (example.shown.rstrip(), "")
    lesson = ("lesson", "--focus", "es,ies", "--seed", "1", "--out", "lesson.html")
    done = installed.run("-B", "-m", "phonodrill", *lesson, cwd=tmp_path)
    assert done.returncode == 0, done.stderr
    assert "the ending -es and -ies" in (tmp_path / "lesson.html").read_text("utf-8")
    assert installed.state() == before


def test_without_its_lexicon_it_says_so_and_compiles_nothing(
    installed: Environment, tmp_path: Path
) -> None:
    kept = tmp_path / "kept.sqlite"
    lexicon = installed.site / "phonodrill" / "lexicon" / "lexicon.sqlite"
    shutil.move(lexicon, kept)
    try:
        done = installed.run("-m", "phonodrill", "word", "gull", cwd=tmp_path)
        assert done.returncode == 2
        assert done.stderr.startswith("error: ")
        assert "Traceback" not in done.stderr
        assert not lexicon.exists()
    finally:
        shutil.move(kept, lexicon)


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
    assert {"torch", "ferries", "clam"} < set(done.stdout.splitlines())
    assert re.search(r"^\w+ -> \w+$", done.stdout, re.MULTILINE)
