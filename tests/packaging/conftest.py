from __future__ import annotations

from pathlib import Path

import pytest

from tests.packaging.building import Environment, build, install


@pytest.fixture(scope="session")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return build("wheel", tmp_path_factory.mktemp("wheel"))


@pytest.fixture(scope="session")
def installed(wheel: Path, tmp_path_factory: pytest.TempPathFactory) -> Environment:
    return install(wheel, tmp_path_factory.mktemp("installed"))
