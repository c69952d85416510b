"""A teacher's own words, laid over the lexicon without compiling anything.

One plain text file in the user's configuration folder, a rule a line:

    add ferry 1     use it, as a word of this band (1 if none is given)
    block storm     never use it, nor what sounds like it

``#`` begins a comment. Later lines win. A line that cannot be read is passed
over and reported with its number; it stays in the file, as comments do, when the
lists are changed. An added name (a student's, say) may be used
as a word; the gate holds for added words too.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path
from typing import NamedTuple

from phonodrill.errors import PhonodrillError
from phonodrill.one_at_a_time import one_at_a_time
from phonodrill.text_file import read_content, without_mark
from phonodrill.whole_file import with_folder, write_whole

ACTIONS = ("add", "block")
BANDS = ("1", "2", "3")


class Rule(NamedTuple):
    """One line of the file.

    Attributes:
        action: add or block.
        word: the spelling, lower case.
        band: for ``add``, the band the word takes.
    """

    action: str
    word: str
    band: int = 1

    def line(self) -> str:
        """Write the rule as a line of the file."""
        return f"{self.action} {self.word}" + f" {self.band}" * (self.action == "add")


class Overlay(NamedTuple):
    """The rules in force, the last one a word.

    Attributes:
        rules: word -> its rule.
        problems: one line each on what could not be read.
    """

    rules: dict[str, Rule]
    problems: tuple[str, ...] = ()

    def words(self, action: str) -> list[str]:
        """Return the words that are added or blocked."""
        return [word for word, rule in self.rules.items() if rule.action == action]


NO_OVERLAY = Overlay({})
_AS_IT_IS = "surrogateescape"
"""How bytes that are no UTF-8 are read, so that they are written again as they were."""


def read_overlay(path: Path) -> Overlay:
    """Read the teacher's file; a file that is not there holds no rule.

    Args:
        path: a UTF-8 text file.

    Raises:
        PhonodrillError: if it is there but cannot be read: a word that was blocked may
            not come back unseen.
    """
    return _parse(_text_of(path), path.name)


def change_overlay(path: Path, change: Callable[[Overlay], Overlay]) -> None:
    """Change the teacher's file; comments and lines that cannot be read stay.

    Args:
        path: the file; it and its folder are made if they are not there.
        change: what to make of the rules in force.

    Raises:
        PhonodrillError: if the change is refused or the file cannot be read or written;
            it stays as it is then.
    """
    with one_at_a_time(with_folder(path)):
        text = _text_of(path)
        changed = change(_parse(text, path.name))
        write_whole(path, write_overlay(changed, text).encode(errors=_AS_IT_IS))


def _text_of(path: Path) -> str:
    try:
        return without_mark(read_content(path).decode(errors=_AS_IT_IS))
    except PhonodrillError as error:
        if isinstance(error.__cause__, (FileNotFoundError, NotADirectoryError)):
            return ""
        raise


def _parse(text: str, name: str) -> Overlay:
    rules: dict[str, Rule] = {}
    problems = []
    for number, line in enumerate(text.splitlines(), 1):
        bare = _bare(line)
        if not bare:
            continue
        rule = parse_rule(bare)
        if rule is None:
            problems.append(f"{name}, line {number}: cannot be read, passed over")
        else:
            rules.pop(rule.word, None)
            rules[rule.word] = rule
    return Overlay(rules, tuple(problems))


def _bare(line: str) -> str:
    return line.partition("#")[0].strip().lower()


def parse_rule(text: str) -> Rule | None:
    """Read one line, or return None if it is no rule.

    >>> parse_rule("add ferry 2")
    Rule(action='add', word='ferry', band=2)
    >>> parse_rule("maybe ferry")
    """
    action, *rest = text.split()
    if action not in ACTIONS or not rest or not rest[0].replace("'", "").isalpha():
        return None
    word, *more = rest
    if action == "add" and len(more) == 1 and more[0] in BANDS:
        return Rule(action, word, int(more[0]))
    return None if more else Rule(action, word)


def write_overlay(overlay: Overlay, text: str = "") -> str:
    r"""Write the rules as the text of a file: those it had first, then others by spelling.

    Args:
        overlay: the rules.
        text: the file as it was; what is no rule in it stays.

    >>> print(write_overlay(Overlay({"gull": Rule("block", "gull")}), "# ours\nadd crab"), end="")
    # ours
    block gull
    """
    lines = []
    new = dict(overlay.rules)
    for line in text.splitlines():
        bare = _bare(line)
        rule = parse_rule(bare) if bare else None
        if rule is None or new.get(rule.word) == rule:
            lines.append(line)
            new.pop(rule.word if rule else "", None)
    return "".join(f"{line}\n" for line in (*lines, *_lines_of(new)))


def _lines_of(rules: dict[str, Rule]) -> Iterator[str]:
    return (rule.line() for _, rule in sorted(rules.items()))
