"""Every test of the command line has folders of its own; disks that are full or only read."""

from __future__ import annotations

import os
import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests import running
from tests.cli.faulty import OLD, Run


@pytest.fixture(autouse=True)
def _own_folders(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> None:
    for name in ("XDG_CONFIG_HOME", "XDG_DATA_HOME"):
        monkeypatch.setenv(name, str(tmp_path_factory.mktemp("own")))
    monkeypatch.setenv("COLUMNS", "100")


@pytest.fixture
def run() -> Run:
    return running.run


@pytest.fixture
def full_disk(tmp_path: Path) -> Iterator[Path]:
    """A disk of 16 kB, which none of the files fits on."""
    yield from mounted(tmp_path / "full", "size=16k")


@pytest.fixture
def read_only(tmp_path: Path) -> Iterator[Path]:
    folder = tmp_path / "read only"
    if os.geteuid() == 0:  # who may write in any folder that is not on a read-only disk
        yield from mounted(folder, "size=1m", then="remount,ro")
        return
    folder.mkdir()
    (folder / "old.pdf").write_bytes(OLD)
    folder.chmod(0o555)
    yield folder
    folder.chmod(0o755)


def mounted(folder: Path, how: str, then: str = "") -> Iterator[Path]:
    folder.mkdir()
    mount = ["mount", "-t", "tmpfs", "-o"]
    if subprocess.run([*mount, how, "none", folder], check=False, capture_output=True).returncode:
        pytest.skip("no disk can be mounted here")
    try:
        (folder / "old.pdf").write_bytes(OLD)
        if then:
            subprocess.run([*mount, f"{how},{then}", "none", folder], check=True)
        yield folder
    finally:
        subprocess.run(["umount", folder], check=True)
