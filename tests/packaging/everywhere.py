"""Build and install phonodrill as a stranger would, for every Python and extra.

``python -m tests.packaging.everywhere python3.11 python3.12 python3.13`` makes
an sdist and a wheel, from the sdist and once more from the sources, compares
them byte for byte, installs the wheel with each extra in a new virtual
environment whose packages cannot be written to, tries it from another folder,
and prints a table. ``--from-source`` also installs the sdist itself, which
compiles the lexicon, with each Python. It asks the package index, takes
several minutes and is no part of the suite.
"""

from __future__ import annotations

import argparse
import os
import stat
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from importlib import import_module
from pathlib import Path
from typing import Any, NamedTuple

from typer.main import get_command

from phonodrill.cli.main import COMMANDS
from tests.conftest import ROOT
from tests.packaging.building import EPOCH, Environment

CHECK = ("check", "make", "--group", "harbor-2", "--focus", "es,ies")
SERVED = """\
import re, subprocess, sys, urllib.request
server = subprocess.Popen(
    [sys.executable, "-W", "error", "-m", "phonodrill", "serve", "--no-browser"],
    stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True)
try:
    for line in server.stdout:
        found = re.search(r"http://127[^ \\n]*", line)
        if found:
            page = urllib.request.urlopen(found[0], timeout=30).read().decode()
            assert "phonodrill" in page, page
            break
    else:
        raise SystemExit("no address was shown")
finally:
    server.terminate()
    server.communicate(timeout=30)
"""
Lines = list[tuple[str, ...]]
ALWAYS: Lines = [
    ("warmup", "--drop", "first", "--ending", "es"),
    ("lesson", "--focus", "es,ies", "--minutes", "25", "--seed", "1"),
    ("lesson", "--focus", "sh", "--out", "lesson.html"),
    ("endings", "sort", "--seed", "1", "--out", "sorted.csv"),
    ("word", "ferries"),
    ("word", "skalope", "--guess"),
    ("words", "add", "harbor"),
    ("decodable", "--taught", "default", "--pattern", "CVC"),
    ("lexicon",),
]
TRIED: dict[str, Lines] = {
    "print": [
        ("lesson", "--focus", "es,ies", "--seed", "1", "--out", "lesson.pdf"),
        ("lesson", "--focus", "sh", "--seed", "1", "--out", "lesson.docx"),
        ("lesson", "--focus", "sh", "--seed", "1", "--out", "lesson.pptx"),
    ],
    "records": [
        ("group", "add", "harbor-2", "--students", "A,B,C"),
        CHECK,
        ("progress", "--group", "harbor-2"),
        ("records", "backup", "kept.sqlite"),
    ],
}
TRIED["web"] = TRIED["print"]
TRIED["district"] = TRIED["records"]
MISSING: dict[str, Lines] = {
    "print": TRIED["print"],
    "records": [("group", "add", "harbor-2", "--students", "A,B,C")],
    "web": [("serve", "--no-browser")],
}
EXTRAS = ("", "print", "records", "web", "district")


class Tried(NamedTuple):
    """One Python with one extra."""

    python: str
    extra: str
    seconds: float
    megabytes: float
    commands: int


