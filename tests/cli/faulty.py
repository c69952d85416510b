"""What tests of faults share."""

from __future__ import annotations

from collections.abc import Callable

Run = Callable[..., tuple[int, str, str]]
OLD = b"what was there"


def refused(shown: tuple[int, str, str]) -> str:
    """Check that a command said what was wrong and what to do, and nothing else."""
    code, out, error = shown
    lines = [line for line in error.splitlines() if not line.startswith("note: ")]
    assert code == 2, error
    assert out == ""
    assert len(lines) == 2, error
    assert lines[0].startswith("error: ")
    assert lines[1].startswith("try: ")
    return lines[0].removeprefix("error: ")
