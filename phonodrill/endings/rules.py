"""Spelling rules for the ending -s, each a row of one table.

Sources: Carter & McCarthy (2006), *Cambridge Grammar of English*, appendix
section 508c (es where a syllable is added and the base has no final e);
GPO Style Manual, chapter 5 (y to ies, f to ves).
"""

from __future__ import annotations

from typing import NamedTuple

_CONSONANT_Y = tuple(f"{letter}y" for letter in "bcdfghjklmnpqrstvwxz")


class Rule(NamedTuple):
    """One way to spell base + ending.

    Attributes:
        name: short name, used for grouping and in JSON.
        ending: the label of what the eye sees at the end.
        base_ends: letters one of which the base must end with; empty for any.
        dropped: how many letters of the base go.
        added: the letters that come instead.
        doubled: whether the last letter is doubled first.
    """

    name: str
    ending: str
    base_ends: tuple[str, ...]
    dropped: int
    added: str
    doubled: bool = False

    def spell(self, base: str) -> str:
        """Add the ending to a base; empty where the rule cannot apply."""
        if self.base_ends and not base.endswith(self.base_ends):
            return ""
        return base[: len(base) - self.dropped] + base[-1] * self.doubled + self.added


RULES: tuple[Rule, ...] = (
    Rule("y to i, add es", "ies", (*_CONSONANT_Y, "quy"), 1, "ies"),
    Rule("f to v, add es", "ves", ("f",), 1, "ves"),
    Rule("fe to ve, add s", "ves", ("fe",), 2, "ves"),
    Rule("double, add es", "es", ("s", "z"), 0, "es", doubled=True),
    Rule("add es", "es", ("s", "x", "z", "ch", "sh", "zh", "o"), 0, "es"),
    Rule("add s after ie", "ies", ("ie",), 0, "s"),
    Rule("add s", "s", (), 0, "s"),
)
_PLACE = {rule.name: place for place, rule in enumerate(RULES)}


def rule_for(form: str, base: str) -> Rule | None:
    """Find the rule by which a form in -s comes from a base, by letters.

    >>> rule_for("ferries", "ferry").name, rule_for("hedges", "hedge").name
    ('y to i, add es', 'add s')
    """
    return next((rule for rule in RULES if base and rule.spell(base) == form), None)


def possible_bases(form: str) -> list[str]:
    """Return every spelling that some rule turns into this form.

    >>> possible_bases("ponies")
    ['pony', 'ponie']
    """
    stems = {form[:-1], form[:-2], form[:-3], form[:-3] + "y", form[:-3] + "f", form[:-3] + "fe"}
    found = [(rule, stem) for stem in stems if stem and (rule := rule_for(form, stem))]
    return [stem for rule, stem in sorted(found, key=lambda pair: (_PLACE[pair[0].name], pair[1]))]
