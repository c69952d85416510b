from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from phonodrill import Lexicon, add_ending, find_bases
from phonodrill.endings.add import BY_LETTERS, BY_PARTS, Form
from phonodrill.endings.rules import SUFFIXES
from phonodrill.endings.steps import Op


def spelled(form: Form) -> str:
    """Carry the steps out, as a child would with letter cards."""
    letters = ""
    for step in form.change:
        if step.op is Op.CHANGE:
            letters += step.to
        elif step.op is not Op.DROP:
            letters += step.letters
    return letters


@pytest.mark.parametrize(
    ("word", "ending"),
    [
        ("pony", "s"),
        ("knife", "s"),
        ("quiz", "s"),
        ("oasis", "s"),
        ("hop", "ed"),
        ("skate", "ing"),
        ("die", "ing"),
        ("picnic", "ed"),
        ("gentle", "ly"),
        ("foot", "s"),
        ("take", "ed"),
        ("cut", "ed"),
        ("Henry", "s"),
        ("gull", "'s"),
        ("whole", "ly"),
    ],
)
def test_the_steps_spell_the_form(lexicon: Lexicon, word: str, ending: str) -> None:
    for form in add_ending(word, ending, lexicon).forms:
        assert spelled(form) == form.form


def test_the_steps_use_every_letter_of_the_base(lexicon: Lexicon) -> None:
    checked = 0
    for entry in lexicon.entries(highest_band=1):
        if entry.endings or not entry.word.isalpha():
            continue
        for ending in ("s", "ed", "er"):
            for form in add_ending(entry.word, ending, lexicon).forms:
                used = [s.letters for s in form.change if s.op in (Op.KEEP, Op.DROP, Op.CHANGE)]
                assert "".join(used) == entry.word, form
                assert spelled(form) == form.form
                checked += 1
    assert checked > 2000


def test_syllables_before_and_after(lexicon: Lexicon) -> None:
    counts = {}
    for word, ending in (("torch", "s"), ("hedge", "s"), ("rope", "s"), ("melt", "ed")):
        form = add_ending(word, ending, lexicon).forms[0]
        counts[form.form] = (form.syllables_before, form.syllables_after)
    assert counts == {"torches": (1, 2), "hedges": (1, 2), "ropes": (1, 1), "melted": (1, 2)}


def test_readings_of_one_form(lexicon: Lexicon) -> None:
    patches = add_ending("patch", "s", lexicon).forms
    assert [form.form for form in patches] == ["patches"]
    assert set(patches[0].parts_of_speech) == {"noun", "verb"}
    leaf = {form.form: form.parts_of_speech for form in add_ending("leaf", "s", lexicon).forms}
    assert leaf == {"leaves": ("noun",), "leafs": ("verb",)}


def test_two_forms_with_their_shares(lexicon: Lexicon) -> None:
    first, second = add_ending("volcano", "s", lexicon).forms
    assert (first.form, second.form) == ("volcanoes", "volcanos")
    assert first.share > 0.5 > second.share > 0
    assert first.share + second.share == pytest.approx(1)


def test_watch_outs_come_before_a_child_meets_them(lexicon: Lexicon) -> None:
    for word, ending, letters in (("say", "s", "sɛz"), ("mouth", "s", "ðz"), ("long", "er", "ŋɡ")):
        assert letters in add_ending(word, ending, lexicon).forms[0].watch_out


def test_a_word_that_has_the_ending_already(lexicon: Lexicon) -> None:
    for word in ("ferries", "apps"):
        added = add_ending(word, "s", lexicon)
        assert added.forms == ()
        assert "has an ending already" in added.note
    assert [form.form for form in add_ending("building", "s", lexicon).forms] == ["buildings"]


def test_a_noun_that_is_not_counted_has_a_note(lexicon: Lexicon) -> None:
    assert "seldom counted" in add_ending("music", "s", lexicon).note
    assert add_ending("gull", "s", lexicon).note == ""
    assert add_ending("sheep", "s", lexicon).note == ""


def test_a_form_that_nobody_uses_has_a_note(lexicon: Lexicon) -> None:
    assert "say more beautiful" in add_ending("beautiful", "er", lexicon).note
    assert "not as verb" in add_ending("lighthouse", "ed", lexicon).note
    assert "seldom used" in add_ending("big", "ly", lexicon).note
    for word, ending in (("windy", "er"), ("slow", "ly"), ("fog", "y"), ("sail", "ed")):
        assert add_ending(word, ending, lexicon).note == ""


def test_unknown_words_made_of_known_parts(lexicon: Lexicon) -> None:
    assert lexicon.get("jackknife") is None
    knives = add_ending("jackknife", "s", lexicon).forms[0]
    assert (knives.form, knives.based_on) == ("jackknives", BY_PARTS)


@given(
    word=st.text("abcdefghijklmnopqrstuvwxyz", min_size=3, max_size=9),
    ending=st.sampled_from(SUFFIXES),
)
def test_any_letters_get_a_form_and_lead_back(lexicon: Lexicon, word: str, ending: str) -> None:
    if lexicon.get(word) is not None:
        return
    for form in add_ending(word, ending, lexicon).forms:
        assert spelled(form) == form.form
        assert form.based_on in (BY_LETTERS, BY_PARTS)
        assert form.syllables_after >= form.syllables_before
    find_bases(word, lexicon)
