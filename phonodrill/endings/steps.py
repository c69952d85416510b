"""What happens to the letters of a base when an ending is added, step by step."""

from __future__ import annotations

from enum import StrEnum
from itertools import takewhile
from typing import NamedTuple

from phonodrill.endings.rule import Rule


class Op(StrEnum):
    """What is done with some letters."""

    KEEP = "keep"
    DROP = "drop"
    DOUBLE = "double"
    CHANGE = "change"
    ADD = "add"


class Step(NamedTuple):
    """One step.

    Attributes:
        op: what is done.
        letters: with which letters of the base, or which are added.
        to: for a change, the letters that come instead.
    """

    op: Op
    letters: str
    to: str = ""


def steps_of(rule: Rule, base: str) -> tuple[Step, ...]:
    """Return the steps by which a rule spells base + ending.

    >>> from phonodrill.endings.rules import rule_for
    >>> [(str(s.op), s.letters) for s in steps_of(rule_for("jogging", "jog", "ing"), "jog")]
    [('keep', 'jog'), ('double', 'g'), ('add', 'ing')]
    """
    old, new = rule.turns
    if not base.endswith(old):
        old = new = ""
    kept = base[: len(base) - len(old)]
    steps = [Step(Op.KEEP, kept + old if new.startswith(old) else kept)]
    if new.startswith(old):
        steps += [Step(Op.ADD, new[len(old) :])]
    else:
        steps += [Step(Op.CHANGE, old, new) if new else Step(Op.DROP, old)]
    if rule.doubles:
        steps.append(Step(Op.DOUBLE, base[-1]))
    steps.append(Step(Op.ADD, rule.adds))
    return tuple(step for step in steps if step.letters)


def steps_between(base: str, form: str) -> tuple[Step, ...]:
    """Return the steps from a base to an irregular form: what stays, what changes.

    >>> [(str(s.op), s.letters, s.to) for s in steps_between("foot", "feet")]
    [('keep', 'f', ''), ('change', 'oo', 'ee'), ('keep', 't', '')]
    """
    head = _shared_start(base, form)
    old, new = base[len(head) :], form[len(head) :]
    tail = _shared_start(old[::-1], new[::-1])[::-1]
    old, new = old[: len(old) - len(tail)], new[: len(new) - len(tail)]
    middle = Step(Op.CHANGE, old, new) if old and new else Step(Op.DROP, old)
    if not old:
        middle = Step(Op.ADD, new)
    return tuple(s for s in (Step(Op.KEEP, head), middle, Step(Op.KEEP, tail)) if s.letters)


def _shared_start(one: str, other: str) -> str:
    """Return the letters with which both begin."""
    pairs = zip(one, other, strict=False)
    return one[: sum(1 for _ in takewhile(lambda pair: pair[0] == pair[1], pairs))]
