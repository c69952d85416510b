"""Spelling rules for the ending -s, each a row of one table.

Sources: Carter & McCarthy (2006), *Cambridge Grammar of English*, appendix
section 508c (es where a syllable is added and the base has no final e);
GPO Style Manual, chapter 5 (y to ies, f to ves).
"""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple


class Rule(NamedTuple):
    """One way to spell base + ending.

    Attributes:
        name: short name, used for grouping and in JSON.
        ending: the label of what the eye sees at the end.
        spell: makes the form from a base, or None where the rule cannot apply.
    """

    name: str
    ending: str
    spell: Callable[[str], str | None]


def _if_ends(base: str, letters: tuple[str, ...], form: str) -> str | None:
    return form if base.endswith(letters) else None


_VOWEL_LETTERS = ("a", "e", "i", "o", "u")
_AFTER_ES = ("s", "x", "z", "ch", "sh", "o")

RULES: tuple[Rule, ...] = (
    Rule("y to i, add es", "ies", lambda base: _y_to_ies(base)),
    Rule("f to v, add es", "ves", lambda base: _if_ends(base, ("f",), base[:-1] + "ves")),
    Rule("fe to ve, add s", "ves", lambda base: _if_ends(base, ("fe",), base[:-2] + "ves")),
    Rule("double, add es", "es", lambda base: _if_ends(base, ("s", "z"), base + base[-1] + "es")),
    Rule("add es", "es", lambda base: _if_ends(base, _AFTER_ES, base + "es")),
    Rule("add s after ie", "ies", lambda base: _if_ends(base, ("ie",), base + "s")),
    Rule("add s", "s", lambda base: base + "s"),
)


def rule_for(form: str, base: str) -> Rule | None:
    """Find the rule by which a form in -s comes from a base, by letters.

    >>> rule_for("ferries", "ferry").name, rule_for("hedges", "hedge").name
    ('y to i, add es', 'add s')
    """
    return next((rule for rule in RULES if rule.spell(base) == form), None)


def possible_bases(form: str) -> list[str]:
    """Return every spelling that some rule turns into this form.

    >>> possible_bases("ponies")
    ['pony', 'ponie']
    """
    stems = {form[:-1], form[:-2], form[:-3], form[:-3] + "y", form[:-3] + "f", form[:-3] + "fe"}
    bases = [stem for stem in stems if len(stem) > 1 and rule_for(form, stem)]
    order = [rule.name for rule in RULES]
    return sorted(bases, key=lambda base: (_place(form, base, order), base))


def _place(form: str, base: str, order: list[str]) -> int:
    rule = rule_for(form, base)
    return order.index(rule.name) if rule else len(order)


def _y_to_ies(base: str) -> str | None:
    if not base.endswith("y") or len(base) < 2:
        return None
    vowel_before = base[-2] in _VOWEL_LETTERS and not base.endswith("quy")
    return None if vowel_before else base[:-1] + "ies"
