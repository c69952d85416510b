"""Notes for the user on standard error."""

from __future__ import annotations

from collections.abc import Sequence

import typer

from phonodrill.errors import one_line

SHOWN_PROBLEMS = 10


def report(problems: Sequence[str]) -> None:
    """Print notes on standard error, the first ten in full."""
    for problem in problems[:SHOWN_PROBLEMS]:
        typer.echo(f"note: {one_line(problem)}", err=True)
    if len(problems) > SHOWN_PROBLEMS:
        typer.echo(f"note: and {len(problems) - SHOWN_PROBLEMS} more", err=True)
