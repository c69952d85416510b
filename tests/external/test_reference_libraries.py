"""inflect and lemminflect as references on every common noun, verb and adjective.

Each disagreement is judged in docs/ending_disagreements.tsv; the tests refuse a
disagreement that is not judged there, and a judgement that is no longer needed.
"""

from __future__ import annotations

import csv
from collections.abc import Iterator
from typing import NamedTuple

import pytest

from phonodrill import Entry, Lexicon, add_ending, find_bases
from tests.conftest import ROOT

JUDGED = ROOT / "docs" / "ending_disagreements.tsv"
TAGS = {
    "NNS": ("noun", "s"),
    "VBZ": ("verb", "s"),
    "VBD": ("verb", "ed"),
    "VBG": ("verb", "ing"),
    "JJR": ("adjective", "er"),
    "JJS": ("adjective", "est"),
}


class Compared(NamedTuple):
    reference: str
    ending: str
    base: str
    part: str
    ours: tuple[str, ...]
    theirs: tuple[str, ...]

    @property
    def agrees(self) -> bool:
        return not set(self.ours).isdisjoint(self.theirs)


def judgements() -> dict[tuple[str, str, str, str], dict[str, str]]:
    with JUDGED.open(encoding="utf-8") as file:
        rows = csv.DictReader((line for line in file if line[0] != "#"), delimiter="\t")
        return {
            (row["reference"], row["ending"], row["base"], row["part_of_speech"]): row
            for row in rows
        }


def bases(lexicon: Lexicon) -> Iterator[Entry]:
    for entry in lexicon.entries(highest_band=3):
        if not entry.endings and not entry.is_name and entry.word.isalpha():
            yield entry


def ours(lexicon: Lexicon, word: str, ending: str, part: str) -> tuple[tuple[str, ...], str]:
    added = add_ending(word, ending, lexicon)
    return tuple(f.form for f in added.forms if part in f.parts_of_speech), added.note


def against_lemminflect(lexicon: Lexicon) -> Iterator[Compared]:
    from lemminflect import getAllInflections

    for entry in bases(lexicon):
        listed = getAllInflections(entry.word)
        for tag, (part, ending) in TAGS.items():
            theirs = tuple(form for form in listed.get(tag, ()) if form.isalpha())
            if theirs and part in entry.parts_of_speech:
                forms, note = ours(lexicon, entry.word, ending, part)
                # A noun that is not counted has no plural there; here it has a note.
                if forms and not (theirs == (entry.word,) and "seldom counted" in note):
                    yield Compared("lemminflect", ending, entry.word, part, forms, theirs)


def against_inflect(lexicon: Lexicon) -> Iterator[Compared]:
    from inflect import engine

    tool = engine()
    # inflect has no third person: it spells one by taking the plural of the same letters.
    asked = (
        ("noun", "s", tool.plural_noun),
        ("verb", "s", tool.plural_noun),
        ("verb", "ing", tool.present_participle),
    )
    for entry in bases(lexicon):
        for part, ending, ask in asked:
            if entry.parts_of_speech[:1] == (part,):
                forms, _ = ours(lexicon, entry.word, ending, part)
                if forms:
                    theirs = (ask(entry.word) or "",)
                    yield Compared("inflect", ending, entry.word, part, forms, theirs)


def check(compared: list[Compared], reference: str) -> None:
    judged = judgements()
    differing = {(c.reference, c.ending, c.base, c.part): c for c in compared if not c.agrees}
    expected = {key for key in judged if key[0] == reference}
    assert set(differing) - expected == set(), "not judged in docs/ending_disagreements.tsv"
    assert expected - set(differing) == set(), "judged, but there is no disagreement"
    for key, found in differing.items():
        assert judged[key]["ours"] == "/".join(found.ours)
        assert judged[key]["theirs"] == "/".join(found.theirs)
    wrong = [key for key in differing if judged[key]["right"] in ("theirs", "neither")]
    # The target: 99.5 % of the spellings are right.
    assert len(wrong) <= 0.005 * len(compared), wrong


@pytest.mark.source("lemminflect 0.2.3 (PyPI): forms of the NIH SPECIALIST Lexicon")
def test_every_form_against_lemminflect(lexicon: Lexicon) -> None:
    compared = list(against_lemminflect(lexicon))
    assert len(compared) > 10_000
    check(compared, "lemminflect")


@pytest.mark.source("inflect 7.6.0 (PyPI): plural_noun, present_participle")
def test_every_form_against_inflect(lexicon: Lexicon) -> None:
    compared = list(against_inflect(lexicon))
    assert len(compared) > 5_000
    check(compared, "inflect")


def test_every_judgement_says_who_is_right_and_why() -> None:
    for row in judgements().values():
        assert row["right"] in ("ours", "theirs", "both", "neither"), row
        assert row["why"], row


@pytest.mark.source("lemminflect 0.2.3 (PyPI): getAllLemmas")
def test_the_first_base_of_every_common_form(lexicon: Lexicon) -> None:
    from lemminflect import getAllLemmas

    wrong, total = [], 0
    for entry in lexicon.entries(highest_band=3):
        if not entry.endings:
            continue
        lemmas = {lemma for found in getAllLemmas(entry.word).values() for lemma in found}
        first = next((o.base for o in find_bases(entry.word, lexicon).origins), "")
        total += 1
        if first not in lemmas:
            wrong.append((entry.word, first))
    assert total > 5_000
    # The target: 99 % of the bases come first.
    assert len(wrong) <= 0.01 * total, wrong


@pytest.mark.source("lemminflect 0.2.3 (PyPI): every inflection the lexicon was compiled from")
def test_every_listed_form_leads_back_to_its_base(lexicon: Lexicon) -> None:
    rows = {
        (row.form, row.base)
        for letter in "abcdefghijklmnopqrstuvwxyz"
        for row in lexicon.forms_ending_in(letter)
    }
    assert len(rows) > 20_000
    bases_of: dict[str, set[str]] = {}
    lost = []
    for form, base in sorted(rows):
        if form not in bases_of:
            bases_of[form] = {origin.base for origin in find_bases(form, lexicon).origins}
        if base not in bases_of[form] and not lexicon.only_looks_inflected(form):
            lost.append((form, base))
    # Taxes is taken to be of tax, not of the Greek noun taxis, itself a form of taxi.
    assert lost == [("taxes", "taxis")]
