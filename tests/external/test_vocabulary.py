"""The bands against published lists and against frequency."""

from __future__ import annotations

import json
from collections import defaultdict
from importlib import resources
from importlib.util import find_spec
from statistics import mean

import pytest

from phonodrill import TASKS, Lexicon, Position, Query, select
from phonodrill.lexicon.entry import UNFIT_REASONS
from phonodrill.lexicon.high_frequency import ranked, renewed
from phonodrill.lexicon.tables import read_table
from phonodrill.lexicon.wordlists import read_wordlists
from phonodrill.overlay import Overlay, Rule
from tests.conftest import WORDLISTS
from tests.external.test_word_lists import DOLCH

# Known to nine-year-olds when the list was made, judged older by us: dated, religious, or rare now.
DATED = 60


@pytest.mark.source("wordfreq 3.1.1: mean Zipf frequency falls from band to band")
def test_bands_fall_with_use() -> None:
    by_band: dict[int, list[float]] = defaultdict(list)
    from wordfreq import zipf_frequency

    for judged in read_wordlists(WORDLISTS).vocabulary.values():
        by_band[judged.band].append(zipf_frequency(judged.word, "en"))
    means = [mean(by_band[band]) for band in (1, 2, 3, 4)]
    assert means == sorted(means, reverse=True)


@pytest.mark.source("textstat 0.7.13: the Dale-Chall list of words known to nine-year-olds (1995)")
def test_words_known_to_nine_year_olds(lexicon: Lexicon) -> None:
    path = resources.files("textstat").joinpath("resources/en/easy_words.txt")
    words = sorted(set(path.read_text("utf-8").split()))
    entries = [entry for word in words if (entry := lexicon.get(word))]
    outside = [entry for entry in entries if not 1 <= entry.band <= 3]
    # Death, weapons, alcohol, insults and names are on the list; class is not the place for them.
    unfit = [entry for entry in outside if entry.reason in (*UNFIT_REASONS, "name", "archaic")]
    left = [entry.word for entry in outside if entry not in unfit]
    assert len(entries) > 2900
    assert len(left) / (len(entries) - len(unfit)) <= 0.03, left
    assert len(left) <= DATED


def test_at_least_nine_thousand_words_and_a_thousand_rarer_ones_are_judged(
    lexicon: Lexicon,
) -> None:
    vocabulary = read_wordlists(WORDLISTS).vocabulary
    rare = [w for w in vocabulary if (entry := lexicon.get(w)) and entry.zipf < 3.0]
    assert len(vocabulary) >= 9000
    assert len(rare) >= 1000


@pytest.mark.source("wordfreq 3.1.1 for the places; Dolch (1936) for the marks")
def test_frequent_words_are_those_of_our_computation(lexicon: Lexicon) -> None:
    table = WORDLISTS / "high_frequency.tsv"
    columns = ("word", "place", "dolch")
    rows = [tuple(row.cells.values()) for row in read_table(table, columns, key=["word"])]
    assert rows == renewed(lexicon, table)
    assert {row[0] for row in rows if row[2] == "yes"} == set(DOLCH)
    top = set(ranked(lexicon)[:300])
    assert top <= {row[0] for row in rows}


def test_no_name_is_ever_chosen(lexicon: Lexicon) -> None:
    names = set(read_wordlists(WORDLISTS).names)
    assert len(names) > 1000
    query = Query(band=3)
    pool = select(lexicon, query)
    for at in Position:
        for item in TASKS["delete"].candidates(pool, query, at):
            assert not names & {item.stimulus, item.answer, *item.also}, item


@pytest.mark.skipif(find_spec("misaki") is None, reason="misaki refuses Python 3.13 and newer")
@pytest.mark.source("misaki 0.9.4, us_gold.json (Apache 2.0): words listed with a capital only")
def test_words_that_need_a_capital_are_marked(lexicon: Lexicon) -> None:
    listed = json.loads(resources.files("misaki").joinpath("data/us_gold.json").read_text("utf-8"))
    entries = list(lexicon.entries(highest_band=3))
    judged = {word for word in read_wordlists(WORDLISTS).vocabulary if word.isalpha()}
    capital = {
        e.word
        for e in entries
        if e.word in judged and e.word not in listed and e.word.capitalize() in listed
    }
    marked = {entry.word for entry in entries if entry.needs_capital}
    assert len(marked) > 30
    # Written small as well (Merriam-Webster, values from memory): the meat, the dogs, the dots.
    assert capital - marked <= {"bologna", "braille", "dalmatian", "labrador"}


def test_no_word_that_needs_a_capital_is_ever_chosen(lexicon: Lexicon) -> None:
    capital = {e.word for e in lexicon.entries(highest_band=3) if e.needs_capital}
    assert capital >= {"monday", "fridays", "october", "halloween", "viking"}
    query = Query(band=3)
    pool = select(lexicon, query)
    assert not capital & {entry.word for entry in pool.stimuli()}
    assert not any(map(pool.find, capital))
    plurals = select(lexicon, Query(band=3, endings=frozenset({"s"})))
    assert not capital & {entry.word for entry in plurals.stimuli()}


def test_a_teacher_may_choose_a_word_that_needs_a_capital(lexicon: Lexicon) -> None:
    overlay = Overlay({"friday": Rule("add", "friday", 1)})
    pool = select(lexicon, Query(band=1), overlay=overlay)
    assert "friday" in {entry.word for entry in pool.stimuli()}
