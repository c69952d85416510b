"""inflect and lemminflect as references for -s on every common noun and verb.

Rates are asserted; what differs is judged, kind by kind, in docs/endings.md.
"""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from phonodrill import Entry, Lexicon
from phonodrill.endings.spell import rule_of


def bases(lexicon: Lexicon, part: str) -> Iterator[Entry]:
    for entry in lexicon.entries(highest_band=3):
        wanted = "plural" if part == "noun" else "third person"
        # Irregular plurals (women, aircraft) are named as such and take no rule.
        is_regular = any(
            row.inflection == wanted and row.ending for row in lexicon.forms_of(entry.word)
        )
        if entry.parts_of_speech[:1] == (part,) and not entry.endings and is_regular:
            yield entry


def disagreements(lexicon: Lexicon, part: str, reference: object) -> tuple[list[str], int]:
    listed = lexicon.s_spellings()
    differing, total = [], 0
    for entry in bases(lexicon, part):
        theirs = reference(entry.word)  # type: ignore[operator]
        said = entry.usable_pronunciations or entry.pronunciations
        ours = rule_of(entry.word, said[0].sounds, listed, part).spell(entry.word)
        total += 1
        if ours not in theirs:
            differing.append(f"{entry.word}: {ours}, not {'/'.join(theirs)}")
    return differing, total


@pytest.mark.source("inflect 7.6.0 (PyPI), plural_noun")
def test_plurals_against_inflect(lexicon: Lexicon) -> None:
    from inflect import engine

    tool = engine()

    def reference(word: str) -> list[str]:
        return [tool.plural_noun(word) or ""]

    differing, total = disagreements(lexicon, "noun", reference)
    assert total > 2000
    assert len(differing) / total < 0.015, differing


@pytest.mark.source("lemminflect 0.2.3 (PyPI), dictionary forms for NNS")
def test_plurals_against_lemminflect(lexicon: Lexicon) -> None:
    from lemminflect import getAllInflections

    differing, total = disagreements(
        lexicon, "noun", lambda word: list(getAllInflections(word).get("NNS", ()))
    )
    assert len(differing) / total < 0.015, differing


@pytest.mark.source("lemminflect 0.2.3 (PyPI), dictionary forms for VBZ")
def test_third_person_against_lemminflect(lexicon: Lexicon) -> None:
    from lemminflect import getAllInflections

    differing, total = disagreements(
        lexicon, "verb", lambda word: list(getAllInflections(word).get("VBZ", ()))
    )
    assert total > 800
    assert len(differing) / total < 0.005, differing


@pytest.mark.source("inflect 7.6.0 (PyPI), plural_verb undone is not offered; -s as for nouns")
def test_third_person_against_inflect(lexicon: Lexicon) -> None:
    from inflect import engine

    tool = engine()
    # inflect spells the third person by taking the plural of a noun of the same letters.
    differing, total = disagreements(
        lexicon,
        "verb",
        lambda word: [tool.plural_noun(word) or ""],
    )
    assert len(differing) / total < 0.02, differing
