"""The spelling rules for endings that begin with a vowel: ed, ing, er, est and y."""

from __future__ import annotations

from phonodrill.endings import conditions as c
from phonodrill.endings.conditions import Condition
from phonodrill.endings.rule import COMMON, CONSONANT_Y, GPO, Rule, plain

_DOUBLED = tuple("bcdfgklmnprstvz")

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
    """Make the rows of an ending that begins with a vowel: ed, ing, er, est or y."""
    adds = "ing" if suffix == "ing" else suffix

    def row(
        name: str,
        holds: Condition,
        when: str,
        says: str,
        source: str,
        *,
        base_ends: tuple[str, ...] = (),
        turns: tuple[str, str] = ("", ""),
        doubles: bool = False,
    ) -> Rule:
        return Rule(
            f"{name}, add {suffix}",
            suffix,
            suffix,
            holds,
            when,
            base_ends,
            turns,
            doubles,
            adds,
            f"{says}; then add {suffix}.",
            source,
        )

    silent = {"ing": c.drops_e, "y": c.drops_e_before_y}.get(suffix, c.always)
    rows = [
        row(
            "drop e",
            silent,
            "a silent e" if suffix in ("ing", "y") else "a final e",
            "Drop the e",
            GPO,
            base_ends=("e",),
            turns=("e", ""),
        ),
        row(
            "add k",
            c.takes_k,
            "a vowel and c",
            "C would turn soft: add k",
            GPO,
            base_ends=("c",),
            turns=("c", "ck"),
        ),
        row(
            "double",
            c.doubles,
            "one vowel and one consonant letter, the last syllable stressed",
            "Double the last letter",
            GPO,
            base_ends=_DOUBLED,
            doubles=True,
        ),
        plain(suffix, suffix, f"Add {suffix}.", GPO),
    ]
    if suffix == "ing":
        ie = row(
            "ie to y",
            c.always,
            "ie at the end",
            "Turn ie to y",
            COMMON,
            base_ends=("ie",),
            turns=("ie", "y"),
        )
        return (ie, *rows)
    if suffix != "y":
        y = row(
            "y to i",
            c.ends_in_consonant_y,
            "consonant + y",
            "After a consonant, y turns to i",
            GPO,
            base_ends=CONSONANT_Y,
            turns=("y", "i"),
        )
        ey = row(
            "ey to i",
            c.ends_in_weak_ey,
            "ey in a second syllable",
            "Ey turns to i",
            COMMON,
            base_ends=("ey",),
            turns=("ey", "i"),
        )
        return (y, ey, *rows) if suffix != "ed" else (_SAME_PAST, y, *rows)
    ey = row("e between", c.is_listed_only, "goo, clay (listed)", "Put e between", COMMON)
    return (*rows, ey._replace(adds="ey"))
