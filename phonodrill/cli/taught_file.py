"""Read the file of what a class has been taught, and report what cannot be read."""

from __future__ import annotations

from pathlib import Path

from phonodrill.cli.report import report
from phonodrill.errors import PhonodrillError
from phonodrill.lexicon.store import Lexicon
from phonodrill.services.taught_steps import HINT, is_default, steps_from
from phonodrill.taught.steps import Taught, parse_steps
from phonodrill.text_file import read_text

HIGHEST_LINES = 2_000
"""A teaching order has a few hundred."""


def read_taught(path: Path, lexicon: Lexicon) -> Taught:
    """Read a taught file; lines that cannot be read are reported and passed over.

    Args:
        path: one step a line (see :mod:`phonodrill.taught.steps`); ``default`` names
            the order that came with the package, ``default:40`` its first 40 steps.
        lexicon: the open lexicon.

    Raises:
        PhonodrillError: if it cannot be read or has no step.
    """
    if is_default(str(path)):
        return steps_from(str(path), lexicon)
    lines = read_text(path).splitlines()
    if len(lines) > HIGHEST_LINES:
        raise PhonodrillError(f"{path} has more than {HIGHEST_LINES:,} lines", HINT)
    taught = parse_steps(lines, lexicon.correspondences())
    report(list(taught.problems))
    if not taught.steps:
        raise PhonodrillError(f"{path} has no step in it", HINT)
    return taught
