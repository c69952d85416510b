"""Irregular forms, as dictionaries list them for a base or for the word that ends it."""

from __future__ import annotations

from typing import NamedTuple

from phonodrill.endings.base import INFLECTIONS
from phonodrill.endings.conditions import BaseWord
from phonodrill.endings.rule import Rule
from phonodrill.endings.rules import rule_for
from phonodrill.endings.words import known_tail
from phonodrill.lexicon.entry import Inflection
from phonodrill.lexicon.store import Lexicon


class Irregular(NamedTuple):
    """An irregular form.

    Attributes:
        form: as it is written.
        inflection: plural, past, past participle, ...
        rule: the classical rule behind it (us to i), or None.
    """

    form: str
    inflection: str
    rule: Rule | None


def irregular_forms(base: BaseWord, suffix: str, lexicon: Lexicon) -> list[Irregular]:
    """Return the irregular forms of a base in the reading asked for.

    Args:
        base: the base; a compound that no dictionary lists has the forms of its last part.
        suffix: which ending they stand instead of.
        lexicon: the open lexicon.
    """
    known = base.listed_as or base.word
    rows = _rows(known, suffix, lexicon)
    if not any(row.inflection != "past participle" for row in rows) and not base.listed_as:
        # Of backslide the dictionary lacks the past: it is that of slide.
        tail = known_tail(base.word, lexicon)
        known = tail.word if tail else known
        rows = _rows(known, suffix, lexicon) or rows
    head = base.word.removesuffix(known)
    found: dict[str, Irregular] = {}
    for row in rows:
        rule = rule_for(row.form, known, suffix)
        is_irregular = not row.ending and not (rule and rule.ending)
        if is_irregular and row.part_of_speech == base.part_of_speech:
            found.setdefault(row.form, Irregular(head + row.form, row.inflection, rule))
    return sorted(found.values(), key=lambda row: row.inflection == "past participle")


def _rows(word: str, suffix: str, lexicon: Lexicon) -> list[Inflection]:
    rows = lexicon.forms_of(word)
    past_first = sorted(rows, key=lambda row: row.inflection)
    return [row for row in past_first if INFLECTIONS[row.inflection] == suffix]
