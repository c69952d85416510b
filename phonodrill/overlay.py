"""A teacher's own words, laid over the lexicon without compiling anything.

One plain text file in the user's configuration folder, a rule a line:

    add ferry 1     use it, as a word of this band (1 if none is given)
    block storm     never use it, nor what sounds like it

``#`` begins a comment. Later lines win. A line that cannot be read is passed
over and reported with its number. An added name (a student's, say) may be used
as a word; the gate holds for added words too.
"""

from __future__ import annotations

from pathlib import Path
from typing import NamedTuple

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


def read_overlay(path: Path) -> Overlay:
    """Read the teacher's file; a file that is not there holds no rule.

    Args:
        path: a UTF-8 text file.
    """
    try:
        lines = path.read_text("utf-8-sig", errors="replace").splitlines()
    except OSError:
        return NO_OVERLAY
    rules: dict[str, Rule] = {}
    problems = []
    for number, line in enumerate(lines, 1):
        text = line.partition("#")[0].strip().lower()
        if not text:
            continue
        rule = parse_rule(text)
        if rule is None:
            problems.append(f"{path.name}, line {number}: cannot be read, passed over")
        else:
            rules.pop(rule.word, None)
            rules[rule.word] = rule
    return Overlay(rules, tuple(problems))


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


def write_overlay(overlay: Overlay) -> str:
    """Write the rules as the text of a file, by spelling."""
    return "".join(f"{rule.line()}\n" for _, rule in sorted(overlay.rules.items()))
