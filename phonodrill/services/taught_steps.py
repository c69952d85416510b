"""What a class was taught, from a file, a page, or the order that came with the package."""

from __future__ import annotations

from pathlib import Path

from phonodrill.errors import PhonodrillError
from phonodrill.lexicon.store import Lexicon
from phonodrill.taught.steps import Taught, parse_steps

DEFAULT = "default"
"""Names the order that came with the package; ``default:40`` is its first 40 steps."""
HINT = "one step a line: s, sh, c=k, a_e, -es"


def default_path() -> Path:
    """Return the teaching order that came with the package (wordlists/taught_default.txt)."""
    package = Path(__file__).parents[1]
    installed = package / "taught" / "taught_default.txt"
    return installed if installed.exists() else package.parent / "wordlists" / installed.name


def is_default(text: str) -> bool:
    """Whether a text names the order that came with the package, or its beginning.

    >>> is_default("default"), is_default("default:40"), is_default("sh")
    (True, True, False)
    """
    name, colon, number = text.strip().partition(":")
    return name == DEFAULT and (number.isdecimal() if colon else True)


def steps_from(text: str, lexicon: Lexicon) -> Taught:
    """Read steps.

    Args:
        text: a step a line, ``default``, or ``default:40`` for its first 40 steps.
        lexicon: the open lexicon.

    Raises:
        PhonodrillError: if there is no step in it.
    """
    inventory = lexicon.correspondences()
    if not is_default(text):
        taught = parse_steps(text.splitlines(), inventory)
    else:
        taught = parse_steps(default_path().read_text("utf-8").splitlines(), inventory)
        _, _, number = text.strip().partition(":")
        if number:
            taught = taught._replace(steps=taught.steps[: int(number)])
    if not taught.steps:
        first = taught.problems[0] if taught.problems else "no step in it"
        raise PhonodrillError(f"what was taught: {first}", HINT)
    return taught
