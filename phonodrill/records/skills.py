"""How a skill is named in a teacher's words."""

from __future__ import annotations

from phonodrill.endings.sounds import written_sound
from phonodrill.records.answer import Kind, Skill
from phonodrill.sounds.notation import SCRIPT


def describe(skill: Skill) -> str:
    """Name a skill in a teacher's words.

    >>> describe(Skill(Kind.CONDITION, "add es")), describe(Skill(Kind.CORRESPONDENCE, "a_e=ā"))
    ('rule: add es', 'a_e says /ā/')
    """
    if skill.kind is Kind.CORRESPONDENCE:
        spelling, _, sound = skill.name.partition("=")
        return f"{spelling} says /{sound}/"
    if skill.kind is Kind.ENDING_SOUND:
        return f"ending says {written_sound(skill.name, SCRIPT)}"
    if skill.kind is Kind.CONDITION:
        return f"rule: {skill.name}"
    return f"{skill.kind}: {skill.name}" if skill.kind is not Kind.CLUSTER else skill.name
