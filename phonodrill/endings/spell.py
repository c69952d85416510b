"""How an ending is added to a base: the rule is chosen by sounds, then by letters.

*stomach* ends in the letters ch but in the sound /k/, so it takes s.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from phonodrill.endings.conditions import BaseWord, is_listed_only
from phonodrill.endings.rule import Rule
from phonodrill.endings.rules import RULES_OF

_GENERAL = {
    suffix: tuple(rule for rule in rules if rule.holds is not is_listed_only)
    for suffix, rules in RULES_OF.items()
}
Listed = Mapping[tuple[str, str], Sequence[tuple[str, str]]]
"""(base, ending) -> [(part of speech or empty for any, rule name)], as in
``Lexicon.ending_spellings()``."""


def rules_of(base: BaseWord, suffix: str, listed: Listed) -> tuple[Rule, ...]:
    """Choose the rule, or the rules where usage has two, by which a base takes an ending.

    Args:
        base: real or made up.
        suffix: s, ed, ing, er, est, ly, y or 's.
        listed: bases whose spelling no rule foretells.

    >>> gutch = BaseWord("gutch", "ʧ", 1, True)
    >>> [rule.spell("gutch") for rule in rules_of(gutch, "s", {})]
    ['gutches']
    """
    if (base.listed_as or base.word, suffix) in listed:
        names = _names(base, suffix, listed)
        if names:
            return tuple(row_named(name, suffix, base) for name in names)
    return (general_rule(base, suffix),)


def is_judged(base: BaseWord, suffix: str, listed: Listed) -> bool:
    """Whether our table names the very forms of a base in this reading."""
    return bool(_names(base, suffix, listed))


def _names(base: BaseWord, suffix: str, listed: Listed) -> list[str]:
    rows = listed.get((base.listed_as or base.word, suffix), ())
    asked = base.part_of_speech
    return list(dict.fromkeys(name for part, name in rows if not asked or part in ("", asked)))


def general_rule(base: BaseWord, suffix: str) -> Rule:
    """Choose the first rule of an ending whose condition the base fulfils."""
    word = base.word
    rules = _GENERAL[suffix]
    for rule in rules:
        if (not rule.base_ends or word.endswith(rule.base_ends)) and rule.holds(base):
            return rule
    return rules[-1]


def row_named(name: str, suffix: str, base: BaseWord) -> Rule:
    """Choose among the rows of one rule name that whose condition the base fulfils.

    Raises:
        KeyError: if the ending has no rule of that name.
    """
    rows = [rule for rule in RULES_OF[suffix] if rule.name == name]
    if not rows:
        raise KeyError(name)
    fitting = (rule for rule in rows if rule.spell(base.word) and rule.holds(base))
    return next(fitting, rows[-1])
