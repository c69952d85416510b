"""Irregular forms, as dictionaries list them for a base or for the word that ends it."""

from __future__ import annotations

from typing import NamedTuple

from phonodrill.endings.conditions import BaseWord
from phonodrill.endings.rule import Rule
from phonodrill.endings.rules import rule_for
from phonodrill.endings.words import PREFIXES, known_tail
from phonodrill.lexicon.entry import INFLECTIONS, Inflection
from phonodrill.lexicon.store import Lexicon

SHORTEST_NOUN = 4
SHORTEST_VERB = 5
"""Letters a word at the end of another must have to share its irregular forms."""


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
    known = base.listed_as if may_share_forms(base, base.listed_as) else base.word
    rows = _rows(known, suffix, lexicon)
    has_none = not any(row.inflection != "past participle" for row in rows)
    if not base.listed_as and has_none and _is_listed_so(base, lexicon):
        # Of backslide the dictionary lacks the past: it is that of slide.
        tail = known_tail(base.word, lexicon)
        shared = _rows(tail.word, suffix, lexicon) if tail else []
        if tail and shared and may_share_forms(base, tail.word):
            known, rows = tail.word, shared
    head = base.word.removesuffix(known)
    found: dict[str, Irregular] = {}
    for row in rows:
        rule = rule_for(row.form, known, suffix)
        is_irregular = not row.ending and not (rule and rule.ending)
        compound_s = suffix == "s" and known != base.word and base.part_of_speech == "verb"
        if is_irregular and row.part_of_speech == base.part_of_speech and not compound_s:
            found.setdefault(row.form, Irregular(head + row.form, row.inflection, rule))
    return sorted(found.values(), key=lambda row: row.inflection == "past participle")


def may_share_forms(base: BaseWord, tail: str) -> bool:
    """Whether a longer word has the irregular forms of the word that ends it.

    *unmake* and *backslide* do, *memorise* has none of *rise*.
    """
    if not tail:
        return False
    if base.part_of_speech == "noun":
        return tail == "man" or len(tail) >= SHORTEST_NOUN
    is_safe = base.said is not None or base.word.removesuffix(tail) in PREFIXES
    return is_safe or len(tail) >= SHORTEST_VERB


def _is_listed_so(base: BaseWord, lexicon: Lexicon) -> bool:
    """Whether a word is listed in the reading asked for.

    A verb made of a noun is regular, whatever verb its letters end in: *lipsticked*, not as
    *stuck* (Kim, Pinker, Prince & Prasada 1991, *Cognitive Science* 15, 173-218; from memory).
    """
    entry = lexicon.get(base.word)
    return entry is not None and base.part_of_speech in entry.parts_of_speech


def _rows(word: str, suffix: str, lexicon: Lexicon) -> list[Inflection]:
    rows = lexicon.forms_of(word)
    past_first = sorted(rows, key=lambda row: row.inflection)
    return [row for row in past_first if INFLECTIONS[row.inflection] == suffix]
