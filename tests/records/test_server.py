"""The commands with a district's PostgreSQL."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.records.conftest import CODES, GROUP
from tests.records.postgres import Cluster
from tests.running import fails, run, works


def test_the_commands_on_a_server(
    cluster: Cluster, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("PHONODRILL_DATABASE", cluster.new_database())
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "none"))
    works("group", "add", GROUP, "--students", ",".join(CODES))
    make = ("check", "make", "--group", GROUP, "--focus", "delete", "--count", "2", "--seed", "1")
    key = json.loads(works(*make, "--format", "json"))["check"]
    assert run("check", "enter", key, keys="ys krab\n")[0] == 0
    data = json.loads(works("records", "export", "A", "--format", "json"))
    assert [(row["right"], row["said"]) for row in data["results"]] == [(True, ""), (False, "krab")]
    sound = "the database of PHONODRILL_DATABASE is sound: 1 group, 3 students, 1 check, 2 results"
    assert works("records", "verify") == f"{sound}\n"
    assert "pg_dump" in fails("records", "backup", str(tmp_path / "kept.sqlite"))
    status, text, note = run("records", "erase", "A", "--backups", "--yes")
    assert (status, text) == (0, "erased with 2 results\n")
    assert "pg_dump" in note
    assert "2 students, 1 check, 0 results" in works("records", "verify")
    assert not (tmp_path / "none").exists()
