"""Read the file of what a class has been taught, and report what cannot be read."""

from __future__ import annotations

from pathlib import Path

from phonodrill.cli.report import report
from phonodrill.cli.text_file import read_text
from phonodrill.errors import PhonodrillError
from phonodrill.lexicon.store import Lexicon
from phonodrill.taught.steps import Taught, parse_steps

DEFAULT = "default"
"""Names the order that came with the package instead of a file."""


def default_path() -> Path:
    """Return the teaching order that came with the package (wordlists/taught_default.txt)."""
    package = Path(__file__).parents[1]
    installed = package / "taught" / "taught_default.txt"
    return installed if installed.exists() else package.parent / "wordlists" / installed.name


def read_taught(path: Path, lexicon: Lexicon) -> Taught:
    """Read a taught file; lines that cannot be read are reported and passed over.

    Args:
        path: one step a line (see :mod:`phonodrill.taught.steps`); ``default`` names
            the order that came with the package.
        lexicon: the open lexicon.

    Raises:
        PhonodrillError: if it cannot be read or has no step.
    """
    file = default_path() if str(path) == DEFAULT else path
    taught = parse_steps(read_text(file).splitlines(), lexicon.correspondences())
    report(list(taught.problems))
    if not taught.steps:
        raise PhonodrillError(f"{path} has no step in it", "one step a line: s, sh, c=k, a_e, -es")
    return taught