def main() -> None:
    """Do all of it, or stop at what is wrong."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("pythons", nargs="+", help="interpreters")
    parser.add_argument("--from-source", action="store_true", help="install the sdist, too")
    parser.add_argument("--built", type=Path, help="a folder with a wheel and an sdist: build none")
    parser.add_argument("--extra", action="append", choices=EXTRAS, help="only this; '': none")
    asked = parser.parse_args()
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        wheel, sdist = packed_in(asked.built) if asked.built else build_twice(folder)
        print(f"wheel {wheel.stat().st_size:,} bytes, sdist {sdist.stat().st_size:,} bytes")
        print("| Python | extra | install | on disk | commands tried |\n|---|---|---|---|---|")
        for python in asked.pythons:
            for extra in asked.extra or EXTRAS:
                show(try_out(python, extra, wheel, folder))
            if asked.from_source:
                show(try_out(python, "", sdist, folder, wheel))


def show(tried: Tried) -> None:
    """Print a row of the table."""
    size = f"{tried.megabytes:.0f} MB"
    row = (tried.python, tried.extra, f"{tried.seconds:.0f} s", size, str(tried.commands))
    print(f"| {' | '.join(row)} |", flush=True)


def build_twice(folder: Path) -> tuple[Path, Path]:
    """Make the sdist and from it the wheel, then both from the sources: they must be the same."""
    made: list[tuple[Path, Path]] = []
    builder = new_environment(sys.executable, folder / "builder")
    pip(builder, "build")
    for target, what in ((folder / "1", ()), (folder / "2", ("--sdist", "--wheel"))):
        line = (builder.python, "-m", "build", *what, "--outdir", target, ROOT)
        call(*line, env={**os.environ, **EPOCH})
        made.append(packed_in(target))
    for first, second in zip(*made, strict=True):
        if first.read_bytes() != second.read_bytes():
            raise SystemExit(f"{first.name}: two builds differ")
    return made[0]


def packed_in(folder: Path) -> tuple[Path, Path]:
    """Return the wheel and the sdist in a folder."""
    return next(folder.glob("*.whl")), next(folder.glob("*.tar.gz"))


def try_out(
    python: str, extra: str, packed: Path, folder: Path, same_as: Path | None = None
) -> Tried:
    """Install into a new environment and try everything there."""
    environment = new_environment(python, Path(tempfile.mkdtemp(dir=folder)))
    start = time.perf_counter()
    pip(environment, f"{packed}[{extra}]" if extra else str(packed))
    seconds = time.perf_counter() - start
    call(environment.python, "-m", "pip", "check")
    version = call(environment.python, "-c", "import platform; print(platform.python_version())")
    if same_as:
        compare_installed(environment, python, same_as, folder)
    make_unwritable(environment.site)
    before = environment.state()
    home = Path(tempfile.mkdtemp(dir=folder))
    count = try_commands(environment, extra, home)
    if environment.state() != before:
        raise SystemExit(f"{python} [{extra}]: something was written to the package")
    size = sum(path.stat().st_size for path in environment.site.rglob("*") if path.is_file())
    source = " from the sdist" if same_as else ""
    return Tried(version.strip(), (extra or "none") + source, seconds, size / 1e6, count)


def try_commands(environment: Environment, extra: str, home: Path) -> int:
    """Run what the extra is for, and without extras every command's help and every refusal."""
    runs: list[tuple[str, ...]]
    runs = [("-c", "import phonodrill; [getattr(phonodrill, n) for n in phonodrill.__all__]")]
    runs += [("-m", "phonodrill", *line) for line in [*ALWAYS, *TRIED.get(extra, [])]]
    if not extra:
        runs += [("-m", "phonodrill", *words, "--help") for words in every_command()]
    if extra == "web":
        runs.append(("-c", SERVED))
    for run in runs:
        confined(environment, run, home, code=0)
    refused = 0
    missing: dict[str, Lines] = {} if extra else MISSING
    for needed, lines in missing.items():
        for line in lines:
            said = confined(environment, ("-m", "phonodrill", *line), home, code=2)
            refused += 1
            if f'python -m pip install ".[{needed}]"' not in said:
                raise SystemExit(f"{' '.join(line)} does not say what to install: {said}")
    return len(runs) + refused


def every_command() -> Iterator[tuple[str, ...]]:
    """Yield each command's words."""
    yield ()
    for name, module in COMMANDS.items():
        yield (name,)
        command: Any = get_command(import_module(module).app)
        for part in getattr(command, "commands", {}):
            yield (name, part)


def confined(environment: Environment, run: tuple[str, ...], home: Path, *, code: int) -> str:
    """Run in another folder with warnings as errors; return what went to the error stream."""
    # What is forbidden to a user by the bits of a folder is not to root, unless root gives that up.
    drop = ("--inh-caps=-dac_override", "--bounding-set=-dac_override,-fowner")
    before = [] if os.geteuid() else ["setpriv", *drop]
    done = subprocess.run(
        [*before, environment.python, "-W", "error", *run],
        check=False,
        cwd=home,
        env={"HOME": str(home), "PATH": os.defpath, "LC_ALL": "C.UTF-8"},
        capture_output=True,
        encoding="utf-8",
    )
    if done.returncode != code or "Traceback" in done.stderr or "Warning" in done.stderr:
        raise SystemExit(f"{environment.folder} {' '.join(run)}:\n{done.stdout}{done.stderr}")
    return done.stderr


def compare_installed(environment: Environment, python: str, wheel: Path, folder: Path) -> None:
    """Compare what was compiled by this Python with what the wheel has, byte for byte."""
    other = new_environment(python, Path(tempfile.mkdtemp(dir=folder)))
    pip(other, "--no-deps", str(wheel))
    if environment.state() != other.state():
        raise SystemExit(f"{python}: the sdist installs something else than the wheel")


def make_unwritable(folder: Path) -> None:
    """Take away the right to write."""
    for path in [folder, *folder.rglob("*")]:
        path.chmod(stat.S_IMODE(path.stat().st_mode) & ~0o222)


def new_environment(python: str, folder: Path) -> Environment:
    """Make a virtual environment with a pip of today."""
    call(python, "-m", "venv", folder)
    environment = Environment(folder)
    pip(environment, "--upgrade", "pip")
    return environment


def pip(environment: Environment, *wanted: str) -> None:
    """Install from the package index."""
    call(environment.python, "-m", "pip", "install", "--quiet", *wanted)


def call(*command: str | Path, env: dict[str, str] | None = None) -> str:
    """Run a command that must not fail, and return what it prints."""
    done = subprocess.run(command, check=False, env=env, capture_output=True, encoding="utf-8")
    if done.returncode:
        raise SystemExit(f"{command}:\n{done.stdout}{done.stderr}")
    return done.stdout


if __name__ == "__main__":
    main()
