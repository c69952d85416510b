"""One row of the table of spelling rules."""

from __future__ import annotations

from typing import NamedTuple

from phonodrill.endings import conditions as c
from phonodrill.endings.conditions import Condition

IRREGULAR = "irregular"
"""Stands for the rule of a form that is learned by heart."""
CONSONANT_Y = (*(f"{letter}y" for letter in "bcdfghjklmnpqrstvwxz"), "quy")

GPO = "GPO Style Manual, ch. 5"
CAMBRIDGE = "Carter & McCarthy (2006), 508c"
QUIRK = "Quirk et al. (1985), 3.5-3.10, 5.79-5.83 (from memory)"
COMMON = "common practice, no source"


class Rule(NamedTuple):
    """One way to spell base + ending.

    Attributes:
        name: short name, used for grouping and in JSON; rows of one name change the
            spelling alike under different conditions.
        suffix: which ending it is of: s, ed, ing, er, est, ly, y or 's.
        ending: the label of what the eye sees at the end.
        holds: whether the rule is that of a base.
        when: the condition in a teacher's words.
        base_ends: letters one of which the base must end with; empty for any.
        turns: letters at the end of the base and what they turn into; two empty strings
            where they stay.
        doubles: whether the last letter is doubled.
        adds: the letters that come behind.
        says: the rule in a teacher's words.
        source: where it is stated.
        watch_out: what to warn of wherever the rule is met, or empty.
        heard: what the ending says wherever the rule is met, if the base does not tell.
    """

    name: str
    suffix: str
    ending: str
    holds: Condition
    when: str
    base_ends: tuple[str, ...]
    turns: tuple[str, str]
    doubles: bool
    adds: str
    says: str
    source: str
    watch_out: str = ""
    heard: str = ""

    def spell(self, base: str) -> str:
        """Add the ending to a base; empty where the rule cannot apply."""
        old, new = self.turns
        if not base.endswith(self.base_ends or old) or (base == old and not new):
            return ""
        kept = base[: len(base) - len(old)] + new
        return kept + kept[-1] * self.doubles + self.adds

    def undo(self, form: str) -> str:
        """Take the ending off again; empty where this rule does not give the form."""
        old, new = self.turns
        tail = new + self.adds
        if not form.endswith(tail):
            return ""
        base = form[: len(form) - len(tail)] + old
        if self.doubles:
            base = base[:-1]
        return base if base and self.spell(base) == form else ""


def plain(suffix: str, ending: str, says: str, source: str) -> Rule:
    """Make the last row of an ending: it is added, and nothing else happens."""
    name = f"add {ending}"
    return Rule(
        name, suffix, ending, c.always, "any other base", (), ("", ""), False, ending, says, source
    )
