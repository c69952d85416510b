"""Every test of the command line has folders of its own, and a screen of 100 columns."""

from __future__ import annotations

import pytest


@pytest.fixture(autouse=True)
def _own_folders(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> None:
    for name in ("XDG_CONFIG_HOME", "XDG_DATA_HOME"):
        monkeypatch.setenv(name, str(tmp_path_factory.mktemp("own")))
    monkeypatch.setenv("COLUMNS", "100")
