"""One application and one real server for all tests of the page."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from fastapi import FastAPI
from fastapi.testclient import TestClient

from phonodrill.web.app import make_app
from phonodrill.web.settings import Settings


@pytest.fixture(scope="session")
def web_settings(tmp_path_factory: pytest.TempPathFactory) -> Settings:
    """Settings of one teacher's own machine, with folders for these tests only."""
    folder: Path = tmp_path_factory.mktemp("web")
    return Settings(words_file=folder / "words.txt", taught_folder=folder / "taught")


@pytest.fixture(scope="session")
def application(web_settings: Settings) -> FastAPI:
    return make_app(web_settings)


@pytest.fixture(scope="session")
def client(application: FastAPI) -> Iterator[TestClient]:
    with TestClient(application, base_url="http://127.0.0.1") as opened:
        yield opened
