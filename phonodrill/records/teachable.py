"""Which lesson teaches a skill, and what comes before it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from phonodrill.endings.rules import RULES
from phonodrill.endings.suffix import POSSESSIVE, SOUNDS_OF, SUFFIX_OF
from phonodrill.records.answer import Kind, Skill
from phonodrill.tasks.difficulty import WEIGHTS
from phonodrill.tasks.registry import TASKS

_OF_IES = ("iz", "aɪz")
NOT_IN_ORDER = 10_000
"""Place in a teaching order of what is not in it: behind all that is."""


def focus_of(skill: Skill) -> str:
    """Return the focus that ``lesson --focus`` takes for a skill; empty if none teaches it.

    A place, a level and a cluster are no focus: they tell where in a task a student fails.

    >>> focus_of(Skill(Kind.CONDITION, "y to i, add es")), focus_of(Skill(Kind.TASK, "delete"))
    ('ies', 'delete')
    >>> focus_of(Skill(Kind.ENDING_SOUND, "ɪd")), focus_of(Skill(Kind.PLACE, "first"))
    ('ed', '')
    """
    if skill.kind is Kind.TASK:
        return skill.name if skill.name in TASKS else ""
    if skill.kind is Kind.CORRESPONDENCE:
        return skill.name
    if skill.kind is Kind.CONDITION:
        endings = (rule.ending for rule in RULES if rule.name == skill.name)
        return next((e for e in endings if SUFFIX_OF.get(e, POSSESSIVE) != POSSESSIVE), "")
    if skill.kind is Kind.ENDING_SOUND:
        return _focus_of_sound(skill.name)
    return ""


def _focus_of_sound(sound: str) -> str:
    """Return the endings that a sound is told apart in: -s and -es are sorted together."""
    suffix = next((suffix for suffix, sounds in SOUNDS_OF.items() if sound in sounds), "")
    if suffix == "s":
        return "ies" if sound in _OF_IES else "s,es"
    return suffix


def comes_before(skill: Skill, others: Iterable[Skill], order: Sequence[str] = ()) -> list[Skill]:
    """Return which of some skills come before a skill, the first to teach first.

    Simpler tasks come before harder ones (as ``tasks/difficulty.py`` weighs them), an ending
    that is only added before its changes, a correspondence before those behind it in the
    class's own order.

    Args:
        skill: which skill.
        others: skills that may come before it.
        order: correspondences as skills name them, in the order taught.
    """
    own = _rank(skill, order)
    ranked = sorted((_rank(other, order), other) for other in others if other != skill)
    return [
        other
        for rank, other in ranked
        if other.kind is skill.kind and rank[0] == own[0] and rank[1] < own[1]
    ]


def _rank(skill: Skill, order: Sequence[str]) -> tuple[str, float]:
    """Return what a skill is ranked among, and how late it comes."""
    if skill.kind is Kind.TASK:
        return "tasks", WEIGHTS.get(skill.name, 0.0)
    if skill.kind is Kind.CONDITION:
        suffix = next((rule.suffix for rule in RULES if rule.name == skill.name), "")
        return suffix, float(skill.name != f"add {suffix}")
    if skill.kind is Kind.CORRESPONDENCE and order:
        return "letters", order.index(skill.name) if skill.name in order else NOT_IN_ORDER
    return skill.name, 0.0
