"""What the documentation tells its readers to run.

``python -m tests.documented`` writes the output of every example again, as it is now.
"""

from __future__ import annotations

import re
import shlex
import sys
import tempfile
from collections.abc import Iterator
from itertools import product
from pathlib import Path
from typing import NamedTuple

from tests import harbor

ROOT = Path(__file__).parents[1]
PAGES = [
    ROOT / "README.md",
    ROOT / "DEVELOPERS.md",
    ROOT / "wordlists" / "README.md",
    *sorted((ROOT / "docs").rglob("*.md")),
]
FENCE = re.compile(r"^( *)```(\w*)\n(.*?)^ *```", re.DOTALL | re.MULTILINE)
EXAMPLE = re.compile(
    r"<!-- example(?:, first (\d+) lines)?: phonodrill (.*?) -->\n```(\w+)\n(.*?)```", re.DOTALL
)
INLINE = re.compile(r"`phonodrill( [^`]*)?`")
PROGRAM = "phonodrill"


class Example(NamedTuple):
    """A command with what it prints.

    Attributes:
        page: where it stands.
        first: how many lines are shown, if not all.
        line: what stands behind ``phonodrill``.
        shown: the output as the page has it.
    """

    page: str
    first: int | None
    line: str
    shown: str


class Session(NamedTuple):
    """Commands that follow each other.

    Attributes:
        page: where they stand.
        lines: as they are written, without ``phonodrill``.
    """

    page: str
    lines: tuple[str, ...]


def examples() -> Iterator[Example]:
    """Yield every example that shows its output."""
    for page in PAGES:
        for first, line, _, shown in EXAMPLE.findall(page.read_text("utf-8")):
            yield Example(_name(page), int(first) if first else None, line, shown)


def sessions() -> Iterator[Session]:
    """Yield the commands of each block of shell lines, and each in running text and tables."""
    for page in PAGES:
        text = page.read_text("utf-8")
        for _, language, block in FENCE.findall(text):
            parts = [part for part in shell_parts(block) if part.split()[0] == PROGRAM]
            if language == "sh" and parts:
                lines = (part.removeprefix(PROGRAM).strip() for part in parts)
                yield Session(_name(page), tuple(lines))
        for (line,) in (found.groups() for found in INLINE.finditer(FENCE.sub("", text))):
            plain = " ".join((line or "").replace("\\|", "|").split())
            yield from (Session(_name(page), (each,)) for each in alternatives(plain))


def programs() -> Iterator[tuple[str, str]]:
    """Yield every Python program, with its page."""
    for page in PAGES:
        for _, language, block in FENCE.findall(page.read_text("utf-8")):
            if language == "python":
                yield _name(page), block


def shell_parts(block: str) -> Iterator[str]:
    """Yield the commands of a block, without comments.

    >>> list(shell_parts("phonodrill next  # who?\\ncd harbor && phonodrill serve\\n"))
    ['phonodrill next', 'cd harbor', 'phonodrill serve']
    """
    for line in block.replace("\\\n", " ").splitlines():
        for part in re.sub(r"(^|\s)#.*", "", line).split("&&"):
            if part.strip():
                yield part.strip()


def alternatives(line: str) -> Iterator[str]:
    """Yield a line for each of the choices that it has.

    >>> list(alternatives("print cards|mat --size small"))
    ['print cards --size small', 'print mat --size small']
    """
    for words in product(*(word.split("|") for word in line.split())):
        yield " ".join(words)


def arguments_of(line: str) -> list[str]:
    """Split a line as a shell does, without what it sends to a file.

    >>> arguments_of("taught suggest > taught.txt")
    ['taught', 'suggest']
    """
    return shlex.split(line.split(" > ", maxsplit=1)[0])


def lines_of(printed: str, first: int | None) -> list[str]:
    """Return what is shown of an output."""
    return printed.rstrip().splitlines()[:first]


def _name(page: Path) -> str:
    return page.relative_to(ROOT).as_posix()


def rewrite(page: Path, folder: Path) -> bool:
    """Put what is printed now into the examples of a page; say whether any was old."""

    def printed(match: re.Match[str]) -> str:
        first, line, language, _ = match.groups()
        ran = harbor.run(folder, arguments_of(line))
        if ran.returncode:
            sys.exit(f"{_name(page)}: phonodrill {line}: {ran.stderr}")
        shown = lines_of(ran.stdout, int(first) if first else None)
        head = f"example, first {first} lines" if first else "example"
        return "\n".join([f"<!-- {head}: phonodrill {line} -->", f"```{language}", *shown, "```"])

    old = page.read_text("utf-8")
    new = EXAMPLE.sub(printed, old)
    page.write_text(new, "utf-8")
    return new != old


def main() -> None:
    """Rewrite all examples."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name) / "school"
        harbor.build(folder)
        for page in PAGES:
            if rewrite(page, folder):
                print(f"{_name(page)}: examples changed")


if __name__ == "__main__":
    main()
