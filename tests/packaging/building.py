"""Build what is published and install it, without asking the network."""

from __future__ import annotations

import hashlib
import os
import subprocess
import sys
import sysconfig
import venv
from pathlib import Path
from typing import NamedTuple

from tests.conftest import ROOT

EPOCH = {"SOURCE_DATE_EPOCH": "1767225600"}


class Environment(NamedTuple):
    """A virtual environment with phonodrill in it."""

    folder: Path

    @property
    def python(self) -> Path:
        """The interpreter."""
        return self.folder / "bin" / "python"

    @property
    def site(self) -> Path:
        """Where the packages are."""
        (found,) = (self.folder / "lib").glob("python*/site-packages")
        return found

    def run(self, *arguments: str, cwd: Path) -> subprocess.CompletedProcess[str]:
        """Run the interpreter with warnings as errors and none of this project's settings."""
        return subprocess.run(
            [self.python, "-W", "error", *arguments],
            check=False,
            cwd=cwd,
            env={"HOME": str(cwd), "PATH": os.defpath, "LC_ALL": "C.UTF-8"},
            capture_output=True,
            encoding="utf-8",
        )

    def state(self) -> dict[str, str]:
        """Return every file of the installed package with a digest of it."""
        return {
            str(path.relative_to(self.site)): hashlib.sha256(path.read_bytes()).hexdigest()
            for path in sorted((self.site / "phonodrill").rglob("*"))
            if path.is_file() and "__pycache__" not in path.parts
        }


def build(target: str, folder: Path) -> Path:
    """Build the wheel or the sdist from the sources, and return the file."""
    subprocess.run(
        [sys.executable, "-m", "hatchling", "build", "--target", target, "--directory", folder],
        check=True,
        cwd=ROOT,
        env={**os.environ, **EPOCH, "PYTHONPATH": ""},
        capture_output=True,
    )
    (built,) = folder.glob("*.whl" if target == "wheel" else "*.tar.gz")
    return built


def install(wheel: Path, folder: Path) -> Environment:
    """Install a wheel alone; what it depends on is taken from where the tests run."""
    venv.create(folder, symlinks=True)
    environment = Environment(folder)
    subprocess.run(
        [
            *(sys.executable, "-m", "pip", "--python", environment.python, "install", wheel),
            *("--quiet", "--no-deps", "--no-index", "--no-compile", "--disable-pip-version-check"),
        ],
        check=True,
        capture_output=True,
    )
    (environment.site / "beside.pth").write_text(sysconfig.get_path("purelib") + "\n")
    return environment
