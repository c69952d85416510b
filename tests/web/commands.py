"""What a command prints as JSON, without starting a process for it."""

from __future__ import annotations

import json
from typing import Any

from typer.testing import CliRunner

from phonodrill.cli.main import app


def printed(*arguments: str) -> Any:
    """Run a command in this process and read its JSON."""
    result = CliRunner().invoke(app, [*arguments, "--format", "json"])
    assert result.exit_code == 0, result.output
    return json.loads(result.stdout)
