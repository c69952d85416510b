"""The spelling rules for every ending: one table, a row a rule and condition.

The first row of an ending whose condition holds is its rule. Bases that no
condition foretells are rows of ``wordlists/ending_spellings.tsv``, which name a
rule of this table.
"""

from __future__ import annotations

from phonodrill.endings.other_rules import LY_RULES, POSSESSIVE_RULES
from phonodrill.endings.rule import Rule
from phonodrill.endings.s_rules import S_RULES
from phonodrill.endings.vowel_rules import vowel_rules

RULES_OF: dict[str, tuple[Rule, ...]] = {
    "s": S_RULES,
    **{suffix: vowel_rules(suffix) for suffix in ("ed", "ing", "er", "est")},
    "ly": LY_RULES,
    "y": vowel_rules("y"),
    "'s": POSSESSIVE_RULES,
}
RULES: tuple[Rule, ...] = tuple(rule for rules in RULES_OF.values() for rule in rules)
SUFFIXES = tuple(RULES_OF)


def rule_for(form: str, base: str, suffix: str = "s") -> Rule | None:
    """Find the rule by which a form comes from a base, by letters alone.

    >>> rule_for("ferries", "ferry").name, rule_for("hedges", "hedge").name
    ('y to i, add es', 'add s')
    >>> rule_for("skated", "skate", "ed").name
    'drop e, add ed'
    """
    if not base:
        return None
    spelling = (
        rule
        for rule in RULES_OF[suffix]
        if form.endswith(rule.turns[1] + rule.adds) and rule.name != "no change"
    )
    return next((rule for rule in spelling if rule.spell(base) == form), None)


def possible_bases(form: str, suffix: str = "s") -> list[str]:
    """Return every spelling that some rule of an ending turns into this form.

    >>> possible_bases("ponies")
    ['pony', 'ponie', 'poni']
    >>> possible_bases("hopping", "ing")
    ['hoppe', 'hop', 'hopp']
    """
    found = [rule.undo(form) for rule in RULES_OF[suffix] if rule.name != "no change"]
    return list(dict.fromkeys(base for base in found if base))
