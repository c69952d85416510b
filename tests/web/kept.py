"""An application with records of its own, for tests."""

from __future__ import annotations

import re
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from fastapi.testclient import TestClient

from phonodrill.records.answer import Asked, Kind, Skill
from phonodrill.records.kept import Check
from phonodrill.records.store import Store
from phonodrill.web.app import make_app
from phonodrill.web.csrf import FIELD
from phonodrill.web.settings import Records, Settings

GROUP = "harbor-2"
CODES = ("Q7", "X4", "Z9")
"""Codes that stand nowhere else on a page."""
SAID = "gulps"
_TOKEN = re.compile(rf'name="{FIELD}" value="([^"]+)"')
_ENTRY = re.compile(r'name="entry" value="([^"]+)"')


@contextmanager
def opened(home: Path, records: Records = Records.OWN) -> Iterator[TestClient]:
    """Open an application whose records lie in a folder of the test."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_DATA_HOME", str(home))
        patch.delenv("PHONODRILL_DATABASE", raising=False)
        application = make_app(Settings(records=records))
        with TestClient(application, base_url="http://127.0.0.1") as client:
            yield client


def fill(store: Store) -> str:
    """Add a group with one check; returns the digits of the check."""
    store.add_group(GROUP, CODES)
    skills = (Skill(Kind.ENDING_SOUND, "ɪz"), Skill(Kind.CONDITION, "add es"))
    items = tuple(
        Asked("say the ending", f"Show “{word}”. Read it.", word, "/ĭz/", "reads -es", skills)
        for word in ("torches", "hedges", "patches")
    )
    return store.keep_check(Check("", GROUP, "es,ies", "2026-11-25", 2, 5, items)).key


def token_of(text: str) -> str:
    """Return the token of the forms of a page."""
    found = _TOKEN.search(text)
    assert found
    return found[1]


def entry_of(text: str) -> str:
    """Return the name of the act that a page would send."""
    found = _ENTRY.search(text)
    assert found
    return found[1]


def send(client: TestClient, path: str, **fields: str) -> tuple[int, str]:
    """Send a form as its page would; returns status and where it leads, or what it says."""
    token = token_of(client.get(path).text)
    answer = client.post(path, data={FIELD: token, **fields}, follow_redirects=False)
    return answer.status_code, answer.headers.get("location", answer.text)
