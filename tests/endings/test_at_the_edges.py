"""What only a few words tell apart; each row was found by a change no other test noticed."""

from __future__ import annotations

import random

import pytest

from phonodrill import (
    By,
    Lexicon,
    PhonodrillError,
    Query,
    add_ending,
    choose_words,
    find_bases,
    find_lookalikes,
    make_card,
    sort_vocabulary,
)
from phonodrill.endings.base import unlisted_singular
from phonodrill.endings.classify import classify
from phonodrill.endings.lookalikes import Kind
from phonodrill.endings.together import ending_of
from phonodrill.endings.vocabulary import known_endings
from phonodrill.endings.words import known_tail
from phonodrill.overlay import Overlay, Rule


@pytest.mark.source("how the words are made: common practice, no source")
@pytest.mark.parametrize(
    ("form", "base", "rule"),
    [("dressmaking", "dressmake", "drop e, add ing"), ("edgeways", "edgeway", "add s")],
)
def test_a_form_that_nobody_lists(lexicon: Lexicon, form: str, base: str, rule: str) -> None:
    undone = find_bases(form, lexicon)
    assert [(origin.base, origin.rule) for origin in undone.origins] == [(base, rule)]
    assert undone.note == ""


@pytest.mark.parametrize("word", ["tardy", "gypsy"])
def test_what_is_left_is_not_shown_if_unfit(lexicon: Lexicon, word: str) -> None:
    undone = find_bases(word, lexicon)
    assert (undone.origins, undone.note) == ((), "a word of its own: it has no ending")


@pytest.mark.source("common practice, no source")
@pytest.mark.parametrize(
    ("word", "singular"),
    [("apps", "app"), ("goods", ""), ("agendas", ""), ("acrylics", ""), ("lens", ""), ("app", "")],
)
def test_the_singular_of_what_nobody_lists(lexicon: Lexicon, word: str, singular: str) -> None:
    assert unlisted_singular(word, lexicon) == singular


@pytest.mark.parametrize(("word", "tail"), [("sailfish", "fish"), ("unzip", "zip"), ("airw", "")])
def test_the_word_that_ends_a_longer_one(lexicon: Lexicon, word: str, tail: str) -> None:
    found = known_tail(word, lexicon)
    assert (found.word if found else "") == tail


def test_no_such_ending() -> None:
    assert ending_of("ies") == "s"
    with pytest.raises(PhonodrillError) as caught:
        ending_of("zz")
    assert caught.value.message == "'zz' is no ending"


def test_only_words_with_a_base_of_the_band_are_chosen(lexicon: Lexicon) -> None:
    """Words whose base is known later, or not at all, are left to others."""
    for band in (1, 2):
        query = Query(band, frozenset({"s", "ed"}))
        chosen = choose_words(lexicon, query, count=400, rng=random.Random(2))
        bases = [lexicon.get(word.ending.base) for word in chosen]
        assert {entry.band for entry in bases if entry} == {*range(1, band + 1)}
        assert all(bases)


def test_blocked_words_are_in_no_list(lexicon: Lexicon) -> None:
    """As in the table of an ending, so in a sort and among the traps."""
    card = make_card(lexicon, "s", band=3, per_kind=3, rng=random.Random(0))
    odd = card.watch_outs[0].word
    query = Query(2, frozenset({"es"}))
    sort = sort_vocabulary(lexicon, query, By.SOUND, 500, random.Random(0))
    sorted_ = sort.groups[0].words[0].word
    overlay = Overlay({word: Rule("block", word, 0) for word in (odd, sorted_)})
    card = make_card(lexicon, "s", band=3, per_kind=3, rng=random.Random(0), overlay=overlay)
    assert odd not in {way.word for way in card.watch_outs}
    sort = sort_vocabulary(lexicon, query, By.SOUND, 500, random.Random(0), overlay)
    assert sorted_ not in {ending.word for group in sort.groups for ending in group.words}


def test_lists_are_in_the_order_of_the_alphabet(lexicon: Lexicon) -> None:
    query = Query(2, frozenset({"es", "s"}))
    for group in sort_vocabulary(lexicon, query, By.SOUND, 40, random.Random(3)).groups:
        words = [ending.word for ending in group.words]
        assert words == sorted(words)
    traps = find_lookalikes(lexicon, query, count=8, rng=random.Random(3))
    piles = [[trap.word for trap in traps if trap.kind is kind] for kind in Kind]
    assert piles == [sorted(pile) for pile in piles]
    assert max(map(len, piles)) > 1


def test_what_is_said_in_two_ways_is_never_drawn(lexicon: Lexicon) -> None:
    exceptions = lexicon.ending_exceptions()
    query = Query(3, frozenset({"s", "es", "ies", "ed"}))
    for ending in known_endings(lexicon, query, random.Random(0)):
        assert {way.sound for way in classify(ending.word, lexicon, exceptions)} == {ending.sound}


@pytest.mark.parametrize("seed", range(3))
def test_examples_are_used_as_the_ending_is_for(lexicon: Lexicon, seed: int) -> None:
    """An example of -s is a word that is mostly a noun or a verb, one of -ed mostly a verb."""
    for suffix, parts in (("s", {"noun", "verb"}), ("ed", {"verb"}), ("er", {"adjective", "verb"})):
        card = make_card(lexicon, suffix, band=2, per_kind=3, rng=random.Random(seed))
        for row in card.rows:
            for example in row.examples[:1]:
                entry = lexicon.get(example.ending.base)
                assert entry is not None
                assert entry.parts_of_speech[0] in parts, example.ending.word


@pytest.mark.source(
    "verbs made of nouns are regular: Kim, Pinker, Prince & Prasada 1991, from memory"
)
@pytest.mark.parametrize(
    ("base", "past"),
    [
        *(("butterfly", "butterflied"), ("lipstick", "lipsticked"), ("sunlight", "sunlighted")),
        *(("backslide", "backslid"), ("babysit", "babysat"), ("unmake", "unmade")),
    ],
)
def test_the_past_of_a_compound(lexicon: Lexicon, base: str, past: str) -> None:
    assert add_ending(base, "ed", lexicon).forms[0].form == past


@pytest.mark.parametrize(
    ("word", "suffix", "base"),
    [("clearer", "er", "clear"), ("nearest", "est", "near"), ("lower", "est", "low")],
)
def test_what_is_compared_already(lexicon: Lexicon, word: str, suffix: str, base: str) -> None:
    added = add_ending(word, suffix, lexicon)
    assert (added.forms, added.bases) == ((), (base,))


@pytest.mark.source("US usage: value from memory")
@pytest.mark.parametrize(
    ("base", "suffix", "forms"),
    [
        ("stay", "s", {"stays"}),
        ("crow", "ed", {"crowed"}),
        ("penny", "s", {"pennies"}),
        ("smell", "ed", {"smelled"}),
    ],
)
def test_forms_of_other_words_and_shores(
    lexicon: Lexicon, base: str, suffix: str, forms: set[str]
) -> None:
    assert {form.form for form in add_ending(base, suffix, lexicon).forms} == forms
