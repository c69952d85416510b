"""The rule card of an ending: every rule and condition, with examples from the vocabulary."""

from __future__ import annotations

import random
from typing import NamedTuple

from phonodrill.endings.classify import Ending, classify
from phonodrill.endings.kinds import kind_of
from phonodrill.endings.rule import Rule
from phonodrill.endings.rules import RULES_OF
from phonodrill.endings.spell import row_named
from phonodrill.endings.suffix import PARTS_OF, PLURAL_NOUN, POSSESSIVE, SPELLED
from phonodrill.endings.together import check_ending
from phonodrill.endings.vocabulary import known_endings
from phonodrill.endings.words import open_base
from phonodrill.gate import open_gate
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import NO_OVERLAY, Overlay
from phonodrill.selection import Query, may_be_said


class Example(NamedTuple):
    """One live example of a rule.

    Attributes:
        base_ends_in: what the base ends in, as a teacher groups words.
        ending: the word, taken apart.
    """

    base_ends_in: str
    ending: Ending


class CardRow(NamedTuple):
    """One rule under one condition, with its examples."""

    rule: Rule
    examples: tuple[Example, ...]


class Card(NamedTuple):
    """The rule card of one ending.

    Attributes:
        suffix: s, ed, ing, er, est, ly, y or 's.
        rows: in the order in which the rules are tried.
        watch_outs: known words that go against the rule, with the reason.
    """

    suffix: str
    rows: tuple[CardRow, ...]
    watch_outs: tuple[Ending, ...]


def make_card(
    lexicon: Lexicon,
    suffix: str,
    *,
    band: int,
    per_kind: int,
    rng: random.Random,
    overlay: Overlay = NO_OVERLAY,
) -> Card:
    """Make the rule card of an ending.

    Args:
        lexicon: the open lexicon.
        suffix: s, ed, ing, er, est, ly, y or 's.
        band: highest band of the examples.
        per_kind: how many examples each kind of base has at most.
        rng: the only source of chance.
        overlay: a teacher's own words.

    Raises:
        PhonodrillError: if there is no such ending.
    """
    check_ending(suffix)
    query = Query(band, frozenset(SPELLED[suffix]))
    found: dict[Rule, dict[str, list[Ending]]] = {rule: {} for rule in RULES_OF[suffix]}
    known = list(known_endings(lexicon, query, rng, overlay))
    if suffix == POSSESSIVE:
        known += _plural_possessives(lexicon, band, per_kind, rng, overlay)
    for ending in sorted(known, key=lambda ending: _simplicity(ending, lexicon)):
        kinds = found[row_of(ending, lexicon)].setdefault(kind_of(ending), [])
        if len(kinds) < per_kind:
            kinds.append(ending)
    rows = tuple(
        CardRow(rule, tuple(Example(k, e) for k in sorted(kinds) for e in kinds[k]))
        for rule, kinds in found.items()
    )
    return Card(suffix, rows, tuple(watch_outs_of(lexicon, suffix, band, overlay)))


def row_of(ending: Ending, lexicon: Lexicon) -> Rule:
    """Find the very row of the table a word follows, not just the rule's name."""
    part = next((p for p in ending.parts_of_speech if p in PARTS_OF[ending.suffix]), "")
    base = open_base(ending.base, lexicon, part)
    if ending.rule == "add ' after s":
        base = base._replace(part_of_speech=PLURAL_NOUN)
    return row_named(ending.rule, ending.suffix, base)


def watch_outs_of(
    lexicon: Lexicon, suffix: str, band: int, overlay: Overlay = NO_OVERLAY
) -> list[Ending]:
    """Return the known words of a band that are exceptions in sound or spelling."""
    gate = open_gate(lexicon, overlay.words("block"))
    exceptions = lexicon.ending_exceptions()
    found = {}
    for form, base in exceptions:
        entry = lexicon.get(form)
        if entry and entry.band <= band and may_be_said(entry, gate):
            for way in classify(form, lexicon, exceptions):
                if way.base == base and way.suffix == suffix:
                    found[form, base] = way
    return list(found.values())


def _plural_possessives(
    lexicon: Lexicon, band: int, count: int, rng: random.Random, overlay: Overlay
) -> list[Ending]:
    plurals = Query(band, frozenset(SPELLED["s"]))
    found: list[Ending] = []
    for ending in known_endings(lexicon, plurals, rng, overlay):
        entry = lexicon.get(ending.base)
        if ending.parts_of_speech == ("noun",) and entry and entry.picturable:
            word = f"{ending.word}'"
            possessive = ending._replace(
                word=word, base=ending.word, suffix=POSSESSIVE, ending="s'"
            )
            found.append(possessive._replace(sound="", rule="add ' after s"))
        if len(found) == count:
            break
    return found


def _simplicity(ending: Ending, lexicon: Lexicon) -> tuple[bool, bool, int]:
    """Order examples: used as what the ending is for, one syllable, familiar."""
    entry = lexicon.get(ending.base)
    fitting = PARTS_OF[ending.suffix]
    if entry is None:
        return True, True, 0
    is_unusual = not entry.parts_of_speech or entry.parts_of_speech[0] not in fitting
    return is_unusual, entry.pronunciations[0].syllables > 1, entry.band
