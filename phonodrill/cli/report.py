"""Notes for the user on standard error."""

from __future__ import annotations

from collections.abc import Sequence

import typer

SHOWN_PROBLEMS = 10


def report(problems: Sequence[str]) -> None:
    """Print notes on standard error, the first ten in full."""
    for problem in problems[:SHOWN_PROBLEMS]:
        typer.echo(f"note: {problem}", err=True)
    if len(problems) > SHOWN_PROBLEMS:
        typer.echo(f"note: and {len(problems) - SHOWN_PROBLEMS} more", err=True)
