"""What a class was taught, from a file, a page, or the order that came with the package."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from phonodrill.errors import PhonodrillError
from phonodrill.lexicon.store import Lexicon
from phonodrill.taught.steps import Taught, parse_steps

DEFAULT = "default"
"""Names the order that came with the package; ``default:40`` is its first 40 steps."""
HINT = "one step a line: s, sh, c=k, a_e, -es"
LIST = "list:"
"""``list:harbor-class`` names a list that was kept (``taught_lists.py``)."""
_DIGITS = 4


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
        text: a step a line, ``default``, ``default:40`` for its first 40 steps, or
            ``list:harbor-class`` for a list that was kept.
        lexicon: the open lexicon.

    Raises:
        PhonodrillError: if there is no step in it, or no such list.
    """
    inventory = lexicon.correspondences()
    if is_default(text):
        taught = parse_steps(default_path().read_text("utf-8").splitlines(), inventory)
        taught = taught._replace(steps=taught.steps[: _number_in(text)])
    else:
        taught = parse_steps(lines_of(text), inventory)
    if not taught.steps:
        first = taught.problems[0] if taught.problems else "no step in it"
        raise PhonodrillError(f"what was taught: {first}", HINT)
    return taught


def lines_of(text: str) -> list[str]:
    """Return the lines that a text stands for; those of our order have no comments.

    Args:
        text: as for :func:`steps_from`.

    Raises:
        PhonodrillError: if it names a list that is not there.
    """
    name = text.strip()
    if is_default(name):
        return default_lines()[: _number_in(name)]
    if name.startswith(LIST):
        from phonodrill.services.taught_lists import read_list

        return read_list(name).splitlines()
    return text.splitlines()


@cache
def default_lines() -> list[str]:
    """Return the steps of the order that came with the package, without comments."""
    lines = default_path().read_text("utf-8").splitlines()
    return [step for line in lines if (step := line.partition("#")[0].strip())]


def named(text: str) -> str:
    """Say in words which steps a text stands for.

    >>> named("default:40"), named("list:harbor-class")
    ('our default order up to step 40', 'the list harbor-class')
    """
    name = text.strip()
    if name.startswith(LIST):
        return f"the list {name.removeprefix(LIST)}"
    if not is_default(name):
        return "this list of steps"
    number = _number_in(name)
    return "our default order" if number is None else f"our default order up to step {number}"


def _number_in(name: str) -> int | None:
    """The number of steps that ``default:40`` asks for, or None for all."""
    _, _, number = name.strip().partition(":")
    return int(number[:_DIGITS]) if number else None
