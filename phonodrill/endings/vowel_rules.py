"""The spelling rules for endings that begin with a vowel: ed, ing, er, est and y."""

from __future__ import annotations

from phonodrill.endings import conditions as c
from phonodrill.endings.conditions import Condition
from phonodrill.endings.rule import COMMON, CONSONANT_Y, GPO, Rule, plain

_DOUBLED = tuple("bcdfgklmnprstvz")
_SILENT: dict[str, Condition] = {"ing": c.drops_e, "y": c.drops_e_before_y}
"""Endings before which only a silent e goes; before the others (*agreed*, *freer*) any does."""
_SAME_PAST = Rule(
    "no change",
    "ed",
    "",
    c.is_listed_only,
    "cut, hit, put and some thirty more (listed)",
    (),
    ("", ""),
    False,
    "",
    "The past is the same word.",
    COMMON,
)


def vowel_rules(suffix: str) -> tuple[Rule, ...]:
    """Make the rows of one of these endings, in the order in which they are tried."""
    first = {
        "ed": (_SAME_PAST, _y_to_i(suffix)),
        "ing": (_ie_to_y(),),
        "er": (_y_to_i(suffix), _ey_to_i(suffix)),
        "est": (_y_to_i(suffix), _ey_to_i(suffix)),
    }
    last = (_e_between(),) if suffix == "y" else ()
    return (
        *first.get(suffix, ()),
        _row(
            suffix,
            "drop e",
            _SILENT.get(suffix, c.always),
            "a silent e" if suffix in _SILENT else "a final e",
            "Drop the e",
            base_ends=("e",),
            turns=("e", ""),
        ),
        _row(
            suffix,
            "add k",
            c.takes_k,
            "a vowel and c",
            "C would turn soft: add k",
            base_ends=("c",),
            turns=("c", "ck"),
        ),
        _row(
            suffix,
            "double",
            c.doubles,
            "one vowel and one consonant letter, the last syllable stressed",
            "Double the last letter",
            base_ends=_DOUBLED,
            doubles=True,
        ),
        plain(suffix, suffix, f"Add {suffix}.", GPO),
        *last,
    )


def _y_to_i(suffix: str) -> Rule:
    return _row(
        suffix,
        "y to i",
        c.ends_in_consonant_y,
        "consonant + y",
        "After a consonant, y turns to i",
        base_ends=CONSONANT_Y,
        turns=("y", "i"),
    )


def _ey_to_i(suffix: str) -> Rule:
    when = "ey in a second syllable"
    row = _row(suffix, "ey to i", c.ends_in_weak_ey, when, "Ey turns to i", turns=("ey", "i"))
    return row._replace(source=COMMON)


def _ie_to_y() -> Rule:
    row = _row("ing", "ie to y", c.always, "ie at the end", "Turn ie to y", turns=("ie", "y"))
    return row._replace(source=COMMON)


def _e_between() -> Rule:
    row = _row("y", "e between", c.is_listed_only, "goo, clay (listed)", "Put e between")
    return row._replace(adds="ey", source=COMMON)


def _row(
    suffix: str,
    change: str,
    holds: Condition,
    when: str,
    says: str,
    *,
    base_ends: tuple[str, ...] = (),
    turns: tuple[str, str] = ("", ""),
    doubles: bool = False,
) -> Rule:
    """Make one row: the change that is named, then the ending is added."""
    return Rule(
        f"{change}, add {suffix}",
        suffix,
        suffix,
        holds,
        when,
        base_ends or ((turns[0],) if turns[0] else ()),
        turns,
        doubles,
        suffix,
        f"{says}; then add {suffix}.",
        GPO,
    )
